package underhook.planner.search;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The cheapest day of all: every order of every trip with every team at every place, tried to the end.
 *
 * <p>Written from the rules of {@link TinyDay} alone, with none of the planner's code; nothing is cut short
 * because it looks dear. Each trip is flown as early as the rules let it in its order: the machine leaves at
 * once when it need not wait, else it waits on the ground at the next hook-up, or where it lands nearest when
 * that is out at a site.
 */
final class EveryOrder {
    private final TinyDay day;
    private final int count;
    private long bestCents = Long.MAX_VALUE;
    private long earliestS = Long.MAX_VALUE;
    private long leastFlownS = Long.MAX_VALUE;
    private int bestFlown = -1;
    private long orders;

    EveryOrder(TinyDay day) {
        this.day = day;
        this.count = day.lifts().size();
    }

    /** Where the day stands. */
    private static final class Now {
        long timeS = TinyDay.START_S;
        int place;
        boolean hovers;
        boolean line;
        long flownS;
        long comfortCents;
        final long[] releasedS;
        final int[] teamOf = new int[TinyDay.PLACES];
        final int[] teamAt;
        final long[] freeS = new long[TinyDay.TEAMS];
        final long[] cameS = new long[TinyDay.TEAMS];

        Now(int count, int[] teamAt) {
            releasedS = new long[count];
            Arrays.fill(releasedS, -1);
            Arrays.fill(teamOf, -1);
            this.teamAt = teamAt.clone();
        }

        Now copy() {
            Now other = new Now(releasedS.length, teamAt);
            other.timeS = timeS;
            other.place = place;
            other.hovers = hovers;
            other.line = line;
            other.flownS = flownS;
            other.comfortCents = comfortCents;
            System.arraycopy(releasedS, 0, other.releasedS, 0, releasedS.length);
            System.arraycopy(teamOf, 0, other.teamOf, 0, teamOf.length);
            System.arraycopy(freeS, 0, other.freeS, 0, freeS.length);
            System.arraycopy(cameS, 0, other.cameS, 0, cameS.length);
            return other;
        }
    }

    EveryOrder run() {
        go(new Now(count, day.teamStart()), 0);
        return this;
    }

    long bestCents() {
        return bestCents;
    }

    /** When the earliest day on which everything is flown is down, s. */
    long earliestS() {
        return earliestS;
    }

    /** Least seconds in the air of a day on which everything is flown; {@link Long#MAX_VALUE} when none is. */
    long leastFlownS() {
        return leastFlownS;
    }

    boolean fliesAll() {
        return bestFlown == count;
    }

    long orders() {
        return orders;
    }

    private void go(Now now, int flown) {
        end(now.copy(), flown);
        for (int k = 0; k < count; k++) {
            if (now.releasedS[k] >= 0 || !isItsTurn(now, k)) {
                continue;
            }
            TinyDay.Lift lift = day.lifts().get(k);
            for (int hooks : teams(now, lift.from())) {
                for (int receives : teams(now, lift.to())) {
                    if (hooks >= 0 && hooks == receives) {
                        continue;
                    }
                    Now next = now.copy();
                    come(next, hooks, lift.from());
                    come(next, receives, lift.to());
                    if (fly(next, k, hooks, receives)) {
                        go(next, flown + 1);
                    }
                }
            }
        }
    }

    /** Who may work at a place; nobody need come to a laydown. */
    private List<Integer> teams(Now now, int place) {
        if (place < 2) {
            return List.of(-1);
        }
        return IntStream.range(0, TinyDay.TEAMS)
                .filter(team -> day.mayWork()[team][place] == 1)
                .filter(team -> now.teamOf[place] < 0 || now.teamOf[place] == team)
                .boxed()
                .toList();
    }

    private void come(Now now, int team, int site) {
        if (team < 0) {
            return;
        }
        now.teamOf[site] = team;
        if (now.teamAt[team] != site) {
            now.comfortCents += day.walkS()[now.teamAt[team]][site] / 60 * day.walkCents();
            now.freeS[team] += day.walkS()[now.teamAt[team]][site];
            now.cameS[team] = now.freeS[team];
            now.teamAt[team] = site;
        }
    }

    private void end(Now now, int flown) {
        orders++;
        if (now.hovers) {
            goTo(now, near(now.place));
        }
        earliestS = flown == count ? Math.min(earliestS, now.timeS) : earliestS;
        leastFlownS = flown == count ? Math.min(leastFlownS, now.flownS) : leastFlownS;
        long wholeS = now.timeS - TinyDay.START_S;
        long cents =
                TinyDay.FLYING_CENTS * now.flownS / 60
                        + TinyDay.STANDING_CENTS * (wholeS - now.flownS) / 60
                        + TinyDay.PEOPLE_CENTS * wholeS / 60
                        + now.comfortCents;
        if (flown > bestFlown || (flown == bestFlown && cents < bestCents)) {
            bestFlown = flown;
            bestCents = cents;
        }
    }

    /** A pole after all that readies its place, empties after all that goes there. */
    private boolean isItsTurn(Now now, int k) {
        TinyDay.Lift lift = day.lifts().get(k);
        if (lift.after() >= 0 && now.releasedS[lift.after()] < 0) {
            return false;
        }
        for (int i = 0; i < count; i++) {
            TinyDay.Lift other = day.lifts().get(i);
            boolean missing = i != k && now.releasedS[i] < 0;
            if (missing && lift.backhaul() && other.to() == lift.from()) {
                return false;
            }
            if (missing && lift.pole() && other.readyS() > 0 && other.to() == lift.to()) {
                return false;
            }
        }
        return true;
    }

    private boolean fly(Now now, int k, int hooks, int receives) {
        TinyDay.Lift lift = day.lifts().get(k);
        if (!now.line) {
            now.timeS += TinyDay.LINE_S;
            now.line = true;
        }
        if (waitS(now, k, hooks, receives) != 0) {
            if (waitS(now, k, hooks, receives) < 0) {
                return false;
            }
            int ground = lift.from() < 2 ? lift.from() : near(now.place);
            if (now.hovers || (now.place != ground && now.place >= 2)) {
                goTo(now, ground);
            }
            long waitS = waitS(now, k, hooks, receives);
            if (waitS < 0) {
                return false;
            }
            now.timeS += waitS;
        }
        long hookedS = hookedS(now);
        now.flownS += hookedS - now.timeS + lift.hookS();
        now.timeS = hookedS + lift.hookS();
        return hang(now, k, hooks, receives);
    }

    /** Arrival over the hook-up when leaving now. */
    private long hookedS(Now now) {
        int from = day.lifts().get(current).from();
        long wayS = day.wayS()[now.place][from];
        return now.timeS + wayS + (now.hovers && wayS > 0 ? TinyDay.EXTRA_S : 0);
    }

    private int current;

    private long waitS(Now now, int k, int hooks, int receives) {
        current = k;
        TinyDay.Lift lift = day.lifts().get(k);
        long hookedS = hookedS(now) + lift.hookS();
        long downS = hookedS + day.loadedS(lift) + lift.setDownS();
        long hookFromS = hookFromS(now, k, hooks);
        long downFromS = downFromS(now, k, receives);
        long least = Math.max(0, Math.max(hookFromS - hookedS, downFromS - downS));
        // Where the wind closes, the next spell's beginning is tried for the hook-up, then the one
        // after.
        for (long waitS = least; downS + waitS < TinyDay.END_S; ) {
            int hookSpell = spell(hookedS + waitS);
            if (day.open()[k][hookSpell] && day.open()[k][spell(downS + waitS)]) {
                return waitS;
            }
            waitS = day.untilS()[hookSpell] - hookedS;
        }
        return -1;
    }

    private long hookFromS(Now now, int k, int team) {
        TinyDay.Lift lift = day.lifts().get(k);
        long fromS = lift.from() < 2 ? 0 : now.freeS[team] + Math.max(1, lift.hookS());
        for (int i = 0; i < count && lift.backhaul(); i++) {
            if (day.lifts().get(i).to() == lift.from()) {
                fromS = Math.max(fromS, now.releasedS[i] + 2);
            }
        }
        // Where it lies nobody hooks it before the wait is over.
        if (lift.afterS() > 0
                && lift.after() >= 0
                && day.lifts().get(lift.after()).to() == lift.from()) {
            fromS = Math.max(fromS, now.releasedS[lift.after()] + lift.afterS() + lift.hookS());
        }
        return fromS;
    }

    private long downFromS(Now now, int k, int team) {
        TinyDay.Lift lift = day.lifts().get(k);
        // A pole is stood up by people who are there, where what it waits for is over.
        long standingS = lift.pole() ? lift.setDownS() : 0;
        long fromS = lift.to() < 2 ? 0 : now.freeS[team] + Math.max(60, standingS);
        if (lift.after() >= 0) {
            long waitS = lift.afterS() > 0 ? lift.afterS() + standingS : 0;
            fromS = Math.max(fromS, now.releasedS[lift.after()] + waitS);
        }
        for (int i = 0; i < count && lift.pole(); i++) {
            TinyDay.Lift other = day.lifts().get(i);
            if (other.readyS() > 0 && other.to() == lift.to()) {
                long sinceS = Math.max(now.releasedS[i], now.cameS[team]);
                fromS = Math.max(fromS, sinceS + other.readyS() + standingS);
            }
        }
        return fromS;
    }

    private boolean hang(Now now, int k, int hooks, int receives) {
        TinyDay.Lift lift = day.lifts().get(k);
        long carriedS = day.loadedS(lift) + lift.setDownS();
        long hookedS = now.timeS;
        now.timeS += carriedS;
        now.flownS += carriedS;
        now.place = lift.to();
        now.hovers = lift.to() >= 2;
        now.releasedS[k] = now.timeS;
        now.comfortCents += day.comfortCents(k, spell(now.timeS), now.timeS);
        if (hooks >= 0) {
            now.freeS[hooks] = Math.max(now.freeS[hooks], hookedS + 1);
        }
        if (receives >= 0) {
            now.freeS[receives] = Math.max(now.freeS[receives], now.timeS + lift.busyS());
        }
        long homeS = now.hovers ? day.wayS()[now.place][near(now.place)] + TinyDay.EXTRA_S : 0;
        return now.timeS + homeS <= TinyDay.END_S;
    }

    private void goTo(Now now, int place) {
        long wayS = day.wayS()[now.place][place] + (now.hovers ? TinyDay.EXTRA_S : 0);
        now.timeS += wayS;
        now.flownS += wayS;
        now.place = place;
        now.hovers = false;
    }

    private int near(int place) {
        if (place < 2) {
            return place;
        }
        return day.wayS()[place][0] <= day.wayS()[place][1] ? 0 : 1;
    }

    private int spell(long timeS) {
        int spell = 0;
        while (timeS >= day.untilS()[spell]) {
            spell++;
        }
        return spell;
    }
}
