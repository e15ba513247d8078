package underhook.core.line;

import underhook.core.ode.DormandPrince;
import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * How a line with weight and drag hangs in even air with a load at its end.
 *
 * <p>From the load up, with s along the line, t its angle from plumb and T its pull:
 *
 * <pre>
 * dT/ds = w cos t
 * T dt/ds = n cos² t − w sin t,   n = rho/2 V² Cd d
 * </pre>
 *
 * <p>The air pushes across the line with the part of its speed that is across it; along it, friction is
 * left out: some hundredths of the push across. No lift, no flutter, no twist.
 *
 * @source HOERNER-1965 chapter III cross-flow principle; DERIVED equilibrium of an element
 */
public final class LineTrail {
    private static final int ANGLE = 0;
    private static final int PULL = 1;
    private static final int ALONG = 2;
    private static final int UP = 3;
    private static final double TOLERANCE_RATIO = 1e-9;

    /** Points kept along the line. */
    private static final int POINTS = 65;

    private final double[] aftM = new double[POINTS];
    private final double[] belowM = new double[POINTS];
    private final double loadAngleRad;
    private final double hookAngleRad;
    private final double loadTensionN;
    private final double hookTensionN;

    /**
     * The air moving past.
     *
     * @param airspeedMPerS level, m/s, not negative
     * @param densityKgPerM3 kg/m³, above 0
     */
    public record Flow(double airspeedMPerS, double densityKgPerM3) {
        public Flow {
            Ranges.requireNotNegative(airspeedMPerS, "airspeedMPerS");
            Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        }

        double pressurePa() {
            return 0.5 * densityKgPerM3 * airspeedMPerS * airspeedMPerS;
        }
    }

    private LineTrail(
            HangingLine line, DormandPrince course, double loadAngleRad, double loadTensionN) {
        this.loadAngleRad = loadAngleRad;
        this.loadTensionN = loadTensionN;
        for (int i = 1; i < POINTS; i++) {
            double until = line.lengthM() * i / (POINTS - 1);
            while (course.time() < until) {
                course.step(until);
            }
            aftM[i] = course.at(ALONG);
            belowM[i] = course.at(UP);
        }
        hookAngleRad = course.at(ANGLE);
        hookTensionN = course.at(PULL);
        // So far measured from the load; turned over to be measured from the hook.
        for (int i = 0; i < POINTS; i++) {
            aftM[i] = course.at(ALONG) - aftM[i];
            belowM[i] = course.at(UP) - belowM[i];
        }
    }

    /**
     * The steady shape.
     *
     * @param loadKg what hangs at the end, kg, above 0: on an empty line the hook with its ballast
     * @param loadDragAreaM2 drag coefficient times frontal area, m², not negative
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static LineTrail of(HangingLine line, double loadKg, double loadDragAreaM2, Flow flow) {
        Ranges.requirePositive(loadKg, "loadKg");
        Ranges.requireNotNegative(loadDragAreaM2, "loadDragAreaM2");
        double weight = loadKg * Units.STANDARD_GRAVITY_M_PER_S2;
        double drag = flow.pressurePa() * loadDragAreaM2;
        double weightPerM = line.massKg() * Units.STANDARD_GRAVITY_M_PER_S2 / line.lengthM();
        double pushPerM = flow.pressurePa() * line.dragAreaM2() / line.lengthM();
        DormandPrince course =
                new DormandPrince(
                        (along, state, rates) -> {
                            double sine = Math.sin(state[ANGLE]);
                            double cosine = Math.cos(state[ANGLE]);
                            rates[ANGLE] =
                                    (pushPerM * cosine * cosine - weightPerM * sine) / state[PULL];
                            rates[PULL] = weightPerM * cosine;
                            rates[ALONG] = sine;
                            rates[UP] = cosine;
                        },
                        4,
                        TOLERANCE_RATIO);
        double angle = Math.atan2(drag, weight);
        double pull = Math.hypot(drag, weight);
        course.start(0, new double[] {angle, pull, 0, 0}, line.lengthM() / 100);
        return new LineTrail(line, course, angle, pull);
    }

    /** Line from plumb at the load, rad. */
    public double loadAngleRad() {
        return loadAngleRad;
    }

    /** Line from plumb at the belly hook, rad. */
    public double hookAngleRad() {
        return hookAngleRad;
    }

    /** The larger of both, rad: what a trail limit is held against. */
    public double largestAngleRad() {
        return Math.max(loadAngleRad, hookAngleRad);
    }

    /** Pull on the load, N. */
    public double loadTensionN() {
        return loadTensionN;
    }

    /** Pull on the belly hook, N. */
    public double hookTensionN() {
        return hookTensionN;
    }

    /** Load behind the hook, m. */
    public double aftM() {
        return aftM[0];
    }

    /** Load below the hook, m. */
    public double belowM() {
        return belowM[0];
    }

    /**
     * Least distance of line and load to a point of the machine, m, with the whole shape swung up and aft.
     *
     * @param pointAftM point behind the hook, m
     * @param pointAboveM point above the hook, m
     * @param swingRad swung so far beyond the steady shape, rad, not negative
     */
    public double nearestM(double pointAftM, double pointAboveM, double swingRad) {
        Ranges.requireNotNegative(swingRad, "swingRad");
        double sine = Math.sin(swingRad);
        double cosine = Math.cos(swingRad);
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < POINTS; i++) {
            double aft = aftM[i] * cosine + belowM[i] * sine;
            double below = belowM[i] * cosine - aftM[i] * sine;
            nearest = Math.min(nearest, Math.hypot(aft - pointAftM, below + pointAboveM));
        }
        // Between two kept points the line may come nearer by half their spacing at most.
        return Math.max(0, nearest - spacingM() / 2);
    }

    private double spacingM() {
        return Math.hypot(aftM[0] - aftM[1], belowM[0] - belowM[1]);
    }
}
