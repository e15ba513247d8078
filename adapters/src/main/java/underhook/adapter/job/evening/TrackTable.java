package underhook.adapter.job.evening;

import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.app.port.Reading;
import underhook.app.port.TrackReader;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;

/** Reads a track from a table of {@code at}, {@code lat_deg} and {@code lon_deg} on WGS 84. */
public final class TrackTable implements TrackReader {
    @Override
    public boolean reads(String fileName) {
        return fileName.toLowerCase(Locale.ROOT).endsWith(".csv");
    }

    @Override
    public Reading<List<Fix>> read(Path file, String statedName) {
        Source source = new Source(statedName, new Faults());
        List<Fix> fixes = new ArrayList<>();
        Table.read(Table.Input.of(file, source), row -> readFix(row, fixes));
        return Reading.of(List.copyOf(fixes), source.faults().list());
    }

    private static void readFix(Fields row, List<Fix> fixes) {
        int before = row.source().faults().count();
        String at = row.text("at");
        double latDeg = row.number("lat_deg", Range.of(-90, 90, "between -90 and 90"));
        double lonDeg = row.number("lon_deg", Range.of(-180, 180, "between -180 and 180"));
        row.findText("ele_m");
        Instant instant = Instant.EPOCH;
        try {
            instant = OffsetDateTime.parse(at).toInstant();
        } catch (DateTimeParseException e) {
            if (!at.isEmpty()) {
                row.fault(
                        FindingCode.FIELD_UNREADABLE,
                        "at",
                        "is no time",
                        new Found(at, "ISO 8601 with offset, such as 2026-07-14T05:31:07Z"));
            }
        }
        if (row.source().faults().count() == before) {
            fixes.add(new Fix(instant, new GeoPoint(latDeg, lonDeg)));
        }
    }
}
