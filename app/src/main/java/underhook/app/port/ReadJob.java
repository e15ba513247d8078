package underhook.app.port;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import underhook.core.ahead.Beside;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.job.Rules;

/**
 * A job and the ground it lies on.
 *
 * @param otherMachines machines that could fly it in the place of its own
 * @param stated its rules and machine before earlier days taught anything
 * @param beside what it states that no plan is made of
 * @param emergency what it states for the worst case
 * @param sums a sum of each of its files, by name: another file has another; empty where nothing was read
 */
public record ReadJob(
        Job job,
        Ground ground,
        List<Machine> otherMachines,
        Stated stated,
        Beside beside,
        Emergency emergency,
        Map<String, String> sums) {
    /** What the files say; the job has it with what earlier days taught. */
    public record Stated(Rules rules, Machine machine) {}

    /**
     * What a sheet for the worst case is made of.
     *
     * @param system of the job's places, where it is known
     */
    public record Emergency(EmergencyPlan plan, Optional<ReferenceSystem> system) {
        /** Nothing is stated. */
        public static final Emergency NONE = new Emergency(EmergencyPlan.NONE, Optional.empty());
    }

    public ReadJob {
        otherMachines = List.copyOf(otherMachines);
        sums = Map.copyOf(sums);
    }

    /** A job for which only one machine is there. */
    public ReadJob(Job job, Ground ground) {
        this(
                job,
                ground,
                List.of(),
                new Stated(job.rules(), job.machine()),
                Beside.NONE,
                Emergency.NONE,
                Map.of());
    }

    /** The same ground and all else with a changed job. */
    public ReadJob with(Job changed) {
        return new ReadJob(changed, ground, otherMachines, stated, beside, emergency, sums);
    }

    /** The same with some loads left for another day. */
    public ReadJob leaving(Set<LoadId> left) {
        return with(
                job.withLoads(
                        job.loads().stream()
                                .map(load -> left.contains(load.id()) ? load.onAnotherDay() : load)
                                .toList()));
    }
}
