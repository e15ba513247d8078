package underhook.core.job;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;

/**
 * Somebody answers for one finding, with a reason that is printed wherever the finding is.
 *
 * @param subject of the finding: id of a load, a place or a leg
 * @param by role of who answers for it
 */
public record Waiver(FindingCode code, String subject, String reason, String by, LocalDate on) {
    /** Limits of the machine, the hook, the line and what is known; no reason lifts them. */
    private static final Set<FindingCode> FIXED =
            EnumSet.of(
                    FindingCode.MASS_MISSING,
                    FindingCode.HOOK_LIMIT,
                    FindingCode.LINE_LIMIT,
                    FindingCode.EXTERNAL_MASS_LIMIT,
                    FindingCode.HOVER_MASS,
                    FindingCode.FUEL_TOO_LOW_FOR_LOAD,
                    FindingCode.CHART_RANGE,
                    FindingCode.CENTRE_OF_GRAVITY,
                    FindingCode.RIGGING_LIMIT,
                    FindingCode.OUTSIDE_TERRAIN,
                    FindingCode.ROOM_REFUSED,
                    FindingCode.NO_LINE_LONG_ENOUGH,
                    FindingCode.NO_WAY);

    /** For these a load that would stay behind is flown. */
    private static final Set<FindingCode> LIFTED =
            EnumSet.of(FindingCode.GUY_GAP, FindingCode.FLIES_BADLY);

    public Waiver {
        Objects.requireNonNull(code, "code");
        Objects.requireNonNull(subject, "subject");
        Objects.requireNonNull(on, "on");
        if (reason.isBlank() || by.isBlank()) {
            throw new IllegalArgumentException("a waiver needs a reason and who answers for it.");
        }
        if (isFixed(code)) {
            throw new IllegalArgumentException(code + " cannot be waived.");
        }
    }

    /** Whether nobody can answer for findings of this code. */
    public static boolean isFixed(FindingCode code) {
        return FIXED.contains(code);
    }

    /** Whether it makes a STOP of this code a CAUTION. */
    public boolean isLifting() {
        return LIFTED.contains(code);
    }

    /**
     * Whether a reason changes anything about this finding: a note needs none, a limit takes none, and of
     * what keeps a load back few codes are lifted.
     */
    public static boolean canAnswer(Finding finding) {
        return switch (finding.severity()) {
            case NOTE -> false;
            case CAUTION -> !isFixed(finding.code());
            case STOP -> LIFTED.contains(finding.code());
        };
    }

    /** Whether it is about this. */
    public boolean isAbout(FindingCode otherCode, String otherSubject) {
        return code == otherCode && subject.equals(otherSubject);
    }
}
