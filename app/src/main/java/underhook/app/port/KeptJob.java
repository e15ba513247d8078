package underhook.app.port;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * One job with everything that was ever changed in it. What is added is on the disk when the method
 * returns. Safe for threads.
 */
public interface KeptJob extends Closeable {
    /**
     * A state of the job's files.
     *
     * @param id from 1, in the order they were made
     * @param parent the revision it was made from; 0 for the first
     * @param what was changed, in words
     */
    record Revision(long id, long parent, Instant at, String what) {}

    /**
     * A change to be made.
     *
     * @param on the head that whoever changes it has seen
     * @param written files by path, new or in the place of older ones
     * @param removed paths
     */
    record Change(
            long on, Instant at, String what, Map<String, Content> written, Set<String> removed) {
        public Change {
            written = Map.copyOf(written);
            removed = Set.copyOf(removed);
        }
    }

    /**
     * A plan that was made.
     *
     * @param id the same in every file of its run
     * @param revision that it was made from
     */
    record KeptPlan(String id, long revision, Instant at) {}

    /** Somebody else has changed the job in the meantime. */
    final class MovedException extends IOException {
        private static final long serialVersionUID = 1L;

        public MovedException(long head) {
            super("The job has moved on to revision " + head + ". Nothing was changed.");
        }
    }

    String id();

    String name() throws IOException;

    /** The revision that counts; empty while there is none. */
    Optional<Revision> findHead() throws IOException;

    /** What undo leads to. */
    Optional<Revision> findBack() throws IOException;

    /** What redo leads to. */
    Optional<Revision> findAhead() throws IOException;

    /** All, oldest first. */
    List<Revision> listRevisions() throws IOException;

    /** Hashes of a revision's files, by path. */
    Map<String, String> listFiles(long revision) throws IOException;

    /** A file by its hash. */
    Content getContent(String hash) throws IOException;

    /**
     * Makes a new head.
     *
     * @throws MovedException when the head is no longer the one that the change was made on
     */
    Revision add(Change change) throws IOException;

    /**
     * Makes the revision before the head the head; nothing is forgotten.
     *
     * @param on the head that was seen; a change may not be undone that nobody looked at
     */
    Revision undo(long on) throws IOException;

    /** Makes the revision that was undone last the head again. */
    Revision redo(long on) throws IOException;

    void keepPlan(KeptPlan plan, Map<String, Content> files) throws IOException;

    /** All, oldest first. */
    List<KeptPlan> listPlans() throws IOException;

    /** Names of a plan's files, in alphabetical order. */
    List<String> listPlanFiles(String plan) throws IOException;

    Optional<Content> findPlanFile(String plan, String name) throws IOException;

    /**
     * Adds to the end of the log of taps, all or none; one whose id stands there already is left as it
     * was first told.
     *
     * @return the row of each, new or old
     */
    List<KeptTap> addTaps(List<KeptTap.Given> taps) throws IOException;

    /** The log of taps from its beginning. */
    List<KeptTap> listTaps() throws IOException;

    /** Every revision and plan as sealed, looked at again. */
    Archive readArchive() throws IOException;

    /** Writes all of it into one file, to be handed over. */
    void writeTo(Path file) throws IOException;
}
