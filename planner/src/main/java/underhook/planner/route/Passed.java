package underhook.planner.route;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;

/** What ways pass over: roads, trails and whatever else of the map may be crossed, and wires. */
final class Passed {
    private final List<MapFeature> features = new ArrayList<>();
    private final List<WirePlan> wires;
    private final HPRtree featurePieces = new HPRtree();
    private final HPRtree wirePieces = new HPRtree();

    /** A straight piece of an outline or of a wire. */
    private record Piece(int thing, int number, PlanePoint a, PlanePoint b) {
        Envelope extent() {
            return new Envelope(a.eastM(), b.eastM(), a.northM(), b.northM());
        }
    }

    /** Where a straight piece of a way passes over a thing. */
    private record Hit(int thing, int wayPiece, int number, PlanePoint at) {
        static final Comparator<Hit> ORDER =
                Comparator.comparingInt(Hit::thing)
                        .thenComparingInt(Hit::wayPiece)
                        .thenComparingInt(Hit::number);
    }

    /** What is passed over where: the piece of the way, from 0, and how far along it, m. */
    private record Met(int wayPiece, double alongM, FlownLeg.Crossed crossed) {
        static final Comparator<Met> ORDER =
                Comparator.comparingInt(Met::wayPiece).thenComparingDouble(Met::alongM);
    }

    Passed(List<MapFeature> things, Ground ground, List<WirePlan> wires) {
        this.wires = wires;
        for (MapFeature feature : things) {
            if (feature.crossing() != CrossingRule.NEVER) {
                List<PlanePoint> points =
                        feature.outline().stream().map(at -> ground.frame().toPlane(at)).toList();
                boolean area = feature.shape() == MapFeature.Shape.AREA;
                insert(featurePieces, features.size(), points, area);
                features.add(feature);
            }
        }
        for (int i = 0; i < wires.size(); i++) {
            insert(wirePieces, i, wires.get(i).supports(), false);
        }
        featurePieces.build();
        wirePieces.build();
    }

    private static void insert(HPRtree tree, int thing, List<PlanePoint> points, boolean area) {
        int edges = area ? points.size() : points.size() - 1;
        for (int i = 0; i < edges; i++) {
            Piece piece = new Piece(thing, i, points.get(i), points.get((i + 1) % points.size()));
            tree.insert(piece.extent(), piece);
        }
    }

    private static List<Hit> hits(HPRtree tree, List<PlanePoint> way) {
        List<Hit> hits = new ArrayList<>();
        for (int i = 0; i + 1 < way.size(); i++) {
            PlanePoint a = way.get(i);
            PlanePoint b = way.get(i + 1);
            for (Object near :
                    tree.query(new Envelope(a.eastM(), b.eastM(), a.northM(), b.northM()))) {
                Piece piece = (Piece) near;
                double t = Plane.crossingFraction(a, b, piece.a(), piece.b());
                if (t >= 0) {
                    hits.add(new Hit(piece.thing(), i, piece.number(), Plane.between(a, b, t)));
                }
            }
        }
        hits.sort(Hit.ORDER);
        return hits;
    }

    /** Everything that a way passes over, in the order in which it does. */
    List<FlownLeg.Crossed> along(List<PlanePoint> way) {
        List<Met> all = new ArrayList<>();
        for (Hit hit : hits(featurePieces, way)) {
            MapFeature feature = features.get(hit.thing());
            String rule =
                    feature.crossing() == CrossingRule.GUARDED
                            ? "guarded: nobody under the load while it passes"
                            : "allowed";
            all.add(met(way, hit, feature.id(), rule));
        }
        for (Hit hit : hits(wirePieces, way)) {
            WirePlan wire = wires.get(hit.thing());
            String rule =
                    "near square, at least "
                            + wholeUpM(wire.wire().crossingAboveM())
                            + " m above the highest wire; no release here";
            all.add(met(way, hit, wire.wire().id(), rule));
        }
        return all.stream().sorted(Met.ORDER).map(Met::crossed).toList();
    }

    private static Met met(List<PlanePoint> way, Hit hit, String id, String rule) {
        return new Met(
                hit.wayPiece(),
                way.get(hit.wayPiece()).distanceToM(hit.at()),
                new FlownLeg.Crossed(id, hit.at(), rule));
    }

    /** Whole metres of a least height: never less than is asked. */
    private static long wholeUpM(double leastM) {
        return (long) Math.ceil(leastM - 1e-6);
    }

    /** Ids of what must be guarded while a load passes over it on a straight piece. */
    List<String> guarded(PlanePoint a, PlanePoint b) {
        return hits(featurePieces, List.of(a, b)).stream()
                .map(hit -> features.get(hit.thing()))
                .filter(feature -> feature.crossing() == CrossingRule.GUARDED)
                .map(MapFeature::id)
                .distinct()
                .toList();
    }

    /** Whether a straight piece crosses no wire. */
    boolean crossesNoWire(PlanePoint a, PlanePoint b) {
        return hits(wirePieces, List.of(a, b)).isEmpty();
    }
}
