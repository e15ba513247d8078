package underhook.adapter.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.Wgs84;
import underhook.core.finding.FindingCode;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.unit.Units;

/** Reads the places of a job. */
final class PlacesFile {
    private static final double OPEN_M = 1000;
    private static final Range DEGREES_EAST = Range.of(-180, 180, "between -180 and 180");
    private static final Range DEGREES_NORTH = Range.of(-90, 90, "between -90 and 90");
    private static final Range ELEVATION = Range.of(-500, 9000, "between -500 and 9000 m");
    private static final Range TREES = Range.of(0, 120, "between 0 and 120 m");

    private final FileReference file;
    private final Source source;
    private final Mentions mentions;
    private final List<PlaceRow> rows = new ArrayList<>();
    private boolean systemReported;

    /** A place with its position as stated. */
    record PlaceRow(Place place, Position position) {}

    private PlacesFile(FileReference file, Source source, Mentions mentions) {
        this.file = file;
        this.source = source;
        this.mentions = mentions;
    }

    /** Every place whose row has no fault. */
    static List<PlaceRow> read(FileReference file, Source source, Mentions mentions) {
        PlacesFile reader = new PlacesFile(file, source, mentions);
        if (file.isTable()) {
            Table.read(file.path(), source, reader::readRow);
        } else if (file.isGeoJson()) {
            GeoJsonFile.read(file, source, reader::readFeature);
        } else {
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(0, ""),
                    "has an unknown ending",
                    new Found(file.name(), ".csv, .xlsx or .geojson"));
        }
        return reader.rows;
    }

    private void readFeature(GeoJsonFile.Feature feature) {
        int before = source.faults().count();
        boolean isPoint = feature.shape() == GeoJsonFile.Shape.POINT;
        if (!isPoint) {
            source.fault(
                    FindingCode.FIELD_UNREADABLE,
                    new At(feature.line(), "geometry"),
                    "is no point",
                    new Found(feature.shape().word(), "one point for each place"));
        }
        readPlace(
                feature.properties(),
                isPoint ? Optional.of(feature.outline().get(0)) : Optional.empty(),
                before);
        feature.refuseUnknown();
    }

    private void readRow(Fields fields) {
        int before = source.faults().count();
        readPlace(fields, readPosition(fields), before);
    }

    private Optional<Position> readPosition(Fields fields) {
        OptionalDouble x = fields.findNumber("x_m", Range.of(-1e8, 1e8, "a coordinate"));
        OptionalDouble y = fields.findNumber("y_m", Range.of(-1e8, 1e8, "a coordinate"));
        OptionalDouble lon = fields.findNumber("lon_deg", DEGREES_EAST);
        OptionalDouble lat = fields.findNumber("lat_deg", DEGREES_NORTH);
        boolean isPlane = fields.has("x_m") || fields.has("y_m");
        boolean isGeographic = fields.has("lon_deg") || fields.has("lat_deg");
        if (isPlane && isGeographic) {
            fields.fault(
                    FindingCode.FIELD_UNREADABLE,
                    "lon_deg",
                    "is given besides x_m and y_m",
                    Found.allowing("one of the two"));
            return Optional.empty();
        }
        if (isGeographic) {
            requireBoth(fields, "lon_deg", "lat_deg");
            return position(fields, Wgs84.SYSTEM, "lon_deg", new OptionalDouble[] {lon, lat});
        }
        requireBoth(fields, "x_m", "y_m");
        Optional<ReferenceSystem> system = isPlane ? system(fields) : Optional.empty();
        return system.flatMap(known -> position(fields, known, "x_m", new OptionalDouble[] {x, y}));
    }

    private static void requireBoth(Fields fields, String first, String second) {
        for (String name : List.of(first, second)) {
            if (!fields.has(name)) {
                fields.missing(name);
            }
        }
    }

    private Optional<ReferenceSystem> system(Fields fields) {
        if (!file.system().isStated() && !systemReported) {
            systemReported = true;
            fields.fault(
                    FindingCode.REFERENCE_SYSTEM_MISSING,
                    "x_m",
                    "has no reference system",
                    Found.allowing("crs in job.yaml, for all files or for this one"));
        }
        return file.system().system();
    }

    private Optional<Position> position(
            Fields fields, ReferenceSystem system, String name, OptionalDouble[] pair) {
        if (pair[0].isEmpty() || pair[1].isEmpty()) {
            return Optional.empty();
        }
        return Position.of(
                source,
                new At(fields.line(), name),
                new Position.Pair(system, pair[0].getAsDouble(), pair[1].getAsDouble()));
    }

    private void readPlace(Fields fields, Optional<Position> position, int faultsBefore) {
        String id = fields.id("id");
        mentions.declare(Family.PLACE, fields, "id", id);
        PlaceKind kind = fields.choice("kind", PlaceKind.class);
        String name = fields.text("name", "");
        OptionalDouble elevationM = fields.findQuantity("elevation", Quantity.LENGTH, ELEVATION);
        OptionalDouble canopyM = fields.findQuantity("canopy", Quantity.LENGTH, TREES);
        double canopySpreadM =
                fields.findQuantity("canopy_spread", Quantity.LENGTH, TREES).orElse(0);
        double clearingM = readClearing(fields);
        double exposureFactor =
                fields.number("exposure", Range.above(0, 5, "above 0 and at most 5"), 1);
        boolean agreed = fields.yesNo("agreed", true);
        boolean standing = fields.yesNo("standing", kind != PlaceKind.SITE);
        boolean fuel = fields.yesNo("fuel", false);
        boolean landingAsked = fields.yesNo("landing_asked", false);
        List<Double> guysDeg =
                fields.numbers("guy_azimuths_deg", Range.of(0, 360, "between 0 and 360"));
        String remarks = fields.text("remarks", "");
        if (position.isPresent() && source.faults().count() == faultsBefore) {
            Place place =
                    new Place(
                            new PlaceId(id),
                            kind,
                            name,
                            position.get().point(),
                            elevationM,
                            canopyM,
                            canopySpreadM,
                            clearingM,
                            exposureFactor,
                            agreed,
                            standing,
                            fuel,
                            landingAsked,
                            guysDeg.stream().map(Units::degToRad).toList(),
                            remarks);
            rows.add(new PlaceRow(place, position.get()));
        }
    }

    private static double readClearing(Fields fields) {
        if (fields.isWord("clearing_radius_m", "open")) {
            return OPEN_M;
        }
        return fields.findQuantity(
                        "clearing_radius",
                        Quantity.LENGTH,
                        Range.of(0, 10_000, "between 0 and 10000 m, or open"))
                .orElse(0);
    }
}
