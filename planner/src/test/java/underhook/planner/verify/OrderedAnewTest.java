package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadId;
import underhook.core.job.Rigging;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.OpenDay;
import underhook.planner.order.PlanSettings;
import underhook.planner.order.Standing;

/** The small day, ordered anew while it is flown: what is told of lifts that are done stays told. */
class OrderedAnewTest {
    /** One sling of which nobody read the tag for three bags. */
    private static SmallDay day() {
        SmallDay good = SmallDay.good().load("P1", "to", pid("S1")).crew("P", "start", pid("S1"));
        Rigging.Gear sling =
                new Rigging.Gear(
                        "sling",
                        1,
                        Rigging.Material.WEB,
                        OptionalDouble.of(600),
                        OptionalDouble.empty(),
                        0.5,
                        Optional.empty());
        Rigging rigging =
                new Rigging(
                        5,
                        List.of(sling),
                        List.of(),
                        List.of(
                                new Rigging.SlingSet(
                                        "bags",
                                        List.of("bag"),
                                        Rigging.Hitch.VERTICAL,
                                        1,
                                        Math.PI / 2,
                                        false,
                                        "sling",
                                        List.of(),
                                        Optional.empty())));
        return good.rule("handling", good.job().rules().handling().withRigging(rigging));
    }

    private static PlanSettings settings(Instant at) {
        return new PlanSettings("p", at, 1, "test", () -> false);
    }

    private static Plan planned(SmallDay day) {
        return DayPlanner.plan(
                        day.job(), day.ground(), settings(SmallDay.SEVEN), (what, share) -> {})
                .fold(
                        (made, findings) -> made,
                        refused -> {
                            throw new AssertionError(refused);
                        });
    }

    private static Plan anew(SmallDay day, Plan record, Instant now) {
        return anew(day, record, now, OpenDay.Effort.FIRST);
    }

    private static Plan anew(SmallDay day, Plan record, Instant now, OpenDay.Effort effort) {
        Standing standing =
                new Standing(
                        now,
                        Standing.Log.AS_PLANNED,
                        List.of(),
                        OptionalDouble.empty(),
                        Map.of(),
                        Map.of(),
                        Set.of(),
                        Set.of());
        return new OpenDay(day.job(), day.ground())
                .reorder(record, standing, settings(now), effort)
                .plan();
    }

    /** From now on nothing is set down at S2 any more, where a lift of bags was: no bag is left to be flown. */
    @Test
    void room_and_gear_of_what_is_done_stay_told() {
        SmallDay day = day();
        Plan record = planned(day);
        List<Step> bags =
                record.steps().stream()
                        .filter(
                                step ->
                                        step.rotation().stream()
                                                .flatMap(turn -> turn.loads().stream())
                                                .anyMatch(id -> id.value().startsWith("B")))
                        .toList();
        Instant after = bags.get(bags.size() - 1).endAt().minusSeconds(1);

        Plan plan = anew(day.place("S2", "agreed", false), record, after);

        assertThat(plan.rooms()).extracting(room -> room.place()).contains(pid("S2"));
        assertThat(plan.kit())
                .singleElement()
                .satisfies(item -> assertThat(item.forDay()).isEqualTo(3));
        assertThat(plan.findings())
                .filteredOn(one -> one.subject().equals("sling"))
                .extracting(Finding::code)
                .containsExactlyInAnyOrder(FindingCode.KIT_SHORT, FindingCode.RIGGING_UNDATED);
        assertThat(
                        new PlanVerifier()
                                .check(day.job(), day.ground(), plan).violations().stream()
                                        .filter(one -> one.code() == FindingCode.STATED_WRONG))
                .isEmpty();
    }

    /** X1 was weighed after the bags were flown: with it four hung in the sling, one more than were packed. */
    @Test
    void gear_is_counted_over_what_is_done_and_what_is_to_come() {
        SmallDay day = day();
        Plan record = planned(day);
        SmallDay weighed =
                day.inJob(
                        "loads",
                        day.job().loads().stream()
                                .map(
                                        load ->
                                                load.id().value().equals("X1")
                                                        ? with(
                                                                SmallDay.load(
                                                                        "X1", "bag", "A", "S2",
                                                                        150),
                                                                "remarks",
                                                                "weighed")
                                                        : load)
                                .toList());
        Instant late = record.steps().get(record.steps().size() - 1).startAt().plusSeconds(1);

        Plan plan = anew(weighed, record, late);

        assertThat(plan.leftOut()).isEmpty();
        assertThat(plan.kit())
                .singleElement()
                .satisfies(item -> assertThat(item.forDay()).isEqualTo(4));
        assertThat(new PlanVerifier().check(weighed.job(), weighed.ground(), plan).violations())
                .isEmpty();
    }

    /** 19 m/s are over the limit of every kind: no load may be flown any more. */
    @Test
    void a_day_of_which_nothing_may_be_flown_any_more_ends() {
        SmallDay day = day();
        Plan record = planned(day);
        SmallDay windy =
                day.inJob(
                        "weather",
                        with(
                                day.job().weather(),
                                "hours",
                                day.job().weather().hours().stream()
                                        .map(
                                                hour ->
                                                        with(
                                                                with(hour, "gustMPerS", 20.0),
                                                                "windMPerS",
                                                                19.0))
                                        .toList()));
        Instant now = record.steps().get(0).startAt().plusSeconds(1);

        Plan plan = anew(windy, record, now, new OpenDay.Effort(true, true, () -> false));

        assertThat(plan.leftOut())
                .filteredOn(out -> out.code() == FindingCode.WIND_LIMIT)
                .isNotEmpty();
    }

    /** X1 may hang with B1, which was flown while nobody knew the mass of X1. */
    @Test
    void what_would_have_hung_with_a_load_that_is_done_is_not_lost() {
        SmallDay day = day().load("B1", "combineWith", List.of(new LoadId("X1")));
        Plan record = planned(day);
        SmallDay weighed =
                day.inJob(
                        "loads",
                        day.job().loads().stream()
                                .map(
                                        load ->
                                                load.id().value().equals("X1")
                                                        ? SmallDay.load("X1", "bag", "A", "S2", 90)
                                                        : load)
                                .toList());
        Instant late = record.steps().get(record.steps().size() - 1).startAt().plusSeconds(1);

        Plan plan = anew(weighed, record, late);

        assertThat(new PlanVerifier().check(weighed.job(), weighed.ground(), plan).violations())
                .isEmpty();
    }
}
