package underhook.core.plan;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The day in numbers.
 *
 * @param flightS time in the air with engine running, s: rotations, positioning, crew moves
 * @param lowerBoundFlightS proven bound over every order of the placed loads, s, when there is one
 * @param provenFor what the bounds hold for, when there is one
 * @param cutShort whether the time ceiling ended the search
 * @param price what the day costs, where it was worked out
 * @param front the days to choose from, fewest flying minutes first; empty where none were looked for
 * @param anew what the change costs, where the rest of a day was ordered anew
 */
public record Summary(
        double flightS,
        Instant finishAt,
        int rotations,
        int refuels,
        int lineChanges,
        OptionalDouble lowerBoundFlightS,
        Optional<Instant> finishBoundAt,
        Optional<String> provenFor,
        boolean cutShort,
        Optional<DayPrice> price,
        List<Trade> front,
        Optional<Anew> anew) {
    public Summary {
        front = List.copyOf(front);
    }

    /** Of a day ordered before it was flown. */
    public Summary(
            double flightS,
            Instant finishAt,
            int rotations,
            int refuels,
            int lineChanges,
            OptionalDouble lowerBoundFlightS,
            Optional<Instant> finishBoundAt,
            Optional<String> provenFor,
            boolean cutShort,
            Optional<DayPrice> price,
            List<Trade> front) {
        this(
                flightS,
                finishAt,
                rotations,
                refuels,
                lineChanges,
                lowerBoundFlightS,
                finishBoundAt,
                provenFor,
                cutShort,
                price,
                front,
                Optional.empty());
    }

    /** Without a price. */
    public Summary(
            double flightS,
            Instant finishAt,
            int rotations,
            int refuels,
            int lineChanges,
            OptionalDouble lowerBoundFlightS,
            Optional<Instant> finishBoundAt,
            Optional<String> provenFor,
            boolean cutShort) {
        this(
                flightS,
                finishAt,
                rotations,
                refuels,
                lineChanges,
                lowerBoundFlightS,
                finishBoundAt,
                provenFor,
                cutShort,
                Optional.empty(),
                List.of());
    }
}
