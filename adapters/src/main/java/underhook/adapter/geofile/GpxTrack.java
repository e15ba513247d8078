package underhook.adapter.geofile;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.geofile.source.Faults;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.app.port.FeatureReader.Corner;
import underhook.app.port.Reading;
import underhook.app.port.TrackReader;
import underhook.core.geo.GeoPoint;

/**
 * Reads the points of every track of a GPX 1.0 or 1.1 file that have a time.
 *
 * @source TOPOGRAFIX-GPX-1.1 trkType, trksegType, wptType
 */
public final class GpxTrack implements TrackReader {
    private static final long MOST_BYTES = 256L << 20;

    @Override
    public boolean reads(String fileName) {
        return fileName.toLowerCase(Locale.ROOT).endsWith(".gpx");
    }

    @Override
    public Reading<List<Fix>> read(Path file, String statedName) {
        Faults faults = new Faults(statedName);
        List<Fix> fixes = new ArrayList<>();
        XmlCursor.read(file, MOST_BYTES, faults, cursor -> readRoot(cursor, faults, fixes));
        return Reading.of(List.copyOf(fixes), faults.list());
    }

    private static void readRoot(XmlCursor cursor, Faults faults, List<Fix> fixes)
            throws XMLStreamException, Unreadable {
        if (!cursor.name().equals("gpx") || !GpxReader.isGpx(cursor.namespace())) {
            throw Unreadable.file("is no GPX 1.0 or 1.1").found(cursor.name());
        }
        cursor.eachChild(
                () -> {
                    if (cursor.name().equals("trk")) {
                        cursor.eachChild(
                                () -> {
                                    if (cursor.name().equals("trkseg")) {
                                        cursor.eachChild(() -> readPoint(cursor, faults, fixes));
                                    }
                                });
                    }
                });
        if (fixes.isEmpty() && faults.isEmpty()) {
            throw Unreadable.file("has no track with times")
                    .allowing("a recorded track; a route or a drawn line has no times");
        }
    }

    private static void readPoint(XmlCursor cursor, Faults faults, List<Fix> fixes)
            throws XMLStreamException, Unreadable {
        if (!cursor.name().equals("trkpt")) {
            return;
        }
        int line = cursor.line();
        String lon = cursor.attribute("lon");
        String lat = cursor.attribute("lat");
        List<String> times = new ArrayList<>();
        cursor.eachChild(
                () -> {
                    if (cursor.name().equals("time")) {
                        times.add(cursor.text());
                    }
                });
        try {
            Corner corner = Part.wgs84(lon, lat, OptionalDouble.empty());
            if (!times.isEmpty()) {
                fixes.add(new Fix(toInstant(times.get(0)), new GeoPoint(corner.y(), corner.x())));
            }
        } catch (Unreadable e) {
            faults.add(line, e);
        }
    }

    /** Times without an offset are UTC, as the format says. */
    private static Instant toInstant(String text) throws Unreadable {
        String time = text.strip();
        Optional<Instant> instant = Optional.empty();
        try {
            boolean hasOffset = time.endsWith("Z") || time.matches(".*[+-][0-9]{2}:[0-9]{2}$");
            instant = Optional.of(OffsetDateTime.parse(hasOffset ? time : time + "Z").toInstant());
        } catch (DateTimeException e) {
            // told below
        }
        return instant.orElseThrow(
                () ->
                        Unreadable.field("time", "is no time")
                                .found(time)
                                .allowing("ISO 8601, such as 2026-07-14T05:31:07Z"));
    }
}
