package underhook.app.port;

import java.nio.file.Path;
import underhook.core.finding.Outcome;
import underhook.core.plan.Plan;

/** Reads a written plan.json. */
public interface PlanReader {
    /** Refused with PLAN_UNREADABLE or VERSION_UNKNOWN when it cannot be read as a plan. */
    Outcome<Plan> read(Path file);
}
