package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import underhook.core.aircraft.CentreOfGravity;
import underhook.core.aircraft.CentreOfGravity.Burden;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Machine;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * Flights of a plan on which the centre of gravity leaves its envelope, each cause said once: a lift, a crew in
 * the cabin, nothing on the hook. A load is left out where no line balances it; on the line, in the hour and
 * with the fuel flown it is looked at here.
 */
public final class BalanceFindings {
    private static final String EMPTY = "with no load on the hook";
    private static final String LOADED = "with it on the hook";
    private static final String ABOARD = "with it aboard";

    private final List<Crew> crews;
    private final Machine machine;
    private final Map<String, Finding> all = new TreeMap<>();

    private BalanceFindings(Job job) {
        this.crews = job.crews();
        this.machine = job.machine();
    }

    /** All that must be said of these steps; nothing where the machine states no balance. */
    public static List<Finding> list(Job job, List<Step> steps) {
        if (job.machine().balance().isEmpty()) {
            return List.of();
        }
        BalanceFindings findings = new BalanceFindings(job);
        steps.stream().filter(Step::engineRunning).forEach(findings::look);
        return new ArrayList<>(findings.all.values());
    }

    private void look(Step step) {
        double lineKg =
                machine.lines().stream()
                        .filter(line -> Math.abs(line.lengthM() - step.lineLengthM()) < 0.05)
                        .mapToDouble(line -> line.massKg())
                        .max()
                        .orElse(0);
        if (step.kind() == StepKind.CREW_MOVE) {
            Crew crew =
                    crews.stream()
                            .filter(one -> step.crew().filter(one.id()::equals).isPresent())
                            .findFirst()
                            .orElseThrow();
            look(step, burden(crew.people() * crew.massEachKg(), 0), crew.id().value(), ABOARD);
        }
        look(step, burden(0, lineKg), machine.name(), EMPTY);
        step.rotation().ifPresent(lift -> look(step, lift));
    }

    private static String first(Rotation lift) {
        return lift.loads().get(0).value();
    }

    private Burden burden(double cabinKg, double hookKg) {
        return new Burden(machine.emptyMassKg(), machine.crewMassKg(), cabinKg, hookKg);
    }

    /** From hook-up on: what is burnt on the way there is flown without it. */
    private void look(Step step, Rotation lift) {
        double mostKg = Math.max(lift.fuelAtHookKg(), step.fuelEndKg());
        if (!keeps(burden(0, lift.massOnHookKg()), mostKg, step.fuelEndKg())) {
            tell(first(lift), LOADED);
        }
    }

    /**
     * With what was aboard at most, and at least, though the gauge reads either way. Where fuel was taken that no step
     * tells, a step that is begun ends with more of it than it began.
     */
    private void look(Step step, Burden burden, String subject, String with) {
        double mostKg = Math.max(step.fuelStartKg(), step.fuelEndKg());
        if (!keeps(burden, mostKg, Math.min(step.fuelStartKg(), step.fuelEndKg()))) {
            tell(subject, with);
        }
    }

    private boolean keeps(Burden burden, double mostKg, double leastKg) {
        double spreadKg = machine.fuelGaugeSpreadKg();
        return CentreOfGravity.of(machine.balance().orElseThrow(), 0)
                .worst(burden, mostKg + spreadKg, Math.max(0, leastKg - spreadKg))
                .fold(
                        (worst, said) -> worst.standing() != CentreOfGravity.Standing.OUTSIDE,
                        said -> false);
    }

    private void tell(String subject, String with) {
        all.putIfAbsent(
                with + subject,
                Finding.of(
                        FindingCode.CENTRE_OF_GRAVITY,
                        Severity.STOP,
                        subject,
                        "machine",
                        "The centre of gravity leaves its limits at some fuel of a flight that is planned "
                                + with
                                + ". Do not fly it so: other seats, fuel or load."));
    }
}
