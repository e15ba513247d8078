package underhook.app.flying;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.flown.FlownDay;
import underhook.core.flown.FlownLift;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;

/**
 * How weighed loads compare with the list.
 *
 * @param count lifts that were weighed
 * @param meanRatio mean of weighed over listed
 * @param worstRatio largest of them
 */
public record Bias(int count, double meanRatio, double worstRatio) {
    /**
     * Of all lifts whose loads are listed with a mass; empty when none was weighed. Ballast that was planned
     * hangs under the load and in the reading.
     */
    static Optional<Bias> of(Job job, List<Rotation> planned, FlownDay flown) {
        int count = 0;
        double sum = 0;
        double worst = 0;
        for (FlownLift lift : flown.lifts()) {
            OptionalDouble listedKg = listedKg(job, lift);
            if (lift.massReadKg().isPresent() && listedKg.isPresent()) {
                double hangsKg = listedKg.getAsDouble() + ballastKg(planned, lift);
                double ratio = lift.massReadKg().getAsDouble() / hangsKg;
                count++;
                sum += ratio;
                worst = Math.max(worst, ratio);
            }
        }
        return count == 0 ? Optional.empty() : Optional.of(new Bias(count, sum / count, worst));
    }

    /** What a plan lifts. */
    static List<Rotation> rotations(Plan plan) {
        return plan.steps().stream().flatMap(step -> step.rotation().stream()).toList();
    }

    private static double ballastKg(List<Rotation> planned, FlownLift lift) {
        return planned.stream()
                .filter(rotation -> rotation.loads().equals(lift.loads()))
                .mapToDouble(Rotation::ballastKg)
                .sum();
    }

    /** Mass of a lift's loads as listed; empty when one of them is not. */
    static OptionalDouble listedKg(Job job, FlownLift lift) {
        double sumKg = 0;
        for (LoadId id : lift.loads()) {
            OptionalDouble massKg =
                    job.findLoad(id).map(Load::massKg).orElse(OptionalDouble.empty());
            if (massKg.isEmpty()) {
                return massKg;
            }
            sumKg += massKg.getAsDouble();
        }
        return OptionalDouble.of(sumKg);
    }

    /** What it means for a new order. */
    String words() {
        return String.format(
                Locale.ROOT,
                "loads not yet weighed count %.2f times as listed, as the %d weighed so far",
                factor(),
                count);
    }

    /** What the masses of loads not yet weighed must be multiplied with; never less than 1. */
    double factor() {
        return Math.max(1, meanRatio);
    }
}
