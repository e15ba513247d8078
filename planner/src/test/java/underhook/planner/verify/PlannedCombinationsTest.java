package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.plan.Limit;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** What bounds hold for, and who hangs with whom: invented bags, expected from the rules of combining. */
class PlannedCombinationsTest {
    private static final double BAG_KG = 40;

    @Test
    void a_bound_holds_for_all_combinations_of_a_few_loads() {
        SmallDay day = bags(3, (one, other) -> true);

        Plan plan = Planned.of(day);

        assertThat(plan.summary().provenFor()).contains("all-combinations");
        assertThat(plan.summary().lowerBoundFlightS().orElseThrow())
                .isBetween(0.5 * plan.summary().flightS(), plan.summary().flightS());
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    @Test
    void a_bound_holds_for_the_chosen_combination_where_too_many_may_hang_together() {
        Plan plan = Planned.of(bags(7, (one, other) -> true));

        assertThat(plan.summary().provenFor()).contains("chosen-combination");
    }

    @Test
    void those_that_do_not_name_each_other_hang_apart() {
        // The first names all others; of those none names another.
        SmallDay day = bags(3, (one, other) -> one == 0);

        Plan plan = Planned.of(day);

        assertThat(onHooks(plan)).containsExactlyInAnyOrder(2, 1);
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    @Test
    void dangerous_goods_hang_alone_and_are_told() {
        SmallDay day = bags(2, (one, other) -> true).load("C1", "dangerousGoods", "UN 1202");

        Plan plan = Planned.of(day);

        assertThat(onHooks(plan)).containsExactly(1, 1);
        assertThat(plan.findings())
                .filteredOn(one -> one.code() == FindingCode.DANGEROUS_GOODS)
                .singleElement()
                .satisfies(one -> assertThat(one.message()).startsWith("As listed: UN 1202."));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    @Test
    void remarks_that_speak_of_what_burns_are_asked_about() {
        SmallDay day =
                bags(3, (one, other) -> false)
                        .load("C0", "remarks", "generator, 20 l Diesel")
                        .load("C1", "remarks", "gaskets, fuelled by nothing")
                        .load("C2", "remarks", "2 Säcke, Zünder");

        Plan plan = Planned.of(day);

        assertThat(plan.findings())
                .filteredOn(one -> one.code() == FindingCode.DANGEROUS_GOODS)
                .extracting(one -> one.subject() + " " + one.message().substring(0, 28))
                .containsExactly(
                        "C0 Its remarks speak of \"Diesel", "C2 Its remarks speak of \"Zünder");
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

        Plan plan = Planned.of(day);

        assertThat(onHooks(plan)).containsExactly(1, 1);
        assertThat(plan.leftOut()).isEmpty();
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
    }

    /**
     * Each load hangs in its own sling. A cube of 1 m and 40 kg trails 30° at the square root of
     * 2 · 40 · 9.81 · tan 30° / 1.2, which is 19.4 m/s or 37 kt: there by atan(1.2 · 19.0² / (2 · 40 · 9.81))
     * = 28.9°. With another of 250 kg beside it both as one body would trail 8.7°, which no load does.
     * @source DERIVED balance of drag and weight on each load
     */
    @Test
    void of_two_on_a_hook_the_one_that_trails_farthest_is_stated() {
        SmallDay day = bags(2, (one, other) -> true).load("C1", "massKg", OptionalDouble.of(250));

        Plan plan = Planned.of(day);

        assertThat(onHooks(plan)).containsExactly(2);
        Limit trail = trail(plan);
        assertThat(trail.value()).isBetween(28.5, 30.0);
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
        Limit asOneBody = new Limit("TRAIL", 8.7, trail.limit(), "deg", 71, trail.source(), false);
        assertThat(
                        new PlanVerifier()
                                .check(day.job(), day.ground(), instead(plan, asOneBody))
                                .violations())
                .extracting(Finding::code)
                .contains(FindingCode.MARGIN_WRONG);
    }

    /**
     * One of 20 kg trails 30° at the square root of 2 · 20 · 9.81 · tan 30° / 1.2, which is 13.7 m/s; as one
     * body with another of 250 kg it would at 35.7 m/s. @source DERIVED balance of drag and weight
     */
    @Test
    void the_recheck_refuses_a_speed_at_which_one_of_two_trails_too_far() {
        SmallDay day =
                bags(2, (one, other) -> true)
                        .load("C0", "massKg", OptionalDouble.of(20))
                        .load("C1", "massKg", OptionalDouble.of(250));
        SmallDay wide =
                day.inJob(
                        "rules",
                        day.job()
                                .rules()
                                .withKinds(
                                        day.job().rules().kinds().stream()
                                                .map(kind -> with(kind, "trailLimitRad", 1.3))
                                                .toList()));

        Plan fast = Planned.of(wide);

        assertThat(loadedMPerS(fast)).isGreaterThan(19);

        assertThat(new PlanVerifier().check(day.job(), day.ground(), fast).violations())
                .extracting(Finding::code)
                .contains(FindingCode.FLIES_BADLY);
    }

    private static double loadedMPerS(Plan plan) {
        return rotation(plan).legs().get(0).speedMPerS();
    }

    private static Limit trail(Plan plan) {
        return rotation(plan).limits().stream()
                .filter(limit -> limit.code().equals("TRAIL"))
                .findFirst()
                .orElseThrow();
    }

    private static Rotation rotation(Plan plan) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .findFirst()
                .orElseThrow();
    }

    /** The plan with another limit of that code. */
    private static Plan instead(Plan plan, Limit limit) {
        List<Limit> limits =
                rotation(plan).limits().stream()
                        .map(one -> one.code().equals(limit.code()) ? limit : one)
                        .toList();
        List<Step> steps =
                plan.steps().stream()
                        .map(
                                step ->
                                        step.rotation().isEmpty()
                                                ? step
                                                : with(
                                                        step,
                                                        "rotation",
                                                        Optional.of(
                                                                with(
                                                                        rotation(plan),
                                                                        "limits",
                                                                        limits))))
                        .toList();
        return with(plan, "steps", steps);
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
}
