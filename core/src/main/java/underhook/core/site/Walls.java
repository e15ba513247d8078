package underhook.core.site;

import java.util.ArrayList;
import java.util.List;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.wire.Tube;

/** What stands up on the job's map, as walls. */
public final class Walls {
    private Walls() {}

    /** Things that stand up; trees are the canopy's affair. */
    public static List<Wall> things(Job job, Ground ground) {
        List<Wall> all = new ArrayList<>();
        for (MapFeature feature : job.features()) {
            double heightM = thingM(feature);
            if (heightM > 0) {
                addThing(feature, heightM, ground, all);
                addPlacesInside(job, feature, ground, all);
            }
        }
        return List.copyOf(all);
    }

    /**
     * Everywhere that a wire can be.
     *
     * @param widerM added to its half-width and to its top, m, where more than the usual distance is kept
     *     to it
     */
    public static List<Wall> wire(String id, Tube tube, double widerM) {
        return tube.spans().stream()
                .flatMap(List::stream)
                .map(
                        curtain ->
                                new Wall(
                                        id,
                                        Cause.WIRE,
                                        curtain.a(),
                                        curtain.b(),
                                        curtain.topAmslM() + widerM,
                                        curtain.topAmslM() + widerM,
                                        curtain.halfWidthM() + widerM))
                .toList();
    }

    /** Height of what stands up where the map states none, m. @source PRACTICE tall for its kind */
    private static double assumedM(MapFeature.Kind kind) {
        return switch (kind) {
            case HOUSE -> 12;
            case MAST -> 60;
            case ROAD, TRACK, TRAIL, RAILWAY, PEOPLE, WATER, FOREST, PROTECTED -> 0;
        };
    }

    private static void addThing(
            MapFeature feature, double heightM, Ground ground, List<Wall> all) {
        List<GeoPoint> outline = feature.outline();
        int edges =
                switch (feature.shape()) {
                    case POINT -> 1;
                    case LINE -> outline.size() - 1;
                    case AREA -> outline.size();
                };
        for (int i = 0; i < edges; i++) {
            PlanePoint a = ground.frame().toPlane(outline.get(i));
            PlanePoint b = ground.frame().toPlane(outline.get((i + 1) % outline.size()));
            double topM = Math.max(groundAmslM(ground, a), groundAmslM(ground, b)) + heightM;
            all.add(new Wall(feature.id(), Cause.THING, a, b, topM, topM, 0));
        }
    }

    /** A place inside an outline is in no reach of its edges when that is wide: it stands in a column. */
    private static void addPlacesInside(
            Job job, MapFeature feature, Ground ground, List<Wall> all) {
        if (feature.shape() != MapFeature.Shape.AREA) {
            return;
        }
        List<PlanePoint> ring = feature.outline().stream().map(ground.frame()::toPlane).toList();
        for (Place place : job.places()) {
            PlanePoint at = ground.frame().toPlane(place.position());
            if (PlaneLine.isInside(at, ring)) {
                double topM = groundAmslM(ground, at) + thingM(feature);
                all.add(new Wall(feature.id(), Cause.THING, at, at, topM, topM, 0));
            }
        }
    }

    private static double thingM(MapFeature feature) {
        return feature.heightM().orElse(assumedM(feature.kind()));
    }

    /** Endless where the ground is not known: then only distance aside clears it. */
    private static double groundAmslM(Ground ground, PlanePoint at) {
        return ground.terrain().covers(at.eastM(), at.northM())
                ? ground.terrain().heightM(at.eastM(), at.northM())
                : Double.POSITIVE_INFINITY;
    }
}
