package underhook.adapter.mapfile;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import underhook.adapter.mapfile.MapItem.Kind;
import underhook.adapter.mapfile.MapItem.Shape;
import underhook.adapter.mapfile.MapItem.Vertex;
import underhook.app.port.OutputWriter.Output;
import underhook.app.port.Surroundings;
import underhook.app.port.Written;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.ReleaseArea;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/** Everything of a plan and its job that has a place on a map. */
final class MapItems {
    private final Job job;
    private final Ground ground;
    private final List<MapItem> items = new ArrayList<>();

    private MapItems(Output output) {
        this.job = output.readJob().job();
        this.ground = output.readJob().ground();
    }

    /** In the order of {@link Kind}, and within a kind in that of plan or job. */
    static List<MapItem> of(Output output) {
        return of(output, Surroundings.of(output));
    }

    /** The same with the features and wires that were found near the plan. */
    static List<MapItem> of(Output output, Surroundings near) {
        MapItems all = new MapItems(output);
        all.job.places().forEach(all::addPlace);
        List<Step> steps = output.plan().steps();
        for (int i = 0; i < steps.size(); i++) {
            all.addLegs(i + 1, steps.get(i));
        }
        for (int i = 0; i < steps.size(); i++) {
            for (Drop drop : steps.get(i).rotation().map(Rotation::drops).orElse(List.of())) {
                all.addDrop(i + 1, drop);
            }
        }
        all.job.zones().forEach(all::addZone);
        near.wires().forEach(all::addWire);
        for (MapFeature.Kind kind : MapFeature.Kind.values()) {
            near.features().stream().filter(f -> f.kind() == kind).forEach(all::addFeature);
        }
        all.job.releaseAreas().forEach(all::addReleaseArea);
        return List.copyOf(all.items);
    }

    private void addPlace(Place place) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("name", place.name());
        properties.put("placeKind", word(place.kind()));
        properties.put("agreed", place.agreed());
        properties.put("fuel", place.fuel());
        properties.put("remarks", place.remarks());
        addPoint(Kind.PLACE, place.id().value(), place, properties);
    }

    private void addDrop(int step, Drop drop) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("step", step);
        properties.put("load", drop.load().value());
        properties.put("place", drop.place().value());
        properties.put("releasedAt", Written.time(drop.releasedAt(), job.zone()));
        properties.put(
                "approachFromTrueDeg",
                Written.nearest(Units.radToDeg(drop.approachFromTrueRad()), 1));
        properties.put(
                "departureTrackTrueDeg",
                Written.nearest(Units.radToDeg(drop.departureTrackTrueRad()), 1));
        properties.put("headKt", Written.nearest(Units.mPerSToKt(drop.headMPerS()), 1));
        properties.put("crossKt", Written.nearest(Units.mPerSToKt(drop.crossMPerS()), 1));
        properties.put("reasons", drop.reasons());
        job.findPlace(drop.place())
                .ifPresent(place -> addPoint(Kind.DROP, "drop-" + drop.load(), place, properties));
    }

    private void addPoint(Kind kind, String id, Place place, Map<String, Object> properties) {
        OptionalDouble elevation = elevationAmslM(place);
        Vertex vertex = new Vertex(place.position(), elevation.orElse(0));
        items.add(
                new MapItem(
                        kind, id, Shape.POINT, List.of(vertex), elevation.isPresent(), properties));
    }

    /** The terrain's where it is known, else the stated one. */
    private OptionalDouble elevationAmslM(Place place) {
        PlanePoint at = ground.frame().toPlane(place.position());
        return ground.terrain().covers(at.eastM(), at.northM())
                ? OptionalDouble.of(ground.terrain().heightM(at.eastM(), at.northM()))
                : place.statedElevationAmslM();
    }

    private void addLegs(int number, Step step) {
        List<Leg> legs = step.rotation().map(Rotation::legs).orElse(step.legs());
        for (int i = 0; i < legs.size(); i++) {
            Leg leg = legs.get(i);
            Map<String, Object> properties = new LinkedHashMap<>();
            properties.put("step", number);
            properties.put("leg", i + 1);
            properties.put("stepKind", word(step.kind()));
            properties.put("from", leg.from().value());
            properties.put("to", leg.to().value());
            properties.put("loads", texts(step.rotation().map(Rotation::loads).orElse(List.of())));
            properties.put("carrying", texts(leg.carrying()));
            properties.put("minutes", Written.nearest(Units.sToMinutes(leg.durationS()), 3));
            properties.put("distanceM", Written.nearest(leg.distanceM(), 1));
            properties.put("speedKt", Written.nearest(Units.mPerSToKt(leg.speedMPerS()), 1));
            if (leg.leastClearanceM() != Double.POSITIVE_INFINITY) {
                properties.put("leastClearanceM", Written.down(leg.leastClearanceM(), 1));
            }
            properties.put(
                    "crossings",
                    leg.crossings().stream().map(c -> c.feature() + ": " + c.rule()).toList());
            List<Vertex> vertices = leg.path().stream().map(MapItems::vertex).toList();
            if (vertices.size() >= 2) {
                String id = "leg-" + number + "-" + (i + 1);
                items.add(new MapItem(Kind.LEG, id, Shape.LINE, vertices, true, properties));
            }
        }
    }

    private static Vertex vertex(PathPoint point) {
        return new Vertex(point.position(), point.hookAltitudeAmslM());
    }

    private void addZone(Zone zone) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("name", zone.name());
        properties.put("rule", word(zone.rule()));
        properties.put("kinds", zone.kinds());
        properties.put("minAglM", Written.up(zone.minAglM(), 1));
        if (zone.outline().size() == 1) {
            properties.put("radiusM", Written.up(zone.radiusM(), 1));
        }
        zone.closedFrom().ifPresent(day -> properties.put("closedFrom", day.toString()));
        zone.closedUntil().ifPresent(day -> properties.put("closedUntil", day.toString()));
        if (!zone.hours().isAllDay()) {
            properties.put("hours", zone.hours().say());
        }
        properties.put("activeOnTheDay", zone.isActiveOn(job.date()));
        properties.put("source", zone.source());
        addArea(Kind.ZONE, zone.id(), zone.ring(), properties);
    }

    private void addWire(Wire wire) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("highestM", Written.up(wire.highestM(), 1));
        properties.put("lateralM", Written.up(wire.lateralM(), 1));
        properties.put("live", wire.live());
        properties.put("voltageV", Written.nearest(wire.voltageV(), 0));
        properties.put("crossing", word(wire.crossing()));
        properties.put("registered", wire.registered());
        properties.put("wireKind", word(wire.hanging().kind()));
        properties.put("heightEstimated", wire.hanging().heightEstimated());
        properties.put("source", wire.source());
        items.add(
                new MapItem(
                        Kind.WIRE,
                        wire.id(),
                        Shape.LINE,
                        flat(wire.supports()),
                        false,
                        properties));
    }

    private void addFeature(MapFeature feature) {
        Kind kind =
                switch (feature.kind()) {
                    case ROAD -> Kind.ROAD;
                    case TRACK -> Kind.TRACK;
                    case TRAIL -> Kind.TRAIL;
                    case RAILWAY -> Kind.RAILWAY;
                    case HOUSE -> Kind.HOUSE;
                    case PEOPLE -> Kind.PEOPLE;
                    case MAST -> Kind.MAST;
                    case WATER -> Kind.WATER;
                    case FOREST -> Kind.FOREST;
                    case PROTECTED -> Kind.PROTECTED;
                };
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("bufferM", Written.up(feature.bufferM(), 1));
        if (feature.heightM().isPresent()) {
            properties.put("heightM", Written.up(feature.heightM().getAsDouble(), 1));
            properties.put("heightEstimated", feature.heightEstimated());
        }
        properties.put("crossing", word(feature.crossing()));
        properties.put("source", feature.source());
        if (feature.shape() == MapFeature.Shape.AREA) {
            addArea(kind, feature.id(), feature.outline(), properties);
            return;
        }
        boolean point = feature.shape() == MapFeature.Shape.POINT;
        List<GeoPoint> outline = point ? feature.outline().subList(0, 1) : feature.outline();
        Shape shape = point ? Shape.POINT : Shape.LINE;
        items.add(new MapItem(kind, feature.id(), shape, flat(outline), false, properties));
    }

    private void addReleaseArea(ReleaseArea area) {
        Map<String, Object> properties = new LinkedHashMap<>();
        properties.put("agreed", area.agreed());
        properties.put("source", area.source());
        addArea(Kind.RELEASE_AREA, area.id(), area.outline(), properties);
    }

    private void addArea(
            Kind kind, String id, List<GeoPoint> outline, Map<String, Object> properties) {
        List<GeoPoint> ring = new ArrayList<>(outline);
        if (turnsClockwise(ring)) {
            Collections.reverse(ring);
        }
        ring.add(ring.get(0));
        items.add(new MapItem(kind, id, Shape.AREA, flat(ring), false, properties));
    }

    /** Sign of the shoelace sum, taken from the first corner so that no digits are lost. */
    private static boolean turnsClockwise(List<GeoPoint> ring) {
        GeoPoint first = ring.get(0);
        double twiceArea = 0;
        for (int i = 1; i + 1 < ring.size(); i++) {
            double x1 = eastDeg(first, ring.get(i));
            double y1 = ring.get(i).latDeg() - first.latDeg();
            double x2 = eastDeg(first, ring.get(i + 1));
            double y2 = ring.get(i + 1).latDeg() - first.latDeg();
            twiceArea += x1 * y2 - x2 * y1;
        }
        return twiceArea < 0;
    }

    /** The shorter way round, also over the 180th meridian. */
    private static double eastDeg(GeoPoint from, GeoPoint to) {
        return Math.IEEEremainder(to.lonDeg() - from.lonDeg(), 360);
    }

    private static List<Vertex> flat(List<GeoPoint> points) {
        return points.stream().map(point -> new Vertex(point, 0)).toList();
    }

    private static List<String> texts(List<LoadId> ids) {
        return ids.stream().map(LoadId::value).toList();
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
