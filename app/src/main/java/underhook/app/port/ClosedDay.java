package underhook.app.port;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.billing.Invoice;
import underhook.core.finding.Finding;
import underhook.core.flown.FlownDay;
import underhook.core.flown.PartLife;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.learn.Credibility;
import underhook.core.learn.Measure;
import underhook.core.plan.Plan;
import underhook.core.track.Visit;

/**
 * A day that was flown, beside its plan.
 *
 * @param lifts one line for each load of the plan or the log
 * @param parts each counted part after the day
 * @param invoice where a tariff was given
 * @param learned estimates by quantity
 * @param samples what they were learned from on this day
 * @param unmatched stays of the track that belong to no planned lift
 * @param zones how long the machine was over each zone; empty without a track
 * @param findings what must be said of the day
 */
public record ClosedDay(
        ReadJob readJob,
        Plan plan,
        FlownDay flown,
        List<LiftLine> lifts,
        List<PartLine> parts,
        Optional<Invoice> invoice,
        Map<Measure, Credibility> learned,
        List<FlownSample> samples,
        List<Visit> unmatched,
        List<ZoneLine> zones,
        List<Finding> findings) {
    /** Where a time is from. */
    public enum Told {
        /** Somebody tapped it. */
        TAPPED,
        /** Guessed from the track. */
        TRACK,
        /** Nobody knows: not flown, as far as is known. */
        NOT_FLOWN
    }

    /**
     * One load, planned and flown.
     *
     * @param plannedHookedAt empty when it was left out of the plan
     * @param takenOver whether the plan is a new order that has it with the times that were told by then: nothing
     *     that was planned
     * @param hookedAt when it was hooked; a guess where told by the track
     * @param doneAt when it stood and was called free; a guess where told by the track
     * @param listedKg mass as listed, kg
     * @param readKg mass on the load cell when it hung alone, kg
     * @param hoverS time over the place as the track shows it, s
     * @param givenUp tries that were given up, the first first
     */
    public record LiftLine(
            LoadId load,
            String kind,
            PlaceId from,
            PlaceId to,
            OptionalDouble lineM,
            Optional<Instant> plannedHookedAt,
            Optional<Instant> plannedDoneAt,
            Told told,
            boolean takenOver,
            Optional<Instant> hookedAt,
            Optional<Instant> doneAt,
            OptionalDouble listedKg,
            OptionalDouble readKg,
            OptionalDouble hoverS,
            List<GivenUp> givenUp) {
        /**
         * A try that was given up.
         *
         * @param readKg mass on the load cell when it hung alone, kg
         */
        public record GivenUp(Instant hookedAt, OptionalDouble readKg) {}

        public LiftLine {
            givenUp = List.copyOf(givenUp);
        }

        public boolean isGivenUp() {
            return !givenUp.isEmpty();
        }

        /** How much later than planned it stood, negative when sooner; empty where nothing was planned. */
        public Optional<Duration> later() {
            return takenOver
                    ? Optional.empty()
                    : plannedDoneAt.flatMap(
                            planned -> doneAt.map(done -> Duration.between(planned, done)));
        }

        /** Whether it stands where it was to stand. */
        public boolean isDone() {
            return doneAt.isPresent();
        }

        /** What the customer still has to expect; empty when it stands. */
        public String whatIsLeft() {
            if (isDone()) {
                return "";
            }
            if (told == Told.TAPPED) {
                return "lifted; not set down and called free by two people";
            }
            return plannedHookedAt.isPresent() ? "planned, not flown" : "left out of the plan";
        }
    }

    /** A counted part, before and after. */
    public record PartLine(PartLife before, PartLife.After after) {}

    /**
     * A zone that was flown over or not.
     *
     * @param passes how often the track goes into it
     * @param insideS seconds inside, holes in the track not counted
     */
    public record ZoneLine(String zone, String name, int passes, double insideS) {}

    /** The job as it was planned. */
    public Job job() {
        return readJob.job();
    }

    public ClosedDay {
        zones = List.copyOf(zones);
        lifts = List.copyOf(lifts);
        parts = List.copyOf(parts);
        learned = Map.copyOf(learned);
        samples = List.copyOf(samples);
        unmatched = List.copyOf(unmatched);
        findings = List.copyOf(findings);
    }
}
