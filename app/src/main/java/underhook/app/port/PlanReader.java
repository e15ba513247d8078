package underhook.app.port;

import java.nio.file.Path;
import java.util.Map;
import underhook.core.finding.Outcome;
import underhook.core.job.Job;
import underhook.core.plan.Plan;

/** Reads a written plan.json. */
public interface PlanReader {
    /** Refused with PLAN_UNREADABLE or VERSION_UNKNOWN when it cannot be read as a plan. */
    Outcome<Plan> read(Path file);

    /** The same, with a doubt about all that the file should say of this job's own files and does not. */
    Outcome<Plan> read(Path file, Job of);

    /** The sums of the files that a written plan was made of, by name; none in a plan that says none. */
    Map<String, String> findSums(Path file);
}
