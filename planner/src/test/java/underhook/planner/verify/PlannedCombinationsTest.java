package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;

/** What bounds hold for, and who hangs with whom: invented bags, expected from the rules of combining. */
class PlannedCombinationsTest {
    private static final double BAG_KG = 40;

    @Test
    void a_bound_holds_for_all_combinations_of_a_few_loads() {
        SmallDay day = bags(3, (one, other) -> true);

        Plan plan = plan(day);

        assertThat(plan.summary().provenFor()).contains("all-combinations");
        assertThat(plan.summary().lowerBoundFlightS().orElseThrow())
                .isBetween(0.5 * plan.summary().flightS(), plan.summary().flightS());
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    @Test
    void a_bound_holds_for_the_chosen_combination_where_too_many_may_hang_together() {
        Plan plan = plan(bags(7, (one, other) -> true));

        assertThat(plan.summary().provenFor()).contains("chosen-combination");
    }

    @Test
    void those_that_do_not_name_each_other_hang_apart() {
        // The first names all others; of those none names another.
        SmallDay day = bags(3, (one, other) -> one == 0);

        Plan plan = plan(day);

        assertThat(onHooks(plan)).containsExactlyInAnyOrder(2, 1);
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    @Test
    void dangerous_goods_hang_alone_and_are_told() {
        SmallDay day = bags(2, (one, other) -> true).load("C1", "dangerousGoods", "UN 1202");

        Plan plan = plan(day);

        assertThat(onHooks(plan)).containsExactly(1, 1);
        assertThat(plan.findings())
                .filteredOn(one -> one.code() == FindingCode.DANGEROUS_GOODS)
                .singleElement()
                .satisfies(
                        one -> assertThat(one.message()).startsWith("Dangerous goods: UN 1202."));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    /**
     * A cube of 1 m trails 30° in air of about 1.2 kg/m³ at the square root of 2 m g tan 30° / (1.2 · 1): 5 kg
     * at less than 8 m/s, the least, and with 15 kg of ballast at nearly twice that. Ballast hangs under one
     * alone.
     */
    @Test
    void those_too_light_to_fly_together_fly_alone_with_ballast() {
        SmallDay day = bags(2, (one, other) -> true);
        for (int i = 0; i < 2; i++) {
            day = day.load("C" + i, "massKg", OptionalDouble.of(5));
        }

        Plan plan = plan(day);

        assertThat(onHooks(plan)).containsExactly(1, 1);
        assertThat(plan.leftOut()).isEmpty();
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    /** Which load names which, by number. */
    private interface Names {
        boolean does(int one, int other);
    }

    private static SmallDay bags(int count, Names names) {
        SmallDay good = SmallDay.good();
        Load first =
                good.job().loads().stream()
                        .filter(load -> load.id().value().equals("B2"))
                        .findFirst()
                        .orElseThrow();
        List<Load> loads = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int one = i;
            List<LoadId> named =
                    IntStream.range(0, count)
                            .filter(other -> other != one && names.does(one, other))
                            .mapToObj(PlannedCombinationsTest::id)
                            .toList();
            Load load = with(first, "id", id(i));
            load = with(load, "massKg", OptionalDouble.of(BAG_KG));
            loads.add(with(load, "combineWith", named));
        }
        return good.inJob("loads", loads);
    }

    private static LoadId id(int number) {
        return new LoadId("C" + number);
    }

    private static List<Integer> onHooks(Plan plan) {
        return plan.steps().stream()
                .map(Step::rotation)
                .flatMap(rotation -> rotation.stream())
                .map(rotation -> rotation.loads().size())
                .toList();
    }

    private static Plan plan(SmallDay day) {
        return DayPlanner.plan(
                        day.job(),
                        day.ground(),
                        new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false),
                        (what, share) -> {})
                .fold(
                        (made, findings) -> made,
                        refused -> {
                            throw new AssertionError(refused);
                        });
    }
}
