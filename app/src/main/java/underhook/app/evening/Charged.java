package underhook.app.evening;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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
