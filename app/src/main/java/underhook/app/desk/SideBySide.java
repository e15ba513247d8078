package underhook.app.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import underhook.app.PlanDay;
import underhook.app.compare.Alternative;
import underhook.app.compare.CompareDays;
import underhook.app.port.ReadJob;

/**
 * Keeps the ways in which a job could be done and those of their days that were worked out, until the job changes.
 * Safe for threads; one day at a time.
 */
public final class SideBySide {
    private static final Duration CEILING = Duration.ofMinutes(3);

    private final Map<String, Known> known = new ConcurrentHashMap<>();
    private final Map<String, AtomicBoolean> stops = new ConcurrentHashMap<>();

    /** What is known of one head. */
    private record Known(long head, List<Alternative> ways, Map<Integer, CompareDays.Row> rows) {}

    /**
     * One way.
     *
     * @param row empty until it was worked out
     */
    public record Offer(Alternative way, Optional<CompareDays.Row> row) {}

    /** All ways of a job as its files are now. */
    public List<Offer> list(DeskJob job) throws IOException {
        Known now = now(job);
        List<Offer> offers = new ArrayList<>();
        for (int k = 0; k < now.ways().size(); k++) {
            offers.add(new Offer(now.ways().get(k), Optional.ofNullable(now.rows().get(k))));
        }
        return offers;
    }

    /**
     * Works one out, unless it is known.
     *
     * @throws IllegalArgumentException when there is no such way
     */
    public synchronized void workOut(DeskJob job, int number) throws IOException {
        Known now = now(job);
        if (number < 0 || number >= now.ways().size()) {
            throw new IllegalArgumentException("There is no way " + number + ".");
        }
        if (now.rows().containsKey(number)) {
            return;
        }
        AtomicBoolean stop = new AtomicBoolean();
        stops.put(job.id(), stop);
        Path nowhere = job.folder(now.head());
        PlanDay.Request request = new PlanDay.Request(nowhere, nowhere, 1, CEILING, stop::get);
        try {
            Alternative way = now.ways().get(number);
            CompareDays.Row row =
                    new CompareDays(job.planDay())
                            .plan(way, request, (doing, done) -> tell(job, now, doing, done));
            now.rows().put(number, row);
        } finally {
            stops.remove(job.id(), stop);
        }
    }

    /** Ends the search that is going on; the best so far counts and is told to be cut short. */
    public void stop(DeskJob job) {
        Optional.ofNullable(stops.get(job.id())).ifPresent(stop -> stop.set(true));
    }

    private static void tell(DeskJob job, Known now, String doing, double doneFraction) {
        job.events()
                .tell(
                        new DeskEvent(
                                DeskEvent.Kind.ASKING, job.id(), now.head(), doing, doneFraction));
    }

    private Known now(DeskJob job) throws IOException {
        long head = job.head().id();
        Known there = known.get(job.id());
        if (there == null || there.head() != head) {
            ReadJob read =
                    job.read()
                            .job()
                            .orElseThrow(() -> new IllegalArgumentException("The job has faults."));
            // Each holds a whole job with its terrain.
            known.clear();
            there = new Known(head, Alternative.of(read), new ConcurrentHashMap<>());
            known.put(job.id(), there);
        }
        return there;
    }
}
