package underhook.core.site;

import java.util.ArrayList;
import java.util.List;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;

/** What stands up on the job's map, as walls. */
public final class Walls {
    /** Wires follow the ground in pieces of at most this, m. */
    private static final double PIECE_M = 10;

    private Walls() {}

    /**
     * Things with a height and all wires.
     *
     * <p>A wire is taken as solid from the ground to the height of its supports: on the straight line
     * between their tops or as high above the ground below it, whichever is higher.
     */
    public static List<Wall> of(Job job, Ground ground) {
        List<Wall> all = new ArrayList<>();
        for (MapFeature feature : job.features()) {
            if (feature.heightM().orElse(0) > 0) {
                addThing(feature, ground, all);
            }
        }
        for (Wire wire : job.wires()) {
            for (int i = 0; i + 1 < wire.supports().size(); i++) {
                addSpan(wire, i, ground, all);
            }
        }
        return List.copyOf(all);
    }

    private static void addThing(MapFeature feature, Ground ground, List<Wall> all) {
        List<GeoPoint> outline = feature.outline();
        int edges =
                switch (feature.shape()) {
                    case POINT -> 1;
                    case LINE -> outline.size() - 1;
                    case AREA -> outline.size();
                };
        double heightM = feature.heightM().orElse(0);
        for (int i = 0; i < edges; i++) {
            PlanePoint a = ground.frame().toPlane(outline.get(i));
            PlanePoint b = ground.frame().toPlane(outline.get((i + 1) % outline.size()));
            double topM = Math.max(groundAmslM(ground, a), groundAmslM(ground, b)) + heightM;
            all.add(new Wall(feature.id(), Cause.THING, a, b, topM, topM, 0));
        }
    }

    private static void addSpan(Wire wire, int span, Ground ground, List<Wall> all) {
        PlanePoint a = ground.frame().toPlane(wire.supports().get(span));
        PlanePoint b = ground.frame().toPlane(wire.supports().get(span + 1));
        List<Double> tops = wire.hanging().supportTopsM();
        double highA = tops.isEmpty() ? wire.highestM() : tops.get(span);
        double highB = tops.isEmpty() ? wire.highestM() : tops.get(span + 1);
        double topA = groundAmslM(ground, a) + highA;
        double topB = groundAmslM(ground, b) + highB;
        int pieces = Math.max(1, (int) Math.ceil(a.distanceToM(b) / PIECE_M));
        PlanePoint before = a;
        double beforeM = topA;
        for (int i = 1; i <= pieces; i++) {
            double t = (double) i / pieces;
            PlanePoint next =
                    new PlanePoint(
                            a.eastM() + t * (b.eastM() - a.eastM()),
                            a.northM() + t * (b.northM() - a.northM()));
            double chordM = topA * (1 - t) + topB * t;
            double overGroundM = groundAmslM(ground, next) + highA * (1 - t) + highB * t;
            double nextM = Double.isNaN(chordM) ? overGroundM : Math.max(chordM, overGroundM);
            all.add(new Wall(wire.id(), Cause.WIRE, before, next, beforeM, nextM, wire.lateralM()));
            before = next;
            beforeM = nextM;
        }
    }

    /** Endless where the ground is not known: then only distance aside clears it. */
    private static double groundAmslM(Ground ground, PlanePoint at) {
        return ground.terrain().covers(at.eastM(), at.northM())
                ? ground.terrain().heightM(at.eastM(), at.northM())
                : Double.POSITIVE_INFINITY;
    }
}
