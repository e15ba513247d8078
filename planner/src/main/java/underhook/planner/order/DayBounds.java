package underhook.planner.order;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import underhook.core.plan.Summary;
import underhook.planner.search.DayOrder;
import underhook.planner.search.DayTable;
import underhook.planner.search.HookChoices;
import underhook.planner.search.Ordered;

/**
 * What no order of a day's loads goes below.
 *
 * @param startS from when the machine may fly, s after the base instant
 * @param flightS seconds in the air
 * @param finishS when the machine is down at the earliest, s after the base instant
 * @param provenFor over which ways of combining loads it holds, as the plan says it; blank where nothing is proven
 * @param held what orders do not go below that have more in common with the day
 */
record DayBounds(long startS, double flightS, long finishS, String provenFor, Summary.Held held) {
    private static final String CHOSEN = "chosen-combination";

    /**
     * Over every combination of the loads that are flown; where those are too many, over the day's own.
     *
     * @param stop says true when they must stay as far as they are proven
     */
    static DayBounds of(DayModel model, DayTables tables, Ordered day, BooleanSupplier stop) {
        List<Trip> own = tables.trips();
        Combinations ways = new Combinations(model, own, day::isFlown);
        boolean all = ways.isAll();
        DayTable table = tables.table(all ? ways.trips() : own);
        HookChoices hooks = all ? ways.hooks() : HookChoices.asFlown(day);
        double flightS = DayOrder.flightBoundS(table, hooks, day.flownS(), stop);
        return new DayBounds(
                table.startS(),
                flightS,
                DayOrder.finishBoundS(table, hooks, flightS),
                provenFor(all),
                held(tables.table(own), day, flightS, stop));
    }

    /** Each holds for fewer orders than the one before; one that is no higher says nothing. */
    private static Summary.Held held(
            DayTable table, Ordered day, double flightS, BooleanSupplier stop) {
        double peopleS = DayOrder.flightBoundWithPeopleS(table, day, stop);
        OptionalDouble hoursS = DayOrder.flightBoundWithHoursS(table, day, stop);
        return new Summary.Held(
                aboveS(flightS, OptionalDouble.of(peopleS)),
                aboveS(Math.max(flightS, peopleS), hoursS));
    }

    private static OptionalDouble aboveS(double knownS, OptionalDouble boundS) {
        return boundS.isPresent() && boundS.getAsDouble() > knownS
                ? boundS
                : OptionalDouble.empty();
    }

    /** Of a day of which none were looked for. */
    static DayBounds unproven(long startS) {
        return new DayBounds(startS, 0, 0, "", Summary.Held.NONE);
    }

    boolean isProven() {
        return !provenFor.isEmpty();
    }

    /** Over which ways of combining loads a bound holds, as plans say it. */
    static String provenFor(boolean all) {
        return all ? Summary.Bounds.ALL_COMBINATIONS : CHOSEN;
    }
}
