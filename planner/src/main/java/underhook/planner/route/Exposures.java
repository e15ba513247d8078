package underhook.planner.route;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.index.hprtree.HPRtree;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Handling;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Rules;
import underhook.core.job.Zone;

/**
 * What ways with a load pass over at a price, and what that comes to.
 *
 * <p>A line costs its price for each crossing at a right angle, and as much more at another angle as the way
 * over it is longer; an area costs by length.
 */
final class Exposures {
    static final Exposures NONE = new Exposures(List.of());

    /** No crossing counts as longer than so many square ones. @source PRACTICE */
    private static final double LONGEST_CROSSING_RATIO = 3;

    /** Crossings of one line nearer together than this are one, m. */
    private static final double ONE_CROSSING_M = 1;

    /** Further off than touching, whatever was rounded, m. */
    private static final double SURELY_OFF_M = 2 * Exposed.TOUCH_M;

    /**
     * A line that ends nearer than this to the edge of the known ground goes on there: files are cut at their
     * edge, roads and wires are not, m. @source PRACTICE
     */
    private static final double CUT_M = 1000;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final List<Exposed> all;
    private final HPRtree pieces = new HPRtree();
    private final HPRtree areas = new HPRtree();

    /** A straight piece of a line. */
    private record Piece(int thing, PlanePoint a, PlanePoint b) {}

    /**
     * Where a way crosses a line.
     *
     * @param number of the line
     * @param alongM from the start of the way, m
     * @param lengthRatio length over the line, over that of a square crossing
     */
    record Hit(int number, Exposed line, double alongM, double lengthRatio) {}

    Exposures(List<Exposed> all) {
        this.all = all.stream().filter(one -> one.priceS() > 0).toList();
        for (int i = 0; i < this.all.size(); i++) {
            Exposed one = this.all.get(i);
            if (one.isLine()) {
                insertPieces(i, one.shape());
            } else {
                areas.insert(one.shape().getEnvelopeInternal(), i);
            }
        }
        pieces.build();
        areas.build();
    }

    private void insertPieces(int thing, Geometry line) {
        Coordinate[] points = line.getCoordinates();
        for (int i = 0; i + 1 < points.length; i++) {
            Envelope extent = new Envelope(points[i], points[i + 1]);
            extent.expandBy(Exposed.TOUCH_M);
            pieces.insert(
                    extent,
                    new Piece(
                            thing,
                            new PlanePoint(points[i].x, points[i].y),
                            new PlanePoint(points[i + 1].x, points[i + 1].y)));
        }
    }

    /**
     * All that a job prices for ways with these kinds of load.
     *
     * @param keepOffM how far a way that does not cross a line or come over ground keeps off it, m
     */
    static Exposures of(Job job, Ground ground, List<String> kinds, double keepOffM) {
        if (kinds.isEmpty()) {
            return NONE;
        }
        Handling.Exposure prices = job.rules().handling().exposure();
        List<Exposed> all = new ArrayList<>();
        for (MapFeature feature : job.features()) {
            if (feature.crossing() != CrossingRule.NEVER
                    && feature.shape() != MapFeature.Shape.POINT) {
                Geometry shape = Obstacles.shape(feature.shape(), feature.outline(), ground);
                if (feature.shape() == MapFeature.Shape.LINE) {
                    boolean guarded = feature.crossing() == CrossingRule.GUARDED;
                    double priceS = guarded ? prices.guardedS() : prices.openS();
                    Geometry line =
                            FACTORY.createLineString(goneOn(shape.getCoordinates(), ground));
                    all.add(Exposed.line(feature.id(), line, line.buffer(keepOffM, 1), priceS));
                } else {
                    double priceS = areaS(feature.kind(), prices);
                    addArea(all, feature.id(), new Priced(shape, priceS, keepOffM));
                }
            }
        }
        for (Zone zone : job.zones()) {
            boolean about =
                    zone.kinds().isEmpty() || zone.kinds().stream().anyMatch(kinds::contains);
            if (about && zone.rule() == Zone.Rule.NO_HOVER_BELOW && zone.isActiveOn(job.date())) {
                Geometry area = Obstacles.zoneArea(zone, ground, 0);
                addArea(all, zone.id(), new Priced(area, prices.quietS(), keepOffM));
            }
        }
        all.addAll(new PoorGround(job, ground, keepOffM).list(kinds));
        return new Exposures(all);
    }

    private static double areaS(MapFeature.Kind kind, Handling.Exposure prices) {
        return switch (kind) {
            case FOREST -> prices.poor().forestS();
            case WATER -> prices.waterS();
            case ROAD, TRACK, TRAIL, RAILWAY, HOUSE, PEOPLE, MAST, PROTECTED -> prices.quietS();
        };
    }

    private record Priced(Geometry area, double priceS, double keepOffM) {}

    private static void addArea(List<Exposed> all, String id, Priced priced) {
        if (priced.priceS() > 0) {
            Geometry area = priced.area().buffer(0);
            all.add(Exposed.area(id, area, priced.priceS(), priced.keepOffM()));
        }
    }

    /** The same with wires that may be crossed. */
    Exposures with(List<WirePlan> wires, Ground ground, Rules rules) {
        List<Exposed> more = new ArrayList<>(all);
        for (WirePlan wire : wires) {
            if (wire.isCrossable()) {
                Coordinate[] points =
                        wire.supports().stream()
                                .map(at -> new Coordinate(at.eastM(), at.northM()))
                                .toArray(Coordinate[]::new);
                Geometry line = FACTORY.createLineString(goneOn(points, ground));
                Geometry closed =
                        line.buffer(wire.corridorM(rules.distances().wireClearanceM()), 2)
                                .union(wire.corridor(rules.distances().wireClearanceM()));
                double priceS = rules.handling().exposure().wireS();
                more.add(Exposed.line(wire.wire().id(), line, closed, priceS));
            }
        }
        return new Exposures(more);
    }

    /** A line with ends that a file has cut drawn on, straight and over unknown ground. */
    private static Coordinate[] goneOn(Coordinate[] points, Ground ground) {
        List<Coordinate> all = new ArrayList<>(List.of(points));
        int last = points.length - 1;
        onwards(points[last - 1], points[last], ground).ifPresent(all::add);
        onwards(points[1], points[0], ground).ifPresent(end -> all.add(0, end));
        return all.toArray(Coordinate[]::new);
    }

    private static Optional<Coordinate> onwards(Coordinate from, Coordinate end, Ground ground) {
        double lengthM = from.distance(end);
        if (!(lengthM > 0)) {
            return Optional.empty();
        }
        double east = (end.x - from.x) / lengthM;
        double north = (end.y - from.y) / lengthM;
        boolean cut = !ground.terrain().covers(end.x + CUT_M * east, end.y + CUT_M * north);
        double onM = 3 * CUT_M;
        return cut
                ? Optional.of(new Coordinate(end.x + onM * east, end.y + onM * north))
                : Optional.empty();
    }

    boolean isEmpty() {
        return all.isEmpty();
    }

    /** What a way comes to, s. */
    double priceS(List<PlanePoint> way) {
        return passed(way).stream().mapToDouble(Passing::priceS).sum();
    }

    /**
     * One thing that a way passes over.
     *
     * @param overM length over it, m; 0 for a line
     */
    record Passing(String id, double priceS, double overM) {}

    /** Everything that a way passes over, lines as often as they are crossed. */
    List<Passing> passed(List<PlanePoint> way) {
        if (all.isEmpty() || way.size() < 2) {
            return List.of();
        }
        List<Passing> passed = new ArrayList<>();
        for (Hit hit : hits(way)) {
            passed.add(new Passing(hit.line().id(), hit.line().priceS() * hit.lengthRatio(), 0));
        }
        LineString line = line(way);
        for (Exposed area : areasNear(line)) {
            double overM = area.overM(way, line);
            if (overM > 0) {
                double priceS = area.priceS() * overM / Handling.Exposure.PER_M;
                passed.add(new Passing(area.id(), priceS, overM));
            }
        }
        return passed;
    }

    /** What every way between two points pays for the ground at them, s. */
    double anyhowS(PlanePoint from, PlanePoint to) {
        return areasNear(line(List.of(from, to))).stream()
                .mapToDouble(area -> area.anyhowS(from, to))
                .sum();
    }

    /** Everything whose price a way may have to pay, in the order given. */
    List<Exposed> near(List<PlanePoint> way) {
        if (way.size() < 2) {
            return List.of();
        }
        TreeMap<Integer, Exposed> found = new TreeMap<>();
        for (Hit hit : hits(way)) {
            found.put(hit.number(), hit.line());
        }
        numbersNear(line(way)).forEach(at -> found.put(at, all.get(at)));
        return List.copyOf(found.values());
    }

    List<Exposed> areasNear(LineString line) {
        return numbersNear(line).stream().map(all::get).toList();
    }

    private List<Integer> numbersNear(LineString line) {
        List<?> query = areas.query(line.getEnvelopeInternal());
        return query.stream().map(at -> (Integer) at).sorted().toList();
    }

    /** Crossings of lines, by line and then along the way. */
    List<Hit> hits(List<PlanePoint> way) {
        List<Hit> found = new ArrayList<>();
        double doneM = 0;
        for (int i = 0; i + 1 < way.size(); i++) {
            PlanePoint a = way.get(i);
            PlanePoint b = way.get(i + 1);
            for (Object near :
                    pieces.query(new Envelope(a.eastM(), b.eastM(), a.northM(), b.northM()))) {
                Piece piece = (Piece) near;
                if (!isBeside(a, b, piece.a(), piece.b())
                        && !isBeside(piece.a(), piece.b(), a, b)
                        && Plane.pieceDistanceM(a, b, piece.a(), piece.b()) <= Exposed.TOUCH_M) {
                    found.add(hit(a, b, piece, doneM));
                }
            }
            doneM += a.distanceToM(b);
        }
        found.sort(
                Comparator.comparingInt(Hit::number)
                        .thenComparingDouble(Hit::alongM)
                        .thenComparingDouble(Hit::lengthRatio));
        return once(found);
    }

    /** Whether a piece c–d surely lies off to one side of the line through a and b: most do. */
    private static boolean isBeside(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
        double east = b.eastM() - a.eastM();
        double north = b.northM() - a.northM();
        double ofC = east * (c.northM() - a.northM()) - north * (c.eastM() - a.eastM());
        double ofD = east * (d.northM() - a.northM()) - north * (d.eastM() - a.eastM());
        double off = SURELY_OFF_M * Math.sqrt(east * east + north * north);
        return Math.min(ofC, ofD) > off || Math.max(ofC, ofD) < -off;
    }

    private Hit hit(PlanePoint a, PlanePoint b, Piece piece, double doneM) {
        double t = Plane.crossingFraction(a, b, piece.a(), piece.b());
        if (t < 0) {
            double nearFraction =
                    Plane.distanceToPieceM(a, b, piece.a())
                                    <= Plane.distanceToPieceM(a, b, piece.b())
                            ? Plane.nearestFraction(a, b, piece.a())
                            : Plane.nearestFraction(a, b, piece.b());
            return new Hit(
                    piece.thing(),
                    all.get(piece.thing()),
                    doneM + nearFraction * a.distanceToM(b),
                    1);
        }
        double offRad = Circles.directionRad(a, b) - Circles.directionRad(piece.a(), piece.b());
        double lengthRatio =
                Math.min(LONGEST_CROSSING_RATIO, 1 / Math.max(1e-9, Math.abs(Math.sin(offRad))));
        return new Hit(
                piece.thing(), all.get(piece.thing()), doneM + t * a.distanceToM(b), lengthRatio);
    }

    private static List<Hit> once(List<Hit> sorted) {
        List<Hit> kept = new ArrayList<>();
        double lastM = Double.NEGATIVE_INFINITY;
        for (Hit hit : sorted) {
            boolean same =
                    !kept.isEmpty()
                            && kept.get(kept.size() - 1).number() == hit.number()
                            && hit.alongM() - lastM < ONE_CROSSING_M;
            if (!same) {
                kept.add(hit);
            }
            lastM = hit.alongM();
        }
        return kept;
    }

    static LineString line(List<PlanePoint> way) {
        return FACTORY.createLineString(
                way.stream()
                        .map(at -> new Coordinate(at.eastM(), at.northM()))
                        .toArray(Coordinate[]::new));
    }
}
