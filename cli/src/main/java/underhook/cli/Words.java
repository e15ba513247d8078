package underhook.cli;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.app.port.OutputWriter;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadId;
import underhook.core.plan.Anew;
import underhook.core.plan.DayPrice;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Odds;
import underhook.core.plan.Plan;
import underhook.core.plan.RefusedComfort.Comfort;
import underhook.core.plan.Summary;
import underhook.core.plan.Trade;
import underhook.core.unit.Units;

/** Findings and plans as lines of text. */
final class Words {
    /** A day that is less often in time is told how to make it surer. */
    private static final double SURE_FRACTION = 0.8;

    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter CLOCK_AND_OFFSET =
            DateTimeFormatter.ofPattern("HH:mm:ss xxx", Locale.ROOT);

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
        return summary(plan, zone, LongWork.Stop.NONE);
    }

    /**
     * The same.
     *
     * @param stop whether somebody stopped the work on it
     */
    static String summary(Plan plan, ZoneId zone, LongWork.Stop stop) {
        String leftOut =
                plan.leftOut().stream()
                        .map(out -> out.load() + " (" + out.code() + ")")
                        .collect(Collectors.joining(", "));
        return String.format(
                Locale.ROOT,
                "%s: plan %s%n%s%s, %.1f min of flying, finished %s on %s%n%s%sleft out: %s%n%s%s",
                plan.job(),
                plan.id(),
                cutShort(plan, stop),
                counts(
                        plan.summary().rotations(),
                        plan.summary().refuels(),
                        plan.summary().lineChanges()),
                Math.ceil(Units.sToMinutes(plan.summary().flightS()) * 10) / 10,
                clock(plan.summary().finishAt(), zone),
                LocalDate.ofInstant(plan.summary().finishAt(), zone),
                bounds(plan, zone),
                plan.odds().map(odds -> odds(odds, zone)).orElse(""),
                leftOut.isEmpty() ? "nothing" : leftOut,
                counted(plan.findings().size(), "finding"),
                front(plan, zone));
    }

    /** Why the plan is not what the whole search would have found, a line each; empty where it is. */
    private static String cutShort(Plan plan, LongWork.Stop stop) {
        boolean cut = plan.summary().cutShort();
        boolean byTime = cut && stop != LongWork.Stop.IN_THE_WORK;
        String time =
                byTime
                        ? line(
                                "cut short: the time was over before the search was done"
                                        + (plan.summary().anew().isPresent()
                                                ? ""
                                                : "; more time (--seconds) may find a better day"))
                        : "";
        if (stop == LongWork.Stop.NONE) {
            return time;
        }
        return time
                + line(
                        cut && !byTime
                                ? "stopped: not everything was looked for; a better day may be there,"
                                        + " days to choose from may be missing, and bounds are as far"
                                        + " as they were proven by then"
                                : "stopped when the search was over: nothing of the plan is missing for"
                                        + " that");
    }

    /** What a stop leaves unsaid of a new order, in one line; empty where nobody stopped it. */
    static String ofNewOrder(LongWork.Stop stop) {
        return switch (stop) {
            case NONE -> "";
            case IN_THE_WORK ->
                    line(
                            "stopped: a better order near the known one was not looked for to the end");
            case AFTER_THE_WORK ->
                    line(
                            "stopped when the search was over: nothing of the new order is missing for"
                                    + " that");
        };
    }

    private static String line(String text) {
        return text + System.lineSeparator();
    }

    /** What no order goes below, in one line; empty where nothing is proven. */
    private static String bounds(Plan plan, ZoneId zone) {
        Summary day = plan.summary();
        if (day.lowerBoundFlightS().isEmpty()) {
            return "";
        }
        double leastS = day.lowerBoundFlightS().getAsDouble();
        String combined =
                day.provenFor().filter(Summary.Bounds.ALL_COMBINATIONS::equals).isPresent()
                        ? " of these loads, however combined,"
                        : " of these loads, combined on the hook as they are,";
        String flying =
                leastS >= day.flightS()
                        ? "proven: no order" + combined + " flies less"
                        : String.format(
                                Locale.ROOT,
                                "no order%s flies less than %.1f min, this one %.1f %% more",
                                combined,
                                Math.floor(Units.sToMinutes(leastS) * 10) / 10,
                                Math.ceil(1000 * (day.flightS() - leastS) / leastS) / 10);
        return flying
                + day.finishBoundAt()
                        .map(
                                at ->
                                        at.isBefore(day.finishAt())
                                                ? "; none ends before " + clock(at, zone)
                                                : "; none ends earlier")
                        .orElse("")
                + System.lineSeparator()
                + held(day);
    }

    /** Where what is not proven lies, a line each. */
    private static String held(Summary day) {
        Summary.Held held = day.heldBounds();
        return held("with people flown as here", held.peopleS(), day)
                + held("with people flown and each lift in its hour as here", held.hoursS(), day);
    }

    private static String held(String how, OptionalDouble leastS, Summary day) {
        return leastS.isPresent()
                ? how + " " + atLeast(day, leastS.getAsDouble()) + System.lineSeparator()
                : "";
    }

    private static String atLeast(Summary day, double leastS) {
        return String.format(
                Locale.ROOT,
                "none flies less than %.1f min, this one %.1f %% more",
                Math.floor(Units.sToMinutes(leastS) * 10) / 10,
                Math.ceil(1000 * Math.max(0, day.flightS() - leastS) / leastS) / 10);
    }

    /** What came of asking for so many of 100 replayed days in time: what is left, what falls with it, what it costs. */
    static String inTime(OutputWriter.Output made, int asked) {
        Plan plan = made.plan();
        List<LoadId> left =
                plan.leftOut().stream()
                        .filter(out -> out.code() == FindingCode.ANOTHER_DAY)
                        .map(LeftOut::load)
                        .toList();
        double reached = plan.odds().map(odds -> percent(odds.allInTime())).orElse(0.0);
        List<LoadId> fall = falling(made, left);
        String told =
                "asked for "
                        + asked
                        + " of 100 replayed days in time: "
                        + (left.isEmpty() ? "nothing" : joined(left))
                        + " left for another day"
                        + (fall.isEmpty() ? "" : ", and what waits for that: " + joined(fall))
                        + (reached < asked
                                ? String.format(
                                        Locale.ROOT, "; the surest day found has %.0f", reached)
                                : "");
        return Stream.concat(
                        Stream.of(told),
                        plan.findings().stream()
                                .filter(finding -> finding.code() == FindingCode.SURER_DAY)
                                .map(
                                        finding ->
                                                (finding.limit().isEmpty()
                                                                ? ""
                                                                : finding.subject() + ": ")
                                                        + finding.message()))
                .collect(Collectors.joining(System.lineSeparator()));
    }

    /** Loads left out because what must come before them is left. */
    private static List<LoadId> falling(OutputWriter.Output made, List<LoadId> left) {
        List<LoadId> gone = new ArrayList<>(left);
        List<LoadId> waiting =
                made.plan().leftOut().stream()
                        .filter(out -> out.code() == FindingCode.ORDER_RULE)
                        .map(LeftOut::load)
                        .collect(Collectors.toCollection(ArrayList::new));
        boolean more = true;
        while (more) {
            List<LoadId> fall =
                    waiting.stream()
                            .filter(
                                    load ->
                                            made.readJob().job().getLoad(load).after().stream()
                                                    .anyMatch(one -> gone.contains(one.load())))
                            .toList();
            more = waiting.removeAll(fall);
            gone.addAll(fall);
        }
        return gone.subList(left.size(), gone.size());
    }

    private static String joined(List<LoadId> loads) {
        return loads.stream().map(LoadId::value).collect(Collectors.joining(", "));
    }

    /** How often it lifts, stands for fuel and changes the line. */
    static String counts(int rotations, int refuels, int lineChanges) {
        return counted(rotations, "rotation")
                + ", "
                + counted(refuels, "fuel stop")
                + ", "
                + counted(lineChanges, "line change");
    }

    /** Of one thing or of several. */
    static String counted(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    /** The hour in the job's zone; the day stands once. Where the clock changes it has its offset: one hour comes twice. */
    static String clock(Instant at, ZoneId zone) {
        LocalDate day = LocalDate.ofInstant(at, zone);
        boolean isChanged =
                !day.atStartOfDay(zone)
                        .getOffset()
                        .equals(day.plusDays(1).atStartOfDay(zone).getOffset());
        return (isChanged ? CLOCK_AND_OFFSET : CLOCK).format(at.atZone(zone));
    }

    /** To the cent, so that parts add up to their sum. */
    static String money(long cents) {
        return cents / 100 + String.format(Locale.ROOT, ".%02d", cents % 100);
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
                                                "%nprice: %s %s: flying %s, machine standing %s,"
                                                        + " people %s, refused comforts %s%s",
                                                money(price.totalCents()),
                                                price.currency(),
                                                money(price.flyingCents()),
                                                money(price.standingCents()),
                                                money(price.peopleCents()),
                                                money(price.comfortsCents()),
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
                            clock(trade.finishAt(), zone),
                            trade.totalCents() / 100,
                            trade.flyingRatePercent()));
        }
        return told.toString();
    }

    /** What a change costs, and what is left of the day. */
    static String costs(Anew anew, ZoneId zone) {
        String currency = anew.rest().currency();
        String dearer =
                anew.moreCents().isPresent()
                        ? ", "
                                + Math.abs(anew.moreCents().getAsLong()) / 100
                                + " "
                                + currency
                                + (anew.moreCents().getAsLong() < 0 ? " less" : " more")
                        : "";
        return String.format(
                Locale.ROOT,
                "against %s: %s of flying, ends %s%s; the rest of the day, from %s on, costs %d %s",
                anew.instead(),
                minutes(anew.moreFlightS(), "less", "more"),
                minutes(anew.laterS(), "earlier", "later"),
                dearer,
                clock(anew.fromAt(), zone),
                anew.rest().totalCents() / 100,
                currency);
    }

    /** In tenths, away from nothing. */
    private static String minutes(double differenceS, String less, String more) {
        return String.format(
                Locale.ROOT,
                "%.1f min %s",
                Math.ceil(Units.sToMinutes(Math.abs(differenceS)) * 10) / 10,
                differenceS < 0 ? less : more);
    }

    /** How often each comfort is refused, in the order of the kinds. */
    private static String refused(DayPrice price) {
        Map<Comfort, Integer> counts = new EnumMap<>(Comfort.class);
        price.comforts().forEach(one -> counts.merge(one.comfort(), 1, Integer::sum));
        return counts.isEmpty()
                ? ""
                : counts.entrySet().stream()
                        .map(one -> one.getKey().word() + " " + counted(one.getValue(), "time"))
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
                        + " fuel %.0f), nine of ten end by %s%s%n"
                        + "ended at its limits, a day places %s of %d loads nine times of"
                        + " ten, %s half of the time%s%n",
                percent(odds.allInTime()),
                percent(odds.beforeWind()),
                percent(odds.beforeDark()),
                percent(odds.withinDuty()),
                percent(odds.withinFuel()),
                clock(odds.finishLateAt(), zone),
                most,
                orMore(odds.placed().mostDays(), odds.placed().planned()),
                odds.placed().planned(),
                orMore(odds.placed().halfDays(), odds.placed().planned()),
                odds.allInTime().leastFraction() < SURE_FRACTION
                        ? "; plan --in-time=80 looks for loads to leave for another day"
                        : "");
    }

    private static String orMore(int placed, int planned) {
        return placed < planned ? placed + " or more" : "all";
    }

    private static double percent(Odds.Chance chance) {
        return Math.floor(100 * chance.leastFraction());
    }

    private static String withUnit(String value, String unit) {
        return unit.isEmpty() || value.endsWith(unit) ? value : value + " " + unit;
    }
}
