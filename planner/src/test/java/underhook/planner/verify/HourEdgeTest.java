package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.at;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.job.Load;
import underhook.core.job.WeatherHour;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;

/**
 * A lift that comes over its place in one row of the weather and is let go in another: the air of both counts,
 * for it hangs there all the while.
 */
class HourEdgeTest {
    private static final double TEN_K = 283.15;
    private static final double ZERO_K = 273.15;

    private static WeatherHour row(double sinceSevenS, double temperatureK, double windMPerS) {
        return new WeatherHour(
                at(sinceSevenS), 101325, temperatureK, 0, windMPerS, windMPerS + 2, "");
    }

    private static WeatherHour from(double windFromDeg, double sinceSevenS, double windMPerS) {
        double gustMPerS = windMPerS + 2;
        double fromRad = Math.toRadians(windFromDeg);
        return new WeatherHour(at(sinceSevenS), 101325, TEN_K, fromRad, windMPerS, gustMPerS, "");
    }

    private static SmallDay in(WeatherHour... rows) {
        SmallDay day = SmallDay.good();
        return day.inJob("weather", with(day.job().weather(), "hours", List.of(rows)));
    }

    private static List<String> refusals(SmallDay day) {
        return new PlanVerifier()
                .check(day.job(), day.ground(), day.plan()).violations().stream()
                        .map(finding -> finding.code() + " " + finding.subject())
                        .distinct()
                        .toList();
    }

    /**
     * B2 comes over S1 at 1200 s, when 1920 kg hover there at 10 °C, and is let go at 1240 s. From 1220 s on it
     * is 0 °C and 1970 kg would; at A 1930 kg do. So 1920 kg hold, not 1930. @source the table, by hand
     */
    @Test
    void the_warmer_row_in_which_it_comes_counts() {
        SmallDay day = in(row(-3600, TEN_K, 5), row(1220, ZERO_K, 5), row(7200, TEN_K, 5));
        SmallDay heavier =
                day.turn(
                        lift(day, "B2"),
                        turn -> with(with(turn, "hogeMassKg", 1930.0), "fuelMaxKg", 508.0));

        assertThat(refusals(day)).isEmpty();
        assertThat(refusals(heavier)).contains("HOVER_MASS B2", "FUEL_ABOVE_MAXIMUM B2");
    }

    /** P1 comes over S2 at 3660 s and is let go at 3780 s; from 3600 to 3700 s it blows with 10 m/s, 8 are allowed. */
    @Test
    void a_wind_that_is_over_when_it_is_let_go_counts() {
        SmallDay day =
                in(
                        row(-3600, TEN_K, 5),
                        row(3600, TEN_K, 10),
                        row(3700, TEN_K, 5),
                        row(7200, TEN_K, 5));

        assertThat(refusals(day)).contains("WIND_LIMIT P1");
    }

    /** The same from 3700 to 3720 s, while it hangs: calm when it comes and when it is let go. */
    @Test
    void a_wind_that_blows_only_while_it_hangs_counts() {
        SmallDay day = in(row(-3600, TEN_K, 5), row(3700, TEN_K, 10), row(3720, TEN_K, 5));

        assertThat(refusals(day)).contains("WIND_LIMIT P1");
    }

    /**
     * B2 hangs over S1 from 1200 to 1240 s. From 1210 to 1230 s it is 20 °C, and 1870 kg hover there. @source the
     * table, by hand
     */
    @Test
    void a_warm_row_in_which_it_neither_comes_nor_is_let_go_counts() {
        SmallDay day = in(row(-3600, TEN_K, 5), row(1210, 293.15, 5), row(1230, TEN_K, 5));
        SmallDay lighter =
                day.turn(
                        lift(day, "B2"),
                        turn -> with(with(turn, "hogeMassKg", 1870.0), "fuelMaxKg", 448.0));

        assertThat(refusals(day)).contains("HOVER_MASS B2", "FUEL_ABOVE_MAXIMUM B2");
        assertThat(refusals(lighter)).doesNotContain("HOVER_MASS B2", "FUEL_ABOVE_MAXIMUM B2");
    }

    /** B1 comes over S2 eastward at 960 s and is let go at 1000 s; 6 m/s of tailwind are allowed. */
    @ParameterizedTest
    @CsvSource({"940, 970, true", "970, 990, true", "940, 959, false", "1001, 1010, false"})
    void its_way_in_is_held_against_the_wind_it_comes_in(
            double fromS, double untilS, boolean refused) {
        SmallDay day = in(from(0, -3600, 5), from(270, fromS, 7), from(0, untilS, 5));

        assertThat(refusals(day).contains("APPROACH_REFUSED B1")).isEqualTo(refused);
    }

    /**
     * From S2 the empty machine may be over A at 1060 s, westward, and hovers there until B2 hangs at 1140 s; over S1 it
     * comes at 3920 s, northward, and hovers until W1 hangs at 3980 s. 6 m/s of tailwind and 10 of crosswind are allowed.
     */
    @ParameterizedTest
    @CsvSource({
        "S2-A, 90, 7, 1045, 1055, false",
        "S2-A, 90, 7, 1055, 1062, true",
        "S2-A, 90, 7, 1100, 1110, true",
        "S2-A, 90, 7, 1138, 1150, true",
        "S2-A, 90, 7, 1141, 1150, false",
        "S2-A, 270, 7, 1055, 1062, false",
        "S2-A, 0, 11, 1055, 1062, true",
        "A-S1, 180, 7, 3905, 3915, false",
        "A-S1, 180, 7, 3940, 3950, true",
        "A-S1, 180, 7, 3978, 3985, true",
    })
    void the_way_in_to_the_next_hook_up_is_held_against_the_wind_until_it_hangs(
            String leg, double fromDeg, double windMPerS, double fromS, double untilS, boolean no) {
        SmallDay day = in(from(0, -3600, 5), from(fromDeg, fromS, windMPerS), from(0, untilS, 5));

        assertThat(refusals(day).contains("APPROACH_REFUSED " + leg)).isEqualTo(no);
    }

    /**
     * 7 m/s now from the north and now from the south, 6 m/s may be behind a way in: what comes in one row and is let and now from the south, 6 m/s may be behind a way in: what comes in one row and is let
     * go in the next may come against neither.
     */
    @ParameterizedTest
    @ValueSource(ints = {80, 110, 130})
    void no_lift_is_planned_that_comes_with_the_wind_behind_it(int everyS) {
        List<WeatherHour> rows = new ArrayList<>();
        for (int k = 0; -7200 + k * everyS < 12000; k++) {
            rows.add(from(k % 2 * 180, -7200 + k * everyS, 7));
        }
        SmallDay day =
                SmallDay.good()
                        .inJob(
                                "weather",
                                with(
                                        with(SmallDay.good().job().weather(), "hours", rows),
                                        "until",
                                        at(12000)));

        Plan plan = Planned.of(day);

        assertThat(plan.steps().stream().flatMap(step -> step.rotation().stream())).isNotEmpty();
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    /**
     * The same where no way in keeps the limits in both winds: 4 m/s across and behind. Then nobody comes in one row and
     * hooks up in the next, and all is flown within the rows.
     */
    @ParameterizedTest
    @ValueSource(ints = {420, 900})
    void no_empty_way_is_planned_into_a_row_in_which_it_may_not_come_in(int everyS) {
        List<WeatherHour> rows = new ArrayList<>();
        for (int k = 0; -7200 + k * everyS < 20000; k++) {
            rows.add(from(k % 2 * 180, -7200 + k * everyS, 7));
        }
        SmallDay day =
                SmallDay.good()
                        .rule("flying.tailwindMPerS", 4.0)
                        .rule("flying.crosswindMPerS", 4.0);
        day =
                day.inJob(
                        "weather",
                        with(with(day.job().weather(), "hours", rows), "until", at(20000)));

        // To S1, where somebody stays: the empty line flies back between B1 and the others.
        List<Load> loads =
                day.job().loads().stream()
                        .map(one -> one.to().value().equals("S2") ? toS1(one) : one)
                        .toList();
        day = day.inJob("loads", loads);

        Plan plan = Planned.of(day);

        assertThat(plan.leftOut()).extracting(LeftOut::load).doesNotContain(SmallDay.lid("B1"));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    private static Load toS1(Load load) {
        return with(load, "to", SmallDay.pid("S1"));
    }

    /** Of 200 s each 40 s are too windy for a pole, which takes more than 160 s from hook-up to release. */
    @Test
    void no_pole_is_planned_through_a_wind_that_lasts_less_than_the_lift() {
        List<WeatherHour> rows = new ArrayList<>();
        for (double startS = -3600; startS < 9000; startS += 200) {
            rows.add(row(startS, TEN_K, 5));
            rows.add(row(startS + 160, TEN_K, 9));
        }
        SmallDay day = SmallDay.good();
        day =
                day.inJob(
                        "weather",
                        with(with(day.job().weather(), "hours", rows), "until", at(9000)));

        Plan plan = Planned.of(day);

        assertThat(plan.leftOut()).extracting(LeftOut::load).contains(SmallDay.lid("P1"));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.WIND_LIMIT);
    }

    /** The same coming over a row's edge, as it is planned: never more than hovers in either row. */
    @Test
    void a_planned_lift_hovers_in_both_rows() {
        // Coldest before anybody flies, so that speeds and times hang on neither row.
        SmallDay before = in(row(-7200, ZERO_K, 5), row(-3600, 293.15, 5), row(30000, 293.15, 5));
        Rotation first = to(Planned.of(before), "S1");
        double releasedS =
                (first.drops().get(0).releasedAt().toEpochMilli() - at(0).toEpochMilli()) / 1000.0;
        double edgeS = releasedS - 20;
        SmallDay day = in(row(-7200, ZERO_K, 5), row(-3600, 293.15, 5), row(edgeS, ZERO_K, 5));

        Rotation turn = to(Planned.of(day), "S1");

        // At 150 m 1870 kg hover at 20 °C, at A 1880 kg; 0 °C would allow 1970.
        assertThat(turn.drops().get(0).releasedAt()).isEqualTo(at(releasedS));
        assertThat(turn.hogeMassKg()).isEqualTo(1870);
    }

    private static Rotation to(Plan plan, String place) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .filter(turn -> turn.drops().get(0).place().value().equals(place))
                .findFirst()
                .orElseThrow();
    }

    private static int lift(SmallDay day, String load) {
        for (int i = 0; i < day.plan().steps().size(); i++) {
            if (day.plan().steps().get(i).rotation().stream()
                    .anyMatch(turn -> turn.loads().get(0).value().equals(load))) {
                return i + 1;
            }
        }
        throw new AssertionError("no lift of " + load);
    }
}
