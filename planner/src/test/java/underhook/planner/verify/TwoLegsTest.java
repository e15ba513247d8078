package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.line.HungBridle;

class TwoLegsTest {
    private static final double GRAVITY = 9.80665;

    @Test
    void shares_alike_when_both_legs_are() {
        // By hand: legs of 5 m to points 3 m either side stand 4 m high; each pulls 100 / 2 x 5 /
        // 4.
        assertThat(
                        TwoLegs.find(100, new double[] {5, 5}, new double[] {-3, 3}, 0)
                                .orElseThrow()
                                .harderKg())
                .isCloseTo(62.5, within(1e-9));
    }

    @Test
    void hangs_on_one_leg_when_that_one_is_plumb_over_the_centre() {
        // By hand: a leg of 4 m straight over the centre of gravity, the other 5 m to a point 3 m
        // off.
        assertThat(
                        TwoLegs.find(100, new double[] {4, 5}, new double[] {0, 3}, 0)
                                .orElseThrow()
                                .harderKg())
                .isCloseTo(100, within(1e-9));
    }

    /** Against the formula with angles that the plan is made with. @source DERIVED */
    @Test
    void agrees_with_two_circles_over_seeded_bridles() {
        SplittableRandom random = new SplittableRandom(20260908);
        int hung = 0;
        for (int i = 0; i < 5000; i++) {
            double[] legs = {random.nextDouble(0.5, 8), random.nextDouble(0.5, 8)};
            double[] points = {random.nextDouble(-5, 1), random.nextDouble(-1, 5)};
            double above = random.nextDouble(-0.5, 1);
            if (points[1] - points[0] <= 0) {
                continue;
            }
            Optional<HungBridle> expected =
                    HungBridle.find(
                            1,
                            new HungBridle.Attachments(-points[0], points[1], above),
                            legs[0],
                            legs[1]);
            Optional<TwoLegs.Hung> found = TwoLegs.find(1, legs, points, above);
            if (expected.isPresent()) {
                hung++;
                double pull = Math.max(expected.get().tension1N(), expected.get().tension2N());
                assertThat(found.orElseThrow().harderKg()).isCloseTo(pull / GRAVITY, within(1e-6));
                assertThat(found.orElseThrow().flatterRad())
                        .isCloseTo(expected.get().flatterRad(), within(1e-6));
            }
        }
        assertThat(hung).isGreaterThan(1000);
    }
}
