package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Flights of people that no order can do without.
 *
 * <p>A team that must come to where it cannot walk is flown over once and walks from there ({@link TeamChain}); or it is
 * flown more than once, which takes boarding twice more at least.
 */
final class CrewFlights {
    /**
     * A way in which a team may be flown.
     *
     * @param soonest from when trips may come if it is flown only once; none if more often
     * @param moreS what other flights take besides their ways, s
     */
    record Flight(int from, int to, TeamChain.@Nullable From soonest, long moreS) {}

    private final DayTable table;
    private final HourLeast least;
    private final TeamChain chain;
    private final List<Integer> teams = new ArrayList<>();
    private final List<List<Flight>> flights = new ArrayList<>();
    private final Flight[] chosen;

    CrewFlights(HourLeast least, HookChoices hooks) {
        this(least, hooks, least.table.teams.length);
    }

    /** Each as on a known day, and no other. */
    CrewFlights(HourLeast least, HookChoices hooks, List<EmptyWay> known) {
        this.table = least.table;
        this.least = least;
        this.chain = new TeamChain(table, hooks);
        known.forEach(way -> flights.add(List.of(new Flight(way.from(), way.to(), null, 0))));
        this.chosen = flights.stream().map(all -> all.get(0)).toArray(Flight[]::new);
    }

    private CrewFlights(HourLeast least, HookChoices hooks, int teamsAsked) {
        this.table = least.table;
        this.least = least;
        this.chain = new TeamChain(table, hooks);
        boolean[] placed = hooks.placed(table.trips.length);
        for (int team = 0; team < teamsAsked; team++) {
            List<Flight> all = flights(team);
            if (!all.isEmpty() && mustFly(team, placed)) {
                teams.add(team);
                flights.add(all);
            }
        }
        this.chosen = flights.stream().map(all -> all.get(0)).toArray(Flight[]::new);
    }

    /** As if nobody had to be flown. */
    static CrewFlights none(HourLeast least, HookChoices hooks) {
        return new CrewFlights(least, hooks, 0);
    }

    /** Whether something is set down where only this team may work and cannot walk to. */
    private boolean mustFly(int team, boolean[] placed) {
        for (int k = 0; k < placed.length; k++) {
            if (placed[k] && chain.isOnly(team, k) && chain.isFlownTo(team, table.teamPlace[k])) {
                return true;
            }
        }
        return false;
    }

    /** From where the team can be walking from its start, to where it cannot. */
    private List<Flight> flights(int team) {
        List<Integer> landing = table.teams[team].landing();
        List<Flight> all = new ArrayList<>();
        for (int from = 0; from < table.spots.length; from++) {
            for (int to = 0; to < table.spots.length; to++) {
                boolean flies =
                        landing.contains(from)
                                && landing.contains(to)
                                && !chain.isFlownTo(team, from)
                                && chain.isFlownTo(team, to);
                if (flies) {
                    TeamChain.From soonest =
                            chain.from(team, to, landedS(team, from, to)).orElse(null);
                    if (soonest != null) {
                        all.add(new Flight(from, to, soonest, 0));
                    }
                    all.add(new Flight(from, to, null, 2 * table.rules.boardingS()));
                }
            }
        }
        return all;
    }

    /** When a team is there at the earliest, s. */
    private long landedS(int team, int from, int to) {
        TeamRow row = table.teams[team];
        double wayS = Double.POSITIVE_INFINITY;
        for (int hour = 0; hour < least.hours; hour++) {
            wayS = Math.min(wayS, least.emptyS(from, to, hour));
        }
        return Math.max(row.fromS(), table.rules.startS())
                + table.walkS[row.start()][from]
                + 2 * table.rules.boardingS()
                + (long) Math.floor(wayS);
    }

    /** How many flights there are: one of each team that must be flown. */
    int count() {
        return flights.size();
    }

    /** The ways in which one of them may be flown. */
    List<Flight> ofTeam(int number) {
        return flights.get(number);
    }

    /** Which of them alone may do a trip; none where another team may, or nobody need be there. */
    int owner(int trip) {
        for (int number = 0; number < teams.size(); number++) {
            if (chain.isOnly(teams.get(number), trip)) {
                return number;
            }
        }
        return DayTable.NONE;
    }

    void addTo(int[] surplus, Posts posts) {
        for (Flight flight : chosen) {
            surplus[posts.standing(flight.to())]++;
            surplus[posts.standing(flight.from())]--;
        }
    }

    private double flightS(Flight flight, int hour) {
        return least.emptyS(flight.from(), flight.to(), hour) + 2 * table.rules.boardingS();
    }

    private int cheapestHour(Flight flight, double[] hourFactor) {
        int best = 0;
        for (int hour = 1; hour < hourFactor.length; hour++) {
            if (flightS(flight, hour) * hourFactor[hour]
                    < flightS(flight, best) * hourFactor[best]) {
                best = hour;
            }
        }
        return best;
    }

    /**
     * Priced cost of a flight in its cheapest hour.
     *
     * @param standingS what it is worth to stand at each place
     */
    double costS(Flight flight, double[] hourFactor, double[] standingS) {
        int hour = cheapestHour(flight, hourFactor);
        return flightS(flight, hour) * hourFactor[hour]
                + flight.moreS()
                + standingS[flight.to()]
                - standingS[flight.from()];
    }

    /** Takes a flight as the one that counts; loads the hours with it. */
    void choose(int number, Flight flight, double[] hourFactor, double[] loadS) {
        chosen[number] = flight;
        int hour = cheapestHour(flight, hourFactor);
        loadS[hour] += flightS(flight, hour);
    }

    double longestS() {
        double longest = 0;
        for (List<Flight> all : flights) {
            for (Flight flight : all) {
                for (int hour = 0; hour < least.hours; hour++) {
                    double one = flightS(flight, hour);
                    longest = one < HourLeast.NONE_S ? Math.max(longest, one) : longest;
                }
            }
        }
        return longest;
    }

    boolean wantExact(double[] hourFactor) {
        boolean any = false;
        for (Flight flight : chosen) {
            any |= least.wantEmpty(flight.from(), flight.to(), cheapestHour(flight, hourFactor));
        }
        return any;
    }
}
