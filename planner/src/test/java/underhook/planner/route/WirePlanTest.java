package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.wire.Curtain;
import underhook.core.wire.Tube;

class WirePlanTest {
    /** From (0, 0) to (200, 0) in two pieces, the second higher and wider. */
    private static WirePlan rising() {
        PlanePoint a = new PlanePoint(0, 0);
        PlanePoint middle = new PlanePoint(100, 0);
        PlanePoint b = new PlanePoint(200, 0);
        List<Curtain> span =
                List.of(new Curtain(a, middle, 520, 6), new Curtain(middle, b, 560, 11));
        WirePlan level = Wires.northSouth(0, CrossingRule.ALLOWED, 540);
        return new WirePlan(
                level.wire(), 0, List.of(a, b), Tube.of(List.of(span), false), 30, 25, 7.5);
    }

    @Test
    void takes_the_highest_piece_within_reach_not_the_nearest() {
        PlanePoint beside = new PlanePoint(70, 20);

        assertThat(rising().highestWithinM(beside, 25)).isEqualTo(520);
        assertThat(rising().highestWithinM(beside, 40)).isEqualTo(560);
        assertThat(rising().highestWithinM(beside, 19)).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    @Test
    void keeps_need_and_reach_off_its_widest() {
        assertThat(rising().corridorM(5)).isCloseTo(30 + 11 + 7.5, within(1e-9));
        assertThat(rising().corridorM(40)).isCloseTo(40 + 11 + 7.5, within(1e-9));
    }
}
