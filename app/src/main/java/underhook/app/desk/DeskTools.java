package underhook.app.desk;

import java.time.InstantSource;
import underhook.app.PlanDay;
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
        InstantSource clock) {}
