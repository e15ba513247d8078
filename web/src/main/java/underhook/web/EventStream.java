package underhook.web;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DeskEvent;
import underhook.app.desk.DeskEvents;

/** Tells one browser what happens to one job, until it goes away. */
final class EventStream {
    private static final int WAITING = 200;
    private static final int BEAT_S = 15;

    private final BlockingQueue<DeskEvent> waiting = new ArrayBlockingQueue<>(WAITING);
    private final String job;

    EventStream(String job) {
        this.job = job;
    }

    /** Runs until the browser has gone; what it is told first is where the job stands. */
    void run(DeskEvents events, ObjectNode hello, OutputStream out) throws IOException {
        DeskEvents.Listening listening = events.listen(this::hear);
        try (out) {
            write(out, "hello", hello);
            while (!Thread.currentThread().isInterrupted()) {
                DeskEvent event = waiting.poll(BEAT_S, TimeUnit.SECONDS);
                if (event == null) {
                    // Only a write shows that nobody reads any more.
                    out.write(": still here\n\n".getBytes(StandardCharsets.UTF_8));
                    out.flush();
                } else {
                    write(out, PlanJson.word(event.kind()), json(event));
                }
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } finally {
            listening.close();
        }
    }

    private void hear(DeskEvent event) {
        if (!event.job().equals(job)) {
            return;
        }
        // A browser that reads too slowly misses progress, never the end of a run.
        while (!waiting.offer(event)) {
            waiting.poll();
        }
    }

    private static ObjectNode json(DeskEvent event) {
        return Json.object()
                .put("doing", event.text())
                .put("fraction", event.doneFraction())
                .put("revision", event.revision());
    }

    private static void write(OutputStream out, String name, ObjectNode data) throws IOException {
        String text = "event: " + name + "\ndata: " + JsonMapper.shared().writeValueAsString(data);
        out.write((text + "\n\n").getBytes(StandardCharsets.UTF_8));
        out.flush();
    }
}
