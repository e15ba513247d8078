package underhook.app.flying;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import underhook.app.desk.DayLooks;
import underhook.app.desk.Desk;
import underhook.app.desk.DeskJob;

/** The days of all jobs on a desk. Safe for threads. */
public final class FlyingDays {
    private final Desk desk;
    private final DayLooks looks;
    private final Map<String, FlyingDay> days = new HashMap<>();

    public FlyingDays(Desk desk, DayLooks looks) {
        this.desk = desk;
        this.looks = looks;
    }

    /** The day of a job; empty when there is no such job. */
    public Optional<FlyingDay> find(String id) throws IOException {
        Optional<DeskJob> job = desk.find(id);
        return job.isEmpty() ? Optional.empty() : Optional.of(get(job.get()));
    }

    private synchronized FlyingDay get(DeskJob job) throws IOException {
        FlyingDay day = days.get(job.id());
        if (day == null) {
            day = new FlyingDay(job, looks);
            days.put(job.id(), day);
        }
        return day;
    }
}
