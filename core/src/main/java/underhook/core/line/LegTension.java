package underhook.core.line;

import underhook.core.unit.Units;

/**
 * Tension in the legs of an even sling.
 *
 * @param legTensionN tension in each leg that is counted, N
 * @param angleFactor tension over the leg's share of the weight: 1 over the sine of the leg angle
 * @param legsCounted legs that are counted to carry
 */
public record LegTension(double legTensionN, double angleFactor, int legsCounted) {
    /**
     * Tension of each leg under a mass at rest.
     *
     * <p>A rigid load on three or more legs may hang on two of them, so two are counted. Below 30° from the
     * horizontal small errors of the angle change the tension much.
     *
     * @param massKg mass hanging on the legs, kg, above 0
     * @param legs number of legs, 1 to 8
     * @param angleHorizontalRad leg above the horizontal, rad, in (0, π/2]
     * @param rigid whether the load cannot give, so that two legs of three or more must carry all
     * @throws IllegalArgumentException if an argument is out of range
     * @source LOAD-ANGLE table of load angle factors; PRACTICE two legs counted for a rigid load
     */
    public static LegTension of(double massKg, int legs, double angleHorizontalRad, boolean rigid) {
        if (!(massKg > 0 && massKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("massKg (" + massKg + ") must be above 0.");
        }
        if (legs < 1 || legs > 8) {
            throw new IllegalArgumentException("legs (" + legs + ") must lie in [1, 8].");
        }
        if (!(angleHorizontalRad > 0 && angleHorizontalRad <= Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "angleHorizontalRad (" + angleHorizontalRad + ") must lie in (0, π/2].");
        }
        int counted = rigid && legs >= 3 ? 2 : legs;
        double factor = 1 / Math.sin(angleHorizontalRad);
        double weightN = massKg * Units.STANDARD_GRAVITY_M_PER_S2;
        return new LegTension(weightN / counted * factor, factor, counted);
    }
}
