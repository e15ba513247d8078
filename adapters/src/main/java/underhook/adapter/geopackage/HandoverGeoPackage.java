package underhook.adapter.geopackage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.adapter.geopackage.GeoPackageFile.Heights;
import underhook.adapter.geopackage.GeoPackageFile.Row;
import underhook.adapter.geopackage.GeoPackageFile.Table;
import underhook.app.port.Attribution;
import underhook.app.port.ClosedDay;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.EveningWriter;
import underhook.core.job.Place;

/** Writes handover.gpkg: what stands where, for the customer's map. */
public final class HandoverGeoPackage implements EveningWriter {
    @Override
    public String fileName() {
        return "handover.gpkg";
    }

    @Override
    public void write(ClosedDay day, Path file) throws IOException {
        Files.deleteIfExists(file);
        String changedAt = GeoPackageWriter.TIME.format(day.plan().plannedAt());
        try (GeoPackageFile made = GeoPackageFile.create(file, changedAt)) {
            made.addMetadata(
                    "Hand-over of "
                            + day.job().name()
                            + ", "
                            + day.job().date()
                            + ", plan "
                            + day.plan().id()
                            + "\n"
                            + String.join("\n", Attribution.notice(day.job())));
            made.add(places(day));
            made.add(loads(day));
            made.finish();
        } catch (SQLException failed) {
            throw new IOException(file + " could not be written: " + failed.getMessage(), failed);
        }
    }

    /** Where something was meant to go, with how much of it stands. */
    private static Table places(ClosedDay day) {
        List<Row> rows = new ArrayList<>();
        for (Place place : day.job().places()) {
            List<LiftLine> here =
                    day.lifts().stream().filter(line -> line.to().equals(place.id())).toList();
            long stands = here.stream().filter(LiftLine::isDone).count();
            if (!here.isEmpty()) {
                rows.add(
                        at(
                                place,
                                List.of(
                                        place.id().value(),
                                        place.name(),
                                        (int) stands,
                                        (int) (here.size() - stands),
                                        stands == here.size())));
            }
        }
        return new Table(
                "places",
                "Places with what stands and what is left",
                "POINT",
                Heights.NONE,
                List.of(
                        "id TEXT",
                        "name TEXT",
                        "loads_standing INTEGER",
                        "loads_left INTEGER",
                        "done BOOLEAN"),
                rows);
    }

    private static Table loads(ClosedDay day) {
        List<Row> rows = new ArrayList<>();
        for (LiftLine line : day.lifts()) {
            day.job()
                    .findPlace(line.to())
                    .ifPresent(
                            place ->
                                    rows.add(
                                            at(
                                                    place,
                                                    List.of(
                                                            line.load().value(),
                                                            line.kind(),
                                                            line.from().value(),
                                                            line.to().value(),
                                                            line.isDone(),
                                                            time(line.doneAt()),
                                                            line.readKg().isPresent()
                                                                    ? line.readKg().getAsDouble()
                                                                    : "",
                                                            line.whatIsLeft()))));
        }
        return new Table(
                "loads",
                "Every load of the list at the place it was meant for",
                "POINT",
                Heights.NONE,
                List.of(
                        "load TEXT",
                        "kind TEXT",
                        "from_place TEXT",
                        "to_place TEXT",
                        "standing BOOLEAN",
                        "done_at DATETIME",
                        "read_kg DOUBLE",
                        "what_is_left TEXT"),
                rows);
    }

    private static Row at(Place place, List<Object> values) {
        return new Row(
                () -> GeometryBlob.point(place.position()), List.of(place.position()), values);
    }

    private static String time(Optional<Instant> at) {
        return at.map(GeoPackageWriter.TIME::format).orElse("");
    }
}
