package underhook.adapter.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import underhook.core.plan.Limit;

class WordsTest {
    @Test
    void hook_altitudes_go_up_to_the_next_step() {
        // 1000 ft is 304.8 m exactly, so the feet stay and the metres go up.
        assertThat(Words.hookM(304.8)).isEqualTo(305);
        assertThat(Words.hookFt(304.8)).isEqualTo(1000);
        assertThat(Words.hookM(305.1)).isEqualTo(310);
        assertThat(Words.hookFt(305.1)).isEqualTo(1010);
        assertThat(Words.hookM(-3)).isEqualTo(0);
    }

    @Test
    void whole_numbers_are_not_moved_by_binary_noise() {
        // 0.1 + 0.2 is a little above 0.3 in binary.
        assertThat(Words.up((0.1 + 0.2) * 10)).isEqualTo(3);
        assertThat(Words.down(2.9999999)).isEqualTo(3);
        assertThat(Words.up(3.001)).isEqualTo(4);
        assertThat(Words.down(2.99)).isEqualTo(2);
    }

    /** -0.04 m is nothing, not less than nothing. */
    @Test
    void no_minus_stands_before_nothing() {
        assertThat(String.format(Locale.ROOT, "%+.1f", PoleSketch.tenths(-0.04))).isEqualTo("+0.0");
        assertThat(String.format(Locale.ROOT, "%+.1f", PoleSketch.tenths(-0.06))).isEqualTo("-0.1");
    }

    @Test
    void wind_is_rounded_against_the_pilot() {
        // 1 kt is 1852/3600 m/s = 0.51444 m/s.
        assertThat(Words.headKt(3.2)).isEqualTo(6);
        assertThat(Words.headKt(-1.2)).isEqualTo(-3);
        assertThat(Words.crossKt(-1.1)).isEqualTo(3);
    }

    @Test
    void north_is_360() {
        assertThat(Words.bearing(0)).isEqualTo("360°");
        assertThat(Words.bearing(Math.toRadians(359.7))).isEqualTo("360°");
        assertThat(Words.bearing(Math.toRadians(7))).isEqualTo("007°");
    }

    /** 240° less 3.5° is a little under 236.5° in binary; the devices show 237 too. */
    @Test
    void half_a_degree_goes_up_whatever_the_binary_noise() {
        assertThat(Words.bearing(Math.toRadians(240) - Math.toRadians(3.5))).isEqualTo("237°");
        assertThat(Words.bearing(Math.toRadians(236.5) - 1e-12)).isEqualTo("237°");
        assertThat(Words.bearing(Math.toRadians(236.49))).isEqualTo("236°");
    }

    /** Summer time ended in Vienna on 2026-10-25 at 01:00 UTC (tz database): 02:30 was there twice. */
    @Test
    void on_the_day_of_a_clock_change_a_time_carries_its_offset() {
        ZoneId vienna = ZoneId.of("Europe/Vienna");
        Words change =
                new Words(
                        PaperDay.on(LocalDate.of(2026, 10, 25), vienna),
                        PaperDay.output().readJob().ground());
        Words before =
                new Words(
                        PaperDay.on(LocalDate.of(2026, 10, 24), vienna),
                        PaperDay.output().readJob().ground());

        assertThat(change.clock(Instant.parse("2026-10-25T00:30:00Z"))).isEqualTo("02:30 +02");
        assertThat(change.clock(Instant.parse("2026-10-25T01:30:00Z"))).isEqualTo("02:30 +01");
        assertThat(change.zone()).isEqualTo("UTC+02:00, then UTC+01:00 (Europe/Vienna)");
        assertThat(before.zone()).isEqualTo("UTC+02:00 (Europe/Vienna)");
        assertThat(before.clock(Instant.parse("2026-10-24T00:30:00Z"))).isEqualTo("02:30");
    }

    /** Summer time began in Santiago on 2026-09-06 at 04:00 UTC (tz database): midnight was skipped. */
    @Test
    void a_day_that_begins_with_the_change_has_one_offset() {
        ZoneId santiago = ZoneId.of("America/Santiago");
        Words day =
                new Words(
                        PaperDay.on(LocalDate.of(2026, 9, 6), santiago),
                        PaperDay.output().readJob().ground());

        assertThat(day.clock(Instant.parse("2026-09-06T11:52:00Z"))).isEqualTo("08:52");
        assertThat(day.zone()).isEqualTo("UTC-03:00 (America/Santiago)");
    }

    @Test
    void a_limit_says_inside_near_or_outside() {
        assertThat(Words.limit(limit(701.2, 750.9, 6.6)))
                .isEqualTo("hook limit 702 of 750 kg, 6 % left, near");
        assertThat(Words.limit(limit(400, 750, 46.7))).endsWith("46 % left, inside");
        assertThat(Words.limit(limit(760, 750, -1.33))).endsWith("-2 % left, outside");
    }

    @Test
    void on_the_card_a_limit_is_what_it_leaves_and_inside_is_not_said() {
        assertThat(Words.brief(limit(701.2, 750.9, 6.6))).isEqualTo("Hook limit 6 % NEAR");
        assertThat(Words.brief(limit(400, 750, 46.7))).isEqualTo("Hook limit 46 %");
        assertThat(Words.brief(limit(760, 750, -1.33))).isEqualTo("Hook limit -2 % OUTSIDE");
        assertThat(Words.words("WIND_GUST at S10")).isEqualTo("wind gust at S10");
    }

    private static Limit limit(double value, double limit, double marginPercent) {
        return new Limit("HOOK_LIMIT", value, limit, "kg", marginPercent, "invented", true);
    }

    @Test
    void largest_gap_goes_round_through_north() {
        // 020°, 150°, 195°: 130, 45 and, through north, 185 degrees.
        double gapRad =
                GuySketch.largestGapRad(
                        List.of(Math.toRadians(195), Math.toRadians(20), Math.toRadians(150)));

        assertThat(Math.toDegrees(gapRad)).isCloseTo(185, within(1e-9));
    }
}
