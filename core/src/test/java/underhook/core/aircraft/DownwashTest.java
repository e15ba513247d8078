package underhook.core.aircraft;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import underhook.core.aircraft.VortexRing.Nearness;
import underhook.core.finding.Severity;
import underhook.core.unit.Units;
import underhook.testkit.SeededSamples;

class DownwashTest {
    private static final double INDUCED = MomentumHover.of(2250, 5.345, 1.225).inducedMPerS();

    private static double feet(double perMinute) {
        return Units.ftPerMinuteToMPerS(perMinute);
    }

    @Test
    void the_far_wake_has_the_disc_loadings_pressure() {
        MomentumHover hover = MomentumHover.of(2250, 5.345, 1.225);
        Downwash far = Downwash.of(hover, 5.345, 1.225, 1e5);

        // Row C-DW-01: 245.8 Pa.
        assertThat(far.pressurePa()).isCloseTo(hover.discLoadingPa(), within(0.01));
        assertThat(far.pressurePa()).isCloseTo(245.8, within(0.1));
        assertThat(far.pushOnSheetN()).isCloseTo(1.28 * 245.84, within(0.1));
    }

    @Test
    void the_wake_grows_faster_and_narrower_and_carries_the_same_air() {
        SeededSamples.of(161)
                .forEach(
                        300,
                        sample -> {
                            MomentumHover hover =
                                    MomentumHover.of(sample.between(800, 5000), 5, 1.1);
                            double below = sample.between(0, 60);
                            Downwash here = Downwash.of(hover, 5, 1.1, below);
                            Downwash lower = Downwash.of(hover, 5, 1.1, below + 1);
                            assertThat(lower.downMPerS()).isGreaterThan(here.downMPerS());
                            assertThat(lower.wakeRadiusM()).isLessThan(here.wakeRadiusM());
                            assertThat(here.downMPerS() * Math.pow(here.wakeRadiusM(), 2))
                                    .isCloseTo(hover.inducedMPerS() * 25, within(1e-9));
                            assertThat(here.downMPerS())
                                    .isBetween(hover.inducedMPerS(), hover.farWakeMPerS());
                        });
    }

    @Test
    void small_machines_keep_people_off_by_the_hundred_feet() {
        assertThat(Downwash.keepOffM(3)).isEqualTo(30.48);
    }

    /** Row D-VRS-13: 300 ft/min below the speed of translational lift; the cautious end of 16 to 24 kt. */
    @Test
    void the_training_line_warns_long_before_the_model() {
        assertThat(new VortexRing(feet(299), 0, INDUCED).nearness()).isEqualTo(Nearness.CLEAR);
        assertThat(new VortexRing(feet(301), 0, INDUCED).nearness()).isEqualTo(Nearness.WARNED);
        assertThat(new VortexRing(feet(301), Units.ktToMPerS(23.9), INDUCED).nearness())
                .isEqualTo(Nearness.WARNED);
        assertThat(new VortexRing(feet(301), Units.ktToMPerS(24.1), INDUCED).nearness())
                .isEqualTo(Nearness.CLEAR);
        assertThat(new VortexRing(feet(900), 0, INDUCED).nearness()).isEqualTo(Nearness.INSIDE);
        assertThat(new VortexRing(feet(-500), 0, INDUCED).nearness()).isEqualTo(Nearness.CLEAR);
        // Row D-VRS-10: 20 kt are outside the model.
        assertThat(new VortexRing(feet(900), Units.ktToMPerS(20), INDUCED).findBand()).isEmpty();
    }

    /** Row D-VRS-14: for machines of every size the training line is the more cautious one. */
    @Test
    void the_training_line_lies_above_the_models_region() {
        SeededSamples.of(162)
                .forEach(
                        300,
                        sample -> {
                            double induced =
                                    MomentumHover.of(
                                                    sample.between(900, 6000),
                                                    sample.between(4, 7),
                                                    sample.between(0.75, 1.25))
                                            .inducedMPerS();
                            double airspeed = sample.between(0, 0.94) * induced;
                            double from =
                                    new VortexRing(1, airspeed, induced)
                                            .findBand()
                                            .orElseThrow()
                                            .fromMPerS();
                            assertThat(from).isGreaterThan(feet(300));
                        });
    }

    @Test
    void the_cautious_descent_is_clear_at_any_airspeed() {
        double cautious = VortexRing.cautiousDescentMPerS(INDUCED);

        assertThat(cautious).isCloseTo(feet(300), within(1e-12));
        assertThat(new VortexRing(cautious - 1e-9, 0, INDUCED).nearness())
                .isEqualTo(Nearness.CLEAR);
        // A rotor of so low an induced speed that the model begins first: 0.45 of 2 m/s.
        assertThat(VortexRing.cautiousDescentMPerS(2)).isCloseTo(0.9, within(1e-12));
        assertThat(VortexRing.firstDescentMPerS(INDUCED))
                .isCloseTo(
                        new VortexRing(1, 0, INDUCED).findBand().orElseThrow().fromMPerS(),
                        within(1e-12));
    }

    @Test
    void what_is_near_is_said_and_what_is_inside_stops() {
        assertThat(new VortexRing(1, 0, INDUCED).findings("A-B")).isEmpty();
        assertThat(new VortexRing(2, 0, INDUCED).findings("A-B"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.severity()).isEqualTo(Severity.CAUTION));
        assertThat(new VortexRing(8, 0, INDUCED).findings("A-B"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.severity()).isEqualTo(Severity.STOP));
    }

    @Test
    void induced_speed_falls_with_speed_and_meets_glauerts_limit() {
        SeededSamples.of(163)
                .forEach(
                        300,
                        sample -> {
                            double speed = sample.between(0, 8);
                            assertThat(InducedFlow.levelRatio(speed + 0.1))
                                    .isLessThan(InducedFlow.levelRatio(speed));
                            assertThat(InducedFlow.climbRatio(speed + 0.1))
                                    .isLessThan(InducedFlow.climbRatio(speed));
                        });
        // vh²/V at high speed.
        assertThat(InducedFlow.levelRatio(50)).isCloseTo(0.02, within(1e-6));
    }

    @Test
    void ranges_are_held() {
        MomentumHover hover = MomentumHover.of(2000, 5, 1.2);
        assertThatThrownBy(() -> Downwash.of(hover, 5, 1.2, -1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Downwash.of(hover, 0, 1.2, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new VortexRing(Double.NaN, 0, 10))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new VortexRing(1, -1, 10))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> InducedFlow.climbRatio(-0.1))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
