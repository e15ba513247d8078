package underhook.app;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import underhook.app.port.Fault;
import underhook.app.port.JobReader;
import underhook.app.port.JobReading;
import underhook.app.port.PlanReader;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.plan.Plan;
import underhook.core.plan.VerifierReport;

/** Re-checks a written plan against its job, with the verifier alone. */
public final class VerifyPlan {
    /**
     * What came of it.
     *
     * @param faults of the job; when there are any, nothing was checked
     * @param report of the plan; a plan that cannot be read is a violation
     */
    public record Result(List<Fault> faults, VerifierReport report) {
        public Result {
            faults = List.copyOf(faults);
        }
    }

    private final JobReader jobs;
    private final PlanReader plans;
    private final PlanDay.Checking checking;

    public VerifyPlan(JobReader jobs, PlanReader plans, PlanDay.Checking checking) {
        this.jobs = jobs;
        this.plans = plans;
        this.checking = checking;
    }

    public Result verify(Path jobFolder, Path planFile) {
        JobReading reading = jobs.read(jobFolder);
        if (reading.job().isEmpty()) {
            return new Result(reading.faults(), new VerifierReport(0, List.of()));
        }
        Outcome<Plan> plan = plans.read(planFile, reading.job().get().job());
        VerifierReport report =
                plan.isDone()
                        ? with(doubts(plan), checking.check(reading.job().get(), plan.getValue()))
                        : new VerifierReport(0, plan.findings());
        return new Result(List.of(), report);
    }

    /** A day that was planned whole was replayed before it was written. */
    private static List<Finding> doubts(Outcome<Plan> read) {
        List<Finding> all = new ArrayList<>(read.findings());
        Plan plan = read.getValue();
        boolean isReplayed = !plan.steps().isEmpty() && plan.summary().anew().isEmpty();
        if (isReplayed && plan.odds().isEmpty()) {
            all.add(
                    Finding.of(
                            FindingCode.STATED_WRONG,
                            Severity.STOP,
                            "odds",
                            "plan",
                            "The plan does not say how sure its finish is."));
        }
        return all;
    }

    /** What the file says beside the plan, and wrongly, refuses it like the rest. */
    private static VerifierReport with(List<Finding> doubts, VerifierReport report) {
        List<Finding> all = new ArrayList<>(doubts);
        all.addAll(report.violations());
        return new VerifierReport(report.checks(), all, report.over());
    }
}
