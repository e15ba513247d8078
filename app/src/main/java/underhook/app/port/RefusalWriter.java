package underhook.app.port;

import java.io.IOException;
import java.nio.file.Path;

/** Writes the one file of a day that has no plan. */
public interface RefusalWriter {
    /** Name of the file in the output folder. */
    String fileName();

    /** Writes the whole file. */
    void write(Refusal refusal, Path file) throws IOException;
}
