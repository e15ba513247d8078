package underhook.app.port;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;

/** Reads a newer edition of one of a job's map files, in the way that the job reads that file. */
public interface EditionReader {
    /**
     * Reads the job, and the newer file in the place of one of its own.
     *
     * @param replaces that file, as job.yaml names it; when empty it is the one with the newer file's
     *     name, else the only one of its format
     */
    Reading readEdition(Path folder, Path newer, String replaces);

    /** Both editions, present exactly when there are no faults. */
    record Reading(Optional<Editions> editions, List<Fault> faults) {
        public Reading {
            faults = List.copyOf(faults);
        }
    }

    /**
     * Two editions of one file.
     *
     * @param job with the older edition
     * @param replaced the older file, as job.yaml names it
     */
    record Editions(Job job, String replaced, Contents older, Contents newer) {}

    /** What one edition holds. */
    record Contents(List<MapFeature> features, List<Wire> wires) {
        public Contents {
            features = List.copyOf(features);
            wires = List.copyOf(wires);
        }

        /** What came from one file. */
        public static Contents of(List<MapFeature> features, List<Wire> wires, String file) {
            return new Contents(
                    features.stream().filter(one -> one.source().equals(file)).toList(),
                    wires.stream().filter(one -> one.source().equals(file)).toList());
        }
    }
}
