package underhook.core.flown;

import java.util.Objects;

/**
 * How a maintenance manual counts what wears a part.
 *
 * @param perTakeOffAndLanding events for one take-off with its landing, not negative
 * @param perLift events for one load lifted on the hook, not negative
 * @param perEngineRun events for one start of the engine, not negative
 * @param source the key of the rule, or the manual that states it
 */
public record CycleRule(
        String name, int perTakeOffAndLanding, int perLift, int perEngineRun, String source) {
    /**
     * Each take-off with its landing counts one, and so does each load lifted.
     *
     * @source MAKER-LETTER one take-off and landing with ten sling loads are eleven events
     */
    public static final CycleRule EVERY_LIFT =
            new CycleRule("every lift and every landing", 1, 1, 0, "MAKER-LETTER");

    public CycleRule {
        Objects.requireNonNull(name, "name");
        if (perTakeOffAndLanding < 0 || perLift < 0 || perEngineRun < 0) {
            throw new IllegalArgumentException("what is counted must not be negative.");
        }
    }

    /**
     * Events of a day. A flight of which nobody tapped the take-off or the landing counts as one with both.
     *
     * @param engineRuns how often the engine was started, not negative
     */
    public int count(MachineSums sums, int engineRuns) {
        return Math.addExact(
                Math.addExact(
                        Math.multiplyExact(perTakeOffAndLanding, sums.flights()),
                        Math.multiplyExact(perLift, sums.lifts())),
                Math.multiplyExact(perEngineRun, engineRuns));
    }
}
