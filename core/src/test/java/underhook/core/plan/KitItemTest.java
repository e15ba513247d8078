package underhook.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Thirty days: common practice, no source. */
class KitItemTest {
    private static final LocalDate DAY = LocalDate.of(2026, 9, 8);

    @Test
    void falls_due_soon_from_the_day_itself_until_thirty_days_after() {
        assertThat(due(DAY).isDueSoon(DAY)).isTrue();
        assertThat(due(LocalDate.of(2026, 10, 8)).isDueSoon(DAY)).isTrue();
        assertThat(due(LocalDate.of(2026, 10, 9)).isDueSoon(DAY)).isFalse();
    }

    @Test
    void what_is_past_or_was_never_read_is_not_soon() {
        assertThat(due(DAY.minusDays(1)).isDueSoon(DAY)).isFalse();
        assertThat(new KitItem("strop", 1, 1, 1, Optional.empty(), List.of()).isDueSoon(DAY))
                .isFalse();
    }

    private static KitItem due(LocalDate on) {
        return new KitItem("strop", 1, 1, 1, Optional.of(on), List.of());
    }
}
