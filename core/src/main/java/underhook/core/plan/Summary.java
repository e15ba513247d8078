package underhook.core.plan;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The day in numbers.
 *
 * @param flightS time in the air with engine running, s: rotations, positioning, crew moves
 * @param lowerBoundFlightS proven bound over every order of the placed loads, s, when there is one
 * @param provenFor what the bounds hold for, when there is one
 * @param cutShort whether the time ceiling ended the search
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
        boolean cutShort) {}
