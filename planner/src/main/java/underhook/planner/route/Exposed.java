package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Handling;

/**
 * Something that a way with a load may pass over at a price.
 *
 * <p>What it costs at least comes in levels: a way either pays a level's price or keeps off the ground that
 * the level closes. A line has one level, itself. An area has several, one inside the other: whoever comes so
 * deep into it flies over it for at least that depth on the way in and again on the way out.
 */
final class Exposed {
    /** Whoever comes so near to a line crosses it, m. */
    static final double TOUCH_M = 0.02;

    /** Depths of the levels of an area over its greatest depth. */
    private static final double[] LEVEL_FRACTION = {0.1, 0.3, 0.6, 0.9};

    /** Edges of a core are chords of arcs; no point of one lies less deep than this part of its depth. */
    private static final double CHORD_RATIO = 0.99;

    /** From so many corners on only edges near a way are looked at. */
    private static final int MANY_CORNERS = 200;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final String id;
    private final Geometry shape;
    private final Geometry closedLine;
    private final double priceS;
    private final Optional<OverArea> manyCorners;
    private final List<Double> depthsM = new ArrayList<>();
    private final List<Geometry> cores = new ArrayList<>();

    private Exposed(String id, Geometry shape, Geometry closedLine, double priceS) {
        this.id = id;
        this.shape = shape;
        this.closedLine = closedLine;
        this.priceS = priceS;
        this.manyCorners =
                isLine() || shape.getNumPoints() < MANY_CORNERS
                        ? Optional.empty()
                        : Optional.of(new OverArea(shape));
    }

    /**
     * A road, trail, railway or wire.
     *
     * @param closed ground that a way keeps off which does not cross it; within {@link #TOUCH_M} for a
     *     proof
     * @param priceS for each crossing, s
     */
    static Exposed line(String id, Geometry line, Geometry closed, double priceS) {
        return new Exposed(id, line, closed, priceS);
    }

    /**
     * Ground.
     *
     * @param priceS for each {@link Handling.Exposure#PER_M}, s
     */
    static Exposed area(String id, Geometry area, double priceS) {
        return area(id, area, priceS, 0);
    }

    /**
     * Ground that a way may also keep off altogether: a level that costs nothing, for which there is no use in a
     * proof.
     *
     * @param keepOffM how far a way that does not come into it keeps off it, m; within {@link #TOUCH_M} for a
     *     proof
     */
    static Exposed area(String id, Geometry area, double priceS, double keepOffM) {
        Exposed made = new Exposed(id, area, FACTORY.createPolygon(), priceS);
        if (keepOffM > TOUCH_M) {
            made.depthsM.add(0.0);
            made.cores.add(area.buffer(keepOffM, 2));
        }
        double deepestM = deepestM(area);
        for (double fraction : LEVEL_FRACTION) {
            Geometry core = area.buffer(-fraction * deepestM);
            if (!core.isEmpty()) {
                made.depthsM.add(CHORD_RATIO * fraction * deepestM);
                made.cores.add(core);
            }
        }
        return made;
    }

    /** How deep the area is, to a hundredth. */
    private static double deepestM(Geometry area) {
        double lowM = 0;
        double highM = Math.sqrt(area.getArea());
        while (highM - lowM > 0.01 * highM) {
            double middleM = (lowM + highM) / 2;
            boolean isLeft = !area.buffer(-middleM).isEmpty();
            lowM = isLeft ? middleM : lowM;
            highM = isLeft ? highM : middleM;
        }
        return lowM;
    }

    String id() {
        return id;
    }

    Geometry shape() {
        return shape;
    }

    boolean isLine() {
        return shape.getDimension() < 2;
    }

    double priceS() {
        return priceS;
    }

    /**
     * How long a way is over an area, m.
     *
     * @param line the way once more
     */
    double overM(List<PlanePoint> way, LineString line) {
        return manyCorners
                .map(area -> area.lengthM(way))
                .orElseGet(() -> shape.intersection(line).getLength());
    }

    int levels() {
        return isLine() ? 1 : cores.size();
    }

    /** Ground that a way keeps off which does not pay a level. */
    Geometry closed(int level) {
        return isLine() ? closedLine : cores.get(level);
    }

    /** What a way between two points pays for a level at least, besides the levels before it, s. */
    double levelPriceS(int level, PlanePoint from, PlanePoint to) {
        if (isLine()) {
            boolean starts = closedLine.covers(point(from)) || closedLine.covers(point(to));
            return starts ? 0 : priceS;
        }
        double beforeM = leastOverM(level == 0 ? 0 : depthsM.get(level - 1), from, to);
        double overM = leastOverM(depthsM.get(level), from, to) - beforeM;
        return overM * priceS / Handling.Exposure.PER_M;
    }

    /** What every way between two points pays for an area at least, before any level, s. */
    double anyhowS(PlanePoint from, PlanePoint to) {
        return isLine() ? 0 : leastOverM(0, from, to) * priceS / Handling.Exposure.PER_M;
    }

    /**
     * Least length over the area of a way between two points that comes so deep into it, m. No metre takes it
     * deeper by more than one. A way that starts and ends inside either stays there or leaves.
     */
    private double leastOverM(double deepM, PlanePoint from, PlanePoint to) {
        double endsM = depthM(from) + depthM(to);
        boolean both = shape.covers(point(from)) && shape.covers(point(to));
        double anyhowM = both ? Math.min(endsM, from.distanceToM(to)) : endsM;
        return Math.max(anyhowM, 2 * deepM - endsM);
    }

    private double depthM(PlanePoint at) {
        return shape.covers(point(at)) ? shape.getBoundary().distance(point(at)) : 0;
    }

    static Point point(PlanePoint at) {
        return FACTORY.createPoint(new Coordinate(at.eastM(), at.northM()));
    }
}
