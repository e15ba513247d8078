package underhook.planner.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class EffortTest {
    private static final DayOrder.Stops NEVER = new DayOrder.Stops(() -> false);

    @Test
    void work_grows_with_the_seconds_and_shrinks_with_the_size_of_the_day() {
        assertThat(new Effort(1, 30).days(36)).isEqualTo(3 * new Effort(1, 10).days(36));
        assertThat(new Effort(1, 10).days(100)).isLessThan(new Effort(1, 10).days(60));
        assertThatThrownBy(() -> new Effort(1, 0)).hasMessageContaining("seconds (0)");
    }

    @Test
    void the_work_done_hangs_on_the_effort_alone() {
        DayTable table = TinyDay.of(11, 7).table();

        List<Integer> built =
                List.of(1L, 2L, 2L).stream()
                        .map(
                                seconds ->
                                        DayOrder.find(
                                                table, new Effort(3, seconds), NEVER, d -> {}))
                        .map(DayOrder.Found::built)
                        .toList();

        assertThat(built.get(0)).isLessThan(built.get(1));
        assertThat(built.get(2)).isEqualTo(built.get(1));
    }

    @Test
    void what_was_asked_of_a_table_before_changes_nothing() {
        DayTable fresh = TinyDay.ofChangingWind(4, 7).table();
        DayTable asked = TinyDay.ofChangingWind(4, 7).table();
        DayOrder.find(asked, new Effort(9, 3), NEVER, done -> {});

        assertThat(DayOrder.find(asked, new Effort(5, 2), NEVER, done -> {}))
                .isEqualTo(DayOrder.find(fresh, new Effort(5, 2), NEVER, done -> {}));
    }

    /** Whatever the engine was off for before counts. */
    @Test
    void a_break_begins_with_the_fuelling_before_it() {
        DayTable table = TinyDay.of(1, 4).table();
        Run run = new Run(table);
        run.begin(100, null);
        run.fly(600);
        Grounding grounding = new Grounding(run);
        long stoppedS = run.timeS;
        run.stand(table.rules.breakS() / 3);

        grounding.rest(Cause.of(Cause.Kind.ENGINE_LIMIT, 0));

        assertThat(run.timeS - stoppedS).isEqualTo(table.rules.breakS());
        assertThat(run.onSinceBreakS).isZero();
    }
}
