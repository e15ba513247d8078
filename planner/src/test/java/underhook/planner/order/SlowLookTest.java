package underhook.planner.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.job.PlaceId;
import underhook.core.plan.Leg;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

/** Worked by hand: 1000 m at 20 m/s, slowing over the last 400 m in 40 s. */
class SlowLookTest {
    private static Leg leg(Optional<Leg.Slowing> slowing) {
        return new Leg(
                List.of(),
                new PlaceId("A"),
                new PlaceId("S1"),
                List.of(),
                1000,
                70,
                0,
                10,
                20,
                List.of(),
                List.of(),
                new Leg.Looks(Optional.empty(), slowing, Leg.Exposure.NONE));
    }

    private static ReleaseLook look() {
        return new ReleaseLook(
                List.of(
                        new Stretch(Use.OPEN, 30, 500, 23.5, List.of()),
                        new Stretch(Use.CLOSED, 500, 900, 20, List.of("H1")),
                        new Stretch(Use.OPEN, 900, 970, 3.5, List.of())),
                20,
                47,
                200);
    }

    @Test
    void the_last_stretches_take_longer_than_at_the_leg_s_speed() {
        ReleaseLook slow = SlowLook.of(look(), leg(Optional.of(new Leg.Slowing(400, 40, 0, 0.5))));

        // From 600 to 900 m: 40 s (1 − √(100/400)) = 20 s, and 5 s from 500 to 600 m at 20 m/s.
        assertThat(slow.stretches().get(1).durationS()).isCloseTo(25, within(1e-9));
        // From 900 to 970 m: 40 s (√(100/400) − √(30/400)) = 9.05 s.
        assertThat(slow.stretches().get(2).durationS()).isCloseTo(9.046, within(1e-3));
        assertThat(slow.stretches().get(0).durationS()).isEqualTo(23.5);
        assertThat(slow.longestClosedS()).isEqualTo(25.0);
        assertThat(slow.longestUnnamedS()).isEqualTo(57.6);
    }

    @Test
    void without_slowing_down_nothing_changes() {
        assertThat(SlowLook.of(look(), leg(Optional.empty()))).isEqualTo(look());
    }
}
