package underhook.app.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.InstantSource;
import underhook.app.PlanDay;
import underhook.app.port.EveningFiles;
import underhook.app.port.EveningWriter;
import underhook.app.port.JobInputs;
import underhook.app.port.JobReader;
import underhook.app.port.PlanReader;
import underhook.app.port.Sheets;

/** What the desk works with. */
public record DeskTools(
        JobReader reader,
        JobInputs inputs,
        PlanReader plans,
        Sheets sheets,
        PlanDay planDay,
        Demo demo,
        InstantSource clock,
        EveningFiles evening,
        EveningWriter eveningPaper) {
    /** Writes the demo day's files into a folder. */
    public interface Demo {
        void write(Path folder) throws IOException;
    }
}
