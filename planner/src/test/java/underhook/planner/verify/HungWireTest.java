package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Hanging;
import underhook.core.job.WireKind;
import underhook.core.wire.Curtain;
import underhook.core.wire.Tube;
import underhook.testkit.SeededSamples;

/**
 * Two ways to the same wire: catenaries in short pieces that count with their highest and widest, and the
 * verifier's parabolas point by point. The pieces must hold the points, or a good plan would be refused.
 */
class HungWireTest {
    /** What parabolas and catenaries differ by on spans with up to 6 percent of sag. */
    private static final double MODELS_M = 0.35;

    @Test
    void lies_within_the_tube_that_is_planned_with() {
        SeededSamples.of(41).forEach(150, HungWireTest::compare);
    }

    private static void compare(SeededSamples sample) {
        double spanM = sample.between(30, 500);
        List<Double> tops = List.of(sample.between(8, 60), sample.between(8, 60));
        boolean stated = sample.coin();
        boolean weighed = sample.coin();
        double diameterM = sample.between(0.005, 0.04);
        Hanging hanging =
                new Hanging(
                        WireKind.POWER,
                        sample.coin() ? tops : List.of(),
                        stated
                                ? OptionalDouble.of(sample.between(0.01, 0.05) * spanM)
                                : OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        weighed ? OptionalDouble.of(diameterM * 450) : OptionalDouble.empty(),
                        weighed ? OptionalDouble.of(diameterM) : OptionalDouble.empty(),
                        sample.coin());
        SmallDay small =
                SmallDay.good()
                        .wire("hanging", hanging)
                        .wire(
                                "supports",
                                List.of(
                                        SmallDay.geo(-100, 300),
                                        SmallDay.geo(-100 + 0.6 * spanM, 300 + 0.8 * spanM)));

        HungWire own = new HungWire(small.job(), small.ground(), small.job().wires().get(0));
        Tube tube = Tube.of(small.job().wires().get(0), small.ground(), 7);

        assertThat(own.isUnmeasured()).isEqualTo(tube.isAssumed());
        List<Curtain> curtains = new ArrayList<>();
        tube.spans().forEach(curtains::addAll);
        for (HungWire.Spot spot : own.spans().get(0).spots()) {
            Curtain curtain = nearest(curtains, spot.at());
            assertThat(curtain.topAmslM()).isGreaterThanOrEqualTo(spot.topAmslM() - MODELS_M);
            assertThat(curtain.halfWidthM()).isGreaterThanOrEqualTo(spot.asideM() - MODELS_M);
            // Nor is the tube far larger: by what chord and ground rise on a piece and a cell.
            double steepRatio = 1.25 * Math.abs(tops.get(1) - tops.get(0)) / spanM;
            assertThat(curtain.topAmslM()).isLessThan(spot.topAmslM() + 4 + 10 * steepRatio);
        }
    }

    private static Curtain nearest(List<Curtain> curtains, PlanePoint point) {
        Curtain best = curtains.get(0);
        for (Curtain curtain : curtains) {
            best = curtain.toAxisM(point) < best.toAxisM(point) ? curtain : best;
        }
        return best;
    }
}
