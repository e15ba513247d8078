package underhook.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import underhook.planner.search.DayOrder;
import underhook.planner.search.DayTable;
import underhook.planner.search.Effort;
import underhook.planner.search.HookChoices;
import underhook.planner.search.Ordered;

/**
 * Orders of seeded days of three kinds against the plain order of the same day: at each step what can be let go soonest.
 *
 * <p>Ten days of each kind and size. Ratios are ours over plain, of days on which both fly the same loads: of the chosen
 * day, and of the earliest of those to choose from that fly no more than the plain one. Gaps are over the bound on the
 * flying time, of the chosen day, of the one to choose from that flies least and, where that is above the aim, of a day
 * that was searched with as much work for flying alone; and over the bound on the finish, of
 * the earliest to choose from. That bound over the plain finish says what no order could reach. The bounds hold over
 * every way of putting the loads on hooks together; proven best is a finish that is its bound, proven least a day that
 * flies less than a second more than its bound.
 */
final class DaysMeasured implements Measured {
    private static final int[] LOADS = {20, 40, 60, 88, 120};
    private static final int SEEDS = 10;

    /** Twice the usual work; it takes less than half of that time. */
    private static final int EFFORT_S = 20;

    private static final double NEAR_FRACTION = 0.01;

    private static final List<Kind> KINDS =
            List.of(
                    new Kind("two laydowns, ways slower by the hour", SeededDay::new),
                    new Kind("one laydown, crews receive all", OneLaydownDay::received),
                    new Kind("one laydown, crews guy alone", OneLaydownDay::laidDown));

    /** What days are made like. */
    private record Kind(String words, Maker maker) {}

    private interface Maker {
        InventedDay make(int loads, long seed);
    }

    /** What came of one day. */
    private record Day(
            double finishRatio,
            double flightRatio,
            double earliestRatio,
            double gapFraction,
            double leastGapFraction,
            double askedGapFraction,
            double hoursGapFraction,
            boolean fliesLeast,
            double finishBoundRatio,
            double finishGapFraction,
            double boundS,
            double searchS,
            boolean alike,
            int leftOut,
            int plainLeftOut) {}

    @Override
    public String name() {
        return "days";
    }

    @Override
    public String measure() {
        List<String> all = new ArrayList<>();
        measure(all::add);
        return String.join(System.lineSeparator(), all);
    }

    @Override
    public void measure(Consumer<String> told) {
        told.accept(
                "days: work meant for " + EFFORT_S + " s; heap in use, not yet collected counted");
        for (Kind kind : KINDS) {
            day(kind, LOADS[0], 99);
            for (int loads : LOADS) {
                told.accept(measure(kind, loads));
            }
        }
    }

    private static String measure(Kind kind, int loads) {
        List<Day> days = new ArrayList<>();
        for (int seed = 1; seed <= SEEDS; seed++) {
            days.add(day(kind, loads, seed));
        }
        List<Day> alike = days.stream().filter(Day::alike).toList();
        return String.format(
                Locale.ROOT,
                "days: %s: %d loads: on %d days of %d alike finish %s, flying %s of plain, earliest at"
                        + " no more flying %s, bound on the finish %s; earliest over that bound %s %%,"
                        + " on %d days at most 1 %%, on %d proven best; flying over its bound %s %%,"
                        + " where least is flown %s %%, on %d days at most 1 %%, on %d proven least,"
                        + " with a search for flying alone where it was more %s %%, on %d days at most 1 %%,"
                        + " over the least of any order within its hours %s %%, on %d days at most 1 %%;"
                        + " bounds in"
                        + " %s s, search"
                        + " in %s s; left out %d, plain %d; heap at most %d MB",
                kind.words,
                loads,
                alike.size(),
                days.size(),
                spread(alike, Day::finishRatio),
                spread(alike, Day::flightRatio),
                spread(alike, Day::earliestRatio),
                spread(alike, Day::finishBoundRatio),
                spread(days, day -> day.finishGapFraction() * 100),
                days.stream().filter(day -> day.finishGapFraction() <= NEAR_FRACTION).count(),
                days.stream().filter(day -> day.finishGapFraction() <= 0).count(),
                spread(days, day -> day.gapFraction() * 100),
                spread(days, day -> day.leastGapFraction() * 100),
                days.stream().filter(day -> day.leastGapFraction() <= NEAR_FRACTION).count(),
                days.stream().filter(Day::fliesLeast).count(),
                spread(days, day -> day.askedGapFraction() * 100),
                days.stream().filter(day -> day.askedGapFraction() <= NEAR_FRACTION).count(),
                spread(days, day -> day.hoursGapFraction() * 100),
                days.stream().filter(day -> day.hoursGapFraction() <= NEAR_FRACTION).count(),
                spread(days, Day::boundS),
                spread(days, Day::searchS),
                days.stream().mapToInt(Day::leftOut).sum(),
                days.stream().mapToInt(Day::plainLeftOut).sum(),
                peakBytes() >> 20);
    }

    private static long peakBytes() {
        long sum = 0;
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            if (pool.getType() == MemoryType.HEAP) {
                sum += pool.getPeakUsage().getUsed();
                pool.resetPeakUsage();
            }
        }
        return sum;
    }

    private static Day day(Kind kind, int loads, long seed) {
        InventedDay made = kind.maker.make(loads, seed);
        DayTable table = made.table();
        Ordered plain = DayOrder.plain(table);
        long start = System.nanoTime();
        DayOrder.Found all = find(table, seed);
        Ordered found = all.day();
        long searched = System.nanoTime();
        DayTable everyWay = made.everyWay();
        HookChoices hooks = made.hooks(found);
        double boundS = DayOrder.flightBoundS(everyWay, hooks, found.flownS());
        double finishBoundS = DayOrder.finishBoundS(everyWay, hooks, boundS);
        long bounded = System.nanoTime();
        double leastS = (double) all.front().get(0).flownS();
        return new Day(
                (double) found.finishS() / plain.finishS(),
                (double) found.flownS() / plain.flownS(),
                earliestS(all, plain.flownS()) / plain.finishS(),
                found.flownS() / boundS - 1,
                leastS / boundS - 1,
                askedS(made, seed, leastS, boundS) / boundS - 1,
                found.flownS() / hoursBoundS(table, found) - 1,
                leastS - boundS < 1,
                finishBoundS / plain.finishS(),
                earliestS(all, Long.MAX_VALUE) / finishBoundS - 1,
                (bounded - searched) / 1e9,
                (searched - start) / 1e9,
                isAlike(found, plain),
                leftOut(found),
                leftOut(plain));
    }

    private static DayOrder.Found find(DayTable table, long seed) {
        return DayOrder.find(
                table, new Effort(seed, EFFORT_S), new DayOrder.Stops(() -> false), done -> {});
    }

    /** What is flown least, looked for anew where it lies above the aim; only of days that fly as much, s. */
    private static double askedS(InventedDay made, long seed, double leastS, double boundS) {
        if (leastS / boundS - 1 <= NEAR_FRACTION) {
            return leastS;
        }
        DayOrder.Found asked = find(made.table(InventedDay.FLYING_ALONE), seed);
        return leftOut(asked.day()) > 0
                ? leastS
                : Math.min(leastS, (double) asked.front().get(0).flownS());
    }

    /** The least flown by any order that lifts each load in its hour, s; not finite where that is not proven. */
    private static double hoursBoundS(DayTable table, Ordered day) {
        return DayOrder.flightBoundWithHoursS(table, day, () -> false).orElse(Double.NaN);
    }

    /** When the earliest to choose from that flies no more than so long is down, s. */
    private static double earliestS(DayOrder.Found found, long flownS) {
        return found.front().stream()
                .filter(one -> one.flownS() <= flownS)
                .mapToDouble(DayOrder.Offer::finishS)
                .min()
                .orElse(Double.NaN);
    }

    private static boolean isAlike(Ordered one, Ordered other) {
        for (int k = 0; k < one.releasedS().size(); k++) {
            if (one.isFlown(k) != other.isFlown(k)) {
                return false;
            }
        }
        return true;
    }

    private static int leftOut(Ordered day) {
        return (int) day.releasedS().stream().filter(releasedS -> releasedS < 0).count();
    }

    /** Median, least and most of what is finite. */
    private static String spread(List<Day> days, ToDoubleFunction<Day> what) {
        double[] sorted =
                days.stream().mapToDouble(what).filter(Double::isFinite).sorted().toArray();
        if (sorted.length == 0) {
            return "not measured";
        }
        return String.format(
                Locale.ROOT,
                "%.3f (%.3f to %.3f)",
                (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2,
                sorted[0],
                sorted[sorted.length - 1]);
    }
}
