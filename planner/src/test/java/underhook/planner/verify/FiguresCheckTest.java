package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.geo;
import static underhook.planner.verify.SmallDay.lid;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.PoleSetting;

/** Figures of findings against those that the job or the plan has, by hand. */
class FiguresCheckTest {
    /** A day, a code and a subject; figures that hold, and figures that look better than they are. */
    record Told(SmallDay day, FindingCode code, String subject, String holds, String wrong) {
        @Override
        public String toString() {
            return code + " " + wrong;
        }
    }

    static Stream<Told> told() {
        SmallDay good = SmallDay.good();
        return Stream.of(
                // 940 m closed at 10 m/s with the pole; more than 10 s are told.
                told(good, FindingCode.RELEASE_CLOSED, "A-S2", "94.0 10", "47.0 10"),
                told(good, FindingCode.RELEASE_CLOSED, "A-S2", "94.0 10", "94.0 20"),
                told(good, FindingCode.RELEASE_UNNAMED, "A-S2", "94.0 10", "47.0 10"),
                // Worse than it is, and no figure at all, hold.
                told(good, FindingCode.RELEASE_CLOSED, "A-S2", "120 10", "-1 10"),
                told(good, FindingCode.RELEASE_CLOSED, "A-S2", "many 10", "NaN 10"),
                // 80 kg, a guess: times 1.15.
                told(good, FindingCode.MASS_ESTIMATED, "B3", "80.0 92", "40.0 92"),
                told(good, FindingCode.MASS_ESTIMATED, "B3", "80.0 92", "80.0 80"),
                told(good, FindingCode.HOOK_LIMIT, "X1", "816 700", "816 900"),
                told(good, FindingCode.VORTEX_RING, "small", "787 300", "787 450"),
                // 8 m/s are 15.6 kt.
                told(good, FindingCode.FLIES_BADLY, "X1", "20 16", "20 10"),
                told(
                        good.turn(4, turn -> with(turn, "ballastKg", 15.0)),
                        FindingCode.BALLAST_ADDED,
                        "B1",
                        "15 0",
                        "7 0"),
                told(
                        good.turn(4, turn -> with(turn, "limits", List.of(gust()))),
                        FindingCode.WIND_AT_LIMIT,
                        "B1",
                        "14.0 15.0",
                        "12.0 15.0"),
                told(
                        good.turn(4, turn -> with(turn, "limits", List.of(gust()))),
                        FindingCode.WIND_AT_LIMIT,
                        "B1",
                        "14.0 15.0",
                        "16.0 17.0"),
                told(passing(good), FindingCode.WIRE_NEAR, "W1", "33.1 30.0", "40.0 30.0"),
                told(passing(good), FindingCode.WIRE_NEAR, "W1", "33.1 30.0", "33.1 20.0"),
                // W1 may be passed over 30 m above it.
                told(over(good), FindingCode.WIRE_CROSSING, "A-S2", "0 30", "0 10"),
                told(
                        good.inPlan("poles", List.of(pole())),
                        FindingCode.GUY_PULL,
                        "P1",
                        "773 300",
                        "386 300"),
                told(
                        good.inPlan("poles", List.of(pole())),
                        FindingCode.GUY_PULL,
                        "P1",
                        "773 300",
                        "773 900"),
                told(trail(good), FindingCode.PLACE_NEAR_TRAIL, "S2", "40 60", "59 60"),
                told(read(good), FindingCode.GUY_GAP, "S2", "185.0 180", "181.0 180"),
                told(read(good), FindingCode.GUY_GAP, "S2", "185.0 180", "185.0 190"));
    }

    private static Told told(
            SmallDay day, FindingCode code, String subject, String holds, String wrong) {
        return new Told(day, code, subject, holds, wrong);
    }

    private static Limit gust() {
        return new Limit("WIND_GUST at S2", 14, 15, "kt", 6.6, "rules", true);
    }

    private static SmallDay passing(SmallDay d) {
        Leg.WirePass pass =
                new Leg.WirePass("W1", 33.1, 30, geo(0, 0), OptionalDouble.empty(), true);
        return d.leg(4, 0, leg -> with(leg, "wires", List.of(pass)));
    }

    private static SmallDay over(SmallDay d) {
        return d.leg(
                4,
                0,
                leg ->
                        with(
                                leg,
                                "crossings",
                                List.of(new Leg.Crossing("W1", geo(500, 0), "by agreement"))));
    }

    private static PoleSetting pole() {
        PoleSetting.GuyPull guy = new PoleSetting.GuyPull(0, 5, 0, 377, 199, 773, 0.1, false);
        return new PoleSetting(
                lid("P1"),
                pid("S2"),
                300,
                4,
                8,
                List.of(guy),
                1,
                11,
                0.05,
                0.06,
                120,
                6,
                36,
                34,
                378,
                19);
    }

    private static SmallDay trail(SmallDay d) {
        MapFeature trail =
                new MapFeature(
                        "T1",
                        MapFeature.Kind.TRAIL,
                        MapFeature.Shape.LINE,
                        List.of(geo(1040, -50), geo(1040, 50)),
                        0,
                        CrossingRule.ALLOWED,
                        OptionalDouble.empty(),
                        false,
                        "map");
        List<MapFeature> all = new ArrayList<>(d.job().features());
        all.add(trail);
        return d.inJob("features", all);
    }

    private static SmallDay read(SmallDay d) {
        return d.inJob("readingFindings", List.of(finding(FindingCode.GUY_GAP, "S2", "185.0 180")));
    }

    private static Finding finding(FindingCode code, String subject, String figures) {
        String[] both = figures.split(" ", -1);
        return new Finding(code, Severity.CAUTION, subject, both[0], both[1], "", "rules", "said");
    }

    @ParameterizedTest
    @MethodSource("told")
    void figures_that_look_better_than_they_are_are_refused(Told told) {
        assertThat(complaints(told, told.holds())).isEmpty();
        assertThat(complaints(told, told.wrong()))
                .containsExactly(
                        told.subject()
                                + ": The figures of "
                                + told.code()
                                + " look better than they are.");
    }

    private static List<String> complaints(Told told, String figures) {
        List<Finding> all = new ArrayList<>();
        told.day().plan().findings().stream()
                .filter(one -> one.code() != told.code() || !one.subject().equals(told.subject()))
                .forEach(all::add);
        all.add(finding(told.code(), told.subject(), figures));
        SmallDay day = told.day().inPlan("findings", all);
        return new PlanVerifier()
                .check(day.job(), day.ground(), day.plan()).violations().stream()
                        .filter(one -> one.message().contains("look better"))
                        .map(one -> one.subject() + ": " + one.message())
                        .toList();
    }
}
