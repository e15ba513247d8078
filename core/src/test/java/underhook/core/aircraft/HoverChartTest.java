package underhook.core.aircraft;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.HoverTable;
import underhook.core.unit.Units;

class HoverChartTest {
    /** Part of an invented machine's table: 0 to 1000 m, 0 to 20 °C. */
    static final HoverTable TABLE =
            new HoverTable(
                    List.of(0.0, 500.0, 1000.0),
                    List.of(
                            Units.celsiusToKelvin(0),
                            Units.celsiusToKelvin(10),
                            Units.celsiusToKelvin(20)),
                    List.of(
                            List.of(2300.0, 2160.0, 2025.0),
                            List.of(2220.0, 2080.0, 1950.0),
                            List.of(2130.0, 1995.0, 1875.0)),
                    5,
                    "invented manual, table 1");

    private final HoverChart capped = HoverChart.of(TABLE, 2050);

    @Test
    void gives_the_mass_worked_by_hand() {
        // 750 m is half way, 16 °C six tenths down: at 10 °C (2050 + 1950) / 2 = 2000,
        // at 20 °C (1995 + 1875) / 2 = 1935, so 2000 - 0.6 * 65 = 1961.
        double massKg = capped.massKg(750, Units.celsiusToKelvin(16)).getValue();

        assertThat(massKg).as("whole kilograms").isEqualTo(1961);
    }

    @Test
    void rounds_down_to_whole_kilograms() {
        // 751 m: at 10 °C 2050 - 0.502 * 100 = 1999.8; at 20 °C 1995 - 0.502 * 120 = 1934.76;
        // 1999.8 - 0.6 * 65.04 = 1960.776.
        assertThat(capped.tableMassKg(751, Units.celsiusToKelvin(16))).isEqualTo(1960);
    }

    @Test
    void cuts_the_printed_masses_before_it_interpolates() {
        // At 10 °C, 600 m: uncut 2080 - 0.2 * 130 = 2054, which a later cut would call 2050;
        // cut first it is 2050 - 0.2 * 100 = 2030.
        assertThat(capped.tableMassKg(600, Units.celsiusToKelvin(10))).isEqualTo(2030);
    }

    @Test
    void gives_a_printed_value_as_printed() {
        assertThat(HoverChart.of(TABLE, 9999).tableMassKg(500, Units.celsiusToKelvin(10)))
                .isEqualTo(2080);
        assertThat(HoverChart.of(TABLE, 9999).tableMassKg(1000, Units.celsiusToKelvin(20)))
                .isEqualTo(1875);
    }

    @Test
    void refuses_what_the_table_does_not_cover() {
        Finding finding = capped.massKg(1000.5, Units.celsiusToKelvin(16)).findings().get(0);

        assertThat(finding.code()).isEqualTo(FindingCode.CHART_RANGE);
        assertThat(finding.severity()).isEqualTo(Severity.STOP);
        assertThat(List.of(finding.value(), finding.limit(), finding.unit()))
                .containsExactly("1000.5", "1000", "m");
        assertThat(finding.message())
                .isEqualTo(
                        "The hover table does not cover this air: the pressure altitude is 1000.5 m and the"
                                + " table runs from 0 to 1000 m.");
        assertThat(finding.source()).isEqualTo("invented manual, table 1");
        assertThat(capped.massKg(-0.1, Units.celsiusToKelvin(16)).isDone()).isFalse();
        assertThat(capped.massKg(500, Units.celsiusToKelvin(20.01)).isDone()).isFalse();
        assertThat(capped.massKg(500, Units.celsiusToKelvin(-0.01)).isDone()).isFalse();
        assertThat(capped.massKg(Double.NaN, Units.celsiusToKelvin(10)).isDone()).isFalse();
        assertThat(capped.massKg(500, Double.NaN).isDone()).isFalse();
    }

    /** However little it is over, the figure and its limit are not told as the same. */
    @Test
    void tells_which_figure_is_outside() {
        Finding warm = capped.massKg(500, Units.celsiusToKelvin(20.01)).findings().get(0);
        Finding both = capped.massKg(-0.02, Units.celsiusToKelvin(-0.01)).findings().get(0);

        assertThat(warm.message())
                .endsWith("air: the temperature is 20.1 °C and the table runs from 0 to 20 °C.");
        assertThat(List.of(warm.value(), warm.limit(), warm.unit()))
                .containsExactly("20.1", "20", "°C");
        assertThat(both.message())
                .endsWith(
                        "air: the pressure altitude is -0.1 m and the table runs from 0 to 1000 m;"
                                + " the temperature is -0.1 °C and the table runs from 0 to 20 °C.");
        assertThat(List.of(both.value(), both.limit(), both.unit()))
                .containsExactly("-0.1", "0", "m");
        assertThat(capped.beyondFraction(1100, Units.celsiusToKelvin(-5)))
                .isCloseTo(0.1 + 0.25, within(1e-9));
        assertThat(capped.beyondFraction(1000, Units.celsiusToKelvin(20))).isZero();
    }

    @Test
    void the_bare_look_up_throws_outside_the_table() {
        assertThatThrownBy(() -> capped.tableMassKg(1001, Units.celsiusToKelvin(10)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1001");
        assertThatThrownBy(() -> HoverChart.of(TABLE, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> HoverChart.of(TABLE, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void reads_the_handbook_example_of_a_table_between_two_rows() {
        // FAA-PHAK chapter 10, take-off distance 1115 at 2000 ft, 1230 at 3000 ft: 1172.5 at 2500
        // ft.
        // The chart rounds down to 1172; the handbook rounds to 1173.
        HoverTable table =
                new HoverTable(
                        List.of(Units.ftToM(2000), Units.ftToM(3000)),
                        List.of(280.0, 290.0),
                        List.of(List.of(1115.0, 1230.0), List.of(1115.0, 1230.0)),
                        1,
                        "FAA-PHAK");

        double value = HoverChart.of(table, 9999).tableMassKg(Units.ftToM(2500), 285);

        assertThat(value).isCloseTo(1172.5, within(0.5));
    }
}
