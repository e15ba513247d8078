package underhook.cli;

import java.time.ZoneId;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import underhook.app.port.Written;
import underhook.core.finding.Finding;
import underhook.core.plan.DayPrice;
import underhook.core.plan.Odds;
import underhook.core.plan.Plan;
import underhook.core.plan.RefusedComfort.Comfort;
import underhook.core.plan.Trade;
import underhook.core.unit.Units;

/** Findings and plans as lines of text. */
final class Words {
    private Words() {}

    /** One line: severity, code, subject, message, numbers, source. */
    static String of(Finding finding) {
        StringBuilder line = new StringBuilder(finding.severity() + " " + finding.code());
        if (!finding.subject().isEmpty()) {
            line.append(' ').append(finding.subject());
        }
        line.append(": ").append(finding.message());
        if (!finding.value().isEmpty()) {
            line.append(" Found ").append(withUnit(finding.value(), finding.unit()));
            if (!finding.limit().isEmpty()) {
                line.append(", limit ").append(withUnit(finding.limit(), finding.unit()));
            }
            line.append('.');
        }
        return finding.source().isEmpty() ? line.toString() : line + " [" + finding.source() + "]";
    }

    /** The day in a few lines. */
    static String summary(Plan plan, ZoneId zone) {
        String leftOut =
                plan.leftOut().stream()
                        .map(out -> out.load() + " (" + out.code() + ")")
                        .collect(Collectors.joining(", "));
        return String.format(
                Locale.ROOT,
                "%s: plan %s%n%s%d rotations, %d fuel stops, %d line changes, %.1f min of flying,"
                        + " finished %s%n%sleft out: %s%n%d findings%s",
                plan.job(),
                plan.id(),
                plan.summary().cutShort()
                        ? String.format(
                                Locale.ROOT,
                                "cut short: the time was over before the search was done; more time may"
                                        + " find a better day%n")
                        : "",
                plan.summary().rotations(),
                plan.summary().refuels(),
                plan.summary().lineChanges(),
                Math.ceil(Units.sToMinutes(plan.summary().flightS()) * 10) / 10,
                Written.time(plan.summary().finishAt(), zone),
                plan.odds().map(odds -> odds(odds, zone)).orElse(""),
                leftOut.isEmpty() ? "nothing" : leftOut,
                plan.findings().size(),
                front(plan, zone));
    }

    /** The price, and what else could be flown. */
    private static String front(Plan plan, ZoneId zone) {
        StringBuilder told = new StringBuilder();
        plan.summary()
                .price()
                .ifPresent(
                        price ->
                                told.append(
                                        String.format(
                                                Locale.ROOT,
                                                "%nprice: %d %s: flying %d, machine standing %d,"
                                                        + " people %d, refused comforts %d%s",
                                                price.totalCents() / 100,
                                                price.currency(),
                                                price.flyingCents() / 100,
                                                price.standingCents() / 100,
                                                price.peopleCents() / 100,
                                                price.comfortsCents() / 100,
                                                refused(price))));
        // Alone it would only say again what stands above.
        List<Trade> front = plan.summary().front();
        for (Trade trade : front.size() > 1 ? front : List.<Trade>of()) {
            told.append(
                    String.format(
                            Locale.ROOT,
                            "%n%s: %.1f min of flying, finished %s, price %d, found with a flying"
                                    + " minute counted at %d %% of its rate",
                            trade.chosen() ? "this plan" : "or",
                            Math.ceil(Units.sToMinutes(trade.flightS()) * 10) / 10,
                            Written.time(trade.finishAt(), zone),
                            trade.totalCents() / 100,
                            trade.flyingRatePercent()));
        }
        return told.toString();
    }

    /** How often each comfort is refused, in the order of the kinds. */
    private static String refused(DayPrice price) {
        Map<Comfort, Long> counts = new EnumMap<>(Comfort.class);
        price.comforts().forEach(one -> counts.merge(one.comfort(), 1L, Long::sum));
        return counts.isEmpty()
                ? ""
                : counts.entrySet().stream()
                        .map(one -> one.getKey().word() + " " + one.getValue() + " times")
                        .collect(Collectors.joining(", ", " (", ")"));
    }

    /** How safe the finish is, in one line; chances are rounded down. */
    private static String odds(Odds odds, ZoneId zone) {
        String most =
                odds.gains().stream()
                        .findFirst()
                        .map(gain -> "; most would help: " + gain.what())
                        .orElse("");
        return String.format(
                Locale.ROOT,
                "in time on at least %.0f of 100 replayed days (wind %.0f, dark %.0f, duty %.0f,"
                        + " fuel %.0f), nine of ten end by %s%s%n",
                percent(odds.allInTime()),
                percent(odds.beforeWind()),
                percent(odds.beforeDark()),
                percent(odds.withinDuty()),
                percent(odds.withinFuel()),
                Written.time(odds.finishLateAt(), zone),
                most);
    }

    private static double percent(Odds.Chance chance) {
        return Math.floor(100 * chance.leastFraction());
    }

    private static String withUnit(String value, String unit) {
        return unit.isEmpty() || value.endsWith(unit) ? value : value + " " + unit;
    }
}
