package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.ReadJob;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.core.geo.PlanePoint;
import underhook.core.job.PlaceId;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.LegFinder;
import underhook.planner.route.PlaceHour;
import underhook.planner.route.RoomView;
import underhook.planner.route.WayIn;

/** Bags from both laydowns in the lower valley. What is expected stands in the invented day's own table. */
@Tag("slow")
class OtherLaydownIT {
    /** 8 September, 08:00: from 220°, 7 kt, of which 0.55 are felt in the valley. */
    private static final LegFinder.PlaceWind WIND =
            new LegFinder.PlaceWind(Math.toRadians(220), 2.0);

    private static final List<String> BAG = List.of("bag");
    private static final double LINE_M = 25;

    @TempDir private Path temp;

    @Test
    void the_meadow_north_of_the_road_takes_the_road_crossing_away_and_not_that_of_the_live_line()
            throws Exception {
        Underhook program =
                new Underhook(Settings.from(Map.of("UNDERHOOK_HOME", temp + "/data"), temp));
        Path folder = temp.resolve("job");
        program.writeDemo(folder);
        ReadJob read = program.jobReader().read(folder).job().orElseThrow();
        LegFinder finder = new LegFinder(read.job(), read.ground());

        for (String site : List.of("S02", "S03", "S04", "S05")) {
            assertThat(passedAnyhow(read, finder, "A", site))
                    .as("A-" + site)
                    .isNotEmpty()
                    .allMatch(passed -> passed.contains("RV9"));
            assertThat(passedAnyhow(read, finder, "A2", site))
                    .as("A2-" + site)
                    .anyMatch(passed -> !passed.contains("RV9"));
        }
        // Into the wind the turn behind the way out took the side over the road before turns had a
        // price.
        assertThat(passed(read, finder, "A2", "S02")).doesNotContain("RV9");
        for (String site : List.of("S03", "S04", "S05")) {
            assertThat(passed(read, finder, "A", site)).as("A-" + site).contains("LL1");
            assertThat(passedAnyhow(read, finder, "A2", site))
                    .as("A2-" + site)
                    .allMatch(passed -> passed.contains("LL1"));
        }
    }

    /** What each legal leg passes over, for ways out and in on every thirtieth degree. */
    private static List<Set<String>> passedAnyhow(
            ReadJob read, LegFinder finder, String from, String to) {
        List<Set<String>> all = new ArrayList<>();
        for (int out = 0; out < 12; out++) {
            LegFinder.End start = end(read, from, out * Math.PI / 6);
            for (int in = 0; in < 12; in++) {
                LegFinder.End end = end(read, to, in * Math.PI / 6);
                finder.findLeg(new LegFinder.Request(start, end, BAG, LINE_M + 1.1, 25))
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

    private static Set<String> passed(ReadJob read, LegFinder finder, String from, String to) {
        LegFinder.End start = end(read, from, way(read, finder, from).departureTrackGridRad());
        LegFinder.End end = end(read, to, way(read, finder, to).approachFromGridRad());
        return finder.findLeg(new LegFinder.Request(start, end, BAG, LINE_M + 1.1, 25)).stream()
                .flatMap(leg -> leg.crossings().stream())
                .map(FlownLeg.Crossed::feature)
                .collect(Collectors.toSet());
    }

    private static WayIn way(ReadJob read, LegFinder finder, String place) {
        return finder.findWayIn(
                        new PlaceHour(
                                point(read, place),
                                List.of(WIND),
                                BAG,
                                0,
                                List.of(),
                                RoomView.NOT_ASKED))
                .orElseThrow();
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
