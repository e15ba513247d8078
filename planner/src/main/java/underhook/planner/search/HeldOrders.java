package underhook.planner.search;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import underhook.core.plan.StepKind;

/**
 * The least flown by any order in which people are flown as on a known day and each trip and each such flight begins in
 * the hour of the weather in which it begins there.
 *
 * <p>Exact over what is kept of a day: all orders within each hour are looked at (a shortest path over what is done and
 * what was last), each trip and way taking the least that it takes then. What must come before what, landings to fit and
 * take off the line for people, and that the machine does not wait in the air are kept; fuel, breaks, crews' hours and
 * which line are not. So nothing that may be flown flies less.
 */
final class HeldOrders {
    /** With more in one hour there are too many orders. */
    private static final int MOST_IN_AN_HOUR = 14;

    private static final int ROUNDS = 60;
    private static final double NEVER_S = 10 * HourLeast.NONE_S;

    /** Of ways there are between two pieces: straight on. */
    private static final int STRAIGHT = -1;

    private final DayTable table;
    private final HourLeast least;
    private final Joins joins;
    private final List<Piece> pieces = new ArrayList<>();

    /** From each piece, or the start behind them, to each, or the end of the day behind them, s. */
    private final double[][] betweenS;

    /** Over which place; {@link #STRAIGHT} over none. */
    private final int[][] over;

    /** A trip, or a flight of people: then the trip is {@link DayTable#NONE}. */
    private record Piece(int trip, int from, int to, int hour) {
        boolean isTrip() {
            return trip >= 0;
        }
    }

    /** The shortest ways through the pieces of one hour: by what is done and what was last. */
    private static final class Hour {
        private final List<Integer> all;
        private final double[][] atS;
        private final int[][] before;

        Hour(List<Integer> all) {
            this.all = all;
            this.atS = new double[1 << all.size()][all.size()];
            this.before = new int[1 << all.size()][all.size()];
            for (double[] row : atS) {
                Arrays.fill(row, NEVER_S);
            }
        }

        /** Of the shortest ways with all done, by what was last, s. */
        double[] endsS() {
            return atS[atS.length - 1];
        }
    }

    private HeldOrders(DayTable table, Ordered day) {
        this.table = table;
        boolean[] placed = HookChoices.asFlown(day).placed(table.trips.length);
        HeldDay held = HeldDay.hours(day);
        this.least = new HourLeast(table, placed, new Earliest(table, placed), held);
        this.joins = new Joins(table, placed, placed, held);
        for (DayEvent event : day.events()) {
            if (event.kind() == StepKind.CREW_MOVE) {
                event.legs()
                        .forEach(
                                way ->
                                        pieces.add(
                                                new Piece(
                                                        DayTable.NONE,
                                                        way.from(),
                                                        way.to(),
                                                        way.slot())));
            }
            event.lift()
                    .ifPresent(
                            lift -> {
                                TripRow trip = table.trips[lift.trip()];
                                pieces.add(
                                        new Piece(
                                                lift.trip(),
                                                trip.from(),
                                                trip.to(),
                                                lift.slotFrom()));
                            });
        }
        this.betweenS = new double[pieces.size() + 1][pieces.size() + 1];
        this.over = new int[pieces.size() + 1][pieces.size() + 1];
    }

    /**
     * The bound, s; none where too much is flown in one hour.
     *
     * @param stop says true when it must not be raised any more
     */
    static OptionalDouble boundS(DayTable table, Ordered day, BooleanSupplier stop) {
        HeldOrders orders = new HeldOrders(table, day);
        boolean few =
                IntStream.range(0, orders.least.hours)
                        .allMatch(hour -> orders.in(hour).size() <= MOST_IN_AN_HOUR);
        return few && !orders.pieces.isEmpty()
                ? OptionalDouble.of(orders.boundS(stop))
                : OptionalDouble.empty();
    }

    private double boundS(BooleanSupplier stop) {
        double boundS = 0;
        boolean better = true;
        for (int round = 0; round < ROUNDS && better && !stop.getAsBoolean(); round++) {
            join();
            List<Hour> hours = hours();
            boundS = Math.max(boundS, piecesS() + lastS(hours));
            better = makeExact(order(hours));
        }
        return boundS;
    }

    /** Those that begin in an hour. */
    private List<Integer> in(int hour) {
        return IntStream.range(0, pieces.size())
                .filter(i -> pieces.get(i).hour() == hour)
                .boxed()
                .toList();
    }

    private double piecesS() {
        return pieces.stream().mapToDouble(this::pieceS).sum();
    }

    private double pieceS(Piece piece) {
        return piece.isTrip()
                ? least.tripS(piece.trip(), piece.hour())
                : least.emptyS(piece.from(), piece.to(), piece.hour())
                        + 2 * table.rules.boardingS();
    }

    /** Works out what lies between any two pieces. */
    private void join() {
        int count = pieces.size();
        for (int i = 0; i <= count; i++) {
            for (int j = 0; j <= count; j++) {
                Span span = new Span(i, j);
                betweenS[i][j] = NEVER_S;
                if (span.isStraight()) {
                    betweenS[i][j] = span.straightS();
                    over[i][j] = STRAIGHT;
                }
                for (int ground = 0; ground < table.spots.length; ground++) {
                    double roundS = table.spots[ground].ground() ? span.overS(ground) : NEVER_S;
                    if (roundS < betweenS[i][j]) {
                        betweenS[i][j] = roundS;
                        over[i][j] = ground;
                    }
                }
            }
        }
    }

    /** What lies between a piece, or the start of the day, and another, or its end. */
    private final class Span {
        private final int first;
        private final int then;
        private final int place;
        private final boolean isLineOn;
        private final int fromHour;

        /** The last hour in which the machine leaves where it is. */
        private final int leaveBy;

        private final int byHour;

        Span(int first, int then) {
            this.first = first;
            this.then = then;
            boolean starts = first == pieces.size();
            boolean ends = then == pieces.size();
            this.place = starts ? table.rules.startPlace() : pieces.get(first).to();
            this.isLineOn = !starts && pieces.get(first).isTrip();
            this.fromHour = starts ? 0 : pieces.get(first).hour();
            this.byHour = ends ? least.hours - 1 : Math.max(fromHour, pieces.get(then).hour());
            boolean atOnce = isLineOn && table.spots[place].site();
            this.leaveBy =
                    atOnce
                            ? Math.min(byHour, least.lastHour(pieces.get(first).trip(), fromHour))
                            : byHour;
        }

        /** The line is fitted and taken off on the ground; so the day ends. */
        boolean isStraight() {
            return then < pieces.size() && isLineOn == pieces.get(then).isTrip();
        }

        double straightS() {
            Piece next = pieces.get(then);
            double wayS = wayS(place, next.from(), new int[] {fromHour, leaveBy});
            if (!isLineOn || !table.spots[next.from()].site() || first == then) {
                return wayS;
            }
            long leastWayS = joins.leastWayS(pieces.get(first).trip(), next.trip());
            return leastWayS < DayTable.NEVER_S
                    ? Math.max(wayS, Math.min(Posts.MOST_WAIT_S, (double) leastWayS))
                    : NEVER_S;
        }

        double overS(int ground) {
            double downS = wayS(place, ground, new int[] {fromHour, leaveBy});
            return then == pieces.size()
                    ? downS
                    : downS + wayS(ground, pieces.get(then).from(), new int[] {fromHour, byHour});
        }

        void wantExact() {
            int ground = over[first][then];
            int goal = then == pieces.size() ? ground : pieces.get(then).from();
            if (ground == STRAIGHT) {
                want(place, goal, new int[] {fromHour, leaveBy});
            } else {
                want(place, ground, new int[] {fromHour, leaveBy});
                want(ground, goal, new int[] {fromHour, byHour});
            }
        }
    }

    /** The least that an empty way takes in any of some hours, the first and the last given. */
    private double wayS(int from, int to, int[] hours) {
        return from == to ? 0 : least.emptyS(from, to, calmest(from, to, hours));
    }

    private int calmest(int from, int to, int[] hours) {
        int best = hours[0];
        for (int hour = hours[0] + 1; hour <= hours[1]; hour++) {
            best = least.emptyS(from, to, hour) < least.emptyS(from, to, best) ? hour : best;
        }
        return best;
    }

    private void want(int from, int to, int[] hours) {
        if (from != to) {
            least.wantEmpty(from, to, calmest(from, to, hours));
        }
    }

    /** The hours in which anything begins, one on the other. */
    private List<Hour> hours() {
        double[] beginsS = new double[pieces.size() + 1];
        Arrays.fill(beginsS, NEVER_S);
        beginsS[pieces.size()] = 0;
        List<Hour> hours = new ArrayList<>();
        for (int number = 0; number < least.hours; number++) {
            List<Integer> all = in(number);
            if (!all.isEmpty()) {
                Hour hour = through(all, beginsS);
                hours.add(hour);
                Arrays.fill(beginsS, NEVER_S);
                double[] endsS = hour.endsS();
                for (int i = 0; i < all.size(); i++) {
                    beginsS[all.get(i)] = endsS[i];
                }
            }
        }
        return hours;
    }

    private Hour through(List<Integer> all, double[] beginsS) {
        int count = all.size();
        Hour hour = new Hour(all);
        int[] needs = all.stream().mapToInt(i -> needs(i, all)).toArray();
        for (int done = 0; done + 1 < 1 << count; done++) {
            for (int next = 0; next < count; next++) {
                int with = done | 1 << next;
                if (with == done || (needs[next] & done) != needs[next]) {
                    continue;
                }
                int last = cheapest(done == 0 ? beginsS : hour.atS[done], all, next, done);
                double sumS =
                        done == 0
                                ? beginsS[last] + betweenS[last][all.get(next)]
                                : hour.atS[done][last] + betweenS[all.get(last)][all.get(next)];
                if (sumS < hour.atS[with][next]) {
                    hour.atS[with][next] = sumS;
                    hour.before[with][next] = last;
                }
            }
        }
        return hour;
    }

    /** What is best done last of what is done: a number in this hour, or before it that of a piece. */
    private int cheapest(double[] sumsS, List<Integer> all, int next, int done) {
        int best = 0;
        double bestS = Double.POSITIVE_INFINITY;
        for (int last = 0; last < sumsS.length; last++) {
            int piece = done == 0 ? last : all.get(last);
            double oneS = sumsS[last] + betweenS[piece][all.get(next)];
            if (oneS < bestS) {
                bestS = oneS;
                best = last;
            }
        }
        return best;
    }

    /** Which of an hour's pieces come before one. */
    private int needs(int piece, List<Integer> all) {
        int needs = 0;
        for (int i = 0; i < all.size(); i++) {
            Piece other = pieces.get(all.get(i));
            boolean comesBefore =
                    other.isTrip()
                            && pieces.get(piece).isTrip()
                            && joins.isBefore(other.trip(), pieces.get(piece).trip());
            needs |= comesBefore ? 1 << i : 0;
        }
        return needs;
    }

    private double lastS(List<Hour> hours) {
        Hour hour = hours.get(hours.size() - 1);
        int last = lastOf(hour);
        return hour.endsS()[last] + betweenS[hour.all.get(last)][pieces.size()];
    }

    private int lastOf(Hour hour) {
        double[] sumsS = hour.endsS();
        int best = 0;
        double bestS = Double.POSITIVE_INFINITY;
        for (int last = 0; last < sumsS.length; last++) {
            double oneS = sumsS[last] + betweenS[hour.all.get(last)][pieces.size()];
            if (oneS < bestS) {
                bestS = oneS;
                best = last;
            }
        }
        return best;
    }

    /** The pieces in the order that flies least. */
    private List<Integer> order(List<Hour> hours) {
        Deque<Integer> order = new ArrayDeque<>();
        int last = lastOf(hours.get(hours.size() - 1));
        for (int i = hours.size() - 1; i >= 0; i--) {
            Hour hour = hours.get(i);
            int done = hour.atS.length - 1;
            while (done != 0) {
                order.addFirst(hour.all.get(last));
                int left = done & ~(1 << last);
                last = hour.before[done][last];
                done = left;
            }
            last = i > 0 ? hours.get(i - 1).all.indexOf(last) : last;
        }
        return List.copyOf(order);
    }

    /** Makes exact what that order rests on; whether anything was not. */
    private boolean makeExact(List<Integer> order) {
        int known = least.exactFigures();
        int before = pieces.size();
        boolean any = false;
        for (int i : order) {
            Piece piece = pieces.get(i);
            any |=
                    piece.isTrip()
                            ? least.wantTrip(piece.trip(), piece.hour())
                            : least.wantEmpty(piece.from(), piece.to(), piece.hour());
            new Span(before, i).wantExact();
            before = i;
        }
        new Span(before, pieces.size()).wantExact();
        return least.makeExact() && (any || least.exactFigures() > known);
    }
}
