package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.OutputWriter.Output;
import underhook.app.port.ReadJob;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.plan.Plan;

/** Figures are worked by hand in the comments from the invented day; no source outside. */
class PilotPageTest {
    @TempDir Path folder;

    /** The invented day over level ground at 180 m: A, B and H are then level enough to land. */
    private static Output level(List<Finding> more) {
        Output usual = PaperDay.output();
        GridShape shape = new GridShape(-1000, -1500, 25, 400, 200);
        Ground ground =
                new Ground(
                        PaperDay.FRAME,
                        GridHeightField.of(shape, (east, north) -> 180),
                        Optional.empty(),
                        0);
        Plan plan = usual.plan();
        List<Finding> findings = new ArrayList<>(plan.findings());
        findings.addAll(more);
        return new Output(
                new ReadJob(usual.readJob().job(), ground),
                new Plan(
                        plan.id(),
                        plan.job(),
                        plan.made(),
                        plan.summary(),
                        plan.steps(),
                        plan.crews(),
                        plan.leftOut(),
                        findings,
                        plan.rooms(),
                        plan.poles(),
                        plan.kit(),
                        plan.odds()),
                usual.report());
    }

    private List<String> pages(Output output, String title) throws IOException {
        Path file = folder.resolve("page.pdf");
        new CardsPdf().write(output, file);
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(true);
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                String text = stripper.getText(document);
                if (text.startsWith(title)) {
                    pages.add(text.replaceAll("\\s+", " "));
                }
            }
        }
        return pages;
    }

    @Test
    void the_whole_day_is_one_page_with_every_site_and_what_is_closed() throws IOException {
        List<String> pages = pages(level(List.of()), "Pilot page");

        assertThat(pages).hasSize(1);
        for (int site = 1; site <= PaperDay.SITES; site++) {
            assertThat(pages.get(0)).contains(PaperDay.siteId(site) + " ");
        }
        // 180 m are 590.6 ft; the zones' 100 m 328.1 ft, up. Z2 is closed until August only, and J5
        // not agreed.
        assertThat(pages.get(0))
                .contains("LAND A 591 ft FUEL", "B 591 ft", "H 591 ft")
                .contains("Z1 not over", "Z3 not below 329 ft", "Z4 no hover below 329 ft")
                .contains("Z5 no fuel")
                .contains("LL-1 LIVE", "LV-1 LIVE unregistered", "LET GO J1, J2.")
                .doesNotContain("Z2", "J5");
    }

    /**
     * S03 (1260, 400) to A (260, -130): 1131.8 m at 242.1° TRUE, 239° MAG. Over LL-1, 198 m, and its 30 m, with
     * 40 m of line and 1.1 m of bag: 269.1 m, 882.9 ft. 25 m/s less 6 m/s of gust at an exposure of 0.8: 56.0 s; down
     * from the hook's 512.3 m to 180 m at 3 m/s: 110.8 s; 180 s to land: 346.8 s of 2.5 kg a minute are 14.5 kg;
     * with 46 kg of reserve and 5 kg of the gauge 65.5 kg, up 66.
     */
    @Test
    void each_site_has_the_landing_that_takes_least_fuel() throws IOException {
        String page = pages(level(List.of()), "Pilot page").get(0);

        assertThat(page).containsPattern("S03 A 059° 1\\.1 591 1690 225° A 239° 1\\.1 890 66");
        assertThat(page).contains("ALT past LL-1").doesNotContainPattern("\\d lb");
        // Legs back of 1131.8 m at 25 m/s and 2.3 kg a minute burn 1.7 kg of the 131.9 there, down
        // to
        // 130.2; 346.8 s are 5.8 minutes.
        assertThat(pages(level(List.of()), "Annex to the pilot card").get(0))
                .contains("S03: A 242° 1.1 km, 6 min, 66 kg;")
                .contains("planned 131 kg");
    }

    /**
     * Where A is too steep to land on: B (3740, 760), 2506.0 m at 81.7° TRUE, beside Z1. Over trees of 20 m and
     * 15 m of clearance 256.1 m, 840.2 ft; 124.1 s of way make 414.8 s, 17.3 kg and 68.3 kg in all.
     */
    @Test
    void what_the_plan_refused_as_a_landing_is_none_in_need_either() throws IOException {
        Finding steep =
                Finding.of(
                        FindingCode.LANDING_TOO_STEEP,
                        Severity.NOTE,
                        "A",
                        "rules",
                        "Refused for landing people.");

        String page = pages(level(List.of(steep)), "Pilot page").get(0);

        assertThat(page).containsPattern("S03 A 059° 1\\.1 591 1690 225° B 079° 2\\.5 850 69");
        assertThat(page).contains("past Z1", "A 591 ft FUEL NOT: steep or trees");
    }

    /**
     * A wood of 30 m on both sides of a ridge of 300 m, its corners on the ground at 180 m: its trees stand on the
     * ridge too. 330 m, 15 m of clearance, 40 m of line and 1.1 m of bag: 386.1 m, 1266.7 ft, told as 1270.
     */
    @Test
    void a_wood_stands_on_the_ridge_between_its_corners() throws IOException {
        Output usual = level(List.of());
        List<GeoPoint> corners = new ArrayList<>();
        for (double[] at : new double[][] {{500, -600}, {1000, -600}, {1000, 900}, {500, 900}}) {
            corners.add(geo(at[0], at[1]));
        }
        MapFeature wood =
                new MapFeature(
                        "WOOD",
                        MapFeature.Kind.FOREST,
                        MapFeature.Shape.AREA,
                        corners,
                        0,
                        CrossingRule.ALLOWED,
                        OptionalDouble.of(30),
                        false,
                        "map");
        Ground ridge =
                new Ground(
                        PaperDay.FRAME,
                        GridHeightField.of(
                                new GridShape(-1000, -1500, 25, 400, 200),
                                (east, north) -> Math.abs(east - 750) < 60 ? 300 : 180),
                        Optional.empty(),
                        0);
        Job job = usual.readJob().job().withFeatures(List.of(wood));

        String page =
                pages(
                                new Output(new ReadJob(job, ridge), usual.plan(), usual.report()),
                                "Pilot page")
                        .get(0);

        assertThat(page).containsPattern("S03 A 059° 1\\.1 591 1690 225° A 239° 1\\.1 1270 ");
    }

    /** S03 (1260, 400) to A (260, -130): over a road at y = 60 that is guarded, 40 m beside a house that keeps 150 m. */
    @Test
    void what_loads_may_not_be_flown_over_is_named_on_the_way() throws IOException {
        Output usual = level(List.of());
        Job job =
                usual.readJob()
                        .job()
                        .withFeatures(
                                List.of(
                                        line("ROAD", CrossingRule.GUARDED, 60),
                                        line("TRACK", CrossingRule.ALLOWED, 80),
                                        house("HOUSE", 780, 100),
                                        house("FARM", 780, 700)));

        String page = pages(at(usual, job), "Pilot page").get(0);

        assertThat(page).contains("past LL-1, ROAD, HOUSE.").doesNotContain("TRACK", "FARM");
    }

    private static MapFeature line(String id, CrossingRule rule, double northM) {
        return new MapFeature(
                id,
                MapFeature.Kind.ROAD,
                MapFeature.Shape.LINE,
                List.of(geo(-500, northM), geo(2000, northM)),
                0,
                rule,
                OptionalDouble.empty(),
                false,
                "map");
    }

    private static MapFeature house(String id, double eastM, double northM) {
        return new MapFeature(
                id,
                MapFeature.Kind.HOUSE,
                MapFeature.Shape.POINT,
                List.of(geo(eastM, northM)),
                150,
                CrossingRule.NEVER,
                OptionalDouble.empty(),
                false,
                "map");
    }

    private static GeoPoint geo(double eastM, double northM) {
        return PaperDay.FRAME.toGeo(new PlanePoint(eastM, northM));
    }

    /** No height of trees is stated and no raster shows any: 1000 m around stated free of them were seen by somebody. */
    @Test
    void a_stated_clearing_is_one_that_somebody_saw() throws IOException {
        Output usual = level(List.of());
        Job job = usual.readJob().job().withFeatures(List.of());

        assertThat(pages(at(usual, cleared(job, 0)), "Pilot page").get(0))
                .contains("past LL-1, LOOK FOR TREES");
        assertThat(pages(at(usual, cleared(job, 1000)), "Pilot page").get(0))
                .contains("past LL-1.")
                .doesNotContain("LOOK FOR TREES");
    }

    private static Output at(Output usual, Job job) {
        return new Output(new ReadJob(job, usual.readJob().ground()), usual.plan(), usual.report());
    }

    /** The day with no height of trees stated at any place. */
    private static Job cleared(Job job, double radiusM) {
        return job.withPlaces(
                job.places().stream()
                        .map(
                                one ->
                                        new Place(
                                                one.id(),
                                                one.kind(),
                                                one.name(),
                                                one.position(),
                                                one.statedElevationAmslM(),
                                                OptionalDouble.empty(),
                                                0,
                                                radiusM,
                                                one.exposureFactor(),
                                                one.agreed(),
                                                one.standing(),
                                                one.fuel(),
                                                one.landingAsked(),
                                                one.guyAzimuthsTrueRad(),
                                                one.remarks()))
                        .toList());
    }

    /** On the slope of the day itself no place but A is level, and far in the east the ground ends. */
    @Test
    void nothing_is_called_a_landing_that_is_steep_or_unknown() throws IOException {
        String page = pages(PaperDay.output(), "Pilot page").get(0);

        assertThat(page).doesNotContainPattern("ALT past [^.]*; B").contains("S12");
        assertThat(page).doesNotContainPattern("225° [BH] \\d");
    }

    /**
     * A list of pounds alone: the poles of the day, on a line that is known as 82 ft. 400.2 kg are 882.3 lb, up;
     * 141.6 kg of fuel 312.2 lb and the 166.9 that the gauge may read 367.9 lb, down; 210.7 kg 464.5 lb, down.
     */
    @Test
    void who_lists_pounds_is_told_pounds_and_a_line_by_its_name_in_stock() throws IOException {
        Output poles =
                PaperDay.without(
                        PaperDay.steps().stream()
                                .filter(
                                        step ->
                                                step.rotation().stream()
                                                        .flatMap(one -> one.loads().stream())
                                                        .allMatch(id -> id.value().startsWith("P")))
                                .toList());
        Job job = poles.readJob().job();
        Job pounds =
                job.withLoads(
                                job.loads().stream()
                                        .filter(load -> load.kind().equals("pole"))
                                        .toList())
                        .withMachine(
                                job.machine()
                                        .withLines(List.of(new LineItem("82 ft", 25, 34, 750))));
        Output told =
                new Output(
                        new ReadJob(pounds, poles.readJob().ground()),
                        poles.plan(),
                        poles.report());

        assertThat(String.join(" ", pages(told, "Pilot card")))
                .contains("POUNDS: hook 883, fuel 312 max 367.")
                .contains("LINE at A: fit 82 ft (25 m)", "to 464 lb");
        assertThat(String.join(" ", pages(told, "Pilot page"))).contains("fuel lb");
        // With ten times the flow no landing is in reach of what the plan has aboard.
        Output thirsty = at(told, pounds.withMachine(pounds.machine().withBurn(0.4, 0.4)));
        assertThat(String.join(" ", pages(thirsty, "Pilot page")))
                .containsPattern("PLANNED ONLY \\d+ lb")
                .doesNotContainPattern("PLANNED ONLY \\d+ kg");
        // 363 kg are 800.3 lb, up. From 88 to 210.7 kg are 194 to 464 lb, down: 270 lb, 122.47 kg,
        // at 0.80 kg a
        // litre and 3.785411784 litres a gallon 40.4 gallons.
        assertThat(String.join(" ", pages(told, "Loader's list A")))
                .contains(" 82 ft ")
                .contains("363, 801 lb")
                .contains("(270 lb, about 40 US gal, to 464 lb)");
        assertThat(String.join(" ", pages(told, "Crew C1"))).contains("363, 801 lb");
        assertThat(String.join(" ", pages(PaperDay.output(), "Pilot card")))
                .contains("LINE at A: fit 25 m")
                .doesNotContain("POUNDS");
    }
}
