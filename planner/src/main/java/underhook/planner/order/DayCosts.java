package underhook.planner.order;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import underhook.core.job.Rules;
import underhook.core.plan.DayPrice;
import underhook.core.plan.Trade;
import underhook.planner.search.DayOrder;
import underhook.planner.search.DayTable;

/** What a day costs, what else could be flown, and what no order goes below. */
final class DayCosts {
    private final DayModel model;
    private final DayTable table;
    private final DayOrder.Found found;
    private final double boundS;

    DayCosts(DayModel model, DayTable table, DayOrder.Found found) {
        this.model = model;
        this.table = table;
        this.found = found;
        this.boundS = DayOrder.flightBoundS(table, found.day());
    }

    DayPrice price() {
        Rules.Costs costs = model.rules.costs();
        long flownS = found.day().flownS();
        long wholeS = found.day().finishS() - table.startS();
        return new DayPrice(
                costs.flyingCents() * flownS / 60,
                costs.standingCents() * Math.max(0, wholeS - flownS) / 60,
                costs.peopleCents() * wholeS / 60,
                costs.currency());
    }

    List<Trade> front() {
        return found.front().stream()
                .map(
                        one ->
                                new Trade(
                                        (double) one.flownS(),
                                        model.instant(one.finishS()),
                                        one.cents(),
                                        one.flyingRatePercent(),
                                        one.chosen()))
                .toList();
    }

    OptionalDouble flightBoundS() {
        return OptionalDouble.of(boundS);
    }

    Instant finishBoundAt() {
        return model.instant(DayOrder.finishBoundS(table, found.day(), boundS));
    }
}
