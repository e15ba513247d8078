package underhook.app.replan;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.flown.TrainedHands;
import underhook.core.job.LoadId;
import underhook.planner.order.Standing;

class NowTest {
    private static final Instant NINE = Instant.parse("2026-09-08T09:00:00Z");

    private static Tap tap(int id, TapKind kind, String load, Optional<String> undoes) {
        return new Tap(
                "t" + id,
                NINE.plusSeconds(60L * id),
                "loader",
                "phone",
                kind,
                load.isEmpty() ? List.of() : List.of(new LoadId(load)),
                Optional.empty(),
                Tap.Amount.NONE,
                undoes,
                "");
    }

    private static Tap tap(int id, TapKind kind, String load) {
        return tap(id, kind, load, Optional.empty());
    }

    @Test
    void a_lift_is_done_when_it_was_let_go_and_in_the_air_before() {
        Now now =
                now(
                        tap(1, TapKind.HOOKED, "L1"),
                        tap(5, TapKind.OFF, "L1"),
                        tap(7, TapKind.HOOKED, "L2"));

        assertThat(now.log()).isEqualTo(Standing.Log.KEPT);
        assertThat(now.done())
                .containsExactly(
                        new Now.Done(
                                List.of(new LoadId("L1")),
                                NINE.plusSeconds(60),
                                Optional.of(NINE.plusSeconds(300))),
                        new Now.Done(
                                List.of(new LoadId("L2")),
                                NINE.plusSeconds(420),
                                Optional.empty()));
    }

    @Test
    void what_was_taken_back_or_given_up_is_not_done() {
        Now now =
                now(
                        tap(1, TapKind.HOOKED, "L1"),
                        tap(2, TapKind.UNDONE, "", Optional.of("t1")),
                        tap(3, TapKind.HOOKED, "L2"),
                        tap(4, TapKind.ABORTED, "L2"));

        assertThat(now.done()).isEmpty();
        assertThat(now.log()).isEqualTo(Standing.Log.KEPT);
    }

    @Test
    void what_was_set_down_before_the_rest_was_given_up_is_done() {
        Tap both = tap(1, TapKind.HOOKED, "L1");
        Tap hooked =
                new Tap(
                        both.id(),
                        both.at(),
                        both.by(),
                        both.device(),
                        both.kind(),
                        List.of(new LoadId("L1"), new LoadId("L2")),
                        both.place(),
                        both.amount(),
                        both.undoes(),
                        both.note());

        Now now = now(hooked, tap(4, TapKind.OFF, "L1"), tap(6, TapKind.ABORTED, ""));

        assertThat(now.done())
                .containsExactly(
                        new Now.Done(
                                List.of(new LoadId("L1")),
                                NINE.plusSeconds(60),
                                Optional.of(NINE.plusSeconds(240))));
    }

    @Test
    void a_day_on_which_only_words_were_tapped_has_not_begun() {
        assertThat(now(tap(1, TapKind.REPORTED, ""), tap(2, TapKind.BRIEFED, "")).log())
                .isEqualTo(Standing.Log.NOT_BEGUN);
    }

    private static Now now(Tap... taps) {
        FlownDay flown = FlownDay.of(List.of(taps), TrainedHands.UNNAMED);
        return Now.asTapped(NINE.plusSeconds(3600), flown, OptionalDouble.empty());
    }
}
