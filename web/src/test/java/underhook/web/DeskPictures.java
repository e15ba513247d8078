package underhook.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/**
 * Makes the pictures of the manual: the demo job on every screen of the desk. Run it with the folder as its
 * only argument, {@code docs/pictures}; the same program gives the same pictures but for the time of the plan.
 */
public final class DeskPictures {
    private static final String JOB = "demo-day";

    /** A screen: its name, where it lies, and what is done there first. */
    private record Shot(String name, String place, String script) {}

    private static final List<Shot> SHOTS =
            List.of(
                    new Shot("day", "panel=day&lift=4", ""),
                    new Shot(
                            "map",
                            "panel=day&lift=4",
                            "document.querySelector('.beside > .acts button').click(); document.querySelector('.mapkey').open = true"),
                    new Shot("how", "panel=day&lift=4", "document.querySelector('.limits .number').click()"),
                    new Shot(
                            "what-if",
                            "panel=day&lift=4",
                            "document.querySelectorAll('.sheet > .acts button')[1].click()"),
                    new Shot("findings", "panel=findings", ""),
                    new Shot("lanes", "panel=lanes&lift=4", ""),
                    new Shot(
                            "tables",
                            "panel=tables",
                            "[...document.querySelectorAll('.filepick button')].find((one) => one.textContent.startsWith('loads')).click()"),
                    new Shot("files", "panel=files", ""),
                    new Shot("versions", "panel=versions", ""),
                    new Shot("papers", "panel=papers", ""),
                    new Shot("look", "panel=look&lift=4", ""),
                    new Shot("reader", "panel=reader", ""));

    private static final String READY =
            """
            return !document.querySelector('.waiting') && document.querySelector('header h1').textContent !== 'Underhook'
              && (!document.querySelector('#map:not([hidden])')?.checkVisibility() || document.getElementById('map').dataset.marks > 0)
              && (!document.getElementById('look') || document.querySelector('#look canvas') !== null);
            """;

    private final Chromium page;
    private final DeskServer server;
    private final Path folder;

    private DeskPictures(Chromium page, DeskServer server, Path folder) {
        this.page = page;
        this.server = server;
        this.folder = folder;
    }

    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        Path home = Files.createTempDirectory("pictures");
        Underhook underhook = new Underhook(new Settings(home.resolve("home"), "underhook"));
        try (Desk desk = underhook.desk();
                PlanRuns runs = underhook.planRuns();
                DeskServer server =
                        DeskServer.start(
                                new DeskServer.Desktop(desk, runs, "underhook"),
                                DeskServer.Where.here(0))) {
            try (Chromium page = new Chromium(home.resolve("planning"))) {
                plan(page, server);
            }
            for (boolean isNight : List.of(false, true)) {
                try (Chromium page = new Chromium(home.resolve("profile" + isNight))) {
                    new DeskPictures(page, server, folder).all(isNight ? "night" : "day");
                }
            }
        }
    }

    private static void plan(Chromium page, DeskServer server) {
        page.look(1366, 768, false);
        page.open(server.address());
        page.press("Start from the demo day");
        page.waitUntil("the demo job is open", it -> it.says("Vessenholt"));
        page.press("Plan the day");
        page.waitFor("dialog form button").click();
        page.waitUntil("planning", it -> !it.find(".progress").isEmpty());
        page.waitUntil("planned", it -> !it.find(".lift").isEmpty());
    }

    private void all(String theme) throws IOException {
        // A page of the same server that keeps nothing itself.
        page.open(server.address().resolve("/enter"));
        page.run(
                "localStorage.setItem('underhook', JSON.stringify({ reader: { theme: arguments[0] } }))",
                theme);
        page.look(1366, 768, false);
        for (Shot shot : SHOTS) {
            take(shot, "laptop-" + theme);
        }
        page.look(820, 1180, true);
        for (Shot shot : List.of(SHOTS.get(0), SHOTS.get(4), SHOTS.get(5))) {
            take(shot, "tablet-" + theme);
        }
        page.look(390, 844, true);
        for (Shot shot : List.of(SHOTS.get(0), SHOTS.get(4), SHOTS.get(9))) {
            take(shot, "phone-" + theme);
        }
    }

    private void take(Shot shot, String screen) throws IOException {
        page.open(server.address().resolve("/enter"));
        page.open(server.address().resolve("/#job=" + JOB + "&" + shot.place()));
        page.waitUntil(shot.name(), it -> Boolean.TRUE.equals(it.run(READY)));
        page.run(shot.script());
        page.run(
                "return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 400))))");
        Files.write(
                folder.resolve(shot.name() + "-" + screen + ".png"), SmallPng.of(page.picture()));
    }
}
