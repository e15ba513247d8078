package underhook.app.flying;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.app.desk.Lifts;
import underhook.app.replan.Change;
import underhook.core.flown.FlownDay;
import underhook.core.flown.FlownLift;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.flown.TrainedHands;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** By hand: L2 counts 437 kg, the load cell reads 504.3, so it is put down again. */
class GivenUpTest {
    private static final Instant EIGHT = Instant.parse("2026-09-08T08:00:00Z");
    private static final LoadId L2 = new LoadId("L2");

    private final List<Tap> taps = new ArrayList<>();

    @Test
    void a_load_that_was_given_up_is_ordered_anew_as_it_hung() {
        hook(21, 504.3);
        assertThat(readHeavier(437)).isEmpty();

        tap(TapKind.ABORTED, 24, List.of(L2), OptionalDouble.empty());
        assertThat(readHeavier(437)).containsExactly(new Change.Weighed(L2, 505));
        assertThat(readHeavier(505)).isEmpty();
    }

    @Test
    void hooked_again_it_still_weighs_that_and_flown_it_no_longer_matters() {
        hook(21, 504.3);
        tap(TapKind.ABORTED, 24, List.of(L2), OptionalDouble.empty());
        tap(TapKind.HOOKED, 40, List.of(L2), OptionalDouble.empty());
        assertThat(readHeavier(437)).containsExactly(new Change.Weighed(L2, 505));
        List<FlownLift> tries = FlownDay.of(taps, TrainedHands.UNNAMED).lifts();
        assertThat(LiftState.readKg(List.of(L2), tries)).hasValue(504.3);
        assertThat(LiftState.readKg(List.of(new LoadId("L3"), L2), tries)).isEmpty();

        tap(TapKind.OFF, 44, List.of(L2), OptionalDouble.empty());
        tap(TapKind.FREE_SEEN, 45, List.of(L2), OptionalDouble.empty());
        tap(TapKind.FREE_CONFIRMED, 46, List.of(L2), OptionalDouble.empty());
        assertThat(readHeavier(437)).isEmpty();
    }

    /** A new order has it at 9:05; that it hung at 8:21 makes nothing 44 minutes early. */
    @Test
    void what_comes_is_as_late_as_the_last_lift_that_was_not_given_up() {
        LiftState done = lift(1, 10, 13, LiftState.State.DONE);
        LiftState givenUp = lift(2, 65, 21, LiftState.State.ABORTED);
        assertThat(LiftState.lateS(List.of(done, givenUp))).isEqualTo(180);
        assertThat(LiftState.lateS(List.of(givenUp))).isZero();
    }

    private List<Change> readHeavier(double countsKg) {
        return ToldChanges.readHeavier(
                FlownDay.of(taps, TrainedHands.UNNAMED), load -> OptionalDouble.of(countsKg));
    }

    private void hook(int minute, double readKg) {
        tap(TapKind.HOOKED, minute, List.of(L2), OptionalDouble.of(readKg));
    }

    private void tap(TapKind kind, int minute, List<LoadId> loads, OptionalDouble readKg) {
        taps.add(
                new Tap(
                        "t" + taps.size(),
                        at(minute),
                        kind == TapKind.FREE_CONFIRMED ? "other" : "loader",
                        "phone",
                        kind,
                        loads,
                        Optional.empty(),
                        new Tap.Amount(readKg, OptionalDouble.empty(), 0),
                        Optional.empty(),
                        ""));
    }

    private static LiftState lift(int number, int planned, int hooked, LiftState.State state) {
        Rotation turn =
                new Rotation(
                        List.of(new LoadId("L" + number)),
                        at(planned),
                        150,
                        300,
                        1900,
                        200,
                        0,
                        List.of(),
                        List.of(),
                        List.of());
        PlaceId place = new PlaceId("A");
        Step step =
                new Step(
                        StepKind.ROTATION,
                        place,
                        place,
                        at(planned),
                        at(planned + 8),
                        150,
                        140,
                        25,
                        true,
                        Optional.of(turn),
                        Optional.empty(),
                        List.of(),
                        "");
        return new LiftState(
                new Lifts.Lift(number, 0, turn, Lifts.Status.INSIDE, ""),
                step,
                state,
                Optional.of(at(hooked)),
                Optional.empty(),
                OptionalDouble.empty());
    }

    private static Instant at(int minute) {
        return EIGHT.plusSeconds(60L * minute);
    }
}
