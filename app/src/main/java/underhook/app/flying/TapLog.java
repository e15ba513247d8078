package underhook.app.flying;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentLinkedQueue;
import underhook.app.port.KeptJob;
import underhook.app.port.KeptTap;
import underhook.core.finding.Finding;
import underhook.core.flown.Tap;
import underhook.core.flown.TapJudge;
import underhook.core.flown.TrainedHands;

/**
 * Takes taps into a job's log. Safe for threads.
 *
 * <p>Taps that come at the same time from different devices go to the disk together, so that a hundred
 * devices do not wait for a hundred turns of the disk.
 */
final class TapLog {
    /** What a device hands in. */
    record Given(Tap tap, String role, Instant sentAt, boolean anyway) {}

    /**
     * What became of one.
     *
     * @param row where it stands; empty when it was refused
     * @param refusal why the day does not allow it; a tap that was kept anyway has one too
     * @param differs whether the log holds something else under its id
     */
    record Taken(String id, Optional<KeptTap> row, Optional<Finding> refusal, boolean differs) {}

    /** What the day allows; asked for only when there is something to judge. */
    interface Hands {
        TrainedHands get() throws IOException;
    }

    /** How it came in, as the server knows it. */
    record Stamp(Instant receivedAt, String plan) {}

    private record Waiting(List<Given> given, Stamp stamp, CompletableFuture<List<Taken>> done) {}

    private final KeptJob kept;
    private final Hands hands;
    private final ConcurrentLinkedQueue<Waiting> queue = new ConcurrentLinkedQueue<>();
    private final Object disk = new Object();
    private volatile List<KeptTap> rows;
    private final Map<String, KeptTap> byId = new HashMap<>();
    private Optional<Bench> bench = Optional.empty();

    /** A judge that knows the whole log as it counts, and by which hands he judges. */
    private record Bench(TapJudge judge, DeviceClocks clocks, TrainedHands hands) {}

    TapLog(KeptJob kept, Hands hands) throws IOException {
        this.kept = kept;
        this.hands = hands;
        this.rows = List.copyOf(kept.listTaps());
        rows.forEach(row -> byId.put(row.tap().id(), row));
    }

    /** The log as it is on the disk. */
    List<KeptTap> rows() {
        return rows;
    }

    /** Takes taps in, in their order; whatever is kept is on the disk when this returns. */
    List<Taken> take(List<Given> given, Stamp stamp) throws IOException {
        Waiting mine = new Waiting(given, stamp, new CompletableFuture<>());
        queue.add(mine);
        synchronized (disk) {
            if (!mine.done().isDone()) {
                takeAllThatWait();
            }
        }
        try {
            return mine.done().join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof IOException disk) {
                throw new IOException(disk.getMessage(), disk);
            }
            throw failed;
        }
    }

    private void takeAllThatWait() {
        List<Waiting> turn = new ArrayList<>();
        for (Waiting next = queue.poll(); next != null; next = queue.poll()) {
            turn.add(next);
        }
        try {
            List<List<Taken>> answers = keep(turn);
            for (int i = 0; i < turn.size(); i++) {
                turn.get(i).done().complete(answers.get(i));
            }
        } catch (IOException | RuntimeException failed) {
            turn.forEach(one -> one.done().completeExceptionally(failed));
        }
    }

    private List<List<Taken>> keep(List<Waiting> turn) throws IOException {
        Map<String, KeptTap.Given> fresh = new LinkedHashMap<>();
        Map<String, Finding> refusals = new HashMap<>();
        for (Waiting waiting : turn) {
            for (Given given : waiting.given()) {
                judge(given, waiting.stamp(), fresh, refusals);
            }
        }
        boolean isKept = false;
        List<KeptTap> added;
        try {
            added = fresh.isEmpty() ? List.of() : kept.addTaps(List.copyOf(fresh.values()));
            isKept = true;
        } finally {
            // Judged as if they were there, but the disk did not take them.
            bench = isKept ? bench : Optional.empty();
        }
        if (!added.isEmpty()) {
            List<KeptTap> all = new ArrayList<>(rows);
            for (KeptTap row : added) {
                byId.put(row.tap().id(), row);
                all.add(row);
            }
            rows = List.copyOf(all);
        }
        List<List<Taken>> answers = new ArrayList<>();
        for (Waiting waiting : turn) {
            answers.add(waiting.given().stream().map(one -> taken(one, refusals)).toList());
        }
        return answers;
    }

    private void judge(
            Given given,
            Stamp stamp,
            Map<String, KeptTap.Given> fresh,
            Map<String, Finding> refusals)
            throws IOException {
        String id = given.tap().id();
        if (byId.containsKey(id) || fresh.containsKey(id)) {
            return;
        }
        KeptTap.Arrival arrival =
                new KeptTap.Arrival(
                        given.role(),
                        given.sentAt(),
                        stamp.receivedAt(),
                        given.anyway(),
                        stamp.plan());
        if (!given.anyway()) {
            Bench now = bench(fresh);
            Optional<Finding> no = now.judge().refusal(now.clocks().counted(given.tap(), arrival));
            if (no.isPresent()) {
                refusals.put(id, no.get());
                return;
            }
        }
        bench.ifPresent(one -> one.judge().add(one.clocks().take(given.tap(), arrival)));
        fresh.put(id, new KeptTap.Given(given.tap(), arrival));
    }

    private Bench bench(Map<String, KeptTap.Given> fresh) throws IOException {
        TrainedHands now = hands.get();
        if (bench.filter(one -> one.hands().equals(now)).isEmpty()) {
            DeviceClocks clocks = new DeviceClocks();
            List<Tap> known = new ArrayList<>(rows.size() + fresh.size());
            rows.forEach(row -> known.add(clocks.take(row.tap(), row.arrival())));
            fresh.values().forEach(one -> known.add(clocks.take(one.tap(), one.arrival())));
            bench = Optional.of(new Bench(new TapJudge(known, now), clocks, now));
        }
        return bench.orElseThrow();
    }

    private Taken taken(Given given, Map<String, Finding> refusals) {
        String id = given.tap().id();
        Optional<KeptTap> row = Optional.ofNullable(byId.get(id));
        boolean differs = row.filter(one -> !one.tap().equals(given.tap())).isPresent();
        Optional<Finding> refusal =
                row.isPresent() ? Optional.empty() : Optional.ofNullable(refusals.get(id));
        return new Taken(id, row, refusal, differs);
    }
}
