package underhook.planner.search;

import java.util.Arrays;
import java.util.Comparator;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import java.util.function.ToLongFunction;

/**
 * Improves an order by seeded local search of a fixed number of days built.
 *
 * <p>A worse day is sometimes taken, less and less often; the best day ever built is kept, and besides it the order
 * that is nearest to a good one: what is too late or left out in it counts, but it does not lose it what it has. Prices
 * are whole cents; ties keep the newer day while searching and the older as the best.
 */
final class Search {
    /** What heat ends with, in seconds of everything standing or flying at once. */
    private static final double COLD_S = 1.5;

    /** What a second too late counts, in seconds of everything. @source PRACTICE own measure: with less, lifts stay late */
    private static final double LATE_RATIO = 3;

    /** What a trip left out counts while searching, in minutes of everything. @source PRACTICE own measure */
    private static final long LEFT_OUT_MINUTES = 200;

    private static final int STEPS_BETWEEN_WORDS = 100;
    private static final int STEPS_BETWEEN_TURNS = 20;

    private final DayTable table;
    private final Decoder decoder;
    private final WishChanger changer;

    private final long minuteCents;
    private Wish best;
    private long bestCents;

    /** The order whose price is least with what is too late or left out counted, and that price. */
    private final Wish near;

    private long nearCents;
    private int built;
    private boolean cut;
    private final ToLongFunction<Wish> strayCents;

    Search(Decoder decoder, Wish start) {
        this(decoder, start, wish -> 0);
    }

    /**
     * @param strayCents what a wish costs besides, for being other than one that people know
     */
    Search(Decoder decoder, Wish start, ToLongFunction<Wish> strayCents) {
        this.strayCents = strayCents;
        this.table = decoder.run().table;
        this.minuteCents = Math.max(1, decoder.rates().minuteCents());
        this.decoder = decoder;
        this.changer = new WishChanger(table);
        this.best = start.copy();
        this.bestCents = guessed(() -> cents(start));
        this.near = start.copy();
        this.nearCents = guessed(() -> guideCents(start));
    }

    /** Goes on from another search, on another lane perhaps. */
    Search(Decoder decoder, Search before) {
        this(decoder, before.near);
        this.best = before.best.copy();
        this.bestCents = guessed(() -> cents(best));
    }

    /** What the nearest order costs, with what is too late or left out counted. */
    long nearCents() {
        return nearCents;
    }

    /** The order whose price is least with what is too late or left out counted. */
    Wish near() {
        return near;
    }

    Wish best() {
        return best;
    }

    long bestCents() {
        return bestCents;
    }

    int built() {
        return built;
    }

    boolean wasCut() {
        return cut;
    }

    /**
     * How a search goes about it.
     *
     * @param hotS what heat begins with, in seconds of everything standing or flying at once
     * @param finds whether the ways of what seems the best are found; else all is judged by guesses
     * @param gone of the time that it may take: it cools with the time where that goes faster than its work
     */
    record Manner(double hotS, boolean finds, TimeGone gone) {
        Manner(double hotS, boolean finds, BooleanSupplier stop) {
            this(hotS, finds, TimeGone.once(stop));
        }
    }

    /**
     * Searches from the nearest order so far.
     *
     * <p>A day is judged by ways that are guessed, until it seems the best: then its ways are found. In the first half,
     * while it is hot, that is not done, as what seems best then is soon beaten.
     */
    void run(SplittableRandom random, int days, Manner manner) {
        Wish now = near.copy();
        Wish next = near.copy();
        boolean finds = manner.finds();
        bestCents = finds ? cents(best) : bestCents;
        long nowGuide = finds ? guideCents(near) : guessed(() -> guideCents(near));
        nearCents = nowGuide;
        double cooling = Math.pow(COLD_S / manner.hotS(), 1.0 / days);
        double heat = manner.hotS() * minuteCents / 60;
        for (int i = 0; i < days; i++) {
            if (i % STEPS_BETWEEN_WORDS == 0) {
                double goneRatio = manner.gone().goneRatio();
                if (goneRatio >= 1) {
                    cut = true;
                    break;
                }
                int behind = (int) (goneRatio * days) - i;
                if (behind > STEPS_BETWEEN_WORDS) {
                    // Cold at its end however few days it comes to: hot days are none to keep.
                    cut = true;
                    behind -= behind % STEPS_BETWEEN_WORDS;
                    i += behind;
                    heat *= Math.pow(cooling, behind);
                }
            }
            if (i % STEPS_BETWEEN_TURNS == 0) {
                settle(now, next);
            }
            next.take(now);
            changer.change(next, random);
            double takeGuide = nowGuide - heat * Math.log(random.nextDouble());
            table.startGuessing();
            long guide = guideCents(next);
            boolean sure = !table.stopGuessing() || !finds;
            built++;
            if (!sure && i >= days / 2 && guide <= takeGuide && seemsBest(guide)) {
                guide = guideCents(next);
                sure = true;
            }
            if (guide <= takeGuide) {
                decoder.keepKnown();
                Wish old = now;
                now = next;
                next = old;
                nowGuide = guide;
                if (sure && seemsBest(guide)) {
                    keepNear(now, guide);
                    keep(now, finds);
                }
            }
            heat *= cooling;
        }
        if (cut) {
            keep(now, finds);
        }
    }

    /** Whether the day just built is better than all with what is too late counted, or flown as it may be. */
    private boolean seemsBest(long guide) {
        boolean inTime = decoder.run().lateS == 0;
        return guide < nearCents || (inTime && guide + leftOutCents() < bestCents);
    }

    /** How much less what is left out counts while searching. */
    private long leftOutCents() {
        return decoder.run().countDropped()
                * (Rates.DROPPED_CENTS - LEFT_OUT_MINUTES * minuteCents);
    }

    private long guessed(LongSupplier cents) {
        table.startGuessing();
        long guess = cents.getAsLong();
        table.stopGuessing();
        return guess;
    }

    /**
     * Gives trips the turns in which they are really flown, where that changes nothing for the worse: what waits in an
     * order for something behind it could be moved about without changing the day.
     */
    private void settle(Wish now, Wish other) {
        table.startGuessing();
        long was = guideCents(now);
        other.take(now);
        int[] turns = turns(now);
        int next = 0;
        for (int i = 0; i < other.tokens.length; i++) {
            if (other.tokens[i] < table.trips.length) {
                other.tokens[i] = turns[next++];
            }
        }
        if (guideCents(other) <= was) {
            decoder.keepKnown();
            now.take(other);
        }
        table.stopGuessing();
    }

    /** Trips in the order in which the day just built flies them; what it leaves out comes last. */
    private int[] turns(Wish wish) {
        return Arrays.stream(wish.tokens)
                .filter(token -> token < table.trips.length)
                .boxed()
                .sorted(Comparator.comparingLong(this::flownAtS))
                .mapToInt(trip -> trip)
                .toArray();
    }

    private long flownAtS(int trip) {
        long releasedS = decoder.run().releasedS[trip];
        return releasedS >= 0 ? releasedS : DayTable.NEVER_S;
    }

    /** Price with what is too late flown all the same, at a price for each minute. */
    private long guideCents(Wish wish) {
        decoder.run().soft = true;
        long cents = table.isGuessing() ? decoder.decodeNear(wish) : decoder.decode(wish, null);
        decoder.run().soft = false;
        return cents
                + strayCents.applyAsLong(wish)
                - leftOutCents()
                + Math.round(decoder.run().lateS * LATE_RATIO * minuteCents / 60);
    }

    private void keepNear(Wish wish, long guide) {
        if (guide < nearCents) {
            nearCents = guide;
            near.take(wish);
        }
    }

    /** Keeps a wish if the day it gives is the best so far. */
    private void keep(Wish wish, boolean finds) {
        long cents = finds ? cents(wish) : guessed(() -> cents(wish));
        if (cents < bestCents) {
            bestCents = cents;
            best.take(wish);
        }
    }

    private long cents(Wish wish) {
        return decoder.decode(wish, null) + strayCents.applyAsLong(wish);
    }
}
