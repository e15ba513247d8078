package underhook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.ReadJob;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.core.finding.Outcome;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.LegFinder;
import underhook.planner.verify.PlanVerifier;

/** Bags from both laydowns in the lower valley. What is expected stands in the invented day's own table. */
@Tag("slow")
class OtherLaydownIT {
    private static final List<String> BAG = List.of("bag");
    private static final double LINE_M = 25;

    @TempDir private Path temp;

    @Test
    void from_the_bar_every_way_crosses_the_road_and_beyond_the_barn_the_live_line()
            throws Exception {
        ReadJob read = read(program(), demo());
        LegFinder finder = new LegFinder(read.job(), read.ground());

        for (String site : List.of("S01", "S02", "S03", "S04", "S05")) {
            assertThat(passedAnyhow(read, finder, "A", site))
                    .as("A-" + site)
                    .isNotEmpty()
                    .allMatch(passed -> passed.contains("RV9"));
        }
        for (String site : List.of("S03", "S04", "S05")) {
            assertThat(passedAnyhow(read, finder, "A2", site))
                    .as("A2-" + site)
                    .isNotEmpty()
                    .allMatch(passed -> passed.contains("LL1"));
        }
    }

    @Test
    void the_meadow_north_of_the_road_takes_the_road_crossing_away_and_not_that_of_the_live_line()
            throws Exception {
        Plan plan = plannedFromTheMeadow();

        for (String load : List.of("L01", "L02")) {
            assertThat(crossed(plan, load)).as(load).isEmpty();
        }
        for (String load : List.of("L03", "L04", "L05")) {
            assertThat(crossed(plan, load)).as(load).containsExactly("LL1");
        }
        // Into the wind as the places would have it, the turns behind the first and the last part
        // lead over the road.
        assertThat(reasons(plan, "L04"))
                .anyMatch(
                        reason ->
                                reason.startsWith("A2: out on track 140°")
                                        && reason.endsWith("the leg would pass over RV9"));
        assertThat(reasons(plan, "L03").get(0))
                .endsWith("on track 220° the leg would pass over RV9");
    }

    /** The demo's first five bags waiting on the other laydown, with its owner's consent. */
    private Plan plannedFromTheMeadow() throws Exception {
        Underhook program = program();
        Path folder = demo();
        change(
                folder.resolve("loads.csv"),
                text ->
                        text.lines()
                                .limit(6)
                                .map(line -> line.replace(";A;", ";A2;"))
                                .collect(Collectors.joining("\n", "", "\n")));
        change(
                folder.resolve("places.csv"),
                text ->
                        text.replace(
                                "open,0.55,no,yes,no,no,,north", "open,0.55,yes,yes,no,no,,north"));
        change(
                folder.resolve("crews.yaml"),
                text -> {
                    int loader = text.indexOf("id: loader2");
                    return text.substring(0, loader)
                            + text.substring(loader)
                                    .replaceFirst("start: A\n", "start: A2\n")
                                    .replaceFirst("serves: \\[A]", "serves: [A2]");
                });
        ReadJob read = read(program, folder);
        Outcome<Plan> planned =
                DayPlanner.plan(
                        read.job(),
                        read.ground(),
                        new PlanSettings(
                                "p", Instant.parse("2026-09-07T18:00:00Z"), 1, "test", () -> false),
                        (doing, done) -> {});
        Plan plan =
                planned.fold(
                        (made, findings) -> made,
                        findings -> {
                            throw new AssertionError(findings);
                        });
        assertThat(new PlanVerifier().check(read.job(), read.ground(), plan).violations())
                .isEmpty();
        return plan;
    }

    private static void change(Path file, UnaryOperator<String> change) throws IOException {
        Files.writeString(file, change.apply(Files.readString(file, UTF_8)), UTF_8);
    }

    private static List<String> crossed(Plan plan, String load) {
        return rotation(plan, load).legs().stream()
                .filter(leg -> leg.carrying().contains(new LoadId(load)))
                .flatMap(leg -> leg.crossings().stream())
                .map(Leg.Crossing::feature)
                .toList();
    }

    private static List<String> reasons(Plan plan, String load) {
        return rotation(plan, load).drops().get(0).reasons();
    }

    private static Rotation rotation(Plan plan, String load) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .filter(rotation -> rotation.loads().contains(new LoadId(load)))
                .findFirst()
                .orElseThrow();
    }

    private Underhook program() {
        return new Underhook(Settings.from(Map.of("UNDERHOOK_HOME", temp + "/data"), temp));
    }

    private Path demo() throws Exception {
        Path folder = temp.resolve("job");
        program().writeDemo(folder);
        return folder;
    }

    private static ReadJob read(Underhook program, Path folder) {
        return program.jobReader().read(folder).job().orElseThrow();
    }

    /** What each legal leg passes over, for ways out and in on every sixtieth degree. */
    private static List<Set<String>> passedAnyhow(
            ReadJob read, LegFinder finder, String from, String to) {
        List<Set<String>> all = new ArrayList<>();
        for (int out = 0; out < 6; out++) {
            LegFinder.End start = end(read, from, out * Math.PI / 3);
            for (int in = 0; in < 6; in++) {
                LegFinder.End end = end(read, to, in * Math.PI / 3);
                finder.findLeg(new LegFinder.Request(start, end, BAG, LINE_M + 1.1, 25, true))
                        .ifPresent(
                                leg ->
                                        all.add(
                                                leg.crossings().stream()
                                                        .map(FlownLeg.Crossed::feature)
                                                        .collect(Collectors.toSet())));
            }
        }
        return all;
    }

    private static LegFinder.End end(ReadJob read, String place, double bearingRad) {
        PlanePoint at = point(read, place);
        double ground = read.ground().terrain().heightM(at.eastM(), at.northM());
        return new LegFinder.End(at, bearingRad, ground + LINE_M + 1.1);
    }

    private static PlanePoint point(ReadJob read, String place) {
        return read.ground().frame().toPlane(read.job().getPlace(new PlaceId(place)).position());
    }
}
