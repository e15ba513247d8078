package underhook.planner.search;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * What a greedy order leans on: how much later than ready each trip ranks, and how each team goes round its
 * places. Mutable; it never leaves this package.
 */
final class Lean {
    private static final long BIAS_S = 900;
    static final int FIRST_FUEL_KG = 230;
    private static final int FUEL_STEP_KG = 20;
    private static final int LEAST_FUEL_KG = 60;

    final long[] biasS;
    final int[][] places;
    int refuelToKg;

    /** Whether people walk far rather than are flown. */
    private boolean walks;

    private Lean(long[] biasS, int[][] places, int refuelToKg) {
        this.biasS = biasS;
        this.places = places;
        this.refuelToKg = refuelToKg;
    }

    /** Each place to the team that may do most there, in the order in which the team would go. */
    static Lean none(DayTable table) {
        return filling(table, FIRST_FUEL_KG);
    }

    /** The same, filled up so far each time. */
    static Lean filling(DayTable table, int refuelToKg) {
        int[] teamOf = firstTeams(table);
        int[][] places = new int[table.teams.length][];
        for (int team = 0; team < places.length; team++) {
            int crew = team;
            places[team] =
                    table.teams[team].serves().stream()
                            .mapToInt(place -> place)
                            .filter(place -> teamOf[place] == crew)
                            .toArray();
        }
        int fuelKg = (int) Math.min(table.fuel.usableKg(), refuelToKg);
        return new Lean(new long[table.trips.length], places, fuelKg);
    }

    /** The same, with people who walk far rather than are flown. */
    Lean walking() {
        walks = true;
        return this;
    }

    boolean walks() {
        return walks;
    }

    static int[] firstTeams(DayTable table) {
        int[] teamOf = new int[table.spots.length];
        Arrays.fill(teamOf, DayTable.NONE);
        for (int place = 0; place < teamOf.length; place++) {
            int most = 0;
            for (int team = 0; team < table.teams.length; team++) {
                int works = countWorks(table, team, place);
                if (works > most) {
                    most = works;
                    teamOf[place] = team;
                }
            }
        }
        for (int k = 0; k < table.trips.length; k++) {
            if (table.needsTwoTeams(k)
                    && teamOf[table.hookPlace[k]] == teamOf[table.teamPlace[k]]) {
                part(table, k, teamOf);
            }
        }
        return teamOf;
    }

    /** Another team where a trip is hooked, or where it is let go; as it is where no other may be at either. */
    private static void part(DayTable table, int k, int[] teamOf) {
        for (int team = 0; team < table.teams.length; team++) {
            boolean other = team != teamOf[table.teamPlace[k]];
            if (other && table.mayHook(team, k)) {
                teamOf[table.hookPlace[k]] = team;
                return;
            }
            if (other && table.mayWork(team, k)) {
                teamOf[table.teamPlace[k]] = team;
                return;
            }
        }
    }

    private static int countWorks(DayTable table, int team, int place) {
        int count = 0;
        for (int k = 0; k < table.trips.length; k++) {
            boolean works = table.teamPlace[k] == place && table.mayWork(team, k);
            boolean hooks = table.hookPlace[k] == place && table.mayHook(team, k);
            count += works || hooks ? 1 : 0;
        }
        return count;
    }

    /** Another lean near this one. */
    Lean changed(DayTable table, SplittableRandom random) {
        Lean other =
                new Lean(
                        biasS.clone(),
                        Arrays.stream(places).map(int[]::clone).toArray(int[][]::new),
                        refuelToKg);
        other.walks = walks;
        int kind = random.nextInt(40);
        if (kind < 30 || places.length == 0) {
            int count = 1 + random.nextInt(3);
            for (int i = 0; i < count; i++) {
                other.biasS[random.nextInt(biasS.length)] = random.nextLong(-BIAS_S, BIAS_S + 1);
            }
        } else if (kind < 33) {
            int step = (random.nextInt(7) - 3) * FUEL_STEP_KG;
            int most = (int) table.fuel.usableKg();
            other.refuelToKg = Math.max(LEAST_FUEL_KG, Math.min(most, refuelToKg + step));
        } else if (kind < 37) {
            other.move(random);
        } else {
            other.handOver(table, random);
        }
        return other;
    }

    private void move(SplittableRandom random) {
        int[] round = places[random.nextInt(places.length)];
        if (round.length > 1) {
            int from = random.nextInt(round.length);
            int to = random.nextInt(round.length);
            int taken = round[from];
            int step = to > from ? 1 : -1;
            for (int i = from; i != to; i += step) {
                round[i] = round[i + step];
            }
            round[to] = taken;
        }
    }

    /** Gives one place to another team that may work there. */
    private void handOver(DayTable table, SplittableRandom random) {
        int from = random.nextInt(places.length);
        int to = random.nextInt(places.length);
        if (from == to || places[from].length == 0) {
            return;
        }
        int place = places[from][random.nextInt(places[from].length)];
        if (countWorks(table, to, place) == 0) {
            return;
        }
        places[from] = Arrays.stream(places[from]).filter(one -> one != place).toArray();
        int at = random.nextInt(places[to].length + 1);
        int[] round = Arrays.copyOf(places[to], places[to].length + 1);
        System.arraycopy(places[to], at, round, at + 1, places[to].length - at);
        round[at] = place;
        places[to] = round;
    }
}
