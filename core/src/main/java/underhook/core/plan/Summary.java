package underhook.core.plan;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The day in numbers.
 *
 * @param flightS time in the air with engine running, s: rotations, positioning, crew moves
 * @param counts how often the machine did what
 * @param bounds what is proven of every order
 * @param cutShort whether the time ceiling ended the search
 * @param price what the day costs, where it was worked out
 * @param front the days to choose from, fewest flying minutes first; empty where none were looked for
 * @param anew what the change costs, where the rest of a day was ordered anew
 */
public record Summary(
        double flightS,
        Instant finishAt,
        Counts counts,
        Bounds bounds,
        boolean cutShort,
        Optional<DayPrice> price,
        List<Trade> front,
        Optional<Anew> anew) {
    /** How often the machine did what. */
    public record Counts(int rotations, int refuels, int lineChanges) {
        /** Of the steps of a day. */
        public static Counts of(List<Step> steps) {
            return new Counts(
                    count(steps, StepKind.ROTATION),
                    count(steps, StepKind.REFUEL),
                    count(steps, StepKind.LINE_CHANGE));
        }

        private static int count(List<Step> steps, StepKind kind) {
            return (int) steps.stream().filter(step -> step.kind() == kind).count();
        }
    }

    /**
     * What is proven of every order.
     *
     * @param flightS no order of the placed loads flies less, s
     * @param finishAt none is down before
     * @param provenFor what both hold for
     * @param held what is proven of orders that have more in common with the day, each trip as it is on the hook
     */
    public record Bounds(
            OptionalDouble flightS,
            Optional<Instant> finishAt,
            Optional<String> provenFor,
            Held held) {
        /** Proven over every way of combining the loads. */
        public static final String ALL_COMBINATIONS = "all-combinations";

        public static final Bounds NONE =
                new Bounds(OptionalDouble.empty(), Optional.empty(), Optional.empty());

        /** Nothing is proven of orders that have more in common with the day. */
        public Bounds(
                OptionalDouble flightS, Optional<Instant> finishAt, Optional<String> provenFor) {
            this(flightS, finishAt, provenFor, Held.NONE);
        }
    }

    /**
     * What no order flies less than that has more in common with the day.
     *
     * @param peopleS none in which people are flown from where to where the day flies them, s
     * @param hoursS none of these in which each lift and each flight of people begins in the hour of the weather in which
     *     the day begins it, s
     */
    public record Held(OptionalDouble peopleS, OptionalDouble hoursS) {
        public static final Held NONE = new Held(OptionalDouble.empty(), OptionalDouble.empty());
    }

    public Summary {
        front = List.copyOf(front);
    }

    Summary cut() {
        return new Summary(flightS, finishAt, counts, bounds, true, price, front, anew);
    }

    Summary with(Bounds proven) {
        return new Summary(flightS, finishAt, counts, proven, cutShort, price, front, anew);
    }

    public int rotations() {
        return counts.rotations();
    }

    public int refuels() {
        return counts.refuels();
    }

    public int lineChanges() {
        return counts.lineChanges();
    }

    public OptionalDouble lowerBoundFlightS() {
        return bounds.flightS();
    }

    public Held heldBounds() {
        return bounds.held();
    }

    public Optional<Instant> finishBoundAt() {
        return bounds.finishAt();
    }

    public Optional<String> provenFor() {
        return bounds.provenFor();
    }
}
