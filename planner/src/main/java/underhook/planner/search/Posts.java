package underhook.planner.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where the machine is between two pieces of flying, by number: it stands at a place; hooks up a trip out at a site; has
 * let go a trip; or is done for the day.
 *
 * <p>From where it stands it may go on at any time to whatever is due. From a set-down it goes on at once, so where to
 * hangs on the trip ({@link Joins}); trips from which the same may follow share a post.
 */
final class Posts {
    /** No way is counted as longer for what it waits for, s: more than any way round over the ground. */
    static final double MOST_WAIT_S = 600;

    private final DayTable table;
    private final HourLeast least;
    private final int[] standing;
    private final int[] hooking;
    private final int[] leaving;

    /** Of each post its place; of the last one none. */
    private final List<Integer> places = new ArrayList<>();

    /** Of each post that is left after a set-down: whether the day may end so. */
    private final List<Boolean> mayEnd = new ArrayList<>();

    /** Of each post that is left after a set-down the least to each hook-up, s. */
    private final List<double[]> leastS = new ArrayList<>();

    private final int firstLeft;

    /** Seconds from each post to each by the hour, as known when so many figures had been made exact. */
    private final double[][][] waysS;

    /** Of each post that is left at once after a trip the last hour for that, by the hour of the hook-up. */
    private final int[][] lastHour;

    /** Of each post those to which there is a way at some hour. */
    private final int[][] next;

    private int knownFigures = DayTable.NONE;

    Posts(HourLeast least, boolean[] placed, Joins joins) {
        this.table = least.table;
        this.least = least;
        this.standing = new int[table.spots.length];
        this.hooking = new int[placed.length];
        this.leaving = new int[placed.length];
        Arrays.fill(standing, DayTable.NONE);
        Arrays.fill(hooking, DayTable.NONE);
        Arrays.fill(leaving, DayTable.NONE);
        for (int place = 0; place < standing.length; place++) {
            if (least.stands(place)) {
                standing[place] = add(place);
            }
        }
        for (int k = 0; k < placed.length; k++) {
            int from = table.trips[k].from();
            if (placed[k]) {
                hooking[k] = standing[from] >= 0 && !isSite(from) ? standing[from] : add(from);
            }
        }
        this.firstLeft = places.size();
        for (int k = 0; k < placed.length; k++) {
            if (placed[k]) {
                leaving[k] = left(k, placed, joins);
            }
        }
        add(DayTable.NONE);
        this.waysS = new double[places.size()][places.size()][least.hours];
        this.lastHour = new int[places.size()][least.hours];
        this.next = new int[places.size()][0];
    }

    private boolean isSite(int place) {
        return table.spots[place].site();
    }

    private int add(int place) {
        places.add(place);
        return places.size() - 1;
    }

    /** The post after a trip: a known one that is the same, or a new one. */
    private int left(int trip, boolean[] placed, Joins joins) {
        double[] toHookS = new double[firstLeft];
        for (int next = 0; next < placed.length; next++) {
            if (placed[next] && isSite(table.trips[next].from())) {
                long wayS = joins.leastWayS(trip, next);
                toHookS[hooking[next]] =
                        wayS < DayTable.NEVER_S
                                ? Math.min(MOST_WAIT_S, (double) wayS)
                                : HourLeast.NONE_S;
            }
        }
        boolean last = joins.mayBeLast(trip);
        for (int post = firstLeft; post < places.size(); post++) {
            int known = post - firstLeft;
            if (places.get(post) == table.trips[trip].to()
                    && mayEnd.get(known) == last
                    && Arrays.equals(leastS.get(known), toHookS)) {
                return post;
            }
        }
        mayEnd.add(last);
        leastS.add(toHookS);
        return add(table.trips[trip].to());
    }

    int count() {
        return places.size();
    }

    int start() {
        return standing[table.rules.startPlace()];
    }

    int end() {
        return places.size() - 1;
    }

    int standing(int place) {
        return standing[place];
    }

    int hooking(int trip) {
        return hooking[trip];
    }

    int leaving(int trip) {
        return leaving[trip];
    }

    int place(int post) {
        return places.get(post);
    }

    /** The last hour in which the way on from a post may begin after a trip that was hooked up in one. */
    int lastHour(int post, int hour) {
        refresh();
        return isLeftAtOnce(post) ? lastHour[post][hour] : least.hours - 1;
    }

    /** Whether a trip was let go there out at a site: then the machine goes on at once. */
    private boolean isLeftAtOnce(int post) {
        return isLeft(post) && isSite(places.get(post));
    }

    /** Whether a trip was let go there. */
    boolean isLeft(int post) {
        return post >= firstLeft && post < end();
    }

    private boolean isStanding(int post) {
        return post < firstLeft && standing[places.get(post)] == post;
    }

    /** Least seconds in the air straight from one to the other, by the hour in which it begins. */
    double[] waysS(int from, int to) {
        refresh();
        return waysS[from][to];
    }

    private void refresh() {
        if (knownFigures == least.exactFigures()) {
            return;
        }
        knownFigures = least.exactFigures();
        for (int[] of : lastHour) {
            Arrays.fill(of, 0);
        }
        for (int k = 0; k < leaving.length; k++) {
            for (int hour = 0; hour < least.hours && leaving[k] >= 0; hour++) {
                int[] of = lastHour[leaving[k]];
                of[hour] = Math.max(of[hour], least.lastHour(k, hour));
            }
        }
        for (int a = 0; a < waysS.length; a++) {
            List<Integer> reached = new ArrayList<>();
            for (int b = 0; b < waysS.length; b++) {
                boolean any = false;
                for (int hour = 0; hour < least.hours; hour++) {
                    waysS[a][b][hour] = wayS(a, b, hour);
                    any |= waysS[a][b][hour] < HourLeast.NONE_S;
                }
                if (any) {
                    reached.add(b);
                }
            }
            next[a] = reached.stream().mapToInt(Integer::intValue).toArray();
        }
    }

    /** The posts to which there is a way from one. */
    int[] next(int from) {
        refresh();
        return next[from];
    }

    private double wayS(int from, int to, int hour) {
        if (from == to || !(isLeft(from) || isStanding(from)) || isLeft(to)) {
            return HourLeast.NONE_S;
        }
        if (to == end()) {
            return isLeft(from) && mayEnd.get(from - firstLeft)
                    ? emptyS(places.get(from), home(places.get(from), hour), hour)
                    : HourLeast.NONE_S;
        }
        double flownS = emptyS(places.get(from), places.get(to), hour);
        return isLeft(from) && !isStanding(to)
                ? Math.max(flownS, leastS.get(from - firstLeft)[to])
                : flownS;
    }

    /** The longest that any way is counted as, s. */
    double longestS() {
        double longest = 0;
        for (int from = 0; from < waysS.length; from++) {
            for (int to = 0; to < waysS.length; to++) {
                for (double oneS : waysS(from, to)) {
                    longest = oneS < HourLeast.NONE_S ? Math.max(longest, oneS) : longest;
                }
            }
        }
        return longest;
    }

    private double emptyS(int from, int to, int hour) {
        return from == to ? 0 : least.emptyS(from, to, hour);
    }

    /** Where the machine may stand that is nearest in an hour. */
    private int home(int place, int hour) {
        int best = table.spots[place].ground() ? place : DayTable.NONE;
        for (int to = 0; to < table.spots.length && best != place; to++) {
            boolean nearer =
                    table.spots[to].ground()
                            && (best < 0
                                    || least.emptyS(place, to, hour)
                                            < least.emptyS(place, best, hour));
            best = nearer ? to : best;
        }
        return best;
    }

    /** Wants the figure of that way exact where it decides; whether it was not. */
    boolean wantExact(int from, int to, int hour) {
        int place = places.get(from);
        int next = to == end() ? home(place, hour) : places.get(to);
        return place != next && least.wantEmpty(place, next, hour);
    }
}
