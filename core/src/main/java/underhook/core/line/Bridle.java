package underhook.core.line;

import underhook.core.unit.Units;

/**
 * Two legs of different length, the hook plumb over the centre of gravity.
 *
 * @param tension1N tension of the first leg, N
 * @param tension2N tension of the second leg, N
 * @param length1M length of the first leg, m
 * @param length2M length of the second leg, m
 */
public record Bridle(double tension1N, double tension2N, double length1M, double length2M) {
    /**
     * Lengths and tensions of the legs.
     *
     * @param massKg mass of the load, kg, above 0
     * @param distance1M first attachment from the centre of gravity, level, m, not negative
     * @param distance2M second attachment on the other side, m, not negative; one of the two above 0
     * @param heightM hook above the attachments, m, above 0
     * @throws IllegalArgumentException if an argument is out of range
     * @source LOAD-ANGLE-UNEQUAL T1 = W D2 S1 / (H (D1 + D2)), T2 = W D1 S2 / (H (D1 + D2))
     */
    public static Bridle of(double massKg, double distance1M, double distance2M, double heightM) {
        if (!(massKg > 0 && massKg < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("massKg (" + massKg + ") must be above 0.");
        }
        if (!(distance1M >= 0 && distance2M >= 0 && distance1M + distance2M > 0)
                || !Double.isFinite(distance1M + distance2M)) {
            throw new IllegalArgumentException(
                    "distance1M ("
                            + distance1M
                            + ") and distance2M ("
                            + distance2M
                            + ") must not be negative, nor both 0.");
        }
        if (!(heightM > 0 && heightM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("heightM (" + heightM + ") must be above 0.");
        }
        double length1 = Math.hypot(distance1M, heightM);
        double length2 = Math.hypot(distance2M, heightM);
        double share =
                massKg * Units.STANDARD_GRAVITY_M_PER_S2 / (heightM * (distance1M + distance2M));
        return new Bridle(
                share * distance2M * length1, share * distance1M * length2, length1, length2);
    }
}
