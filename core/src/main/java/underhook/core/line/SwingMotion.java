package underhook.core.line;

import underhook.core.ode.Motion;
import underhook.core.unit.Units;

/**
 * Equations of motion of a load on a taut straight line under a moving hook.
 *
 * <pre>
 * u   = (sin a cos b, sin b, −cos a cos b)      direction from the hook to the load
 * f   = (W/I) (−hook's acceleration − g) + drag/I
 * a'' = (f · ea / L + 2 sin b a' b') / cos b,   ea = (cos a, 0, sin a)
 * b'' =  f · eb / L − sin b cos b a'²,          eb = (−sin a sin b, cos b, cos a sin b)
 * </pre>
 *
 * <p>Drag is against the movement through the air and grows with its square. Changeable; one thread.
 *
 * @source DERIVED Lagrange's equations of a spherical pendulum in a moving frame
 */
final class SwingMotion implements Motion {
    static final int FORE = 0;
    static final int SIDE = 1;
    static final int FORE_RATE = 2;
    static final int SIDE_RATE = 3;
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;

    private final SlungLoad load;
    private final SwingAir air;
    private final double lengthM;
    private final double restoringRatio;
    private final double retardationCoefficient;
    private final double loadDragFraction;

    private double partStartS;
    private double speedForwardMPerS;
    private double speedRightMPerS;
    private double forwardMPerS2;
    private double rightMPerS2;

    // What the last call of prepare found: drag over inertia, in the three directions.
    private double dragForwardMPerS2;
    private double dragRightMPerS2;
    private double dragUpMPerS2;

    SwingMotion(SlungLoad load, SwingAir air) {
        this.load = load;
        this.air = air;
        lengthM = load.lengthM();
        restoringRatio = load.restoringKg() / load.inertiaKg();
        retardationCoefficient =
                0.5 * air.densityKgPerM3() * load.wholeDragAreaM2() / load.inertiaKg();
        loadDragFraction =
                load.wholeDragAreaM2() > 0 ? load.dragAreaM2() / load.wholeDragAreaM2() : 0;
    }

    /** The hook's speed at the start of a part. */
    void setSpeed(double startS, double forwardMPerS, double rightMPerS) {
        partStartS = startS;
        speedForwardMPerS = forwardMPerS;
        speedRightMPerS = rightMPerS;
    }

    /** The hook's acceleration in the part. */
    void setAcceleration(double newForwardMPerS2, double newRightMPerS2) {
        forwardMPerS2 = newForwardMPerS2;
        rightMPerS2 = newRightMPerS2;
    }

    /** Where the line hangs at rest in the present part's starting speed without gust. */
    SwingState resting() {
        double forward = air.windForwardMPerS() - speedForwardMPerS;
        double right = air.windRightMPerS() - speedRightMPerS;
        double speed = Math.hypot(forward, right);
        double trail = load.trailRad(speed, air.densityKgPerM3());
        if (!(speed > 0)) {
            return SwingState.PLUMB;
        }
        double sine = Math.sin(trail);
        return new SwingState(
                Math.atan2(sine * forward / speed, Math.cos(trail)),
                Math.asin(sine * right / speed),
                0,
                0);
    }

    @Override
    public void rates(double timeS, double[] state, double[] rates) {
        double fore = state[FORE];
        double side = state[SIDE];
        double sinFore = Math.sin(fore);
        double cosFore = Math.cos(fore);
        double sinSide = Math.sin(side);
        double cosSide = Math.cos(side);
        double foreRate = state[FORE_RATE];
        double sideRate = state[SIDE_RATE];
        double moveForward = cosFore * cosSide * foreRate - sinFore * sinSide * sideRate;
        double moveUp = sinFore * cosSide * foreRate + cosFore * sinSide * sideRate;
        drag(timeS, moveForward, cosSide * sideRate, moveUp);
        double forward = dragForwardMPerS2 - restoringRatio * forwardMPerS2;
        double right = dragRightMPerS2 - restoringRatio * rightMPerS2;
        double up = dragUpMPerS2 - restoringRatio * G;
        double alongFore = forward * cosFore + up * sinFore;
        double alongSide = sinSide * (up * cosFore - forward * sinFore) + right * cosSide;
        rates[FORE] = foreRate;
        rates[SIDE] = sideRate;
        rates[FORE_RATE] = (alongFore / lengthM + 2 * sinSide * foreRate * sideRate) / cosSide;
        rates[SIDE_RATE] = alongSide / lengthM - sinSide * cosSide * foreRate * foreRate;
    }

    private void drag(double timeS, double forwardRadPerS, double rightRadPerS, double upRadPerS) {
        double inPartS = timeS - partStartS;
        double gust = air.gust().strengthFraction(timeS);
        double forward =
                speedForwardMPerS
                        + forwardMPerS2 * inPartS
                        + lengthM * forwardRadPerS
                        - air.windForwardMPerS()
                        - gust * air.gust().forwardMPerS();
        double right =
                speedRightMPerS
                        + rightMPerS2 * inPartS
                        + lengthM * rightRadPerS
                        - air.windRightMPerS()
                        - gust * air.gust().rightMPerS();
        double up = lengthM * upRadPerS;
        double through =
                -retardationCoefficient * Math.sqrt(forward * forward + right * right + up * up);
        dragForwardMPerS2 = through * forward;
        dragRightMPerS2 = through * right;
        dragUpMPerS2 = through * up;
    }

    /**
     * Pull of the line on the load, N; below 0 only a strut could hold it there.
     *
     * @param rates filled here
     */
    double loadTensionN(double timeS, double[] state, double[] rates) {
        rates(timeS, state, rates);
        double dragOverMass = loadDragFraction * load.inertiaKg() / load.massKg();
        return load.massKg()
                * (lengthM * turnRadPerS(state) * turnRadPerS(state)
                        + outwardMPerS2(
                                state,
                                dragOverMass * dragForwardMPerS2 - forwardMPerS2,
                                dragOverMass * dragRightMPerS2 - rightMPerS2,
                                dragOverMass * dragUpMPerS2 - G));
    }

    /** What the line itself adds up to the hook, N. */
    double lineTensionN(double[] state) {
        return load.lineMassKg()
                * (lengthM / 2 * turnRadPerS(state) * turnRadPerS(state)
                        + outwardMPerS2(state, -forwardMPerS2, -rightMPerS2, -G));
    }

    private static double turnRadPerS(double[] state) {
        return Math.hypot(Math.cos(state[SIDE]) * state[FORE_RATE], state[SIDE_RATE]);
    }

    private static double outwardMPerS2(
            double[] state, double awayMPerS2, double sidewardMPerS2, double upMPerS2) {
        double cosSide = Math.cos(state[SIDE]);
        return awayMPerS2 * Math.sin(state[FORE]) * cosSide
                + sidewardMPerS2 * Math.sin(state[SIDE])
                - upMPerS2 * Math.cos(state[FORE]) * cosSide;
    }
}
