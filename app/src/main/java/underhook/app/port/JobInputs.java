package underhook.app.port;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import underhook.core.job.InputFile;

/** Says which files job.yaml names as what, also of a job that cannot be read as a whole. */
public interface JobInputs {
    /** In the order of the roles; empty when job.yaml itself cannot be read. */
    List<InputFile> list(Path folder);

    /** The reference system that counts for a file of the job; empty when none can be had. */
    Optional<ReferenceSystem> findSystem(Path folder, String path);

    /** What the job states for the worst case, as far as it can be read; empty when it states nothing. */
    Optional<EmergencyPlan> findEmergency(Path folder);
}
