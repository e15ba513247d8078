package underhook.app.flying;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Language;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;

/** Who is looked for where: a crew on its way is at neither end of it (common practice, no source). */
class EmergencyPeopleTest {
    private static final Instant SEVEN = Instant.parse("2026-06-01T05:00:00Z");
    private static final PlaceId S1 = new PlaceId("S1");
    private static final PlaceId S2 = new PlaceId("S2");
    private static final PlaceId HOME = new PlaceId("H");
    private static final Crew CREW =
            new Crew(
                    new CrewId("P"),
                    3,
                    95,
                    HOME,
                    SEVEN,
                    Set.of(Crew.Role.RECEIVE),
                    false,
                    List.of(),
                    Language.EN);
    private static final List<CrewStay> DAY =
            List.of(
                    stay(S1, 0, 10, "flown to S1"),
                    stay(S1, 10, 60, "works and waits"),
                    stay(S2, 60, 80, "walks to S2"),
                    stay(S2, 80, 120, "works and waits"));

    @Test
    void who_is_on_the_way_is_not_at_the_place() {
        assertThat(people(S2, 70)).isEmpty();
        assertThat(people(S1, 70)).isEmpty();

        assertThat(coming(S2, 70))
                .containsExactly(new EmergencySheet.Coming(CREW, S1, SEVEN.plusSeconds(4800)));
        assertThat(coming(S1, 70)).isEmpty();
    }

    @Test
    void who_has_come_is_at_the_place_alone() {
        assertThat(people(S2, 80))
                .containsExactly(new EmergencySheet.Present(CREW, SEVEN.plusSeconds(7200)));
        assertThat(coming(S2, 80)).isEmpty();
    }

    @Test
    void the_first_way_of_the_day_begins_where_the_crew_starts() {
        assertThat(people(S1, 5)).isEmpty();
        assertThat(coming(S1, 5))
                .containsExactly(new EmergencySheet.Coming(CREW, HOME, SEVEN.plusSeconds(600)));
    }

    private static List<EmergencySheet.Present> people(PlaceId place, int minute) {
        return EmergencySheet.people(List.of(CREW), DAY, place, at(minute));
    }

    private static List<EmergencySheet.Coming> coming(PlaceId place, int minute) {
        return EmergencySheet.coming(List.of(CREW), DAY, place, at(minute));
    }

    private static CrewStay stay(PlaceId place, int from, int to, String doing) {
        return new CrewStay(CREW.id(), place, at(from), at(to), doing);
    }

    private static Instant at(int minute) {
        return SEVEN.plusSeconds(60L * minute);
    }
}
