package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/** The way in for another device: a real browser, the secret typed by hand. */
@Tag("slow")
class EntranceIT {
    private static final String SECRET = "told by mouth in the morning";

    @TempDir static Path folder;

    @Test
    void whoever_types_the_secret_comes_to_the_day_and_finds_its_code_for_the_others()
            throws Exception {
        Underhook underhook = new Underhook(new Settings(folder.resolve("home"), "underhook test"));
        try (Desk desk = underhook.desk();
                PlanRuns runs = underhook.planRuns();
                DeskServer server =
                        DeskServer.start(
                                new DeskServer.Desktop(desk, runs, "underhook test"),
                                new DeskServer.Where(0, Optional.of(SECRET)));
                Chromium page = new Chromium(folder.resolve("browser"))) {
            String day = "day/" + desk.createDemo("Entered").id();

            page.open(server.address().resolve(day));
            enter(page, "a guess");
            page.waitUntil("it says no", it -> it.says("That is not the secret."));
            page.open(server.address().resolve(day));
            enter(page, SECRET);

            page.waitUntil("the day is there", it -> it.says("Other devices"));
            List<String> others =
                    server.networkAddresses().stream()
                            .map(address -> address.resolve(day))
                            .map(URI::toString)
                            .toList();
            assertThat(others).isNotEmpty();
            page.waitUntil(
                    "each address has its code",
                    it -> it.find("figure svg.code").size() == others.size());
            for (String address : others) {
                assertThat(page.says(address)).as(address).isTrue();
            }
        }
    }

    private static void enter(Chromium page, String secret) {
        page.waitFor("input[name=secret]").sendKeys(secret);
        page.press("Enter");
    }
}
