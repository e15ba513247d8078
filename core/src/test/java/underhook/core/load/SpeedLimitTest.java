package underhook.core.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Severity;
import underhook.core.line.HangingLine;
import underhook.core.load.Remedy.Kind;
import underhook.core.load.SpeedLimit.Allowed;
import underhook.core.load.SpeedLimit.Governs;
import underhook.core.load.SpeedLimit.Hung;
import underhook.testkit.SeededSamples;

class SpeedLimitTest {
    private static final HangingLine LINE = new HangingLine(25, 18, 0.016);
    private static final HangingLine NO_LINE = new HangingLine(25, 0, 0);
    private static final TailGeometry TAIL = TailGeometry.of(7, 1, 0.2, 1.5, 2);
    private static final Allowed ALLOWED = new Allowed(Math.toRadians(15), 40, 0, TAIL);

    @Test
    void the_tail_is_measured_from_the_hook_with_its_disc() {
        // 7 m less 1 m of disc less 0.2 m to the hook; 2 m clear of the disc.
        assertThat(TAIL.tailAftM()).isCloseTo(5.8, within(1e-12));
        assertThat(TAIL.keepClearM()).isCloseTo(3, within(1e-12));
    }

    @Test
    void without_line_drag_the_trail_limit_is_the_closed_form() {
        double expected = Trail.speedAtLimitMPerS(150, 1.5, Math.toRadians(15), 1.1);
        SpeedLimit limit = SpeedLimit.of(new Hung(NO_LINE, 150, 1.5, 1.1), ALLOWED);

        // Rounded down by the last of twelve halvings of 1 m/s.
        assertThat(limit.speedMPerS()).isBetween(expected - 3e-4, expected);
        assertThat(limit.governs()).isEqualTo(Governs.TRAIL);
    }

    @Test
    void a_heavy_small_load_is_limited_by_the_airspeed_and_an_empty_line_by_the_tail() {
        SpeedLimit heavy = SpeedLimit.of(new Hung(LINE, 900, 0.3, 1.1), ALLOWED);
        Allowed wide = new Allowed(Math.toRadians(85), 60, 0.5, TAIL);
        SpeedLimit empty = SpeedLimit.of(new Hung(LINE, 8, 0.03, 1.1), wide);

        assertThat(heavy.governs()).isEqualTo(Governs.AIRSPEED);
        assertThat(heavy.speedMPerS()).isEqualTo(40);
        assertThat(empty.governs()).isEqualTo(Governs.TAIL);
        assertThat(empty.tailDistanceM()).isCloseTo(3, within(0.05));
        assertThat(empty.speedMPerS()).isLessThan(60);
    }

    @Test
    void more_mass_never_slows_and_more_area_never_speeds_up() {
        SeededSamples.of(131)
                .forEach(
                        30,
                        sample -> {
                            double mass = sample.between(20, 500);
                            double area = sample.between(0.1, 3);
                            double speed =
                                    SpeedLimit.of(new Hung(LINE, mass, area, 1.1), ALLOWED)
                                            .speedMPerS();
                            assertThat(
                                            SpeedLimit.of(
                                                            new Hung(LINE, mass + 50, area, 1.1),
                                                            ALLOWED)
                                                    .speedMPerS())
                                    .isGreaterThanOrEqualTo(speed - 3e-4);
                            assertThat(
                                            SpeedLimit.of(
                                                            new Hung(LINE, mass, area + 0.5, 1.1),
                                                            ALLOWED)
                                                    .speedMPerS())
                                    .isLessThanOrEqualTo(speed + 3e-4);
                        });
    }

    @Test
    void remedies_reach_the_wanted_speed_or_say_what_they_allow() {
        Hung light = new Hung(LINE, 60, 1.2, 1.1);
        List<Remedy> remedies = Remedy.list(light, ALLOWED, 20, 0.3);

        assertThat(remedies)
                .extracting(Remedy::kind)
                .containsExactly(
                        Kind.SLOWER, Kind.BALLAST, Kind.BUNDLE, Kind.DROGUE, Kind.SHORTER_LINE);
        double slower = remedies.get(0).limit().speedMPerS();
        Remedy ballast = remedies.get(1);
        Remedy bundle = remedies.get(2);
        assertThat(slower).isLessThan(20);
        assertThat(ballast.limit().speedMPerS()).isGreaterThanOrEqualTo(19.999);
        assertThat(bundle.limit().speedMPerS()).isGreaterThanOrEqualTo(19.999);
        // The closed form without the line's own drag is a lower bound of the ballast.
        assertThat(ballast.ballastKg())
                .isGreaterThan(Trail.massForSpeedKg(1.2, 20, Math.toRadians(15), 1.1) - 60 - 18);
        assertThat(SpeedLimit.of(light.withMoreKg(ballast.ballastKg() - 1), ALLOWED).speedMPerS())
                .isLessThan(20);
        assertThat(remedies.get(3).limit().speedMPerS()).isLessThan(slower);
        assertThat(remedies.get(4).lineLengthM()).isEqualTo(12.5);
    }

    /** Row R12 of the sling letter: at least 15 kg on empty slings of 5 to 10 m. */
    @Test
    void empty_slings_need_their_ballast() {
        assertThat(new EmptyLine(10, 14.9, false).findings("L1"))
                .singleElement()
                .satisfies(
                        finding -> {
                            assertThat(finding.severity()).isEqualTo(Severity.STOP);
                            assertThat(finding.limit()).isEqualTo("15.0");
                        });
        assertThat(new EmptyLine(10, 14.9, false).lackingBallastKg()).isCloseTo(0.1, within(1e-9));
        assertThat(new EmptyLine(10, 15, false).findings("L1"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.severity()).isEqualTo(Severity.CAUTION));
        assertThat(new EmptyLine(33, 40, false).findings("L1")).isEmpty();
        assertThat(new EmptyLine(33, 39, false).findings("L1")).hasSize(1);
        assertThat(new EmptyLine(33, 100, true).findings("L1"))
                .singleElement()
                .satisfies(finding -> assertThat(finding.severity()).isEqualTo(Severity.STOP));
    }

    /** Row R-REG-16: 136.1 kg, 30° and 6.71 m/s. */
    @Test
    void lines_are_pulled_heavy_steep_and_slowly() {
        EmptyLine good = new EmptyLine(20, 136.1, false);
        assertThat(good.pullingFindings("L1", Math.toRadians(30), 6.7)).isEmpty();
        assertThat(good.pullingFindings("L1", Math.toRadians(30.1), 6.72)).hasSize(2);
        assertThat(new EmptyLine(20, 136.0, false).pullingFindings("L1", 0, 0)).hasSize(1);
    }

    @Test
    void ranges_are_held() {
        assertThatThrownBy(() -> new Allowed(0, 40, 0, TAIL))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Allowed(0.2, 101, 0, TAIL))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Allowed(0.2, 40, Double.NaN, TAIL))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Hung(LINE, 0, 1, 1.1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> TailGeometry.of(1, 1, 0.2, 1.5, 2))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new EmptyLine(0, 1, false))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
