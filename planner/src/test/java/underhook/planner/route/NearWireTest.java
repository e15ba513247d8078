package underhook.planner.route;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.wire.Curtain;
import underhook.core.wire.Flyer;
import underhook.core.wire.Tube;

/** The wire runs north and south at 150 m east, 540 m AMSL, 5 m to each side. */
class NearWireTest {
    /** Never above the true distance, below it by less than a millionth of the way. */
    private static final double LOW_M = 1e-3;

    private static final Flyer SLUNG = new Flyer(41, 1, 7.5);

    private static List<NearWire> passing(double[] fromTo, double hookAmslM) {
        FlownLeg leg =
                new FlownLeg(
                        List.of(
                                new PlanePoint(fromTo[0], fromTo[1]),
                                new PlanePoint(fromTo[2], fromTo[3])),
                        List.of(hookAmslM, hookAmslM),
                        100,
                        0,
                        20,
                        List.of());
        return NearWire.list(List.of(Wires.northSouth(150, CrossingRule.ALLOWED, 540)), leg, SLUNG);
    }

    @Test
    void is_the_height_of_the_lowest_end_when_it_passes_over() {
        NearWire near = passing(new double[] {0, 0, 300, 20}, 610).get(0);

        assertThat(near.leastM()).isCloseTo(29, within(LOW_M));
        assertThat(near.aboveM().orElseThrow()).isCloseTo(29, within(LOW_M));
        assertThat(near.needM()).isEqualTo(25);
        assertThat(near.at().eastM()).isBetween(143.0, 157.0);
    }

    /** Where two wires join, a leg may cross both on the support; pieces of their curtains end a rounding short of it. */
    @Test
    void is_passed_over_at_its_very_end_too() {
        WirePlan whole = Wires.northSouth(150, CrossingRule.ALLOWED, 540);
        PlanePoint end = new PlanePoint(150, 1000 - 1e-9);
        Curtain curtain = new Curtain(whole.supports().get(0), end, 540, 5);
        WirePlan wire =
                new WirePlan(
                        whole.wire(),
                        0,
                        whole.supports(),
                        Tube.of(List.of(List.of(curtain)), false),
                        30,
                        25,
                        0);
        FlownLeg leg =
                new FlownLeg(
                        List.of(new PlanePoint(0, 1000), new PlanePoint(300, 1000)),
                        List.of(610.0, 610.0),
                        300,
                        0,
                        20,
                        List.of());

        NearWire near = NearWire.list(List.of(wire), leg, SLUNG).get(0);

        assertThat(near.aboveM().orElseThrow()).isCloseTo(29, within(LOW_M));
        assertThat(near.needM()).isEqualTo(25);
    }

    @Test
    void is_the_distance_of_the_tail_when_it_passes_beside() {
        NearWire near = passing(new double[] {100, -50, 100, 80}, 530).get(0);

        // 50 m to the axis, 5 m to the side of it, 7.5 m of tail.
        assertThat(near.leastM()).isCloseTo(37.5, within(LOW_M));
        assertThat(near.aboveM()).isEmpty();
        assertThat(near.needM()).isZero();
    }

    @Test
    void lists_what_is_within_150_m() {
        // 150 + 5 + 7.5 = 162.5 m from the axis is the last that counts, at the height of the wire.
        assertThat(passing(new double[] {-12, 0, -12, 90}, 530)).hasSize(1);
        assertThat(passing(new double[] {-13, 0, -13, 90}, 530)).isEmpty();
    }
}
