package underhook.app.flying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.air.Wind;

/** Two winds of one hour, by hand: whichever holds, it is no worse than what the pilot reads. */
class WindThereTest {
    private static final double TRACK_RAD = Math.toRadians(240);

    @Test
    void of_two_winds_the_least_head_and_the_most_cross_are_told() {
        // 6 cos 50° = 3.86 and 6 sin 50° = 4.60; the stronger one has 10 ahead and none beside.
        WindThere wind = wind(new Wind(TRACK_RAD, 10), new Wind(Math.toRadians(290), 6));

        assertThat(wind.headMPerS(TRACK_RAD)).isCloseTo(3.86, within(0.005));
        assertThat(wind.crossMPerS(TRACK_RAD)).isCloseTo(4.60, within(0.005));
    }

    @Test
    void of_two_winds_the_one_from_behind_is_told_and_the_side_that_it_is_from() {
        // 4 from 130°: 4 cos 110° = -1.37, from the left 4 sin 110° = 3.76.
        WindThere wind = wind(new Wind(TRACK_RAD, 10), new Wind(Math.toRadians(130), 4));

        assertThat(wind.headMPerS(TRACK_RAD)).isCloseTo(-1.37, within(0.005));
        assertThat(wind.crossMPerS(TRACK_RAD)).isCloseTo(-3.76, within(0.005));
    }

    private static WindThere wind(Wind one, Wind other) {
        return new WindThere(
                one.fromTrueRad(), one.speedMPerS(), one.speedMPerS(), other, Optional.empty());
    }
}
