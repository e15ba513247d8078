package underhook.planner.route;

import java.lang.ref.SoftReference;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;
import underhook.core.geo.PlanePoint;

/**
 * Shortest and quickest ways in plan around obstacles and over wires that may be crossed.
 *
 * <p>A graph of straight pieces between corners of the obstacles and gates beside the wires. Away from
 * wires the way is exact for the polygons given (round buffers are polygons outside the circle), in
 * steady wind too: a best way turns only where closed ground bulges towards it, and both its pieces
 * there leave that ground on one side, so no other pieces are kept. A piece keeps no cost, only its
 * ends; a change of wind needs no new map. Which spots are seen from a spot is worked out when a search
 * first comes there, and kept.
 *
 * <p>Wires are crossed where a piece of the way meets them within the allowed angle of square; gates
 * stand every {@value Gates#SPACING_M} m, so that the way over a wire may be longer than the shortest by
 * some ten metres, never shorter than allowed ({@link WireBends} mends where that matters).
 */
public final class WayMap {
    private final UnitedGround united;
    private final Gates gates;
    private final ClosedGround ground;
    private final CrossableWires wires;
    private final Spots spots;
    private final AtomicReferenceArray<int[]> seen;
    private final AtomicReference<@Nullable SoftReference<Desk>> freeDesk = new AtomicReference<>();

    /**
     * Steady wind over the whole map, and how fast is flown in it.
     *
     * @param towardsEastMPerS metres that the air moves east in a second
     * @param towardsNorthMPerS metres that it moves north in a second
     * @param airspeedMPerS true airspeed, m/s, above 0
     * @param tailCounts whether a tailwind shortens the time; where not, nothing is flown faster over
     *     the ground than through the air. Time by direction stays convex, so ways stay exact.
     */
    public record Wind(
            double towardsEastMPerS,
            double towardsNorthMPerS,
            double airspeedMPerS,
            boolean tailCounts) {
        /** A metre takes a second: what is quickest is shortest. */
        static final Wind STILL = new Wind(0, 0, 1);

        /** A tailwind counts. */
        public Wind(double towardsEastMPerS, double towardsNorthMPerS, double airspeedMPerS) {
            this(towardsEastMPerS, towardsNorthMPerS, airspeedMPerS, true);
        }

        public Wind {
            if (!(airspeedMPerS > 0 && airspeedMPerS < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        "airspeedMPerS (" + airspeedMPerS + ") must be finite and above 0.");
            }
            if (!Double.isFinite(towardsEastMPerS) || !Double.isFinite(towardsNorthMPerS)) {
                throw new IllegalArgumentException(
                        "towardsEastMPerS ("
                                + towardsEastMPerS
                                + ") and towardsNorthMPerS ("
                                + towardsNorthMPerS
                                + ") must be finite.");
            }
        }

        /** Time for a straight piece, s; infinite where the wind does not let it be flown. */
        public double durationS(double eastM, double northM) {
            double lengthM = Math.sqrt(eastM * eastM + northM * northM);
            if (!(lengthM > 0)) {
                return 0;
            }
            double along = (towardsEastMPerS * eastM + towardsNorthMPerS * northM) / lengthM;
            double across = (towardsEastMPerS * northM - towardsNorthMPerS * eastM) / lengthM;
            double square = airspeedMPerS * airspeedMPerS - across * across;
            double withWindMPerS = square < 0 ? 0 : along + Math.sqrt(square);
            double groundSpeedMPerS =
                    tailCounts ? withWindMPerS : Math.min(withWindMPerS, airspeedMPerS);
            return groundSpeedMPerS > 1e-6 * airspeedMPerS
                    ? lengthM / groundSpeedMPerS
                    : Double.POSITIVE_INFINITY;
        }
    }

    /** Closed areas are widened already by what their rules ask for. */
    WayMap(List<Geometry> closedAreas, List<WirePlan> wires, double wireClearanceM) {
        this(
                UnitedGround.of(withNeverCrossed(closedAreas, wires, wireClearanceM)),
                Gates.of(wires.stream().filter(WirePlan::isCrossable).toList(), wireClearanceM));
    }

    private WayMap(UnitedGround united, Gates gates) {
        this.united = united;
        this.gates = gates;
        this.ground = new ClosedGround(united, gates.extent());
        this.wires = new CrossableWires(gates.spans(), ground.grid);
        this.spots = new Spots(ground, this.wires, gates.points());
        this.seen = new AtomicReferenceArray<>(spots.size());
    }

    private static List<Geometry> withNeverCrossed(
            List<Geometry> closedAreas, List<WirePlan> wires, double wireClearanceM) {
        List<Geometry> areas = new ArrayList<>(closedAreas);
        wires.stream()
                .filter(wire -> !wire.isCrossable())
                .forEach(wire -> areas.add(wire.corridor(wireClearanceM)));
        return areas;
    }

    /** The same map with more ground closed. */
    WayMap with(List<Geometry> more) {
        return more.isEmpty() ? this : new WayMap(united.with(more), gates);
    }

    /** A map without wires. */
    public static WayMap around(List<Geometry> closedAreas) {
        return new WayMap(closedAreas, List.of(), 0);
    }

    /** Works out all pieces now, which a search would else do when it first needs them. */
    public WayMap prepared() {
        Sight sight = new Sight(ground, wires, spots);
        for (int at = 0; at < spots.size(); at++) {
            seen.set(at, sight.look(spots.get(at)));
        }
        return this;
    }

    /** Spots where a way may turn. */
    public int spotCount() {
        return spots.size();
    }

    /** Straight pieces worked out so far, each counted from both its ends. */
    public long pieceCount() {
        long sum = 0;
        for (int i = 0; i < seen.length(); i++) {
            sum += seenAt(i).length;
        }
        return sum;
    }

    /** Whether of any two spots, as far as worked out, each is seen from the other or neither is. */
    boolean isSeenBothWays() {
        for (int i = 0; i < seen.length(); i++) {
            for (int at : seenAt(i)) {
                int[] back = seen.get(at);
                if (back != null && Arrays.binarySearch(back, i) < 0) {
                    return false;
                }
            }
        }
        return true;
    }

    private int[] seenAt(int spot) {
        int[] known = seen.get(spot);
        return known == null ? new int[0] : known;
    }

    /** Whether a point lies on ground that may not be entered, or on its edge. */
    boolean isInsideBlock(PlanePoint point) {
        return ground.isClosed(point);
    }

    /** Whether a point lies in the corridor of a wire that may only be crossed. */
    boolean isInCorridor(PlanePoint point) {
        return wires.isInCorridor(point);
    }

    /** Whether the straight piece between two points may be flown. */
    boolean isFree(PlanePoint a, PlanePoint b) {
        return walk().isFree(a, b);
    }

    /** The same for pieces asked for in a row, most of which begin where the one before ends. */
    Walk walk() {
        return new Walk();
    }

    /** One way piece by piece. Not safe for threads. */
    final class Walk {
        private @Nullable PlanePoint open;

        boolean isFree(PlanePoint a, PlanePoint b) {
            // Where no edge is touched on the way, its end lies outside closed ground as its start
            // does.
            boolean known = open != null && a.equals(open);
            boolean free =
                    ground.isOpen(Spot.of(a), Spot.of(b))
                            && (known || mayStand(a))
                            && !wires.isInCorridor(b)
                            && wires.passes(a, b);
            open = free ? b : null;
            return free;
        }
    }

    private boolean mayStand(PlanePoint point) {
        return !ground.isClosed(point) && !wires.isInCorridor(point);
    }

    /** The shortest way between two points, both included; empty when there is none. */
    public Optional<List<PlanePoint>> findWay(PlanePoint from, PlanePoint to) {
        return findWay(from, to, Wind.STILL);
    }

    /**
     * The way between two points, both included, that takes the least time in a steady wind; empty when
     * there is none. Pieces that the wind does not let be flown are left out.
     */
    public Optional<List<PlanePoint>> findWay(PlanePoint from, PlanePoint to, Wind wind) {
        if (!mayStand(from) || !mayStand(to)) {
            return Optional.empty();
        }
        if (from.equals(to)) {
            return Optional.of(List.of(from));
        }
        double straightS = wind.durationS(to.eastM() - from.eastM(), to.northM() - from.northM());
        boolean open = ground.isOpen(Spot.of(from), Spot.of(to)) && wires.passes(from, to);
        return open && straightS < Double.POSITIVE_INFINITY
                ? Optional.of(List.of(from, to))
                : search(from, to, wind);
    }

    /** On the desk of the search before, unless another thread sits there. */
    private Optional<List<PlanePoint>> search(PlanePoint from, PlanePoint to, Wind wind) {
        SoftReference<Desk> free = freeDesk.getAndSet(null);
        Desk known = free == null ? null : free.get();
        Desk desk = known == null ? new Desk() : known;
        desk.clear();
        Optional<List<PlanePoint>> found =
                new Search(Spot.of(from), Spot.of(to), wind, desk).find();
        freeDesk.set(new SoftReference<>(desk));
        return found;
    }

    /** What a search writes down for each spot; one search after the other may use it. */
    private final class Desk {
        private final Sight sight = new Sight(ground, wires, spots);
        private final double[] bestS = new double[spots.size()];
        private final int[] before = new int[spots.size()];

        /** Number of the search that wrote last for a spot: twice it, and one more once it is done. */
        private final int[] writtenBy = new int[spots.size()];

        private int search;

        void clear() {
            search += 2;
            if (search < 0) {
                Arrays.fill(writtenBy, 0);
                search = 2;
            }
        }

        /** Whether a spot is reached sooner than so far; then it counts as written. */
        boolean isBetter(int at, double nowS) {
            boolean better =
                    writtenBy[at] < search ? nowS < Double.POSITIVE_INFINITY : nowS < bestS[at];
            if (better && writtenBy[at] < search) {
                writtenBy[at] = search;
            }
            return better;
        }

        /** Marks a spot as done; false when it was. */
        boolean take(int at) {
            boolean first = writtenBy[at] == search;
            writtenBy[at] = search + 1;
            return first;
        }
    }

    /** One search: from spot to spot by least time so far and time straight to the end. */
    private final class Search {
        private final Spot from;
        private final Spot to;
        private final Wind wind;
        private final Desk desk;
        private final OpenQueue queue = new OpenQueue();
        private double endS = Double.POSITIVE_INFINITY;
        private int last = -1;

        Search(Spot from, Spot to, Wind wind, Desk desk) {
            this.from = from;
            this.to = to;
            this.wind = wind;
            this.desk = desk;
        }

        Optional<List<PlanePoint>> find() {
            reach(desk.sight.look(from), -1);
            while (!queue.isEmpty() && queue.leastS() < endS) {
                int at = queue.poll();
                if (desk.take(at)) {
                    double reachedS = desk.bestS[at] + restS(at);
                    if (reachedS < endS && seesEnd(spots.get(at))) {
                        endS = reachedS;
                        last = at;
                    }
                    reach(seenFrom(at), at);
                }
            }
            return last < 0 ? Optional.empty() : Optional.of(way());
        }

        private void reach(int[] numbers, int via) {
            Spot start = via < 0 ? from : spots.get(via);
            double doneS = via < 0 ? 0 : desk.bestS[via];
            for (int at : numbers) {
                double nowS = doneS + durationS(start, spots.get(at));
                if (desk.isBetter(at, nowS)) {
                    desk.bestS[at] = nowS;
                    desk.before[at] = via;
                    double wholeS = nowS + restS(at);
                    if (wholeS < endS) {
                        queue.add(at, wholeS);
                    }
                }
            }
        }

        private int[] seenFrom(int at) {
            int[] known = seen.get(at);
            if (known == null) {
                known = desk.sight.look(spots.get(at));
                seen.set(at, known);
            }
            return known;
        }

        private boolean seesEnd(Spot spot) {
            return !spot.equals(to)
                    && ground.isTangentAtCorners(spot, to)
                    && ground.isOpen(spot, to)
                    && wires.passes(spot.toPoint(), to.toPoint());
        }

        private double restS(int at) {
            return durationS(spots.get(at), to);
        }

        private double durationS(Spot a, Spot b) {
            return wind.durationS(b.eastM() - a.eastM(), b.northM() - a.northM());
        }

        private List<PlanePoint> way() {
            List<PlanePoint> way = new ArrayList<>();
            way.add(to.toPoint());
            for (int at = last; at >= 0; at = desk.before[at]) {
                way.add(spots.get(at).toPoint());
            }
            way.add(from.toPoint());
            Collections.reverse(way);
            return way;
        }
    }
}
