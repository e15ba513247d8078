package underhook.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.StringJoiner;
import tools.jackson.databind.JsonNode;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.web.DeskServer;

/**
 * The planning desk in a real Chromium: the first useful page against a page that holds one small picture, a
 * choice on the spine until the map shows it and the other way round against one empty frame, and the frames
 * while map and spine move against those of an empty page.
 */
final class PageMeasured implements Measured {
    private static final int ROUNDS = 9;
    private static final int CHOICES = 12;
    private static final int STARTS = 5;

    /** A person needs as long to see the address and open it. */
    private static final int READ_MS = 1500;

    private static final String LOADED =
            """
            new Promise((done) => { const look = () => { const one = performance.getEntriesByType('navigation')[0];
              one?.loadEventEnd > 0 ? done(one.loadEventEnd) : setTimeout(look, 5); }; look(); })
            """;
    private static final String USEFUL =
            """
            new Promise((done) => { const look = () => { const one = performance.getEntriesByName('useful')[0];
              one ? done(one.startTime) : setTimeout(look, 5); }; look(); })
            """;
    private static final String FRAME =
            "new Promise((done) => requestAnimationFrame((a) => requestAnimationFrame((b) => done(b - a))))";
    private static final String READY =
            """
            new Promise((done) => { const look = () => (document.getElementById('map')?.dataset.marks > 0 ? done(1) : setTimeout(look, 20)); look(); })
            """;

    /** Ten frames in a row without work and no part of a sheet on its way, as a person finds the page; 5 s at most. */
    private static final String RESTED =
            """
            new Promise((done) => { let calm = 0, last = performance.now(); const end = last + 5000;
              const step = (now) => { calm = now - last < 40 && !document.querySelector('.sheet .waiting') ? calm + 1 : 0; last = now;
                calm < 10 && now < end ? requestAnimationFrame(step) : done(1); };
              requestAnimationFrame(step); })
            """;

    /** From the press of a row until the frame after the one in which the map has drawn that lift. */
    private static final String ON_SPINE =
            """
            new Promise((done) => { const map = document.getElementById('map'), row = document.querySelector('button.row[data-lift="LIFT"]');
              const start = performance.now(), shown = () => done(performance.now() - start); row.click();
              const look = () => requestAnimationFrame(map.dataset.lift === 'LIFT' ? shown : look); look(); })
            """;

    /** Closes what is open and walks to another place of the map; the first in the order of the day have a lift. */
    private static final String WALK =
            """
            document.querySelector('.lift.open > button.row')?.click();
            document.getElementById('map').dispatchEvent(new KeyboardEvent('keydown', { key: 'KEY', bubbles: true }))
            """;

    /** From Enter at a place of the map until the frame after the one in which the spine has its lift open. */
    private static final String ON_MAP =
            """
            new Promise((done) => { const start = performance.now(), shown = () => done(performance.now() - start);
              document.getElementById('map').dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
              const look = () => (performance.now() - start > 10000 ? done(-1) : requestAnimationFrame(document.querySelector('.lift.open') ? shown : look)); look(); })
            """;

    /** Times between frames, sorted, while the map is pushed about and the spine scrolls. */
    private static final String MOVING =
            """
            new Promise((done) => { const times = [], map = document.getElementById('map'), left = document.querySelector('.left');
              let last = performance.now(), n = 0;
              const step = () => { const now = performance.now(); times.push(now - last); last = now;
                if (n % 12 === 0) map?.dispatchEvent(new KeyboardEvent('keydown', { key: n % 24 ? 'ArrowLeft' : 'ArrowRight', keyCode: n % 24 ? 37 : 39, bubbles: true }));
                if (left) left.scrollTop = 40 * (n % 30);
                ++n < 120 ? requestAnimationFrame(step) : done(times.slice(5).sort((a, b) => a - b)); };
              requestAnimationFrame(step); })
            """;

    @Override
    public String name() {
        return "desk-page";
    }

    @Override
    public String measure() {
        StringJoiner told = new StringJoiner("\n");
        try {
            Path folder = Files.createTempDirectory("page");
            Underhook program =
                    new Underhook(
                            Settings.from(Map.of("UNDERHOOK_HOME", folder + "/data"), folder));
            try (Desk desk = program.desk()) {
                DeskDays.lay(program, desk, folder.resolve("day45"), 0, 0);
                DeskDays.lay(program, desk, folder.resolve("day120"), 75, 180);
            }
            try (Devtools page = new Devtools(folder.resolve("profile"))) {
                started(page, folder.resolve("data"), told);
                try (Desk desk = program.desk();
                        PlanRuns runs = program.planRuns();
                        DeskServer server =
                                DeskServer.start(
                                        new DeskServer.Desktop(desk, runs, "bench"),
                                        DeskServer.Where.here(0))) {
                    server.warmUp();
                    measure(page, server.address(), told);
                }
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        return told.toString();
    }

    /** A browser that is running, a program that is not: the first page at once, and when somebody has read the address. */
    private static void started(Devtools page, Path home, StringJoiner told)
            throws IOException, InterruptedException {
        for (int waitMs : new int[] {0, READ_MS}) {
            double[] timesMs = new double[STARTS];
            for (int i = 0; i < STARTS; i++) {
                try (FreshServer server = new FreshServer(home)) {
                    Thread.sleep(waitMs);
                    timesMs[i] = load(page, server.address(), "day45");
                }
            }
            Arrays.sort(timesMs);
            told.add(
                    text(
                            "desk-page: first page of a program just started, asked for %d ms after it told its"
                                    + " address: %.0f ms (median of %d)",
                            waitMs, timesMs[STARTS / 2], STARTS));
        }
    }

    private static void measure(Devtools page, URI address, StringJoiner told)
            throws IOException, InterruptedException {
        double emptyMs = median(page, address.resolve("/assets/icon.svg"), LOADED);
        double frameMs = page.run(FRAME).asDouble();
        List<Double> still = frames(page);
        for (String id : List.of("day45", "day120")) {
            double usefulMs = median(page, address.resolve("/#job=" + id + "&panel=day"), USEFUL);
            told.add(
                    text(
                            "desk-page: %s first useful page %.1f times an empty page (%.0f ms)",
                            id, usefulMs / emptyMs, usefulMs));
            page.run(READY);
            double spineMs =
                    choices(page, i -> "1", i -> ON_SPINE.replace("LIFT", Integer.toString(2 + i)));
            double mapMs =
                    choices(
                            page,
                            i -> WALK.replace("KEY", i <= CHOICES / 2 ? "n" : "p"),
                            i -> ON_MAP);
            told.add(
                    text(
                            "desk-page: %s choice on the spine until the map shows it %.1f times an"
                                    + " empty frame (%.0f ms), on the map until the spine %.1f times"
                                    + " (%.0f ms); slowest of %d each",
                            id, spineMs / frameMs, spineMs, mapMs / frameMs, mapMs, CHOICES));
            List<Double> moving = frames(page);
            told.add(
                    text(
                            "desk-page: %s frames while map and spine move: median %.1f, 19 of 20 %.1f"
                                    + " times those of an empty page (%.0f and %.0f ms)",
                            id,
                            at(moving, 0.5) / at(still, 0.5),
                            at(moving, 0.95) / at(still, 0.95),
                            at(moving, 0.5),
                            at(moving, 0.95)));
        }
    }

    private static double load(Devtools page, URI address, String id)
            throws IOException, InterruptedException {
        page.open(address.resolve("/#job=" + id + "&panel=day"));
        return page.run(USEFUL).asDouble();
    }

    private static double median(Devtools page, URI address, String script)
            throws IOException, InterruptedException {
        double[] timesMs = new double[ROUNDS];
        for (int i = 0; i < ROUNDS; i++) {
            page.open(address);
            timesMs[i] = page.run(script).asDouble();
        }
        Arrays.sort(timesMs);
        return timesMs[ROUNDS / 2];
    }

    private interface Scripts {
        String script(int i);
    }

    /** The slowest: a wait is felt where it is longest. */
    private static double choices(Devtools page, Scripts before, Scripts scripts)
            throws IOException, InterruptedException {
        double slowestMs = 0;
        for (int i = 0; i < CHOICES; i++) {
            page.run(before.script(i));
            page.run(RESTED);
            double tookMs = page.run(scripts.script(i)).asDouble();
            if (tookMs < 0) {
                throw new IOException("the choice showed nowhere");
            }
            slowestMs = Math.max(slowestMs, tookMs);
        }
        return slowestMs;
    }

    private static List<Double> frames(Devtools page) throws IOException, InterruptedException {
        return page.run(MOVING).valueStream().map(JsonNode::asDouble).toList();
    }

    private static double at(List<Double> sorted, double share) {
        return sorted.get((int) (share * (sorted.size() - 1)));
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
