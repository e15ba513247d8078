package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class WordsTest {
    /** Zurich went back from 03:00 +02:00 to 02:00 +01:00 at 01:00 UTC on 2026-10-25 (Directive 2000/84/EC). */
    @Test
    void an_hour_that_comes_twice_is_told_with_its_offset() {
        ZoneId zurich = ZoneId.of("Europe/Zurich");

        assertThat(Words.clock(Instant.parse("2026-10-25T00:16:42Z"), zurich))
                .isEqualTo("02:16:42 +02:00");
        assertThat(Words.clock(Instant.parse("2026-10-25T01:16:42Z"), zurich))
                .isEqualTo("02:16:42 +01:00");
        assertThat(Words.clock(Instant.parse("2026-10-24T01:16:42Z"), zurich))
                .isEqualTo("03:16:42");
    }
}
