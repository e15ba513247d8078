package underhook.planner.verify;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import underhook.core.finding.FindingCode;
import underhook.core.job.Rules;
import underhook.core.plan.Anew;
import underhook.core.plan.DayPrice;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;
import underhook.core.plan.Trade;

/** The day's figures are those of its steps. */
final class SummaryCheck {
    /** What bounds are worked out for: the placed loads, combined on the hook as they are or anyhow. */
    private static final Set<String> PROVEN_FOR = Set.of("chosen-combination", "all-combinations");

    /** Flying time and its price are of one figure, s. */
    private static final double PRICED_S = 0.1;

    /** Days to choose from are told by ways that were guessed in part; found, they are no more so much longer. */
    private static final double GUESSED_FACTOR = 1.02;

    private final Day day;

    SummaryCheck(Day day) {
        this.day = day;
    }

    void run() {
        List<Step> steps = day.plan().steps();
        Summary summary = day.plan().summary();
        double flown = steps.stream().filter(Day::flies).mapToDouble(Day::durationS).sum();
        demand(
                Math.abs(summary.flightS() - flown) <= Tolerance.TOTAL_TIME_S,
                "flightS",
                Told.of("plan", "Flying time is not the sum of its steps.")
                        .figures(summary.flightS(), flown, "s"));
        price(summary, flown);
        count("rotations", StepKind.ROTATION, summary.rotations());
        count("refuels", StepKind.REFUEL, summary.refuels());
        count("lineChanges", StepKind.LINE_CHANGE, summary.lineChanges());
        demand(
                steps.isEmpty()
                        || Math.abs(
                                        Day.betweenS(
                                                summary.finishAt(),
                                                steps.get(steps.size() - 1).endAt()))
                                <= Tolerance.TIME_S,
                "finishAt",
                Told.of(
                        "plan",
                        "The stated finish " + summary.finishAt() + " is not the last step's."));
        bounds(summary);
        demand(
                summary.provenFor().map(PROVEN_FOR::contains).orElse(true),
                "provenFor",
                Told.of("plan", "No bound is proven for " + summary.provenFor().orElse("") + "."));
        demand(
                summary.provenFor().isPresent()
                        || (summary.lowerBoundFlightS().isEmpty()
                                && summary.finishBoundAt().isEmpty()),
                "provenFor",
                Told.of("plan", "A bound is stated, and not for what it is proven."));
        demand(
                summary.provenFor().isEmpty()
                        || summary.lowerBoundFlightS().isPresent()
                        || summary.finishBoundAt().isPresent(),
                "provenFor",
                Told.of("plan", "Something is said to be proven, and no bound is stated."));
        summary.price()
                .ifPresent(
                        price ->
                                demand(
                                        isOfStated(price, summary.flightS()),
                                        "price",
                                        Told.of(
                                                "plan",
                                                "The price of flying is not that of the stated minutes.")));
        demand(
                day.plan().job().equals(day.job().name()),
                "job",
                Told.of("plan", "The plan is for job " + day.plan().job() + "."));
    }

    /** A bound lies above no day of these loads: not this one, nor one of those to choose from. */
    private void bounds(Summary summary) {
        double boundS = summary.lowerBoundFlightS().orElse(0);
        double mostS =
                summary.front().stream()
                        .mapToDouble(trade -> trade.flightS() * GUESSED_FACTOR)
                        .reduce(summary.flightS() + PRICED_S, Math::min);
        demand(
                boundS <= mostS,
                "lowerBoundFlightS",
                Told.of(
                                "plan",
                                "The bound lies above the plan, or above a day to choose from, so it is none.")
                        .figures(boundS, mostS, "s"));
        held("peopleAsFlownBoundS", summary, summary.heldBounds().peopleS().orElse(0));
        held("hoursAsFlownBoundS", summary, summary.heldBounds().hoursS().orElse(0));
        boolean finishBound =
                summary.finishBoundAt()
                        .map(
                                at ->
                                        !at.isAfter(summary.finishAt())
                                                && summary.front().stream()
                                                        .noneMatch(trade -> isBefore(trade, at)))
                        .orElse(true);
        demand(
                finishBound,
                "finishBoundAt",
                Told.of(
                        "plan",
                        "The bound on the finish lies after the finish of the plan, or of a day to choose from, so it"
                                + " is none."));
    }

    /** The day is one of those for which it is stated. */
    private void held(String field, Summary summary, double boundS) {
        demand(
                boundS <= summary.flightS() + PRICED_S,
                field,
                Told.of("plan", "The bound for days like this one lies above it, so it is none.")
                        .figures(boundS, summary.flightS(), "s"));
    }

    /** So early that longer ways than were guessed do not make up for it. */
    private boolean isBefore(Trade trade, Instant boundAt) {
        double lateS =
                (GUESSED_FACTOR - 1) * Math.max(0, Day.betweenS(startAt(), trade.finishAt()));
        return Day.betweenS(trade.finishAt(), boundAt) > lateS;
    }

    private void price(Summary summary, double flownS) {
        // Of a day on which nothing is flown any more nothing is paid.
        double wholeS = Math.max(0, Day.betweenS(startAt(), summary.finishAt()));
        summary.price().ifPresent(price -> price(price, flownS, wholeS, startSpreadS()));
        summary.anew().ifPresent(anew -> rest(summary, anew));
        for (Trade trade : summary.front()) {
            demand(
                    isOwn(trade),
                    "front",
                    Told.of("plan", "A day to choose from does not cost what its times come to."));
        }
        long marked = summary.front().stream().filter(Trade::chosen).count();
        long chosen =
                summary.front().stream()
                        .filter(
                                trade ->
                                        trade.chosen()
                                                && Math.abs(trade.flightS() - flownS)
                                                        <= Tolerance.TOTAL_TIME_S
                                                && trade.finishAt().equals(summary.finishAt())
                                                && isPrice(summary, trade))
                        .count();
        demand(
                summary.front().isEmpty() || (chosen == 1 && marked == 1),
                "front",
                Told.of(
                        "plan",
                        "The day marked as chosen among those to choose from is not this."));
    }

    /** Price and stated minutes are of one sum; minutes are written so fine that only rounding is left. */
    private boolean isOfStated(DayPrice price, double flightS) {
        double centsPerS = day.job().rules().costs().flyingCents() / 60.0;
        return Math.abs(price.flyingCents() - centsPerS * flightS) <= 1 + centsPerS * PRICED_S;
    }

    private void price(DayPrice price, double flownS, Number wholeS, Number spreadS) {
        Rules.Costs costs = day.job().rules().costs();
        double centsPerS = costs.flyingCents() / 60.0;
        demand(
                Math.abs(price.flyingCents() - centsPerS * flownS)
                        <= 1 + centsPerS * Tolerance.TOTAL_TIME_S,
                "price",
                Told.of("plan", "The price of flying is not the rate times the minutes.")
                        .figures(price.flyingCents(), centsPerS * flownS, "cents"));
        double standsS = Math.max(0, wholeS.doubleValue() - flownS);
        long[] standing = {price.standingCents(), costs.standingCents()};
        long[] people = {price.peopleCents(), costs.peopleCents()};
        part("standing", standing, standsS, spreadS);
        part("people", people, wholeS, spreadS);
        demand(
                isOfOneDay(price, flownS),
                "price",
                Told.of("plan", "The prices of standing and of people are not of one day."));
        demand(
                price.currency().equals(costs.currency()),
                "price",
                Told.of("plan", "The price is in " + price.currency() + ", not as agreed."));
    }

    /** Whenever it begins: people are paid for as long as the machine flies and stands. */
    private boolean isOfOneDay(DayPrice price, double flownS) {
        Rules.Costs costs = day.job().rules().costs();
        if (costs.standingCents() == 0 || costs.peopleCents() == 0) {
            return true;
        }
        double perS = costs.standingCents() / 60.0;
        double wholeS = price.peopleCents() * 60.0 / costs.peopleCents();
        // Each is rounded down to a whole cent.
        double dustS = PRICED_S + 60.0 / costs.peopleCents();
        return Math.abs(price.standingCents() - perS * Math.max(0, wholeS - flownS))
                <= 1 + perS * (Tolerance.TOTAL_TIME_S + dustS);
    }

    /** What was begun before a new order is none of its price. */
    private void rest(Summary summary, Anew anew) {
        List<Step> steps =
                day.plan().steps().stream()
                        .filter(step -> !step.startAt().isBefore(anew.fromAt()))
                        .toList();
        double flownS = steps.stream().filter(Day::flies).mapToDouble(Day::durationS).sum();
        double restS = Math.max(0, Day.betweenS(anew.fromAt(), summary.finishAt()));
        price(anew.rest(), flownS, restS, Tolerance.TOTAL_TIME_S);
        demand(
                summary.price().isPresent()
                        && anew.rest()
                                .comforts()
                                .equals(
                                        summary.price().get().comforts().stream()
                                                .filter(one -> !one.at().isBefore(anew.fromAt()))
                                                .toList()),
                "price",
                Told.of("plan", "The rest refuses other comforts than the day does from then on."));
        demand(
                day.plan().steps().stream()
                        .filter(step -> step.startAt().isBefore(anew.fromAt()))
                        .allMatch(step -> step.startAt().isBefore(day.plan().plannedAt())),
                "price",
                Told.of("plan", "What begins after the new order was made is rest of the day."));
    }

    private void part(String what, long[] statedAndRateCents, Number lastsS, Number spreadS) {
        long statedCents = statedAndRateCents[0];
        long rateCents = statedAndRateCents[1];
        double perS = rateCents / 60.0;
        double own = perS * lastsS.doubleValue();
        demand(
                Math.abs(statedCents - own) <= 1 + perS * spreadS.doubleValue(),
                "price",
                Told.of("plan", "The price of " + what + " is not the rate times the minutes.")
                        .figures(statedCents, own, "cents"));
    }

    private boolean isOwn(Trade trade) {
        Rules.Costs costs = day.job().rules().costs();
        double wholeS = Day.betweenS(startAt(), trade.finishAt());
        double own =
                costs.flyingCents() / 60.0 * trade.flightS()
                        + costs.standingCents() / 60.0 * Math.max(0, wholeS - trade.flightS())
                        + costs.peopleCents() / 60.0 * wholeS
                        + trade.comfortsCents();
        double centsPerS =
                (costs.flyingCents() + costs.standingCents() + costs.peopleCents()) / 60.0;
        return trade.comfortsCents() >= 0
                && Math.abs(trade.totalCents() - own) <= 3 + centsPerS * startSpreadS();
    }

    /** The day is paid from when it may first be flown: duty, light and forecast have begun. */
    private Instant startAt() {
        Instant start = day.job().rules().duty().from();
        Instant known = day.job().weather().hours().get(0).from();
        Instant rise =
                Daylight.from(start, day.job().origin()).map(Daylight::sunrise).orElse(start);
        for (Instant also : List.of(known, rise)) {
            start = also.isAfter(start) ? also : start;
        }
        return start;
    }

    /** Where the sun decides when the day begins, two right ways to compute it differ. */
    private double startSpreadS() {
        Instant from = day.job().rules().duty().from();
        Instant known = day.job().weather().hours().get(0).from();
        Instant open = known.isAfter(from) ? known : from;
        boolean light =
                Daylight.from(from, day.job().origin())
                        .map(Daylight::sunrise)
                        .filter(rise -> Day.betweenS(rise, open) > 2 * Tolerance.SUN_S)
                        .isPresent();
        return light ? Tolerance.TOTAL_TIME_S : Tolerance.DAY_TIME_S;
    }

    /** Both count the same seconds, each rounded for itself. */
    private boolean isPrice(Summary summary, Trade trade) {
        Rules.Costs costs = day.job().rules().costs();
        double centsPerS =
                (costs.flyingCents() + costs.standingCents() + costs.peopleCents()) / 60.0;
        return summary.price()
                .map(
                        price ->
                                price.comfortsCents() == trade.comfortsCents()
                                        && Math.abs(price.totalCents() - trade.totalCents())
                                                <= 3 + centsPerS * Tolerance.TOTAL_TIME_S)
                .orElse(true);
    }

    private void count(String field, StepKind kind, int stated) {
        long own = day.plan().steps().stream().filter(step -> step.kind() == kind).count();
        demand(
                own == stated,
                field,
                Told.of("plan", "The count of " + field + " is wrong.").figures(stated, own, ""));
    }

    private void demand(boolean holds, String field, Told told) {
        day.ledger().demand(holds, FindingCode.SUMMARY_WRONG, field, () -> told);
    }
}
