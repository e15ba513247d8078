package underhook.app.evening;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.ClosedDay.Told;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** A new order writes what was done by then with the times that were tapped. */
class LearningTest {
    private static final Instant HOOKED = Instant.parse("2026-09-08T08:21:07.225Z");
    private static final Instant DONE = Instant.parse("2026-09-08T08:25:11.924Z");

    @Test
    void what_a_new_order_took_over_as_tapped_is_no_sample_of_the_plan() {
        assertThat(Learning.isFrozen(line(HOOKED, DONE))).isTrue();
    }

    @Test
    void what_came_out_another_way_than_planned_is_one() {
        assertThat(Learning.isFrozen(line(HOOKED, DONE.plusMillis(1)))).isFalse();
        assertThat(Learning.isFrozen(line(HOOKED.minusSeconds(60), DONE))).isFalse();
    }

    private static LiftLine line(Instant plannedHooked, Instant plannedDone) {
        return new LiftLine(
                new LoadId("L03"),
                "crate",
                new PlaceId("A"),
                new PlaceId("S01"),
                OptionalDouble.of(25),
                Optional.of(plannedHooked),
                Optional.of(plannedDone),
                Told.TAPPED,
                Optional.of(HOOKED),
                Optional.of(DONE),
                OptionalDouble.of(380),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of());
    }
}
