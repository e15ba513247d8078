package underhook.app.port;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.core.billing.Quote;
import underhook.core.billing.Tariff;
import underhook.core.flown.PartLife;
import underhook.core.flown.Tap;
import underhook.core.flown.TrainedHands;
import underhook.core.job.Job;
import underhook.core.learn.Figure;

/** Reads what is needed to close a day. */
public interface EveningFiles {
    /**
     * What the operator keeps beside the plans.
     *
     * @param hands who may hook
     * @param tariff what the customer agreed to
     * @param parts lives that are counted, as they stood before the day
     * @param offer what offers assume
     */
    record Books(
            TrainedHands hands,
            Optional<Tariff> tariff,
            List<PartLife> parts,
            Optional<Offer> offer) {
        /** Nothing is kept. */
        public static final Books NONE =
                new Books(TrainedHands.UNNAMED, Optional.empty(), List.of(), Optional.empty());

        public Books {
            parts = List.copyOf(parts);
        }
    }

    /**
     * What offers assume.
     *
     * @param source where the chance of a flyable day is from
     */
    record Offer(Quote.Terms terms, String source) {}

    /**
     * What was tapped.
     *
     * @param taps at the times at which they count
     * @param deviceAt what the device's clock said, by the id of a tap that counts at another time
     */
    record Tapped(List<Tap> taps, Map<String, Instant> deviceAt) {
        /** Nothing. */
        public static final Tapped NONE = new Tapped(List.of(), Map.of());

        public Tapped {
            taps = List.copyOf(taps);
            deviceAt = Map.copyOf(deviceAt);
        }
    }

    /** What earlier days taught, from a learned.csv. */
    Reading<List<Figure>> readFigures(Path file);

    /**
     * A table of taps; times are of the job's day and zone.
     *
     * @param now no tap was made later; empty where the day is over
     */
    Reading<Tapped> readTaps(Path file, Job job, Optional<Instant> now);

    /** Taps as the table that {@link #readTaps} reads, times with the offset of the job's zone. */
    Content tapsTable(Tapped tapped, Job job);

    Reading<Books> readBooks(Path file);

    /** What was flown on earlier days, from their samples.csv. */
    Reading<List<FlownSample>> readSamples(Path file);
}
