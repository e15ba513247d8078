package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.with;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;

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

    private static SmallDay among(double clearingM, OptionalDouble surveyedM) {
        Ground trees =
                new Ground(
                        SmallDay.FRAME,
                        SmallDay.SLOPE,
                        Optional.of(
                                GridHeightField.of(
                                        new GridShape(-2000, -2000, 5, 800, 800),
                                        (e, n) -> Math.hypot(e - 1000, n) < 15 ? 45 : 0)),
                        0);
        return with(SmallDay.good(), "ground", trees)
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
}
