package underhook.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.Relief;
import underhook.app.port.Attribution;
import underhook.app.port.ReadJob;
import underhook.core.geo.ContourStep;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.ReleaseArea;
import underhook.core.job.Wire;
import underhook.core.job.WireBufferRule;
import underhook.core.job.Zone;
import underhook.core.plan.Plan;
import underhook.core.wire.WireBuffers;

/** A job's map as GeoJSON, in WGS 84. */
final class MapJson {
    private static final double MARGIN_FRACTION = 0.15;
    private static final int CONTOUR_COLUMNS = 240;

    private MapJson() {}

    /** The part of the Earth that the job's places and the ways between them lie in, with a margin. */
    static Relief.Box box(Job job, Optional<Plan> plan) {
        List<GeoPoint> points = new ArrayList<>();
        job.places().forEach(place -> points.add(place.position()));
        plan.stream()
                .flatMap(day -> day.steps().stream())
                .flatMap(
                        step ->
                                Stream.concat(
                                        step.legs().stream(),
                                        step.rotation().stream()
                                                .flatMap(turn -> turn.legs().stream())))
                .flatMap(leg -> leg.path().stream())
                .forEach(at -> points.add(at.position()));
        return Relief.Box.around(points, MARGIN_FRACTION);
    }

    static ObjectNode of(ReadJob read, Optional<Plan> plan, ContourStep.Unit heights) {
        Job job = read.job();
        Relief.Box box = box(job, plan).squared();
        ObjectNode node = Json.object();
        ArrayNode bounds = node.putArray("bounds");
        bounds.add(box.westDeg()).add(box.southDeg()).add(box.eastDeg()).add(box.northDeg());
        ObjectNode layers = node.putObject("layers");
        layers.set("places", collection(Json.array(job.places(), MapJson::place)));
        layers.set("zones", collection(Json.array(job.zones(), zone -> zone(job, zone))));
        layers.set("roads", features(job, WAYS));
        layers.set("houses", features(job, List.of(MapFeature.Kind.HOUSE)));
        layers.set("people", features(job, List.of(MapFeature.Kind.PEOPLE)));
        layers.set("water", features(job, List.of(MapFeature.Kind.WATER)));
        layers.set("hazards", features(job, List.of(MapFeature.Kind.MAST)));
        layers.set("ground", features(job, GROUND));
        layers.set("wires", collection(Json.array(job.wires(), wire -> wire(read, wire))));
        layers.set("releaseAreas", collection(Json.array(job.releaseAreas(), MapJson::area)));
        layers.set("contours", contours(read.ground(), box, heights));
        node.set("attributions", Json.texts(Attribution.lines(job)));
        node.put("licence", Attribution.shareAlike(job).orElse(""));
        return node;
    }

    private static final List<MapFeature.Kind> WAYS =
            List.of(
                    MapFeature.Kind.ROAD,
                    MapFeature.Kind.TRACK,
                    MapFeature.Kind.TRAIL,
                    MapFeature.Kind.RAILWAY);
    private static final List<MapFeature.Kind> GROUND =
            List.of(MapFeature.Kind.FOREST, MapFeature.Kind.PROTECTED);

    private static ObjectNode collection(ArrayNode features) {
        return Json.object().put("type", "FeatureCollection").set("features", features);
    }

    private static ObjectNode feature(ObjectNode geometry, ObjectNode properties) {
        ObjectNode node = Json.object().put("type", "Feature");
        node.set("properties", properties);
        return node.set("geometry", geometry);
    }

    private static ObjectNode point(GeoPoint point) {
        return Json.object().put("type", "Point").set("coordinates", Json.position(point));
    }

    private static ObjectNode line(List<GeoPoint> points) {
        return Json.object().put("type", "LineString").set("coordinates", Json.positions(points));
    }

    private static ObjectNode ring(List<GeoPoint> points) {
        List<GeoPoint> closed = new ArrayList<>(points);
        closed.add(points.get(0));
        ArrayNode rings = Json.array();
        rings.add(Json.positions(closed));
        return Json.object().put("type", "Polygon").set("coordinates", rings);
    }

    private static ObjectNode place(Place place) {
        ObjectNode properties =
                Json.object()
                        .put("id", place.id().value())
                        .put("kind", PlanJson.word(place.kind()))
                        .put("name", place.name())
                        .put("agreed", place.agreed())
                        .put("fuel", place.fuel())
                        .put("standing", place.standing())
                        .put("landingAsked", place.landingAsked())
                        .put("clearingRadiusM", finite(place.clearingRadiusM()))
                        .put("remarks", place.remarks());
        return feature(point(place.position()), properties);
    }

    /** JSON has no infinity; open ground all round is said as minus one. */
    private static double finite(double valueM) {
        return Double.isFinite(valueM) ? valueM : -1;
    }

    private static ObjectNode zone(Job job, Zone zone) {
        ObjectNode properties =
                Json.object()
                        .put("id", zone.id())
                        .put("name", zone.name())
                        .put("rule", PlanJson.word(zone.rule()).replace('_', '-'))
                        .put("radiusM", zone.radiusM())
                        .put("minAglM", zone.minAglM())
                        .put("active", zone.isActiveOn(job.date()))
                        .put("hours", zone.hours().label())
                        .put("file", zone.source());
        boolean isCircle = zone.outline().size() == 1;
        return feature(isCircle ? point(zone.outline().get(0)) : ring(zone.outline()), properties);
    }

    private static ObjectNode features(Job job, List<MapFeature.Kind> kinds) {
        return collection(
                Json.array(
                        job.features().stream().filter(one -> kinds.contains(one.kind())).toList(),
                        MapJson::mapFeature));
    }

    private static ObjectNode mapFeature(MapFeature one) {
        ObjectNode properties =
                Json.object()
                        .put("id", one.id())
                        .put("kind", PlanJson.word(one.kind()))
                        .put("bufferM", one.bufferM())
                        .put("crossing", PlanJson.word(one.crossing()))
                        .put("estimated", one.heightEstimated())
                        .put("file", one.source());
        Json.putTenths(properties, "heightM", one.heightM());
        ObjectNode geometry =
                switch (one.shape()) {
                    case POINT -> point(one.outline().get(0));
                    case LINE -> line(one.outline());
                    case AREA -> ring(one.outline());
                };
        return feature(geometry, properties);
    }

    private static ObjectNode wire(ReadJob read, Wire wire) {
        Job job = read.job();
        WireBufferRule rule = job.rules().margins().wireBuffers();
        double needM =
                WireBuffers.needM(
                        wire,
                        rule,
                        job.rules().distances().wireClearanceM(),
                        topAmslM(read.ground(), wire));
        ObjectNode properties =
                Json.object()
                        .put("id", wire.id())
                        .put("kind", PlanJson.word(wire.hanging().kind()))
                        .put("highestM", wire.highestM())
                        .put("live", wire.live())
                        .put("voltageV", wire.voltageV())
                        .put("crossing", PlanJson.word(wire.crossing()))
                        .put("registered", wire.registered())
                        .put("bufferM", Math.ceil(needM + wire.lateralM()))
                        .put("estimated", wire.hanging().heightEstimated())
                        .put("file", wire.source());
        return feature(line(wire.supports()), properties);
    }

    /** Roughly the wire's highest point, m AMSL; infinite where the ground is not known. */
    private static double topAmslM(Ground ground, Wire wire) {
        double topM = Double.NEGATIVE_INFINITY;
        for (GeoPoint support : wire.supports()) {
            PlanePoint at = ground.frame().toPlane(support);
            topM =
                    ground.terrain().covers(at.eastM(), at.northM())
                            ? Math.max(topM, ground.terrain().heightM(at.eastM(), at.northM()))
                            : Double.POSITIVE_INFINITY;
        }
        return topM + wire.highestM();
    }

    private static ObjectNode area(ReleaseArea area) {
        ObjectNode properties =
                Json.object()
                        .put("id", area.id())
                        .put("agreed", area.agreed())
                        .put("file", area.source());
        return feature(ring(area.outline()), properties);
    }

    private static ObjectNode contours(Ground ground, Relief.Box box, ContourStep.Unit heights) {
        double stretch = Math.cos(Math.toRadians((box.southDeg() + box.northDeg()) / 2));
        double shape =
                (box.northDeg() - box.southDeg()) / ((box.eastDeg() - box.westDeg()) * stretch);
        int rows = (int) Math.max(2, Math.min(2 * CONTOUR_COLUMNS, CONTOUR_COLUMNS * shape));
        Relief relief = Relief.of(ground, box, CONTOUR_COLUMNS, rows);
        ArrayNode lines = Json.array();
        Optional<double[]> range = range(relief);
        if (range.isPresent()) {
            double lowM = range.get()[0];
            double highM = range.get()[1];
            for (ContourStep.Level level :
                    ContourStep.between(lowM, highM, heights).levels(lowM, highM)) {
                relief.contour(level.heightAmslM())
                        .forEach(
                                points ->
                                        lines.add(
                                                feature(
                                                        line(points),
                                                        Json.object()
                                                                .put(
                                                                        "heightAmslM",
                                                                        level.heightAmslM())
                                                                .put("main", level.main()))));
            }
        }
        return collection(lines);
    }

    private static Optional<double[]> range(Relief relief) {
        double lowM = Double.POSITIVE_INFINITY;
        double highM = Double.NEGATIVE_INFINITY;
        for (int row = 0; row < relief.rows(); row++) {
            for (int column = 0; column < relief.columns(); column++) {
                if (relief.isKnown(column, row)) {
                    lowM = Math.min(lowM, relief.heightAmslM(column, row));
                    highM = Math.max(highM, relief.heightAmslM(column, row));
                }
            }
        }
        return lowM <= highM ? Optional.of(new double[] {lowM, highM}) : Optional.empty();
    }
}
