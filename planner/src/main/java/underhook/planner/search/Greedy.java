package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A first order: of all that may be done next, what starts soonest.
 *
 * <p>With foresight, what the wind closes or what others wait for ranks before; without it, this is the plain
 * order that a day is compared with.
 */
final class Greedy {
    /** A lift whose window has so many times this left ranks a second later. */
    private static final long SLACK_PER_SECOND_S = 8;

    /** Moving people first opens work elsewhere, s. */
    private static final long TEAM_MOVE_BONUS_S = 600;

    /** What a team needs for a place and the walk to the next, for ranking only, s. */
    private static final long PLACE_S = 50 * 60;

    /** From hook-up of what comes before to hook-up of what waits for it, for ranking only, s. */
    private static final long LEAD_S = 12 * 60;

    private final DayTable table;
    private final Decoder decoder;
    private final int[][] placesOf;

    Greedy(DayTable table, Decoder decoder) {
        this.table = table;
        this.decoder = decoder;
        this.placesOf = new int[table.teams.length][];
    }

    /** The order, its hints at the end of it. */
    Wish order(boolean foresight) {
        Wish wish = firstWish();
        for (int team = 0; team < placesOf.length; team++) {
            int crew = team;
            placesOf[team] =
                    java.util.stream.IntStream.range(0, table.spots.length)
                            .filter(place -> wish.teamOf[place] == crew)
                            .toArray();
        }
        long[] due = foresight ? dueS(wish) : null;
        List<Integer> tokens = new ArrayList<>();
        decoder.begin(wish, null);
        boolean more = true;
        while (more) {
            more = step(wish, due, tokens);
        }
        decoder.finish();
        for (int k = 0; k < table.trips.length; k++) {
            if (!tokens.contains(k)) {
                tokens.add(k);
            }
        }
        addHints(tokens);
        wish.tokens = tokens.stream().mapToInt(token -> token).toArray();
        return wish;
    }

    private void addHints(List<Integer> tokens) {
        int first = table.trips.length;
        for (int team = 0; team < table.teams.length; team++) {
            tokens.add(first + team);
            tokens.add(first + team);
        }
        tokens.add(first + table.teams.length);
        tokens.add(first + table.teams.length);
        tokens.add(first + table.teams.length + 1);
        tokens.add(first + table.teams.length + 1);
    }

    /** Each place to the team that may do most there; among equals to the one with the least yet. */
    private Wish firstWish() {
        int[] teamOf = new int[table.spots.length];
        Arrays.fill(teamOf, DayTable.NONE);
        int[] load = new int[table.teams.length];
        for (int place = 0; place < teamOf.length; place++) {
            int most = 0;
            for (int team = 0; team < table.teams.length; team++) {
                int works = countWorks(team, place);
                boolean better =
                        works > most
                                || (works == most
                                        && works > 0
                                        && load[team] < load[teamOf[place]]);
                if (better) {
                    most = works;
                    teamOf[place] = team;
                }
            }
            if (most > 0) {
                load[teamOf[place]]++;
            }
        }
        Wish wish = new Wish(new int[0], teamOf, table.trips.length);
        Arrays.fill(wish.refuelToKg, (int) Math.min(table.fuel.usableKg(), 230));
        return wish;
    }

    private int countWorks(int team, int place) {
        int count = 0;
        for (int k = 0; k < table.trips.length; k++) {
            count += table.teamPlace[k] == place && table.mayWork(team, k) ? 1 : 0;
        }
        return count;
    }

    private boolean step(Wish wish, long @org.jspecify.annotations.Nullable [] due, List<Integer> tokens) {
        Run run = decoder.run();
        Run before = new Run(table);
        before.copyFrom(run);
        int best = DayTable.NONE;
        long bestScore = Long.MAX_VALUE;
        for (int k = 0; k < table.trips.length; k++) {
            if (run.isLeft(k) && mayBeNext(k, wish) && decoder.tryTrip(k, wish)) {
                long startS = run.releasedS[k] - table.trips[k].setDownS();
                long score =
                        startS
                                - before.timeS
                                + (due == null
                                        ? 0
                                        : (due[k] - run.releasedS[k]) / SLACK_PER_SECOND_S);
                if (score < bestScore) {
                    bestScore = score;
                    best = k;
                }
                decoder.takeBack(before);
            }
        }
        for (int team = 0; team < table.teams.length; team++) {
            int place = nextPlace(team);
            if (place >= 0 && decoder.tryTeam(team, place, wish)) {
                long score = run.timeS - before.timeS - TEAM_MOVE_BONUS_S;
                if (score < bestScore) {
                    bestScore = score;
                    best = table.trips.length + team;
                }
                decoder.takeBack(before);
            }
        }
        if (best < 0) {
            return false;
        }
        tokens.add(best);
        return best < table.trips.length
                ? decoder.tryTrip(best, wish)
                : decoder.tryTeam(
                        best - table.trips.length, nextPlace(best - table.trips.length), wish);
    }

    /** A team finishes a place before it goes on. */
    private boolean mayBeNext(int k, Wish wish) {
        int place = table.teamPlace[k];
        return place < 0
                || wish.teamOf[place] < 0
                || nextPlace(wish.teamOf[place]) == place;
    }

    /** A team's own place while something is left for it there, else the nearest with work. */
    private int nextPlace(int team) {
        Run run = decoder.run();
        int best = DayTable.NONE;
        for (int place : placesOf[team]) {
            if (hasWork(place)) {
                if (place == run.teamPlace[team]) {
                    return place;
                }
                boolean nearer =
                        best < 0
                                || rank(team, place) < rank(team, best);
                best = nearer ? place : best;
            }
        }
        return best;
    }

    /** What closes first, then what is nearest. */
    private long rank(int team, int place) {
        long closesS = table.rules.endS();
        for (int k = 0; k < table.trips.length; k++) {
            if (table.teamPlace[k] == place) {
                closesS = Math.min(closesS, table.windowEndS[k]);
            }
        }
        return closesS * 2 + Math.min(table.walkS[decoder.run().teamPlace[team]][place], 86_400);
    }

    private boolean hasWork(int place) {
        for (int k = 0; k < table.trips.length; k++) {
            if (table.teamPlace[k] == place && decoder.run().isLeft(k)) {
                return true;
            }
        }
        return false;
    }

    /** When each trip should be done for what follows to be in time; ranks, forbids nothing. */
    private long[] dueS(Wish wish) {
        long[] due = table.windowEndS.clone();
        for (int team = 0; team < placesOf.length; team++) {
            int rank = 0;
            for (int i = placesOf[team].length - 1; i >= 0; i--) {
                for (int k = 0; k < table.trips.length; k++) {
                    if (table.teamPlace[k] == placesOf[team][i]
                            && wish.teamOf[placesOf[team][i]] == team) {
                        due[k] = Math.min(due[k], table.rules.endS() - rank * PLACE_S / 2);
                    }
                }
                rank++;
            }
        }
        for (int round = 0; round < 3; round++) {
            for (int k = 0; k < table.trips.length; k++) {
                for (TripRow.After after : table.trips[k].after()) {
                    due[after.trip()] =
                            Math.min(due[after.trip()], due[k] - after.waitS() - LEAD_S);
                }
                for (int i = 0; i < table.trips.length && table.trips[k].standsUp(); i++) {
                    TripRow other = table.trips[i];
                    if (other.readyAfterS() > 0 && other.to() == table.trips[k].to()) {
                        due[i] = Math.min(due[i], due[k] - other.readyAfterS() - LEAD_S);
                    }
                }
            }
        }
        return due;
    }
}
