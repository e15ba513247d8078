package underhook.app.port;

import underhook.core.learn.Measure;

/**
 * One thing that was planned and then measured.
 *
 * @param quantity what was measured
 * @param group kind of load, place and line that it belongs to
 * @param plannedAmount as planned, above 0, in the quantity's unit
 * @param flownAmount as flown, above 0, in the same unit
 */
public record FlownSample(
        Measure quantity, String group, double plannedAmount, double flownAmount) {
    public FlownSample {
        if (!(plannedAmount > 0 && flownAmount > 0)) {
            throw new IllegalArgumentException("amounts of a sample must be above 0.");
        }
    }
}
