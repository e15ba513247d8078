package underhook.planner.search;

import java.util.Arrays;

/**
 * The least flying of any day with people at every site: every order, and before each trip and each way home
 * every spell in which it may begin.
 *
 * <p>Written from the rules of {@link TinyDay} alone. Within a spell ways take the same, so that nothing is
 * gained by leaving later in it, but for reaching the next.
 */
final class EveryStart {
    private final TinyDay day;
    private final int count;
    private long leastS = Long.MAX_VALUE;

    EveryStart(TinyDay day) {
        this.day = day;
        this.count = day.lifts().size();
    }

    /** Least seconds in the air with every trip flown; {@link Long#MAX_VALUE} when they cannot be. */
    long leastFlownS() {
        long[] released = new long[count];
        Arrays.fill(released, -1);
        go(TinyDay.START_S + TinyDay.LINE_S, 0, 0, released);
        return leastS;
    }

    private void go(long timeS, int place, long flownS, long[] released) {
        boolean all = true;
        for (int k = 0; k < count; k++) {
            all &= released[k] >= 0;
            if (released[k] < 0 && isItsTurn(released, k)) {
                flyInEachSpell(k, timeS, place, flownS, released);
                if (place >= 2) {
                    // It may also land first and wait there.
                    for (int ground = 0; ground < 2; ground++) {
                        long wayS = day.wayS(place, ground, spell(timeS)) + TinyDay.EXTRA_S;
                        flyInEachSpell(k, timeS + wayS, ground, flownS + wayS, released);
                    }
                }
            }
        }
        if (all) {
            for (int ground = 0; ground < 2; ground++) {
                long wayS =
                        place >= 2 ? day.wayS(place, ground, spell(timeS)) + TinyDay.EXTRA_S : 0;
                if (timeS + wayS <= TinyDay.END_S) {
                    leastS = Math.min(leastS, flownS + wayS);
                }
            }
        }
    }

    private void flyInEachSpell(int k, long timeS, int place, long flownS, long[] released) {
        if (flownS >= leastS || timeS >= TinyDay.END_S) {
            return;
        }
        fly(k, timeS, place, flownS, released);
        for (long startS : day.untilS()) {
            if (place < 2 && startS > timeS && startS < TinyDay.END_S) {
                fly(k, startS, place, flownS, released);
            }
        }
    }

    private void fly(int k, long timeS, int place, long flownS, long[] released) {
        TinyDay.Lift lift = day.lifts().get(k);
        long extraS = place >= 2 && place != lift.from() ? TinyDay.EXTRA_S : 0;
        long hookedS = timeS + day.wayS(place, lift.from(), spell(timeS)) + extraS + lift.hookS();
        long fromS = hookFromS(k, released);
        if (hookedS < fromS && place < 2) {
            hookedS = fromS;
        }
        long startS = hookedS;
        long carriedS = day.loadedS(lift, spell(startS)) + lift.setDownS();
        long standingS = lift.pole() && lift.afterS() > 0 ? lift.setDownS() : 0;
        long downFromS = lift.after() < 0 ? 0 : released[lift.after()] + lift.afterS() + standingS;
        if (startS + carriedS < downFromS && place < 2) {
            startS = downFromS - carriedS;
            carriedS = day.loadedS(lift, spell(startS)) + lift.setDownS();
        }
        long downS = startS + carriedS;
        boolean may =
                startS >= fromS
                        && downS >= downFromS
                        && downS < TinyDay.END_S
                        && day.open()[k][spell(startS)]
                        && day.open()[k][spell(downS)];
        if (may) {
            long wayS = day.wayS(place, lift.from(), spell(timeS)) + extraS + lift.hookS();
            long[] next = released.clone();
            next[k] = downS;
            go(downS, lift.to(), flownS + wayS + carriedS, next);
        }
    }

    private long hookFromS(int k, long[] released) {
        long fromS = 0;
        for (int i = 0; i < count && day.lifts().get(k).backhaul(); i++) {
            if (day.lifts().get(i).to() == day.lifts().get(k).from()) {
                fromS = Math.max(fromS, released[i] + 2);
            }
        }
        return fromS;
    }

    private boolean isItsTurn(long[] released, int k) {
        TinyDay.Lift lift = day.lifts().get(k);
        if (lift.after() >= 0 && released[lift.after()] < 0) {
            return false;
        }
        for (int i = 0; i < count && lift.backhaul(); i++) {
            if (i != k && released[i] < 0 && day.lifts().get(i).to() == lift.from()) {
                return false;
            }
        }
        return true;
    }

    private int spell(long timeS) {
        int spell = 0;
        while (timeS >= day.untilS()[spell]) {
            spell++;
        }
        return spell;
    }
}
