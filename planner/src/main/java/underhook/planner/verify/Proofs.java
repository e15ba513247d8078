package underhook.planner.verify;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Leg;

/**
 * What was found of single legs of one job over one ground, by all that the finding hangs on.
 *
 * <p>The next plan of the same job mostly flies the same legs at another time. What a check found of a leg
 * holds for the same leg again, good or bad; everything else of a plan is checked anew. Not safe for threads.
 */
final class Proofs {
    /** Several days' legs; the ones not asked for longest are forgotten. */
    private static final int KEPT = 4000;

    private final Job job;
    private final Ground ground;
    private final Map<Asked, Ledger> known =
            new LinkedHashMap<>(16, 0.75f, true) {
                private static final long serialVersionUID = 1;

                @Override
                protected boolean removeEldestEntry(Map.Entry<Asked, Ledger> eldest) {
                    return size() > KEPT;
                }
            };

    /**
     * One check of one leg. Its figures are compared bit by bit, which is meant: another figure is another
     * leg.
     *
     * @param check which check
     * @param leg the leg as written, with its path
     * @param lineM length of the line on the hook, m
     * @param ballastKg ballast with the loads, kg
     * @param hours hours of the forecast that count for it; none where no wind is asked for
     */
    record Asked(
            Class<?> check,
            Leg leg,
            double lineM,
            double ballastKg,
            List<List<WeatherHour>> hours) {
        Asked {
            hours = List.copyOf(hours);
        }

        /** A check that asks for no wind. */
        static Asked of(Class<?> check, Flight flight) {
            return new Asked(check, flight.leg(), flight.step().lineLengthM(), 0, List.of());
        }
    }

    Proofs(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
    }

    /** Whether they are about this very job and ground: to compare all they hold would take longer. */
    @SuppressWarnings("ReferenceEquality")
    boolean areOf(Job otherJob, Ground otherGround) {
        return job == otherJob && ground == otherGround;
    }

    /**
     * Enters what a check of one leg finds, or found before.
     *
     * @param check enters all it finds into the ledger handed to it and nowhere else
     */
    void enter(Asked asked, Consumer<Ledger> check, Ledger ledger) {
        Ledger found = known.get(asked);
        if (found == null) {
            found = new Ledger();
            check.accept(found);
            known.put(asked, found);
        }
        ledger.add(found);
    }
}
