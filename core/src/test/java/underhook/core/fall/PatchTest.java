package underhook.core.fall;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadShape;

class PatchTest {
    private static final Fall.Body NO_DRAG = new Fall.Body(300, 0, 1.2);
    private static final Release.Drift CALM = new Release.Drift(0, 0, 0);
    private static final Release.Hanging PLUMB = new Release.Hanging(NO_DRAG, NO_DRAG, 25, 0, 0);

    @Test
    void without_drag_and_spread_it_lies_round_the_throw_of_the_closed_form() {
        // DERIVED v √(2h/g): 20 m/s from 50 m throws 63.866 m (row F-VA-03 of the reference
        // values).
        Patch patch =
                Patch.of(new Release(50, 0, 20, 0, CALM, PLUMB), LoadShape.BAG, Patch.Ground.LEVEL);

        // A bag: 0.4 x 31.3 m/s into the ground takes 12.5 of 20 m/s; 7.47²/(2 x 0.4 g) = 7.1 m
        // more.
        assertThat(patch.backM()).isCloseTo(63.9 - 1.1, within(0.2));
        assertThat(patch.forwardM()).isCloseTo(63.9 + 7.1 + 1.1, within(0.2));
        assertThat(patch.rightM()).isCloseTo(1, within(0.01));
    }

    @Test
    void the_trail_lets_it_land_behind() {
        Release.Hanging trailing = new Release.Hanging(NO_DRAG, NO_DRAG, 20, 0.5, 0);

        Patch plumb =
                Patch.of(new Release(50, 0, 20, 0, CALM, PLUMB), LoadShape.BAG, Patch.Ground.LEVEL);
        Patch trail =
                Patch.of(
                        new Release(50, 0, 20, 0, CALM, trailing),
                        LoadShape.BAG,
                        Patch.Ground.LEVEL);

        // 20 m x sin(0.5 rad)
        assertThat(plumb.backM() - trail.backM()).isCloseTo(9.589, within(0.02));
    }

    @Test
    void its_corners_lie_along_the_track() {
        Patch patch = new Patch(10, 50, 5, 7);

        List<PlanePoint> corners = patch.outline(new PlanePoint(100, 200), Math.PI / 2);

        assertThat(corners.get(0).eastM()).isCloseTo(110, within(1e-9));
        assertThat(corners.get(0).northM()).isCloseTo(205, within(1e-9));
        assertThat(corners.get(2).eastM()).isCloseTo(150, within(1e-9));
        assertThat(corners.get(2).northM()).isCloseTo(193, within(1e-9));
        assertThat(patch.reachM()).isCloseTo(Math.hypot(50, 7), within(1e-9));
    }

    @Test
    void refuses_what_is_out_of_range() {
        assertThatThrownBy(() -> new Release(0, 0, 20, 0, CALM, PLUMB))
                .hasMessageContaining("heightM");
        assertThatThrownBy(() -> new Release(50, 50, 20, 0, CALM, PLUMB))
                .hasMessageContaining("heightSpreadM");
        assertThatThrownBy(() -> new Release(50, 0, Double.NaN, 0, CALM, PLUMB))
                .hasMessageContaining("groundSpeedMPerS");
        assertThatThrownBy(() -> new Release.Drift(61, 0, 0)).hasMessageContaining("60 m/s");
        assertThatThrownBy(() -> new Release.Hanging(NO_DRAG, new Fall.Body(300, 1, 1.2), 25, 0, 0))
                .hasMessageContaining("light");
    }
}
