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
 * Makes pictures of the demo job on every screen of the desk, for somebody to look at; those that the manual
 * names are kept under {@code docs/pictures}. Run it with the folder as its only argument; the same program gives
 * the same pictures but for the time of the plan.
 */
public final class DeskPictures {
    private static final String JOB = "demo-day";

    /** A screen: its name, where it lies, and what is done there first. */
    private record Shot(String name, String place, String script) {}

    private static final String FLY =
            """
            const slider = document.querySelector('.around input');
            slider.value = 0.9;
            slider.dispatchEvent(new Event('input', { bubbles: true }));
            """;
    private static final List<Shot> SHOTS =
            List.of(
                    new Shot("day", "panel=day&lift=16", ""),
                    new Shot("trade", "panel=day", "document.querySelector('.trade').open = true"),
                    new Shot(
                            "map",
                            "panel=day&lift=16",
                            "document.querySelector('.beside > .acts button').click(); document.querySelector('.mapkey').open = true"),
                    new Shot(
                            "how",
                            "panel=day&lift=16",
                            "document.querySelector('.limits .number').click()"),
                    new Shot(
                            "what-if",
                            "panel=day&lift=16",
                            "document.querySelectorAll('.sheet > .acts button')[1].click()"),
                    new Shot("findings", "panel=findings", ""),
                    new Shot(
                            "lanes",
                            "panel=lanes&lift=16",
                            "document.querySelector('.lanes .chosen').scrollIntoView({ block: 'nearest', inline: 'center' })"),
                    new Shot("look", "panel=look&lift=16", FLY),
                    new Shot("tables", "panel=tables", ""),
                    new Shot("files", "panel=files", ""),
                    new Shot("versions", "panel=versions", ""),
                    new Shot("papers", "panel=papers", ""),
                    new Shot("ahead", "panel=ahead", ""),
                    new Shot("flown", "panel=flown", ""),
                    new Shot("settings", "panel=reader", ""));

    /** On a phone the head of the page fills half of the screen. */
    private static final String PAST_HEAD =
            "if (!location.hash.includes('lift=')) document.querySelector('main').scrollIntoView();";

    /** The guys of S08 answered for, so that there is a second version. */
    private static final String ANSWER =
            """
            return (async () => {
              const token = document.querySelector('meta[name=token]').content;
              const answer = await fetch('/api/jobs/demo-day/overrides', { method: 'POST', headers: { 'X-Underhook-Token': token, 'Content-Type': 'application/json' },
                body: JSON.stringify({ revision: 1, code: 'GUY_GAP', subject: 'L22', reason: 'a fourth guy will be set at 010 degrees', by: 'site foreman' }) });
              return answer.status;
            })();
            """;

    /** The first four lifts as they were flown, a few minutes late. */
    private static final String TAP =
            """
            return (async () => {
              const token = document.querySelector('meta[name=token]').content, plan = await (await fetch('/api/jobs/demo-day/plan')).json(), taps = [];
              const rows = (await (await fetch('/api/jobs/demo-day/text/loads.csv')).json()).text.trim().split('\\n').map((row) => row.split(';'));
              const massAt = rows[0].indexOf('mass_kg'), massKg = new Map(rows.slice(1).map((row) => [row[0], Number(row[massAt])]));
              const tap = (at, minutes, by, kind, more = {}) => {
                const when = new Date(Date.parse(at) + minutes * 60000).toISOString();
                taps.push({ id: `picture-${taps.length}`, at: when, sentAt: new Date().toISOString(), by, role: 'loader', device: `${by} phone`, kind, anyway: true, ...more });
              };
              const lifts = plan.steps.filter((step) => step.kind === 'rotation').slice(0, 4), first = plan.steps[0].startAt;
              tap(first, 0, 'loader2', 'engine-on', { massKg: 225 });
              tap(first, 2, 'loader2', 'take-off');
              tap(lifts[0].startAt, -2, 'loader2', 'line-on', { lineM: lifts[0].lineLengthM });
              tap(lifts[0].startAt, -1, 'loader2', 'line-checked');
              lifts.forEach((lift, i) => {
                tap(lift.hookedAt, 2 + i, lift.from === 'A' ? 'loader2' : 'loader1', 'hooked', { loads: lift.loads, place: lift.from, massKg: lift.loads.reduce((sum, load) => sum + massKg.get(load), 0) });
                lift.drops.forEach((drop) => {
                  tap(drop.releasedAt, 2 + i, 'P 1', 'off', { loads: [drop.load] });
                  tap(drop.releasedAt, 2.3 + i, 'P 1', 'free-seen');
                  tap(drop.releasedAt, 2.5 + i, 'P 2', 'free-confirmed');
                });
              });
              const answer = await fetch('/api/jobs/demo-day/day/taps', { method: 'POST', headers: { 'X-Underhook-Token': token, 'Content-Type': 'application/json' }, body: JSON.stringify({ taps }) });
              return answer.status;
            })();
            """;

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
        require(page, ANSWER);
        page.run("location.reload()");
        page.press("Plan the day");
        page.waitFor("dialog form button").click();
        page.waitUntil("planning", it -> !it.find(".progress").isEmpty());
        page.waitLong("planned", it -> !it.find(".lift").isEmpty());
        require(page, TAP);
    }

    private static void require(Chromium page, String script) {
        Object status = page.run(script);
        if (!(status instanceof Number number) || number.intValue() != 200) {
            throw new IllegalStateException("the job could not be made ready: " + status);
        }
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
        for (Shot shot : SHOTS) {
            take(shot, "tablet-" + theme);
        }
        page.look(390, 844, true);
        for (Shot shot : SHOTS) {
            take(shot, "phone-" + theme);
        }
    }

    private void take(Shot shot, String screen) throws IOException {
        page.open(server.address().resolve("/enter"));
        page.open(server.address().resolve("/#job=" + JOB + "&" + shot.place()));
        page.waitUntil(shot.name(), it -> Boolean.TRUE.equals(it.run(READY)));
        page.run(shot.script());
        if (screen.startsWith("phone")) {
            page.run(PAST_HEAD);
        }
        page.run(
                "return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 700))))");
        Files.write(
                folder.resolve(shot.name() + "-" + screen + ".png"), SmallPng.of(page.picture()));
    }
}
