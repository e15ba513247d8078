package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.Caution;
import underhook.app.port.EmergencyPlan;
import underhook.app.port.OutputWriter.Output;
import underhook.app.port.ReadJob;
import underhook.core.job.PlaceId;

class CardsPdfTest {
    /** Stays after the test, to be looked at. */
    private static final Path SEEN = Path.of("target", "paper-test");

    @TempDir static Path folder;
    private static Path file;

    @BeforeAll
    static void write() throws IOException {
        file = Files.createDirectories(SEEN).resolve("cards.pdf");
        new CardsPdf().write(PaperDay.output(), file);
    }

    private static List<String> pages() throws IOException {
        return pages(file);
    }

    private static List<String> pages(Path written) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(written.toFile())) {
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(true);
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                pages.add(stripper.getText(document));
            }
        }
        return pages;
    }

    private static String all(String title) throws IOException {
        return text(file, title);
    }

    private static String text(Path written, String title) throws IOException {
        return String.join(
                "\n", pages(written).stream().filter(page -> page.startsWith(title)).toList());
    }

    @Test
    void every_page_carries_job_date_version_time_number_and_caution() throws IOException {
        List<String> pages = pages();

        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i).replaceAll("\\s+", " "))
                    .contains("Vessenholt feeder Ø é ü Ž ?, 2026-09-08")
                    .contains("Plan 20260907T201500-7f3a, planned 2026-09-07 20:15 UTC-01:00")
                    .contains("page " + (i + 1) + " of " + pages.size());
            // Page number and caution share lines, so the words are looked for one by one.
            for (String word : Caution.TEXT.split(" ")) {
                assertThat(pages.get(i)).contains(word);
            }
        }
    }

    /** The job's name ends with a sign of Chinese script; code point and name by the Unicode standard. */
    @Test
    void tells_what_the_font_could_not_print() throws IOException {
        assertThat(all("Not printed as written").replaceAll("\\s+", " "))
                .contains("Vessenholt feeder Ø é ü Ž ?")
                .contains("U+4E2D CJK UNIFIED IDEOGRAPHS 4E2D");
    }

    /** Summer time ended in Vienna on 2026-10-25; the plan begins at 07:00 UTC. */
    @Test
    void on_the_day_of_a_clock_change_every_time_has_its_offset() throws IOException {
        Path change = SEEN.resolve("clock-change.pdf");
        new CardsPdf().write(PaperDay.onClockChange(), change);

        try (PDDocument document = Loader.loadPDF(change.toFile())) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");

            assertThat(text).containsPattern("09:\\d\\d \\+02");
            assertThat(text)
                    .doesNotContainPattern("(?<!\\d{4}-\\d\\d-\\d\\d )\\b09:\\d\\d(?! [+U])");
        }
    }

    @Test
    void pages_come_in_order_each_in_its_size() throws IOException {
        List<String> titles =
                List.of(
                        "Pilot page",
                        "Pilot card",
                        "Annex to the pilot card",
                        "Loader's list A",
                        "Loader's list B",
                        "Crew C1",
                        "Crew C2",
                        "Crew HA",
                        "Crew HB",
                        "Briefing",
                        "Guards",
                        "Emergency",
                        "Map",
                        "Beside the plan",
                        "Findings",
                        "Hand signals",
                        "Not printed as written");
        List<String> seen =
                pages().stream()
                        .map(
                                page ->
                                        titles.stream()
                                                .filter(page::startsWith)
                                                .findFirst()
                                                .orElse("?"))
                        .distinct()
                        .toList();

        assertThat(seen).isEqualTo(titles);
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            List<String> pages = pages();
            for (int i = 0; i < pages.size(); i++) {
                PDRectangle box = document.getPage(i).getMediaBox();
                // ISO 216: A5 is 148 by 210 mm, A4 is 210 by 297 mm; half a point for rounding.
                double widthMm =
                        pages.get(i).startsWith("Pilot")
                                ? 148
                                : pages.get(i).startsWith("Map") ? 297 : 210;
                double heightMm = pages.get(i).startsWith("Map") ? 210 : widthMm < 150 ? 210 : 297;
                assertThat(box.getWidth() / 72.0 * 25.4).isCloseTo(widthMm, within(0.2));
                assertThat(box.getHeight() / 72.0 * 25.4).isCloseTo(heightMm, within(0.2));
            }
        }
    }

    @Test
    void flown_numbers_stand_on_the_card_rounded_to_the_safe_side() throws IOException {
        String card = all("Pilot card");

        // Pole: 400.2 kg up; fuel 141.6 kg down; 171.9 kg may be aboard, so the gauge,
        // good to 5 kg, may read 166.9, down; hook 512.3 / 0.3048 = 1680.8 ft up
        // to 1690 ft; 3.2 m/s = 6.22 kt down; 1.1 m/s = 2.14 kt up; -1.2 m/s = -2.33 kt, so a
        // tailwind of 3. Variation 3° E: 228° TRUE is 225° MAG, 47° TRUE is 44° MAG.
        assertThat(card)
                .contains("hook 401 kg", "fuel 141 max 166")
                .contains("Hook: all that hangs on it, load, ballast and line")
                .contains("hook 1690 ft")
                .contains("in from 225°", "out 044° MAG", "head 6", "TAIL 3", "Cross 3 left")
                .contains("Hover mass 2 % NEAR");
        // 512.3 m up to 515 m.
        assertThat(all("Annex to the pilot card"))
                .contains("515 m", "1690 ft", "228°", "047°", "25 m.", "1812", "1849");
    }

    @Test
    void bearing_and_distance_are_from_place_to_place() throws IOException {
        // A (260, -130) to S03 (1260, 400): atan2(1000, 530) = 62.08°, variation 3° E gives 59.08°;
        // hypot(1000, 530) = 1131.8 m. The convergence is 0 within 0.01° so near the meridian.
        assertThat(all("Pilot card")).contains("059° 1.1 km");
        assertThat(all("Annex to the pilot card")).contains("062° TRUE 1.1 km");
    }

    @Test
    void crossings_refuelling_line_people_and_breaks_stand_on_the_card() throws IOException {
        assertThat(all("Pilot card"))
                .contains("RV-9, guard stops the traffic")
                .contains("LL-1 LIVE, NO RELEASE")
                .contains("HEIGHT ASSUMED")
                .contains("REFUEL A", "take 122")
                .contains("LINE at A: fit 25 m", "LINE at B: OFF")
                .contains("CREW A → H", "C2: 4 people, 370 kg.")
                .contains("BREAK at A", "EMPTY A → B", "WAIT at B");
        assertThat(all("Annex to the pilot card")).contains("road RV-9", "LIVE wire LL-1", "HERE");
    }

    @Test
    void guard_minute_is_timed_back_from_the_release() throws IOException {
        // L05 is hooked at 06:35 local and released 2.5 min later; the set-down takes 30 s and the
        // leg
        // A-S05 (1760 m east, 810 m north: 1937.5 m) 77.5 s at 25 m/s, so it begins 42.5 s after
        // hook-up
        // and passes the road in its first tenth: 06:35.
        assertThat(all("Pilot card")).containsPattern("06:35, 06:38 RV-9");
    }

    @Test
    void a_guard_has_every_minute_of_the_day_and_nothing_that_cannot_be_stopped()
            throws IOException {
        String guards = all("Guards");

        // The minutes of the pilot's card, above; a wire has no guard, and a flight with the line
        // off none either.
        assertThat(guards).contains("road RV-9", "06:35, 06:38", "L05", "A → S05 → A");
        assertThat(guards).contains("Guard stops the traffic.").contains("No guard, no load");
        assertThat(guards).doesNotContain("LL-1").doesNotContain("A → H");
    }

    @Test
    void everybody_signs_that_every_wire_near_a_way_was_told() throws IOException {
        String briefing = all("Briefing");

        // Ways come near LL-1 alone. Crews of 3, 4, 2 and 1, whom the job knows by no name.
        assertThat(briefing).contains("LL-1 LIVE").doesNotContain("LV-1");
        assertThat(briefing).contains("C1 3", "C2 4", "HA 2", "HB").doesNotContain("C1 4", "HB 1");
        assertThat(briefing).contains("line 25 m");
    }

    @Test
    void what_the_job_does_not_state_for_the_worst_case_is_missing() throws IOException {
        String sheet = all("Emergency");

        assertThat(sheet)
                .contains("MISSING: the job names nobody to call")
                .containsPattern("LL-1 MISSING _+")
                .contains("MISSING: the job states no time after which a search begins");
        // A lies 260 m east and 130 m south of 46.8° N 12° W. A degree is 111,167 m of latitude and
        // 76,339 m of
        // longitude there (series for the length of a degree on WGS 84, from memory): 0.0702' and
        // 0.2044'.
        assertThat(sheet).contains("46° 47.930' N").contains("011° 59.796' W");
    }

    @Test
    void what_the_job_states_for_the_worst_case_stands_on_paper() throws IOException {
        Output usual = PaperDay.output();
        ReadJob read = usual.readJob();
        EmergencyPlan plan =
                new EmergencyPlan(
                        List.of(new EmergencyPlan.Call("rescue", "000 11", "a machine is down")),
                        List.of(
                                new EmergencyPlan.Isolation(
                                        "LL-1", "control room", "000 22", "dead and earthed")),
                        List.of(
                                new EmergencyPlan.RescueLanding(
                                        new PlaceId("H"), List.of(new PlaceId("S05")), "")),
                        OptionalDouble.of(1800),
                        Optional.empty());
        Path stated = folder.resolve("stated.pdf");
        new CardsPdf()
                .write(
                        new Output(
                                new ReadJob(
                                        read.job(),
                                        read.ground(),
                                        List.of(),
                                        read.stated(),
                                        read.beside(),
                                        new ReadJob.Emergency(plan, Optional.empty()),
                                        read.sums()),
                                usual.plan(),
                                usual.report()),
                        stated);
        String sheet = text(stated, "Emergency");

        assertThat(sheet)
                .contains("rescue 000 11 a machine is down")
                .contains("LL-1 control room 000 22 dead and earthed")
                .contains("Nothing heard for 30 min")
                .doesNotContain("names nobody")
                .doesNotContain("LL-1 MISSING");
        // Only S05 is served by H; the others have the nearest of the job, which nobody named.
        assertThat(sheet).containsPattern("S05.* H, \\d+ m").contains("not named");
    }

    @Test
    void loader_sees_mass_as_typed_and_as_planned() throws IOException {
        String list = all("Loader's list A");

        // L03: 150 + 3 * 7.3 = 171.9 kg estimated, times 1.15 = 197.685 kg, up to 198.
        assertThat(list)
                .contains(
                        "about",
                        "172 kg",
                        "198 EST",
                        "ADD 15 kg",
                        "WITH L02",
                        "WITH L01",
                        "HA hooks",
                        "DANGEROUS",
                        "UN 1202");
        // 210.7 - 88.4 kg, each cut: 210 - 88 = 122 kg; at 0.80 kg a litre 152.5, so 153.
        assertThat(list).contains("REFUEL 122 kg, about 153 litres");
    }

    @Test
    void crew_sees_its_guys_with_the_largest_gap() throws IOException {
        // 020°, 150°, 195°: gaps 130°, 45°, 185°.
        assertThat(all("Crew C2")).contains("gap 185°, outside", "gap 120°, inside");
        assertThat(all("Crew C2")).contains("YOU FLY").contains("Line OFF").contains("TWO people");
    }

    @Test
    void a_crew_with_five_poles_has_two_pages_at_the_most() throws IOException {
        assertThat(pages())
                .filteredOn(page -> page.startsWith("Crew C1, continued"))
                .hasSizeLessThan(2);
    }

    @Test
    void no_label_of_the_map_is_lost() throws IOException {
        String map = all("Map");

        List<String> names =
                new ArrayList<>(
                        List.of(
                                "A fuel",
                                "A' not agreed",
                                "B",
                                "H",
                                "LL-1 LIVE",
                                "LV-1 LIVE",
                                "RV-9",
                                "H-1",
                                "school",
                                "Z1",
                                "Z2 not active",
                                "Z3",
                                "Z4",
                                "Z5",
                                "J1",
                                "J2",
                                "J5 not agreed"));
        for (int i = 1; i <= PaperDay.SITES; i++) {
            names.add(PaperDay.siteId(i));
        }
        assertThat(map).contains(names);
        assertThat(map).contains("road, railway", "trail, track", "mast", "water, forest, other");
        assertThat(map)
                .contains("© OpenStreetMap contributors, ODbL 1.0", "Invented Survey, CC BY 4.0");
    }

    @Test
    void findings_begin_with_what_was_left_out_then_what_stops() throws IOException {
        String findings = all("Findings");

        assertThat(findings)
                .containsSubsequence("2 loads left out", "L33", "L45", "STOP", "CAUTION", "NOTE");
        assertThat(findings).contains("185", "180", "places.csv", "Perhaps it can be");
    }

    @Test
    void no_text_leaves_its_page_and_what_is_flown_is_big() throws IOException {
        Edges edges = edges(file);

        assertThat(edges.outside).isEmpty();
        // 401 is the pole's mass on the hook, 1690 the feet of the set-down.
        assertThat(edges.flownSizes).isNotEmpty().allMatch(size -> size >= 14);
    }

    @Test
    void very_long_names_stay_on_the_page_too() throws IOException {
        Path longNames = folder.resolve("long.pdf");

        new CardsPdf().write(PaperDay.withLongNames(), longNames);

        assertThat(edges(longNames).outside).isEmpty();
    }

    private static Edges edges(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            Edges edges = new Edges();
            edges.getText(document);
            return edges;
        }
    }

    /** Collects text that comes nearer than 12 points to an edge of its page. */
    private static final class Edges extends PDFTextStripper {
        final List<String> outside = new ArrayList<>();
        final List<Float> flownSizes = new ArrayList<>();

        @Override
        protected void writeString(String text, List<TextPosition> positions) {
            PDRectangle box = getCurrentPage().getMediaBox();
            for (TextPosition one : positions) {
                if (one.getXDirAdj() < 12
                        || one.getXDirAdj() + one.getWidthDirAdj() > box.getWidth() - 12
                        || one.getYDirAdj() < 12
                        || one.getYDirAdj() > box.getHeight() - 12) {
                    outside.add(text);
                }
            }
            StringBuilder letters = new StringBuilder();
            positions.forEach(one -> letters.append(one.getUnicode().charAt(0)));
            for (String flown : List.of("401", "1690", "044°")) {
                int begin = box.getWidth() < 450 ? letters.indexOf(flown) : -1;
                for (int i = begin; begin >= 0 && i < begin + flown.length(); i++) {
                    flownSizes.add(positions.get(i).getFontSizeInPt());
                }
            }
        }
    }

    @Test
    void fonts_are_embedded_as_subsets() throws IOException {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);

                    assertThat(font.isEmbedded()).isTrue();
                    // A subset's name begins with six letters and a plus sign, ISO 32000-1, 9.6.4.
                    assertThat(font.getName()).matches("[A-Z]{6}\\+LiberationSans(-Bold)?");
                }
            }
        }
    }

    @Test
    void the_same_plan_gives_the_same_bytes() throws IOException {
        Path again = folder.resolve("again.pdf");

        new CardsPdf().write(PaperDay.output(), again);

        assertThat(Files.readAllBytes(again)).isEqualTo(Files.readAllBytes(file));
    }

    /** C1 guys its pole at S03 and hooks there what goes on to S04. */
    @Test
    void a_crew_sees_where_it_hooks_up() throws IOException {
        Path moved = folder.resolve("moved.pdf");

        new CardsPdf().write(PaperDay.without(PaperDay.movedOn()), moved);

        try (PDDocument document = Loader.loadPDF(moved.toFile())) {
            assertThat(new PDFTextStripper().getText(document))
                    .contains("What you hook up")
                    .contains("C1 hooks at S03.");
        }
    }

    /** No way is flown, so none is told: from a place to itself there is no bearing. */
    @Test
    void a_machine_that_stays_where_it_set_down_is_given_no_bearing_from_there()
            throws IOException {
        Path staying = folder.resolve("staying.pdf");

        new CardsPdf().write(PaperDay.without(PaperDay.staying()), staying);

        try (PDDocument document = Loader.loadPDF(staying.toFile())) {
            assertThat(new PDFTextStripper().getText(document).replaceAll("\\s+", " "))
                    .contains("THEN stay at S04.")
                    .doesNotContain(" 0.0 km");
        }
    }

    @Test
    void a_plan_without_steps_says_so() throws IOException {
        Path empty = folder.resolve("empty.pdf");

        new CardsPdf().write(PaperDay.without(List.of()), empty);

        try (PDDocument document = Loader.loadPDF(empty.toFile())) {
            assertThat(new PDFTextStripper().getText(document)).contains("No step is planned.");
        }
    }
}
