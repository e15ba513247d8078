package underhook.app.port;

import java.util.List;
import java.util.Optional;

/**
 * What came of reading a job folder: the job, or all the faults at once.
 *
 * @param job present exactly when there are no faults
 */
public record JobReading(Optional<ReadJob> job, List<Fault> faults) {
    public JobReading {
        faults = List.copyOf(faults);
        if (job.isPresent() != faults.isEmpty()) {
            throw new IllegalArgumentException("a job is read exactly when there are no faults.");
        }
    }
}
