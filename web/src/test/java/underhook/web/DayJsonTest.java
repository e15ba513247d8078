package underhook.web;

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

class DayJsonTest {
    private static final Instant SIX = Instant.parse("2026-09-08T06:00:00Z");
    private static final Instant NINE = Instant.parse("2026-09-08T09:00:00Z");
    private static final Instant TEN = Instant.parse("2026-09-08T10:00:00Z");
    private static final PlaceId PLACE = new PlaceId("B");
    private static final CrewId LOADER = new CrewId("loader");
    private static final Crew FROM_SIX =
            new Crew(
                    LOADER,
                    1,
                    100,
                    PLACE,
                    SIX,
                    Set.of(Crew.Role.HOOK),
                    true,
                    List.of(),
                    Language.EN);

    @Test
    void whoever_comes_to_work_comes_when_they_were_told_to() {
        CrewStay first = stay(SIX, NINE);

        assertThat(DayJson.shifted(first, List.of(FROM_SIX), -1680))
                .isEqualTo(stay(SIX, NINE.minusSeconds(1680)));
        assertThat(DayJson.shifted(first, List.of(FROM_SIX), 600))
                .isEqualTo(stay(SIX, NINE.plusSeconds(600)));
        assertThat(DayJson.shifted(stay(SIX.plusSeconds(900), NINE), List.of(FROM_SIX), -1680))
                .isEqualTo(stay(SIX, NINE.minusSeconds(1680)));
    }

    @Test
    void later_stays_are_as_early_as_the_day() {
        assertThat(DayJson.shifted(stay(NINE, TEN), List.of(FROM_SIX), -1680))
                .isEqualTo(stay(NINE.minusSeconds(1680), TEN.minusSeconds(1680)));
    }

    /**
     * A line typed in whole feet is told in whole feet by the pages, which divide by 0.3048 and keep a tenth.
     *
     * @source SP811 appendix B: exact definition of the foot
     */
    @Test
    void a_line_typed_in_feet_stays_a_line_of_so_many_feet() {
        for (int ft = 20; ft <= 400; ft++) {
            double lengthM = DayJson.lineM(ft * 0.3048).doubleValue();

            assertThat(Math.round(lengthM / 0.3048 * 10) / 10.0).isEqualTo(ft);
        }
    }

    private static CrewStay stay(Instant from, Instant to) {
        return new CrewStay(LOADER, PLACE, from, to, "waits");
    }
}
