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
    private static final double GRAVITY_M_PER_S2 = Units.STANDARD_GRAVITY_M_PER_S2;

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

    // What the last call of rates found: direction to the load, turning rate squared over the
    // length, and
    // drag over inertia.
    private double aheadRatio;
    private double asideRatio;
    private double aboveRatio;
    private double inwardMPerS2;
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
        aheadRatio = sinFore * cosSide;
        asideRatio = sinSide;
        aboveRatio = -cosFore * cosSide;
        inwardMPerS2 = lengthM * (cosSide * cosSide * foreRate * foreRate + sideRate * sideRate);
        drag(timeS, moveForward, cosSide * sideRate, moveUp);
        double forward = dragForwardMPerS2 - restoringRatio * forwardMPerS2;
        double right = dragRightMPerS2 - restoringRatio * rightMPerS2;
        double up = dragUpMPerS2 - restoringRatio * GRAVITY_M_PER_S2;
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

    /** Load from the hook along the track, over the length, in the state last given to rates. */
    double aheadRatio() {
        return aheadRatio;
    }

    /** Load from the hook to the right, over the length, likewise. */
    double asideRatio() {
        return asideRatio;
    }

    /** Load from the hook upward, over the length, likewise. */
    double aboveRatio() {
        return aboveRatio;
    }

    /** Pull of the line on the load, N, likewise; below 0 only a strut could hold it there. */
    double loadTensionN() {
        double dragOverMass = loadDragFraction * load.inertiaKg() / load.massKg();
        return load.massKg()
                * (inwardMPerS2
                        + outwardMPerS2(
                                dragOverMass * dragForwardMPerS2 - forwardMPerS2,
                                dragOverMass * dragRightMPerS2 - rightMPerS2,
                                dragOverMass * dragUpMPerS2 - GRAVITY_M_PER_S2));
    }

    /** What the line itself adds up to the hook, N, likewise. */
    double lineTensionN() {
        return load.lineMassKg()
                * (inwardMPerS2 / 2
                        + outwardMPerS2(-forwardMPerS2, -rightMPerS2, -GRAVITY_M_PER_S2));
    }

    private double outwardMPerS2(double awayMPerS2, double sidewardMPerS2, double upMPerS2) {
        return awayMPerS2 * aheadRatio + sidewardMPerS2 * asideRatio + upMPerS2 * aboveRatio;
    }
}
