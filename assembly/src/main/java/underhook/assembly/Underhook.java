package underhook.assembly;

import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.adapter.job.JobFolderReader;
import underhook.adapter.planfile.PlanJsonReader;
import underhook.adapter.terrain.RasterFiles;
import underhook.app.PlanDay;
import underhook.app.VerifyPlan;
import underhook.app.calc.Calc;
import underhook.app.port.JobReader;
import underhook.app.port.ReferenceSystems;
import underhook.core.crew.Daylight;
import underhook.planner.verify.PlanVerifier;

/** The whole program, put together once. */
public final class Underhook {
    private final JobReader jobReader;
    private final VerifyPlan verifyPlan;
    private final Calc calc;

    /** Puts it together; reads and writes nothing yet. */
    public Underhook() {
        ReferenceSystems systems = new Proj4jReferenceSystems();
        PlanVerifier verifier = new PlanVerifier();
        PlanDay.Checking checking = (job, plan) -> verifier.check(job.job(), job.ground(), plan);
        jobReader =
                new JobFolderReader(
                        systems,
                        new RasterFiles(systems),
                        (place, date, zone) -> Daylight.find(place, date, zone).isPresent());
        verifyPlan = new VerifyPlan(jobReader, new PlanJsonReader(), checking);
        calc = new Calc(systems, Reports::decode);
    }

    public JobReader jobReader() {
        return jobReader;
    }

    public VerifyPlan verifyPlan() {
        return verifyPlan;
    }

    public Calc calc() {
        return calc;
    }
}
