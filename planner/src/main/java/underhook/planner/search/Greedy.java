package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

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
    private Lean lean;

    Greedy(DayTable table, Decoder decoder) {
        this.table = table;
        this.decoder = decoder;
        this.lean = Lean.none(table);
    }

    /** The plain order, nothing leaned on, its hints at the end of it. */
    Wish plain() {
        lean = Lean.none(table);
        return order(firstWish(), null);
    }

    /** An order with foresight that leans as told, its hints at the end of it. */
    Wish order(Lean newLean) {
        lean = newLean;
        Wish wish = firstWish();
        Arrays.fill(wish.walksTo, lean.walks());
        for (int team = 0; team < lean.places.length; team++) {
            for (int place : lean.places[team]) {
                wish.teamOf[place] = team;
            }
        }
        Arrays.fill(wish.refuelToKg, lean.refuelToKg);
        return order(wish, dueS());
    }

    private Wish order(Wish wish, long @Nullable [] due) {
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

    private Wish firstWish() {
        Wish wish = new Wish(new int[0], Lean.firstTeams(table), table.trips.length);
        Arrays.fill(wish.refuelToKg, lean.refuelToKg);
        return wish;
    }

    private boolean step(Wish wish, long @Nullable [] due, List<Integer> tokens) {
        Run run = decoder.run();
        Run before = new Run(table);
        before.copyFrom(run);
        int best = DayTable.NONE;
        long bestScore = Long.MAX_VALUE;
        for (int k = 0; k < table.trips.length; k++) {
            if (run.isLeft(k) && mayBeNext(k, wish) && decoder.tryTrip(k, wish)) {
                long startS = run.open >= 0 ? run.hookedS : run.timeS;
                long score =
                        startS
                                - before.timeS
                                + lean.biasS[k]
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
        return mayBeNextAt(table.teamPlace[k], wish) && mayBeNextAt(table.hookPlace[k], wish);
    }

    private boolean mayBeNextAt(int place, Wish wish) {
        return place < 0 || wish.teamOf[place] < 0 || nextPlace(wish.teamOf[place]) == place;
    }

    /** A team's own place while something is left for it there, else the next one with work. */
    private int nextPlace(int team) {
        int own = decoder.run().teamPlace[team];
        if (hasWork(own) && contains(lean.places[team], own)) {
            return own;
        }
        for (int place : lean.places[team]) {
            if (hasWork(place)) {
                return place;
            }
        }
        return DayTable.NONE;
    }

    private static boolean contains(int[] places, int wanted) {
        for (int place : places) {
            if (place == wanted) {
                return true;
            }
        }
        return false;
    }

    private boolean hasWork(int place) {
        for (int k = 0; k < table.trips.length; k++) {
            boolean asks = table.teamPlace[k] == place || table.hookPlace[k] == place;
            if (asks && decoder.run().isLeft(k)) {
                return true;
            }
        }
        return false;
    }

    /** When each trip should be done for what follows to be in time; ranks, forbids nothing. */
    private long[] dueS() {
        long[] due = table.windowEndS.clone();
        for (int[] places : lean.places) {
            long nextS = table.rules.endS() + PLACE_S;
            for (int i = places.length - 1; i >= 0; i--) {
                long placeS = nextS - PLACE_S;
                for (int k = 0; k < table.trips.length; k++) {
                    placeS =
                            table.teamPlace[k] == places[i]
                                    ? Math.min(placeS, table.windowEndS[k])
                                    : placeS;
                }
                for (int k = 0; k < table.trips.length; k++) {
                    due[k] = table.teamPlace[k] == places[i] ? Math.min(due[k], placeS) : due[k];
                }
                nextS = placeS;
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
                    if (i != k && other.readies(table.trips[k])) {
                        due[i] = Math.min(due[i], due[k] - other.readyAfterS() - LEAD_S);
                    }
                }
            }
        }
        return due;
    }
}
