package underhook.app.port;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import underhook.core.geo.GeoPoint;

/** Reads a recorded track. */
public interface TrackReader {
    /** Where a receiver was at a moment. */
    record Fix(Instant at, GeoPoint point) {}

    /** Whether a file of this name is read by this reader. */
    boolean reads(String fileName);

    /**
     * Reads every fix that has a time, in the order of the file.
     *
     * @param statedName how the faults call the file
     */
    Reading<List<Fix>> read(Path file, String statedName);
}
