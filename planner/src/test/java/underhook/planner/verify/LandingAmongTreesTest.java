package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.job.Place;
import underhook.core.job.PlaceKind;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;

/**
 * A raster shows trees 45 m high within 15 m of S2, where people are landed and fetched on a way at 140 m over ground at
 * 100 m: 5 m too high. By hand.
 */
class LandingAmongTreesTest {
    private static long refused(SmallDay day) {
        return new PlanVerifier()
                .check(day.job(), day.ground(), day.plan()).violations().stream()
                        .filter(one -> one.code() == FindingCode.LEG_CLEARANCE)
                        .filter(one -> one.message().contains("at an end"))
                        .filter(one -> one.subject().matches("A-S2|S2-A"))
                        .count();
    }

    private static Ground treesAround(double eastM, double northM) {
        return new Ground(
                SmallDay.FRAME,
                SmallDay.SLOPE,
                Optional.of(
                        GridHeightField.of(
                                new GridShape(-2000, -2000, 5, 800, 800),
                                (e, n) -> Math.hypot(e - eastM, n - northM) < 15 ? 45 : 0)),
                0);
    }

    private static SmallDay among(double clearingM, OptionalDouble surveyedM) {
        return with(SmallDay.good(), "ground", treesAround(1000, 0))
                .place("S2", "canopyM", surveyedM)
                .place("S2", "clearingRadiusM", clearingM);
    }

    @Test
    void who_saw_a_clearing_is_believed_where_the_machine_comes_down_with_the_line_off() {
        long unseen = refused(among(20, OptionalDouble.empty()));
        long seen = refused(among(20, OptionalDouble.of(2)));

        // The landing and the way on from it; with the line on, a raster counts all the same.
        assertThat(unseen - seen).isEqualTo(2);
        assertThat(seen).isPositive();
    }

    @Test
    void nobody_saw_what_stands_beyond_the_clearing() {
        assertThat(refused(among(5, OptionalDouble.of(2))))
                .isEqualTo(refused(among(20, OptionalDouble.empty())));
    }

    private static List<FindingCode> saidOf(OptionalDouble surveyedM) {
        return saidOf(surveyedM, treesAround(400, -300));
    }

    private static List<FindingCode> saidOf(OptionalDouble surveyedM, Ground ground) {
        return saidOf(surveyedM, 20, ground);
    }

    private static List<FindingCode> saidOf(
            OptionalDouble surveyedM, double clearingM, Ground ground) {
        Place landing = SmallDay.place("H", PlaceKind.LANDING, 400, -300);
        landing = with(with(landing, "canopyM", surveyedM), "landingAsked", true);
        landing = with(landing, "clearingRadiusM", clearingM);
        List<Place> places = new ArrayList<>(SmallDay.good().job().places());
        places.add(with(landing, "standing", true));
        SmallDay day = with(SmallDay.good(), "ground", ground).inJob("places", places);
        return DayPlanner.plan(
                        day.job(),
                        day.ground(),
                        new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false, () -> false),
                        (what, share) -> {})
                .fold((plan, findings) -> plan.findings(), findings -> findings)
                .stream()
                .filter(one -> one.subject().equals("H"))
                .map(Finding::code)
                .toList();
    }

    @Test
    void nobody_is_landed_where_a_raster_has_trees_that_nobody_surveyed() {
        assertThat(saidOf(OptionalDouble.empty())).contains(FindingCode.LANDING_IN_TREES);
        assertThat(saidOf(OptionalDouble.of(2))).doesNotContain(FindingCode.LANDING_IN_TREES);
    }

    /** Trees from 10 m on; tail 7.5 m and 5 m of margin reach 12.5 m. By hand. */
    @Test
    void the_check_refuses_trees_beside_the_spot_that_the_planner_does_not_land_at() {
        Ground beside = ringed(1000, 0, 10);
        SmallDay unseen =
                with(SmallDay.good(), "ground", beside)
                        .place("S2", "canopyM", OptionalDouble.empty());
        assertThat(inTrees(unseen)).contains("S2");
        assertThat(inTrees(with(SmallDay.good(), "ground", beside))).isEmpty();
        assertThat(inTrees(with(unseen, "ground", ringed(1000, 0, 18)))).isEmpty();
    }

    private static List<String> inTrees(SmallDay day) {
        return new PlanVerifier()
                .check(day.job(), day.ground(), day.plan()).violations().stream()
                        .filter(one -> one.code() == FindingCode.LANDING_IN_TREES)
                        .map(Finding::subject)
                        .toList();
    }

    private static Ground ringed(double eastM, double northM, double fromM) {
        return new Ground(
                SmallDay.FRAME,
                SmallDay.SLOPE,
                Optional.of(
                        GridHeightField.of(
                                new GridShape(-2000, -2000, 1, 4000, 4000),
                                (e, n) -> {
                                    double off = Math.hypot(e - eastM, n - northM);
                                    return off >= fromM && off < fromM + 4 ? 45 : 0;
                                })),
                0);
    }

    @Test
    void nobody_is_landed_where_trees_stand_beside_the_spot() {
        assertThat(saidOf(OptionalDouble.empty(), ringed(400, -300, 10)))
                .contains(FindingCode.LANDING_IN_TREES);
        assertThat(saidOf(OptionalDouble.empty(), ringed(400, -300, 18)))
                .doesNotContain(FindingCode.LANDING_IN_TREES);
    }

    /** A raster reads 0.2 m over the whole ground: grass, over which people are landed as ever. */
    @Test
    void grass_is_no_tree() {
        SmallDay unseen = SmallDay.good().place("S2", "canopyM", OptionalDouble.empty());

        assertThat(inTrees(with(unseen, "ground", grown(0.2)))).isEmpty();
        assertThat(inTrees(with(unseen, "ground", grown(0.4)))).contains("S2");
        assertThat(saidOf(OptionalDouble.empty(), grown(0.2)))
                .doesNotContain(FindingCode.LANDING_IN_TREES);
        assertThat(saidOf(OptionalDouble.empty(), grown(0.4)))
                .contains(FindingCode.LANDING_IN_TREES);
    }

    /** As over a raster: who states 0.2 m has seen grass. */
    @Test
    void grass_is_no_tree_where_somebody_states_it_either() {
        SmallDay day = SmallDay.good().place("S2", "clearingRadiusM", 5.0);

        assertThat(inTrees(day.place("S2", "canopyM", OptionalDouble.of(0.2)))).isEmpty();
        assertThat(inTrees(day.place("S2", "canopyM", OptionalDouble.of(0.4)))).contains("S2");
        assertThat(saidStating(0.2)).doesNotContain(FindingCode.LANDING_IN_TREES);
        assertThat(saidStating(0.4)).contains(FindingCode.LANDING_IN_TREES);
    }

    private static List<FindingCode> saidStating(double canopyM) {
        return saidOf(OptionalDouble.of(canopyM), 5, SmallDay.good().ground());
    }

    @Test
    void a_tree_is_refused_for_being_above_grass_not_above_nothing() {
        SmallDay unseen = SmallDay.good().place("S2", "canopyM", OptionalDouble.empty());

        assertThat(
                        new PlanVerifier()
                                        .check(unseen.job(), ringed(1000, 0, 10), unseen.plan())
                                        .violations()
                                        .stream()
                                        .filter(one -> one.code() == FindingCode.LANDING_IN_TREES))
                .extracting(one -> one.value() + " " + one.limit() + " " + one.unit())
                .contains("45.00 0.30 m");
    }

    /** The raster ends 5 m west of the spot; 12.5 m are taken. Trees stand from 10 m on, east or west. By hand. */
    @Test
    void what_a_raster_shows_of_a_part_counts_and_the_rest_is_said_to_be_unknown() {
        SmallDay unseen = SmallDay.good().place("S2", "canopyM", OptionalDouble.empty());
        Ground eastOf = cutAt(995, ringed(1000, 0, 10));

        assertThat(inTrees(with(unseen, "ground", eastOf))).contains("S2");
        assertThat(inTrees(with(unseen, "ground", cutAt(995, ringed(1000, 0, 18))))).isEmpty();
        assertThat(saidOf(OptionalDouble.empty(), cutAt(395, ringed(400, -300, 10))))
                .contains(FindingCode.LANDING_IN_TREES)
                .doesNotContain(FindingCode.LANDING_UNSEEN);
        assertThat(saidOf(OptionalDouble.empty(), cutAt(395, ringed(400, -300, 18))))
                .contains(FindingCode.LANDING_UNSEEN)
                .doesNotContain(FindingCode.LANDING_IN_TREES);
    }

    @Test
    void it_is_said_where_nobody_knows_what_stands_round_a_landing() {
        Ground bare = new Ground(SmallDay.FRAME, SmallDay.SLOPE, Optional.empty(), 0);

        assertThat(saidOf(OptionalDouble.empty(), bare)).contains(FindingCode.LANDING_UNSEEN);
        assertThat(saidOf(OptionalDouble.of(2), bare)).doesNotContain(FindingCode.LANDING_UNSEEN);
        assertThat(saidOf(OptionalDouble.empty(), grown(0.2)))
                .doesNotContain(FindingCode.LANDING_UNSEEN);
    }

    /** The same with a raster that begins there, cells of 1 m. */
    private static Ground cutAt(double westM, Ground ground) {
        HeightField whole = ground.canopy().orElseThrow();
        return new Ground(
                SmallDay.FRAME,
                SmallDay.SLOPE,
                Optional.of(
                        GridHeightField.of(
                                new GridShape(westM, -2000, 1, 1000, 4000),
                                (e, n) -> whole.heightM(e, n))),
                0);
    }

    private static Ground grown(double heightM) {
        return new Ground(
                SmallDay.FRAME,
                SmallDay.SLOPE,
                Optional.of(
                        GridHeightField.of(
                                new GridShape(-2000, -2000, 5, 800, 800), (e, n) -> heightM)),
                0);
    }
}
