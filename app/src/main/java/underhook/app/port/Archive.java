package underhook.app.port;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Everything that was ever changed in a job, in the order it came.
 *
 * @param job its name
 * @param entries each sealed with the one before
 * @param broken the first thing that is not what was sealed, in words; empty when all is whole
 */
public record Archive(String job, List<Entry> entries, Optional<String> broken) {
    /**
     * A change or a plan.
     *
     * @param kind what it is
     * @param subject number of the revision, or id of the plan
     * @param who account that the program ran under; empty for what is older than the seals
     * @param what was changed, in words; for a plan the revision it was made from
     * @param hash over this entry, all its files and the entry before, SHA-256
     */
    public record Entry(
            long number,
            Kind kind,
            String subject,
            String who,
            Instant at,
            String what,
            String hash) {}

    /** What can be sealed. */
    public enum Kind {
        REVISION,
        PLAN
    }

    public Archive {
        entries = List.copyOf(entries);
    }

    /** Reads the archive of a job's file, without changing it. */
    public interface Reader {
        /**
         * All of it.
         *
         * @throws IOException with a plain sentence when the file is no job of this program
         */
        Archive read(Path file) throws IOException;
    }
}
