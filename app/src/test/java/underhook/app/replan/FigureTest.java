package underhook.app.replan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.job.LoadId;
import underhook.core.unit.Units;

/** A pound is 0.45359237 kg. @source NIST Special Publication 811, appendix B.8 */
class FigureTest {
    private static final double FULL_KG = 164.96;

    @Test
    void tells_a_converted_figure_with_one_decimal() {
        Finding fuel = ReplanDay.misread(Units.lbToKg(-5), FULL_KG).get(0);

        assertThat(fuel.value()).isEqualTo("-2.3");
        assertThat(fuel.limit()).isEqualTo("0 to 164.9");
    }

    @Test
    void never_tells_a_refused_figure_as_its_limit() {
        assertThat(refused(164.97)).isEqualTo("165.0 beside 0 to 164.9");
        assertThat(refused(164.9, 164.91)).isEqualTo("164.91 beside 0 to 164.90");
        assertThat(refused(164.9, 164.9001)).isEqualTo("164.9001 beside 0 to 164.9000");
        assertThat(refused(-0.0001)).isEqualTo("-0.0001 beside 0 to 164.9");
        assertThat(refused(Math.nextUp(FULL_KG))).isEqualTo("165.0 beside 0 to 164.9");
        assertThat(refused(Double.NaN)).isEqualTo("NaN beside 0 to 164.9");
        assertThat(refused(Double.POSITIVE_INFINITY)).isEqualTo("Infinity beside 0 to 164.9");
    }

    @Test
    void tells_a_limit_that_is_itself_allowed_and_lies_below_what_is_refused() {
        for (int i = 0; i < 60; i++) {
            double fullKg = 150 + i * 0.37;
            double fuelKg = fullKg + Math.pow(10, -i / 5.0);
            Finding fuel = ReplanDay.misread(fuelKg, fullKg).get(0);
            BigDecimal most = new BigDecimal(fuel.limit().replace("0 to ", ""));

            assertThat(ReplanDay.misread(most.doubleValue(), fullKg)).isEmpty();
            assertThat(new BigDecimal(fuel.value())).isGreaterThan(most);
        }
    }

    @Test
    void tells_a_mass_that_no_load_has_with_one_decimal() {
        assertThatThrownBy(() -> new Change.Weighed(new LoadId("B1"), Units.lbToKg(999_999)))
                .hasMessage("massKg (453591.9) must be above 0 and below 100000.");
        assertThatThrownBy(() -> new Change.Weighed(new LoadId("B1"), 100_000))
                .hasMessage("massKg (100000.0) must be above 0 and below 100000.");
    }

    private static String refused(double fuelKg) {
        return refused(FULL_KG, fuelKg);
    }

    private static String refused(double fullKg, double fuelKg) {
        Finding fuel = ReplanDay.misread(fuelKg, fullKg).get(0);
        return fuel.value() + " beside " + fuel.limit();
    }
}
