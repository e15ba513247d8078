package underhook.app.evening;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.app.port.FlownSample;
import underhook.core.finding.Finding;
import underhook.core.learn.Measure;

/** Times far above their group's; by hand, common practice, no source. */
class FarSamplesTest {
    private static FlownSample lift(double flownS) {
        return new FlownSample(Measure.LIFT_TIME, "bag / site / 25 m", 400, flownS);
    }

    @Test
    void a_time_over_three_times_the_middle_one_is_told() {
        List<FlownSample> earlier = List.of(lift(400), lift(440), lift(480));

        // The middle of 400, 440, 480 and the long one is 440 s, 1.1 times the plan.
        assertThat(Learning.far(List.of(lift(1321)), earlier))
                .singleElement()
                .extracting(Finding::message)
                .isEqualTo(
                        "A lift of bag / site / 25 m took 3.3 times as long as planned, the middle one of 4 took"
                                + " 1.1. It counts in what is learned: where something else was done meanwhile,"
                                + " take its row out of samples.csv.");
        assertThat(Learning.far(List.of(lift(1320)), earlier)).isEmpty();
        assertThat(Learning.far(earlier, List.of(lift(1321)))).isEmpty();
    }

    @Test
    void of_three_nobody_knows_which_is_far() {
        assertThat(Learning.far(List.of(lift(4000)), List.of(lift(400), lift(410)))).isEmpty();
    }

    @Test
    void masses_and_other_groups_are_left_alone() {
        List<FlownSample> masses =
                new ArrayList<>(
                        Collections.nCopies(5, new FlownSample(Measure.MASS, "bag", 100, 100)));
        masses.add(new FlownSample(Measure.MASS, "bag", 100, 900));
        masses.add(new FlownSample(Measure.LIFT_TIME, "pole / site / 25 m", 400, 4000));
        masses.addAll(List.of(lift(400), lift(400), lift(400)));

        assertThat(Learning.far(masses, List.of())).isEmpty();
    }
}
