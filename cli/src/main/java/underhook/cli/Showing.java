package underhook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import underhook.app.PlanDay;
import underhook.app.port.Attribution;
import underhook.app.port.OutputWriter;
import underhook.web.Day;
import underhook.web.PlanServer;

/** Shows planned days until the program is stopped. */
final class Showing {
    static final String DEFAULT_PORT = "8465";

    private Showing() {}

    static Day day(PlanDay.Planned planned, Path folder) {
        OutputWriter.Output output = planned.output();
        List<String> attributions = new ArrayList<>(Attribution.lines(output.readJob().job()));
        Attribution.shareAlike(output.readJob().job()).ifPresent(attributions::add);
        return new Day(output.plan(), output.readJob().job().zone(), attributions, folder);
    }

    static void untilStopped(List<Day> days, int port, PrintWriter out) throws IOException {
        try (PlanServer server = PlanServer.start(days, port)) {
            out.println("Showing at " + server.address() + " until you press Ctrl-C.");
            Thread.currentThread().join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
