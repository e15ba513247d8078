package underhook.core.load;

import underhook.core.line.HangingLine;
import underhook.core.line.LineTrail;
import underhook.core.line.LineTrail.Flow;
import underhook.core.unit.Ranges;

/**
 * How fast a load or an empty line may be flown, and what decides.
 *
 * @param speedMPerS true airspeed, m/s, not negative; 0 when not even hanging still is allowed
 * @param governs what is reached first
 * @param trailRad largest angle of the line from plumb at that speed, rad
 * @param tailDistanceM line and load from the tail at that speed, swung by the allowance, m
 */
public record SpeedLimit(
        double speedMPerS, Governs governs, double trailRad, double tailDistanceM) {
    /** What is reached first. */
    public enum Governs {
        TRAIL,
        TAIL,
        AIRSPEED
    }

    /**
     * What is held against.
     *
     * @param trailRad largest steady trail angle, rad, in (0, π/2)
     * @param airspeedMPerS largest airspeed of machine or load, m/s, above 0, at most 100
     * @param swingRad how far beyond the steady shape the load may swing up and aft, rad, in [0, π/2)
     */
    public record Allowed(
            double trailRad, double airspeedMPerS, double swingRad, TailGeometry tail) {
        public Allowed {
            if (!(trailRad > 0 && trailRad < Math.PI / 2)) {
                throw new IllegalArgumentException(
                        "trailRad (" + trailRad + ") must lie in (0, π/2).");
            }
            if (!(airspeedMPerS > 0 && airspeedMPerS <= 100)) {
                throw new IllegalArgumentException(
                        "airspeedMPerS (" + airspeedMPerS + ") must lie in (0, 100].");
            }
            if (!(swingRad >= 0 && swingRad < Math.PI / 2)) {
                throw new IllegalArgumentException(
                        "swingRad (" + swingRad + ") must lie in [0, π/2).");
            }
        }
    }

    /**
     * What hangs, and in which air.
     *
     * @param loadKg at the line's end, kg, above 0; the lighter bound is the safe side
     * @param dragAreaM2 drag coefficient times frontal area of it, m², not negative
     * @param densityKgPerM3 densest air on the way, kg/m³
     */
    public record Hung(HangingLine line, double loadKg, double dragAreaM2, double densityKgPerM3) {
        public Hung {
            Ranges.requirePositive(loadKg, "loadKg");
            Ranges.requireNotNegative(dragAreaM2, "dragAreaM2");
            Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        }

        /** With more mass at the line's end. */
        public Hung withMoreKg(double moreKg) {
            return new Hung(line, loadKg + moreKg, dragAreaM2, densityKgPerM3);
        }

        LineTrail trail(double airspeedMPerS) {
            return LineTrail.of(line, loadKg, dragAreaM2, new Flow(airspeedMPerS, densityKgPerM3));
        }
    }

    /** Speeds are tried in steps of this, m/s, and the last one is halved down. */
    private static final double STEP_M_PER_S = 1;

    private static final int HALVINGS = 12;

    /** The fastest speed below which all limits hold, rounded down by a thousandth of a step at most. */
    public static SpeedLimit of(Hung hung, Allowed allowed) {
        double good = 0;
        double bad = Double.POSITIVE_INFINITY;
        while (good < allowed.airspeedMPerS()) {
            double next = Math.min(good + STEP_M_PER_S, allowed.airspeedMPerS());
            if (!holds(hung.trail(next), allowed)) {
                bad = next;
                break;
            }
            good = next;
        }
        if (bad < Double.POSITIVE_INFINITY) {
            for (int i = 0; i < HALVINGS; i++) {
                double middle = (good + bad) / 2;
                if (holds(hung.trail(middle), allowed)) {
                    good = middle;
                } else {
                    bad = middle;
                }
            }
        }
        return at(hung, allowed, good, Math.min(bad, allowed.airspeedMPerS()));
    }

    /** Whether all limits hold at a speed. */
    static boolean holdsAt(Hung hung, Allowed allowed, double speedMPerS) {
        return holds(hung.trail(speedMPerS), allowed);
    }

    private static SpeedLimit at(Hung hung, Allowed allowed, double goodMPerS, double badMPerS) {
        LineTrail trail = hung.trail(goodMPerS);
        LineTrail beyond = hung.trail(badMPerS);
        Governs governs = Governs.AIRSPEED;
        if (tailDistanceM(beyond, allowed) < allowed.tail().keepClearM()) {
            governs = Governs.TAIL;
        } else if (beyond.largestAngleRad() > allowed.trailRad()) {
            governs = Governs.TRAIL;
        }
        return new SpeedLimit(
                goodMPerS, governs, trail.largestAngleRad(), tailDistanceM(trail, allowed));
    }

    private static boolean holds(LineTrail trail, Allowed allowed) {
        return trail.largestAngleRad() <= allowed.trailRad()
                && tailDistanceM(trail, allowed) >= allowed.tail().keepClearM();
    }

    private static double tailDistanceM(LineTrail trail, Allowed allowed) {
        return trail.nearestM(
                allowed.tail().tailAftM(), allowed.tail().tailAboveM(), allowed.swingRad());
    }
}
