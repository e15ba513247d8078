package underhook.app.flying;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.app.desk.Lifts;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.flown.TrainedHands;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * By hand: the engine was to be off for ten minutes between two lifts, for eight of fuel and two of waiting. The first
 * was free at minute 8, the second hooked at minute 22.
 */
class EngineUntoldTest {
    private static final Instant SIX = Instant.parse("2026-09-08T06:00:00Z");

    private final List<Step> steps =
            List.of(
                    step(StepKind.ROTATION, 0, 10, Optional.of(turn("L1", 2))),
                    step(StepKind.REFUEL, 10, 18, Optional.empty()),
                    step(StepKind.WAIT, 18, 20, Optional.empty()),
                    step(StepKind.ROTATION, 20, 30, Optional.of(turn("L2", 22))));
    private final List<Tap> taps = new ArrayList<>();

    @Test
    void what_was_planned_off_and_not_told_counts_as_running() {
        assertThat(untold(30)).isEqualTo(new EngineUntold(600, 600));
    }

    @Test
    void what_was_told_to_be_off_is_not_assumed() {
        tap(TapKind.ENGINE_OFF, 11);
        tap(TapKind.ENGINE_ON, 15);
        assertThat(untold(30)).isEqualTo(new EngineUntold(360, 360));

        taps.clear();
        tap(TapKind.ENGINE_OFF, 10);
        tap(TapKind.ENGINE_ON, 21);
        assertThat(untold(30)).isEqualTo(new EngineUntold(0, 0));
    }

    /** Nobody told when it was started: it ran at the hook-up, and since when nobody knows. */
    @Test
    void an_end_that_nobody_told_gives_nothing_back() {
        tap(TapKind.ENGINE_OFF, 11);
        tap(TapKind.HOOKED, 22);

        assertThat(untold(30)).isEqualTo(new EngineUntold(600, 600));
    }

    @Test
    void part_of_a_minute_is_told_as_one() {
        assertThat(EngineUntold.minutes(0)).isZero();
        assertThat(EngineUntold.minutes(60)).isEqualTo(1);
        assertThat(EngineUntold.minutes(61)).isEqualTo(2);
    }

    private EngineUntold untold(int minute) {
        List<LiftState> lifts =
                List.of(lift(1, 0, 2, Optional.of(at(8))), lift(2, 3, 22, Optional.empty()));
        return EngineUntold.of(steps, lifts, FlownDay.of(taps, TrainedHands.UNNAMED), at(minute));
    }

    private LiftState lift(int number, int step, int hooked, Optional<Instant> doneAt) {
        Rotation turn = steps.get(step).rotation().orElseThrow();
        return new LiftState(
                new Lifts.Lift(number, step, turn, Lifts.Status.INSIDE, ""),
                steps.get(step),
                doneAt.isPresent() ? LiftState.State.DONE : LiftState.State.ON_HOOK,
                Optional.of(at(hooked)),
                doneAt,
                OptionalDouble.empty());
    }

    private static Instant at(int minute) {
        return SIX.plusSeconds(60L * minute);
    }

    private static Rotation turn(String load, int hooked) {
        return new Rotation(
                List.of(new LoadId(load)),
                at(hooked),
                150,
                300,
                1900,
                200,
                0,
                List.of(),
                List.of(),
                List.of());
    }

    private static Step step(StepKind kind, int from, int to, Optional<Rotation> rotation) {
        PlaceId place = new PlaceId("A");
        return new Step(
                kind,
                place,
                place,
                at(from),
                at(to),
                150,
                140,
                25,
                rotation.isPresent(),
                rotation,
                Optional.empty(),
                List.of(),
                "");
    }

    private void tap(TapKind kind, int minute) {
        taps.add(
                new Tap(
                        "t" + taps.size(),
                        at(minute),
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
