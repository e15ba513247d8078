package underhook.core.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Hanging;
import underhook.core.job.Wire;
import underhook.core.job.WireBufferRule;
import underhook.core.job.WireKind;
import underhook.core.unit.Units;
import underhook.testkit.SeededSamples;

class WireBuffersTest {
    private static Wire wire(WireKind kind, boolean live, double voltageV) {
        return new Wire(
                "W1",
                List.of(new GeoPoint(46.8, -12), new GeoPoint(46.9, -12)),
                20,
                5,
                live,
                voltageV,
                CrossingRule.NEVER,
                30,
                0.2,
                true,
                Hanging.of(kind, false),
                "invented");
    }

    private static double needM(Wire wire, double elevationAmslM) {
        return WireBuffers.needM(wire, WireBufferRule.CRANE, 4, elevationAmslM);
    }

    @Test
    void is_never_rounded_below_the_printed_feet() {
        double[] printedFt = {10, 15, 20, 25, 35, 45};
        double[] voltagesV = {50e3, 200e3, 350e3, 500e3, 750e3, 1000e3};
        for (int i = 0; i < printedFt.length; i++) {
            assertThat(WireBuffers.distanceM(WireBufferRule.CRANE, voltagesV[i]))
                    .isBetween(Units.ftToM(printedFt[i]), Units.ftToM(printedFt[i]) + 0.01);
        }
        assertThat(WireBuffers.distanceM(WireBufferRule.CRANE, 100_000)).isEqualTo(4.58);
    }

    @Test
    void takes_the_largest_class_where_no_voltage_is_stated_or_it_is_above_the_table() {
        assertThat(WireBuffers.distanceM(WireBufferRule.CRANE, 0)).isEqualTo(13.72);
        assertThat(WireBuffers.distanceM(WireBufferRule.CRANE, 1.2e6)).isEqualTo(13.72);
        assertThat(WireBuffers.distanceM(WireBufferRule.CRANE_TRAVEL, 0)).isEqualTo(6.1);
        assertThat(WireBuffers.distanceM(WireBufferRule.OWN, 0)).isZero();
        assertThatThrownBy(() -> WireBuffers.distanceM(WireBufferRule.CRANE, -1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("voltageV");
    }

    @Test
    void is_a_floor_under_the_operators_own_distance_for_live_power_lines_only() {
        assertThat(needM(wire(WireKind.POWER, true, 20_000), 300)).isEqualTo(4);
        assertThat(needM(wire(WireKind.POWER, true, 66_000), 300)).isEqualTo(4.58);
        assertThat(needM(wire(WireKind.POWER, true, 66_000), 2950)).isEqualTo(4.58 * 1.20);
        assertThat(needM(wire(WireKind.POWER, false, 66_000), 300)).isEqualTo(4);
        assertThat(needM(wire(WireKind.CABLEWAY, true, 0), 300)).isEqualTo(4);
        assertThat(needM(wire(WireKind.POWER, true, 66_000), Double.POSITIVE_INFINITY))
                .isEqualTo(9.16);
    }

    @Test
    void never_falls_with_voltage_or_height() {
        SeededSamples.of(34)
                .forEach(
                        500,
                        sample -> {
                            double voltageV = sample.between(1, 1.1e6);
                            double moreV = voltageV + sample.between(0, 1e6);
                            double heightM = sample.between(-100, 7000);
                            for (WireBufferRule rule : WireBufferRule.values()) {
                                assertThat(WireBuffers.distanceM(rule, moreV))
                                        .isGreaterThanOrEqualTo(
                                                WireBuffers.distanceM(rule, voltageV));
                            }
                            assertThat(WireBuffers.altitudeFactor(heightM + 500))
                                    .isGreaterThanOrEqualTo(WireBuffers.altitudeFactor(heightM));
                        });
    }
}
