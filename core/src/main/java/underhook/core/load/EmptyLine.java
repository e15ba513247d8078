package underhook.core.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.unit.Ranges;

/**
 * What must hang on a line without a load, or on one that is pulled along, before it is flown.
 *
 * @param lengthM of the line or sling, m, above 0
 * @param endKg mass at its lower end: hook, swivel, ballast, kg, not negative
 * @param sheet whether an empty bag, net or tarpaulin hangs open on it
 */
public record EmptyLine(double lengthM, double endKg, boolean sheet) {
    /** Up to here a line counts as a short sling, m. @source SERVICE-LETTER-1727 slings of 5 to 10 m */
    public static final double SHORT_SLING_M = 10;

    /** Least ballast on a short sling, kg. @source SERVICE-LETTER-1727 15 kg on slings of 5 to 10 m */
    private static final double SHORT_SLING_BALLAST_KG = 15;

    /**
     * An empty line of 33 m with less than this in all has gone into a tail rotor, kg.
     *
     * @source TSB-A05P0103 33 m of line, whole mass under 40 kg
     */
    private static final double KNOWN_TOO_LIGHT_KG = 40;

    /** Least ballast on a line that is pulled along by the hook, kg. @source WAC-296-45 67527, 300 lb */
    public static final double PULLING_BALLAST_KG = 136.0777;

    /** Most angle from plumb of a line that is pulled, rad. @source WAC-296-45 67527 */
    private static final double PULLING_ANGLE_RAD = Math.toRadians(30);

    /** Most speed over the ground while pulling, m/s. @source WAC-296-45 67527, 15 mph */
    private static final double PULLING_SPEED_M_PER_S = 6.7056;

    public EmptyLine {
        Ranges.requirePositive(lengthM, "lengthM");
        Ranges.requireNotNegative(endKg, "endKg");
    }

    /** Ballast that is lacking for the rule of short slings, kg; 0 on longer ones, which have no rule. */
    public double lackingBallastKg() {
        return lengthM <= SHORT_SLING_M ? Math.max(0, SHORT_SLING_BALLAST_KG - endKg) : 0;
    }

    /** What must be said of flying it empty, about the given line. */
    public List<Finding> findings(String subject) {
        List<Finding> findings = new ArrayList<>();
        if (sheet) {
            findings.add(
                    Finding.of(
                            FindingCode.EMPTY_LINE_LIGHT,
                            Severity.STOP,
                            subject,
                            "SERVICE-LETTER-1727",
                            "An empty bag or net hangs open on the line and can fly into the tail rotor. Take it"
                                    + " off, or roll it up with ballast in it."));
        }
        if (lackingBallastKg() > 0) {
            findings.add(
                    light(subject, Severity.STOP, SHORT_SLING_BALLAST_KG, "SERVICE-LETTER-1727"));
        } else if (endKg < KNOWN_TOO_LIGHT_KG) {
            findings.add(light(subject, Severity.CAUTION, KNOWN_TOO_LIGHT_KG, "TSB-A05P0103"));
        }
        return findings;
    }

    /**
     * What must be said of pulling a line or rope along with the hook.
     *
     * @param angleRad line from plumb, rad
     * @param groundSpeedMPerS m/s
     */
    public List<Finding> pullingFindings(String subject, double angleRad, double groundSpeedMPerS) {
        Ranges.requireNotNegative(angleRad, "angleRad");
        Ranges.requireNotNegative(groundSpeedMPerS, "groundSpeedMPerS");
        List<Finding> findings = new ArrayList<>();
        if (endKg < PULLING_BALLAST_KG) {
            findings.add(light(subject, Severity.STOP, PULLING_BALLAST_KG, "WAC-296-45"));
        }
        if (angleRad > PULLING_ANGLE_RAD) {
            findings.add(
                    pulling(
                            subject,
                            new String[] {number(Math.toDegrees(angleRad)), "30", "°"},
                            "The pulled line hangs too far from plumb."));
        }
        if (groundSpeedMPerS > PULLING_SPEED_M_PER_S) {
            findings.add(
                    pulling(
                            subject,
                            new String[] {number(groundSpeedMPerS), "6.7", "m/s"},
                            "The line is pulled too fast."));
        }
        return findings;
    }

    private Finding light(String subject, Severity severity, double leastKg, String source) {
        String rest =
                severity == Severity.STOP
                        ? "; at least "
                                + number(leastKg)
                                + " kg keep it out of the tail rotor. Hang ballast on it."
                        : ". One of 33 m with less than "
                                + number(leastKg)
                                + " kg in all has gone into a tail rotor: keep to the speed of the"
                                + " empty line.";
        return new Finding(
                FindingCode.EMPTY_LINE_LIGHT,
                severity,
                subject,
                number(endKg),
                number(leastKg),
                "kg",
                source,
                "Only "
                        + number(endKg)
                        + " kg hang at the end of the line of "
                        + number(lengthM)
                        + " m"
                        + rest);
    }

    private static Finding pulling(String subject, String[] valueLimitUnit, String message) {
        return new Finding(
                FindingCode.LINE_PULLING,
                Severity.STOP,
                subject,
                valueLimitUnit[0],
                valueLimitUnit[1],
                valueLimitUnit[2],
                "WAC-296-45",
                message);
    }

    private static String number(double anyRatio) {
        return String.format(Locale.ROOT, "%.1f", anyRatio);
    }
}
