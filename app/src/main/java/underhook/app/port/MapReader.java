package underhook.app.port;

import java.nio.file.Path;
import java.util.List;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;

/**
 * Reads a map whose words have a public meaning (OpenStreetMap, AIXM) and translates it into ours.
 *
 * <p>The file is streamed: memory grows with what lies in the box, not with the file.
 */
public interface MapReader {
    /** Whether a file of this name is one of its own, by its ending. */
    boolean reads(String fileName);

    /** Licence that holds for such a file where the job states none; empty when there is none. */
    String usualLicence();

    /** Attribution that holds for such a file where the job states none; empty when there is none. */
    String usualAttribution();

    /** Reads what touches the box; never throws for what a file holds. */
    Contents read(Path file, String statedName, MapBox box);

    /**
     * What a file holds of the box.
     *
     * @param features ids are unique over the file
     * @param wires ids are unique over the file and differ from those of features
     * @param passedOver how many things of the box were not understood or do not matter, for a note
     * @param faults why the file cannot be read as meant; then the lists count for nothing
     */
    record Contents(
            List<MapFeature> features, List<Wire> wires, long passedOver, List<Fault> faults) {
        public Contents {
            features = List.copyOf(features);
            wires = List.copyOf(wires);
            faults = List.copyOf(faults);
        }
    }
}
