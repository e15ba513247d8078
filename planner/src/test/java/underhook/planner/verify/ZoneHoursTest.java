package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.geo;
import static underhook.planner.verify.SmallDay.pid;

import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Hours;
import underhook.core.job.Zone;
import underhook.core.plan.Drop;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** Zones that hold for some hours of a day, over the invented ground of {@link SmallDay}. By thought, no source. */
class ZoneHoursTest {
    private static final double STRIP_M =
            SmallDay.good().job().rules().distances().stripHalfWidthM();

    /** A circle: east, north, radius, least height, m. */
    private static Zone zone(Zone.Rule rule, double[] circle, Hours hours) {
        return new Zone(
                "Z2",
                "Z2",
                List.of(geo(circle[0], circle[1])),
                circle[2],
                rule,
                List.of(),
                circle[3],
                Optional.empty(),
                Optional.empty(),
                hours,
                "zones");
    }

    private static Hours hours(String from, String until) {
        return new Hours(LocalTime.parse(from), LocalTime.parse(until));
    }

    /** A day with a zone over S1. */
    private static SmallDay overS1(Zone.Rule rule, Hours hours) {
        return day(zone(rule, new double[] {0, 1000, 60, 150}, hours));
    }

    /** A day whose only zone is out of the way. */
    private static SmallDay free() {
        return day(zone(Zone.Rule.NO_OVERFLIGHT, new double[] {-900, -900, 9, 0}, Hours.ALL_DAY));
    }

    private static SmallDay day(Zone zone) {
        return SmallDay.good().zone(zone);
    }

    private static Plan planned(SmallDay day) {
        Plan plan = Planned.of(day);
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
        return plan;
    }

    private static double leastM(Leg leg, PlanePoint from) {
        List<PlanePoint> way =
                leg.path().stream().map(point -> SmallDay.FRAME.toPlane(point.position())).toList();
        return IntStream.range(1, way.size())
                .mapToDouble(i -> Plane.toSegmentM(from, way.get(i - 1), way.get(i)))
                .min()
                .orElse(way.get(0).distanceToM(from));
    }

    private static Set<String> leftOut(Plan plan) {
        return plan.leftOut().stream()
                .map(LeftOut::load)
                .map(Object::toString)
                .collect(Collectors.toSet());
    }

    private static List<Finding> found(Plan plan, FindingCode code) {
        return plan.findings().stream().filter(one -> one.code() == code).toList();
    }

    @Test
    void a_zone_that_holds_in_the_evening_alone_changes_no_way() {
        double[] midway = {0, 500, 60, 0};
        Plan free = planned(free());
        Plan evening = planned(day(zone(Zone.Rule.NO_OVERFLIGHT, midway, hours("20:00", "21:00"))));
        Plan closed = planned(day(zone(Zone.Rule.NO_OVERFLIGHT, midway, Hours.ALL_DAY)));

        assertThat(evening.summary().flightS()).isEqualTo(free.summary().flightS());
        assertThat(closed.summary().flightS()).isGreaterThan(free.summary().flightS());
        assertThat(found(evening, FindingCode.ZONE_HOURS))
                .singleElement()
                .satisfies(
                        told ->
                                assertThat(told.message())
                                        .startsWith("It holds from 20:00 to 21:00. ")
                                        .contains("B2"));
        assertThat(found(closed, FindingCode.ZONE_HOURS)).isEmpty();
        assertThat(found(evening, FindingCode.DETOUR))
                .isNotEmpty()
                .allMatch(
                        told ->
                                told.message()
                                        .endsWith(
                                                " too near while that holds, from 20:00 to 21:00;"
                                                        + " refused then."));
    }

    /** Nothing comes to S1 while it lies in a zone that holds, and all comes there once it is over. */
    @Test
    void what_lies_in_a_zone_waits_until_it_is_over() {
        Plan plan = planned(overS1(Zone.Rule.NO_OVERFLIGHT, hours("05:00", "09:00")));

        Instant over = Instant.parse("2026-09-08T10:00:00Z");
        List<Step> there =
                plan.steps().stream()
                        .filter(step -> step.rotation().stream().anyMatch(ZoneHoursTest::goesToS1))
                        .toList();
        assertThat(there).isNotEmpty();
        assertThat(there)
                .allMatch(step -> !step.rotation().orElseThrow().hookedAt().isBefore(over));
        assertThat(leftOut(plan)).isEqualTo(leftOut(planned(SmallDay.good())));
    }

    /** What is fetched after the first lift waits on the ground for the zone, and says so. */
    @Test
    void a_wait_for_a_zone_says_so() {
        Plan plan = planned(overS1(Zone.Rule.NO_OVERFLIGHT, hours("06:11", "09:00")));

        assertThat(plan.steps().stream().map(step -> step.kind() + " " + step.because()))
                .anyMatch(
                        said ->
                                said.startsWith("BREAK waits: B2")
                                        && said.contains("a zone closes the way to "));
    }

    private static boolean goesToS1(Rotation rotation) {
        return rotation.drops().stream().map(Drop::place).anyMatch(pid("S1")::equals);
    }

    /** Hovering low in a zone waits too. */
    @Test
    void a_hover_that_is_too_low_waits_until_it_may_be() {
        Plan plan = planned(overS1(Zone.Rule.NO_HOVER_BELOW, hours("05:00", "09:00")));

        Instant over = Instant.parse("2026-09-08T10:00:00Z");
        assertThat(
                        plan.steps().stream()
                                .flatMap(step -> step.rotation().stream())
                                .filter(ZoneHoursTest::goesToS1))
                .isNotEmpty()
                .allMatch(rotation -> !rotation.hookedAt().isBefore(over));
    }

    /**
     * Zones on the way to S1 and beside it, of any size, at any of the minutes in which the day is flown: whatever a
     * load hangs through while one holds is kept off it, and nothing is left out that is flown without. Some of them
     * are in the way of the day as it is flown without: else nothing would be shown.
     */
    @Test
    void no_load_comes_near_a_zone_that_holds_meanwhile() {
        Plan without = planned(free());
        int kept = 0;
        for (long seed = 1; seed <= 40; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            LocalTime from = LocalTime.of(6, 0).plusMinutes(random.nextInt(15));
            Hours hours = new Hours(from, from.plusMinutes(2 + random.nextInt(70)));
            double[] circle = {
                random.nextDouble(-150, 150),
                random.nextDouble(100, 1100),
                random.nextDouble(5, 120),
                0
            };
            SmallDay day = day(zone(Zone.Rule.NO_OVERFLIGHT, circle, hours));
            Plan plan = planned(day);

            assertThat(leftOut(plan)).isEqualTo(leftOut(without));
            assertThat(near(plan, day, circle)).as("seed " + seed).isZero();
            kept += near(without, day, circle) > 0 ? 1 : 0;
        }
        assertThat(kept).isGreaterThan(10);
    }

    /** How many legs of a plan a load hangs through near the zone of a day while it holds. */
    private static long near(Plan plan, SmallDay day, double[] circle) {
        Hours hours = day.job().zones().get(0).hours();
        Instant begins = instant(day, hours.from());
        Instant ends = instant(day, hours.until());
        PlanePoint middle = new PlanePoint(circle[0], circle[1]);
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .filter(lift -> lift.hookedAt().isBefore(ends) && releasedAt(lift).isAfter(begins))
                .flatMap(lift -> lift.legs().stream())
                .filter(leg -> !leg.carrying().isEmpty())
                .filter(leg -> leastM(leg, middle) < circle[2] + STRIP_M - 0.01)
                .count();
    }

    private static Instant releasedAt(Rotation lift) {
        return lift.drops().get(lift.drops().size() - 1).releasedAt();
    }

    private static Instant instant(SmallDay day, LocalTime local) {
        return day.job().date().atTime(local).atZone(day.job().zone()).toInstant();
    }

    /** The same plan over the same zone is refused or not by the hours in which it holds alone. */
    @Test
    void the_re_check_knows_when_a_leg_is_flown() {
        Zone evening =
                zone(
                        Zone.Rule.NO_OVERFLIGHT,
                        new double[] {0, 500, 60, 0},
                        hours("20:00", "21:00"));
        SmallDay day = day(evening);
        Plan plan = planned(day);
        Rotation toS1 =
                plan.steps().stream()
                        .flatMap(step -> step.rotation().stream())
                        .filter(ZoneHoursTest::goesToS1)
                        .findFirst()
                        .orElseThrow();
        LocalTime hooked = toS1.hookedAt().atZone(day.job().zone()).toLocalTime();
        LocalTime released =
                toS1.drops().get(0).releasedAt().atZone(day.job().zone()).toLocalTime();

        assertThat(codes(day, plan, evening, new Hours(hooked, released)))
                .contains("LEG_IN_ZONE A-S1");
        // It holds again from the moment in which the last has gone by, and until the first comes.
        assertThat(codes(day, plan, evening, new Hours(LocalTime.of(1, 0), LocalTime.of(5, 0))))
                .isEmpty();
    }

    private static Set<String> codes(SmallDay day, Plan plan, Zone zone, Hours other) {
        Zone then =
                new Zone(
                        zone.id(),
                        zone.name(),
                        zone.outline(),
                        zone.radiusM(),
                        zone.rule(),
                        zone.kinds(),
                        zone.minAglM(),
                        zone.closedFrom(),
                        zone.closedUntil(),
                        other,
                        zone.source());
        return new PlanVerifier()
                .check(day.zone(then).job(), day.ground(), plan).violations().stream()
                        .map(one -> one.code() + " " + one.subject())
                        .collect(Collectors.toSet());
    }

    @Test
    void a_plan_that_keeps_the_hours_to_itself_is_refused() {
        SmallDay day =
                day(
                        zone(
                                Zone.Rule.NO_OVERFLIGHT,
                                new double[] {0, 500, 60, 0},
                                hours("20:00", "21:00")));
        Plan plan = planned(day);
        SmallDay silent =
                new SmallDay(day.job(), day.ground(), plan).silentOn(FindingCode.ZONE_HOURS);

        assertThat(
                        new PlanVerifier()
                                .check(silent.job(), silent.ground(), silent.plan())
                                .violations())
                .singleElement()
                .satisfies(
                        one -> {
                            assertThat(one.code()).isEqualTo(FindingCode.STATED_WRONG);
                            assertThat(one.subject()).isEqualTo("Z2");
                        });
    }
}
