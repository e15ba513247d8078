package underhook.core.billing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Sums worked by hand; the tariff is invented. */
class InvoiceTest {
    private static final long MINUTE = 60_000;

    @Test
    void a_started_tenth_of_an_hour_counts_and_the_line_shows_how() {
        Tariff tariff =
                new Tariff(
                        "by the hour",
                        "EUR",
                        0,
                        List.of(
                                item(
                                        "flying",
                                        Tariff.Basis.FLYING_TIME,
                                        Tariff.Rounding.STARTED_TENTH_OF_HOUR,
                                        21_000)));

        // 2 h 36 min is 26 tenths; one second more is 27.
        assertThat(units(tariff, 156 * MINUTE)).isEqualTo(26);
        Invoice more = Invoice.of(tariff, flying(156 * MINUTE + 1000));
        assertThat(more.lines().get(0).units()).isEqualTo(27);
        assertThat(more.lines().get(0).measured()).isEqualTo("2 h 36 min 1 s");
        assertThat(more.lines().get(0).unit()).isEqualTo("started tenth of an hour");
        assertThat(more.total()).isEqualTo(new Money(567_000, "EUR"));
    }

    @Test
    void minutes_are_rounded_as_the_tariff_says() {
        assertThat(Tariff.Rounding.NEAREST_MINUTE.units(90_000)).isEqualTo(2);
        assertThat(Tariff.Rounding.NEAREST_MINUTE.units(89_999)).isEqualTo(1);
        assertThat(Tariff.Rounding.STARTED_MINUTE.units(60_001)).isEqualTo(2);
        assertThat(Tariff.Rounding.STARTED_MINUTE.units(0)).isZero();
        assertThat(Tariff.Rounding.STARTED_HOUR.units(1)).isEqualTo(1);
    }

    @Test
    void lifts_poles_fuel_and_the_day_add_up_and_a_short_day_is_filled_up() {
        Tariff tariff =
                new Tariff(
                        "mixed",
                        "EUR",
                        400_000,
                        List.of(
                                item("lifts", Tariff.Basis.LIFTS, 2_500),
                                item("poles", Tariff.Basis.POLES, 9_000),
                                item("fuel", Tariff.Basis.FUEL_KG, 210),
                                item("day", Tariff.Basis.DAY, 50_000)));
        Invoice.Quantities done = new Invoice.Quantities(0, 0, 0, 36, 13, 480);

        Invoice invoice = Invoice.of(tariff, done);

        // 36 x 25.00 + 13 x 90.00 + 480 x 2.10 + 500.00 = 900 + 1170 + 1008 + 500 = 3578.00.
        assertThat(invoice.lines()).hasSize(5);
        assertThat(invoice.lines().get(4).cents()).isEqualTo(400_000 - 357_800);
        assertThat(invoice.total().cents()).isEqualTo(400_000);
    }

    @Test
    void other_money_does_not_add() {
        assertThatThrownBy(() -> new Money(1, "EUR").plus(new Money(1, "NOK")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("do not add");
    }

    private static long units(Tariff tariff, long millis) {
        return Invoice.of(tariff, flying(millis)).lines().get(0).units();
    }

    private static Invoice.Quantities flying(long millis) {
        return new Invoice.Quantities(millis, millis, 0, 0, 0, 0);
    }

    private static Tariff.Item item(String name, Tariff.Basis basis, long cents) {
        return item(name, basis, Tariff.Rounding.STARTED_MINUTE, cents);
    }

    private static Tariff.Item item(
            String name, Tariff.Basis basis, Tariff.Rounding rounding, long cents) {
        return new Tariff.Item(name, basis, rounding, cents);
    }
}
