package underhook.planner.odds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import underhook.core.plan.Drop;
import underhook.core.plan.Odds;

/** How many loads lie in time when each day is ended at its limits. Mutable; filled by one thread. */
final class PlacedLoads {
    private final DayNet net;
    private final int[] loads;
    private final int[] inTime;
    private final int[] placed;
    private int days;

    PlacedLoads(DayNet net, int replays) {
        this.net = net;
        this.loads = net.lifts().stream().mapToInt(one -> one.rotation().loads().size()).toArray();
        this.inTime = new int[loads.length];
        this.placed = new int[replays];
    }

    void add(FlownDay day) {
        int sum = 0;
        for (int i = 0; i < inTime.length; i++) {
            inTime[i] += day.isInTime(i) ? 1 : 0;
            sum += day.isInTime(i) ? loads[i] : 0;
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
