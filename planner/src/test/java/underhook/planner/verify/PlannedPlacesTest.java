package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static underhook.planner.verify.SmallDay.geo;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Hours;
import underhook.core.job.HoverTable;
import underhook.core.job.Load;
import underhook.core.job.Place;
import underhook.core.job.PlaceKind;
import underhook.core.job.Walk;
import underhook.core.job.WeatherHour;
import underhook.core.job.Zone;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.unit.Units;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;

/**
 * What a planned day says of its places, over invented ground; the small day's figures are worked out by
 * hand, and each plan is re-checked.
 */
class PlannedPlacesTest {
    private static final GridShape SHAPE = new GridShape(-2500, -2500, 10, 500, 500);

    private static SmallDay over(DoubleBinaryOperator heightM) {
        return with(
                SmallDay.good(),
                "ground",
                new Ground(
                        SmallDay.FRAME, GridHeightField.of(SHAPE, heightM), Optional.empty(), 0));
    }

    private static Plan planned(SmallDay day) {
        Plan plan =
                DayPlanner.plan(
                                day.job(),
                                day.ground(),
                                new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false),
                                (what, share) -> {})
                        .fold((made, findings) -> made, refused -> fail(refused));
        assertThat(new PlanVerifier().check(day.job(), day.ground(), plan).violations()).isEmpty();
        return plan;
    }

    private static Plan fail(List<Finding> refused) {
        throw new AssertionError(refused);
    }

    private static List<Finding> found(Plan plan, FindingCode code) {
        return plan.findings().stream().filter(finding -> finding.code() == code).toList();
    }

    private static SmallDay windier(SmallDay day, double windMPerS) {
        return day.inJob(
                "weather",
                with(
                        day.job().weather(),
                        "hours",
                        day.job().weather().hours().stream()
                                .map(row -> with(row, "windMPerS", windMPerS))
                                .toList()));
    }

    /**
     * By hand: 1028 hPa are 14.75 above standard, some 122 m of pressure altitude less: A at 100 m lies below
     * the table's 0 m, S1 at 150 m does not.
     */
    @Test
    void air_outside_the_table_is_told_of_the_end_that_has_it() {
        SmallDay high = SmallDay.good();
        high =
                high.inJob(
                        "weather",
                        with(
                                high.job().weather(),
                                "hours",
                                high.job().weather().hours().stream()
                                        .map(row -> with(row, "qnhPa", 102_800.0))
                                        .toList()));

        Finding toS1 = refusedFor(high, "B3", FindingCode.CHART_RANGE);

        assertThat(toS1.message())
                .startsWith("The air at A lies outside the hover table")
                .endsWith(
                        "at best, at A, the pressure altitude is "
                                + toS1.value()
                                + " m and the table runs from 0 to 500 m.");
        assertThat(toS1.value()).startsWith("-2");
        assertThat(toS1.limit()).isEqualTo("0");
        assertThat(toS1.unit()).isEqualTo("m");
        assertThat(toS1.source()).isEqualTo(high.job().machine().hover().source());
    }

    /** 10 °C in the morning and 21 from then on: both above 9 °C, where the table now ends; the cooler is told. */
    @Test
    void air_too_warm_for_the_table_is_told_of_its_coolest_hour() {
        SmallDay day = SmallDay.good();
        HoverTable table = day.job().machine().hover();
        List<WeatherHour> hours = new ArrayList<>(day.job().weather().hours());
        for (int i = 0; i < hours.size() - 1; i++) {
            hours.set(i, with(hours.get(i), "temperatureK", 294.15));
        }
        SmallDay warm =
                day.machine("hover", with(table, "temperatureK", List.of(273.15, 282.15)))
                        .inJob("weather", with(day.job().weather(), "hours", hours));

        Finding toS1 = refusedFor(warm, "B3", FindingCode.CHART_RANGE);

        assertThat(toS1.message())
                .startsWith("The air at A, S1 lies outside the hover table in every hour")
                .endsWith("the temperature is 10 °C and the table runs from 0 to 9 °C.");
        assertThat(List.of(toS1.value(), toS1.limit(), toS1.unit()))
                .containsExactly("10", "9", "°C");
    }

    /** By hand: three times 5 m/s are 29.2 kt, the limit of 12 m/s is 23.3; three times 7 m/s are below its 16. */
    @Test
    void wind_over_its_limit_is_told_of_the_end_that_has_it() {
        SmallDay day = SmallDay.good();
        SmallDay windy =
                day.inJob(
                        "places",
                        day.job().places().stream()
                                .map(
                                        place ->
                                                place.id().equals(pid("A"))
                                                        ? with(place, "exposureFactor", 3.0)
                                                        : place)
                                .toList());

        Finding over = refusedFor(windy, "B1", FindingCode.WIND_LIMIT);

        assertThat(over.message()).isEqualTo("The wind at A is over its limit all day.");
        assertThat(over.unit()).isEqualTo("kt");
        assertThat(List.of(over.value(), over.limit()))
                .isIn(List.of("29.2", "23.3"), List.of("40.9", "31.1"));
    }

    /**
     * Trees of 14 m stand 6 m round A, or of 11 or 17; under 20 m of line the rotor needs 5 m above them. By hand
     * 20 - 14 - 5 = 1 m, less than the 3 that are not known; where it is hooked up and nowhere else.
     */
    @Test
    void little_room_is_told_where_a_load_is_hooked_up() {
        SmallDay day = SmallDay.good();
        for (String place : List.of("S1", "S2")) {
            day = day.place(place, "clearingRadiusM", 1000.0);
        }
        SmallDay open = day.place("A", "clearingRadiusM", 1000.0);
        SmallDay among =
                day.place("A", "canopyM", OptionalDouble.of(14))
                        .place("A", "canopySpreadM", 3.0)
                        .place("A", "clearingRadiusM", 6.0);

        assertThat(found(planned(open), FindingCode.ROOM_NEAR)).isEmpty();
        assertThat(found(planned(among), FindingCode.ROOM_NEAR))
                .extracting(Finding::subject)
                .containsOnly("A");
    }

    /** A hole begins 6 m before the nose and as far on either side; a rotor of 5 m with 5 m to keep needs 10. */
    @Test
    void a_hole_of_the_terrain_is_named_where_it_leaves_no_room() {
        SmallDay day = SmallDay.good();
        SmallDay holed =
                new SmallDay(
                        day.job(),
                        new Ground(SmallDay.FRAME, SmallDay.holedNorthOfS2(), Optional.empty(), 0),
                        day.plan());

        Finding none = refusedFor(holed, "B1", FindingCode.NO_LINE_LONG_ENOUGH);

        assertThat(none.message())
                .contains(" m to ground of unknown height and needs ")
                .endsWith(" m. Perhaps a terrain file that has heights there.");
    }

    private static Finding refusedFor(SmallDay day, String load, FindingCode code) {
        List<Finding> all =
                DayPlanner.plan(
                                day.job(),
                                day.ground(),
                                new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false),
                                (what, share) -> {})
                        .fold((made, findings) -> made.findings(), refused -> refused);
        return all.stream()
                .filter(one -> one.subject().equals(load) && one.code() == code)
                .findFirst()
                .orElseThrow(() -> new AssertionError(all));
    }

    @Test
    void a_pole_is_not_stood_up_where_nobody_guys() {
        // P9 is fetched from S1 and would be stood up at the laydown, whose loader only hooks.
        SmallDay day = SmallDay.good();
        List<Load> loads = new ArrayList<>(day.job().loads());
        loads.add(SmallDay.load("P9", "pole", "S1", "A", 300));

        Plan plan = planned(day.inJob("loads", loads));

        assertThat(plan.leftOut())
                .filteredOn(out -> out.load().equals(SmallDay.lid("P9")))
                .extracting(LeftOut::code)
                .containsExactly(FindingCode.NO_CREW);
    }

    /** P9 comes to the laydown as the last load: G guys it for 600 s more, while the loader may hook. */
    @Test
    void a_pole_is_stood_up_at_a_laydown_by_who_stays_there() {
        SmallDay day = withPoleAtLaydown(SmallDay.crew("G", "A", Set.of(Crew.Role.GUY), true));

        Plan plan = planned(day);

        assertThat(plan.leftOut())
                .extracting(LeftOut::load)
                .doesNotContain(SmallDay.lid("P9"))
                .contains(SmallDay.lid("X1"));
    }

    @Test
    void a_pole_is_not_stood_up_at_a_laydown_by_the_only_one_who_hooks_there() {
        Set<Crew.Role> all = Set.of(Crew.Role.values());
        SmallDay day = withPoleAtLaydown().crew("L", "roles", all);

        Plan plan = planned(day);

        assertThat(plan.leftOut())
                .filteredOn(out -> out.load().equals(SmallDay.lid("P9")))
                .singleElement()
                .satisfies(
                        out -> {
                            assertThat(out.code()).isEqualTo(FindingCode.NO_CREW);
                            assertThat(out.message())
                                    .contains("nobody stays to receive but who guys it meanwhile");
                        });
    }

    private static SmallDay withPoleAtLaydown(Crew... more) {
        SmallDay day = SmallDay.good();
        List<Load> loads = new ArrayList<>(day.job().loads());
        loads.add(SmallDay.load("P9", "pole", "S1", "A", 300));
        List<Crew> crews = new ArrayList<>(day.job().crews());
        crews.addAll(List.of(more));
        return day.inJob("loads", loads).inJob("crews", crews);
    }

    /** Duty is from 05:45 on and lasts twelve hours; Q, who alone hooks and receives at S1, comes at 20:00. */
    @Test
    void who_comes_when_the_day_is_over_is_nobody() {
        SmallDay late = SmallDay.good().crew("Q", "availableFrom", SmallDay.at(13 * 3600));

        assertThat(refusedFor(late, "B2", FindingCode.NO_CREW).message())
                .contains("Whoever may receive can be at S1 only when");
        assertThat(refusedFor(late, "W1", FindingCode.NO_HANDLER).message())
                .contains("Whoever may hook can be at S1 only when");
    }

    /** More time would not help: who comes too late is told, though no time was left to look at anything. */
    @Test
    void who_is_missing_is_told_of_a_search_that_was_cut_too() {
        SmallDay late = SmallDay.good().crew("Q", "availableFrom", SmallDay.at(13 * 3600));

        List<Finding> said =
                DayPlanner.plan(
                                late.job(),
                                late.ground(),
                                new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> true),
                                (what, share) -> {})
                        .fold((made, findings) -> made.findings(), refused -> refused);

        assertThat(said)
                .filteredOn(one -> one.subject().equals("B2"))
                .extracting(Finding::code)
                .contains(FindingCode.NO_CREW)
                .doesNotContain(FindingCode.SEARCH_CUT);
    }

    /** By hand: a rise of 0.2 is 11.31°, up 12; over the 7° allowed by 4.31, up 5. P would get in at A and nowhere else. */
    @Test
    void a_crew_that_cannot_get_in_for_the_slope_says_by_how_much() {
        SmallDay steep =
                with(
                        SmallDay.good(),
                        "ground",
                        new Ground(
                                SmallDay.FRAME,
                                SmallDay.field(
                                        (e, n) -> Math.abs(e) < 8 && Math.abs(n) < 8 ? 0.2 * n : 0),
                                Optional.empty(),
                                0));

        assertThat(refusedFor(steep, "B1", FindingCode.NO_CREW).message())
                .contains(
                        "A slopes 12°, 5° more than landing-slope-deg allows: nobody gets in there.")
                .contains("Perhaps another place of kind landing");
        assertThat(refusedFor(steep, "A", FindingCode.LANDING_TOO_STEEP).message())
                .startsWith("No crew is flown from here: A slopes 12°");
    }

    /** By hand: Q stays at S1, nobody at S2, and the crew that moves may not hook. */
    @Test
    void a_load_from_site_to_site_says_who_is_missing_at_which_end() {
        List<Load> toQ = List.of(SmallDay.load("B9", "bag", "S2", "S1", 80));
        assertThat(why(toQ, Set.of(Crew.Role.HOOK, Crew.Role.RECEIVE)))
                .contains("No crew that may hook can come to S2");
        assertThat(why(toQ, Set.of(Crew.Role.HOOK)))
                .contains("one crew would have to come there and another to S1")
                .contains("with the role hook");
    }

    /** By hand: P and R both begin at S1, nobody stays at a site; one walks to S2 to hook, the other receives at S1. */
    @Test
    void two_crews_come_to_a_load_from_site_to_site() {
        SmallDay day = SmallDay.good();
        List<Crew> crews = new ArrayList<>();
        for (Crew crew : day.job().crews()) {
            if (crew.id().value().equals("P")) {
                Set<Crew.Role> roles = Set.of(Crew.Role.HOOK, Crew.Role.RECEIVE, Crew.Role.GUY);
                Crew there = with(with(crew, "roles", roles), "start", pid("S1"));
                crews.add(there);
                crews.add(with(there, "id", new CrewId("R")));
            } else if (!crew.id().value().equals("Q")) {
                crews.add(crew);
            }
        }
        List<Load> loads = List.of(SmallDay.load("B9", "bag", "S2", "S1", 80));

        Plan plan = planned(day.inJob("crews", crews).inJob("loads", loads));

        assertThat(plan.leftOut()).isEmpty();
        assertThat(plan.crews())
                .filteredOn(stay -> stay.doing().startsWith("works"))
                .extracting(stay -> stay.place().value())
                .containsExactlyInAnyOrder("S1", "S2");
    }

    /** By hand: P stands the pole up at S2 and hooks the empties there; nobody else is at S2 all day. */
    @Test
    void who_guys_a_pole_hooks_nothing_meanwhile() {
        SmallDay day = SmallDay.good();
        Set<Crew.Role> all = Set.of(Crew.Role.HOOK, Crew.Role.RECEIVE, Crew.Role.GUY);
        List<Crew> crews = new ArrayList<>();
        for (Crew crew : day.job().crews()) {
            boolean isP = crew.id().value().equals("P");
            crews.add(isP ? with(with(crew, "roles", all), "start", pid("S2")) : crew);
        }
        List<Load> loads =
                List.of(
                        SmallDay.load("P2", "pole", "A", "S2", 300),
                        SmallDay.load("W2", "back", "S2", "A", 60));
        SmallDay short60 = guying(day.inJob("crews", crews).inJob("loads", loads), 60);

        Plan plan = planned(short60);

        assertThat(plan.leftOut()).isEmpty();
        SmallDay longer = guying(short60, 3600);
        assertThat(new PlanVerifier().check(longer.job(), longer.ground(), plan).violations())
                .extracting(one -> one.code() + " " + one.subject())
                .contains("HANDLER_ABSENT W2");
    }

    private static SmallDay guying(SmallDay day, double busyAfterS) {
        return day.inJob(
                "rules",
                with(
                        day.job().rules(),
                        "kinds",
                        day.job().rules().kinds().stream()
                                .map(
                                        kind ->
                                                kind.standsUp()
                                                        ? with(kind, "busyAfterS", busyAfterS)
                                                        : kind)
                                .toList()));
    }

    @Test
    void a_load_to_a_laydown_where_nobody_receives_says_so() {
        SmallDay day = SmallDay.good();
        List<Crew> hooking =
                day.job().crews().stream()
                        .map(
                                crew ->
                                        crew.start().equals(pid("A")) && crew.stays()
                                                ? with(crew, "roles", Set.of(Crew.Role.HOOK))
                                                : crew)
                        .toList();
        assertThat(
                        refusal(
                                day.inJob("crews", hooking),
                                List.of(SmallDay.load("W9", "bag", "S1", "A", 60))))
                .contains("Nobody who stays at A may receive");
    }

    /** By hand: 1930 kg of hover mass; 1830 with a crew of 700 and the lighter line, 200 of load: 100 too many. */
    @Test
    void a_load_that_no_fuel_lets_lift_is_said_to_be_too_heavy() {
        SmallDay heavy = SmallDay.good().machine("crewMassKg", 700.0);
        assertThat(refusal(heavy, List.of(SmallDay.load("B9", "bag", "A", "S2", 200))))
                .startsWith(
                        "It cannot be lifted with any fuel, at no hour: with none aboard it is still "
                                + "100 kg too heavy;");
    }

    /** A bag too heavy is two bags; half a pole is no pole. */
    @Test
    void only_what_can_be_split_is_said_to_be() {
        SmallDay heavy = SmallDay.good().machine("crewMassKg", 700.0);
        SmallDay weakHook = SmallDay.good().machine("hookLimitKg", 100.0);
        Load bag = SmallDay.load("B9", "bag", "A", "S2", 200);
        Load pole = SmallDay.load("P9", "pole", "A", "S2", 200);

        assertThat(refusal(heavy, List.of(bag))).endsWith("Perhaps it can be split.");
        assertThat(refusal(weakHook, List.of(bag))).endsWith("Perhaps it can be split.");
        assertThat(refusal(heavy, List.of(pole)))
                .startsWith("It cannot be lifted")
                .endsWith("Perhaps on a cooler day, from nearer by or with a stronger machine.");
        assertThat(refusal(weakHook, List.of(pole)))
                .startsWith("With the lightest line")
                .endsWith("Perhaps a machine with a stronger hook.");
    }

    /** By hand: H is the only level place across, 70 min on foot from S2; nobody walks there from A. */
    @Test
    void whoever_cannot_walk_all_the_way_is_flown_and_walks_the_rest_however_far() {
        SmallDay day = SmallDay.good();
        List<Place> places = new ArrayList<>(day.job().places());
        places.add(with(SmallDay.place("H", PlaceKind.LANDING, 400, -300), "standing", true));
        SmallDay far =
                day.inJob("places", places)
                        .inJob("walks", List.of(new Walk(pid("H"), pid("S2"), 4200)))
                        .inJob("loads", List.of(SmallDay.load("B9", "bag", "A", "S2", 80)));

        Plan plan = planned(far);

        assertThat(plan.leftOut()).isEmpty();
        assertThat(plan.crews())
                .filteredOn(stay -> stay.doing().equals("walks to S2"))
                .extracting(stay -> Duration.between(stay.fromAt(), stay.toAt()))
                .containsExactly(Duration.ofMinutes(70));
    }

    /** B9 for S2, where whoever receives it has to be flown: H is 5 min on foot from it, K 20. */
    private static SmallDay withLandings() {
        SmallDay day = SmallDay.good();
        List<Place> places = new ArrayList<>(day.job().places());
        for (Place landing :
                List.of(
                        SmallDay.place("H", PlaceKind.LANDING, 400, -300),
                        SmallDay.place("K", PlaceKind.LANDING, 1500, -300))) {
            places.add(with(landing, "standing", true));
        }
        Walk near = new Walk(pid("H"), pid("S2"), 300);
        Walk far = new Walk(pid("K"), pid("S2"), 1200);
        return day.inJob("places", places)
                .inJob("walks", List.of(near, far))
                .inJob("loads", List.of(SmallDay.load("B9", "bag", "A", "S2", 80)));
    }

    private static SmallDay shut(SmallDay day, double[] eastNorthRadiusAgl) {
        return day.zone(PlanVerifierTest.zone(Zone.Rule.NO_OVERFLIGHT, eastNorthRadiusAgl));
    }

    private static List<String> flownTo(Plan plan) {
        return plan.crews().stream()
                .map(CrewStay::doing)
                .filter(doing -> doing.startsWith("flown to"))
                .toList();
    }

    /** No way leads to the nearer of two landing places, which lies in the middle of a closed zone. */
    @Test
    void people_are_flown_to_a_landing_place_that_can_be_reached() {
        SmallDay closed = shut(withLandings(), SmallDay.v(400, -300, 150, 0));

        assertThat(flownTo(planned(withLandings()))).containsExactly("flown to H");
        Plan plan = planned(closed);
        assertThat(plan.leftOut()).isEmpty();
        assertThat(flownTo(plan)).containsExactly("flown to K");
    }

    @Test
    void where_no_way_leads_to_any_landing_place_that_is_the_reason() {
        Zone.Rule rule = Zone.Rule.NO_OVERFLIGHT;
        SmallDay closed =
                withLandings()
                        .inJob(
                                "zones",
                                List.of(
                                        PlanVerifierTest.zone(rule, SmallDay.v(400, -300, 150, 0)),
                                        PlanVerifierTest.zone(
                                                rule, SmallDay.v(1500, -300, 150, 0))));

        assertThat(refusedFor(closed, "B9", FindingCode.NO_CREW).message())
                .startsWith(
                        "Whoever may receive at S2 would be flown from A to H or A to K, and no way"
                                + " was found there");
    }

    @Test
    void where_the_machine_cannot_leave_its_place_that_is_the_reason() {
        SmallDay closed =
                shut(withLandings(), SmallDay.v(400, -300, 150, 0)).inJob("machineStart", pid("H"));

        assertThat(refusedFor(closed, "B9", FindingCode.NO_WAY).message())
                .startsWith("The machine begins the day at H, and no way was found from there");
    }

    /** Fuel for part of the day is aboard; A has people who may fill, and no fuel. */
    @Test
    void fuel_that_is_kept_at_a_landing_place_alone_is_fetched_there() {
        SmallDay day = SmallDay.good().machine("fuelUsableKg", 105.0);
        List<Place> places = new ArrayList<>(day.job().places());
        Place landing = with(SmallDay.place("K", PlaceKind.LANDING, 300, 0), "standing", true);
        places.add(with(landing, "fuel", true));
        List<Crew> crews = new ArrayList<>(day.job().crews());
        crews.add(SmallDay.crew("F", "K", Set.of(Crew.Role.REFUEL), true));
        SmallDay elsewhere =
                day.inJob("places", places).inJob("crews", crews).place("A", "fuel", false);

        Plan plan = planned(elsewhere);

        assertThat(plan.leftOut())
                .extracting(LeftOut::load)
                .isEqualTo(planned(day).leftOut().stream().map(LeftOut::load).toList());
        assertThat(plan.steps())
                .filteredOn(step -> step.kind() == StepKind.REFUEL)
                .isNotEmpty()
                .allMatch(step -> step.from().equals(pid("K")));
    }

    /** Ground that rises by 0.02, 1.2°, and by 0.2, 11.4°; the rules land people on 7° at most. By hand. */
    @Test
    void a_site_where_somebody_asks_to_land_says_whether_it_is_the_slope() {
        assertThat(askedAtS2(0.02)).contains(FindingCode.LANDING_AT_SITE);
        assertThat(askedAtS2(0.02)).doesNotContain(FindingCode.LANDING_TOO_STEEP);
        assertThat(askedAtS2(0.2)).contains(FindingCode.LANDING_TOO_STEEP);
        assertThat(askedAtS2(0.2)).doesNotContain(FindingCode.LANDING_AT_SITE);
    }

    private static List<FindingCode> askedAtS2(double riseRatio) {
        Plan plan =
                planned(
                        over((east, north) -> 100 + riseRatio * Math.max(0, east - 900))
                                .place("S2", "landingAsked", true));
        return plan.findings().stream()
                .filter(one -> one.subject().equals("S2"))
                .map(Finding::code)
                .toList();
    }

    /** Flown to its end the day outlasts by 10 s a forecast that is cut there. */
    @Test
    void a_day_ends_with_its_forecast() {
        SmallDay day = SmallDay.good();
        Plan whole = planned(day);
        Instant last = whole.steps().get(whole.steps().size() - 1).endAt();
        Instant until = last.minusSeconds(10);

        Plan cut = planned(day.inJob("weather", with(day.job().weather(), "until", until)));

        assertThat(cut.steps()).isNotEmpty().allMatch(step -> !step.endAt().isAfter(until));
    }

    private static String why(List<Load> loads, Set<Crew.Role> rolesOfQ) {
        SmallDay day = SmallDay.good();
        List<Crew> crews =
                day.job().crews().stream()
                        .map(
                                crew ->
                                        crew.id().value().equals("Q")
                                                ? with(crew, "roles", rolesOfQ)
                                                : crew)
                        .toList();
        return refusal(day.inJob("crews", crews), loads);
    }

    /** What is said of the first of these loads alone, of which no plan is possible. */
    private static String refusal(SmallDay day, List<Load> loads) {
        SmallDay alone = day.inJob("loads", loads);
        return DayPlanner.plan(
                        alone.job(),
                        alone.ground(),
                        new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false),
                        (what, share) -> {})
                .fold(
                        (made, findings) -> {
                            throw new AssertionError(made);
                        },
                        refused ->
                                refused.stream()
                                        .filter(
                                                one ->
                                                        one.subject()
                                                                .equals(loads.get(0).id().value()))
                                        .filter(one -> one.severity() == Severity.STOP)
                                        .map(Finding::message)
                                        .findFirst()
                                        .orElseThrow());
    }

    @Test
    void a_knoll_gives_few_cues_of_height_and_says_where_the_hook_will_be() {
        // S1 on top of 10 m of knoll, 100 m around it 0.6 m are left: 110 m, a line of 20 m and
        // a bag 1 m high, which touches the ground before the line goes slack.
        Plan plan =
                planned(
                        over(
                                (east, north) -> {
                                    double off = Math.hypot(east, north - 1000) / 60;
                                    return 100 + 10 * Math.exp(-off * off);
                                }));

        assertThat(found(plan, FindingCode.FEW_HEIGHT_CUES))
                .singleElement()
                .satisfies(
                        finding -> {
                            assertThat(finding.subject()).isEqualTo("S1");
                            assertThat(finding.severity()).isEqualTo(Severity.NOTE);
                            assertThat(finding.value()).isEqualTo("360");
                            // 131, 151 and 141 m, less 14 cm for the tip between its cells, over
                            // 0.3048 m/ft, rounded up.
                            assertThat(finding.message())
                                    .contains("on 360° of the horizon")
                                    .contains(
                                            "131 m (430 ft) AMSL with the line 20 m and 1 m of load")
                                    .contains("495 and 463 ft with 20 and 10 m to go")
                                    .contains("look the place over");
                        });
    }

    @Test
    void the_lee_is_told_from_ten_knots_on() {
        // North of S1 the ground rises by 0.3, 16.7°; the wind is from north, 9.7 kt, then 10.1.
        SmallDay day = over((east, north) -> 100 + 0.3 * Math.max(0, north - 990));

        assertThat(found(planned(day), FindingCode.LEE)).isEmpty();
        assertThat(found(planned(windier(day, 5.2)), FindingCode.LEE))
                .singleElement()
                .satisfies(
                        finding -> {
                            assertThat(finding.subject()).isEqualTo("S1");
                            assertThat(finding.severity()).isEqualTo(Severity.CAUTION);
                            assertThat(finding.message()).startsWith("06:00 to 17:00");
                        });
    }

    /** Closed on three sides of S1: in from the south into the wind, out again the same way. */
    private static SmallDay cornered() {
        List<GeoPoint> ring =
                List.of(
                        geo(-90, 905),
                        geo(-90, 1120),
                        geo(90, 1120),
                        geo(90, 905),
                        geo(45, 905),
                        geo(45, 1050),
                        geo(-45, 1050),
                        geo(-45, 905));
        return SmallDay.good()
                .zone(
                        new Zone(
                                "Z1",
                                "Z1",
                                ring,
                                0,
                                Zone.Rule.NO_OVERFLIGHT,
                                List.of(),
                                0,
                                Optional.empty(),
                                Optional.empty(),
                                Hours.ALL_DAY,
                                "zones"));
    }

    @Test
    void a_way_out_with_a_tailwind_says_what_it_costs() {
        Plan plan = planned(cornered());

        Rotation rotation =
                plan.steps().stream()
                        .map(Step::rotation)
                        .flatMap(Optional::stream)
                        .filter(one -> one.drops().get(0).place().equals(pid("S1")))
                        .findFirst()
                        .orElseThrow();
        Drop drop = rotation.drops().get(0);
        assertThat(drop.departureTrackTrueRad()).isCloseTo(Math.PI, within(0.01));
        assertThat(Units.wrapPiRad(drop.approachFromTrueRad() - Math.PI))
                .isCloseTo(0, within(0.01));
        // 5 m/s are 9.7 kt; 1920 kg of hover less machine 1200, line 30, fuel and 5 of its reading.
        long spareKg = (long) Math.floor(1920 - 1200 - 30 - rotation.fuelAtHookKg() - 5);
        assertThat(drop.reasons())
                .contains(
                        "way out: tailwind 10 kt, no credit for wind; hover power until about 34 kt"
                                + " of ground speed, "
                                + spareKg
                                + " kg to spare");
        assertThat(drop.reasons()).anyMatch(reason -> reason.endsWith("passes Z1"));
    }

    @Test
    void descents_on_the_spot_are_a_caution_where_they_are_timed_too_fast() {
        // 3 m/s are 590 ft/min; at 1.5 m/s nothing is faster than training allows.
        Finding fast = found(planned(SmallDay.good()), FindingCode.VORTEX_RING).get(0);
        Finding slow =
                found(
                                planned(SmallDay.good().machine("descentMPerS", 1.5)),
                                FindingCode.VORTEX_RING)
                        .get(0);

        assertThat(fast.severity()).isEqualTo(Severity.CAUTION);
        assertThat(fast.limit()).isEqualTo("300");
        assertThat(slow.severity()).isEqualTo(Severity.NOTE);
        assertThat(slow.message()).contains("no faster than 290 ft/min");
    }
}
