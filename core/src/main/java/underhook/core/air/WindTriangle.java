package underhook.core.air;

import java.util.Locale;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.unit.Units;

/**
 * What it takes to hold a track in a steady wind.
 *
 * @param headMPerS wind against the track, m/s; negative from behind
 * @param crossMPerS wind across the track, m/s; positive from the right
 * @param groundSpeedMPerS speed over the ground along the track, m/s, above 0
 * @param correctionRad heading minus track, rad; positive to the right
 */
public record WindTriangle(
        double headMPerS, double crossMPerS, double groundSpeedMPerS, double correctionRad) {

    /**
     * Solves the triangle of track, wind and true airspeed.
     *
     * @param trackTrueRad track over the ground, rad from true north
     * @param trueAirspeedMPerS true airspeed, m/s, above 0
     * @return the triangle, or refused with TRACK_NOT_HELD when the crosswind is as fast as the machine
     *     or the head wind lets it make no way
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED vector sum; example of FAA-PHAK chapter 16
     */
    public static Outcome<WindTriangle> of(
            double trackTrueRad, double trueAirspeedMPerS, Wind wind) {
        if (!Double.isFinite(trackTrueRad)) {
            throw new IllegalArgumentException(
                    "trackTrueRad (" + trackTrueRad + ") must be finite.");
        }
        if (!(trueAirspeedMPerS > 0 && trueAirspeedMPerS < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "trueAirspeedMPerS (" + trueAirspeedMPerS + ") must be above 0.");
        }
        double head = wind.headMPerS(trackTrueRad);
        double cross = wind.crossMPerS(trackTrueRad);
        double ground = groundSpeedOrZeroMPerS(trackTrueRad, trueAirspeedMPerS, wind);
        if (!(ground > 0)) {
            return Outcome.refused(notHeld(trueAirspeedMPerS, head, cross));
        }
        return Outcome.done(
                new WindTriangle(head, cross, ground, Math.asin(cross / trueAirspeedMPerS)));
    }

    /**
     * Speed over the ground along a track, m/s; 0 when the track cannot be held. For search loops.
     *
     * @source DERIVED vector sum
     */
    public static double groundSpeedOrZeroMPerS(
            double trackTrueRad, double trueAirspeedMPerS, Wind wind) {
        double cross = wind.crossMPerS(trackTrueRad);
        double rest = trueAirspeedMPerS * trueAirspeedMPerS - cross * cross;
        if (!(rest > 0)) {
            return 0;
        }
        return Math.max(0, Math.sqrt(rest) - wind.headMPerS(trackTrueRad));
    }

    private static Finding notHeld(double trueAirspeedMPerS, double headMPerS, double crossMPerS) {
        boolean across = Math.abs(crossMPerS) >= trueAirspeedMPerS;
        double found = across ? Math.abs(crossMPerS) : headMPerS;
        return new Finding(
                FindingCode.TRACK_NOT_HELD,
                Severity.STOP,
                "wind",
                knots(found),
                knots(trueAirspeedMPerS),
                "kt",
                "DERIVED",
                across
                        ? "The wind across the track is as fast as the machine: it cannot hold the track."
                        : "The wind against the track is as fast as the machine: it makes no way.");
    }

    private static String knots(double speedMPerS) {
        return String.format(Locale.ROOT, "%.1f", Units.mPerSToKt(speedMPerS));
    }
}
