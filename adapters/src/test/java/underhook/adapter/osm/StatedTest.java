package underhook.adapter.osm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Forms of writing: OSM wiki, pages "Key:height", "Map features/Units" and "Key:voltage"; from memory. */
class StatedTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12 | 12",
                "12.5 | 12.5",
                "12 m | 12",
                "12m | 12",
                "12,5 m | 12.5",
                "40 ft | 12.192",
                "40' | 12.192",
                "7'4\" | 2.2352",
                "7 ft 4 in | 2.2352",
                "12;30;20 | 30",
            })
    void reads_heights_as_people_write_them(String text, double expectedM) {
        Stated stated = Stated.length(text).orElseThrow();

        // Exact but for the rounding of binary fractions: 1 ft = 0.3048 m.
        assertThat(stated.heightM()).isCloseTo(expectedM, within(1e-9));
        assertThat(stated.isRough()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"~15, 15", "ca. 15 m, 15", "10-15, 15", "about 15, 15", "<15, 15"})
    void a_guess_or_a_range_is_read_at_its_top_and_said_to_be_rough(String text, double topM) {
        assertThat(Stated.length(text)).contains(new Stated(topM, true));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "tall",
                "12 km",
                "1,200",
                "-5",
                "0",
                "1500",
                "NaN",
                "1e3",
                "12 m 4 in",
                "m",
                "--",
                ";"
            })
    void what_is_no_height_is_none(String text) {
        assertThat(Stated.length(text)).isEmpty();
    }

    @Test
    void the_highest_stated_height_counts_and_an_estimate_only_without_one() {
        assertThat(Stated.heightOf(Map.of("height", "20", "tower:height", "30")))
                .contains(new Stated(30, false));
        assertThat(Stated.heightOf(Map.of("est_height", "25"))).contains(new Stated(25, true));
        assertThat(Stated.heightOf(Map.of("height", "20", "est_height", "25")))
                .contains(new Stated(20, false));
    }

    @ParameterizedTest
    @CsvSource({
        "110000, 110000",
        "110000;20000, 110000",
        "20000; 110000, 110000",
        "110 kV, 110000",
        "110kV, 110000",
        "'110,000', 110000",
        "'110000,20000', 110000",
        "110/20, 110000",
        "400, 400000",
        "medium, 0",
        "'', 0",
        "110000 kV, 0",
    })
    void reads_the_highest_voltage_and_takes_small_numbers_on_towers_for_kilovolts(
            String text, double expectedV) {
        assertThat(Stated.voltageV(text, 1000)).isEqualTo(expectedV);
    }

    @Test
    void low_voltage_on_poles_stays_low() {
        assertThat(Stated.voltageV("400", 100)).isEqualTo(400);
        assertThat(Stated.voltageV("20", 100)).isEqualTo(20_000);
    }
}
