package underhook.app.port;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Reads shapes with named values whose meaning the job states: GeoPackage, KML, GPX.
 *
 * <p>The file is streamed, one feature at a time.
 */
public interface FeatureReader {
    /** Whether a file of this name is one of its own, by its ending. */
    boolean reads(String fileName);

    /**
     * Hands over every feature in the order of the file; one with a fault is not handed over.
     *
     * @return every fault of the file; never throws for what a file holds
     */
    List<Fault> read(Request request, Consumer<StatedFeature> sink);

    /** Names of values that such files have by themselves; passed over where nobody asks for them. */
    default Set<String> usualNames() {
        return Set.of();
    }

    /**
     * What to read.
     *
     * @param statedName the file's name for faults
     * @param referenceSystem system stated for this very file; when empty the file must carry its own
     * @param layer table or folder to read; empty when the file has one only
     */
    record Request(
            Path file,
            String statedName,
            Optional<ReferenceSystem> referenceSystem,
            String layer) {}

    /** How an outline is meant. */
    enum Shape {
        /** A row without geometry, which may still hold coordinates among its values. */
        NONE,
        POINT,
        LINE,
        AREA
    }

    /**
     * A corner as the file states it.
     *
     * @param x easting or longitude in the file's system
     * @param y northing or latitude in the file's system
     * @param elevationM height as stated, m, where there is one; its datum is the file's affair
     */
    record Corner(double x, double y, OptionalDouble elevationM) {}

    /**
     * One feature, or one part of a feature with several.
     *
     * @param line line or row of the file, from 1
     * @param part which part, from 1; 0 for a feature of one part
     * @param values names and values in the order of the file, as text
     * @param outline one point, a line, or a ring without its repeated last corner; empty for NONE
     * @param hasHoles whether the area has holes, which are not in the outline
     */
    record StatedFeature(
            int line,
            int part,
            Map<String, String> values,
            Shape shape,
            ReferenceSystem system,
            List<Corner> outline,
            boolean hasHoles) {
        public StatedFeature {
            outline = List.copyOf(outline);
        }
    }
}
