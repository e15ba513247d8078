package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;

/** Flights of people that no order can do without. */
final class CrewFlights {
    /** A way in which a team may be flown. */
    private record Option(int from, int to) {}

    private final DayTable table;
    private final HourLeast least;
    private final TeamReach reach;
    private final List<List<Option>> needed = new ArrayList<>();
    private final Option[] chosen;

    CrewFlights(DayTable table, HourLeast least, boolean[] placed) {
        this.table = table;
        this.least = least;
        this.reach = new TeamReach(table, placed);
        for (int team = 0; team < table.teams.length; team++) {
            if (mustFly(team, placed)) {
                needed.add(options(team));
            }
        }
        this.chosen = new Option[needed.size()];
        for (int i = 0; i < chosen.length; i++) {
            chosen[i] = needed.get(i).get(0);
        }
    }

    /** Whether something is set down where only this team may work and cannot walk to. */
    private boolean mustFly(int team, boolean[] placed) {
        for (int k = 0; k < placed.length; k++) {
            int place = table.teamPlace[k];
            boolean asks =
                    placed[k]
                            && place >= 0
                            && table.walkS[table.teams[team].start()][place] >= DayTable.NO_WALK_S;
            if (asks && isOnly(team, k) && !options(team).isEmpty()) {
                return true;
            }
        }
        return false;
    }

    private boolean isOnly(int team, int trip) {
        for (int other = 0; other < table.teams.length; other++) {
            if (other != team && table.mayWork(other, trip)) {
                return false;
            }
        }
        return table.mayWork(team, trip);
    }

    /** From where the team can be walking from its start, to where it cannot. */
    private List<Option> options(int team) {
        int start = table.teams[team].start();
        List<Option> all = new ArrayList<>();
        for (int from = 0; from < table.spots.length; from++) {
            for (int to = 0; to < table.spots.length; to++) {
                boolean flies =
                        table.teams[team].landing().contains(from)
                                && table.teams[team].landing().contains(to)
                                && table.walkS[start][from] < DayTable.NO_WALK_S
                                && table.walkS[start][to] >= DayTable.NO_WALK_S;
                if (flies && reach.isInTime(team, from, to)) {
                    all.add(new Option(from, to));
                }
            }
        }
        return all;
    }

    void addTo(int[] surplus, Posts posts) {
        for (Option option : chosen) {
            surplus[posts.standing(option.to())]++;
            surplus[posts.standing(option.from())]--;
        }
    }

    private double flightS(Option option, int hour) {
        return least.emptyS(option.from(), option.to(), hour) + 2 * table.rules.boardingS();
    }

    private int cheapestHour(Option option, double[] hourFactor) {
        int best = 0;
        for (int hour = 1; hour < hourFactor.length; hour++) {
            if (flightS(option, hour) * hourFactor[hour]
                    < flightS(option, best) * hourFactor[best]) {
                best = hour;
            }
        }
        return best;
    }

    /**
     * Priced cost of every needed flight by its cheapest way; loads the hours with them.
     *
     * @param standingS what it is worth to stand at each place
     */
    double costS(double[] hourFactor, double[] standingS, double[] loadS) {
        double sum = 0;
        for (int i = 0; i < chosen.length; i++) {
            double bestCost = Double.POSITIVE_INFINITY;
            for (Option option : needed.get(i)) {
                int hour = cheapestHour(option, hourFactor);
                double costS =
                        flightS(option, hour) * hourFactor[hour]
                                + standingS[option.to()]
                                - standingS[option.from()];
                if (costS < bestCost) {
                    bestCost = costS;
                    chosen[i] = option;
                }
            }
            int hour = cheapestHour(chosen[i], hourFactor);
            loadS[hour] += flightS(chosen[i], hour);
            sum += bestCost;
        }
        return sum;
    }

    double longestS() {
        double longest = 0;
        for (List<Option> options : needed) {
            for (Option option : options) {
                for (int hour = 0; hour < least.hours; hour++) {
                    double one = flightS(option, hour);
                    longest = one < HourLeast.NONE_S ? Math.max(longest, one) : longest;
                }
            }
        }
        return longest;
    }

    boolean makeExact(double[] hourFactor) {
        boolean any = false;
        for (Option option : chosen) {
            any |=
                    least.makeEmptyExact(
                            option.from(), option.to(), cheapestHour(option, hourFactor));
        }
        return any;
    }
}
