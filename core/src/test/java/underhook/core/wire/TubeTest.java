package underhook.core.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Hanging;
import underhook.core.job.Wire;
import underhook.core.job.WireKind;
import underhook.testkit.SeededSamples;

class TubeTest {
    private static final LocalFrame FRAME = LocalFrame.of(new GeoPoint(46.8, -12.0));

    /** A position in seven decimals is good to a centimetre. */
    private static final double CENTIMETRES_M = 0.05;

    private static Ground ground(DoubleUnaryOperator amslM) {
        return new Ground(
                FRAME,
                GridHeightField.of(
                        new GridShape(-1000, -500, 10, 200, 100),
                        (eastM, northM) -> amslM.applyAsDouble(eastM)),
                Optional.empty(),
                0);
    }

    private static Hanging hanging(List<Double> tops, double sagM, boolean estimated) {
        return new Hanging(
                WireKind.POWER,
                tops,
                sagM > 0 ? OptionalDouble.of(sagM) : OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(9),
                OptionalDouble.of(0.02),
                estimated);
    }

    private static Wire wire(Hanging hanging, double[] eastM) {
        return new Wire(
                "W1",
                java.util.Arrays.stream(eastM)
                        .mapToObj(east -> FRAME.toGeo(new PlanePoint(east, 0)))
                        .toList(),
                20,
                4,
                true,
                66_000,
                CrossingRule.ALLOWED,
                30,
                0.2,
                true,
                hanging,
                "invented");
    }

    private static Curtain at(Tube tube, double eastM) {
        PlanePoint point = new PlanePoint(eastM, 0);
        return tube.spans().stream()
                .flatMap(List::stream)
                .filter(curtain -> curtain.toAxisM(point) < 0.01)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void follows_the_ground_between_bends_that_may_be_no_supports() {
        // A hill of 540 m between bends at 500 m: the wire may stand on it, 20 m high.
        Ground hill = ground(east -> Math.abs(east) < 100 ? 540 : 500);

        Tube tube = Tube.of(wire(hanging(List.of(), 0, false), new double[] {-300, 300}), hill, 10);

        assertThat(at(tube, 0).topAmslM()).isCloseTo(560, within(1e-6));
        assertThat(at(tube, 250).topAmslM()).isCloseTo(520, within(1e-6));
        assertThat(tube.highestAmslM()).isCloseTo(560, within(1e-6));
        assertThat(tube.isAssumed()).isTrue();
        // It hangs no lower than the ground: 20 m, and 2 m for hollows. The wash of 20 m/s on 20 mm
        // and 9 N/m: 245 · 1.2 · 0.02 = 5.88 N/m, so 22 · 5.88 / √(5.88² + 9²) = 12.03 m, and 4 m.
        assertThat(at(tube, 250).halfWidthM()).isCloseTo(16.03, within(0.01));
    }

    @Test
    void lies_nowhere_below_the_ground_of_coarse_cells_with_its_height() {
        // By hand, DERIVED linear interpolation: on a slope of 40 % in cells of 100 m the ground
        // between two centres lies up to 20 m above the lower cell. The wire is 20 m above it.
        Ground slope =
                new Ground(
                        FRAME,
                        GridHeightField.of(
                                new GridShape(-1000, -500, 100, 20, 10),
                                (eastM, northM) -> 1000 + 0.4 * eastM),
                        Optional.empty(),
                        0);
        double[] ends = {-300, 300};

        Tube bends = Tube.of(wire(hanging(List.of(), 0, false), ends), slope, 10);
        Tube supports = Tube.of(wire(hanging(List.of(20.0, 20.0), 0, false), ends), slope, 10);

        for (double eastM = -295; eastM <= 295; eastM += 5) {
            assertThat(at(bends, eastM).topAmslM()).isGreaterThanOrEqualTo(1020 + 0.4 * eastM);
        }
        assertThat(at(supports, 299).topAmslM()).isGreaterThanOrEqualTo(1020 + 0.4 * 299);
    }

    @Test
    void credits_the_least_sag_between_known_supports() {
        // Over a valley, 300 m, tops at 520 m, 6 m of sag: by the hand-worked cold of 9 N/m in
        // SlacknessTest
        // something under four fifths of 6 m.
        Ground valley = ground(east -> Math.abs(east) < 140 ? 400 : 500);
        Hanging known = hanging(List.of(20.0, 20.0), 6, false);

        Tube tube = Tube.of(wire(known, new double[] {-150, 150}), valley, 10);

        assertThat(at(tube, 0).topAmslM()).isBetween(520 - 4.8, 520 - 1.7);
        assertThat(at(tube, -149).topAmslM()).isCloseTo(520, within(CENTIMETRES_M));
        assertThat(tube.isAssumed()).isFalse();
        // Widest in the middle: 9.09 m hot, swung out by 0.547.
        assertThat(at(tube, 0).halfWidthM()).isCloseTo(4 + 9.14 * 0.547, within(0.05));
        assertThat(at(tube, -149).halfWidthM()).isLessThan(6);
    }

    @Test
    void raises_heights_that_nobody_measured() {
        Hanging estimated = hanging(List.of(), 0, true);

        Tube tube = Tube.of(wire(estimated, new double[] {-300, 300}), ground(east -> 500), 10);

        assertThat(tube.highestAmslM()).isCloseTo(525, within(1e-6));
        assertThat(tube.isAssumed()).isTrue();
    }

    @Test
    void has_no_top_where_the_ground_is_not_known() {
        // The ground ends at 1000 m: so does all knowledge of the span that leads there.
        Tube tube =
                Tube.of(
                        wire(hanging(List.of(), 0, false), new double[] {-300, 300, 1500}),
                        ground(east -> 500),
                        10);

        assertThat(at(tube, 0).topAmslM()).isCloseTo(520, within(1e-6));
        assertThat(at(tube, 310).topAmslM()).isInfinite();
        assertThat(tube.highestAmslM()).isCloseTo(520, within(1e-6));
    }

    @Test
    void holds_every_curve_between_tight_and_slack_swung_out_as_far_as_it_may() {
        Ground deep = ground(east -> Math.abs(east) < 300 ? 0 : 500);
        SeededSamples.of(33)
                .forEach(
                        100,
                        sample -> {
                            double eastM = sample.between(310, 600);
                            double sagM = sample.between(0.01, 0.06) * 2 * eastM;
                            List<Double> tops =
                                    List.of(sample.between(10, 60), sample.between(10, 200));
                            Hanging known = hanging(tops, sagM, false);
                            Tube tube =
                                    Tube.of(wire(known, new double[] {-eastM, eastM}), deep, 15);
                            double riseM = tops.get(1) - tops.get(0);
                            Slackness.Size size = new Slackness.Size(2 * eastM, riseM);
                            SagRange range = Slackness.of(known, List.of(size)).range(size);
                            double share = sample.between(0.01, 0.99);
                            double hangsM = sample.between(range.leastM(share), range.mostM(share));
                            double angle =
                                    Math.asin(Swing.asideFraction(known, 15))
                                            * sample.between(0, 1);
                            Curtain curtain = at(tube, -eastM + share * 2 * eastM);
                            double chordM = 500 + tops.get(0) + share * riseM;
                            // Swung out it hangs less deep, but not above where it hung tightest
                            // unless the wind lifts it: the chord bounds that.
                            assertThat(chordM - range.leastM(share))
                                    .isLessThanOrEqualTo(curtain.topAmslM() + CENTIMETRES_M);
                            if (hangsM < chordM - 500) {
                                assertThat(4 + hangsM * Math.sin(angle))
                                        .isLessThanOrEqualTo(curtain.halfWidthM() + CENTIMETRES_M);
                            }
                        });
    }
}
