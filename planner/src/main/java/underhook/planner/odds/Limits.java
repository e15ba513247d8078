package underhook.planner.odds;

import java.util.List;
import java.util.Optional;
import underhook.core.crew.Daylight;
import underhook.core.job.Job;
import underhook.core.job.Machine;
import underhook.core.job.Rules;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** Whether a drawn day ends before the wind, the dark and the duty limit, and on the planned fuel. */
final class Limits {
    /** Kept back from sunrise and sunset, which are good to about a minute, s. */
    private static final double SUN_S = 60;

    private final Rules rules;
    private final Machine machine;
    private final List<Step> steps;
    private final boolean[] standing;
    private final boolean[] standsBehind;
    private final double lightFromS;
    private final double lightUntilS;
    private final double dutyUntilS;
    private final double forecastUntilS;

    Limits(Job job, Plan plan, Clock clock) {
        this.rules = job.rules();
        this.machine = job.machine();
        this.steps = plan.steps();
        this.standing = new boolean[steps.size()];
        this.standsBehind = new boolean[steps.size()];
        for (int i = 0; i < standing.length; i++) {
            standing[i] = job.getPlace(steps.get(i).from()).standing();
            standsBehind[i] = job.getPlace(steps.get(i).to()).standing();
        }
        Optional<Daylight> light = Daylight.find(job.origin(), rules.duty().from());
        this.lightFromS =
                light.map(day -> clock.timeS(day.from()) + SUN_S).orElse(Double.POSITIVE_INFINITY);
        this.lightUntilS =
                light.map(
                                day ->
                                        clock.timeS(day.until())
                                                - SUN_S
                                                - rules.duty().dayEndBeforeSunsetS())
                        .orElse(Double.NEGATIVE_INFINITY);
        this.dutyUntilS = rules.duty().longestS();
        this.forecastUntilS = clock.timeS(job.weather().until());
    }

    /** When the day ends at the latest, whatever the wind does, s. */
    double dayEndS() {
        return Math.min(lightUntilS, dutyUntilS);
    }

    double lightUntilS() {
        return lightUntilS;
    }

    double dutyUntilS() {
        return dutyUntilS;
    }

    double forecastUntilS() {
        return forecastUntilS;
    }

    List<Step> steps() {
        return steps;
    }

    Machine machine() {
        return machine;
    }

    Rules.Duty duty() {
        return rules.duty();
    }

    /** Whether the machine may stand where a step begins. */
    boolean standsBefore(int step) {
        return standing[step];
    }

    double lightFromS() {
        return lightFromS;
    }

    /** Number of the step, this one or a later one, behind which the machine may stand; the last one where none is. */
    int nextStand(int step) {
        int next = step;
        while (next + 1 < steps.size() && !standsBehind[next]) {
            next++;
        }
        return next;
    }

    static boolean flies(Step step) {
        return step.kind() == StepKind.ROTATION
                || step.kind() == StepKind.POSITION
                || step.kind() == StepKind.CREW_MOVE;
    }

    double reserveKg() {
        return machine.reserveS() * machine.burnKgPerS() + machine.fuelGaugeSpreadKg();
    }
}
