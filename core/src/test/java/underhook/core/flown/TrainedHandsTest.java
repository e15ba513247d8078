package underhook.core.flown;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Language;
import underhook.core.job.PlaceId;

/** The books name a crew; on the day each of its people taps by number. Common practice, no source. */
class TrainedHandsTest {
    @Test
    void who_belongs_to_a_crew_that_is_named_may_hook() {
        TrainedHands hands =
                new TrainedHands(Set.of("yard", "low 2"))
                        .withPeopleOf(List.of(crew("yard", 2), crew("low", 3), crew("solo", 1)));

        assertThat(hands.names()).containsExactlyInAnyOrder("yard", "yard 1", "yard 2", "low 2");
        assertThat(hands.mayHook("low 1")).isFalse();
        assertThat(hands.mayHook("solo")).isFalse();
    }

    @Test
    void where_nobody_is_named_nobody_is_refused() {
        assertThat(TrainedHands.UNNAMED.withPeopleOf(List.of(crew("yard", 2))).mayHook("anybody"))
                .isTrue();
    }

    private static Crew crew(String id, int people) {
        return new Crew(
                new CrewId(id),
                people,
                95,
                new PlaceId("A"),
                Instant.parse("2026-09-08T06:00:00Z"),
                Set.of(Crew.Role.HOOK),
                true,
                List.of(),
                Language.EN);
    }
}
