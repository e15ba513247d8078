package underhook.app.port;

import java.io.IOException;
import java.nio.file.Path;

/** Writes one file of a closed day. */
public interface EveningWriter {
    /** Name of the file in the output folder. */
    String fileName();

    /** Writes the whole file. */
    void write(ClosedDay day, Path file) throws IOException;
}
