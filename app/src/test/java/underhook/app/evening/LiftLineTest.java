package underhook.app.evening;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.ClosedDay.Told;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** A new order writes what was done by then with the times that were told. By hand. */
class LiftLineTest {
    private static final Instant HOOKED = Instant.parse("2026-09-08T08:21:07.225Z");
    private static final Instant DONE = Instant.parse("2026-09-08T08:25:11.924Z");

    @Test
    void is_as_late_as_it_stood_after_its_plan() {
        assertThat(line(DONE.minusSeconds(90), false).later()).contains(Duration.ofSeconds(90));
    }

    @Test
    void what_a_new_order_took_over_is_neither_late_nor_in_time() {
        assertThat(line(DONE, true).later()).isEmpty();
        assertThat(line(DONE.minusSeconds(90), true).later()).isEmpty();
    }

    private static LiftLine line(Instant plannedDone, boolean takenOver) {
        return new LiftLine(
                new LoadId("L03"),
                "crate",
                new PlaceId("A"),
                new PlaceId("S01"),
                OptionalDouble.of(25),
                Optional.of(HOOKED),
                Optional.of(plannedDone),
                Told.TAPPED,
                takenOver,
                Optional.of(HOOKED),
                Optional.of(DONE),
                OptionalDouble.of(380),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of());
    }
}
