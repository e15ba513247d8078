package underhook.core.fall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import underhook.core.job.LoadShape;
import underhook.testkit.SeededSamples;

class RunoutTest {
    @Test
    void slides_v_squared_over_two_mu_g_on_level_ground() {
        // DERIVED: 10 m/s along, no blow: 100 / (2 x 0.4 x 9.80665) = 12.746 m.
        assertThat(Runout.runM(LoadShape.BAG, 10, 0, 0)).isCloseTo(12.746, within(0.001));
    }

    @Test
    void a_steep_blow_stops_it() {
        // 0.4 x 30 m/s into the ground takes more than the 10 m/s along it.
        assertThat(Runout.runM(LoadShape.BAG, 10, 30, 0)).isZero();
    }

    @Test
    void runs_to_the_cap_where_friction_does_not_hold() {
        // tan 30° = 0.577 is above 0.4.
        assertThat(Runout.runM(LoadShape.BAG, 0, 20, Math.toRadians(30))).isEqualTo(60);
        assertThat(Runout.runsAway(LoadShape.BAG, Math.toRadians(30))).isTrue();
        assertThat(Runout.runsAway(LoadShape.BAG, Math.toRadians(20))).isFalse();
    }

    @Test
    void round_things_run_farther_than_bags_and_farther_downhill_than_up() {
        SeededSamples.of(7)
                .forEach(
                        300,
                        samples -> {
                            double along = samples.between(0, 40);
                            double down = samples.between(0, 40);
                            double fall = samples.between(0, 0.6);
                            double bagDown = Runout.runM(LoadShape.BAG, along, down, fall);

                            assertThat(Runout.runM(LoadShape.ROUND, along, down, fall))
                                    .isGreaterThanOrEqualTo(bagDown);
                            assertThat(Runout.runM(LoadShape.BAG, along, down, -fall))
                                    .isLessThanOrEqualTo(bagDown + 1e-9);
                            assertThat(bagDown).isBetween(0.0, 60.0);
                        });
    }

    @Test
    void refuses_an_overhang() {
        assertThatThrownBy(() -> Runout.runM(LoadShape.BOX, 1, 1, Math.PI / 2))
                .hasMessageContaining("fallRad");
    }
}
