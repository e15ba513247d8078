package underhook.app.port;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WrittenTest {
    @Test
    void rounds_to_either_side_of_the_decimal_text() {
        assertThat(Written.down(180.7654321, 3)).hasToString("180.765");
        assertThat(Written.up(180.7654321, 3)).hasToString("180.766");
        assertThat(Written.down(-0.05, 1)).hasToString("-0.1");
        // 412.3 has no exact double; its shortest text is what is rounded.
        assertThat(Written.up(412.3, 1)).hasToString("412.3");
        assertThat(Written.nearest(-0.0001, 2)).hasToString("0");
        assertThat(Written.nearest(1200, 2)).hasToString("1200");
        assertThat(Written.nearest(1e15, 2)).hasToString("1000000000000000");
    }

    @Test
    void rounding_again_changes_nothing_and_keeps_order() {
        Random random = new Random(7);
        for (int i = 0; i < 1000; i++) {
            double a = random.nextDouble(-1e4, 1e4);
            double b = random.nextDouble(-1e4, 1e4);
            double once = Written.down(a, 3).doubleValue();

            assertThat(Written.down(once, 3).doubleValue()).isEqualTo(once);
            assertThat(once).isLessThanOrEqualTo(a);
            assertThat(Written.up(a, 3).doubleValue()).isGreaterThanOrEqualTo(a);
            assertThat(Written.down(Math.min(a, b), 3))
                    .isLessThanOrEqualTo(Written.down(Math.max(a, b), 3));
        }
    }

    @Test
    void refuses_what_is_no_number() {
        for (double value :
                List.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY)) {
            assertThatThrownBy(() -> Written.nearest(value, 1))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void times_carry_the_offset_of_their_own_instant() {
        // Summer time in Vienna ended on 2026-10-25 at 01:00 UTC.
        ZoneId vienna = ZoneId.of("Europe/Vienna");

        assertThat(Written.time(Instant.parse("2026-10-25T00:30:00Z"), vienna))
                .isEqualTo("2026-10-25T02:30:00+02:00");
        assertThat(Written.time(Instant.parse("2026-10-25T01:30:00Z"), vienna))
                .isEqualTo("2026-10-25T02:30:00+01:00");
        assertThat(Written.time(Instant.parse("2026-06-01T05:00:00.25Z"), ZoneOffset.UTC))
                .isEqualTo("2026-06-01T05:00:00.250Z");
        assertThat(Written.time(Instant.parse("2026-06-01T05:00:00.000001999Z"), ZoneOffset.UTC))
                .isEqualTo("2026-06-01T05:00:00.000001Z");
    }
}
