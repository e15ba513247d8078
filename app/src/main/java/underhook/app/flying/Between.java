package underhook.app.flying;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** What the machine does between one lift and the next: fuel, line, people, a move, a break. */
final class Between {
    /** A line is told to the tenth of a metre. */
    private static final double SAME_LINE_M = 0.05;

    /** Nobody taps these: they are over when what comes after them is. */
    private static final Set<StepKind> UNTAPPED = EnumSet.of(StepKind.POSITION, StepKind.BREAK);

    private Between() {}

    /**
     * What comes before a lift as planned. Waiting is no task.
     *
     * @param lift index of its step
     */
    static List<Step> before(List<Step> steps, int lift) {
        int from = lift;
        while (from > 0 && steps.get(from - 1).rotation().isEmpty()) {
            from--;
        }
        return steps.subList(from, lift).stream()
                .filter(step -> step.kind() != StepKind.WAIT)
                .toList();
    }

    /** What still comes before the next lift: less what was tapped since one planned before it was hooked. */
    static List<Step> stillBefore(List<Step> steps, LiftState next, FlownDay flown) {
        List<Step> left = new ArrayList<>(before(steps, next.lift().step()));
        // A lift that was given up, or passed over for a later one, asks for nothing anew.
        Set<LoadId> earlier =
                steps.subList(0, next.lift().step()).stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(rotation -> rotation.loads().stream())
                        .collect(Collectors.toSet());
        Instant since =
                flown.taps().stream()
                        .filter(tap -> tap.kind() == TapKind.HOOKED)
                        .filter(tap -> tap.loads().stream().anyMatch(earlier::contains))
                        .map(Tap::at)
                        .max(Instant::compareTo)
                        .orElse(Instant.MIN);
        flown.taps().stream()
                .filter(tap -> tap.at().isAfter(since))
                .forEach(tap -> takeOut(left, tap));
        return List.copyOf(left);
    }

    private static void takeOut(List<Step> left, Tap tap) {
        for (Step step : left) {
            if (isDoneBy(step, tap)) {
                List<Step> earlier = left.subList(0, left.indexOf(step));
                earlier.removeIf(
                        one ->
                                UNTAPPED.contains(one.kind())
                                        || (one.kind() == StepKind.LINE_CHANGE
                                                && step.kind() == StepKind.LINE_CHANGE));
                left.remove(step);
                return;
            }
        }
    }

    private static boolean isDoneBy(Step step, Tap tap) {
        return switch (step.kind()) {
            case REFUEL -> tap.kind() == TapKind.REFUELLED;
            case CREW_MOVE -> tap.kind() == TapKind.PEOPLE_OUT;
            case LINE_CHANGE ->
                    step.lineLengthM() == 0
                            ? tap.kind() == TapKind.LINE_OFF
                            : tap.kind() == TapKind.LINE_ON
                                    && Math.abs(
                                                    tap.amount().lengthM().orElse(0)
                                                            - step.lineLengthM())
                                            < SAME_LINE_M;
            case ROTATION, POSITION, BREAK, WAIT -> false;
        };
    }

    /**
     * Least fuel to hook a lift with: the reserve, and what the plan burns from there until the machine
     * stands where fuel is kept.
     *
     * @return kg aboard
     */
    static double leastFuelKg(List<Step> steps, LiftState lift, Job job) {
        double burnKg = 0;
        double kg = lift.lift().rotation().fuelAtHookKg();
        for (Step step : steps.subList(lift.lift().step(), steps.size())) {
            if (step.kind() == StepKind.REFUEL) {
                break;
            }
            burnKg += kg - step.fuelEndKg();
            kg = step.fuelEndKg();
            if (job.getPlace(step.to()).fuel()) {
                break;
            }
        }
        return job.machine().reserveS() * job.machine().burnKgPerS() + burnKg;
    }
}
