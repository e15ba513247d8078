package underhook.planner.odds;

import java.util.Arrays;
import underhook.core.plan.Odds;

/** Counts the drawn days of one network. Mutable; filled by one thread. */
final class Tally {
    private final boolean[] inTime;
    private final double[] finishS;
    private int beforeWind;
    private int beforeDark;
    private int withinDuty;
    private int withinFuel;
    private int all;
    private int days;

    Tally(int replays) {
        this.inTime = new boolean[replays];
        this.finishS = new double[replays];
    }

    void add(FlownDay day) {
        beforeWind += day.isBeforeWind() ? 1 : 0;
        beforeDark += day.isBeforeDark() ? 1 : 0;
        withinDuty += day.isWithinDuty() ? 1 : 0;
        withinFuel += day.isWithinFuel() ? 1 : 0;
        inTime[days] =
                day.isBeforeWind()
                        && day.isBeforeDark()
                        && day.isWithinDuty()
                        && day.isWithinFuel();
        all += inTime[days] ? 1 : 0;
        finishS[days++] = day.finishS();
    }

    Odds.Chance allInTime() {
        return Chances.of(all, days);
    }

    Odds.Chance beforeWind() {
        return Chances.of(beforeWind, days);
    }

    Odds.Chance beforeDark() {
        return Chances.of(beforeDark, days);
    }

    Odds.Chance withinDuty() {
        return Chances.of(withinDuty, days);
    }

    Odds.Chance withinFuel() {
        return Chances.of(withinFuel, days);
    }

    /** End that so many of the days are not behind, s, on the late side. */
    double finishS(double beforeFraction) {
        double[] sorted = finishS.clone();
        Arrays.sort(sorted);
        return sorted[days - 1 - Chances.rank(1 - beforeFraction, days)];
    }

    /** What a change brings against this: each day is compared with the same day changed. */
    Odds.Gain gain(String what, Tally changed) {
        int won = 0;
        int lost = 0;
        double earlierS = 0;
        for (int i = 0; i < days; i++) {
            won += !inTime[i] && changed.inTime[i] ? 1 : 0;
            lost += inTime[i] && !changed.inTime[i] ? 1 : 0;
            earlierS += finishS[i] - changed.finishS[i];
        }
        double gain = (double) (won - lost) / days;
        double spread = Math.sqrt(won + lost - (double) (won - lost) * (won - lost) / days);
        return new Odds.Gain(
                what, gain, gain - Chances.ONE_IN_TWENTY_FACTOR * spread / days, earlierS / days);
    }
}
