package underhook.core.flown;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.LoadId;

/** Why a tap is not allowed, in words. */
final class Refusals {
    private Refusals() {}

    static Optional<Finding> of(FindingCode code, Tap tap, String message) {
        return Optional.of(
                new Finding(
                        code,
                        Severity.STOP,
                        subject(tap),
                        tap.kind().name(),
                        "",
                        "",
                        "PRACTICE",
                        message));
    }

    static Optional<Finding> outOfOrder(Tap tap, String because) {
        return of(FindingCode.TAP_OUT_OF_ORDER, tap, "This was tapped, but " + because + ".");
    }

    static Optional<Finding> lineWithPeople(Tap tap) {
        return of(
                FindingCode.LINE_ON_WITH_PEOPLE,
                tap,
                "The line may not hang on the hook while people are aboard or get in.");
    }

    static Optional<Finding> notConfirmed(Tap tap, List<LoadId> loads) {
        return of(
                FindingCode.RELEASE_NOT_CONFIRMED,
                tap,
                named(loads)
                        + (loads.size() == 1 ? " was" : " were")
                        + " not called free by two people. A sling that has not parted ties the"
                        + " machine to the load.");
    }

    /** Heights, masses and room were worked out with the one, and the other hangs there. */
    static Optional<Finding> otherLine(Tap tap, double plannedM, double hangsM) {
        return of(
                FindingCode.LINE_OTHER,
                tap,
                String.format(
                        Locale.ROOT,
                        "A line of %s m hangs there; this load was planned on a line of %s m.",
                        metres(hangsM),
                        metres(plannedM)));
    }

    /** To the tenth, as lines are told; whole metres without one. */
    private static String metres(double lengthM) {
        return BigDecimal.valueOf(Math.round(lengthM * 10), 1).stripTrailingZeros().toPlainString();
    }

    static Finding unknownTap(Tap tap, String undone) {
        return outOfOrder(tap, "there is no tap " + undone + " to take back").orElseThrow();
    }

    static String named(List<LoadId> loads) {
        return loads.stream().map(LoadId::value).collect(Collectors.joining(", "));
    }

    static Optional<Finding> stillHangs(Tap tap, List<LoadId> loads) {
        return outOfOrder(
                tap,
                named(loads)
                        + (loads.size() == 1 ? " still hangs" : " still hang")
                        + " on the hook");
    }

    private static String subject(Tap tap) {
        return tap.loads().isEmpty() ? tap.device() : tap.loads().get(0).value();
    }
}
