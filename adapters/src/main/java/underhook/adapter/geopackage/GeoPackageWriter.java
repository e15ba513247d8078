package underhook.adapter.geopackage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import underhook.adapter.geopackage.GeoPackageFile.Geometry;
import underhook.adapter.geopackage.GeoPackageFile.Heights;
import underhook.adapter.geopackage.GeoPackageFile.Row;
import underhook.adapter.geopackage.GeoPackageFile.Table;
import underhook.adapter.geopackage.GeometryBlob.Vertex;
import underhook.app.port.Attribution;
import underhook.app.port.OutputWriter;
import underhook.app.port.Surroundings;
import underhook.app.port.Written;
import underhook.core.finding.Finding;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/** Writes plan.gpkg. */
public final class GeoPackageWriter implements OutputWriter {
    private static final Geometry NO_GEOMETRY = () -> new byte[0];

    /** @source OGC-12-128R17 requirement 15, note on the format of times */
    static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
                    .withZone(ZoneOffset.UTC);

    @Override
    public String fileName() {
        return "plan.gpkg";
    }

    @Override
    public void write(Output output, Path file) throws IOException {
        Files.deleteIfExists(file);
        Job job = output.readJob().job();
        Plan plan = output.plan();
        Surroundings near = Surroundings.of(output);
        try (GeoPackageFile made = GeoPackageFile.create(file, TIME.format(plan.plannedAt()))) {
            String metadata =
                    "Plan "
                            + plan.id()
                            + " of "
                            + plan.job()
                            + ", "
                            + plan.program()
                            + "\n"
                            + String.join("\n", Attribution.notice(job))
                            + near.note().map(note -> "\n" + note).orElse("");
            made.addMetadata(metadata);
            made.add(places(job, output.readJob().ground()));
            made.add(legs(plan));
            made.add(zones(job));
            made.add(wires(near));
            made.add(features(job, near));
            made.add(loads(job, plan));
            made.add(findings(output));
            made.finish();
        } catch (SQLException failed) {
            throw new IOException(file + " could not be written: " + failed.getMessage(), failed);
        }
    }

    private static Table places(Job job, Ground ground) {
        List<Row> rows = new ArrayList<>();
        for (Place place : job.places()) {
            OptionalDouble elevation = elevationAmslM(place, ground);
            rows.add(
                    new Row(
                            () -> point(place.position(), elevation),
                            List.of(place.position()),
                            List.of(
                                    place.id().value(),
                                    word(place.kind()),
                                    place.name(),
                                    place.agreed(),
                                    place.fuel(),
                                    place.remarks())));
        }
        return new Table(
                "places",
                "Places; height is metres above mean sea level",
                "POINT",
                Heights.SOME,
                List.of(
                        "id TEXT",
                        "kind TEXT",
                        "name TEXT",
                        "agreed BOOLEAN",
                        "fuel BOOLEAN",
                        "remarks TEXT"),
                rows);
    }

    private static byte[] point(GeoPoint position, OptionalDouble elevation) {
        return elevation.isPresent()
                ? GeometryBlob.pointZ(new Vertex(position, elevation.getAsDouble()))
                : GeometryBlob.point(position);
    }

    private static OptionalDouble elevationAmslM(Place place, Ground ground) {
        PlanePoint at = ground.frame().toPlane(place.position());
        return ground.terrain().covers(at.eastM(), at.northM())
                ? OptionalDouble.of(ground.terrain().heightM(at.eastM(), at.northM()))
                : place.statedElevationAmslM();
    }

    private static Table legs(Plan plan) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < plan.steps().size(); i++) {
            Step step = plan.steps().get(i);
            List<Leg> legs = step.rotation().map(Rotation::legs).orElse(step.legs());
            for (int k = 0; k < legs.size(); k++) {
                if (legs.get(k).path().size() >= 2) {
                    rows.add(leg(new Numbered(i + 1, k + 1, step, legs.get(k))));
                }
            }
        }
        return new Table(
                "legs",
                "Legs; height is that of the hook under the belly, metres above mean sea level",
                "LINESTRING",
                Heights.ALL,
                List.of(
                        "step INTEGER",
                        "leg INTEGER",
                        "step_kind TEXT",
                        "from_place TEXT",
                        "to_place TEXT",
                        "loads TEXT",
                        "carrying TEXT",
                        "minutes DOUBLE",
                        "distance_m DOUBLE",
                        "speed_kt DOUBLE",
                        "least_clearance_m DOUBLE",
                        "crossings TEXT"),
                rows);
    }

    /** A leg with the numbers that people count it by, from 1. */
    private record Numbered(int step, int number, Step of, Leg leg) {}

    private static Row leg(Numbered numbered) {
        Leg leg = numbered.leg();
        List<Vertex> vertices =
                leg.path().stream()
                        .map(point -> new Vertex(point.position(), point.hookAltitudeAmslM()))
                        .toList();
        boolean clear = leg.leastClearanceM() == Double.POSITIVE_INFINITY;
        return new Row(
                () -> GeometryBlob.lineZ(vertices),
                leg.path().stream().map(PathPoint::position).toList(),
                List.of(
                        numbered.step(),
                        numbered.number(),
                        word(numbered.of().kind()),
                        leg.from().value(),
                        leg.to().value(),
                        join(numbered.of().rotation().map(Rotation::loads).orElse(List.of())),
                        join(leg.carrying()),
                        Written.nearest(Units.sToMinutes(leg.durationS()), 3).doubleValue(),
                        Written.nearest(leg.distanceM(), 1).doubleValue(),
                        Written.nearest(Units.mPerSToKt(leg.speedMPerS()), 1).doubleValue(),
                        clear ? "" : Written.down(leg.leastClearanceM(), 1).doubleValue(),
                        String.join(
                                "; ",
                                leg.crossings().stream()
                                        .map(c -> c.feature() + ": " + c.rule())
                                        .toList())));
    }

    private static Table zones(Job job) {
        List<Row> rows = new ArrayList<>();
        for (Zone zone : job.zones()) {
            List<GeoPoint> ring = zone.ring();
            rows.add(
                    new Row(
                            () -> GeometryBlob.polygon(ring),
                            ring,
                            List.of(
                                    zone.id(),
                                    zone.name(),
                                    word(zone.rule()),
                                    String.join(" ", zone.kinds()),
                                    zone.minAglM(),
                                    zone.closedFrom().map(Object::toString).orElse(""),
                                    zone.closedUntil().map(Object::toString).orElse(""),
                                    zone.hours().say(),
                                    zone.isActiveOn(job.date()),
                                    zone.source())));
        }
        return new Table(
                "zones",
                "Zones with their rules; a round one is drawn around its circle",
                "POLYGON",
                Heights.NONE,
                List.of(
                        "id TEXT",
                        "name TEXT",
                        "rule TEXT",
                        "kinds TEXT",
                        "min_agl_m DOUBLE",
                        "closed_from DATE",
                        "closed_until DATE",
                        "hours TEXT",
                        "active_on_the_day BOOLEAN",
                        "source TEXT"),
                rows);
    }

    private static Table wires(Surroundings near) {
        List<Row> rows = new ArrayList<>();
        for (Wire wire : near.wires()) {
            rows.add(
                    new Row(
                            () -> GeometryBlob.line(wire.supports()),
                            wire.supports(),
                            List.of(
                                    wire.id(),
                                    wire.highestM(),
                                    wire.lateralM(),
                                    wire.live(),
                                    wire.voltageV(),
                                    word(wire.crossing()),
                                    wire.registered(),
                                    word(wire.hanging().kind()),
                                    wire.hanging().heightEstimated(),
                                    wire.source())));
        }
        return new Table(
                "wires",
                "Wires between their supports",
                "LINESTRING",
                Heights.NONE,
                List.of(
                        "id TEXT",
                        "highest_m DOUBLE",
                        "lateral_m DOUBLE",
                        "live BOOLEAN",
                        "voltage_v DOUBLE",
                        "crossing TEXT",
                        "registered BOOLEAN",
                        "kind TEXT",
                        "height_estimated BOOLEAN",
                        "source TEXT"),
                rows);
    }

    private static Table features(Job job, Surroundings near) {
        Stream<Row> onMap =
                near.features().stream()
                        .map(
                                feature ->
                                        new Row(
                                                () -> geometry(feature),
                                                feature.outline(),
                                                List.of(
                                                        feature.id(),
                                                        word(feature.kind()),
                                                        feature.bufferM(),
                                                        word(feature.crossing()),
                                                        "",
                                                        feature.heightM().isPresent()
                                                                ? feature.heightM().getAsDouble()
                                                                : "",
                                                        feature.heightEstimated(),
                                                        feature.source())));
        Stream<Row> areas =
                job.releaseAreas().stream()
                        .map(
                                area ->
                                        new Row(
                                                () -> GeometryBlob.polygon(area.outline()),
                                                area.outline(),
                                                List.of(
                                                        area.id(),
                                                        "release-area",
                                                        "",
                                                        "",
                                                        area.agreed(),
                                                        "",
                                                        false,
                                                        area.source())));
        return new Table(
                "features",
                "Roads, trails, houses, people and release areas",
                "GEOMETRY",
                Heights.NONE,
                List.of(
                        "id TEXT",
                        "kind TEXT",
                        "buffer_m DOUBLE",
                        "crossing TEXT",
                        "agreed BOOLEAN",
                        "height_m DOUBLE",
                        "height_estimated BOOLEAN",
                        "source TEXT"),
                Stream.concat(onMap, areas).toList());
    }

    private static byte[] geometry(MapFeature feature) {
        return switch (feature.shape()) {
            case POINT -> GeometryBlob.point(feature.outline().get(0));
            case LINE -> GeometryBlob.line(feature.outline());
            case AREA -> GeometryBlob.polygon(feature.outline());
        };
    }

    private static Table loads(Job job, Plan plan) {
        List<Row> rows = new ArrayList<>();
        for (Load load : job.loads()) {
            int number = stepOf(load.id(), plan);
            Optional<Rotation> rotation =
                    number == 0 ? Optional.empty() : plan.steps().get(number - 1).rotation();
            rows.add(
                    new Row(
                            NO_GEOMETRY,
                            List.of(),
                            List.of(
                                    load.id().value(),
                                    load.kind(),
                                    load.from().value(),
                                    load.to().value(),
                                    load.massTyped(),
                                    load.massKg().isPresent() ? load.massKg().getAsDouble() : "",
                                    word(load.massStatus()),
                                    number == 0 ? "" : number,
                                    rotation.map(r -> Written.time(r.hookedAt(), job.zone()))
                                            .orElse(""),
                                    rotation.<Object>map(
                                                    r ->
                                                            Written.down(r.fuelMaxKg(), 1)
                                                                    .doubleValue())
                                            .orElse(""),
                                    String.join(
                                            "; ",
                                            plan.leftOut().stream()
                                                    .filter(o -> o.load().equals(load.id()))
                                                    .map(o -> o.code() + ": " + o.message())
                                                    .toList()))));
        }
        return new Table(
                "loads",
                "Loads, with the step that carries them or why they are left out",
                "",
                Heights.NONE,
                List.of(
                        "id TEXT",
                        "kind TEXT",
                        "from_place TEXT",
                        "to_place TEXT",
                        "mass_typed TEXT",
                        "mass_kg DOUBLE",
                        "mass_status TEXT",
                        "step INTEGER",
                        "hooked_at TEXT",
                        "fuel_max_kg DOUBLE",
                        "left_out TEXT"),
                rows);
    }

    /** Number of the step that carries a load, from 1; 0 for none. */
    private static int stepOf(LoadId load, Plan plan) {
        for (int i = 0; i < plan.steps().size(); i++) {
            if (plan.steps().get(i).rotation().map(r -> r.loads().contains(load)).orElse(false)) {
                return i + 1;
            }
        }
        return 0;
    }

    private static Table findings(Output output) {
        List<Row> rows =
                Stream.concat(output.plan().findings().stream(), output.report().all().stream())
                        .map(GeoPackageWriter::finding)
                        .toList();
        return new Table(
                "findings",
                "Findings of the plan",
                "",
                Heights.NONE,
                List.of(
                        "code TEXT",
                        "severity TEXT",
                        "subject TEXT",
                        "value TEXT",
                        "limit_value TEXT",
                        "unit TEXT",
                        "source TEXT",
                        "message TEXT"),
                rows);
    }

    private static Row finding(Finding finding) {
        return new Row(
                NO_GEOMETRY,
                List.of(),
                List.of(
                        finding.code().name(),
                        finding.severity().name(),
                        finding.subject(),
                        finding.value(),
                        finding.limit(),
                        finding.unit(),
                        finding.source(),
                        finding.message()));
    }

    private static String join(List<LoadId> ids) {
        return String.join(" ", ids.stream().map(LoadId::value).toList());
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
