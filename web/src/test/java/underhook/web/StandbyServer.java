package underhook.web;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/** A server in a process of its own that opens its data folder when it is told to, until it is killed. */
final class StandbyServer {
    private StandbyServer() {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
        Underhook underhook = new Underhook(new Settings(Path.of(arguments[0]), "underhook test"));
        BufferedReader told =
                new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        if (told.readLine() == null) {
            return;
        }
        try (Desk desk = underhook.desk();
                PlanRuns runs = underhook.planRuns();
                DeskServer server =
                        DeskServer.start(
                                new DeskServer.Desktop(desk, runs, "underhook test"),
                                DeskServer.Where.here(0))) {
            System.out.println(server.address() + " " + server.token());
            Thread.currentThread().join();
        }
    }
}
