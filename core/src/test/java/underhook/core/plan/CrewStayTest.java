package underhook.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import underhook.core.job.CrewId;
import underhook.core.job.PlaceId;

class CrewStayTest {
    private static final PlaceId S1 = new PlaceId("S1");
    private static final Instant SEVEN = Instant.parse("2026-09-08T07:00:00Z");
    private static final Instant EIGHT = SEVEN.plusSeconds(3600);

    @Test
    void who_works_at_a_place_is_there_from_the_first_to_the_last_second() {
        CrewStay stay = doing("works and waits");

        assertThat(stay.isAt(S1, SEVEN)).isTrue();
        assertThat(stay.isAt(S1, EIGHT)).isTrue();
        assertThat(stay.isAt(S1, SEVEN.minusSeconds(1))).isFalse();
        assertThat(stay.isAt(S1, EIGHT.plusSeconds(1))).isFalse();
        assertThat(stay.isAt(new PlaceId("S2"), SEVEN)).isFalse();
    }

    @Test
    void who_comes_to_a_place_is_not_there_yet() {
        assertThat(doing("walks to S1").isAt(S1, SEVEN.plusSeconds(60))).isFalse();
        assertThat(doing("flown to S1").isAt(S1, SEVEN.plusSeconds(60))).isFalse();
    }

    private static CrewStay doing(String what) {
        return new CrewStay(new CrewId("P"), S1, SEVEN, EIGHT, what);
    }
}
