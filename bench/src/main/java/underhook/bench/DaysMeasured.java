package underhook.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import underhook.planner.search.DayOrder;
import underhook.planner.search.DayTable;
import underhook.planner.search.Effort;
import underhook.planner.search.Ordered;

/**
 * Orders of seeded days against the plain order of the same day: at each step what can be let go soonest.
 *
 * <p>Ten days of each size. Ratios are ours over plain, of days on which both fly the same loads: of the chosen day,
 * and of the earliest of those to choose from that fly no more than the plain one. Gaps are over the bound on the
 * flying time, of the chosen day and of the one to choose from that flies least; and over the bound on the finish, of
 * the earliest to choose from. That bound over the plain finish says what no order could reach.
 */
final class DaysMeasured implements Measured {
    private static final int[] LOADS = {20, 40, 60, 88, 120};
    private static final int SEEDS = 10;

    /** Work meant for a minute; it takes less than half of that. */
    private static final int EFFORT_S = 60;

    /** What came of one day. */
    private record Day(
            double finishRatio,
            double flightRatio,
            double earliestRatio,
            double gapFraction,
            double leastGapFraction,
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
        StringBuilder told = new StringBuilder();
        day(LOADS[0], 99);
        for (int loads : LOADS) {
            List<Day> days = new ArrayList<>();
            for (int seed = 1; seed <= SEEDS; seed++) {
                days.add(day(loads, seed));
            }
            List<Day> alike = days.stream().filter(Day::alike).toList();
            told.append(
                    String.format(
                            Locale.ROOT,
                            "days: %d loads: on %d days of %d alike finish %s, flying %s of plain,"
                                    + " earliest at no more flying %s, bound on the finish %s;"
                                    + " earliest over that bound %s %%; flying over its bound %s %%,"
                                    + " where least is flown %s %%, on %d days at most 1 %%; bound in"
                                    + " %s s, search in %s s;"
                                    + " left out %d, plain %d; heap at most %d MB%n",
                            loads,
                            alike.size(),
                            days.size(),
                            spread(alike.stream().mapToDouble(Day::finishRatio).toArray()),
                            spread(alike.stream().mapToDouble(Day::flightRatio).toArray()),
                            spread(
                                    alike.stream()
                                            .mapToDouble(Day::earliestRatio)
                                            .filter(Double::isFinite)
                                            .toArray()),
                            spread(alike.stream().mapToDouble(Day::finishBoundRatio).toArray()),
                            spread(
                                    days.stream()
                                            .mapToDouble(d -> d.finishGapFraction() * 100)
                                            .toArray()),
                            spread(days.stream().mapToDouble(d -> d.gapFraction() * 100).toArray()),
                            spread(
                                    days.stream()
                                            .mapToDouble(d -> d.leastGapFraction() * 100)
                                            .toArray()),
                            days.stream().filter(d -> d.leastGapFraction() <= 0.01).count(),
                            spread(days.stream().mapToDouble(Day::boundS).toArray()),
                            spread(days.stream().mapToDouble(Day::searchS).toArray()),
                            days.stream().mapToInt(Day::leftOut).sum(),
                            days.stream().mapToInt(Day::plainLeftOut).sum(),
                            peakBytes() >> 20));
        }
        return told.append("days: heap in use, not yet collected counted").toString();
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

    private static Day day(int loads, long seed) {
        DayTable table = new SeededDay(loads, seed).table();
        Ordered plain = DayOrder.plain(table);
        long start = System.nanoTime();
        DayOrder.Found all =
                DayOrder.find(
                        table,
                        new Effort(seed, EFFORT_S),
                        new DayOrder.Stops(() -> false, () -> false),
                        done -> {});
        Ordered found = all.day();
        long searched = System.nanoTime();
        double boundS = DayOrder.flightBoundS(table, found);
        long bounded = System.nanoTime();
        double finishBoundS = DayOrder.finishBoundS(table, found, boundS);
        return new Day(
                (double) found.finishS() / plain.finishS(),
                (double) found.flownS() / plain.flownS(),
                earliestS(all, plain.flownS()) / plain.finishS(),
                found.flownS() / boundS - 1,
                all.front().get(0).flownS() / boundS - 1,
                finishBoundS / plain.finishS(),
                earliestS(all, Long.MAX_VALUE) / finishBoundS - 1,
                (bounded - searched) / 1e9,
                (searched - start) / 1e9,
                isAlike(found, plain),
                leftOut(found),
                leftOut(plain));
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

    private static String spread(double[] values) {
        if (values.length == 0) {
            return "not measured";
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return String.format(
                Locale.ROOT,
                "%.3f (%.3f to %.3f)",
                (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2,
                sorted[0],
                sorted[sorted.length - 1]);
    }
}
