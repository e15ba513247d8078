package underhook.planner.verify;

/**
 * Where a load may hit that is let go, as a box along the track; worked out with small even steps.
 *
 * <p>The spreads are somewhat smaller than those a plan is made with, so that only a plan that is wrong is
 * refused: mass half as far off, drag 0.6 to 1.2 of its area, swing 6°, speed 3 in 100, half the gusts.
 * What it runs on the ground is left out.
 *
 * @param backM least distance along the track, m
 * @param forwardM most distance along the track, m
 * @param leftM most distance to the left, m
 * @param rightM most distance to the right, m
 */
record FallBox(double backM, double forwardM, double leftM, double rightM) {
    private static final double STEP_S = 0.02;
    private static final double GRAVITY_M_PER_S2 = 9.80665;
    private static final double SWING_RAD = Math.toRadians(6);
    private static final double SPEED_SPREAD_RATIO = 0.03;

    /**
     * How it is let go.
     *
     * @param heightM lower end above the ground, m
     * @param speedMPerS over the ground, m/s
     * @param aheadMPerS wind along the track, m/s; from behind is positive
     * @param rightMPerS wind across, m/s; from the left is positive
     * @param gustMPerS how far the wind may be off, m/s
     */
    record Release(
            double heightM,
            double speedMPerS,
            double aheadMPerS,
            double rightMPerS,
            double gustMPerS) {}

    /**
     * What is let go.
     *
     * @param lightCoefficient drag over mass at 1 m/s at its lightest and largest, 1/m
     * @param heavyCoefficient the same at its heaviest and smallest, 1/m
     * @param lineM from hook to load, m
     * @param trailRad how far it hangs back, rad
     */
    record Body(double lightCoefficient, double heavyCoefficient, double lineM, double trailRad) {}

    /** The box of all landings. */
    static FallBox of(Body body, Release release) {
        double back = Double.POSITIVE_INFINITY;
        double forward = Double.NEGATIVE_INFINITY;
        double left = Double.NEGATIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        for (int corner = 0; corner < 64; corner++) {
            double[] at = landingM(body, release, corner);
            back = Math.min(back, at[0]);
            forward = Math.max(forward, at[0]);
            left = Math.max(left, -at[1]);
            right = Math.max(right, at[1]);
        }
        return new FallBox(back, forward, left, right);
    }

    private static int side(int corner, int bit) {
        return (corner >> bit & 1) == 0 ? -1 : 1;
    }

    /** Along and across, m. */
    private static double[] landingM(Body body, Release release, int corner) {
        double k = side(corner, 0) > 0 ? body.heavyCoefficient() : body.lightCoefficient();
        double windAhead = release.aheadMPerS() + side(corner, 1) * release.gustMPerS();
        double windRight = release.rightMPerS() + side(corner, 2) * release.gustMPerS();
        double swing = Math.sqrt(2 * GRAVITY_M_PER_S2 * body.lineM() * (1 - Math.cos(SWING_RAD)));
        double x = body.lineM() * Math.sin(side(corner, 3) * SWING_RAD - body.trailRad());
        double y = side(corner, 4) * body.lineM() * Math.sin(SWING_RAD);
        double vx =
                release.speedMPerS() * (1 + side(corner, 5) * SPEED_SPREAD_RATIO)
                        + side(corner, 3) * swing;
        double vy = side(corner, 4) * swing;
        double vz = 0;
        double z = release.heightM();
        while (z > 0) {
            double ax = vx - windAhead;
            double ay = vy - windRight;
            double through = k * Math.sqrt(ax * ax + ay * ay + vz * vz);
            vx -= through * ax * STEP_S;
            vy -= through * ay * STEP_S;
            vz -= (through * vz + GRAVITY_M_PER_S2) * STEP_S;
            x += vx * STEP_S;
            y += vy * STEP_S;
            z += vz * STEP_S;
        }
        return new double[] {x, y};
    }
}
