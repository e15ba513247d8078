package underhook.core.aircraft;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * Whether a descent comes near the state in which a rotor sinks in its own wake.
 *
 * <p>Two published lines; the more cautious warns. The training line (300 ft/min below the speed of
 * translational lift) comes long before the boundary of a model fitted to measurements, which tells how
 * near it is. A hint for planning; the flight manual decides.
 *
 * @param descentMPerS straight down through the air, m/s, negative in a climb
 * @param airspeedMPerS level through the air, m/s, not negative: a tail wind on the way in takes from it
 * @param inducedMPerS induced speed in the hover at that mass and air, m/s, above 0
 */
public record VortexRing(double descentMPerS, double airspeedMPerS, double inducedMPerS) {
    /** Descent from which training warns, m/s: 300 ft/min. @source FAA-8083-21B chapter 11 */
    private static final double TRAINING_DESCENT_M_PER_S = Units.ftPerMinuteToMPerS(300);

    /** Speed by which translational lift is surely there, m/s: 24 kt. @source FAA-8083-21B chapter 2 */
    public static final double TRAINING_AIRSPEED_M_PER_S = Units.ktToMPerS(24);

    /** Ends of the unstable region, over induced speed. @source JOHNSON-2005 page 24 */
    private static final double FIRST_DESCENT_RATIO = 0.45;

    private static final double LAST_DESCENT_RATIO = 1.50;
    private static final double LAST_AIRSPEED_RATIO = 0.95;

    /** How near it is. */
    public enum Nearness {
        CLEAR,
        /** Beyond the line that training teaches. */
        WARNED,
        /** Within the region of the model. */
        INSIDE
    }

    /**
     * Descents between which the model is unstable.
     *
     * @param fromMPerS m/s, downward positive
     * @param toMPerS m/s, downward positive
     */
    public record Band(double fromMPerS, double toMPerS) {}

    public VortexRing {
        if (!Double.isFinite(descentMPerS)) {
            throw new IllegalArgumentException(
                    "descentMPerS (" + descentMPerS + ") must be finite.");
        }
        Ranges.requireNotNegative(airspeedMPerS, "airspeedMPerS");
        Ranges.requirePositive(inducedMPerS, "inducedMPerS");
    }

    /**
     * The fastest descent that both lines leave clear below the speed of translational lift, m/s: the
     * training line, or less where the model's region begins before it.
     *
     * @param inducedMPerS induced speed in the hover, m/s, above 0
     */
    public static double cautiousDescentMPerS(double inducedMPerS) {
        return Math.min(TRAINING_DESCENT_M_PER_S, firstDescentMPerS(inducedMPerS));
    }

    /** Where the model's region begins without airspeed, m/s. */
    public static double firstDescentMPerS(double inducedMPerS) {
        Ranges.requirePositive(inducedMPerS, "inducedMPerS");
        return FIRST_DESCENT_RATIO * inducedMPerS;
    }

    /**
     * The model's region at this airspeed; empty where it is faster than the region reaches.
     *
     * @source JOHNSON-2005 page 23: with q = 1 − (Vx/0.95)², upper to the power 0.2, lower to 1.5
     */
    public Optional<Band> findBand() {
        double speed = airspeedMPerS / inducedMPerS / LAST_AIRSPEED_RATIO;
        double q = 1 - speed * speed;
        if (!(q > 0)) {
            return Optional.empty();
        }
        double middle = (FIRST_DESCENT_RATIO + LAST_DESCENT_RATIO) / 2;
        double half = (LAST_DESCENT_RATIO - FIRST_DESCENT_RATIO) / 2;
        return Optional.of(
                new Band(
                        inducedMPerS * (middle - half * Math.pow(q, 0.2)),
                        inducedMPerS * (middle + half * Math.pow(q, 1.5))));
    }

    /** How near this descent is. */
    public Nearness nearness() {
        boolean inside =
                findBand()
                        .filter(
                                band ->
                                        descentMPerS >= band.fromMPerS()
                                                && descentMPerS <= band.toMPerS())
                        .isPresent();
        if (inside) {
            return Nearness.INSIDE;
        }
        boolean warned =
                descentMPerS >= TRAINING_DESCENT_M_PER_S
                        && airspeedMPerS < TRAINING_AIRSPEED_M_PER_S;
        return warned ? Nearness.WARNED : Nearness.CLEAR;
    }

    /** What must be said of it, about the given leg or place: CAUTION when near, STOP within. */
    public List<Finding> findings(String subject) {
        Nearness near = nearness();
        if (near == Nearness.CLEAR) {
            return List.of();
        }
        boolean inside = near == Nearness.INSIDE;
        String descent = text(descentMPerS);
        return List.of(
                new Finding(
                        FindingCode.VORTEX_RING,
                        inside ? Severity.STOP : Severity.CAUTION,
                        subject,
                        descent,
                        text(TRAINING_DESCENT_M_PER_S),
                        "m/s",
                        inside ? "JOHNSON-2005" : "FAA-8083-21B",
                        "A descent of "
                                + descent
                                + " m/s with "
                                + text(airspeedMPerS)
                                + " m/s of airspeed "
                                + (inside ? "lies within" : "comes near")
                                + " the vortex ring. Descend slower, or keep the speed up."));
    }

    private static String text(double speedMPerS) {
        return String.format(Locale.ROOT, "%.1f", speedMPerS);
    }
}
