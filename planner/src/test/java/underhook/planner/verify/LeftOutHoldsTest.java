package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.at;
import static underhook.planner.verify.SmallDay.lid;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.WeatherHour;
import underhook.core.plan.LeftOut;

/** Reasons for which X1 may stay behind, each worked out by hand on the small day. */
class LeftOutHoldsTest {
    /** X1 of so much, from the laydown to a site, left out for a reason that is told. */
    private static SmallDay leftOut(FindingCode code, String to, double massKg) {
        SmallDay day = SmallDay.good();
        return day.inJob(
                        "loads",
                        day.job().loads().stream()
                                .map(
                                        load ->
                                                load.id().equals(lid("X1"))
                                                        ? SmallDay.load(
                                                                "X1", "bag", "A", to, massKg)
                                                        : load)
                                .toList())
                .inPlan("leftOut", List.of(new LeftOut(lid("X1"), code, "so")))
                .inPlan(
                        "findings",
                        Stream.concat(
                                        day.plan().findings().stream(),
                                        Stream.of(SmallDay.said(code, Severity.STOP, "X1")))
                                .toList());
    }

    private static boolean isHeld(SmallDay day) {
        return new PlanVerifier()
                .check(day.job(), day.ground(), day.plan()).violations().stream()
                        .noneMatch(
                                one ->
                                        one.code() == FindingCode.STATED_WRONG
                                                && one.subject().equals("X1"));
    }

    private static SmallDay weather(SmallDay day, WeatherHour... hours) {
        return day.inJob("weather", SmallDay.with(day.job().weather(), "hours", List.of(hours)));
    }

    /** Its table ends at 20 °C; with 14 m/s a bag is not lifted, whose limit is 12. */
    @Test
    void outside_the_table_in_the_only_hours_that_are_calm_enough() {
        WeatherHour windy = new WeatherHour(at(-3600), 101325, 283.15, 0, 14, 16, "");
        WeatherHour hot = new WeatherHour(at(7200), 101325, 303.15, 0, 5, 7, "");

        assertThat(isHeld(weather(leftOut(FindingCode.CHART_RANGE, "S1", 200), windy, hot)))
                .isTrue();
    }

    /** 550 kg: 1920 - 1230 - 550 = 140 kg of fuel at 10 °C, but 1870 - 1230 - 550 = 90 at 20 °C. */
    @Test
    void too_little_fuel_in_the_only_hours_that_are_calm_enough() {
        WeatherHour windy = new WeatherHour(at(-3600), 101325, 263.15, 0, 14, 16, "");
        WeatherHour warm = new WeatherHour(at(7200), 101325, 293.15, 0, 5, 7, "");

        assertThat(
                        isHeld(
                                weather(
                                        leftOut(FindingCode.FUEL_TOO_LOW_FOR_LOAD, "S1", 550),
                                        windy,
                                        warm)))
                .isTrue();
    }

    /** Reserve of 1200 s and 600 s of contingency alone are 72 kg at 0.04 kg/s. */
    @Test
    void too_little_fuel_for_the_tank() {
        assertThat(
                        isHeld(
                                leftOut(FindingCode.FUEL_TOO_LOW_FOR_LOAD, "S1", 200)
                                        .machine("fuelUsableKg", 75.0)))
                .isTrue();
    }

    /** The pole's lift to S2 begins at 3490 s and is hooked up at 3550: it is flown to its end. */
    @Test
    void a_place_that_is_closed_while_the_last_lift_to_it_has_begun() {
        SmallDay day = leftOut(FindingCode.PLACE_UNUSED, "S2", 200);

        assertThat(isHeld(day.inPlan("made.at", at(3500)))).isTrue();
        assertThat(isHeld(day.inPlan("made.at", at(3480)))).isFalse();
    }

    @Test
    void a_place_that_is_closed_as_the_last_lift_ends() {
        SmallDay day = leftOut(FindingCode.PLACE_UNUSED, "S2", 200);

        assertThat(isHeld(day.inPlan("made.at", at(4080)))).isTrue();
        assertThat(isHeld(day.inPlan("made.at", at(9000)))).isFalse();
    }

    /** B1 is the same load on the same way, hooked up at 900 s. */
    @Test
    void no_way_any_more_where_one_like_it_was_flown_before() {
        SmallDay day = leftOut(FindingCode.NO_WAY, "S2", 200);

        assertThat(isHeld(day.inPlan("made.at", at(2000)))).isTrue();
        assertThat(isHeld(day.inPlan("made.at", at(800)))).isFalse();
    }
}
