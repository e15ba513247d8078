package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.planner.route.HeightProfile.Need;
import underhook.planner.route.HeightProfile.Profile;

/** 30 m of line and load, 20 m clear below them: the hook flies 50 m above the highest near it. */
class HeightProfileTest {
    /** Altitudes of some hundred metres in double arithmetic. */
    private static final double ROUNDING_M = 1e-6;

    private static final Need BARE = new Need(30, 20, 0.2, 0.1, 0);
    private static final PlanePoint WEST = new PlanePoint(0, 0);
    private static final PlanePoint EAST = new PlanePoint(300, 0);

    @Test
    void flies_level_over_a_plane() {
        Profile profile = over(eastM -> 500).find(List.of(WEST, EAST), BARE).orElseThrow();

        assertProfile(profile, List.of(0.0, 300.0), List.of(550.0, 550.0));
        assertThat(profile.leastClearanceM()).isCloseTo(20, within(ROUNDING_M));
    }

    @Test
    void flies_higher_by_the_canopy() {
        Need trees = new Need(30, 20, 0.2, 0.1, 15);

        Profile profile = over(eastM -> 500).find(List.of(WEST, EAST), trees).orElseThrow();

        // 500 + 15 + 20 + 30; the 20 m are kept from the tree tops.
        assertProfile(profile, List.of(0.0, 300.0), List.of(565.0, 565.0));
        assertThat(profile.leastClearanceM()).isCloseTo(20, within(ROUNDING_M));
    }

    /** A raster of trees ends 20 m north of the way: those in it count, and those assumed where it ends do. */
    @ParameterizedTest
    @CsvSource({"25, 15, 27", "9, 15, 15", "0, 15, 15", "25, 0, 27"})
    void flies_higher_by_the_higher_of_trees_seen_and_assumed_where_the_raster_ends(
            double seenM, double assumedM, double countsM) {
        Ground half =
                new Ground(
                        LocalFrame.of(new GeoPoint(46.8, -12.0)),
                        GridHeightField.of(new GridShape(-100, -100, 10, 60, 20), (e, n) -> 500),
                        Optional.of(
                                GridHeightField.of(
                                        new GridShape(-400, 20, 5, 240, 20), (e, n) -> seenM)),
                        2);

        Profile profile =
                new HeightProfile(half, List.of(), 30)
                        .find(List.of(WEST, EAST), new Need(30, 20, 0.2, 0.1, assumedM))
                        .orElseThrow();

        assertThat(HeightProfile.hookAmslM(profile.alongM(), profile.hookAmslM(), 150))
                .isCloseTo(550 + countsM, within(ROUNDING_M));
    }

    @Test
    void climbs_before_a_step() {
        // Up by 60 m at 200 m. The sample at 190 m is the first that sees it within 12 m, so the
        // hook is at 610 m there; 190 m before it is lower by 0.2 * 190 = 38 m.
        Profile profile =
                over(HeightProfileTest::stepAmslM).find(List.of(WEST, EAST), BARE).orElseThrow();

        assertProfile(profile, List.of(0.0, 190.0, 300.0), List.of(572.0, 610.0, 610.0));
        assertThat(profile.leastClearanceM()).isCloseTo(20, within(ROUNDING_M));
    }

    @Test
    void descends_behind_a_step() {
        // The other way the step is left behind after 300 - 190 = 110 m; 190 m on the hook is lower
        // by 0.1 * 190 = 19 m.
        Profile profile =
                over(HeightProfileTest::stepAmslM).find(List.of(EAST, WEST), BARE).orElseThrow();

        assertProfile(profile, List.of(0.0, 110.0, 300.0), List.of(610.0, 610.0, 591.0));
    }

    @Test
    void stays_high_over_a_valley() {
        Profile profile =
                over(eastM -> eastM < 50 || eastM > 250 ? 560 : 500)
                        .find(List.of(WEST, EAST), BARE)
                        .orElseThrow();

        assertProfile(profile, List.of(0.0, 300.0), List.of(610.0, 610.0));
    }

    @Test
    void clears_a_wire_by_its_own_rule() {
        // Top of the wire 500 + 40, 25 m above it, 30 m of line and load, 2 m to spare: 597 m
        // within
        // 20 + 5 + 12 = 37 m of 150 m, that is from the sample at 120 m to that at 180 m. Before it
        // 0.2 * 120 = 24 m lower, after it 0.1 * 120 = 12 m.
        HeightProfile heights =
                new HeightProfile(
                        ground(eastM -> 500),
                        List.of(Wires.northSouth(150, CrossingRule.ALLOWED, 540)));

        Profile profile = heights.find(List.of(WEST, EAST), BARE).orElseThrow();

        assertProfile(
                profile, List.of(0.0, 120.0, 180.0, 300.0), List.of(573.0, 597.0, 597.0, 585.0));
    }

    @Test
    void clears_the_ground_between_the_centres_of_large_cells() {
        // Cells of 90 m on ground that climbs one in two: between centres it is higher than the
        // lower cell says. Checked against the interpolated height itself, at every metre.
        GridHeightField coarse =
                GridHeightField.of(
                        new GridShape(-450, -450, 90, 20, 10),
                        (eastM, northM) -> 500 + 0.5 * eastM + 0.3 * northM);
        HeightProfile heights =
                new HeightProfile(
                        new Ground(
                                LocalFrame.of(new GeoPoint(46.8, -12.0)),
                                coarse,
                                Optional.empty(),
                                0),
                        List.of());

        Profile profile = heights.find(List.of(WEST, EAST), BARE).orElseThrow();

        for (double alongM = 0; alongM <= 300; alongM++) {
            double hookAmslM =
                    HeightProfile.hookAmslM(profile.alongM(), profile.hookAmslM(), alongM);
            assertThat(hookAmslM - 50).isGreaterThanOrEqualTo(coarse.heightM(alongM, 0));
        }
    }

    @Test
    void has_no_profile_where_the_ground_is_not_known() {
        // The ground ends at 500 m; 12 m and three quarters of a cell of 10 m round every sample
        // must be known: 500 - 19.5 = 480.5 m.
        HeightProfile heights = over(eastM -> 500);

        assertThat(heights.find(List.of(WEST, new PlanePoint(480, 0)), BARE)).isPresent();
        assertThat(heights.find(List.of(WEST, new PlanePoint(481, 0)), BARE)).isEmpty();
    }

    /**
     * A bank of 30 m stands 20 m to the side from 100 to 200 m: half a strip of 30 m holds it, 12 m and three
     * quarters of a cell of 10 m do not. Within 60 m of the ends the strip is no wider than 12 m.
     * Common practice, no source; the figures by hand.
     */
    @Test
    void clears_what_stands_in_the_strip() {
        Ground bank =
                new Ground(
                        LocalFrame.of(new GeoPoint(46.8, -12.0)),
                        GridHeightField.of(
                                new GridShape(-100, -100, 10, 60, 20),
                                (eastM, northM) ->
                                        eastM > 100 && eastM < 200 && northM > 20 ? 530 : 500),
                        Optional.empty(),
                        0);

        Profile narrow =
                new HeightProfile(bank, List.of(), 12)
                        .find(List.of(WEST, EAST), BARE)
                        .orElseThrow();
        Profile wide =
                new HeightProfile(bank, List.of(), 30)
                        .find(List.of(WEST, EAST), BARE)
                        .orElseThrow();

        assertProfile(narrow, List.of(0.0, 300.0), List.of(550.0, 550.0));
        assertThat(HeightProfile.hookAmslM(wide.alongM(), wide.hookAmslM(), 150)).isEqualTo(580);
    }

    private static double stepAmslM(double eastM) {
        return eastM < 200 ? 500 : 560;
    }

    private static HeightProfile over(DoubleUnaryOperator amslM) {
        return new HeightProfile(ground(amslM), List.of());
    }

    /** Cells of 10 m, from 100 m west to 500 m east and 100 m to the north and south. */
    private static Ground ground(DoubleUnaryOperator amslM) {
        return new Ground(
                LocalFrame.of(new GeoPoint(46.8, -12.0)),
                GridHeightField.of(
                        new GridShape(-100, -100, 10, 60, 20),
                        (eastM, northM) -> amslM.applyAsDouble(eastM)),
                Optional.empty(),
                0);
    }

    private static void assertProfile(
            Profile profile, List<Double> alongM, List<Double> hookAmslM) {
        assertThat(profile.alongM()).hasSameSizeAs(alongM);
        for (int i = 0; i < alongM.size(); i++) {
            assertThat(profile.alongM().get(i)).isCloseTo(alongM.get(i), within(ROUNDING_M));
            assertThat(profile.hookAmslM().get(i)).isCloseTo(hookAmslM.get(i), within(ROUNDING_M));
        }
    }
}
