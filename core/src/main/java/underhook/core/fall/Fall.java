package underhook.core.fall;

import underhook.core.unit.Units;

/**
 * The way of a load from letting go to the ground.
 *
 * @param timeS time of the fall, s
 * @param throwM distance over the ground in the direction of flight, m; negative when a head wind
 *     carries it back
 * @param impactMPerS speed when it hits, m/s
 * @param impactForwardMPerS part of that speed along the flight direction, m/s
 * @param impactDownMPerS part of that speed downward, m/s
 */
public record Fall(
        double timeS,
        double throwM,
        double impactMPerS,
        double impactForwardMPerS,
        double impactDownMPerS) {
    /**
     * Slowest steady fall that is followed, m/s: dust and snow fall slower, and the steps of their course
     * would be so small that it never ends.
     *
     * @source PRACTICE no load falls like snow
     */
    public static final double LEAST_TERMINAL_M_PER_S = 0.5;

    /**
     * A body with drag.
     *
     * @param massKg mass, kg, above 0
     * @param dragAreaM2 drag coefficient times frontal area, m², not negative
     * @param densityKgPerM3 air density, kg/m³, above 0
     */
    public record Body(double massKg, double dragAreaM2, double densityKgPerM3) {
        public Body {
            if (!(massKg > 0 && massKg < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("massKg (" + massKg + ") must be above 0.");
            }
            if (!(dragAreaM2 >= 0 && dragAreaM2 < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        "dragAreaM2 (" + dragAreaM2 + ") must not be negative.");
            }
            if (!(densityKgPerM3 > 0 && densityKgPerM3 < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        "densityKgPerM3 (" + densityKgPerM3 + ") must be above 0.");
            }
        }

        /** Drag over mass at 1 m/s, 1/m. */
        public double retardationCoefficient() {
            return 0.5 * densityKgPerM3 * dragAreaM2 / massKg;
        }

        /**
         * Steady speed of the fall, m/s; infinite without drag.
         *
         * @source DERIVED drag equals weight
         */
        public double terminalMPerS() {
            return Math.sqrt(Units.STANDARD_GRAVITY_M_PER_S2 / retardationCoefficient());
        }
    }

    /**
     * Fall without drag.
     *
     * @param heightM above the ground, m, in (0, 3000]
     * @param groundSpeedMPerS speed over the ground when let go, level, m/s, in [0, 150]
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED uniform acceleration: t = √(2h/g)
     */
    public static Fall vacuum(double heightM, double groundSpeedMPerS) {
        requireRange(heightM, groundSpeedMPerS);
        double time = Math.sqrt(2 * heightM / Units.STANDARD_GRAVITY_M_PER_S2);
        return hit(
                time,
                groundSpeedMPerS * time,
                groundSpeedMPerS,
                Units.STANDARD_GRAVITY_M_PER_S2 * time);
    }

    /**
     * Plumb fall from rest in still air, in closed form.
     *
     * @param heightM above the ground, m, in (0, 3000]
     * @throws IllegalArgumentException if the height is out of range
     * @source DERIVED t = (vt/g) acosh(exp(g h/vt²)), v = vt √(1 − exp(−2 g h/vt²))
     */
    public static Fall plumb(Body body, double heightM) {
        requireRange(heightM, 0);
        double k = body.retardationCoefficient();
        if (!(k * heightM > 1e-12)) {
            return vacuum(heightM, 0);
        }
        double terminal = body.terminalMPerS();
        // acosh(e^s) = s + ln(1 + √(1 − e^−2s)), which neither overflows nor loses digits.
        double s = k * heightM;
        double root = Math.sqrt(-Math.expm1(-2 * s));
        double time = terminal / Units.STANDARD_GRAVITY_M_PER_S2 * (s + Math.log1p(root));
        return hit(time, 0, 0, terminal * root);
    }

    /**
     * Fall with drag in a steady wind along the flight direction.
     *
     * <p>The pull of the air is against the movement through the air: a = −k |v − w| (v − w) − g. Integrated
     * with steps held to a relative error of 1e-10.
     *
     * @param body falls at {@value #LEAST_TERMINAL_M_PER_S} m/s at least when its fall is steady
     * @param heightM above the ground, m, in (0, 3000]
     * @param groundSpeedMPerS speed over the ground when let go, level, m/s, in [0, 150]
     * @param tailwindMPerS wind from behind, m/s, in [-60, 60]; negative from ahead
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED equations of motion of a point with quadratic drag
     */
    public static Fall inAir(
            Body body, double heightM, double groundSpeedMPerS, double tailwindMPerS) {
        requireRange(heightM, groundSpeedMPerS);
        if (!(tailwindMPerS >= -60 && tailwindMPerS <= 60)) {
            throw new IllegalArgumentException(
                    "tailwindMPerS (" + tailwindMPerS + ") must lie in [-60, 60].");
        }
        if (!(body.terminalMPerS() >= LEAST_TERMINAL_M_PER_S)) {
            throw new IllegalArgumentException(
                    "terminalMPerS ("
                            + body.terminalMPerS()
                            + ") must be at least "
                            + LEAST_TERMINAL_M_PER_S
                            + ": what falls slower drifts, and is no load.");
        }
        return new Descent(body.retardationCoefficient(), tailwindMPerS)
                .untilGround(heightM, groundSpeedMPerS);
    }

    static Fall hit(double timeS, double throwM, double forwardMPerS, double downMPerS) {
        return new Fall(
                timeS, throwM, Math.hypot(forwardMPerS, downMPerS), forwardMPerS, downMPerS);
    }

    private static void requireRange(double heightM, double groundSpeedMPerS) {
        if (!(heightM > 0 && heightM <= 3000)) {
            throw new IllegalArgumentException("heightM (" + heightM + ") must lie in (0, 3000].");
        }
        if (!(groundSpeedMPerS >= 0 && groundSpeedMPerS <= 150)) {
            throw new IllegalArgumentException(
                    "groundSpeedMPerS (" + groundSpeedMPerS + ") must lie in [0, 150].");
        }
    }
}
