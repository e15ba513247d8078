package underhook.core.line;

import java.util.ArrayList;
import java.util.List;
import underhook.core.line.HookPath.Part;
import underhook.core.unit.Ranges;

/**
 * A way to come from a speed to a hover.
 *
 * <p>A steady deceleration begun and ended suddenly swings the load twice; held over whole periods the two
 * swings cancel. Split into two equal steps half a period apart, each step cancels the other, and the load
 * hangs still in between: it swings half as far and needs no whole period.
 *
 * @param kind how it is made up
 * @param path ends in a hover
 * @source SINGER-SEERING-1990 two steps half a period apart; DERIVED whole periods
 */
public record SlowDown(Kind kind, HookPath path) {
    /** How a slow-down is made up. */
    public enum Kind {
        /** As hard as allowed until it stands. */
        ABRUPT,
        /** One deceleration over a whole number of periods. */
        CONSTANT,
        /** Half the deceleration for half a period at either end. */
        SHAPED,
        /** The same with the two ends fitted to drag and wide swings. */
        TUNED
    }

    /**
     * As hard as allowed until it stands.
     *
     * @param speedMPerS over the ground, m/s, above 0
     * @param mostMPerS2 hardest deceleration, m/s², above 0
     */
    static SlowDown abrupt(double speedMPerS, double mostMPerS2) {
        require(speedMPerS, mostMPerS2, 1);
        return of(Kind.ABRUPT, speedMPerS, new Part(speedMPerS / mostMPerS2, -mostMPerS2, 0));
    }

    /** One deceleration over the fewest whole periods. */
    static SlowDown constant(double speedMPerS, double mostMPerS2, double periodS) {
        require(speedMPerS, mostMPerS2, periodS);
        // Rounding must not cost a whole period.
        double periods = Math.ceil(speedMPerS / (mostMPerS2 * periodS) - 1e-9);
        double lasts = periods * periodS;
        return of(Kind.CONSTANT, speedMPerS, new Part(lasts, -speedMPerS / lasts, 0));
    }

    /** Two equal steps half a period apart. */
    static SlowDown shaped(double speedMPerS, double mostMPerS2, double periodS) {
        require(speedMPerS, mostMPerS2, periodS);
        double step = periodS / 2;
        double full = Math.min(mostMPerS2, speedMPerS / step);
        return steps(speedMPerS, full, new Ends(step, 0.5, step, 0.5)).as(Kind.SHAPED);
    }

    /**
     * First and last step of a shaped slow-down.
     *
     * @param firstS how long the first lasts, s
     * @param firstFraction part of the full deceleration in it
     * @param lastS how long the last lasts, s
     * @param lastFraction part of the full deceleration in it
     */
    record Ends(double firstS, double firstFraction, double lastS, double lastFraction) {
        /** Way in speed that both take, over the full deceleration, s. */
        double takenS() {
            return firstS * firstFraction + lastS * lastFraction;
        }
    }

    /** Steps of any height; the middle lasts as long as it takes to come to a hover. */
    static SlowDown steps(double speedMPerS, double fullMPerS2, Ends ends) {
        List<Part> parts = new ArrayList<>();
        parts.add(new Part(ends.firstS(), -ends.firstFraction() * fullMPerS2, 0));
        double middle = speedMPerS / fullMPerS2 - ends.takenS();
        if (middle > 1e-9) {
            parts.add(new Part(middle, -fullMPerS2, 0));
        }
        parts.add(new Part(ends.lastS(), -ends.lastFraction() * fullMPerS2, 0));
        return new SlowDown(Kind.TUNED, new HookPath(speedMPerS, parts));
    }

    private static SlowDown of(Kind kind, double speedMPerS, Part part) {
        return new SlowDown(kind, new HookPath(speedMPerS, List.of(part)));
    }

    private SlowDown as(Kind other) {
        return new SlowDown(other, path);
    }

    private static void require(double speedMPerS, double mostMPerS2, double periodS) {
        Ranges.requirePositive(speedMPerS, "speedMPerS");
        Ranges.requirePositive(mostMPerS2, "mostMPerS2");
        Ranges.requirePositive(periodS, "periodS");
    }
}
