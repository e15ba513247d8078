package underhook.app.port;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** Jobs that the program keeps, each in one file of its own. */
public interface JobStore {
    /** Ids of all that are kept, in alphabetical order. */
    List<String> list() throws IOException;

    /**
     * Makes a new one without any revision.
     *
     * @param id lower-case letters, digits and hyphens; names the file
     * @param name as people call it
     */
    KeptJob create(String id, String name) throws IOException;

    /**
     * Opens one; an older format is copied beside, then migrated.
     *
     * @throws IOException with a plain sentence when it cannot be read or is newer than the program
     */
    KeptJob open(String id) throws IOException;

    /**
     * Takes over what a file from elsewhere holds, value by value, as a new job.
     *
     * @param id of the new one
     * @throws IOException with a plain sentence when the file is none of ours or not whole
     */
    KeptJob take(Path file, String id) throws IOException;
}
