package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.with;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.job.Wire;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.planner.order.DayLook;

/** The small day's wire runs from (-300, -300) to (-300, 300) and ends there with nothing at its ends. */
class WireEndLookTest {
    private static final SmallDay DAY = SmallDay.good();

    private static double beyondM(double northM) {
        Leg leg =
                SmallDay.newPlan().steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .flatMap(rotation -> rotation.legs().stream())
                        .findFirst()
                        .orElseThrow();
        List<PathPoint> path =
                List.of(
                        new PathPoint(SmallDay.geo(-500, northM), 500),
                        new PathPoint(SmallDay.geo(0, northM), 500));
        Wire wire = DAY.job().wires().get(0);
        return new DayLook(DAY.job(), DAY.ground())
                .findBeyondEndM(wire, with(leg, "path", path))
                .orElse(-1);
    }

    /** Read off squared paper; a curved Earth shifts it by less than a centimetre. */
    @Test
    void a_leg_round_an_open_end_is_so_far_beyond_it() {
        assertThat(beyondM(420)).isBetween(119.9, 120.1);
        assertThat(beyondM(-340)).isBetween(39.9, 40.1);
    }

    @Test
    void over_the_wire_or_far_beyond_its_end_is_not_round_it() {
        assertThat(beyondM(0)).isEqualTo(-1);
        assertThat(beyondM(1310)).isEqualTo(-1);
    }
}
