package underhook.core.aircraft;

import underhook.core.unit.Ranges;

/**
 * Speed of the air through an ideal rotor's disc away from the hover, over that in the hover.
 *
 * @source GLAUERT-1935 momentum theory; LEISHMAN-2006 chapter 2
 */
public final class InducedFlow {
    private InducedFlow() {}

    /**
     * In level flight, the disc's tilt left out.
     *
     * @param forwardRatio airspeed over the hover's induced speed, not negative
     */
    public static double levelRatio(double forwardRatio) {
        Ranges.requireNotNegative(forwardRatio, "forwardRatio");
        double half = forwardRatio * forwardRatio / 2;
        // The same as √(√(half² + 1) − half), without losing digits at high speed.
        return Math.sqrt(1 / (Math.sqrt(half * half + 1) + half));
    }

    /**
     * In a climb straight up.
     *
     * @param climbRatio rate of climb over the hover's induced speed, not negative; momentum theory does
     *     not hold in a slow descent
     */
    public static double climbRatio(double climbRatio) {
        Ranges.requireNotNegative(climbRatio, "climbRatio");
        double half = climbRatio / 2;
        return 1 / (Math.sqrt(half * half + 1) + half);
    }
}
