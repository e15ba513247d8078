package underhook.planner.verify;

import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.WeatherHour;
import underhook.core.job.Zone;
import underhook.core.plan.Leg;

/**
 * What was found of single legs and hovers over one ground, by all that the finding hangs on.
 *
 * <p>The next plan of the same day mostly flies the same legs at another time. What a check found of a leg
 * holds for the same leg again, good or bad; everything else of a plan is checked anew. It holds for a job
 * with other loads or other hours of weather too: those that a check looks at are part of what it is asked.
 * Not safe for threads.
 */
final class Proofs {
    /** Several days' legs and hovers; the ones not asked for longest are forgotten. */
    private static final int KEPT = 12_000;

    private final Job job;
    private final Ground ground;
    private final Surroundings around;
    private final Kept<Asked, Ledger> known = new Kept<>(KEPT);
    private final Kept<Hauled, Haul> hauls = new Kept<>(KEPT);

    /** A leg with what hangs there: the same for the same in any plan, so that its many figures are compared once. */
    static final class Haul {
        private Haul() {}
    }

    private record Hauled(
            Leg leg,
            List<Load> loads,
            double lineLengthM,
            double ballastKg,
            List<String> inForce) {}

    /**
     * One check of one thing. Figures are compared bit by bit, which is meant: another figure is another
     * thing.
     *
     * @param check which check
     * @param about all that it looks at besides the ground and what {@link #areOf} compares: loads as the job
     *     has them, and the hours of the forecast that count, among it
     */
    record Asked(Class<?> check, List<?> about) {
        Asked {
            about = List.copyOf(about);
        }

        /** A check of one leg with what hangs there, that asks for no wind. */
        static Asked of(Class<?> check, Haul haul) {
            return new Asked(check, List.of(haul));
        }

        /** A check of one leg with what hangs there in the air of some hours, whenever in the day they are. */
        static Asked of(Class<?> check, Haul haul, List<List<WeatherHour>> hours) {
            return new Asked(check, List.of(haul, hours.stream().map(Asked::airs).toList()));
        }

        private static List<WeatherHour> airs(List<WeatherHour> rows) {
            return rows.stream()
                    .map(
                            row ->
                                    new WeatherHour(
                                            Instant.EPOCH,
                                            row.qnhPa(),
                                            row.temperatureK(),
                                            row.windFromTrueRad(),
                                            row.windMPerS(),
                                            row.gustMPerS(),
                                            ""))
                    .toList();
        }
    }

    Proofs(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
        this.around = new Surroundings(job, ground);
    }

    Surroundings around() {
        return around;
    }

    Haul haul(Flight flight) {
        List<String> inForce =
                job.zones().stream()
                        .filter(zone -> job.isInForce(zone, flight.from(), flight.until()))
                        .map(Zone::id)
                        .toList();
        return hauls.get(
                new Hauled(
                        flight.leg(),
                        flight.loads(),
                        flight.step().lineLengthM(),
                        flight.ballastKg(),
                        inForce),
                unused -> new Haul());
    }

    /**
     * Whether they are about this ground and this job, other loads and hours of weather aside. The strongest
     * gust and how the air changes with height hold for all hours.
     */
    @SuppressWarnings("ReferenceEquality")
    boolean areOf(Job otherJob, Ground otherGround) {
        if (ground != otherGround) {
            return false;
        }
        return job == otherJob
                || (air(job).equals(air(otherJob))
                        && job.withLoads(otherJob.loads())
                                .withWeather(otherJob.weather())
                                .equals(otherJob));
    }

    private static List<Double> air(Job of) {
        double gust =
                of.weather().hours().stream().mapToDouble(WeatherHour::gustMPerS).max().orElse(0);
        return List.of(gust, of.weather().lapseKPerM(), of.weather().referenceElevationAmslM());
    }

    /**
     * Enters what a check of one leg finds, or found before.
     *
     * @param check enters all it finds into the ledger handed to it and nowhere else
     */
    void enter(Asked asked, Consumer<Ledger> check, Ledger ledger) {
        ledger.add(
                known.get(
                        asked,
                        unused -> {
                            Ledger found = new Ledger();
                            check.accept(found);
                            return found;
                        }));
    }
}
