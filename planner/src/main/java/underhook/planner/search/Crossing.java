package underhook.planner.search;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Makes an order of two: it begins as the one and ends as the other. */
final class Crossing {
    private Crossing() {}

    /**
     * Up to a turn drawn by lot as the one; from then on what is left, in the turns of the other, with its teams and
     * lines. From a fuelling drawn by lot on it fills up as the other does.
     */
    static Wish of(DayTable table, Wish one, Wish other, SplittableRandom random) {
        Wish child = one.copy();
        int turn = 1 + random.nextInt(one.tokens.length - 1);
        int[] begun = Arrays.copyOf(one.tokens, turn);
        boolean[] isFlown = new boolean[table.trips.length];
        boolean[] isBegun = new boolean[one.teamOf.length];
        for (int token : begun) {
            if (token < isFlown.length) {
                isFlown[token] = true;
                isBegun[table.workPlace(token)] = true;
            }
        }
        for (int place = 0; place < isBegun.length; place++) {
            if (!isBegun[place]) {
                child.teamOf[place] = other.teamOf[place];
                child.walksTo[place] = other.walksTo[place];
            }
        }
        for (int trip = 0; trip < isFlown.length; trip++) {
            child.line[trip] = isFlown[trip] ? one.line[trip] : other.line[trip];
        }
        // Hints go with the part of the order in which they stand; there need not be as many in
        // each.
        double fromTurn = (double) turn * other.tokens.length / one.tokens.length;
        IntStream rest =
                IntStream.range(0, other.tokens.length)
                        .filter(
                                i ->
                                        other.tokens[i] < isFlown.length
                                                ? !isFlown[other.tokens[i]]
                                                : i >= fromTurn)
                        .map(i -> other.tokens[i]);
        child.tokens = IntStream.concat(Arrays.stream(begun), rest).toArray();
        for (int i = random.nextInt(Wish.LEVELS); i < Wish.LEVELS; i++) {
            child.refuelToKg[i] = other.refuelToKg[i];
            child.restsAt[i] = other.restsAt[i];
        }
        return child;
    }
}
