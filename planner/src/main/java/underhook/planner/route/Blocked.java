package underhook.planner.route;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import underhook.core.geo.PlanePoint;

/**
 * What closes every way between two places.
 *
 * <p>Open ground falls into pieces that no way joins. A thing alone opens a way if, taken away, it joins
 * the piece round the start to that round the end. Where none does, things are taken away one after the
 * other, those first that bound the smaller of the two pieces and lie nearest to the straight line, until
 * there is a way; of these as many are named as it takes. Directions, heights and the angle at which wires are crossed are not looked at: where
 * both places lie in one piece, the ground is not what closes the way.
 */
public final class Blocked {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** Room round everything, so that the way round the outside is seen. */
    private static final double ROUND_M = 1000;

    /** More things than these opened together are no measure that anybody takes. */
    private static final int MOST_TOGETHER = 8;

    /** In a town fewer are tried: each try lays all things together. */
    private static final int LAID_TOGETHER = 4000;

    /** Pieces cut apart and put together again meet within this. */
    private static final double SEAM_M = 0.001;

    /**
     * Something that closes ground.
     *
     * @param area ground that it closes
     * @param opener what would open it, in words
     */
    public record Thing(String id, Geometry area, String opener) {}

    /** How the way is closed. */
    public enum Why {
        /** The start lies on closed ground. */
        START_CLOSED,
        /** The end lies on closed ground. */
        END_CLOSED,
        /** Without any one of these there would be a way. */
        EACH_ALONE,
        /** These close it together: without all of them there would be a way, without some of them not. */
        TOGETHER,
        /** These and others close it; how many would have to be opened was not found. */
        MANY,
        /** Ground in plan is open. */
        NOT_IN_PLAN
    }

    /**
     * The answer.
     *
     * @param things what closes it, nearest to the start first
     */
    public record Found(Why why, List<Thing> things) {
        public Found {
            things = List.copyOf(things);
        }

        public List<String> ids() {
            return things.stream().map(Thing::id).distinct().toList();
        }

        public List<String> openers() {
            return things.stream().map(Thing::opener).distinct().toList();
        }
    }

    private final List<Thing> things;
    private final PlanePoint from;
    private final PlanePoint to;

    private Blocked(PlanePoint from, PlanePoint to, List<Thing> things) {
        this.from = from;
        this.to = to;
        this.things = things;
    }

    /** What closes the way from one point to another. */
    public static Found between(PlanePoint from, PlanePoint to, List<Thing> things) {
        List<Thing> near = new ArrayList<>(things);
        near.sort(Comparator.comparingDouble(thing -> thing.area().distance(point(from))));
        return new Blocked(from, to, near).find();
    }

    private Found find() {
        List<Thing> onStart = covering(from);
        if (!onStart.isEmpty()) {
            return new Found(Why.START_CLOSED, onStart);
        }
        List<Thing> onEnd = covering(to);
        if (!onEnd.isEmpty()) {
            return new Found(Why.END_CLOSED, onEnd);
        }
        Geometry open = openGround();
        Geometry start = pieceWith(open, from);
        if (start.covers(point(to))) {
            return new Found(Why.NOT_IN_PLAN, List.of());
        }
        Geometry end = pieceWith(open, to);
        List<Thing> alone = things.stream().filter(thing -> joins(thing, start, end)).toList();
        if (!alone.isEmpty()) {
            return new Found(Why.EACH_ALONE, alone);
        }
        List<Thing> together = together();
        return together.isEmpty()
                ? new Found(Why.MANY, bounding(start, end))
                : new Found(Why.TOGETHER, together);
    }

    /** What bounds the smaller of two pieces, nearest to the straight line first. */
    private List<Thing> bounding(Geometry start, Geometry end) {
        Geometry pocket = start.getArea() <= end.getArea() ? start : end;
        Geometry straight =
                FACTORY.createLineString(
                        new Coordinate[] {point(from).getCoordinate(), point(to).getCoordinate()});
        return things.stream()
                .filter(thing -> meets(thing, pocket))
                .sorted(Comparator.comparingDouble(thing -> thing.area().distance(straight)))
                .toList();
    }

    /** Things of which each is needed and all are enough; empty where that would be too many. */
    private List<Thing> together() {
        List<Thing> opened = new ArrayList<>();
        int most = Math.min(MOST_TOGETHER, LAID_TOGETHER / things.size());
        Blocked rest = this;
        while (!rest.isOpen()) {
            if (opened.size() >= most) {
                return List.of();
            }
            Geometry open = rest.openGround();
            opened.add(rest.bounding(pieceWith(open, from), pieceWith(open, to)).get(0));
            rest = without(opened);
        }
        for (Thing thing : List.copyOf(opened)) {
            List<Thing> fewer = new ArrayList<>(opened);
            fewer.remove(thing);
            if (without(fewer).isOpen()) {
                opened.remove(thing);
            }
        }
        return things.stream().filter(opened::contains).toList();
    }

    private Blocked without(List<Thing> opened) {
        return new Blocked(
                from, to, things.stream().filter(thing -> !opened.contains(thing)).toList());
    }

    private boolean isOpen() {
        return pieceWith(openGround(), from).covers(point(to));
    }

    private List<Thing> covering(PlanePoint at) {
        return things.stream().filter(thing -> thing.area().covers(point(at))).toList();
    }

    private Geometry openGround() {
        Envelope extent = ByPlace.extent(List.of(from, to));
        things.forEach(thing -> extent.expandToInclude(thing.area().getEnvelopeInternal()));
        extent.expandBy(ROUND_M);
        return FACTORY.toGeometry(extent)
                .difference(UnitedGround.union(things.stream().map(Thing::area).toList()));
    }

    private static Geometry pieceWith(Geometry open, PlanePoint at) {
        for (int i = 0; i < open.getNumGeometries(); i++) {
            if (open.getGeometryN(i).covers(point(at))) {
                return open.getGeometryN(i);
            }
        }
        throw new IllegalArgumentException("(" + at + ") lies on closed ground.");
    }

    private boolean joins(Thing thing, Geometry start, Geometry end) {
        if (!meets(thing, start) || !meets(thing, end)) {
            return false;
        }
        Geometry freed = thing.area();
        for (Thing other : things) {
            if (!other.id().equals(thing.id()) && other.area().intersects(freed)) {
                freed = freed.difference(other.area());
            }
        }
        Geometry joined = UnitedGround.union(List.of(start, end, freed.buffer(SEAM_M)));
        return pieceWith(joined, from).covers(point(to));
    }

    private static boolean meets(Thing thing, Geometry piece) {
        return thing.area().isWithinDistance(piece, SEAM_M);
    }

    private static Point point(PlanePoint at) {
        return FACTORY.createPoint(new Coordinate(at.eastM(), at.northM()));
    }
}
