package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/**
 * One evening at the desk in a real Chromium, step after step on the same page: later steps need what
 * the earlier ones made. The day is the demo day with seven of its loads, so that planning is short.
 */
@Tag("slow")
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class DeskPageIT {
    private static final Set<String> KEPT =
            Set.of("id", "L06", "L07", "L09", "L12", "L20", "L32", "L36");
    private static final int PANELS = 10;
    private static final long A_SECOND_NANOS = 1_000_000_000;

    @TempDir static Path folder;

    @SuppressWarnings("NullAway.Init")
    private static Underhook underhook;

    @SuppressWarnings("NullAway.Init")
    private static Desk desk;

    @SuppressWarnings("NullAway.Init")
    private static PlanRuns runs;

    @SuppressWarnings("NullAway.Init")
    private static DeskServer server;

    @SuppressWarnings("NullAway.Init")
    private static Chromium page;

    @BeforeAll
    static void open() throws IOException {
        underhook = new Underhook(new Settings(folder.resolve("home"), "underhook test"));
        serve(0);
        page = new Chromium(folder.resolve("profile"));
        page.look(1366, 768, false);
        page.open(server.address());
    }

    @AfterAll
    static void close() throws IOException {
        page.close();
        stop();
    }

    private static void serve(int port) throws IOException {
        desk = underhook.desk();
        runs = underhook.planRuns();
        server =
                DeskServer.start(
                        new DeskServer.Desktop(desk, runs, "underhook test"),
                        DeskServer.Where.here(port));
    }

    private static void stop() throws IOException {
        server.close();
        runs.close();
        desk.close();
    }

    private static Path fewLoads() throws IOException {
        Path demo = folder.resolve("demo");
        underhook.writeDemo(demo);
        List<String> rows =
                Files.readAllLines(demo.resolve("loads.csv"), StandardCharsets.UTF_8).stream()
                        .map(row -> row.replace("\uFEFF", ""))
                        .filter(row -> KEPT.contains(row.split(";", 2)[0]))
                        .map(row -> row.replace(";247;", ";24q7;"))
                        .toList();
        return Files.write(folder.resolve("loads.csv"), rows, StandardCharsets.UTF_8);
    }

    private static void show(String panel) {
        page.waitUntil(
                panel + " is there",
                it ->
                        it.find("header nav button").stream()
                                .anyMatch(button -> button.getText().startsWith(panel)));
        page.find("header nav button").stream()
                .filter(button -> button.getText().startsWith(panel))
                .findFirst()
                .orElseThrow()
                .click();
    }

    private static WebElement lift(int number) {
        return page.waitFor("#lift-" + number + " > button");
    }

    @Test
    @Order(1)
    void starts_from_the_demo_day_and_takes_a_dropped_file() throws IOException {
        page.press("Start from the demo day");
        page.waitUntil("the demo job is open", it -> it.says("Vessenholt"));
        show("Jobs and files");

        page.waitFor(".dropzone input").sendKeys(fewLoads().toString());

        page.waitUntil("the fault is counted", it -> !it.find("header nav .count").isEmpty());
        // Not only a number at a tab: nothing is planned before.
        assertThat(page.waitFor("header .summary button.fault").getText()).contains("Faults: 1");
    }

    @Test
    @Order(2)
    void a_day_without_a_plan_shows_the_faults_that_keep_it_from_one_and_leads_to_them() {
        show("Day");
        assertThat(page.waitFor(".spine .faults li").getText()).contains("loads.csv", "24q7");
        assertThat(page.waitFor(".spine").getText()).contains("no plan of this job yet");

        page.waitFor(".spine .faults button").click();

        page.waitUntil(
                "the cell is there", it -> !it.find(".grid td[aria-invalid=true]").isEmpty());
    }

    @Test
    @Order(3)
    void shows_a_fault_at_its_cell_and_lets_it_be_mended_there_by_keyboard() {
        page.waitFor("header .summary button.fault").click();
        page.press("loads.csv");
        WebElement cell = page.waitFor(".grid td[aria-invalid=true]");
        assertThat(cell.getText()).contains("24q7");

        page.run("arguments[0].focus()", cell);
        page.type("247", Keys.ENTER);

        page.waitUntil("no fault is left", it -> it.says("No fault in any file."));
        page.waitUntil("no cell is marked", it -> it.find(".grid td[aria-invalid=true]").isEmpty());
        page.waitUntil("it is kept", it -> it.says("all changes on disk"));
    }

    @Test
    @Order(4)
    void takes_a_block_from_a_spreadsheet_and_undoes_it() {
        String paste =
                """
                const data = new DataTransfer();
                data.setData('text/plain', 'one\\tx\\r\\ntwo\\ty\\r\\n');
                const cell = document.querySelector('.grid td[data-r="1"][data-c="12"]');
                cell.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
                """;

        page.run(paste);

        page.waitUntil(
                "both rows are there", it -> it.find(".grid").get(0).getText().contains("two"));
        page.press("Undo");
        page.waitUntil("both are gone", it -> !it.find(".grid").get(0).getText().contains("two"));
    }

    @Test
    @Order(4)
    void takes_rows_from_a_spreadsheet_beyond_the_last_and_undoes_them() {
        String paste =
                """
                const data = new DataTransfer(), last = [...document.querySelectorAll('.grid tbody tr')].at(-1).querySelector('td[data-c="0"]');
                data.setData('text/plain', last.textContent + '\\tbag\\nP98\\tbag\\tB\\tS06\\t81\\nP99\\tbag\\tB\\tS07\\t82\\n');
                last.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
                return document.querySelectorAll('.grid tbody tr').length;
                """;

        int before = ((Number) java.util.Objects.requireNonNull(page.run(paste))).intValue();

        page.waitUntil("two rows more", it -> it.find(".grid tbody tr").size() == before + 2);
        assertThat(page.find(".grid tbody tr").get(before + 1).getText()).contains("P99", "82");
        page.press("Undo");
        page.waitUntil("as before", it -> it.find(".grid tbody tr").size() == before);
    }

    @Test
    @Order(4)
    void takes_weather_reports_and_an_hourly_table_that_are_dropped_on_the_page() {
        show("Jobs and files");
        drop(
                "reports.txt",
                """
                METAR YUDO 080650Z 24004KT 9999 SCT040 14/09 Q1018=
                TAF YUDO 080500Z 0806/0820 24006KT 9999 SCT040 TX20/0814Z=
                """);
        page.waitUntil("the reports lie there", it -> it.says("reports.txt"));
        assertThat(rolesOf("reports.txt")).contains("weather");
        // Closed and opened again, the page still asks.
        page.run("location.reload()");
        page.waitFor("select[aria-label*='reports.txt']");
        assertThat(rolesOf("reports.txt")).contains("weather");

        page.waitFor("select[aria-label*='reports.txt'] option[value=weather]").click();
        page.waitFor("dialog input[name='reference-elevation-m']").sendKeys("177");
        page.waitFor("dialog input[name='lapse-c-per-100m']").sendKeys("0.65");
        page.waitFor("dialog form button").click();
        page.waitUntil(
                "it is the weather, without a fault",
                it ->
                        textOf("job.yaml").contains("reports.txt")
                                && it.find("header nav .count").isEmpty());

        drop(
                "hours.csv",
                """
                time,qnh_hpa,oat_c,wind_from_deg,wind_kt,gust_kt,remarks
                07:00,1020,11,220,6,9,
                """);
        page.waitUntil("the table lies there", it -> it.says("hours.csv"));
        assertThat(rolesOf("hours.csv")).contains("weather", "loads");

        page.press("Undo");
        page.waitUntil("the table is gone", it -> !it.says("hours.csv"));
        page.press("Undo");
        page.waitUntil(
                "the weather is as before", it -> !textOf("job.yaml").contains("reports.txt"));
        page.press("Undo");
        page.waitUntil("the reports are gone", it -> !it.says("reports.txt"));
        show("Tables");
    }

    /** Drops a file onto the page, as from a folder. */
    private static void drop(String name, String text) {
        page.run(
                """
                const data = new DataTransfer();
                data.items.add(new File([arguments[1]], arguments[0]));
                document.querySelector('main').dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
                """,
                name,
                text);
    }

    /** A text file of the job, as the server has it. */
    private static String textOf(String path) {
        return String.valueOf(
                page.run(
                        "return (async (job, path) => (await (await fetch(`/api/jobs/${job}/text/${path}`)).json()).text)"
                                + "(location.hash.match(/job=([^&]*)/)[1], arguments[0])",
                        path));
    }

    /** What a person may say that a dropped file is. */
    private static String rolesOf(String name) {
        page.waitUntil(
                name + " can be named",
                it -> !it.find("select[aria-label*='" + name + "'] option").isEmpty());
        return String.valueOf(
                page.run(
                        "return document.querySelector(`select[aria-label*='${arguments[0]}']`).textContent",
                        name));
    }

    @Test
    @Order(5)
    void plans_with_progress_and_shows_every_place() {
        page.press("Plan the day");
        page.waitFor("dialog input[name=seconds]").clear();
        page.waitFor("dialog input[name=seconds]").sendKeys("3");
        page.waitFor("dialog form button").click();
        page.waitUntil("it says what it is doing", it -> !it.find(".progress").isEmpty());

        show("Day");
        lift(1);

        // The demo's places: A, A2, B, H, L, M and S01 to S14.
        page.waitUntil(
                "every mark is drawn",
                it -> "20".equals(it.waitFor("#map").getAttribute("data-marks")));
    }

    @Test
    @Order(6)
    void opens_a_lift_in_place_with_how_for_every_number() {
        lift(2).sendKeys(Keys.ENTER);

        page.waitFor(".sheet svg.section");
        // What grows on the ground is drawn down to the foot: the ground covers it, or all of it
        // looks like trees.
        assertThat(
                        page.run(
                                "return getComputedStyle(document.querySelector('#earth .under')).fill === getComputedStyle(document.body).backgroundColor"))
                .isEqualTo(true);
        page.waitFor(".sheet svg.rose");
        page.waitFor(".limits .number").click();
        page.waitUntil("inputs are named", it -> it.find("dialog tbody tr").size() > 2);
        assertThat(page.find("dialog").get(0).getText()).contains("What eats the margin");
        page.key(Keys.ESCAPE);
        page.waitUntil("the dialog is shut", it -> it.find("dialog[open]").isEmpty());
    }

    @Test
    @Order(7)
    void flies_the_leg() {
        WebElement slider = page.waitFor(".sheet input[type=range]");
        String before = page.waitFor(".readout").getText();

        slider.sendKeys(Keys.END);

        page.waitUntil(
                "another place is read out",
                it -> !it.waitFor(".readout").getText().equals(before));
    }

    @Test
    @Order(8)
    void opens_a_lift_from_the_map_by_keyboard_and_by_mouse() {
        page.run("document.getElementById('map').focus()");
        page.waitUntil(
                "the map is at S12",
                it -> {
                    it.type("n");
                    return "S12".equals(it.waitFor("#map").getAttribute("data-at"));
                });
        page.type(Keys.ENTER);
        page.waitUntil(
                "its lift is open",
                it -> it.waitFor("li.lift.open .what").getText().contains("S12"));

        // Places to which no lift goes come after those of the day.
        page.waitUntil(
                "the map is at S13",
                it -> {
                    it.type("n");
                    return "S13".equals(it.waitFor("#map").getAttribute("data-at"));
                });
        AtomicLong clickedAt = new AtomicLong(System.nanoTime() - 2 * A_SECOND_NANOS);
        page.waitUntil(
                "no lift goes there",
                it -> {
                    // Two clicks within a quarter of a second are a double click, which zooms.
                    if (System.nanoTime() - clickedAt.get() > A_SECOND_NANOS) {
                        it.waitFor("#map").click();
                        clickedAt.set(System.nanoTime());
                    }
                    return it.says("No lift goes to S13.");
                });
    }

    @Test
    @Order(9)
    void shows_what_moving_a_lift_costs_before_it_counts() {
        String before = order();
        int lift = movable();
        lift(lift).sendKeys(Keys.chord(Keys.ALT, Keys.ARROW_DOWN));
        page.waitFor("dialog select option[value='1'], dialog select option[value='2']");
        // A lift is told by one time, when it is hooked up.
        assertThat(
                        (List<?>)
                                Objects.requireNonNull(
                                        page.run(
                                                "return [...document.querySelectorAll('dialog select option')].filter((one) => one.value !== '0' && !one.textContent.includes(`: ${document.querySelector(`#lift-${one.value} time`).textContent} `)).map((one) => one.textContent)")))
                .isEmpty();
        page.waitFor("dialog[open] .answer");
        assertThat(page.find("dialog").get(0).getText()).contains("plan of record");
        assertThat(order()).isEqualTo(before);

        page.waitFor("dialog .answer button.main").click();

        page.waitUntil("the day was changed", it -> it.says("changed and re-checked"));
        page.waitUntil("the order is another", it -> !order().equals(before));
    }

    @Test
    @Order(9)
    void accepts_another_day_of_the_job_and_takes_it_back() {
        String before = planId();
        // Such a day is named by what a flying minute counts; this one is asked for as its button
        // asks.
        page.run(
                "return import('/assets/actions.js').then(({ actions }) => actions.openRate("
                        + "{ flyingRatePercent: 34, flightMinutes: 60, finishAt: '2026-09-08T08:00:00-01:00' }))");
        page.waitFor("dialog[open] .answer");
        assertThat(page.find("dialog").get(0).getText()).contains("plan of record");
        assertThat(planId()).isEqualTo(before);

        page.waitFor("dialog .answer button.main").click();
        page.waitUntil("the day was changed", it -> it.says("changed and re-checked"));
        page.waitUntil("another plan counts", it -> !planId().equals(before));
        assertThat(page.says("The job changed since this plan.")).isFalse();

        page.press("Undo");
        page.waitUntil("the plan before counts again", it -> planId().equals(before));
        assertThat(page.says("The job changed since this plan.")).isFalse();
    }

    @Test
    @Order(9)
    void says_that_a_day_is_as_sure_as_is_asked_and_changes_nothing() {
        String before = planId();
        page.run("document.querySelector('.trade').open = true");
        page.run(
                "const days = document.querySelector('.trade input[name=days]'); days.value = 5;"
                        + " days.form.requestSubmit()");
        page.waitUntil(
                "it is said", it -> it.says("The day is as sure as that already, or nothing that"));
        assertThat(planId()).isEqualTo(before);
        page.key(Keys.ESCAPE);
        // The page hears of it a moment later; what opened before that would be closed with it.
        page.waitUntil(
                "nothing is asked any more",
                it ->
                        Boolean.TRUE.equals(
                                it.run(
                                        "return import('/assets/state.js').then(({ state }) => state.dialog == null)")));
    }

    /** The plan that the page shows. */
    private static String planId() {
        return String.valueOf(
                page.run(
                        "return import('/assets/state.js').then(({ state }) => state.plan.planId)"));
    }

    /** The loads in the order of the day. */
    private static String order() {
        return String.valueOf(
                page.run(
                        "return [...document.querySelectorAll('.lift > .row b')].map(one => one.textContent).join()"));
    }

    /**
     * A lift that two like it follow from the same laydown: bags may go in any order. The server is asked, as
     * the page asks.
     */
    private static int movable() {
        String ask =
                """
                return (async () => {
                  const token = document.querySelector('meta[name=token]').content, job = location.hash.match(/job=([^&]*)/)[1];
                  const plan = await (await fetch(`/api/jobs/${job}/plan`)).json();
                  for (const { number } of plan.view.lifts.slice(0, -1)) {
                    const answer = await fetch(`/api/jobs/${job}/whatif`, { method: 'POST', headers: { 'X-Underhook-Token': token, 'Content-Type': 'application/json' },
                      body: JSON.stringify({ move: { lift: number, after: number + 1 } }) });
                    if ((await answer.json()).possible) return number;
                  }
                  return 0;
                })();
                """;
        int found = ((Number) java.util.Objects.requireNonNull(page.run(ask))).intValue();
        assertThat(found).as("a lift that can be moved").isPositive();
        return found;
    }

    @Test
    @Order(10)
    void keeps_an_override_with_its_reason() {
        show("Findings");
        page.waitFor(".findings li.CAUTION");
        // Nobody can answer for these, so the page offers it nowhere.
        assertThat(page.find(".findings li.STOP button"))
                .noneMatch(button -> button.getText().equals("Override"));
        page.find(".findings li.CAUTION button").stream()
                .filter(button -> button.getText().equals("Override"))
                .findFirst()
                .orElseThrow()
                .click();
        page.waitFor("dialog textarea").sendKeys("weighed again this evening on the yard scale");
        page.waitFor("dialog input[name=by]").sendKeys("loadmaster");
        page.waitFor("dialog form button.main").click();

        page.waitUntil("it is kept", it -> it.says("The override and its reason are on disk."));
        show("Versions");
        page.waitUntil(
                "it is a version",
                it -> Chromium.lower(it.waitFor(".versions").getText()).contains("overrid"));
    }

    @Test
    @Order(11)
    void changes_the_map_by_keyboard_and_by_mouse_and_undoes_it() {
        show("Day");
        page.press("Change the map");
        choose("kind", "release");
        choose("which", "J2");
        page.run("document.getElementById('map').focus()");
        page.key(Keys.SHIFT, Keys.ARROW_RIGHT);
        page.type(Keys.ENTER);
        page.press("Save its new place");
        page.waitUntil("it says so", it -> it.says("J2 was moved."));

        choose("kind", "mast");
        page.waitFor(".mapedit input[name=id]").sendKeys("T9");
        page.waitFor(".mapedit input[name=height_m]").sendKeys("30");
        page.waitFor("#map").click();
        page.waitUntil("it stands there", it -> it.says("It stands at"));
        page.press("Add it");
        page.waitUntil("the mast is there", it -> it.says("T9 was added."));
        assertThat(things("hazards")).contains("T9");

        page.waitFor(".mapedit [role=status] button").click();
        page.waitUntil("it is gone again", it -> !things("hazards").contains("T9"));
    }

    @Test
    @Order(12)
    void says_on_the_map_why_a_change_was_refused_or_what_it_broke() {
        choose("kind", "place");
        page.waitFor(".mapedit input[name=id]").sendKeys("S06");
        page.run("document.getElementById('map').focus()");
        page.type(Keys.ENTER);
        page.press("Add it");
        page.waitUntil("refused", it -> it.says("There is a S06 already."));

        choose("which", "S06");
        page.press("Delete S06");
        page.waitUntil(
                "a load goes nowhere now",
                it -> !it.find(".mapedit .refusal li").isEmpty() && it.says("S06 was deleted."));

        page.waitFor(".mapedit [role=status] button").click();
        page.waitUntil("no fault is left", it -> it.find("header nav .count").size() < 2);
        page.press("Leave the map as it is");
    }

    private static void choose(String field, String value) {
        page.waitFor(".mapedit select." + field + " option[value='" + value + "']").click();
        page.waitUntil(
                value + " is chosen",
                it -> value.equals(it.waitFor(".mapedit select." + field).getAttribute("value")));
    }

    /** Ids of the things in a layer of the map, as the server has them. */
    private static String things(String layer) {
        return String.valueOf(
                page.run(
                        "return (async (job, layer) => (await (await fetch(`/api/jobs/${job}/map`)).json())"
                                + ".layers[layer].features.map((one) => one.properties.id).join())"
                                + "(location.hash.match(/job=([^&]*)/)[1], arguments[0])",
                        layer));
    }

    @Test
    @Order(13)
    void comes_back_to_the_same_place_when_the_server_was_restarted() throws IOException {
        show("Day");
        int port = server.address().getPort();
        String open = page.waitFor("li.lift.open b").getText();

        stop();
        serve(port);

        page.waitUntil("the page found it again", it -> it.says("The server is back."));
        page.press("Undo");
        page.waitUntil(
                "the new server took a change",
                it -> it.find("header .doing button[disabled]").isEmpty());
        page.run("location.reload()");
        page.waitUntil(
                "the same lift is open", it -> it.waitFor("li.lift.open b").getText().equals(open));
    }

    @Test
    @Order(14)
    void hands_out_the_cards_and_every_file() {
        show("Papers");
        List<String> links =
                page.find(".papers a").stream().map(link -> link.getAttribute("href")).toList();
        assertThat(links).hasSize(10);

        String start =
                "const answer = await fetch(arguments[0]); return answer.status + ' ' + (await answer.text()).slice(0, 4);";
        for (String link : links) {
            assertThat(
                            page.run(
                                    "return (async (...arguments) => {"
                                            + start
                                            + "})(arguments[0])",
                                    link))
                    .asString()
                    .startsWith("200 ");
        }
        assertThat(
                        page.run(
                                "return (async (...arguments) => {" + start + "})(arguments[0])",
                                links.get(0)))
                .isEqualTo("200 %PDF");
    }

    @Test
    @Order(15)
    void axe_finds_nothing_on_any_screen_by_day_or_night() throws IOException {
        for (String theme : List.of("day", "night")) {
            show("Settings");
            page.waitFor("input[value=" + theme + "]").click();
            for (int panel = 0; panel < PANELS - 1; panel++) {
                page.find("header nav button").get(panel).click();
                assertThat(page.axe()).as(theme + " " + panel).isEmpty();
            }
        }
    }

    /** Browsers print no backgrounds: what is light on dark by night, or in the chosen row, would be lost on paper. */
    @Test
    @Order(15)
    void what_is_printed_by_night_is_dark_on_white() {
        show("Settings");
        page.waitFor("input[value=night]").click();
        show("Day");
        page.waitFor(".spine button.row[data-lift]");
        page.run(
                "const row = document.querySelector('.spine button.row[data-lift]'); if (row.getAttribute('aria-expanded') !== 'true') row.click();");
        page.waitFor(".sheet .legs button[aria-pressed=true]");
        page.paper(true);
        Object light =
                page.run(
                        """
                        return [...document.querySelectorAll('header, main, header *, main *')]
                          .filter((one) => one.checkVisibility() && [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent.trim()))
                          .filter((one) => { const [r, g, b] = getComputedStyle(one).color.match(/\\d+/g).map(Number); return 0.299 * r + 0.587 * g + 0.114 * b > 100; })
                          .map((one) => one.textContent.trim().slice(0, 30));
                        """);
        page.paper(false);
        show("Settings");
        page.waitFor("input[value=day]").click();

        assertThat((List<?>) Objects.requireNonNull(light)).isEmpty();
    }

    @Test
    @Order(16)
    void speaks_another_language_in_other_units_with_magnetic_bearings() {
        show("Settings");
        page.waitFor("input[value=us]").click();
        page.waitFor("input[value=mag]").click();
        page.waitFor("input[value=de]").click();
        page.waitUntil("it speaks German", it -> it.says("Tag planen"));

        show("Tag");

        page.waitUntil(
                "pounds and magnetic bearings",
                it ->
                        it.waitFor(".spine").getText().contains(" lb")
                                && it.waitFor(".spine").getText().contains("° MAG"));
        assertThat(page.run("return document.documentElement.lang")).isEqualTo("de");
    }

    @Test
    @Order(17)
    void on_a_narrow_phone_what_one_does_is_one_row_and_held_sideways_the_head_is_low() {
        page.look(360, 780, true);
        String rows =
                "return new Set([...document.querySelectorAll('header .doing button')].map((one) => Math.round(one.getBoundingClientRect().top))).size";

        // German words are longer.
        assertThat(page.says("Rückgängig")).isTrue();
        page.waitUntil("one row", it -> Long.valueOf(1).equals(it.run(rows)));
        assertThat(page.run("return document.documentElement.scrollWidth")).isEqualTo(360L);

        page.look(844, 390, true);
        Object top =
                page.run(
                        "scrollTo(0, 0); return Math.round(document.querySelector('main').getBoundingClientRect().top)");
        page.look(1366, 768, false);
        // A third of the screen; the rest scrolls. Common practice, no source.
        assertThat(((Number) Objects.requireNonNull(top)).intValue()).isLessThanOrEqualTo(130);
    }

    @Test
    @Order(17)
    void every_target_is_large_enough_for_a_gloved_finger() {
        page.look(820, 1180, true);

        String small =
                """
                return [...document.querySelectorAll('button, a.button, select, summary')].filter((one) => one.checkVisibility())
                  .map((one) => [one.getBoundingClientRect(), one.textContent.trim()])
                  .filter(([box]) => box.height < 15 * 6.5 - 1 || box.width < 15 * 6.5 - 1).map(([box, words]) => words + ' ' + box.width + 'x' + box.height);
                """;
        // 15 mm at 6.5 px per mm: Avsar, Fischer, Rodden, DASC 2015, DOI 10.1109/DASC.2015.7311400.
        page.waitUntil("laid out for fingers", it -> List.of().equals(it.run(small)));
        page.look(1366, 768, false);
    }

    /** Below the lanes of a day with ten of them no map was left on a low screen. A third is common practice, no source. */
    @Test
    @Order(17)
    void on_a_low_screen_the_map_stands_beside_the_lanes() {
        page.look(1366, 768, false);
        show("Bahnen");
        String seen =
                "const box = document.getElementById('map').getBoundingClientRect(); return Math.min(box.bottom, innerHeight) - box.top";
        page.waitUntil(
                "a map", it -> it.run(seen) instanceof Number high && high.doubleValue() > 300);
        show("Tag");
    }

    /** Six columns do not fit a phone. */
    @Test
    @Order(17)
    void planned_and_flown_goes_off_no_side_of_a_phone() {
        page.look(390, 844, true);
        show("Geflogen");
        page.waitUntil("it is read", it -> it.says("noch nichts gemeldet"));
        page.run(
                """
                return import('/assets/state.js').then(({ set }) => set({ flown: { taps: 2, lastAt: '2026-09-08T08:00:00-01:00', planned: { lifts: 1, flightMinutes: 5 },
                  flown: { lifts: 1, flightMinutes: 6, engineMinutes: 9, takeOffs: 1, landings: 1, snags: 0 }, findings: [], loads: [{ load: 'L01', from: 'A', to: 'S01', isDone: true,
                  plannedHookedAt: '2026-09-08T07:00:00-01:00', hookedAt: '2026-09-08T07:05:00-01:00', plannedDoneAt: '2026-09-08T07:06:00-01:00', doneAt: '2026-09-08T07:15:00-01:00',
                  listedKg: 188, readKg: 222.5, givenUp: [{ readKg: 250 }] }] } }))
                """);
        page.waitUntil("the load is told", it -> it.says("L01") && it.says("+5 min"));
        assertThat(
                        page.run(
                                "const box = document.querySelector('.flownday .wide'); return [box.scrollWidth - box.clientWidth, document.documentElement.scrollWidth].join()"))
                .isEqualTo("0,390");
        page.look(1366, 768, false);
        show("Tag");
    }

    /** The server writes release_areas, job.yaml release-areas. */
    @Test
    @Order(17)
    void a_file_says_what_it_serves_as_in_words() {
        String served =
                """
                return Promise.all([import('/assets/files.js'), import('/assets/state.js')]).then(([{ files }, { state }]) =>
                  import('/lib/lit/lit-html.js').then(({ render }) => {
                    const at = document.createElement('div');
                    render(files(), at);
                    return [...at.querySelectorAll('tbody tr')].map((row) => row.cells[1].innerText).filter((words) => words.includes('_'));
                  }));
                """;

        assertThat((List<?>) Objects.requireNonNull(page.run(served))).isEmpty();
    }

    /** What hides the map on paper took the heights and the least gap out of the drawings too. */
    @Test
    @Order(17)
    void on_paper_a_drawing_keeps_its_words() {
        String hidden =
                """
                const rules = [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules])
                  .filter((rule) => rule.media?.mediaText === 'print').flatMap((rule) => [...rule.cssRules])
                  .filter((rule) => rule.style?.display === 'none');
                return ['text.right', 'div.right'].map((one) => {
                  const [name, kind] = one.split('.');
                  const made = document.createElementNS(name === 'text' ? 'http://www.w3.org/2000/svg' : 'http://www.w3.org/1999/xhtml', name);
                  made.setAttribute('class', kind);
                  return rules.some((rule) => made.matches(rule.selectorText));
                });
                """;

        assertThat((List<?>) Objects.requireNonNull(page.run(hidden))).hasToString("[false, true]");
    }

    @Test
    @Order(18)
    void asked_nobody_but_this_machine_and_complained_of_nothing() {
        Set<String> hosts =
                page.asked()
                        .filter(address -> address.startsWith("http") || address.startsWith("ws"))
                        .map(address -> address.replaceFirst("^(\\w+://[^:/]+).*", "$1"))
                        .collect(Collectors.toSet());

        assertThat(hosts).containsExactly("http://127.0.0.1");
        // While the server was away its stream could not be had, and one change of the map was
        // refused: that is said on the console.
        assertThat(page.complaints())
                .filteredOn(
                        words ->
                                !words.contains("/events")
                                        && !words.contains("/features")
                                        && !words.contains("ERR_CONNECTION"))
                .isEmpty();
    }
}
