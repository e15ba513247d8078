package underhook.app.evening;

import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.core.billing.Invoice;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Job;

/**
 * What a day's invoice counts.
 *
 * @param findings what is not in it
 */
record Charged(Invoice.Quantities quantities, List<Finding> findings) {
    /** So much standby after the last shutdown is told. @source PRACTICE by then the machine is put away */
    private static final Duration LONG_AFTER = Duration.ofMinutes(15);

    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    static Charged of(Job job, List<LiftLine> lines, FlownDay flown) {
        List<Finding> findings = new ArrayList<>();
        long engine = Math.round(flown.sums().engineOnS() * 1000);
        long day =
                flown.taps().stream()
                        .filter(tap -> tap.kind() == TapKind.ENGINE_ON)
                        .map(Tap::at)
                        .min(Comparator.naturalOrder())
                        .flatMap(
                                from ->
                                        flown.lastAt()
                                                .map(to -> Duration.between(from, to).toMillis()))
                        .orElse(0L);
        long poles =
                lines.stream()
                        .filter(line -> line.isDone() && job.getKind(line.kind()).standsUp())
                        .count();
        Invoice.Quantities quantities =
                new Invoice.Quantities(
                        Math.round(flown.sums().flyingS() * 1000),
                        engine,
                        Math.max(0, day - engine),
                        flown.sums().lifts(),
                        (int) poles,
                        fuelTakenKg(flown, findings));
        return new Charged(quantities, findings);
    }

    private static Optional<Instant> lastShutdown(FlownDay flown) {
        return flown.taps().stream()
                .filter(tap -> tap.kind() == TapKind.ENGINE_OFF)
                .map(Tap::at)
                .max(Comparator.naturalOrder())
                .filter(at -> !flown.now().engineOn());
    }

    /** What was taken back when the day was over. */
    static List<Finding> corrected(Job job, List<Tap> told, FlownDay flown) {
        Optional<Instant> over = lastShutdown(flown).map(at -> at.plus(LONG_AFTER));
        List<Finding> findings = new ArrayList<>();
        for (Tap back : told) {
            if (over.filter(back.at()::isAfter).isEmpty()) {
                continue;
            }
            told.stream()
                    .filter(tap -> back.undoes().filter(tap.id()::equals).isPresent())
                    .filter(tap -> !flown.taps().contains(tap))
                    .findFirst()
                    .ifPresent(tap -> findings.add(corrected(job, tap, back)));
        }
        return findings;
    }

    private static Finding corrected(Job job, Tap tap, Tap back) {
        return new Finding(
                FindingCode.TAP_CORRECTED,
                Severity.NOTE,
                tap.loads().isEmpty() ? tap.device() : tap.loads().get(0).value(),
                tap.kind() + told(job, tap),
                "",
                "",
                "taps",
                "Taken back at "
                        + clock(job, back.at())
                        + " by "
                        + back.by()
                        + ", when the day was over"
                        + (back.note().isEmpty() ? "." : ": " + back.note() + "."));
    }

    /** When and by whom, and its id to find it again in the table. */
    static String told(Job job, Tap tap) {
        return " at " + clock(job, tap.at()) + " by " + tap.by() + ", id " + tap.id();
    }

    /** Whoever taps when the day is over lengthens the standby that is charged. */
    static Optional<Finding> standbyAfter(Job job, FlownDay flown) {
        Optional<Instant> off = lastShutdown(flown);
        Instant last = flown.lastAt().orElse(Instant.MIN);
        return off.map(at -> Duration.between(at, last))
                .filter(after -> after.compareTo(LONG_AFTER) > 0)
                .map(
                        after ->
                                Finding.of(
                                        FindingCode.STANDBY_AFTER,
                                        Severity.CAUTION,
                                        "standby",
                                        "taps",
                                        after.toMinutes()
                                                + " min of standby lie between the last shutdown"
                                                + " and the last tap, at "
                                                + clock(job, last)
                                                + ". Perhaps the day was over before."));
    }

    static String clock(Job job, Instant at) {
        return CLOCK.format(at.atZone(job.zone()));
    }

    /** Fuel after each refuelling less what was read before it; a refuelling without a reading is told. */
    private static long fuelTakenKg(FlownDay flown, List<Finding> findings) {
        double taken = 0;
        OptionalDouble before = OptionalDouble.empty();
        for (Tap tap : flown.taps()) {
            OptionalDouble read = tap.amount().massKg();
            if (tap.kind() == TapKind.REFUELLED && read.isPresent()) {
                if (before.isPresent()) {
                    taken += Math.max(0, read.getAsDouble() - before.getAsDouble());
                } else {
                    findings.add(
                            Finding.of(
                                    FindingCode.FUEL_NOT_READ,
                                    Severity.CAUTION,
                                    tap.device(),
                                    "taps",
                                    "Fuel was not read before a refuelling, so what was taken is"
                                            + " not known. It is not in the sums."));
                }
                before = OptionalDouble.empty();
            } else if (isGauge(tap)) {
                before = read;
            }
        }
        return Math.round(taken);
    }

    /** Whether somebody read the gauge at this tap. */
    static boolean isGauge(Tap tap) {
        return (tap.kind() == TapKind.LANDING
                        || tap.kind() == TapKind.ENGINE_OFF
                        || tap.kind() == TapKind.ENGINE_ON)
                && tap.amount().massKg().isPresent();
    }
}
