package underhook.app.desk;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import underhook.app.desk.DeskJob.KnownPlan;
import underhook.app.port.ReadJob;
import underhook.planner.order.DayLook;
import underhook.planner.route.LegSection;

/** What plans were made from, kept ready for questions. Safe for threads. */
public final class DayLooks {
    private static final int KEPT = 2;

    private final Map<String, Look> looks = new LinkedHashMap<>();

    /** A plan and the job it was made from. */
    public record Look(KnownPlan plan, ReadJob job, DayLook day, LegSection section) {}

    /** Everything about the plan that the desk shows of a job; empty when there is none. */
    public synchronized Optional<Look> find(DeskJob job) throws IOException {
        Optional<KnownPlan> plan = job.findPlan();
        if (plan.isEmpty()) {
            return Optional.empty();
        }
        String key = job.id() + " " + plan.get().kept().id();
        Look look = looks.get(key);
        if (look == null) {
            Optional<ReadJob> read = job.read(plan.get().kept().revision()).job();
            if (read.isEmpty()) {
                return Optional.empty();
            }
            look =
                    new Look(
                            plan.get(),
                            read.get(),
                            new DayLook(read.get().job(), read.get().ground()),
                            new LegSection(read.get().job(), read.get().ground()));
            looks.put(key, look);
            if (looks.size() > KEPT) {
                looks.remove(looks.keySet().iterator().next());
            }
        }
        return Optional.of(look);
    }
}
