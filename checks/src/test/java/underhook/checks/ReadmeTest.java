package underhook.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import underhook.core.air.Atmosphere;
import underhook.core.aircraft.HoverChart;
import underhook.core.job.HoverTable;
import underhook.core.unit.Units;

/** The lift that the README works through: its workings give its answers, and it is of the demo day. */
class ReadmeTest {
    private static final Pattern NUMBER = Pattern.compile("\\d+(?:,\\d{3})*(?:\\.\\d+)?");

    private final String readme = Checkout.read(Checkout.root().resolve("README.md"));

    private final Row altitude = row("Pressure altitude at S14");
    private final Row temperature = row("Temperature there");
    private final Row hover = row("Hover mass out of ground effect, from the table");
    private final Row capacity = row("Sling capacity without fuel");
    private final Row pole = row("What the pole counts");
    private final Row fuel = row("Most fuel at hook-up");

    @Test
    void the_air_is_what_the_program_computes() {
        // The README uses 27.3 ft per hPa, the slope at the standard sea level: R T / (g p) =
        // 287.05 * 288.15 / (9.80665 * 1013.25) = 8.324 m/hPa = 27.31 ft/hPa. Over 4.75 hPa the
        // slope
        // falls by 0.4 %, so the rule is off by about 0.2 % of 40 m.
        assertThat(altitude.answer()).isCloseTo(pressureAltitudeM(), within(0.1));
        // Printed to one decimal.
        assertThat(temperature.answer()).isCloseTo(temperatureC(), within(0.05));
    }

    @Test
    void the_hover_mass_is_what_the_program_looks_up() {
        assertThat(hover.answer()).isEqualTo(hoverMassKg());
    }

    @Test
    void the_masses_follow_from_each_other() {
        assertThat(capacity.workings()).first().isEqualTo(hover.answer());
        assertThat(capacity.answer())
                .isEqualTo(hoverMassKg() - capacity.working(1) - capacity.working(2));
        assertThat(pole.working(1)).isEqualTo(1 - pole.working(2) / 100);
        assertThat(pole.answer()).isEqualTo(Math.ceil(pole.working(0) / pole.working(1)));
        assertThat(fuel.workings()).containsExactly(capacity.answer(), pole.answer());
        assertThat(fuel.answer()).isEqualTo(fuel.working(0) - fuel.working(1));
        assertThat(number(readme, "at most about (\\d+) kg of fuel")).isEqualTo(fuel.answer());
    }

    @Test
    void the_lift_is_of_the_demo_day() {
        String job = demo("job.yaml");
        String machine = demo("machine.yaml");
        String weather = demo("weather.csv");

        // The terrain's own 789.6 m, printed as whole metres.
        assertThat(number(demo("places.csv"), "(?m)^S14,site,[^,]*,\\d+,\\d+,([0-9.]+),"))
                .isCloseTo(altitude.working(0), within(0.5));
        assertThat(number(weather, "(?m)^10:00,(\\d+),")).isEqualTo(altitude.working(1));
        assertThat(number(weather, "(?m)^10:00,\\d+,(\\d+),")).isEqualTo(temperature.working(0));
        assertThat(number(job, "reference-elevation-m: (\\d+)")).isEqualTo(temperature.working(1));
        assertThat(number(job, "lapse-c-per-100m: ([0-9.]+)")).isEqualTo(temperature.working(2));
        assertThat(altitude.working(0) - temperature.working(1)).isEqualTo(temperature.working(4));
        assertThat(number(demo("loads.csv"), "(?m)^L28;pole;B;S14;(\\d+);weighed;"))
                .isEqualTo(pole.working(0));
        assertThat(
                        number(machine, "empty-mass-kg: (\\d+)")
                                + number(machine, "crew-mass-kg: (\\d+)"))
                .isEqualTo(capacity.working(1));
        assertThat(number(machine, "name: 25 m, length-m: 25, mass-kg: (\\d+)"))
                .isEqualTo(capacity.working(2));
        assertThat(number(demo("rules.yaml"), "construction-margin-percent: (\\d+)"))
                .isEqualTo(pole.working(2));
        assertThat(number(readme, "reserve of (\\d+) kg"))
                .isCloseTo(
                        number(machine, "reserve-min: (\\d+)")
                                * number(machine, "burn-kg-per-min: ([0-9.]+)"),
                        within(1e-9));
        assertThat(machine).contains("pressure-altitude-m: [0, 500, 1000,");
        assertThat(number(machine, "oat-c: 10, mass-kg: \\[\\d+, (\\d+),"))
                .isEqualTo(hover.working(0));
        assertThat(number(machine, "oat-c: 20, mass-kg: \\[\\d+, (\\d+),"))
                .isEqualTo(hover.working(1));
        assertThat(number(machine, "oat-c: 10, mass-kg: \\[\\d+, \\d+, (\\d+),"))
                .isEqualTo(hover.working(5));
        assertThat(number(machine, "oat-c: 20, mass-kg: \\[\\d+, \\d+, (\\d+),"))
                .isEqualTo(hover.working(6));
    }

    private double pressureAltitudeM() {
        return Atmosphere.pressureAltitudeM(
                Units.hpaToPa(altitude.working(1)), altitude.working(0));
    }

    private double temperatureC() {
        return temperature.working(0)
                - temperature.working(2) / temperature.working(3) * temperature.working(4);
    }

    private double hoverMassKg() {
        HoverTable table =
                new HoverTable(
                        List.of(hover.working(2), hover.working(7)),
                        List.of(
                                Units.celsiusToKelvin(hover.working(3)),
                                Units.celsiusToKelvin(hover.working(4))),
                        List.of(
                                List.of(hover.working(0), hover.working(5)),
                                List.of(hover.working(1), hover.working(6))),
                        5,
                        "README");
        return HoverChart.of(table, hover.working(0))
                .tableMassKg(pressureAltitudeM(), Units.celsiusToKelvin(temperatureC()));
    }

    /** A row of the README's table: the numbers of its working and its answer. */
    private record Row(List<Double> workings, double answer) {
        double working(int index) {
            return workings.get(index);
        }
    }

    private Row row(String question) {
        Matcher line =
                Pattern.compile(
                                "(?m)^\\| "
                                        + Pattern.quote(question)
                                        + " \\| ([^|]*) \\| ([^|]*) \\|$")
                        .matcher(readme);
        assertThat(line.find()).as("row of the README: " + question).isTrue();
        return new Row(numbers(line.group(1)), numbers(line.group(2)).get(0));
    }

    private static List<Double> numbers(String text) {
        List<Double> all = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(text);
        while (matcher.find()) {
            all.add(Double.valueOf(matcher.group().replace(",", "")));
        }
        return all;
    }

    private static double number(String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        assertThat(matcher.find()).as(pattern).isTrue();
        return Double.parseDouble(matcher.group(1));
    }

    private static String demo(String name) {
        return Checkout.read(
                Checkout.root()
                        .resolve("adapters/src/main/resources/underhook/adapter/demo")
                        .resolve(name));
    }
}
