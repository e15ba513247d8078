package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FallBoxTest {
    @Test
    void without_drag_it_lies_about_the_throw_of_the_closed_form() {
        // DERIVED v √(2h/g): 20 m/s from 50 m throws 63.87 m; 3 in 100 of speed is 1.92 m either
        // way.
        FallBox box = falls(new Falls.Body(0, 0, 0, 0), new Falls.Toss(20, 0, 0, 0)).at(50);

        assertThat(box.backM()).isCloseTo(63.87 - 1.92, within(0.05));
        assertThat(box.forwardM()).isCloseTo(63.87 + 1.92, within(0.05));
        assertThat(box.leftM()).isCloseTo(0, within(1e-9));
        assertThat(box.rightM()).isCloseTo(0, within(1e-9));
    }

    @Test
    void a_falling_thing_that_drags_much_goes_with_the_wind() {
        // DERIVED k 1 /m: terminal speed √(g/k) = 3.13 m/s, so 50 m take 16.2 s (1/k ln 2 over it
        // more than 50 m at that speed), and it drifts 5 m/s times that, less what it takes to be
        // carried along, about 1/k times a few.
        FallBox box = falls(new Falls.Body(1, 1, 0, 0), new Falls.Toss(0, 0, 5, 0)).at(50);

        assertThat(box.rightM()).isBetween(70.0, 100.0);
        assertThat(box.leftM()).isCloseTo(-box.rightM(), within(1e-6));
        assertThat(box.forwardM()).isCloseTo(0, within(1e-6));
    }

    @Test
    void what_slides_runs_as_far_as_friction_lets_it() {
        // Sliding friction, common practice: v² / 2 μ g on the level, 10 m/s and μ 0.3: 16.995 m. A
        // blow of
        // 10 m/s down takes μ times that first, so 7 m/s are left: 8.328 m.
        assertThat(new FallBox.Blow(10, 0).runM(0.3, 0, 60)).isCloseTo(16.995, within(0.001));
        assertThat(new FallBox.Blow(10, 10).runM(0.3, 0, 60)).isCloseTo(8.328, within(0.001));
        // Down 0.2 rad: v cos 0.2 is 9.801 m/s along the slope, and v sin 0.2 off it; over 2 g (μ
        // cos − sin)
        // that is 9.801² / (2 · 9.80665 · 0.09535) = 51.36 m, 50.34 m of it level.
        assertThat(new FallBox.Blow(10, 0).runM(0.3, 0.2, 60)).isCloseTo(50.34, within(0.05));
        // Steeper than friction holds (atan 0.3 is 0.29 rad): as far as is counted at all.
        assertThat(new FallBox.Blow(1, 0).runM(0.3, 0.3, 60)).isEqualTo(60);
    }

    @Test
    void swing_and_trail_move_where_it_starts() {
        // DERIVED 30 m of line at 0.2 rad trail hangs 5.96 m back; 6° more or less of swing.
        FallBox box = falls(new Falls.Body(0, 0, 30, 0.2), new Falls.Toss(0, 0, 0, 0)).at(5);
        double swing = Math.sqrt(2 * 9.80665 * 30 * (1 - Math.cos(Math.toRadians(6))));
        double s = Math.sqrt(2 * 5 / 9.80665);

        assertThat(box.forwardM())
                .isCloseTo(30 * Math.sin(Math.toRadians(6) - 0.2) + swing * s, within(0.1));
        assertThat(box.rightM())
                .isCloseTo(30 * Math.sin(Math.toRadians(6)) + swing * s, within(0.1));
    }

    @Test
    void it_lies_where_it_does_whatever_depth_was_asked_for_before() {
        Falls.Body body = new Falls.Body(0.02, 0.004, 30, 0.2);
        Falls.Toss toss = new Falls.Toss(25, -4, 3, 2);
        Falls deepFirst = falls(body, toss);
        deepFirst.at(120);
        Falls shallowFirst = falls(body, toss);
        shallowFirst.at(3);

        for (int depthM : new int[] {3, 40, 7, 120}) {
            assertThat(deepFirst.at(depthM)).isEqualTo(falls(body, toss).at(depthM));
            assertThat(shallowFirst.at(depthM)).isEqualTo(deepFirst.at(depthM));
        }
        assertThat(shallowFirst.at(40).forwardM()).isGreaterThan(shallowFirst.at(7).forwardM());
    }

    /** Depths that lie a metre apart. */
    private static Falls falls(Falls.Body body, Falls.Toss toss) {
        return new Falls(body, toss, 1);
    }
}
