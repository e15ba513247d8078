package underhook.planner.odds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import underhook.core.plan.Drop;
import underhook.core.plan.Odds;

/**
 * How many loads lie in time when each day is ended at its limits: a lift counts when it is inside its window, all
 * that it needs counts, and every limit still holds when the machine may next stand. Mutable; filled by one thread.
 */
final class PlacedLoads {
    private final DayNet net;
    private final Limits limits;
    private final int[] nextStand;
    private final int[] loads;
    private final int[][] needs;
    private final int[] inTime;
    private final int[] placed;
    private final boolean[] counts;
    private int days;

    PlacedLoads(DayNet net, Limits limits, int replays) {
        this.net = net;
        this.limits = limits;
        List<Lift> lifts = net.lifts();
        Map<Lift, Integer> number = new HashMap<>();
        lifts.forEach(lift -> number.put(lift, number.size()));
        this.nextStand = lifts.stream().mapToInt(lift -> limits.nextStand(lift.step())).toArray();
        this.loads = lifts.stream().mapToInt(lift -> lift.rotation().loads().size()).toArray();
        this.needs = new int[lifts.size()][];
        for (int i = 0; i < needs.length; i++) {
            needs[i] =
                    net.needs().getOrDefault(lifts.get(i), List.of()).stream()
                            .mapToInt(number::get)
                            .toArray();
        }
        this.inTime = new int[lifts.size()];
        this.counts = new boolean[lifts.size()];
        this.placed = new int[replays];
    }

    void add(double[] timesS) {
        int broken = limits.firstBroken(timesS);
        int sum = 0;
        for (int i = 0; i < counts.length; i++) {
            counts[i] =
                    nextStand[i] < broken
                            && limits.isInside(net.lifts().get(i), timesS)
                            && Arrays.stream(needs[i]).allMatch(one -> counts[one]);
            inTime[i] += counts[i] ? 1 : 0;
            sum += counts[i] ? loads[i] : 0;
        }
        placed[days++] = sum;
    }

    /**
     * What came of it; as many loads as so many of the days place at least, on the low side.
     *
     * @param mostFraction share of the days that is called most of them
     */
    Odds.Placed told(double mostFraction) {
        int[] sorted = placed.clone();
        Arrays.sort(sorted);
        List<Odds.InTime> all = new ArrayList<>();
        for (int i = 0; i < inTime.length; i++) {
            Odds.Chance chance = Chances.of(inTime[i], days);
            for (Drop drop : net.lifts().get(i).rotation().drops()) {
                all.add(new Odds.InTime(drop.load(), drop.place(), drop.releasedAt(), chance));
            }
        }
        all.sort(Comparator.comparing(Odds.InTime::plannedAt));
        return new Odds.Placed(
                Arrays.stream(loads).sum(),
                sorted[Chances.rank(0.5, days)],
                sorted[Chances.rank(1 - mostFraction, days)],
                all);
    }
}
