package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.web.Browser.Answer;

/** A run at the desk that somebody stops. */
@Tag("slow")
class DeskStoppedIT {
    @TempDir Path data;

    @Test
    void keeps_the_best_day_so_far_and_nothing_where_there_is_none() throws Exception {
        Underhook underhook = new Underhook(new Settings(data.resolve("home"), "underhook test"));
        try (Desk desk = underhook.desk();
                PlanRuns runs = underhook.planRuns();
                DeskServer server =
                        DeskServer.start(
                                new DeskServer.Desktop(desk, runs, "underhook test"),
                                DeskServer.Where.here(0))) {
            Browser browser = new Browser(server.address(), server.token());
            Answer made = browser.send("POST", "/api/jobs", "{\"name\":\"Day\",\"from\":\"demo\"}");
            String at = "/api/jobs/" + made.text("id");
            URI events = server.address().resolve(at + "/events");

            assertThat(stoppedAt("finding the ways", browser, at, events))
                    .startsWith("event: failed")
                    .contains("Stopped before there was a day.");
            assertThat(browser.get(at).json().path("plan").isNull()).isTrue();

            assertThat(stoppedAt("searching the order of the day", browser, at, events))
                    .startsWith("event: planned");
            JsonNode plan = browser.get(at + "/plan").json();
            assertThat(plan.path("summary").path("cutShort").asBoolean(false)).isTrue();
            assertThat(plan.path("summary").path("rotations").asInt(0)).isGreaterThan(20);
            assertThat(plan.path("verifier").path("violations").isEmpty()).isTrue();
        }
    }

    /** Plans, stops once it does something; the last event. */
    private static String stoppedAt(String doing, Browser browser, String at, URI events)
            throws Exception {
        try (BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(
                                events.toURL().openStream(), StandardCharsets.UTF_8))) {
            String line = lines.readLine();
            assertThat(browser.send("POST", at + "/plan", "{\"seconds\":600}").status())
                    .isEqualTo(202);
            while (line != null && !line.contains(doing)) {
                line = lines.readLine();
            }
            assertThat(browser.send("POST", at + "/plan/stop", "{}").status()).isEqualTo(200);
            while (line != null && !line.matches("event: (planned|failed)")) {
                line = lines.readLine();
            }
            return line + "\n" + lines.readLine();
        }
    }
}
