package underhook.core.plan;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import underhook.core.job.CrewId;
import underhook.core.job.PlaceId;

/**
 * One step of the machine's day.
 *
 * @param lineLengthM line fitted during the step, m; 0 with the line off; after a line change the new
 * @param engineRunning whether the engine runs
 * @param crew who is moved, for a crew move
 * @param legs the ways flown, for a position or crew move
 * @param because what forces this step here, in one line
 */
public record Step(
        StepKind kind,
        PlaceId from,
        PlaceId to,
        Instant startAt,
        Instant endAt,
        double fuelStartKg,
        double fuelEndKg,
        double lineLengthM,
        boolean engineRunning,
        Optional<Rotation> rotation,
        Optional<CrewId> crew,
        List<Leg> legs,
        String because) {
    public Step {
        legs = List.copyOf(legs);
    }

    /** Where the loads of a rotation wait: the machine may have to come there from elsewhere first. */
    public PlaceId hookedUpAt() {
        return rotation.stream()
                .flatMap(turn -> turn.legs().stream())
                .filter(leg -> !leg.carrying().isEmpty())
                .map(Leg::from)
                .findFirst()
                .orElse(from);
    }

    /** The same, forced by something else. */
    public Step withBecause(String other) {
        return new Step(
                kind,
                from,
                to,
                startAt,
                endAt,
                fuelStartKg,
                fuelEndKg,
                lineLengthM,
                engineRunning,
                rotation,
                crew,
                legs,
                other);
    }

    /** The same with another lift. */
    public Step withRotation(Rotation other) {
        return new Step(
                kind,
                from,
                to,
                startAt,
                endAt,
                fuelStartKg,
                fuelEndKg,
                lineLengthM,
                engineRunning,
                Optional.of(other),
                crew,
                legs,
                because);
    }
}
