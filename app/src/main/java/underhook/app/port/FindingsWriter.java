package underhook.app.port;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import underhook.core.finding.Finding;

/** Writes the findings of a plan, and those of a refusal that has no plan. */
public interface FindingsWriter extends OutputWriter {
    /** Writes the whole file; without a plan there is no plan id and no attribution in it. */
    void writeRefusal(List<Finding> findings, Path file) throws IOException;
}
