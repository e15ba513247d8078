package underhook.adapter.job;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.Wgs84;
import underhook.core.finding.FindingCode;

/** Reads positions out of columns. Mutable: it says once that a file has no reference system. */
final class PointColumns {
    private static final Range COORDINATE = Range.of(-1e8, 1e8, "a coordinate");
    private static final Range DEGREES_EAST = Range.of(-180, 180, "between -180 and 180");
    private static final Range DEGREES_NORTH = Range.of(-90, 90, "between -90 and 90");

    private final FileReference file;
    private boolean isSystemReported;

    PointColumns(FileReference file) {
        this.file = file;
    }

    /** The position of a row; empty, with a fault, when there is none. */
    Optional<Position> read(Fields fields) {
        OptionalDouble x = fields.findNumber("x_m", COORDINATE);
        OptionalDouble y = fields.findNumber("y_m", COORDINATE);
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
        if (!file.system().isStated() && !isSystemReported) {
            isSystemReported = true;
            fields.fault(
                    FindingCode.REFERENCE_SYSTEM_MISSING,
                    "x_m",
                    "has no reference system",
                    Found.allowing("crs in job.yaml, for all files or for this one"));
        }
        return file.system().system();
    }

    private static Optional<Position> position(
            Fields fields, ReferenceSystem system, String name, OptionalDouble[] pair) {
        if (pair[0].isEmpty() || pair[1].isEmpty()) {
            return Optional.empty();
        }
        return Position.of(
                fields.source(),
                new At(fields.line(), name),
                new Position.Pair(system, pair[0].getAsDouble(), pair[1].getAsDouble()));
    }
}
