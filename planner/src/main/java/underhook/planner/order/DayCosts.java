package underhook.planner.order;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.job.Rules;
import underhook.core.plan.DayPrice;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.Summary;
import underhook.core.plan.Trade;
import underhook.planner.search.DayOrder;
import underhook.planner.search.Ordered;

/** What a day costs, what else could be flown, and what no order goes below. */
final class DayCosts {
    private static final long MINUTE_MS = 60_000;

    private final DayModel model;
    private final DayBounds bounds;
    private final Days days;
    private final List<RefusedComfort> comforts;

    /** The day that is flown, and those to choose from. */
    record Days(Ordered day, List<DayOrder.Offer> front) {}

    /**
     * @param comforts what the day as told refuses
     */
    DayCosts(DayModel model, DayBounds bounds, Days days, List<RefusedComfort> comforts) {
        this.model = model;
        this.comforts = List.copyOf(comforts);
        this.days = days;
        this.bounds = bounds;
    }

    DayPrice price() {
        return price(days.day().flownS(), days.day().finishS());
    }

    /** By the job's own rates, whatever a flying minute counts when days are compared. */
    private DayPrice price(long flownS, long finishS) {
        return price(
                model.rules.costs(),
                Duration.ofSeconds(flownS),
                Duration.ofSeconds(finishS - bounds.startS()),
                comforts);
    }

    /**
     * What some time costs.
     *
     * @param flown of it in the air
     * @param whole all of it
     */
    static DayPrice price(
            Rules.Costs costs, Duration flown, Duration whole, List<RefusedComfort> comforts) {
        long flownMs = flown.toMillis();
        long wholeMs = Math.max(0, whole.toMillis());
        return new DayPrice(
                Math.multiplyExact(costs.flyingCents(), flownMs) / MINUTE_MS,
                Math.multiplyExact(costs.standingCents(), Math.max(0, wholeMs - flownMs))
                        / MINUTE_MS,
                Math.multiplyExact(costs.peopleCents(), wholeMs) / MINUTE_MS,
                comforts,
                costs.currency());
    }

    List<Trade> front() {
        return days.front().stream().map(this::trade).toList();
    }

    private Trade trade(DayOrder.Offer one) {
        DayPrice price = price(one.flownS(), one.finishS());
        long comfortsCents = one.chosen() ? price.comfortsCents() : one.comfortCents();
        return new Trade(
                (double) one.flownS(),
                model.instant(one.finishS()),
                price.totalCents() - price.comfortsCents() + comfortsCents,
                comfortsCents,
                counted(one.flyingRatePercent()),
                one.chosen());
    }

    /** Of the rate itself, where the search knew only what a minute counts. */
    private int counted(int percent) {
        int own = model.rules.costs().flyingCountsPercent();
        return Math.max(
                1, (int) Math.min((long) percent * own / 100, Rules.Costs.MOST_COUNTED_PERCENT));
    }

    Summary.Bounds bounds() {
        return bounds.isProven()
                ? new Summary.Bounds(
                        OptionalDouble.of(bounds.flightS()),
                        Optional.of(model.instant(bounds.finishS())),
                        Optional.of(bounds.provenFor()),
                        bounds.held())
                : Summary.Bounds.NONE;
    }
}
