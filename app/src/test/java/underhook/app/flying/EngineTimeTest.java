package underhook.app.flying;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.flown.TrainedHands;

/** Times worked out by hand. */
class EngineTimeTest {
    private static final Instant SIX = Instant.parse("2026-09-08T06:00:00Z");
    private static final double BREAK_S = 1800;

    private final List<Tap> taps = new ArrayList<>();

    @Test
    void counts_a_run_that_goes_on_until_now() {
        tap(TapKind.ENGINE_ON, 0);

        assertThat(time(40).dayS()).isEqualTo(40 * 60);
        assertThat(time(40).sinceS(SIX.plusSeconds(1800))).isEqualTo(10 * 60);
    }

    @Test
    void begins_anew_after_a_break_that_is_long_enough() {
        tap(TapKind.ENGINE_ON, 0);
        tap(TapKind.ENGINE_OFF, 60);
        // 20 minutes are no break.
        tap(TapKind.ENGINE_ON, 80);
        tap(TapKind.ENGINE_OFF, 100);
        assertThat(time(100).sinceBreakS(BREAK_S)).isEqualTo(80 * 60);
        // 30 minutes are one.
        tap(TapKind.ENGINE_ON, 130);

        assertThat(time(145).sinceBreakS(BREAK_S)).isEqualTo(15 * 60);
        assertThat(time(145).dayS()).isEqualTo(95 * 60);
    }

    @Test
    void counts_nothing_before_the_first_start() {
        assertThat(time(10).dayS()).isZero();
        tap(TapKind.ENGINE_OFF, 5);
        assertThat(time(10).dayS()).isZero();
    }

    /** Told off at 10, fuelled at 15, hooked at 20 and never told on: it ran from 15 at the latest told. */
    @Test
    void a_machine_that_moves_runs_since_it_was_last_told_to_stand() {
        tap(TapKind.ENGINE_ON, 0);
        tap(TapKind.ENGINE_OFF, 10);
        tap(TapKind.REFUELLED, 15);
        tap(TapKind.HOOKED, 20);

        assertThat(time(30).isRunning()).isTrue();
        assertThat(time(30).dayS()).isEqualTo((10 + 15) * 60);
        assertThat(time(30).startsSince(SIX.plusSeconds(15 * 60))).isEqualTo(1);
    }

    /** Hooked at 20, the first thing told, 12 min after the engine was planned to be started: it ran from 8 on. */
    @Test
    void a_machine_nobody_told_of_before_ran_for_as_long_as_planned_by_then() {
        tap(TapKind.HOOKED, 20);
        tap(TapKind.OFF, 26);

        EngineTime untold =
                new EngineTime(
                        FlownDay.of(taps, TrainedHands.UNNAMED),
                        SIX.plusSeconds(30 * 60),
                        tap -> Duration.ofMinutes(tap.kind() == TapKind.HOOKED ? 12 : 18));

        assertThat(untold.dayS()).isEqualTo(22 * 60);
    }

    private EngineTime time(int minute) {
        return new EngineTime(
                FlownDay.of(taps, TrainedHands.UNNAMED), SIX.plusSeconds(60L * minute));
    }

    private void tap(TapKind kind, int minute) {
        taps.add(
                new Tap(
                        "t" + taps.size(),
                        SIX.plusSeconds(60L * minute),
                        "pilot",
                        "tablet",
                        kind,
                        List.of(),
                        Optional.empty(),
                        Tap.Amount.NONE,
                        Optional.empty(),
                        ""));
    }
}
