package underhook.planner.search;

import java.util.Arrays;
import java.util.SplittableRandom;

/** Small random changes of a wish. */
final class WishChanger {
    private static final int LEVEL_STEP_KG = 10;
    private static final int LEAST_LEVEL_KG = 60;
    private static final int LONGEST_BLOCK = 5;
    private static final long MOST_PATIENCE_S = 600;

    /** So many changes of a level to one of all later ones besides. */
    private static final int LEVELS_TO_ALL = 4;

    private final DayTable table;

    WishChanger(DayTable table) {
        this.table = table;
    }

    void change(Wish wish, SplittableRandom random) {
        int kind = random.nextInt(100);
        if (kind < 32) {
            relocate(wish.tokens, random, 1);
        } else if (kind < 40) {
            swapPlaces(wish.tokens, random);
        } else if (kind < 45) {
            shiftPlace(wish.tokens, random);
        } else if (kind < 65) {
            swap(wish.tokens, random);
        } else if (kind < 78) {
            relocate(wish.tokens, random, 2 + random.nextInt(LONGEST_BLOCK - 1));
        } else if (kind < 86) {
            changeFuelling(wish, random, table.hasManyTrips() && kind >= 84);
        } else if (kind < 92) {
            changeTeam(wish, random);
        } else if (kind < 96) {
            int trip = random.nextInt(wish.line.length);
            wish.line[trip] = random.nextInt(table.lines.length + 1) - 1;
        } else if (kind == 97 && table.arePeopleOnFoot()) {
            wish.patienceS =
                    random.nextInt(3) == 0 ? DayTable.NEVER_S : random.nextLong(MOST_PATIENCE_S);
        } else if (kind == 97) {
            changeWalk(wish, random);
        } else if (kind < 98) {
            wish.restWaitS = random.nextLong(300, Wish.NO_EARLY_REST_S + 1);
        } else {
            wish.fuelsWhileWaiting = !wish.fuelsWhileWaiting;
        }
    }

    /** Mostly a short way, sometimes anywhere. */
    private static int near(int at, int count, SplittableRandom random) {
        if (random.nextInt(4) == 0) {
            return random.nextInt(count);
        }
        int off = 1 + random.nextInt(8);
        int to = random.nextBoolean() ? at + off : at - off;
        return Math.max(0, Math.min(count - 1, to));
    }

    private static void relocate(int[] tokens, SplittableRandom random, int length) {
        int block = Math.min(length, tokens.length);
        int from = random.nextInt(tokens.length - block + 1);
        int to = near(from, tokens.length - block + 1, random);
        int[] moved = Arrays.copyOfRange(tokens, from, from + block);
        if (to > from) {
            System.arraycopy(tokens, from + block, tokens, from, to - from);
        } else {
            System.arraycopy(tokens, to, tokens, to + block, from - to);
        }
        System.arraycopy(moved, 0, tokens, to, block);
    }

    /** Moves everything that one place waits for by as much as its first. */
    private void shiftPlace(int[] tokens, SplittableRandom random) {
        int trip = random.nextInt(table.trips.length);
        int place = table.workPlace(trip);
        int[] others = new int[tokens.length];
        int[] moved = new int[tokens.length];
        int otherCount = 0;
        int movedCount = 0;
        int first = -1;
        for (int i = 0; i < tokens.length; i++) {
            if (tokens[i] < table.trips.length && isAt(tokens[i], place)) {
                first = movedCount == 0 ? i : first;
                moved[movedCount++] = i;
            } else {
                others[otherCount++] = tokens[i];
            }
        }
        int by = near(first, tokens.length, random) - first;
        int[] old = tokens.clone();
        int next = 0;
        int taken = 0;
        for (int i = 0; i < tokens.length; i++) {
            boolean due = taken < movedCount && i >= Math.max(0, moved[taken] + by);
            if (due || next == otherCount) {
                tokens[i] = old[moved[taken++]];
            } else {
                tokens[i] = others[next++];
            }
        }
    }

    /** Two places change their turns: what one waits for is flown when the other's was. */
    private void swapPlaces(int[] tokens, SplittableRandom random) {
        int one = table.workPlace(random.nextInt(table.trips.length));
        int other = table.workPlace(random.nextInt(table.trips.length));
        int[] ones = tripsAt(tokens, one);
        int[] others = tripsAt(tokens, other);
        if (one == other) {
            return;
        }
        int nextOne = 0;
        int nextOther = 0;
        for (int i = 0; i < tokens.length; i++) {
            int trip = tokens[i];
            boolean atOne = trip < table.trips.length && isAt(trip, one);
            boolean atOther = trip < table.trips.length && isAt(trip, other);
            if (!atOne && !atOther) {
                continue;
            }
            boolean takesOther = nextOne == ones.length || (atOne && nextOther < others.length);
            tokens[i] = takesOther ? others[nextOther++] : ones[nextOne++];
        }
    }

    private int[] tripsAt(int[] tokens, int place) {
        return Arrays.stream(tokens)
                .filter(token -> token < table.trips.length && isAt(token, place))
                .toArray();
    }

    private boolean isAt(int trip, int place) {
        return table.workPlace(trip) == place;
    }

    private static void swap(int[] tokens, SplittableRandom random) {
        int a = random.nextInt(tokens.length);
        int b = near(a, tokens.length, random);
        int kept = tokens[a];
        tokens[a] = tokens[b];
        tokens[b] = kept;
    }

    /** How far a fuelling fills up, or whether it is made a whole break. */
    private void changeFuelling(Wish wish, SplittableRandom random, boolean rests) {
        int at = random.nextInt(Wish.LEVELS);
        if (rests) {
            wish.restsAt[at] = !wish.restsAt[at];
            return;
        }
        int step = (random.nextInt(13) - 6) * LEVEL_STEP_KG;
        int most = (int) table.fuel.usableKg();
        int level = Math.max(LEAST_LEVEL_KG, Math.min(most, wish.refuelToKg[at] + step));
        wish.refuelToKg[at] = level;
        if (table.hasManyTrips() && random.nextInt(LEVELS_TO_ALL) == 0) {
            Arrays.fill(wish.refuelToKg, at, Wish.LEVELS, level);
        }
    }

    /** Whether people walk far to a place or are flown. */
    private void changeWalk(Wish wish, SplittableRandom random) {
        int place = placeOfTeam(random.nextInt(table.trips.length), random);
        if (place >= 0) {
            wish.walksTo[place] = !wish.walksTo[place];
        }
    }

    private void changeTeam(Wish wish, SplittableRandom random) {
        if (table.teams.length < 2) {
            swap(wish.tokens, random);
            return;
        }
        int trip = random.nextInt(table.trips.length);
        int team = random.nextInt(table.teams.length);
        int place = placeOfTeam(trip, random);
        boolean may =
                place == table.teamPlace[trip]
                        ? table.mayWork(team, trip)
                        : table.mayHook(team, trip);
        if (place >= 0 && may) {
            part(wish, trip, place, team);
            wish.teamOf[place] = team;
        }
    }

    /** Who must leave one end of a trip because the team of the other end comes goes to that, if it may. */
    private void part(Wish wish, int trip, int place, int team) {
        if (!table.needsTwoTeams(trip)) {
            return;
        }
        boolean hooks = place == table.hookPlace[trip];
        int other = hooks ? table.teamPlace[trip] : table.hookPlace[trip];
        int leaves = wish.teamOf[place];
        boolean may =
                leaves >= 0 && (hooks ? table.mayWork(leaves, trip) : table.mayHook(leaves, trip));
        if (wish.teamOf[other] == team && may) {
            wish.teamOf[other] = leaves;
        }
    }

    /** Where a trip needs a team, at either end where it needs two. */
    private int placeOfTeam(int trip, SplittableRandom random) {
        return table.needsTwoTeams(trip) && random.nextBoolean()
                ? table.hookPlace[trip]
                : table.teamPlace[trip];
    }
}
