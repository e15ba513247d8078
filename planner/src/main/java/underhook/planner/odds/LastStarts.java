package underhook.planner.odds;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import underhook.core.plan.Odds;

/** The last sensible hook-up of each pole whose window closes. Mutable; filled by one thread. */
final class LastStarts {
    private final DayNet net;
    private final List<Lift> poles;
    private final double[][] lastHookS;
    private final int[] inside;
    private int days;

    LastStarts(DayNet net, Limits limits, int replays) {
        this.net = net;
        this.poles =
                net.lifts().stream()
                        .filter(Lift::standsUp)
                        .filter(lift -> lift.closesS() < limits.dayEndS())
                        .toList();
        this.lastHookS = new double[poles.size()][replays];
        this.inside = new int[poles.size()];
    }

    void add(FlownDay day) {
        double[] timesS = day.timesS();
        double windLaterS = timesS[net.wind()];
        for (int i = 0; i < poles.size(); i++) {
            lastHookS[i][days] = poles.get(i).lastHookS(timesS, windLaterS);
            inside[i] += day.isInsideWindow(poles.get(i)) ? 1 : 0;
        }
        days++;
    }

    /**
     * One for each pole in the order flown.
     *
     * @param insideFraction share of the days that must be inside the window
     */
    List<Odds.LastStart> list(double insideFraction) {
        List<Odds.LastStart> all = new ArrayList<>();
        for (int i = 0; i < poles.size(); i++) {
            Lift pole = poles.get(i);
            double[] sorted = Arrays.copyOf(lastHookS[i], days);
            Arrays.sort(sorted);
            double lastS = sorted[Chances.rank(1 - insideFraction, days)];
            all.add(
                    new Odds.LastStart(
                            pole.rotation().loads().get(0),
                            pole.to().id(),
                            pole.rotation().hookedAt(),
                            net.clock().at(Math.floor(lastS)).truncatedTo(ChronoUnit.MINUTES),
                            Chances.of(inside[i], days)));
        }
        return all;
    }
}
