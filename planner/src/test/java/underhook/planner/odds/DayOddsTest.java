package underhook.planner.odds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;
import underhook.core.job.Hours;
import underhook.core.job.Job;
import underhook.core.job.Spreads;
import underhook.core.job.Zone;
import underhook.core.plan.Odds;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** Days by hand; chances by closed forms. */
class DayOddsTest {
    /** Four thousand days: five standard errors of a half. */
    private static final double SAMPLING = 0.04;

    private static final Spreads.Times HOUR_EITHER_WAY = new Spreads.Times(-3600, 0, 3600);

    private static Odds odds(OddsDay day, Spreads spreads) {
        return DayOdds.of(day.job(spreads), day.plan(), new SplittableRandom(1));
    }

    private static Spreads guying(Spreads.Ratios ratios, double sharedFraction) {
        return with(ratios, Spreads.Times.NONE, Spreads.Times.NONE, sharedFraction);
    }

    private static Spreads wind(Spreads.Times times) {
        return with(Spreads.Ratios.NONE, Spreads.Times.NONE, times, 0);
    }

    private static Spreads with(
            Spreads.Ratios guying,
            Spreads.Times crewLate,
            Spreads.Times windLater,
            double sharedFraction) {
        return new Spreads(
                Spreads.Ratios.NONE,
                guying,
                Spreads.Ratios.NONE,
                Spreads.Ratios.NONE,
                crewLate,
                windLater,
                sharedFraction,
                0.9,
                List.of());
    }

    /** A bag and its pole with a team, a wait for the place to be ready, a refuelling, a walk on. */
    private static OddsDay worked() {
        OddsDay day = new OddsDay().lift("B1", "bag", "S1");
        // Released at 360 s, so the pole may come at 1560 s and is let go at 1960 s: 700 s after
        // its step begins.
        day.step(StepKind.WAIT, 750);
        day.lift("P1", "pole", "S1", "B1").step(StepKind.REFUEL, 500);
        // Whoever refuelled until 2610 s begins to hook 180 s later and has hooked after 60 s more,
        // 240 s
        // after the refuelling; 100 s of them are the next step's.
        day.step(StepKind.WAIT, 140).lift("B2", "bag", "S2");
        return day.team(
                OddsDay.crew("P", "S1", -3600, false),
                OddsDay.stay("P", "S1", -3600, 2560, "works and waits"),
                OddsDay.stay("P", "S2", 2560, 2760, "walks to S2"),
                OddsDay.stay("P", "S2", 2760, 5000, "works and waits"));
    }

    @Test
    void with_every_time_as_planned_the_day_is_the_plan() {
        OddsDay day = worked();
        Plan plan = day.plan();
        DayNet net = DayNet.of(day.job(OddsDay.STEADY), plan);
        double[] timesS = new double[net.network().moments()];
        net.network()
                .run(net.pieces().stream().mapToDouble(Piece::plannedFactor).toArray(), timesS);

        for (int i = 0; i < plan.steps().size(); i++) {
            Step step = plan.steps().get(i);
            assertThat(net.clock().at(timesS[net.starts().get(i)])).isEqualTo(step.startAt());
            assertThat(net.clock().at(timesS[net.ends().get(i)])).isEqualTo(step.endAt());
        }
        for (Lift lift : net.lifts()) {
            assertThat(net.clock().at(timesS[lift.hooked()])).isEqualTo(lift.rotation().hookedAt());
        }
        Odds odds = odds(day, OddsDay.STEADY);
        assertThat(odds.allInTime().countedFraction()).isEqualTo(1);
        assertThat(odds.finishMedianAt()).isEqualTo(odds.finishLateAt());
        assertThat(Duration.between(plan.summary().finishAt(), odds.finishLateAt()))
                .isBetween(Duration.ZERO, Duration.ofSeconds(59));
    }

    /** Only the first step is kept by the clock: each wait above has its reason. */
    @Test
    void a_wait_is_kept_for_its_reason_and_not_by_the_clock() {
        OddsDay day = worked();
        DayNet net = DayNet.of(day.job(OddsDay.STEADY), day.plan());

        assertThat(net.network().edges())
                .filteredOn(edge -> edge.kind() == Edge.Kind.CLOCK)
                .extracting(Edge::to)
                .contains(net.starts().get(0))
                .doesNotContain(net.ends().get(1), net.starts().get(2), net.ends().get(4));
    }

    /**
     * Three poles, each held for 400 s at 50 to 150 %: their sum is 400 s times half of six uniform times, less
     * the 600 s that every day has. Duty ends 120 s after the plan.
     */
    @Test
    void a_chain_is_in_time_as_often_as_the_sum_of_its_times() {
        OddsDay day =
                new OddsDay()
                        .lift("P1", "pole", "S1")
                        .lift("P2", "pole", "S2")
                        .lift("P3", "pole", "S3");
        day.dutyUntil(day.timeS() + 120);

        Odds odds = odds(day, guying(new Spreads.Ratios(0.5, 1, 1.5), 0));

        double expected = NetworkTest.irwinHall(6, 3 + 120.0 / 200);
        assertThat(odds.withinDuty().countedFraction()).isEqualTo(expected, within(SAMPLING));
        assertThat(odds.withinDuty().leastFraction())
                .isLessThan(odds.withinDuty().countedFraction());
        assertThat(odds.allInTime()).isEqualTo(odds.withinDuty());
    }

    /** The same three: two are always down and home by then, the last as often as the sum allows, four times of five. */
    @Test
    void a_day_that_is_ended_at_its_limit_keeps_what_lies_by_then() {
        OddsDay day =
                new OddsDay()
                        .lift("P1", "pole", "S1")
                        .lift("P2", "pole", "S2")
                        .lift("P3", "pole", "S3");
        day.dutyUntil(day.timeS() + 120);

        Odds odds = odds(day, guying(new Spreads.Ratios(0.5, 1, 1.5), 0));

        assertThat(odds.placed().loads())
                .extracting(one -> one.load().value())
                .containsExactly("P1", "P2", "P3");
        assertThat(odds.placed().loads().get(1).chance().countedFraction()).isEqualTo(1);
        assertThat(odds.placed().loads().get(2).chance()).isEqualTo(odds.withinDuty());
        assertThat(odds.placed().planned()).isEqualTo(3);
        assertThat(odds.placed().halfDays()).isEqualTo(3);
        assertThat(odds.placed().mostDays()).isEqualTo(2);
    }

    /**
     * 25 poles of 850 s, a break, one pole more; guying is slower all day by up to a twentieth, 400 s up to 420 s. From
     * 414 s on the 25 would have the engine on for more than six hours, so the break comes before the last of them: the
     * day lasts as long as the guying makes it and no longer.
     */
    @Test
    void a_break_comes_sooner_where_the_engine_would_be_on_for_too_long() {
        OddsDay day = poles(25).step(StepKind.BREAK, 1800).lift("P25", "pole", "S5");
        double plannedS = day.timeS();

        Odds odds = odds(day, guying(new Spreads.Ratios(1, 1, 1.05), 1));

        assertThat(odds.withinDuty().countedFraction()).isEqualTo(1);
        assertThat(odds.placed().mostDays()).isEqualTo(26);
        // Half of this triangle lies below 1 + 0.05 (1 - the root of a half).
        double guyingS = 26 * 400 * 0.05 * (1 - Math.sqrt(0.5));
        assertThat(odds.finishMedianAt())
                .isBetween(
                        OddsDay.at(plannedS + guyingS - 60), OddsDay.at(plannedS + guyingS + 90));
    }

    /** The same without a break to move, and never in time: one more is taken, and 1800 s go by. */
    @Test
    void where_no_break_is_planned_one_more_is_taken() {
        OddsDay day = poles(25);
        double plannedS = day.timeS();

        Odds odds = odds(day, guying(new Spreads.Ratios(1.04, 1.045, 1.05), 1));

        assertThat(odds.withinDuty().countedFraction()).isEqualTo(1);
        double guyingS = 25 * 400 * 0.045;
        assertThat(odds.finishMedianAt())
                .isBetween(
                        OddsDay.at(plannedS + guyingS + 1800 - 60),
                        OddsDay.at(plannedS + guyingS + 1800 + 90));
    }

    private static OddsDay poles(int count) {
        OddsDay day = new OddsDay();
        for (int i = 0; i < count; i++) {
            day.lift("P" + i, "pole", "S" + (i % 9 + 1));
        }
        return day;
    }

    /** No bag is closed by the wind, but one of them waits for the pole. */
    @Test
    void what_waits_for_a_load_that_does_not_come_does_not_come() {
        OddsDay day =
                new OddsDay()
                        .lift("P1", "pole", "S1")
                        .lift("B2", "bag", "S2", "P1")
                        .lift("B3", "bag", "S3")
                        .windFrom(700 + 900);

        Odds.Placed placed = odds(day, wind(HOUR_EITHER_WAY)).placed();

        Odds.Chance pole = placed.loads().get(0).chance();
        assertThat(pole.countedFraction()).isEqualTo(1 - 0.28125, within(SAMPLING));
        assertThat(placed.loads().get(1).chance()).isEqualTo(pole);
        assertThat(placed.loads().get(2).chance().countedFraction()).isEqualTo(1);
        assertThat(placed.halfDays()).isEqualTo(3);
        assertThat(placed.mostDays()).isEqualTo(1);
    }

    /** Luck that is wholly the day's makes the three one: a triangle three times as wide. */
    @Test
    void shared_luck_widens_the_day() {
        OddsDay day =
                new OddsDay()
                        .lift("P1", "pole", "S1")
                        .lift("P2", "pole", "S2")
                        .lift("P3", "pole", "S3");
        day.dutyUntil(day.timeS() + 120);

        Odds odds = odds(day, guying(new Spreads.Ratios(0.5, 1, 1.5), 1));

        // 120 of 1200 s late is 1.1 of the plan: 1 - (1.5 - 1.1)² / 0.5 of the triangle.
        assertThat(odds.withinDuty().countedFraction()).isEqualTo(0.68, within(SAMPLING));
    }

    /** The pole is let go 900 s before the wind, which comes within an hour of its time either way. */
    @Test
    void a_pole_is_before_the_wind_as_often_as_the_wind_is_late_enough() {
        OddsDay day = new OddsDay().lift("P1", "pole", "S1").windFrom(700 + 900);

        Odds odds = odds(day, wind(HOUR_EITHER_WAY));

        // Before -900 s lies (3600 - 900)² / (2 · 3600²) of the triangle.
        assertThat(odds.beforeWind().countedFraction()).isEqualTo(1 - 0.28125, within(SAMPLING));
        assertThat(odds.beforeDark().countedFraction()).isEqualTo(1);
    }

    /** A tenth of the triangle lies before -3600 + sqrt(0.1 · 2) · 3600 s. */
    @Test
    void the_last_start_leaves_nine_days_of_ten_inside_the_window() {
        OddsDay day = new OddsDay().lift("P1", "pole", "S1").windFrom(7200);

        Odds.LastStart last = odds(day, wind(HOUR_EITHER_WAY)).lastStarts().get(0);

        double latestS = 7200 - 600 - 3600 + Math.sqrt(0.2) * 3600;
        assertThat(last.load().value()).isEqualTo("P1");
        assertThat(last.plannedAt()).isEqualTo(OddsDay.at(100));
        // Whole minutes rounded down, on the safe side of the sampling error.
        assertThat(last.lastAt()).isBetween(OddsDay.at(latestS - 240), OddsDay.at(latestS));
    }

    /** A zone over its place from 10:00 on: set down by then, 600 s after the hook-up, and nothing varies. */
    @Test
    void a_zone_that_holds_later_closes_what_comes_down_in_it() {
        OddsDay day = new OddsDay().lift("P1", "pole", "S1");
        List<Zone> later = List.of(over(new Hours(LocalTime.of(10, 0), LocalTime.of(11, 0))));
        List<Zone> earlier = List.of(over(new Hours(LocalTime.of(5, 0), LocalTime.of(7, 0))));
        Job job = day.job(with(Spreads.Ratios.NONE, Spreads.Times.NONE, Spreads.Times.NONE, 0));

        Odds closing = DayOdds.of(job.withZones(later), day.plan(), new SplittableRandom(1));
        // Let go 600 s after it is hooked up, and away 180 s later.
        assertThat(closing.lastStarts().get(0).lastAt()).isEqualTo(OddsDay.at(7200 - 600 - 180));
        assertThat(
                        DayOdds.of(job.withZones(earlier), day.plan(), new SplittableRandom(1))
                                .lastStarts())
                .isEmpty();
    }

    private static Zone over(Hours hours) {
        return new Zone(
                "Z",
                "",
                List.of(new GeoPoint(46.8, 0)),
                50,
                Zone.Rule.NO_OVERFLIGHT,
                List.of(),
                0,
                Optional.empty(),
                Optional.empty(),
                hours,
                "zones");
    }

    @Test
    void bags_and_poles_that_nothing_closes_have_no_last_start() {
        OddsDay day = new OddsDay().lift("B1", "bag", "S1").lift("P1", "pole", "S1");

        assertThat(odds(day, Spreads.USUAL).lastStarts()).isEmpty();
    }

    /** The team is late by up to an hour, evenly about 30 min; the pole comes, 400 s before its release, when it is there. */
    @Test
    void a_late_crew_makes_a_late_day_and_being_on_time_is_named_as_what_helps_most() {
        OddsDay day =
                new OddsDay()
                        .lift("P1", "pole", "S1")
                        .team(
                                OddsDay.crew("P", "S1", 300, false),
                                OddsDay.stay("P", "S1", 300, 5000, "works and waits"));
        day.dutyUntil(day.timeS() + 1800);

        Odds odds =
                odds(
                        day,
                        with(
                                Spreads.Ratios.NONE,
                                new Spreads.Times(0, 1800, 3600),
                                Spreads.Times.NONE,
                                0));

        assertThat(odds.withinDuty().countedFraction()).isEqualTo(0.5, within(SAMPLING));
        assertThat(odds.gains().get(0).what()).isEqualTo("crew P ready on time");
        assertThat(odds.gains().get(0).gainFraction()).isEqualTo(0.5, within(SAMPLING));
        assertThat(odds.gains().get(0).finishEarlierS()).isEqualTo(1800, within(60.0));
    }

    /** The second bag's step could begin 140 s earlier if somebody else had refuelled. */
    @Test
    void a_spare_handler_saves_the_wait_behind_a_refuelling() {
        Odds odds = odds(worked(), OddsDay.STEADY);

        assertThat(odds.gains())
                .filteredOn(gain -> gain.what().equals("somebody else refuels at A"))
                .singleElement()
                .satisfies(gain -> assertThat(gain.finishEarlierS()).isEqualTo(140, within(1e-6)));
    }

    /** Where earlier flights out took a fifth longer, so does this one: 200 s become 240. */
    @Test
    void what_was_learned_moves_the_times() {
        OddsDay day = new OddsDay().lift("P1", "pole", "S1");
        Spreads taught =
                OddsDay.STEADY.withLearned(
                        List.of(new Spreads.Learned("pole / site / 20 m", 8, 1.2, 0)));

        Odds odds = odds(day, taught);

        assertThat(odds.learnedSamples()).isEqualTo(8);
        // 850 s and 40 s: 14 min 50 s, rounded up.
        assertThat(odds.finishMedianAt()).isEqualTo(OddsDay.at(900));
    }

    /** A learned spread of 0.1 is a triangle of 0.1 times the root of 6 to either side. */
    @Test
    void what_was_learned_of_the_spread_takes_its_place() {
        OddsDay day = new OddsDay().lift("P1", "pole", "S1");
        Spreads taught =
                OddsDay.STEADY.withLearned(
                        List.of(new Spreads.Learned("pole / site / 20 m", 8, 1, 0.1)));
        day.dutyUntil(day.timeS() + 20);

        // 20 of 200 s are one standard deviation: the area behind is (1 - 1 / root 6)² / 2.
        assertThat(odds(day, taught).withinDuty().countedFraction())
                .isEqualTo(1 - 0.1751, within(SAMPLING));
    }

    @Test
    void the_same_seed_gives_the_same_odds_and_more_spread_never_better_ones() {
        OddsDay day = worked();
        day.dutyUntil(day.timeS() + 200);

        Odds narrow = odds(day, guying(new Spreads.Ratios(1, 1, 1.2), 0.5));
        Odds wide = odds(day, guying(new Spreads.Ratios(1, 1, 2), 0.5));

        assertThat(odds(day, guying(new Spreads.Ratios(1, 1, 1.2), 0.5))).isEqualTo(narrow);
        assertThat(wide.allInTime().countedFraction())
                .isLessThanOrEqualTo(narrow.allInTime().countedFraction());
        assertThat(wide.finishLateAt()).isAfterOrEqualTo(narrow.finishLateAt());
    }

    @Test
    void a_plan_without_a_step_has_no_odds() {
        OddsDay day = new OddsDay();

        assertThatThrownBy(() -> odds(day, Spreads.USUAL)).hasMessageContaining("without a step");
    }
}
