package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static underhook.planner.verify.SmallDay.at;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.ComfortRates;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.job.Rigging;
import underhook.core.job.Rules;
import underhook.core.job.Walk;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.LeftOut;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.ToldPlace;
import underhook.core.plan.VerifierReport;
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
        return anew(day, record, asPlanned(now));
    }

    private static Plan anew(SmallDay day, Plan record, Standing now) {
        return reordered(day, record, now, OpenDay.Effort.FIRST).plan();
    }

    private static Plan anew(SmallDay day, Plan record, Instant now, OpenDay.Effort effort) {
        return reordered(day, record, asPlanned(now), effort).plan();
    }

    private static OpenDay.Reordered reordered(
            SmallDay day, Plan record, Standing now, OpenDay.Effort effort) {
        return new OpenDay(day.job(), day.ground())
                .reorder(record, now, settings(now.at()), effort);
    }

    /** Flown as planned up to now. */
    private static Standing asPlanned(Instant now) {
        return new Standing(
                now,
                Standing.Log.AS_PLANNED,
                List.of(),
                OptionalDouble.empty(),
                List.of(),
                Map.of(),
                Set.of(),
                Set.of(),
                Standing.Engine.UNTOLD);
    }

    /** Some loads are not flown any more. */
    private static Standing dropping(Instant now, LoadId... dropped) {
        return with(asPlanned(now), "dropped", Set.of(dropped));
    }

    /** A crew is late. */
    private static Standing late(Instant now, String crew, Instant until) {
        return with(asPlanned(now), "late", Map.of(new CrewId(crew), until));
    }

    /** What is not named was not lifted. */
    private static Standing tapped(Instant now, List<Standing.Done> done) {
        return with(with(asPlanned(now), "log", Standing.Log.KEPT), "done", done);
    }

    /** The same, and the engine was off when it was planned to be. */
    private static Standing tapped(Plan record, Instant now, List<Standing.Done> done) {
        List<Standing.Spell> off =
                record.steps().stream()
                        .filter(step -> !step.engineRunning() && step.startAt().isBefore(now))
                        .map(step -> new Standing.Spell(step.startAt(), step.endAt()))
                        .toList();
        Standing.Engine engine = new Standing.Engine(List.of(), off, Optional.empty());
        return with(tapped(now, done), "engine", engine);
    }

    /** Hooked and let go so much later than planned; negative is sooner. */
    private static Standing.Done flown(Rotation turn, long lateS) {
        return new Standing.Done(
                turn.loads(),
                turn.hookedAt().plusSeconds(lateS),
                Optional.of(released(turn).plusSeconds(lateS)));
    }

    private static Instant released(Rotation turn) {
        return turn.drops().get(turn.drops().size() - 1).releasedAt();
    }

    private static List<Rotation> turns(Plan plan) {
        return plan.steps().stream().flatMap(step -> step.rotation().stream()).toList();
    }

    private static Step lift(Plan plan, String load) {
        return plan.steps().stream()
                .filter(
                        step ->
                                step.rotation().stream()
                                        .anyMatch(turn -> turn.loads().contains(new LoadId(load))))
                .findFirst()
                .orElseThrow();
    }

    private static Map<String, FindingCode> leftOut(Plan plan) {
        return plan.leftOut().stream()
                .collect(Collectors.toMap(out -> out.load().value(), LeftOut::code));
    }

    private static SmallDay weighed(SmallDay day, String load, double massKg) {
        return instead(day, day.job().getLoad(new LoadId(load)).weighing(massKg));
    }

    /** A load as it is now. */
    private static SmallDay instead(SmallDay day, Load other) {
        return day.inJob(
                "loads",
                day.job().loads().stream()
                        .map(one -> one.id().equals(other.id()) ? other : one)
                        .toList());
    }

    private static List<Finding> violations(SmallDay day, Plan plan) {
        return new PlanVerifier().check(day.job(), day.ground(), plan).violations();
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
                instead(
                        day,
                        with(SmallDay.load("X1", "bag", "A", "S2", 150), "remarks", "weighed"));
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
        SmallDay windy = windy(day);
        Instant now = record.steps().get(0).startAt().plusSeconds(1);

        Plan plan = anew(windy, record, now, new OpenDay.Effort(true, true, () -> false));

        assertThat(plan.leftOut())
                .filteredOn(out -> out.code() == FindingCode.WIND_LIMIT)
                .isNotEmpty();
    }

    /** What was stated of a lift in the air was the forecast of then; that it meets more wind than it may is said. */
    @Test
    void other_wind_makes_nothing_wrong_that_was_stated_before_it() {
        SmallDay day = day();
        Plan record = planned(day);
        Instant now = lift(record, "B1").rotation().orElseThrow().hookedAt().plusSeconds(1);
        SmallDay windy = windy(day);

        Plan plan = anew(windy, record, now);

        VerifierReport report = new PlanVerifier().check(windy.job(), windy.ground(), plan);
        assertThat(report.violations()).isEmpty();
        assertThat(report.over())
                .extracting(Finding::code)
                .contains(FindingCode.WIND_LIMIT)
                .doesNotContain(FindingCode.WIND_ARITHMETIC);
    }

    private static SmallDay windy(SmallDay day) {
        return day.inJob(
                "weather",
                with(
                        day.job().weather(),
                        "hours",
                        day.job().weather().hours().stream()
                                .map(hour -> with(with(hour, "gustMPerS", 20.0), "windMPerS", 19.0))
                                .toList()));
    }

    /** Duty ends an hour from now. Whoever ends the search does not know what would have had room. */
    @Test
    void what_an_ended_search_leaves_out_is_not_said_to_have_no_room() {
        SmallDay day = day();
        Plan record = planned(day);
        Instant now = record.steps().get(0).startAt().plusSeconds(1);
        double dutyS = Duration.between(at(-4500), now).toSeconds() + 3600.0;
        SmallDay shorter = day.rule("duty.longestS", dutyS);

        Plan ended = anew(shorter, record, now, new OpenDay.Effort(true, false, () -> true));
        Plan whole = anew(shorter, record, now, searching());

        assertThat(ended.summary().cutShort()).isTrue();
        assertThat(ended.leftOut())
                .extracting(LeftOut::code)
                .contains(FindingCode.SEARCH_CUT)
                .doesNotContain(FindingCode.NO_ROOM_IN_DAY);
        assertThat(violations(shorter, ended)).isEmpty();
        assertThat(whole.summary().cutShort()).isFalse();
        assertThat(whole.leftOut())
                .extracting(LeftOut::code)
                .contains(FindingCode.NO_ROOM_IN_DAY)
                .doesNotContain(FindingCode.SEARCH_CUT);
    }

    /** X1 may hang with B1, which was flown while nobody knew the mass of X1. */
    @Test
    void what_would_have_hung_with_a_load_that_is_done_is_not_lost() {
        SmallDay day = day().load("B1", "combineWith", List.of(new LoadId("X1")));
        Plan record = planned(day);
        SmallDay weighed = instead(day, SmallDay.load("X1", "bag", "A", "S2", 90));
        Instant late = record.steps().get(record.steps().size() - 1).startAt().plusSeconds(1);

        Plan plan = anew(weighed, record, late);

        assertThat(new PlanVerifier().check(weighed.job(), weighed.ground(), plan).violations())
                .isEmpty();
    }

    /** B2 and B3 hang together, in no sling that could be short. */
    private static SmallDay together() {
        SmallDay free = day().rule("handling", SmallDay.good().job().rules().handling());
        return weighed(weighed(free, "B2", 170), "B3", 120);
    }

    /** What was left is taken off the day a while after the machine came to rest: nothing to come has a bound. */
    @Test
    void a_day_of_which_nothing_is_left_to_fly_states_no_bound() {
        SmallDay day = day();
        Plan record = planned(day);
        List<Rotation> turns = turns(record);
        Instant now = record.summary().finishAt().plusSeconds(600);
        int over = 0;
        for (int flown = 1; flown < turns.size(); flown++) {
            List<Standing.Done> done =
                    turns.subList(0, flown).stream().map(turn -> flown(turn, 0)).toList();
            Set<LoadId> dropped =
                    turns.subList(flown, turns.size()).stream()
                            .flatMap(turn -> turn.loads().stream())
                            .collect(Collectors.toSet());

            Standing standing = with(tapped(record, now, done), "dropped", dropped);

            Plan plan =
                    reordered(day, record, standing, new OpenDay.Effort(false, true, () -> false))
                            .plan();

            assertThat(violations(day, plan)).as("%d flown", flown).isEmpty();
            if (plan.summary().finishAt().isBefore(now)) {
                over++;
                assertThat(plan.summary().finishBoundAt()).isEmpty();
                assertThat(plan.summary().provenFor()).isEmpty();
            }
        }
        assertThat(over).isPositive();
    }

    /** Of B2 and B3, which hang together, the one is taken off the day; W1 leaves S1 after all that comes there. */
    @Test
    void who_hung_with_a_load_that_is_dropped_is_flown_without_it() {
        SmallDay day = together();
        Plan record = planned(day);
        assertThat(lift(record, "B2").rotation().orElseThrow().loads()).hasSize(2);
        Instant before = record.steps().get(0).startAt().plusSeconds(1);

        Plan plan = anew(day, record, dropping(before, new LoadId("B3")));

        assertThat(leftOut(plan)).containsOnlyKeys("B3", "X1");
        assertThat(lift(plan, "B2").rotation().orElseThrow().loads())
                .containsExactly(new LoadId("B2"));
        assertThat(violations(day, plan)).isEmpty();
    }

    /** Some of a lift's loads, hooked and let go as planned. */
    private static Standing.Done flown(Rotation turn, String... loads) {
        List<LoadId> hung = Stream.of(loads).map(LoadId::new).toList();
        return new Standing.Done(hung, turn.hookedAt(), Optional.of(released(turn)));
    }

    /** Of B2 and B3, which hang together, one alone was tapped: the other is where it was, and is still to be flown. */
    @ParameterizedTest
    @ValueSource(strings = {"B2", "B3"})
    void of_loads_that_hang_together_only_those_that_were_tapped_are_flown(String tapped) {
        SmallDay day = together();
        Plan record = planned(day);
        Step both = lift(record, "B2");
        Rotation turn = both.rotation().orElseThrow();
        String other = tapped.equals("B2") ? "B3" : "B2";
        List<Standing.Done> done =
                new ArrayList<>(
                        turns(record).stream()
                                .filter(one -> one.hookedAt().isBefore(turn.hookedAt()))
                                .map(one -> flown(one, 0))
                                .toList());
        done.add(flown(turn, tapped));

        Plan plan = anew(day, record, tapped(record, both.endAt(), done));

        Rotation flown = lift(plan, tapped).rotation().orElseThrow();
        Rotation left = lift(plan, other).rotation().orElseThrow();
        double lineKg =
                day.job().machine().lines().stream()
                        .filter(line -> line.lengthM() == both.lineLengthM())
                        .findFirst()
                        .orElseThrow()
                        .massKg();
        assertThat(flown.loads()).containsExactly(new LoadId(tapped));
        assertThat(flown.hookedAt()).isEqualTo(turn.hookedAt());
        assertThat(flown.drops()).extracting(Drop::load).containsExactly(new LoadId(tapped));
        assertThat(flown.massOnHookKg())
                .isEqualTo(Math.ceil((tapped.equals("B2") ? 170 : 120) + lineKg));
        assertThat(flown.fuelMaxKg()).isEqualTo(turn.fuelMaxKg());
        assertThat(flown.legs().stream().flatMap(leg -> leg.carrying().stream()))
                .containsOnly(new LoadId(tapped));
        assertThat(left.loads()).containsExactly(new LoadId(other));
        assertThat(left.hookedAt()).isAfter(both.endAt());
        assertThat(leftOut(plan)).containsOnlyKeys("X1");
        assertThat(violations(day, plan)).isEmpty();
    }

    /** B2 and B3 were planned together and hooked one after the other. */
    @Test
    void loads_that_were_to_hang_together_are_flown_one_by_one_where_that_was_tapped() {
        SmallDay day = together();
        Plan record = planned(day);
        Step both = lift(record, "B2");
        Rotation turn = both.rotation().orElseThrow();
        long lastsS = Duration.between(both.startAt(), both.endAt()).toSeconds();
        Standing.Done first = flown(turn, "B3");
        Standing.Done second =
                new Standing.Done(
                        List.of(new LoadId("B2")),
                        turn.hookedAt().plusSeconds(lastsS),
                        Optional.of(released(turn).plusSeconds(lastsS)));
        List<Standing.Done> done =
                new ArrayList<>(
                        turns(record).stream()
                                .filter(one -> one.hookedAt().isBefore(turn.hookedAt()))
                                .map(one -> flown(one, 0))
                                .toList());
        done.addAll(List.of(first, second));

        Plan plan = anew(day, record, tapped(record, both.endAt().plusSeconds(lastsS), done));

        assertThat(turns(plan))
                .filteredOn(one -> !one.loads().get(0).equals(new LoadId("B1")))
                .filteredOn(one -> one.loads().get(0).value().startsWith("B"))
                .extracting(Rotation::loads, Rotation::hookedAt)
                .containsExactly(
                        tuple(first.loads(), first.hookedAt()),
                        tuple(second.loads(), second.hookedAt()));
        assertThat(violations(day, plan)).isEmpty();
    }

    /** P1 waits for B1, which turns out too heavy for any line. */
    @Test
    void what_waits_for_a_load_that_may_not_be_flown_says_so() {
        SmallDay day = day().load("P1", "to", pid("S2")).crew("P", "start", pid("S2"));
        Plan record = planned(day);
        assertThat(leftOut(record)).containsOnlyKeys("X1");
        SmallDay heavy = weighed(day, "B1", 690);
        Instant before = record.steps().get(0).startAt().plusSeconds(1);

        Plan plan = anew(heavy, record, before);

        assertThat(leftOut(plan))
                .containsEntry("B1", FindingCode.HOOK_LIMIT)
                .containsEntry("P1", FindingCode.ORDER_RULE);
        assertThat(violations(heavy, plan)).isEmpty();
    }

    /** The same, but B1 was flown before anybody knew. */
    @Test
    void what_waits_for_a_load_that_is_flown_is_flown_whatever_that_weighed() {
        SmallDay day = day();
        Plan record = planned(day);
        SmallDay heavy = weighed(day, "B1", 690);
        Instant after = lift(record, "B1").endAt().plusSeconds(1);
        assertThat(lift(record, "P1").startAt()).isAfter(after);

        Plan plan = anew(heavy, record, after);

        assertThat(leftOut(plan)).containsOnlyKeys("X1");
    }

    /** What the pilot was told of a lift stands on the papers of that lift. */
    @Test
    void what_was_said_of_a_load_that_is_done_stays_said() {
        SmallDay day = day();
        Plan record = planned(day);
        Finding ballast = SmallDay.said(FindingCode.BALLAST_ADDED, Severity.CAUTION, "B1");
        List<Finding> told = new ArrayList<>(record.findings());
        told.add(ballast);

        Plan plan =
                anew(
                        day,
                        with(record, "findings", told),
                        lift(record, "B1").endAt().plusSeconds(1));

        assertThat(plan.findings()).containsOnlyOnce(ballast);
    }

    /** 35.00 a minute flying, 12.00 standing, 10.00 people; invented. */
    private static SmallDay paid(SmallDay day) {
        return day.rule("costs", new Rules.Costs(3500, 1200, 1000, "EUR"));
    }

    /** The rates times the minutes of the steps to come, each part rounded down to whole cents. */
    @Test
    void the_rest_of_the_day_costs_the_rates_times_its_minutes() {
        SmallDay day = paid(day());
        Plan record = planned(day);
        Instant after = lift(record, "B1").endAt().minusSeconds(1);

        Plan plan = anew(day, record, after);

        Anew anew = plan.summary().anew().orElseThrow();
        assertThat(anew.fromAt()).isEqualTo(lift(record, "B1").endAt());
        long wholeS = Duration.between(anew.fromAt(), plan.summary().finishAt()).toSeconds();
        long flownS =
                plan.steps().stream()
                        .filter(step -> !step.startAt().isBefore(anew.fromAt()))
                        .filter(Day::flies)
                        .mapToLong(
                                step -> Duration.between(step.startAt(), step.endAt()).toSeconds())
                        .sum();
        assertThat(anew.rest().flyingCents()).isEqualTo(3500 * flownS / 60).isPositive();
        assertThat(anew.rest().standingCents()).isEqualTo(1200 * (wholeS - flownS) / 60);
        assertThat(anew.rest().peopleCents()).isEqualTo(1000 * wholeS / 60);
        assertThat(violations(day, plan)).isEmpty();
    }

    @Test
    void a_day_that_goes_as_planned_costs_nothing_more() {
        SmallDay day = paid(day());
        Plan record = planned(day);
        // Minutes to six decimals, as a plan file has them.
        double readS = record.summary().flightS() - 1e-5;
        Plan read = with(record, "summary", with(record.summary(), "flightS", readS));

        Plan plan = anew(day, read, lift(record, "B1").endAt().minusSeconds(1));

        Anew anew = plan.summary().anew().orElseThrow();
        assertThat(anew.instead()).isEqualTo(record.id());
        assertThat(anew.moreFlightS()).isZero();
        assertThat(anew.laterS()).isZero();
        assertThat(anew.moreCents()).hasValue(0);
        assertThat(plan.summary().price()).isEqualTo(record.summary().price());
    }

    @Test
    void what_a_change_costs_is_the_difference_of_two_whole_days() {
        SmallDay day = paid(day());
        Plan record = planned(day);
        Instant before = record.steps().get(0).startAt().plusSeconds(1);

        Plan plan = anew(day, record, dropping(before, new LoadId("P1")));

        Anew anew = plan.summary().anew().orElseThrow();
        assertThat(anew.moreFlightS())
                .isEqualTo(plan.summary().flightS() - record.summary().flightS())
                .isNegative();
        assertThat(anew.moreCents())
                .hasValue(
                        plan.summary().price().orElseThrow().totalCents()
                                - record.summary().price().orElseThrow().totalCents());
        assertThat(violations(day, plan)).isEmpty();
    }

    /**
     * A second lift, later let go than planned: nobody read what it burnt. Flow for as long as it lasted is the least,
     * a hover throughout the most; the re-check refuses what lies more than a kilogram outside. The half that a hover
     * burns more is invented.
     */
    @Test
    void what_a_begun_step_burnt_lies_between_flow_and_hover() {
        SmallDay small = day();
        SmallDay day = small.machine("hoverBurnKgPerS", 1.5 * small.job().machine().burnKgPerS());
        Plan record = planned(day);
        Step lift = lift(record, "B1");
        Standing.Done late = flown(lift.rotation().orElseThrow(), 200);
        Standing now = tapped(late.releasedAt().orElseThrow().plusSeconds(600), List.of(late));
        Plan plan = anew(day, record, now);
        assertThat(violations(day, plan)).isEmpty();
        int at = plan.steps().indexOf(lift(plan, "B1"));
        Step begun = plan.steps().get(at);
        assertThat(Day.durationS(begun)).isGreaterThan(60);
        double flowKg = Day.durationS(begun) * day.job().machine().burnKgPerS();
        boolean starts = at == 0 || !plan.steps().get(at - 1).engineRunning();
        double startKg = begun.fuelStartKg() - (starts ? day.job().machine().startFuelKg() : 0);
        String step = "step " + (at + 1);

        for (double burntKg : new double[] {flowKg - 0.9, flowKg + 0.1, 1.5 * flowKg + 0.9}) {
            assertThat(fuelFaults(day, endingWith(plan, at, startKg - burntKg)))
                    .as("%s kg burnt", burntKg)
                    .doesNotContain(step);
        }
        for (double burntKg : new double[] {flowKg - 1.1, 1.5 * flowKg + 1.1, 0, 3 * flowKg}) {
            assertThat(fuelFaults(day, endingWith(plan, at, startKg - burntKg)))
                    .as("%s kg burnt", burntKg)
                    .contains(step);
        }
    }

    /** The gauge reads less than reckoned, or more: the order goes on from that and holds, and so does the next. */
    @Test
    void what_the_gauge_said_stays_told() {
        SmallDay day = day();
        Plan record = planned(day);
        Step lift = lift(record, "B1");
        Instant now = lift.endAt().minusSeconds(10);
        double burnKgPerS = day.job().machine().burnKgPerS();
        for (double moreKg : new double[] {-15, 15}) {
            double readKg = Math.rint(lift.fuelEndKg() + moreKg);
            Standing read = with(asPlanned(now), "fuelKg", OptionalDouble.of(readKg));

            Plan plan = anew(day, record, read);

            int at = plan.steps().indexOf(lift(plan, "B1"));
            double endKg = plan.steps().get(at).fuelEndKg();
            assertThat(endKg).isCloseTo(readKg - 10 * burnKgPerS, within(0.5));
            assertThat(plan.summary().anew().orElseThrow().readings())
                    .containsExactly(new Anew.Reading(now, readKg));
            assertThat(violations(day, plan)).isEmpty();
            assertThat(fuelFaults(day, endingWith(plan, at, endKg + 2)))
                    .contains("step " + (at + 1));
            assertThat(fuelFaults(day, endingWith(plan, at, endKg - 2)))
                    .contains("step " + (at + 1));
            Step next = plan.steps().get(at + 1);
            Plan second = anew(day, plan, next.endAt().plusSeconds(1));
            assertThat(second.steps().get(at).fuelEndKg()).isEqualTo(endKg);
            assertThat(second.summary().anew().orElseThrow().readings()).hasSize(1);
            assertThat(violations(day, second)).isEmpty();
        }
    }

    /** Read before hook-up in a step that is begun: there is so much more at the hook, and more than may be is said. */
    @Test
    void what_the_gauge_said_counts_at_the_hook() {
        SmallDay day = weighed(day(), "P1", 480);
        Plan record = planned(day);
        Step lift = lift(record, "P1");
        Rotation turn = lift.rotation().orElseThrow();
        Instant now = turn.hookedAt().minusSeconds(1);
        assertThat(lift.startAt()).isBefore(now);
        double readKg = Math.floor(turn.fuelMaxKg()) + 40;
        assertThat(readKg).isLessThan(day.job().machine().fuelUsableKg());
        Standing read = with(asPlanned(now), "fuelKg", OptionalDouble.of(readKg));

        Plan plan = anew(day, record, read);

        Rotation begun = lift(plan, "P1").rotation().orElseThrow();
        assertThat(begun.fuelAtHookKg()).isCloseTo(readKg, within(0.1));
        VerifierReport report = new PlanVerifier().check(day.job(), day.ground(), plan);
        assertThat(report.violations()).isEmpty();
        assertThat(report.over())
                .filteredOn(one -> one.subject().equals("P1"))
                .extracting(Finding::code)
                .contains(FindingCode.FUEL_ABOVE_MAXIMUM);
        assertThat(fuelFaults(day, plan)).isEmpty();
    }

    /** A machine with a smaller tank took over: what was flown before it fits no tank of its own. */
    @Test
    void a_smaller_machine_goes_on_with_the_fuel_that_was_read() {
        SmallDay day = day();
        Plan record = planned(day);
        Step done = lift(record, "B1");
        Instant now = done.endAt().plusSeconds(1);
        double tankKg = Math.floor(done.fuelEndKg()) - 5;
        SmallDay swapped = day.machine("fuelUsableKg", tankKg);
        Standing read = with(asPlanned(now), "fuelKg", OptionalDouble.of(tankKg - 2));

        assertThat(violations(swapped, anew(swapped, record, asPlanned(now))))
                .isNotEmpty()
                .allMatch(one -> one.code() == FindingCode.FUEL_TANK)
                .allMatch(one -> one.message().contains("state the fuel as read"));
        Plan known = anew(swapped, record, read);
        assertThat(known.steps()).anyMatch(step -> step.startAt().isAfter(now));
        assertThat(known.steps().get(0).fuelStartKg()).isGreaterThan(tankKg);
        assertThat(violations(swapped, known)).isEmpty();
    }

    /** A step with another end, and the next with the begin that belongs to it. */
    private static Plan endingWith(Plan plan, int at, double endKg) {
        List<Step> steps = new ArrayList<>(plan.steps());
        steps.set(at, with(steps.get(at), "fuelEndKg", endKg));
        steps.set(at + 1, with(steps.get(at + 1), "fuelStartKg", endKg));
        return with(plan, "steps", steps);
    }

    private static List<String> fuelFaults(SmallDay day, Plan plan) {
        return violations(day, plan).stream()
                .filter(one -> one.code() == FindingCode.FUEL_ARITHMETIC)
                .map(Finding::subject)
                .toList();
    }

    /** L alone hooks and refuels at A, where it stays. */
    @Test
    void nothing_is_hooked_by_somebody_who_stays_at_a_place_and_is_late() {
        SmallDay day = day();
        Plan record = planned(day);
        Instant now = lift(record, "B1").endAt().plusSeconds(1);
        Instant back = now.plusSeconds(2400);

        Plan plan = anew(day, record, late(now, "L", back));

        assertThat(leftOut(plan)).containsOnlyKeys("X1");
        assertThat(plan.steps())
                .filteredOn(step -> step.rotation().isPresent() && step.startAt().isAfter(now))
                .isNotEmpty()
                .allSatisfy(
                        step ->
                                assertThat(step.rotation().orElseThrow().hookedAt())
                                        .isAfterOrEqualTo(back));
        assertThat(plan.crews())
                .filteredOn(stay -> stay.crew().value().equals("L"))
                .noneMatch(stay -> stay.fromAt().isBefore(back) && stay.toAt().isAfter(now));
        assertThat(violations(day, plan)).isEmpty();
    }

    /** The first lift was hooked five minutes before its time, and let go as long after that as planned. */
    @Test
    void a_machine_that_is_ahead_of_its_plan_is_free_as_much_sooner() {
        SmallDay day = day();
        Plan record = planned(day);
        Step first =
                record.steps().stream()
                        .filter(step -> step.rotation().isPresent())
                        .findFirst()
                        .orElseThrow();
        Duration ahead = Duration.ofMinutes(5);
        Rotation turn = first.rotation().orElseThrow();
        Standing now =
                tapped(
                        released(turn).minus(ahead).plusSeconds(1),
                        List.of(flown(turn, -ahead.toSeconds())));

        Plan plan = anew(day, record, now);

        Step flown = lift(plan, turn.loads().get(0).value());
        assertThat(flown.startAt()).isEqualTo(first.startAt().minus(ahead));
        assertThat(flown.endAt()).isEqualTo(first.endAt().minus(ahead));
        assertThat(plan.summary().anew().orElseThrow().fromAt()).isEqualTo(flown.endAt());
    }

    /** P was to be flown to S2 a minute ago, but the machine has not moved. */
    @Test
    void a_crew_that_was_not_flown_is_where_it_was() {
        SmallDay day = day();
        Plan record = planned(day);
        Instant first = record.steps().get(0).startAt();
        List<CrewStay> crews = new ArrayList<>(record.crews());
        crews.removeIf(stay -> stay.crew().value().equals("P"));
        crews.add(
                new CrewStay(
                        new CrewId("P"), pid("S2"), first, first.plusSeconds(300), "flown to S2"));
        Standing now = with(asPlanned(first.plusSeconds(60)), "log", Standing.Log.NOT_BEGUN);

        Plan plan = reordered(day, with(record, "crews", crews), now, OpenDay.Effort.FIRST).plan();

        assertThat(leftOut(plan)).containsOnlyKeys("X1");
        assertThat(violations(day, plan)).isEmpty();
    }

    /** A crew was said to be at a place. */
    private static Standing said(Standing now, String crew, String place, Instant at) {
        return with(now, "told", List.of(new ToldPlace(new CrewId(crew), pid(place), at)));
    }

    private static Step flight(Plan plan, String crew) {
        return plan.steps().stream()
                .filter(step -> step.crew().equals(Optional.of(new CrewId(crew))))
                .findFirst()
                .orElseThrow();
    }

    /** P is flown to H and walks to S2 from there; a lift after that flight is tapped, and P says it never left A. */
    @Test
    void who_says_to_be_where_he_was_is_flown_again() {
        SmallDay day = withLanding();
        Plan record = planned(day);
        Step flight = flight(record, "P");
        List<Standing.Done> done =
                turns(record).stream()
                        .filter(turn -> turn.hookedAt().isAfter(flight.endAt()))
                        .limit(1)
                        .map(turn -> flown(turn, 0))
                        .toList();
        assertThat(done).isNotEmpty();
        Instant now = done.get(0).releasedAt().orElseThrow().plusSeconds(60);
        List<Standing.Done> all = new ArrayList<>();
        turns(record).stream()
                .filter(turn -> turn.hookedAt().isBefore(flight.startAt()))
                .forEach(turn -> all.add(flown(turn, 0)));
        all.addAll(done);

        Plan plan =
                anew(day, record, said(tapped(record, now, all), "P", flight.from().value(), now));
        assertThat(plan.findings())
                .anyMatch(
                        one ->
                                one.code() == FindingCode.CREW_ABSENT
                                        && one.message().contains("counts as flown without it"));
        // What it is needed for comes after another flight.
        Step again = flight(plan, "P");
        assertThat(again.startAt()).isAfterOrEqualTo(now);
        assertThat(violations(day, plan)).isEmpty();
    }

    /** The lines that put a crew elsewhere at the time for which it was said are refused by the re-check. */
    @Test
    void a_plan_that_has_a_crew_elsewhere_than_said_is_refused() {
        SmallDay day = withLanding();
        Plan record = planned(day);
        Step flight = flight(record, "P");
        Instant now = flight.endAt().plusSeconds(120);
        Standing standing = said(asPlanned(now), "P", flight.from().value(), now.minusSeconds(30));
        Plan plan = anew(day, record, standing);
        assertThat(violations(day, plan)).isEmpty();
        Anew anew = plan.summary().anew().orElseThrow();
        ToldPlace elsewhere = with(anew.told().get(0), "place", pid("S2"));

        Plan other =
                with(
                        plan,
                        "summary",
                        with(
                                plan.summary(),
                                "anew",
                                Optional.of(with(anew, "told", List.of(elsewhere)))));

        assertThat(violations(day, other))
                .anyMatch(one -> one.code() == FindingCode.CREW_TWO_PLACES);
    }

    /** What was accepted with an order stays so in the next; taken back, the crew is where it was before. */
    @Test
    void what_was_said_holds_until_it_is_taken_back() {
        SmallDay day = withLanding();
        Plan record = planned(day);
        Step flight = flight(record, "P");
        Instant now = flight.startAt().minusSeconds(30);
        Standing first =
                with(
                        said(asPlanned(now), "P", "S2", now.minusSeconds(5)),
                        "log",
                        Standing.Log.KEPT);
        Plan there = anew(day, record, first);
        assertThat(there.steps()).noneMatch(step -> step.kind() == StepKind.CREW_MOVE);
        assertThat(violations(day, there)).isEmpty();

        Plan still = anew(day, there, with(first, "at", now.plusSeconds(60)));
        Plan back =
                anew(day, there, with(with(first, "at", now.plusSeconds(60)), "told", List.of()));

        assertThat(still.steps()).noneMatch(step -> step.kind() == StepKind.CREW_MOVE);
        assertThat(violations(day, still)).isEmpty();
        assertThat(back.steps()).anyMatch(step -> step.kind() == StepKind.CREW_MOVE);
        assertThat(back.findings())
                .anyMatch(one -> one.message().contains("was taken back: it counts at"));
        assertThat(violations(day, back)).isEmpty();
    }

    /** Who stays at a place all day works nowhere else. */
    @Test
    void who_stays_somewhere_and_is_elsewhere_hooks_nothing() {
        SmallDay day = SmallDay.good();
        Plan record = planned(day);
        Instant now = record.steps().get(0).startAt();
        Standing away = said(with(asPlanned(now), "log", Standing.Log.NOT_BEGUN), "L", "S1", now);

        Plan plan = anew(day, record, away);

        assertThat(turns(plan)).isEmpty();
        assertThat(plan.findings())
                .anyMatch(one -> one.message().contains("it counts nowhere until"));
        assertThat(violations(day, plan)).isEmpty();
    }

    /** P can be flown to H and walks to S2 for ten minutes from there. */
    private static SmallDay withLanding() {
        List<Place> places = new ArrayList<>(SmallDay.good().job().places());
        places.add(SmallDay.place("H", PlaceKind.LAYDOWN, 1000, -150));
        return SmallDay.good()
                .inJob("places", places)
                .inJob("walks", List.of(new Walk(pid("H"), pid("S2"), 600)));
    }

    /** P is flown to H, five minutes later than its lines have it, and walks for ten minutes from there. */
    @Test
    void who_landed_later_than_planned_walks_on_later_and_as_long() {
        SmallDay day = withLanding();
        Plan record = planned(day);
        Step flight =
                record.steps().stream()
                        .filter(step -> step.kind() == StepKind.CREW_MOVE)
                        .findFirst()
                        .orElseThrow();
        List<CrewStay> crews =
                record.crews().stream()
                        .map(
                                stay ->
                                        stay.crew().value().equals("P")
                                                        && !stay.fromAt().isBefore(flight.startAt())
                                                ? new CrewStay(
                                                        stay.crew(),
                                                        stay.place(),
                                                        stay.fromAt().minusSeconds(300),
                                                        stay.toAt().minusSeconds(300),
                                                        stay.doing())
                                                : stay)
                        .toList();

        Plan plan = anew(day, with(record, "crews", crews), flight.endAt().plusSeconds(60));

        assertThat(plan.crews())
                .filteredOn(stay -> stay.doing().startsWith("walks"))
                .singleElement()
                .satisfies(
                        walk -> {
                            assertThat(walk.fromAt()).isEqualTo(flight.endAt());
                            assertThat(walk.toAt()).isEqualTo(flight.endAt().plusSeconds(600));
                        });
        assertThat(lift(plan, "P1").endAt()).isAfter(flight.endAt().plusSeconds(600));
        assertThat(violations(day, plan)).isEmpty();
    }

    /** P had been flown to H before, an hour ago, and back. */
    @Test
    void who_is_flown_twice_to_a_place_is_there_the_second_time_after_the_second_flight() {
        SmallDay day = withLanding();
        Plan record = planned(day);
        Step second =
                record.steps().stream()
                        .filter(step -> step.kind() == StepKind.CREW_MOVE)
                        .findFirst()
                        .orElseThrow();
        Step first = moved(second, second.from(), second.to(), 3600);
        Step back = moved(second, second.to(), second.from(), 3000);
        List<Step> steps = new ArrayList<>(List.of(first, back));
        steps.addAll(record.steps());
        List<CrewStay> crews = new ArrayList<>(record.crews());
        for (Step flight : List.of(first, back)) {
            crews.add(
                    new CrewStay(
                            new CrewId("P"),
                            flight.to(),
                            flight.startAt(),
                            flight.endAt(),
                            "flown to " + flight.to()));
        }

        Plan plan =
                anew(
                        day,
                        with(with(record, "steps", steps), "crews", crews),
                        second.endAt().plusSeconds(60));

        assertThat(plan.crews())
                .filteredOn(
                        stay -> stay.doing().startsWith("flown") && stay.place().equals(pid("H")))
                .extracting(CrewStay::toAt)
                .containsExactlyInAnyOrder(first.endAt(), second.endAt());
        assertThat(plan.crews())
                .filteredOn(stay -> stay.doing().startsWith("walks"))
                .allSatisfy(walk -> assertThat(walk.fromAt()).isAfterOrEqualTo(second.endAt()))
                .isNotEmpty();
    }

    private static Step moved(Step flight, PlaceId from, PlaceId to, long earlierS) {
        return new Step(
                flight.kind(),
                from,
                to,
                flight.startAt().minusSeconds(earlierS),
                flight.endAt().minusSeconds(earlierS),
                flight.fuelStartKg(),
                flight.fuelEndKg(),
                flight.lineLengthM(),
                flight.engineRunning(),
                flight.rotation(),
                flight.crew(),
                flight.legs(),
                flight.because());
    }

    /** P receives B1 at S2 a quarter of an hour late and only then walks to S1, where the pole comes. */
    @Test
    void who_was_kept_by_a_late_lift_sets_out_when_it_is_done() {
        SmallDay day = day();
        Plan record = planned(day);
        Step bag = lift(record, "B1");
        CrewStay planned =
                record.crews().stream()
                        .filter(stay -> stay.crew().value().equals("P"))
                        .filter(stay -> stay.doing().startsWith("walks"))
                        .filter(stay -> !stay.fromAt().isBefore(bag.startAt()))
                        .findFirst()
                        .orElseThrow();
        Instant released = released(bag.rotation().orElseThrow()).plusSeconds(900);
        List<Standing.Done> done = new ArrayList<>();
        for (Step step : record.steps()) {
            step.rotation()
                    .filter(turn -> !step.startAt().isAfter(bag.startAt()))
                    .ifPresent(turn -> done.add(flown(turn, step.equals(bag) ? 900 : 0)));
        }
        Standing now = tapped(released.plusSeconds(60), done);

        Plan plan = anew(day, record, now);

        assertThat(planned.fromAt()).isBefore(released);
        assertThat(plan.crews())
                .filteredOn(stay -> stay.crew().value().equals("P"))
                .filteredOn(stay -> stay.place().equals(pid("S1")))
                .filteredOn(stay -> stay.toAt().isAfter(bag.startAt()))
                .allSatisfy(stay -> assertThat(stay.fromAt()).isAfterOrEqualTo(released));
        assertThat(leftOut(plan)).containsOnlyKeys("X1");
        assertThat(violations(day, plan)).isEmpty();
    }

    /** P's lines go on: when the pole has been guyed P walks back to S2. */
    private static Plan walkingBack(Plan record) {
        Instant guyed = released(lift(record, "P1").rotation().orElseThrow()).plusSeconds(600);
        List<CrewStay> crews = new ArrayList<>();
        for (CrewStay stay : record.crews()) {
            boolean last = stay.crew().value().equals("P") && stay.toAt().isAfter(guyed);
            crews.add(last ? with(stay, "toAt", guyed) : stay);
        }
        CrewStay walk =
                new CrewStay(
                        new CrewId("P"), pid("S2"), guyed, guyed.plusSeconds(1200), "walks to S2");
        crews.add(walk);
        crews.add(
                new CrewStay(
                        walk.crew(),
                        walk.place(),
                        walk.toAt(),
                        walk.toAt().plusSeconds(3600),
                        "works and waits"));
        return with(record, "crews", crews);
    }

    /** B1 is a whole hour late, P comes to S1 long after its planned time, and the pole for it is in the air. */
    @Test
    void who_came_late_to_a_place_still_waits_for_what_was_planned_for_it() {
        SmallDay day = day();
        Plan record = walkingBack(planned(day));
        Rotation pole = lift(record, "P1").rotation().orElseThrow();
        List<Standing.Done> done = new ArrayList<>();
        for (Rotation turn : turns(record)) {
            boolean before = turn.hookedAt().isBefore(pole.hookedAt());
            boolean bag = turn.loads().contains(new LoadId("B1"));
            if (before) {
                done.add(flown(turn, bag ? 3600 : 0));
            }
        }
        done.add(with(flown(pole, 3600), "releasedAt", Optional.empty()));

        Plan plan =
                anew(day, record, tapped(pole.hookedAt().plusSeconds(3600).plusSeconds(60), done));

        assertThereToGuy(plan);
    }

    /** B1, which P is to receive at S2, was not flown; but the pole for P at S1 is in the air. */
    @Test
    void who_is_awaited_by_a_lift_in_the_air_had_gone_there() {
        SmallDay day = day();
        Plan record = planned(day);
        SmallDay free = day.load("P1", "after", List.of());
        Rotation pole = lift(record, "P1").rotation().orElseThrow();
        List<Standing.Done> done = new ArrayList<>();
        for (Rotation turn : turns(record)) {
            boolean bag = turn.loads().contains(new LoadId("B1"));
            if (turn.hookedAt().isBefore(pole.hookedAt()) && !bag) {
                done.add(flown(turn, 0));
            }
        }
        done.add(with(flown(pole, 0), "releasedAt", Optional.empty()));

        OpenDay.Reordered found =
                reordered(
                        free,
                        record,
                        tapped(record, pole.hookedAt().plusSeconds(60), done),
                        OpenDay.Effort.FIRST);

        assertThereToGuy(found.plan());
        assertThat(leftOut(found.plan())).containsOnlyKeys("X1");
        assertThat(violations(free, found.plan())).isEmpty();
    }

    /** P is at S1 from when the pole comes until it is guyed. */
    private static void assertThereToGuy(Plan plan) {
        Instant released = released(lift(plan, "P1").rotation().orElseThrow());
        assertThat(plan.crews())
                .filteredOn(stay -> stay.crew().value().equals("P"))
                .filteredOn(stay -> stay.fromAt().isBefore(released.plusSeconds(600)))
                .filteredOn(stay -> stay.toAt().isAfter(released))
                .isNotEmpty()
                .allSatisfy(
                        stay -> {
                            assertThat(stay.place()).isEqualTo(pid("S1"));
                            assertThat(stay.doing()).startsWith("works");
                        });
    }

    /** B1 was let go half a minute sooner after its hook-up than the rules count for the way and the set-down. */
    @Test
    void what_is_done_went_as_it_went_and_is_said() {
        SmallDay day = day();
        Plan record = planned(day);
        Rotation turn = lift(record, "B1").rotation().orElseThrow();
        Standing.Done quick =
                new Standing.Done(
                        turn.loads(),
                        turn.hookedAt(),
                        Optional.of(released(turn).minusSeconds(30)));
        Standing now = tapped(quick.releasedAt().orElseThrow().plusSeconds(600), List.of(quick));

        Plan plan = anew(day, record, now);

        VerifierReport report = new PlanVerifier().check(day.job(), day.ground(), plan);
        assertThat(report.violations()).isEmpty();
        assertThat(report.over())
                .extracting(Finding::code, Finding::subject)
                .contains(tuple(FindingCode.STEP_TIME, "B1"));
        Plan asOne = with(plan, "summary", with(plan.summary(), "anew", Optional.empty()));
        assertThat(violations(day, asOne))
                .extracting(Finding::code, Finding::subject)
                .contains(tuple(FindingCode.STEP_TIME, "B1"));
    }

    /** The way back is as fast before the new order as behind it; with a slower line in stock both are too fast. */
    @Test
    void the_same_fault_of_what_is_to_come_refuses() {
        SmallDay day = day();
        Plan record = planned(day);
        SmallDay slow =
                day.machine("emptyLineSpeedMPerS", day.job().machine().emptyLineSpeedMPerS() - 5);
        List<Step> lifts =
                record.steps().stream().filter(step -> step.rotation().isPresent()).toList();
        Step first = lifts.get(0);
        Plan plan = anew(day, record, first.startAt().plusSeconds(1));

        Set<String> done = fastLegs(plan, first.endAt(), true);
        Set<String> toCome = fastLegs(plan, first.endAt(), false);
        List<String> found =
                violations(slow, plan).stream()
                        .filter(one -> one.code() == FindingCode.LEG_SPEED)
                        .map(Finding::subject)
                        .toList();
        assertThat(done).isNotEmpty();
        assertThat(toCome).containsAnyElementsOf(done);
        assertThat(found).containsExactlyInAnyOrderElementsOf(toCome);
        Plan last = anew(day, record, lifts.get(lifts.size() - 1).startAt().plusSeconds(1));
        VerifierReport over = new PlanVerifier().check(slow.job(), slow.ground(), last);
        assertThat(over.violations()).isEmpty();
        assertThat(over.over()).extracting(Finding::code).contains(FindingCode.LEG_SPEED);
    }

    /** Ends of the legs that are flown with the empty line, of the steps up to a time or from then on. */
    private static Set<String> fastLegs(Plan plan, Instant from, boolean before) {
        return plan.steps().stream()
                .filter(step -> step.startAt().isBefore(from) == before)
                .filter(step -> step.lineLengthM() > 0)
                .flatMap(step -> Day.legsOf(step).stream())
                .filter(leg -> leg.carrying().isEmpty())
                .map(leg -> leg.from() + "-" + leg.to())
                .collect(Collectors.toSet());
    }

    /** P1 stands for a minute when the day is ordered anew and is guyed for ten: P may not go before. */
    @Test
    void who_leaves_a_pole_that_stands_too_soon_is_found() {
        SmallDay day = day();
        Plan record = planned(day);
        Instant released = released(lift(record, "P1").rotation().orElseThrow());
        Plan plan = anew(day, record, released.plusSeconds(60));
        assertThat(violations(day, plan)).isEmpty();
        Instant gone = released.plusSeconds(300);
        List<CrewStay> crews =
                plan.crews().stream()
                        .filter(
                                stay ->
                                        !stay.crew().value().equals("P")
                                                || stay.fromAt().isBefore(gone))
                        .map(
                                stay ->
                                        stay.crew().value().equals("P") && stay.toAt().isAfter(gone)
                                                ? with(stay, "toAt", gone)
                                                : stay)
                        .toList();

        assertThat(violations(day, with(plan, "crews", crews)))
                .extracting(Finding::code, Finding::subject)
                .contains(tuple(FindingCode.CREW_ABSENT, "P1"));
    }

    /** Nobody lifted what the engine was to be started for: the lift behind it was flown with a start. */
    @Test
    void what_is_flown_in_the_place_of_another_starts_the_engine() {
        SmallDay day = day();
        Plan record = planned(day);
        List<Step> steps = record.steps();
        int at = 1;
        while (steps.get(at - 1).engineRunning()
                || steps.get(at).rotation().isEmpty()
                || steps.get(at + 1).rotation().isEmpty()) {
            at++;
        }
        Rotation next = steps.get(at + 1).rotation().orElseThrow();
        Standing.Done done = flown(next, 0);

        Standing.Spell off =
                new Standing.Spell(steps.get(at - 1).startAt(), steps.get(at + 1).startAt());
        Standing told =
                with(
                        tapped(released(next).plusSeconds(1), List.of(done)),
                        "engine",
                        new Standing.Engine(List.of(), List.of(off), Optional.empty()));

        Plan plan = anew(day, record, told);

        Step flown = lift(plan, next.loads().get(0).value());
        double burntKg = flown.fuelStartKg() - flown.fuelEndKg();
        double flowKg = Day.durationS(flown) * day.job().machine().burnKgPerS();
        assertThat(burntKg)
                .isGreaterThanOrEqualTo(flowKg + day.job().machine().startFuelKg() - 0.01);
        assertThat(fuelFaults(day, plan)).isEmpty();
    }

    /** The gauge was read while it waited, 20 kg below what was reckoned; then taps say that it did not wait. */
    @Test
    void what_was_read_counts_where_it_falls_once_the_times_are_known() {
        SmallDay day = day();
        Plan record = planned(day);
        Step lift = lift(record, "B1");
        Rotation turn = lift.rotation().orElseThrow();
        List<Rotation> before = new ArrayList<>();
        for (Rotation one : turns(record)) {
            if (!one.hookedAt().isAfter(turn.hookedAt())) {
                before.add(one);
            }
        }
        List<Standing.Done> done = new ArrayList<>();
        before.forEach(one -> done.add(flown(one, 0)));
        Instant read = lift.endAt().plusSeconds(60);
        Standing waiting =
                with(
                        tapped(read, done),
                        "fuelKg",
                        OptionalDouble.of(Math.rint(lift.fuelEndKg() - 20)));
        Plan first = anew(day, record, waiting);
        assertThat(violations(day, first)).isEmpty();
        Rotation next =
                turns(first).stream()
                        .filter(one -> one.hookedAt().isAfter(read))
                        .findFirst()
                        .orElseThrow();

        done.add(flown(next, -70));
        Plan second = anew(day, first, tapped(released(next), done));

        assertThat(violations(day, second)).isEmpty();
        assertThat(second.summary().anew().orElseThrow().readings()).hasSize(1);
    }

    /** Done or not, no machine is at two places at once. */
    @Test
    void what_no_day_can_have_been_refuses_even_what_is_done() {
        SmallDay day = day();
        Plan record = planned(day);
        Plan plan = anew(day, record, lift(record, "B1").endAt().plusSeconds(1));
        List<Step> steps = new ArrayList<>(plan.steps());
        int at = steps.indexOf(lift(plan, "B1"));
        steps.set(at, with(steps.get(at), "startAt", steps.get(at).startAt().minusSeconds(60)));

        assertThat(violations(day, with(plan, "steps", steps)))
                .extracting(Finding::code)
                .contains(FindingCode.STEP_OVERLAP);
    }

    /** S2 has moved since B1 was set down there, to where no line has room. */
    @Test
    void a_lift_that_is_done_was_flown_by_the_room_that_there_was() {
        SmallDay day = day();
        Plan record = planned(day);
        Step bag = lift(record, "B1");
        Plan plan = anew(day, record, bag.endAt().plusSeconds(1));
        List<PlaceRoom> rooms =
                plan.rooms().stream()
                        .map(
                                room ->
                                        with(
                                                room,
                                                "lines",
                                                room.lines().stream()
                                                        .map(OrderedAnewTest::refused)
                                                        .toList()))
                        .toList();

        assertThat(violations(day, with(plan, "rooms", rooms)))
                .filteredOn(one -> one.message().startsWith("The plan's own table"))
                .extracting(Finding::subject)
                .contains("P1")
                .doesNotContain("B1");
    }

    private static PlaceRoom.LineRoom refused(PlaceRoom.LineRoom line) {
        return with(
                line,
                "sectors",
                line.sectors().stream()
                        .map(one -> with(one, "fit", PlaceRoom.Fit.REFUSED))
                        .toList());
    }

    @Test
    void a_day_that_is_flown_ends_when_its_last_work_did() {
        SmallDay day = paid(day());
        Plan record = planned(day);

        Plan plan = anew(day, record, record.summary().finishAt().plusSeconds(900));

        assertThat(plan.summary().finishAt()).isEqualTo(record.summary().finishAt());
        assertThat(plan.summary().anew().orElseThrow().moreCents()).hasValue(0);
    }

    /** All but one lift of the plan is flown when its place is shut, and nothing goes on. */
    @Test
    void what_is_left_of_a_day_that_ends_by_a_closed_place_says_so() {
        SmallDay day = day();
        Plan record = planned(day);
        List<Rotation> turns = turns(record);
        Rotation last = turns.get(turns.size() - 1);
        List<Standing.Done> done =
                turns.subList(0, turns.size() - 1).stream().map(turn -> flown(turn, 0)).toList();
        Standing now =
                with(
                        tapped(record.summary().finishAt(), done),
                        "closed",
                        Set.of(last.drops().get(0).place()));

        Plan plan = anew(day, record, now);

        assertThat(plan.leftOut())
                .filteredOn(out -> out.load().equals(last.loads().get(0)))
                .singleElement()
                .satisfies(out -> assertThat(out.message()).contains("was closed"));
        assertThat(violations(day, plan))
                .extracting(Finding::code)
                .doesNotContain(FindingCode.STATED_WRONG);
    }

    /** Nothing is flown, nothing is paid. */
    @Test
    void a_day_that_ends_before_it_began_costs_nothing() {
        SmallDay day = paid(day());
        Plan record = planned(day);
        LoadId[] all = day.job().loads().stream().map(load -> load.id()).toArray(LoadId[]::new);

        Plan plan =
                reordered(
                                day,
                                record,
                                dropping(record.steps().get(0).startAt(), all),
                                OpenDay.Effort.FIRST)
                        .plan();

        assertThat(plan.steps()).isEmpty();
        assertThat(plan.summary().price().orElseThrow().totalCents()).isZero();
        assertThat(violations(day, plan)).isEmpty();
    }

    /** The machine is on its way to S1 to fetch W1, which is taken off the day; it cannot stay over S1. */
    @Test
    void a_machine_that_has_nothing_left_to_do_over_a_site_goes_home() {
        SmallDay day = day();
        Plan record = planned(day);
        Step there = record.steps().get(record.steps().indexOf(lift(record, "W1")) - 1);
        assertThat(there.to()).isEqualTo(pid("S1"));
        Instant now = there.endAt().minusSeconds(1);
        LoadId[] rest =
                day.job().loads().stream()
                        .map(load -> load.id())
                        .filter(id -> !id.value().equals("X1"))
                        .filter(id -> lift(record, id.value()).startAt().isAfter(now))
                        .toArray(LoadId[]::new);

        Plan plan = anew(day, record, dropping(now, rest));

        assertThat(plan.steps().get(plan.steps().size() - 1).to()).isEqualTo(pid("A"));
        assertThat(violations(day, plan)).isEmpty();
    }

    /** The same where A is the last of the places: its number is that of no crew. */
    @Test
    void the_last_landing_is_for_nobody_whatever_place_it_is() {
        SmallDay good = day();
        List<Place> places = new ArrayList<>(good.job().places());
        Collections.rotate(places, -1);
        SmallDay day = good.inJob("places", places);
        Plan record = planned(day);
        Instant now = record.steps().get(record.steps().indexOf(lift(record, "W1")) - 1).endAt();
        LoadId[] rest =
                day.job().loads().stream()
                        .map(load -> load.id())
                        .filter(id -> !id.value().equals("X1"))
                        .filter(id -> !lift(record, id.value()).startAt().isBefore(now))
                        .toArray(LoadId[]::new);

        Plan plan = anew(day, record, dropping(now.minusSeconds(1), rest));

        assertThat(plan.steps().get(plan.steps().size() - 1).because()).isEqualTo("last landing");
    }

    /** Rows of the forecast half an hour earlier and a load weighed: what is kept of the day changes no answer. */
    @Test
    void a_day_that_is_kept_orders_as_one_that_is_opened_for_the_weather() {
        SmallDay day =
                day().rule(
                                "costs",
                                new Rules.Costs(3500, 1200, 1000, "EUR")
                                        .with(new ComfortRates(300, 100, 50, 30, 0, 20)));
        Plan record = planned(day);
        OpenDay kept = new OpenDay(day.job(), day.ground());
        Instant now = lift(record, "B1").endAt().plusSeconds(1);
        kept.reorder(record, asPlanned(now), settings(now), OpenDay.Effort.FIRST);
        for (int earlierS : List.of(1800, 3000, 1800)) {
            SmallDay other =
                    earlier(earlierS > 1800 ? weighed(day, "B2", 150) : day, now, earlierS);
            kept = kept.with(other.job());

            OpenDay.Reordered found =
                    kept.reorder(record, asPlanned(now), settings(now), OpenDay.Effort.FIRST);

            assertThat(found.plan()).isEqualTo(anew(other, record, asPlanned(now)));
        }
    }

    /**
     * Forty seeded changes of hours, masses, loads, places, crews and the time, one after another on one kept day and
     * re-checked by one verifier: each plan and each re-check is that of a day opened for it.
     */
    @Test
    void a_day_that_is_kept_orders_as_one_that_is_opened_for_any_change() {
        SmallDay day =
                day().rule(
                                "costs",
                                new Rules.Costs(3500, 1200, 1000, "EUR")
                                        .with(new ComfortRates(300, 100, 50, 30, 0, 20)));
        Plan record = planned(day);
        Instant start = record.steps().get(0).startAt();
        long lastsS = Duration.between(start, record.summary().finishAt()).toSeconds();
        OpenDay kept = new OpenDay(day.job(), day.ground());
        PlanVerifier verifier = new PlanVerifier();
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 40; i++) {
            Instant now = start.plusSeconds(random.nextLong(lastsS));
            SmallDay other = day;
            if (random.nextBoolean()) {
                other = weighed(other, "B" + (1 + random.nextInt(3)), 60 + random.nextInt(150));
            }
            if (random.nextBoolean()) {
                other = earlier(other, now, random.nextInt(3600));
            }
            Standing standing = seeded(now, random);
            kept = kept.with(other.job());

            Plan found = kept.reorder(record, standing, settings(now), OpenDay.Effort.FIRST).plan();

            assertThat(found).isEqualTo(anew(other, record, standing));
            assertThat(verifier.check(other.job(), other.ground(), found))
                    .isEqualTo(new PlanVerifier().check(other.job(), other.ground(), found));
        }
    }

    private static Standing seeded(Instant now, SplittableRandom random) {
        Standing standing = asPlanned(now);
        if (random.nextInt(3) == 0) {
            String crew = random.nextBoolean() ? "P" : "L";
            standing = late(now, crew, now.plusSeconds(random.nextInt(7200)));
        }
        if (random.nextInt(4) == 0) {
            standing = with(standing, "fuelKg", OptionalDouble.of(60 + random.nextInt(100)));
        }
        if (random.nextInt(4) == 0) {
            standing = with(standing, "closed", Set.of(pid("S" + (1 + random.nextInt(2)))));
        }
        if (random.nextInt(3) == 0) {
            LoadId bag = new LoadId("B" + (1 + random.nextInt(3)));
            standing = with(standing, "dropped", Set.of(bag));
        }
        return standing;
    }

    /** Over S1 the gauge reads 50 kg: the way to the fuel at A would go into the reserve of 48 and the gauge's spread. */
    @Test
    void nothing_is_planned_into_the_reserve() {
        SmallDay day = day();
        Plan record = planned(day);
        Step over =
                record.steps().stream()
                        .filter(step -> step.to().equals(pid("S1")))
                        .findFirst()
                        .orElseThrow();
        Instant now = over.endAt().minusSeconds(1);
        Standing standing = with(asPlanned(now), "fuelKg", OptionalDouble.of(50));

        OpenDay.Reordered found = reordered(day, record, standing, OpenDay.Effort.FIRST);

        assertThat(found.plan().steps()).hasSize(found.frozenSteps());
        assertThat(found.plan().leftOut())
                .filteredOn(out -> out.code() == FindingCode.NO_ROOM_IN_DAY)
                .isNotEmpty()
                .allSatisfy(
                        out ->
                                assertThat(out.message())
                                        .contains("at S1 no way to fuel keeps the reserve"));
        assertThat(violations(day, found.plan())).isEmpty();
    }

    /** Over S1 the gauge reads 70 kg, enough for the way to A and the reserve; at A it reads less than the reserve. */
    @Test
    void a_machine_with_little_fuel_is_refuelled_first_and_goes_on() {
        SmallDay day = day();
        Plan record = planned(day);
        Step there = record.steps().get(record.steps().indexOf(lift(record, "W1")) - 1);
        assertThat(there.to()).isEqualTo(pid("S1"));
        Instant over = there.endAt().minusSeconds(1);
        Instant back = lift(record, "B1").endAt().plusSeconds(1);
        Map<Instant, Double> readKg = Map.of(over, 70.0, back, 30.0);
        readKg.forEach(
                (now, fuelKg) -> {
                    Standing low = with(asPlanned(now), "fuelKg", OptionalDouble.of(fuelKg));

                    OpenDay.Reordered found = reordered(day, record, low, OpenDay.Effort.FIRST);

                    List<Step> steps = found.plan().steps();
                    assertThat(steps.subList(found.frozenSteps(), steps.size()))
                            .extracting(Step::kind)
                            .contains(StepKind.ROTATION)
                            .containsSubsequence(StepKind.REFUEL);
                    assertThat(leftOut(found.plan())).containsOnlyKeys("X1");
                    assertThat(violations(day, found.plan())).isEmpty();
                });
    }

    /** F, who alone refuels at A, is away for hours; at H fuel is kept too, and G is there. */
    @Test
    void fuel_is_taken_where_somebody_is() {
        List<Place> places = new ArrayList<>(SmallDay.good().job().places());
        places.add(SmallDay.place("H", PlaceKind.LAYDOWN, 1000, -400));
        List<Crew> crews = new ArrayList<>(day().job().crews());
        crews.add(SmallDay.crew("F", "A", Set.of(Crew.Role.REFUEL), true));
        crews.add(SmallDay.crew("G", "H", Set.of(Crew.Role.REFUEL), true));
        SmallDay day =
                day().inJob("places", places)
                        .inJob("crews", crews)
                        .crew("L", "roles", Set.of(Crew.Role.HOOK, Crew.Role.RECEIVE));
        Plan record = planned(day);
        Instant now = lift(record, "B1").endAt().plusSeconds(1);
        Standing away =
                with(late(now, "F", now.plusSeconds(14_400)), "fuelKg", OptionalDouble.of(80));

        OpenDay.Reordered found = reordered(day, record, away, OpenDay.Effort.FIRST);

        List<Step> steps = found.plan().steps();
        assertThat(steps.subList(found.frozenSteps(), steps.size()))
                .filteredOn(step -> step.kind() == StepKind.REFUEL)
                .isNotEmpty()
                .allSatisfy(step -> assertThat(step.from()).isEqualTo(pid("H")));
        assertThat(leftOut(found.plan())).containsOnlyKeys("X1");
        assertThat(violations(day, found.plan())).isEmpty();
    }

    /** L alone hooks and refuels at A, and does not come back before the pilot's duty is over. */
    @Test
    void nobody_is_waited_for_who_comes_after_the_end_of_the_day() {
        SmallDay day = day();
        Plan record = planned(day);
        Instant now = lift(record, "B1").endAt().plusSeconds(1);

        OpenDay.Reordered found =
                reordered(day, record, late(now, "L", now.plusSeconds(50_000)), searching());

        Plan plan = found.plan();
        assertThat(plan.steps()).hasSizeGreaterThanOrEqualTo(found.frozenSteps());
        assertThat(plan.steps().subList(found.frozenSteps(), plan.steps().size()))
                .noneMatch(step -> step.kind() == StepKind.REFUEL);
        assertThat(violations(day, plan)).isEmpty();
    }

    private static OpenDay.Effort searching() {
        return new OpenDay.Effort(true, false, () -> false);
    }

    private static SmallDay earlier(SmallDay day, Instant now, Number byS) {
        List<WeatherHour> rows =
                day.job().weather().hours().stream()
                        .map(
                                row ->
                                        row.from().isAfter(now)
                                                ? with(
                                                        row,
                                                        "from",
                                                        row.from().minusSeconds(byS.longValue()))
                                                : row)
                        .toList();
        return day.inJob("weather", with(day.job().weather(), "hours", rows));
    }

    /** X1 may hang with B2 and B3, and each of them alone. */
    @Test
    void the_bound_of_the_rest_holds_for_every_combination() {
        SmallDay day = weighed(day(), "X1", 90);
        Plan record = planned(day);
        Instant before = record.steps().get(0).startAt().plusSeconds(1);

        Plan plan = anew(day, record, before, new OpenDay.Effort(false, true, () -> false));

        assertThat(plan.summary().provenFor()).contains("all-combinations");
        assertThat(plan.summary().finishBoundAt().orElseThrow())
                .isBefore(plan.summary().finishAt());
        assertThat(violations(day, plan)).isEmpty();
    }

    /** All steps but waits, which are cut where now is. */
    private static List<Step> doings(Plan plan) {
        return plan.steps().stream().filter(step -> step.kind() != StepKind.WAIT).toList();
    }

    /** Nothing is other than planned: at no time of the day is any step another one. */
    @Test
    void an_order_of_a_day_of_which_nothing_is_changed_is_its_plan() {
        for (SmallDay day : List.of(paid(day()), weighed(paid(SmallDay.good()), "X1", 150))) {
            Plan record = planned(day);
            OpenDay open = new OpenDay(day.job(), day.ground());
            Instant from = record.steps().get(0).startAt();
            for (long atS = -300; from.plusSeconds(atS).isBefore(record.summary().finishAt()); ) {
                Instant now = from.plusSeconds(atS);

                Plan plan =
                        open.reorder(record, asPlanned(now), settings(now), OpenDay.Effort.FIRST)
                                .plan();

                assertThat(doings(plan)).as("at " + now).isEqualTo(doings(record));
                assertThat(plan.summary().anew().orElseThrow().laterS()).isZero();
                assertThat(plan.summary().anew().orElseThrow().moreFlightS()).isZero();
                assertThat(plan.leftOut()).isEqualTo(record.leftOut());
                atS += 97;
            }
        }
    }

    /** X1 is for S1, and weighed when W1 has left there as the last thing: or before that. */
    @Test
    void nothing_is_brought_to_where_the_last_thing_has_left() {
        SmallDay day = day();
        Plan record = planned(day);
        SmallDay weighed = instead(day, SmallDay.load("X1", "bag", "A", "S1", 90));

        Plan late = anew(weighed, record, lift(record, "W1").startAt().plusSeconds(1));
        Plan early = anew(weighed, record, record.steps().get(0).startAt().plusSeconds(1));

        assertThat(late.leftOut())
                .singleElement()
                .satisfies(
                        out -> {
                            assertThat(out.load().value()).isEqualTo("X1");
                            assertThat(out.code()).isEqualTo(FindingCode.ORDER_RULE);
                            assertThat(out.message()).startsWith("W1 has left S1");
                        });
        assertThat(violations(weighed, late)).isEmpty();
        assertThat(early.leftOut()).isEmpty();
        assertThat(violations(weighed, early)).isEmpty();
    }

    /** The same plan with W1 still to come does not hold: that W1 has left is no reason before it has. */
    @Test
    void a_last_thing_that_is_still_there_is_no_reason() {
        SmallDay day = day();
        Plan record = planned(day);
        LeftOut out = new LeftOut(new LoadId("X1"), FindingCode.ORDER_RULE, "W1 has left S1.");

        Plan plan = with(record, "leftOut", List.of(out));

        assertThat(violations(day, plan)).extracting(Finding::subject).contains("X1");
    }

    /** B2 waits for X1, whose mass nobody knows; B3 would only have hung with B2. */
    @Test
    void who_would_hang_with_a_load_that_waits_in_vain_is_flown_without_it() {
        SmallDay day =
                weighed(weighed(SmallDay.good(), "B2", 170), "B3", 120)
                        .load("B2", "after", List.of(new Load.After(new LoadId("X1"), 0)));

        Plan record = planned(day);

        assertThat(leftOut(record))
                .containsEntry("B2", FindingCode.ORDER_RULE)
                .doesNotContainKey("B3");
        assertThat(violations(day, record)).isEmpty();
    }

    /** The same where S2, to which B1 is flown before B2, is closed during the day. */
    @Test
    void who_hangs_with_a_load_that_waits_for_a_closed_place_is_flown_without_it() {
        SmallDay day = together().load("B2", "after", List.of(new Load.After(new LoadId("B1"), 0)));
        Plan record = planned(day);
        assertThat(lift(record, "B2").rotation().orElseThrow().loads()).hasSize(2);
        Instant before = record.steps().get(0).startAt().plusSeconds(1);
        Standing now = with(asPlanned(before), "closed", Set.of(pid("S2")));

        Plan plan = anew(day, record, now);

        assertThat(leftOut(plan))
                .containsEntry("B2", FindingCode.ORDER_RULE)
                .doesNotContainKey("B3");
        assertThat(violations(day, plan)).isEmpty();
    }

    /** B2 comes to S1 after W1, which leaves S1 after all that comes there. */
    @Test
    void loads_that_wait_for_each_other_say_so() {
        SmallDay day =
                SmallDay.good().load("B2", "after", List.of(new Load.After(new LoadId("W1"), 0)));

        Plan record = planned(day);

        assertThat(record.leftOut())
                .filteredOn(out -> out.load().value().equals("B2"))
                .singleElement()
                .satisfies(
                        out ->
                                assertThat(out.message())
                                        .contains("B2 comes after W1", "W1 leaves S1 after B2"));
        assertThat(leftOut(record)).containsEntry("B2", FindingCode.ORDER_RULE);
        assertThat(violations(day, record)).isEmpty();
    }

    /** P1 and P2 both make S1 ready for 10 min: the one that comes second waits so long, whichever it is. */
    @Test
    void of_two_poles_that_both_make_ready_either_may_be_first() {
        SmallDay good = day();
        List<Load> loads = new ArrayList<>(good.job().loads());
        loads.add(SmallDay.load("P2", "pole", "A", "S1", 280));
        SmallDay day =
                good.inJob("loads", loads)
                        .rule(
                                "kinds",
                                good.job().rules().kinds().stream()
                                        .map(
                                                kind ->
                                                        kind.standsUp()
                                                                ? with(kind, "readyAfterS", 600.0)
                                                                : kind)
                                        .toList());

        Plan record = planned(day);

        assertThat(leftOut(record)).containsOnlyKeys("X1");
        Instant one = lift(record, "P1").rotation().orElseThrow().drops().get(0).releasedAt();
        Instant two = lift(record, "P2").rotation().orElseThrow().drops().get(0).releasedAt();
        assertThat(Duration.between(one, two).abs()).isGreaterThanOrEqualTo(Duration.ofMinutes(10));
        assertThat(violations(day, record)).isEmpty();
    }

    /** X1 makes S2 ready for poles, and is weighed when P1 stands there. */
    @Test
    void what_makes_ready_may_come_to_a_pole_that_stands() {
        SmallDay day = day().load("P1", "to", pid("S2")).crew("P", "start", pid("S2"));
        Plan record = planned(day.load("X1", "to", pid("S2")));
        SmallDay weighed = instead(day, SmallDay.load("X1", "bag", "A", "S2", 90));
        Instant after = lift(record, "P1").startAt().plusSeconds(1);

        Plan plan = anew(weighed, record, after);

        assertThat(plan.leftOut()).isEmpty();
        assertThat(violations(weighed, plan)).isEmpty();
    }
}
