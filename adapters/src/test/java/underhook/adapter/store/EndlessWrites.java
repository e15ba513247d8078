package underhook.adapter.store;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Map;
import java.util.Set;
import underhook.app.port.Content;
import underhook.app.port.KeptJob;
import underhook.app.port.KeptJob.Change;
import underhook.app.port.KeptJob.Revision;

/** A process of its own that changes a job and says so after each change, until it is killed. */
final class EndlessWrites {
    private EndlessWrites() {}

    public static void main(String[] arguments) throws IOException {
        SqliteJobStore store = new SqliteJobStore(Path.of(arguments[0]), "somebody");
        try (KeptJob job =
                store.list().contains("day") ? store.open("day") : store.create("day", "day")) {
            long head = job.findHead().map(Revision::id).orElse(0L);
            while (head < Long.MAX_VALUE) {
                Content text = Content.of("state " + (head + 1) + "\n" + "x".repeat(20_000));
                head =
                        job.add(
                                        new Change(
                                                head,
                                                Instant.EPOCH,
                                                "change",
                                                Map.of("loads.csv", text),
                                                Set.of()))
                                .id();
                System.out.println(head);
            }
        }
    }
}
