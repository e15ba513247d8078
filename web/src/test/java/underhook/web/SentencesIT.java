package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/**
 * The pages say in German, and in the reader's units, whatever the program can say: its sentences are read from its
 * own sources, so that one that is worded anew is missed here.
 */
@Tag("slow")
class SentencesIT {
    private static final String PLANNER = "planner/src/main/java/underhook/planner/";
    private static final String APP = "app/src/main/java/underhook/app/";

    /** What is said of a load, a place, a way or a report: whole sentences. */
    private static final List<String> SENTENCES =
            List.of(
                    PLANNER,
                    "core/src/main/java",
                    "adapters/src/main/java/underhook/adapter/job",
                    APP + "desk/WhatIf.java",
                    APP + "evening/Charged.java",
                    APP + "evening/Evening.java");

    /** What is put together from phrases: each of them too. */
    private static final List<String> PHRASES =
            List.of(
                    PLANNER + "verify",
                    PLANNER + "order/NoWay.java",
                    PLANNER + "order/People.java",
                    PLANNER + "route/ClosedWays.java",
                    APP + "replan",
                    APP + "flying/Bias.java",
                    APP + "flying/GroundNow.java",
                    APP + "flying/NewOrder.java",
                    APP + "flying/ToldChanges.java");

    /** A thread, a step, a limit and where a value is from: names that stand in a sentence or nowhere. */
    private static final Set<String> NAMES =
            Set.of(
                    "ready X1",
                    "step X1",
                    "told on the day",
                    "LINE_LENGTH at X1",
                    "WIND_MEAN at X1",
                    "WIND_GUST at X1",
                    "WIND_SPREAD at X1");

    private static final List<String> CODES =
            List.of(
                    PLANNER + "order",
                    PLANNER + "route",
                    PLANNER + "search",
                    "core/src/main/java",
                    APP + "evening",
                    APP + "flying",
                    APP + "replan");

    private static final Pattern CODE = Pattern.compile("FindingCode\\.([A-Z][A-Z_]+)");

    private static final String SAY =
            """
            return import(arguments[0]).then(async (words) => {
              await words.speak('de');
              return arguments[1].map((text) => { const said = words.said(text); return typeof said === 'string' ? said : `ENGLISH ${text}`; });
            });
            """;

    @TempDir static Path folder;
    private static Desk desk;
    private static PlanRuns runs;
    private static DeskServer server;
    private static Chromium page;

    @BeforeAll
    static void open() throws Exception {
        Underhook underhook = new Underhook(new Settings(folder.resolve("home"), "underhook test"));
        desk = underhook.desk();
        runs = underhook.planRuns();
        server =
                DeskServer.start(
                        new DeskServer.Desktop(desk, runs, "underhook test"),
                        DeskServer.Where.here(0));
        page = new Chromium(folder.resolve("browser"));
        page.open(server.address());
    }

    @AfterAll
    static void close() throws Exception {
        page.close();
        server.close();
        runs.close();
        desk.close();
    }

    private static List<String> said(String words, List<String> texts) {
        List<?> all = (List<?>) Objects.requireNonNull(page.run(SAY, words, texts));
        return all.stream().map(String::valueOf).toList();
    }

    private static List<String> wordings() throws IOException {
        Set<String> all = new TreeSet<>();
        for (String where : SENTENCES) {
            read(where).stream().filter(text -> text.matches("(?s)[A-Z].*\\.")).forEach(all::add);
        }
        for (String where : PHRASES) {
            read(where).stream().filter(text -> !NAMES.contains(text)).forEach(all::add);
        }
        return List.copyOf(all);
    }

    private static List<String> read(String where) throws IOException {
        List<String> all = new ArrayList<>();
        try (Stream<Path> sources = Files.walk(Path.of("..").resolve(where))) {
            for (Path source : sources.filter(one -> one.toString().endsWith(".java")).toList()) {
                all.addAll(Wordings.of(source));
            }
        }
        return all;
    }

    @Test
    void the_desk_and_the_devices_know_every_sentence_of_the_program() throws Exception {
        List<String> wordings = wordings();

        assertThat(wordings).hasSizeGreaterThan(400);
        for (String words : List.of("/assets/words.js", "/assets/day/words.js")) {
            assertThat(said(words, wordings).stream().filter(SentencesIT::isEnglish))
                    .as(words)
                    .isEmpty();
        }
    }

    /** What a finding of a plan, a tap or an evening is called; the re-check's and the readers' stand as they are. */
    @Test
    void every_code_that_a_day_may_show_has_words() throws Exception {
        Set<String> codes = new TreeSet<>();
        for (String where : CODES) {
            try (Stream<Path> sources = Files.walk(Path.of("..").resolve(where))) {
                for (Path source :
                        sources.filter(one -> one.toString().endsWith(".java")).toList()) {
                    Matcher used = CODE.matcher(Files.readString(source, StandardCharsets.UTF_8));
                    while (used.find()) {
                        codes.add(used.group(1));
                    }
                }
            }
        }

        assertThat(codes).hasSizeGreaterThan(60);
        for (String language : List.of("en", "de")) {
            assertThat(
                            (List<?>)
                                    Objects.requireNonNull(
                                            page.run(
                                                    """
                                                    return import('/assets/words.js').then(async (words) => {
                                                      await words.speak(arguments[0]);
                                                      return arguments[1].filter((code) => words.codeWords(code) === code);
                                                    });
                                                    """,
                                                    language,
                                                    List.copyOf(codes))))
                    .as(language)
                    .isEmpty();
        }
    }

    /** Whether any of it was left in English. */
    private static boolean isEnglish(String text) {
        return text.matches(
                "(?s)(ENGLISH .*|.*\\b([Tt]he|[Ww]ith|from|[Oo]f|is|are|and|or|[Nn]ot|[Pp]erhaps|they|[Ii]t|to|no|at"
                        + "|on|that|which|by|than|for|least|below|beyond|passes|over|stays|keeps|would)\\b.*)");
    }

    /** A sentence whose parts are put together by the program, and parts of it by its values. */
    @Test
    void parts_within_a_sentence_are_german_too() {
        List<String> english =
                List.of(
                        "There is no way to S1 that keeps the rules: each of Z1, H2 closes it; one opened is enough."
                                + " Perhaps a permission for zone Z1 or nobody at H2 and its owner's word or the"
                                + " laydown B, C, from which the ground is open.",
                        "There is no way to S1 that keeps the rules, at no hour and with no line in stock: let go near"
                                + " A or S1 with the load it could hit H1, H2, H3, H4, H5, H6 and 3 more, on every way"
                                + " that was tried 4 of them or more; the wind on the way back with the empty line is"
                                + " too strong.",
                        "L7, L8 stay behind: Every last part to S1 would pass W1. Perhaps an agreement to cross W1."
                                + " With it L9.",
                        "L7 stays behind: Every last part to S1 would pass W1. Perhaps an agreement to cross W1."
                                + " With it L9. For other reasons L3, L4.",
                        "The job folder is not the one that the plan was made of: changed loads.csv; gone rigging.yaml;"
                                + " new b.csv. All of this is said with the folder as it is now.",
                        "Out of date: sling (bags) was due for inspection on 2026-09-07; steel hook is past its life"
                                + " since 2026-09-05; rope was due for inspection on 2026-09-06.",
                        "L7 weighed at 320 kg was taken back",
                        "In step 4 a load rides twice.",
                        "The legs of step 4 end at S1 instead of S2.",
                        "step 4 has more fuel than the tank holds.",
                        "This was tapped, but L1, L2 still hang on the hook.",
                        "The clock of tablet 2 was up to 180 min ahead of the server's: 2 taps count by the server's.",
                        "The clock of tablet 2 was up to 1 min ahead of the server's: one tap counts by the server's.",
                        "L1, L2 were not called free by two people. A sling that has not parted ties the machine to"
                                + " the load.");

        List<String> german = said("/assets/day/words.js", english);

        assertThat(german)
                .containsExactly(
                        "Nach S1 führt kein Weg, der die Regeln hält: jedes von Z1, H2 schließt ihn; eines zu öffnen"
                                + " genügt. Vielleicht eine Erlaubnis für die Zone Z1 oder niemand an H2 und die Zusage"
                                + " des Eigners oder der Ladeplatz B, C, von dem aus der Boden offen ist.",
                        "Nach S1 führt zu keiner Stunde und mit keiner vorhandenen Leine ein Weg, der die Regeln hält:"
                                + " was nahe A oder S1 mit der Last abgeworfen wird, könnte H1, H2, H3, H4, H5, H6 und"
                                + " 3 weitere treffen, auf jedem versuchten Weg mindestens 4 davon; der Wind auf dem"
                                + " Weg zurück mit der leeren Leine ist zu stark.",
                        "L7, L8 bleiben liegen: Jedes letzte Stück nach S1 käme an W1 vorbei. Vielleicht eine Absprache,"
                                + " W1 zu queren. Damit auch L9.",
                        "L7 bleibt liegen: Jedes letzte Stück nach S1 käme an W1 vorbei. Vielleicht eine Absprache,"
                                + " W1 zu queren. Damit auch L9. Aus anderen Gründen L3, L4.",
                        "Der Ordner des Auftrags ist nicht der, aus dem der Plan gemacht wurde: geändert loads.csv; weg"
                                + " rigging.yaml; neu b.csv. All das ist mit dem Ordner gesagt, wie er jetzt ist.",
                        "Nicht mehr gültig: sling (bags) war am 2026-09-07 zur Prüfung fällig; steel hook ist seit"
                                + " 2026-09-05 abgelaufen; rope war am 2026-09-06 zur Prüfung fällig.",
                        "zurückgenommen: L7 gewogen: 320 kg",
                        "In Schritt 4: eine Last fliegt zweimal mit.",
                        "Die Wege von Schritt 4 enden an S1 statt an S2.",
                        "Schritt 4 hat mehr Treibstoff, als der Tank fasst.",
                        "So wurde getippt, aber L1, L2 hängen noch am Haken.",
                        "Die Uhr von tablet 2 ging der des Servers bis zu 180 min vor: 2 Einträge zählen nach der des"
                                + " Servers.",
                        "Die Uhr von tablet 2 ging der des Servers bis zu 1 min vor: ein Eintrag zählt nach der des"
                                + " Servers.",
                        "L1, L2 wurden nicht von zweien frei gemeldet. Ein Geschirr, das nicht gelöst ist, bindet"
                                + " die Maschine an die Last.");
    }

    /** Clocks in Vienna went back from 03:00 to 02:00 on 25 October 2026. @source IANA time zones, from memory */
    @Test
    void on_the_day_of_a_clock_change_the_desks_times_have_their_offset_and_on_no_other() {
        Object told =
                page.run(
                        """
                        return Promise.all([import('/assets/state.js'), import('/assets/units.js')]).then(([{ state }, { clock, clockAt }]) => {
                          const { job } = state;
                          const said = (offsets) => {
                            state.job = { zone: 'Europe/Vienna', offsets };
                            return [clock('2026-10-25T02:10:00+02:00'), clockAt(Date.parse('2026-10-25T01:10:00Z'), '')].join(', ');
                          };
                          const all = [said(['+02:00', '+01:00']), said(['+01:00'])].join('; ');
                          state.job = job;
                          return all;
                        });
                        """);

        assertThat(told).isEqualTo("02:10 +02, 02:10 +01; 02:10, 02:10");
    }

    private static final String SAY_IN_POUNDS_AND_FEET =
            """
            return Promise.all([import(`${arguments[0]}words.js`), import(`${arguments[0]}state.js`)]).then(async ([words, { state }]) => {
              await words.speak(arguments[1]);
              state.reader = { ...state.reader, units: 'us' };
              const said = arguments[2].map((text) => { const one = words.said(text); return typeof one === 'string' ? one : one.values[0]; });
              state.reader = { ...state.reader, units: 'metric' };
              return said;
            });
            """;

    private static final String DESK = "/assets/";
    private static final String DEVICE = "/assets/day/";

    private static List<String> inPoundsAndFeet(String page, String language, List<String> texts) {
        List<?> all =
                (List<?>)
                        Objects.requireNonNull(
                                SentencesIT.page.run(
                                        SAY_IN_POUNDS_AND_FEET, page, language, texts));
        return all.stream().map(String::valueOf).toList();
    }

    @Test
    void no_sentence_keeps_kilograms_or_metres_for_who_reads_pounds_and_feet() throws Exception {
        List<String> wordings = wordings();

        for (String page : List.of(DESK, DEVICE)) {
            for (String language : List.of("en", "de")) {
                assertThat(
                                inPoundsAndFeet(page, language, wordings).stream()
                                        .filter(
                                                text ->
                                                        text.matches(
                                                                "(?s).*\\d (kg|km|m)(?![\\p{L}/]).*")))
                        .as(page + language)
                        .isEmpty();
            }
        }
    }

    /** 30 m are 98.4 ft: what a crossing needs is not told a third of a foot short. */
    @Test
    void a_device_tells_what_a_crossing_needs_in_feet_rounded_up() {
        List<String> rule =
                List.of("near square, at least 30 m above the highest wire; no release here");

        assertThat(inPoundsAndFeet(DEVICE, "en", rule))
                .containsExactly(
                        "near square, at least 99 ft above the highest wire; no release here");
        assertThat(inPoundsAndFeet(DEVICE, "de", rule))
                .containsExactly(
                        "fast im rechten Winkel, mindestens 99 ft über dem höchsten Seil; hier nicht abwerfen");
    }

    /** 355 kg are 782.64 lb, 380 kg 837.76 lb, 58 kg 127.87 lb: of what is left no pound is told too many. */
    @Test
    void a_device_tells_the_fuel_that_is_left_rounded_down() {
        assertThat(
                        inPoundsAndFeet(
                                DEVICE,
                                "en",
                                List.of(
                                        "at least 355 kg left of 380 kg read at 07:06; the reserve is 58 kg")))
                .containsExactly(
                        "at least 782 lb left of 838 lb read at 07:06; the reserve is 128 lb");
    }

    /** 75 kg are 165.35 lb, 81 kg 178.57 lb, 66 ft 20.1168 m; the server writes the figures of a finding as text. */
    @Test
    void the_figures_of_a_finding_are_turned_like_its_sentence() {
        String figures =
                """
                return Promise.all([import('/assets/units.js'), import('/assets/state.js'), import('/assets/words.js').then((words) => words.speak('en'))]).then(([units, { state }]) => {
                  const read = (system) => {
                    state.reader = { ...state.reader, units: system };
                    return [units.withUnit('75', 'kg'), units.withUnit(81, 'kg', 'up'), units.withUnit('20.1168', 'm'), units.withUnit('never', ''), units.withUnit('9', 'kt')];
                  };
                  return [...read('us'), ...read('metric')];
                });
                """;

        assertThat((List<?>) Objects.requireNonNull(page.run(figures)))
                .hasToString(
                        "[165.3 lb, 179 lb, 66.0 ft, never, 9 kt, 75 kg, 81 kg, 20.1168 m, never, 9 kt]");
    }

    /** Nothing of a reason is left out or left in English: a second best way with little room is not one without. */
    @Test
    void why_a_way_was_taken_is_german_with_all_that_it_says() {
        assertThat(
                        said(
                                "/assets/words.js",
                                List.of(
                                        "straight into the wind (little room, tail to trees)",
                                        "second best: track 210°, 10° off the wind (little room, tail to trees)",
                                        "10° off the wind; straight into it: passes over H1 (guards)",
                                        "tracks 000° to 080°: tailwind over 5 kt in 7 kt of wind",
                                        "tracks 170° to 200°: no room, tail to trees",
                                        "tracks 260° to 280°: passes over H1 (guards)")))
                .containsExactly(
                        "gerade gegen den Wind (wenig Raum, Heck gegen Bäume)",
                        "Zweitbeste: Kurs 210°, 10° neben dem Wind (wenig Raum, Heck gegen Bäume)",
                        "10° neben dem Wind; gerade dagegen: kommt über H1 (Posten)",
                        "Kurse 000° bis 080°: Rückenwind über 5 kt bei 7 kt Wind",
                        "Kurse 170° bis 200°: kein Raum, Heck gegen Bäume",
                        "Kurse 260° bis 280°: kommt über H1 (Posten)");
    }

    /** As the readers of files say them of a list with slips of the pen. */
    @Test
    void what_is_wrong_in_a_cell_is_german_to_its_end() {
        assertThat(
                        said(
                                "/assets/words.js",
                                List.of(
                                        "is no known kind, found \"bagg\", perhaps \"bag\" is meant",
                                        "has an unknown unit, found \"61o\", kg or lb",
                                        "is out of range, found \"-5\", above 0 and at most 20000 kg, which is 0 to 44092.45 lb",
                                        "is below the mean wind, found \"5\", empty, or at least the mean wind",
                                        "is out of range, found \"101\", between 0 and 100 percent",
                                        "is out of range, found \"0\", between 1 minute and 24 hours",
                                        "has no rows, a header and at least one row",
                                        "has no rows, a header with id, alone where there is nothing to state")))
                .containsExactly(
                        "ist keine bekannte Art, gefunden \"bagg\", vielleicht ist \"bag\" gemeint",
                        "hat eine unbekannte Einheit, gefunden \"61o\", kg oder lb",
                        "liegt außerhalb, gefunden \"-5\", über 0 und höchstens 20000 kg, das ist 0 bis 44092.45 lb",
                        "ist weniger als das Mittel, gefunden \"5\", leer oder mindestens das Mittel",
                        "liegt außerhalb, gefunden \"101\", zwischen 0 und 100 Prozent",
                        "liegt außerhalb, gefunden \"0\", zwischen 1 Minute und 24 Stunden",
                        "hat keine Zeilen, eine Kopfzeile und mindestens eine Zeile",
                        "hat keine Zeilen, eine Kopfzeile mit id, allein, wo es nichts zu nennen gibt");
    }

    /** A hole of the terrain is three words where others are one. */
    @Test
    void what_is_near_may_be_ground_of_unknown_height() {
        assertThat(
                        said(
                                "/assets/words.js",
                                List.of(
                                        "tracks 170° to 200°: no room, rotor to ground of unknown height",
                                        "With the line 15 m on heading 010° TRUE the tail is near to ground of"
                                                + " unknown height: what is not known comes to 3.3 m.",
                                        "No line in stock leaves a way in to P2 with room: on the best heading,"
                                                + " 0° TRUE, with the longest line that may carry it the rotor has at"
                                                + " most 0.1 m to ground of unknown height and needs 5.0 m. Perhaps a"
                                                + " terrain file that has heights there.")))
                .containsExactly(
                        "Kurse 170° bis 200°: kein Raum, Rotor gegen Boden unbekannter Höhe",
                        "Mit der Leine 15 m auf 010° TRUE kommt (Heck) nahe an Boden unbekannter Höhe: ungewiss sind"
                                + " 3.3 m.",
                        "Mit keiner vorhandenen Leine hat ein Anflug nach P2 Raum: auf dem besten Kurs, 0°"
                                + " rechtweisend, mit der längsten Leine, die sie tragen darf, hat (Rotor) höchstens"
                                + " 0.1 m bis (Boden unbekannter Höhe) und braucht 5.0 m. Vielleicht eine Geländedatei,"
                                + " die dort Höhen hat.");
    }

    @Test
    void air_outside_the_table_is_told_of_with_its_figures() {
        String two =
                "The air at A, S1 lies outside the hover table in every hour that wind and ways leave: at best, at A,"
                        + " the pressure altitude is -22 m and the table runs from 0 to 500 m; the temperature is 21 °C"
                        + " and the table runs from 0 to 20 °C.";

        assertThat(said("/assets/words.js", List.of(two)))
                .containsExactly(
                        "Die Luft an A, S1 liegt in jeder Stunde, die Wind und Wege lassen, außerhalb der"
                                + " Schwebetabelle: bestenfalls, an A, Druckhöhe -22 m, die Tabelle reicht von 0 bis"
                                + " 500 m; Temperatur 21 °C, die Tabelle reicht von 0 bis 20 °C.");
        // 22 m are 72.2 ft, 500 m 1640.4 ft: the table is not told larger than it is.
        assertThat(inPoundsAndFeet(DESK, "en", List.of(two)).get(0))
                .contains("altitude is -72 ft and the table runs from 0 to 1640 ft;");
    }

    /** What was done to a job, what differs, what is wrong in a file, and what a crew does. */
    @Test
    void what_the_desk_lists_is_german_too() {
        assertThat(
                        said(
                                "/assets/words.js",
                                List.of(
                                        "imported from a folder",
                                        "loads.csv changed; loads.xlsx became loads.csv",
                                        "L22 moved on the map",
                                        "GUY_GAP of L22 overridden",
                                        "loads.csv: L01, mass_kg \"80\" → \"90\".",
                                        "L30 is left out now: No mass is stated. It stays behind until it is"
                                                + " weighed.",
                                        "is no known place, found \"A, B\", known are T1, T2",
                                        "walks to S1",
                                        "tracks 090° to 150°: passes H1")))
                .containsExactly(
                        "aus einem Ordner übernommen",
                        "loads.csv geändert; aus loads.xlsx wurde loads.csv",
                        "L22 auf der Karte verschoben",
                        "GUY_GAP von L22 übergangen",
                        "loads.csv: L01, mass_kg \"80\" → \"90\".",
                        "L30 bleibt jetzt liegen: Keine Masse angegeben. Bleibt da, bis gewogen ist.",
                        "ist kein bekannter Platz, gefunden \"A, B\", bekannt sind T1, T2",
                        "geht zu Fuß nach S1",
                        "Kurse 090° bis 150°: kommen an H1 vorbei");
    }

    /** Adelaide kept UTC+10:30 in January 2027 (IANA time zones, from memory): its evening is the next day there. */
    @Test
    void a_moment_is_told_in_the_zone_of_the_job_with_its_offset() {
        String stamps =
                """
                return Promise.all([import('/assets/units.js'), import('/assets/state.js')]).then(([units, { state }]) => {
                  const job = state.job;
                  const all = ['Australia/Adelaide', '-01:00', 'UTC', 'Nowhere/At all'].map((zone) => {
                    state.job = { zone };
                    return units.stamp('2027-01-18T20:00:59Z');
                  });
                  state.job = job;
                  return all;
                });
                """;

        assertThat((List<?>) Objects.requireNonNull(page.run(stamps)))
                .hasToString(
                        "[2027-01-19 06:30 +10:30, 2027-01-18 19:00 -01:00, 2027-01-18 20:00 UTC,"
                                + " 2027-01-18 20:00 UTC]");
    }

    /** Worked by hand: a pound is 0.45359237 kg, a foot 0.3048 m (SP811, exact). */
    @Test
    void a_number_in_a_sentence_is_turned_to_the_safe_side() {
        List<String> metric =
                List.of(
                        // 60 kg are 132.3 lb, 90 kg 198.4 lb
                        "At the best hour it lifts with at most 60 kg of fuel; the trip with reserve and contingency"
                                + " needs 90 kg. Perhaps it can be split.",
                        // 790 kg are 1741.6 lb, 750 kg 1653.5 lb
                        "With the lightest line 790 kg hang on the hook, which may carry 750 kg. Perhaps it can be"
                                + " split.",
                        // 31 m are 101.7 ft
                        "The zone Z1 begins 31 m away, nearer than a last part is long. Mind it on the way in and out.",
                        // 12.3 m are 40.4 ft
                        "People may be landed here, but nothing says what stands within 12.3 m, which rotor or tail with"
                                + " rotor-clearance-m take. Look, and state canopy_m and clearing_radius_m.",
                        // 400 kg are 881.8 lb, 500 kg 1102.3 lb, 300 kg 661.4 lb
                        "A pole of this size weighs 400 to 500 kg, the list says 300 kg. Weigh it. Perhaps fittings are"
                                + " counted in, or pounds and kilograms are mixed up.",
                        // 500 m are 1640.4 ft, 1000 m 3280.8 ft, 2050 kg 4519.5 lb, 1875 kg 4133.7
                        // lb
                        "500 to 1000 m, 10 to 20 °C: 2050, 1995; 1950, 1875 kg",
                        // The name of a sling is no length; a speed keeps its unit. 40 kg are 88.2
                        // lb, 750 1653.5 lb.
                        "rope 15 m carries 40 kg and may carry 750 kg.",
                        "A descent of 7 m/s with 7 m/s of airspeed lies within the vortex ring. Descend slower, or"
                                + " keep the speed up.");

        assertThat(inPoundsAndFeet(DESK, "en", metric))
                .satisfiesExactly(
                        said ->
                                assertThat(said)
                                        .contains("at most 132 lb of fuel", "needs 199 lb."),
                        said ->
                                assertThat(said)
                                        .contains("line 1742 lb hang", "may carry 1653 lb."),
                        said -> assertThat(said).contains("begins 101 ft away"),
                        said -> assertThat(said).contains("within 41 ft,"),
                        said ->
                                assertThat(said)
                                        .contains("weighs 881 to 1103 lb, the list says 662 lb"),
                        said ->
                                assertThat(said)
                                        .isEqualTo(
                                                "1641 to 3280 ft, 10 to 20 °C: 4519, 4398; 4299, 4133 lb"),
                        said ->
                                assertThat(said)
                                        .isEqualTo(
                                                "rope 15 m carries 89 lb and may carry 1653 lb."),
                        said -> assertThat(said).contains("7 m/s of airspeed"));
        assertThat(inPoundsAndFeet(DESK, "de", metric))
                .satisfiesExactly(
                        said ->
                                assertThat(said)
                                        .contains("höchstens 132 lb Treibstoff", "braucht 199 lb."),
                        said ->
                                assertThat(said)
                                        .contains("hängen 1742 lb", "der 1653 lb tragen darf"),
                        said -> assertThat(said).contains("beginnt in 101 ft"),
                        said -> assertThat(said).contains("innerhalb von 41 ft"),
                        said ->
                                assertThat(said)
                                        .contains("wiegt 881 bis 1103 lb, die Liste sagt 662 lb"),
                        said ->
                                assertThat(said)
                                        .isEqualTo(
                                                "1641 bis 3280 ft, 10 bis 20 °C: 4519, 4398; 4299, 4133 lb"),
                        said ->
                                assertThat(said)
                                        .isEqualTo(
                                                "rope 15 m trägt 89 lb und darf 1653 lb tragen."),
                        said -> assertThat(said).contains("7 m/s"));
    }

    /** Worked by hand as above: what there is of room comes out smaller, what hangs heavier. */
    @Test
    void room_that_is_left_is_turned_down_and_what_hangs_up() {
        List<String> metric =
                List.of(
                        // 3.5 m are 11.48 ft
                        "long line at S3 into the wind 3.5 m are to spare, less than the trees' uncertainty.",
                        // 176 m are 577.4 ft
                        "B-S3 goes round an end of this wire, 176 m beyond it.",
                        // 789.8 kg are 1741.2 lb, 750 kg 1653.5 lb
                        "With the lightest line 789.8 kg hang on the hook, which may carry 750 kg.",
                        // 13 m are 42.7 ft, 32 m 104.99 ft
                        "something 13 m high stands 32 m from S3 towards 090 true",
                        // 805 m are 2641.1 ft
                        "Into the wind, 30° to both sides, nothing of roads, houses, people, masts and wires is"
                                + " within 805 m.");

        assertThat(inPoundsAndFeet(DESK, "en", metric))
                .satisfiesExactly(
                        said -> assertThat(said).contains("wind 11 ft are to spare"),
                        said -> assertThat(said).contains("wire, 577 ft beyond it"),
                        said -> assertThat(said).contains("line 1742 lb hang", "carry 1653 lb"),
                        said -> assertThat(said).contains("something 43 ft high stands 104 ft"),
                        said -> assertThat(said).contains("within 2641 ft"));
    }
}
