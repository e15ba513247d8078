package underhook.planner.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A lower bound on the flying seconds of the placed trips, whatever their order.
 *
 * <p>Each trip takes at least its cheapest hour and line. From each site the machine must fly on as
 * often as trips end there beyond those that begin there; each such way takes at least the least
 * that any leg with the empty line to anywhere can take ({@code LegBound}). Each team that cannot walk to any of its placed sites is flown at least once,
 * from where it can be boarded to where it can land. Positioning is bounded by nothing.
 */
final class FlightBound {
    private final DayModel model;
    private final DayBuilder builder;
    private final People people;
    private final List<Trip> trips;

    FlightBound(DayModel model, DayBuilder builder, People people, List<Trip> trips) {
        this.model = model;
        this.builder = builder;
        this.people = people;
        this.trips = trips;
    }

    long seconds(DayState day) {
        long sum = 0;
        int n = model.places.size();
        int[] surplus = new int[n];
        for (int k = 0; k < trips.size(); k++) {
            if (day.releasedS[k] < 0) {
                continue;
            }
            Trip trip = trips.get(k);
            sum += trip.hookUpS() + trip.setDownS() + model.leastLoadedS(trip);
            if (TripMaker.isSite(model.places.get(trip.to()))) {
                surplus[trip.to()]++;
            }
            if (TripMaker.isSite(model.places.get(trip.from()))) {
                surplus[trip.from()]--;
            }
        }
        List<Long> ways = new ArrayList<>();
        for (int place = 0; place < n; place++) {
            for (int i = 0; i < surplus[place]; i++) {
                ways.add(cheapestAwayS(place));
            }
        }
        for (long way : ways) {
            sum += way + (long) Math.ceil(model.rules.returnExtraS());
        }
        return sum + cheapestCrewMovesS(day);
    }

    /** The cheapest empty way from a site to anywhere the machine is ever sent. */
    private long cheapestAwayS(int place) {
        long best = Long.MAX_VALUE;
        for (int to = 0; to < model.places.size(); to++) {
            int target = to;
            boolean sent =
                    !TripMaker.isSite(model.places.get(to))
                            || trips.stream().anyMatch(trip -> trip.from() == target);
            if (to == place || !sent || !model.places.get(to).agreed()) {
                continue;
            }
            if (model.isKnown(place) && model.isKnown(to)) {
                // Still air: none is flown faster in any wind.
                best = Math.min(best, (long) Math.ceil(model.emptyBoundS(place, to)));
            } else {
                best = 0;
            }
        }
        return best == Long.MAX_VALUE ? 0 : best;
    }

    private long cheapestCrewMovesS(DayState day) {
        long sum = 0;
        List<Long> each = new ArrayList<>(Collections.nCopies(people.teams.size(), 0L));
        for (int team = 0; team < people.teams.size(); team++) {
            int start = model.place(people.teams.get(team).start());
            List<Integer> only = new ArrayList<>();
            for (int k = 0; k < trips.size(); k++) {
                int place = builder.teamPlace(trips.get(k));
                if (day.releasedS[k] < 0 || place < 0) {
                    continue;
                }
                boolean walks = false;
                int serving = 0;
                for (int other = 0; other < people.teams.size(); other++) {
                    serving += people.serves(other, place) ? 1 : 0;
                }
                walks = people.walkS(start, place) < People.NO_WALK_S;
                if (people.serves(team, place) && serving == 1 && !walks) {
                    only.add(place);
                }
            }
            if (!only.isEmpty()) {
                each.set(team, cheapestCabinS());
            }
        }
        for (long one : each) {
            sum += one;
        }
        return sum;
    }

    private long cheapestCabinS() {
        long best = Long.MAX_VALUE;
        for (int from = 0; from < model.places.size(); from++) {
            for (int to = 0; to < model.places.size(); to++) {
                if (from == to || !people.canLand(from) || !people.canLand(to)) {
                    continue;
                }
                for (int slot = 0; slot < model.slots.size(); slot++) {
                    best = Math.min(best, model.leastCabinS(from, to, slot));
                }
            }
        }
        return best >= DayModel.NEVER_S ? 0 : best + 2 * (long) Math.ceil(model.rules.boardingS());
    }
}
