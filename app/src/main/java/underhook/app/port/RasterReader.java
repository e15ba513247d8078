package underhook.app.port;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import underhook.core.geo.HeightField;
import underhook.core.geo.LocalFrame;

/** Reads the part of a raster that a job needs. */
public interface RasterReader {
    /**
     * Reads a window of a GeoTIFF, HGT (also zipped) or ESRI ASCII grid and lays it over the plane.
     *
     * @param request what to read
     */
    Reading read(Request request);

    /**
     * What to read.
     *
     * @param file the raster
     * @param statedName the file's name for faults
     * @param referenceSystem stated system; when empty the raster must carry its own
     * @param band name or number (from 1) of the band; empty for the first of a one-band raster
     * @param frame plane to lay it over
     * @param halfWidthM half width east and north of the window around the frame's origin that is
     *     needed; what the raster has of it is read
     */
    record Request(
            Path file,
            String statedName,
            Optional<ReferenceSystem> referenceSystem,
            String band,
            LocalFrame frame,
            double halfWidthM) {}

    /** The field, present exactly when there are no faults. */
    record Reading(Optional<HeightField> field, List<Fault> faults) {
        public Reading {
            faults = List.copyOf(faults);
        }
    }
}
