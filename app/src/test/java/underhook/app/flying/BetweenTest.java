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

/** A small day by hand: three lifts, and between the first two fuel, a wait, the line off, people, the long line. */
class BetweenTest {
    private static final Instant SIX = Instant.parse("2026-09-08T06:00:00Z");

    private final List<Step> steps =
            List.of(
                    step(StepKind.LINE_CHANGE, 25, Optional.empty()),
                    lift("L1"),
                    step(StepKind.REFUEL, 25, Optional.empty()),
                    step(StepKind.WAIT, 25, Optional.empty()),
                    step(StepKind.LINE_CHANGE, 0, Optional.empty()),
                    step(StepKind.POSITION, 0, Optional.empty()),
                    step(StepKind.CREW_MOVE, 0, Optional.empty()),
                    step(StepKind.LINE_CHANGE, 40, Optional.empty()),
                    lift("L2"),
                    lift("L3"));
    private final List<Tap> taps = new ArrayList<>();

    @Test
    void is_what_the_plan_puts_there_without_waiting() {
        assertThat(kinds(Between.before(steps, 8)))
                .containsExactly(
                        StepKind.REFUEL,
                        StepKind.LINE_CHANGE,
                        StepKind.POSITION,
                        StepKind.CREW_MOVE,
                        StepKind.LINE_CHANGE);
        assertThat(Between.before(steps, 1)).hasSize(1);
    }

    @Test
    void what_was_tapped_goes_and_what_was_passed_by_for_it() {
        tap(TapKind.LINE_ON, Tap.Amount.ofLine(25));
        tap(TapKind.HOOKED, Tap.Amount.NONE, "L1");
        assertThat(still()).hasSize(5);

        tap(TapKind.LINE_OFF, Tap.Amount.NONE);
        assertThat(still())
                .containsExactly(
                        StepKind.REFUEL,
                        StepKind.POSITION,
                        StepKind.CREW_MOVE,
                        StepKind.LINE_CHANGE);
        // People were flown: the move to them is over. Nobody has tapped fuel.
        tap(TapKind.PEOPLE_OUT, Tap.Amount.NONE);
        assertThat(still()).containsExactly(StepKind.REFUEL, StepKind.LINE_CHANGE);
        tap(TapKind.LINE_ON, Tap.Amount.ofLine(25));
        assertThat(still()).containsExactly(StepKind.REFUEL, StepKind.LINE_CHANGE);
        tap(TapKind.LINE_ON, Tap.Amount.ofLine(40));
        tap(TapKind.REFUELLED, Tap.Amount.ofMass(200));
        assertThat(still()).isEmpty();
    }

    @Test
    void a_lift_that_was_given_up_asks_for_nothing_anew() {
        tap(TapKind.HOOKED, Tap.Amount.NONE, "L1");
        tap(TapKind.REFUELLED, Tap.Amount.ofMass(200));
        tap(TapKind.LINE_ON, Tap.Amount.ofLine(40));
        tap(TapKind.HOOKED, Tap.Amount.NONE, "L2");
        tap(TapKind.ABORTED, Tap.Amount.NONE);

        assertThat(still()).doesNotContain(StepKind.REFUEL, StepKind.LINE_CHANGE);
    }

    /** The crew was flown and the long line hung on before L2 was given up; L3 was taken first. */
    @Test
    void a_lift_that_was_passed_over_for_a_later_one_asks_for_nothing_anew() {
        tap(TapKind.HOOKED, Tap.Amount.NONE, "L1");
        tap(TapKind.REFUELLED, Tap.Amount.ofMass(200));
        tap(TapKind.LINE_OFF, Tap.Amount.NONE);
        tap(TapKind.PEOPLE_OUT, Tap.Amount.NONE);
        tap(TapKind.LINE_ON, Tap.Amount.ofLine(40));
        tap(TapKind.HOOKED, Tap.Amount.NONE, "L2");
        tap(TapKind.ABORTED, Tap.Amount.NONE);
        tap(TapKind.HOOKED, Tap.Amount.NONE, "L3");

        assertThat(still()).isEmpty();
    }

    private List<StepKind> still() {
        Lifts.Lift lift =
                new Lifts.Lift(
                        2, 8, steps.get(8).rotation().orElseThrow(), Lifts.Status.INSIDE, "");
        LiftState next =
                new LiftState(
                        lift,
                        steps.get(8),
                        LiftState.State.WAITS,
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty());
        return kinds(Between.stillBefore(steps, next, FlownDay.of(taps, TrainedHands.UNNAMED)));
    }

    private static List<StepKind> kinds(List<Step> steps) {
        return steps.stream().map(Step::kind).toList();
    }

    private static Step lift(String load) {
        return step(
                StepKind.ROTATION,
                25,
                Optional.of(
                        new Rotation(
                                List.of(new LoadId(load)),
                                SIX,
                                150,
                                300,
                                1900,
                                200,
                                0,
                                List.of(),
                                List.of(),
                                List.of())));
    }

    private static Step step(StepKind kind, double lineLengthM, Optional<Rotation> rotation) {
        PlaceId place = new PlaceId("A");
        return new Step(
                kind,
                place,
                place,
                SIX,
                SIX,
                150,
                140,
                lineLengthM,
                true,
                rotation,
                Optional.empty(),
                List.of(),
                "");
    }

    private void tap(TapKind kind, Tap.Amount amount, String... loads) {
        taps.add(
                new Tap(
                        "t" + taps.size(),
                        SIX.plusSeconds(60L * taps.size()),
                        "loader",
                        "phone",
                        kind,
                        List.of(loads).stream().map(LoadId::new).toList(),
                        Optional.empty(),
                        amount,
                        Optional.empty(),
                        ""));
    }
}
