package underhook.app.port;

import java.nio.file.Path;

/** Reads a job folder. */
public interface JobReader {
    /** Reads everything and reports every fault of every file; never throws for what a file holds. */
    JobReading read(Path folder);
}
