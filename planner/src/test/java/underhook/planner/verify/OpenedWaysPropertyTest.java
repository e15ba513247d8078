package underhook.planner.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static underhook.planner.verify.SmallDay.geo;
import static underhook.planner.verify.SmallDay.lid;
import static underhook.planner.verify.SmallDay.pid;
import static underhook.planner.verify.SmallDay.with;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.job.CrossingRule;
import underhook.core.job.LineItem;
import underhook.core.job.MapFeature;
import underhook.core.job.PlaceKind;
import underhook.core.job.WeatherHour;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.Plan;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;

/**
 * Whoever takes the measure that a refusal names sees the way open.
 *
 * <p>Around S2 lie one or two rings that may not be passed, of seeded kinds and widths; or a zone or a
 * house over it. The measures are read from the message as its reader would, applied to the job, and the
 * day is planned again and re-checked.
 */
class OpenedWaysPropertyTest {
    private static final int DAYS = 24;

    private static final List<MapFeature.Kind> LINES =
            List.of(
                    MapFeature.Kind.ROAD,
                    MapFeature.Kind.TRACK,
                    MapFeature.Kind.TRAIL,
                    MapFeature.Kind.RAILWAY,
                    MapFeature.Kind.WATER,
                    MapFeature.Kind.PROTECTED);

    private static Outcome<Plan> outcome(SmallDay day) {
        return DayPlanner.plan(
                day.job(),
                day.ground(),
                new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false),
                (what, share) -> {});
    }

    /** Whether B1 is flown, by a plan that stands the re-check. */
    private static boolean isFlown(SmallDay day) {
        Optional<Plan> plan =
                outcome(day).fold((made, all) -> Optional.of(made), all -> Optional.empty());
        plan.ifPresent(
                made ->
                        assertThat(
                                        new PlanVerifier()
                                                .check(day.job(), day.ground(), made)
                                                .violations())
                                .isEmpty());
        return plan.stream()
                .flatMap(made -> made.steps().stream())
                .flatMap(step -> step.rotation().stream())
                .anyMatch(rotation -> rotation.loads().contains(lid("B1")));
    }

    private static Finding refusal(SmallDay day, FindingCode code) {
        List<Finding> all =
                outcome(day).fold((plan, findings) -> plan.findings(), refused -> refused);
        return all.stream()
                .filter(one -> one.code() == code && one.subject().equals("B1"))
                .findFirst()
                .orElseThrow(() -> new AssertionError(all));
    }

    /** Only the bag to S2, with somebody there, and nothing on the map. */
    private static SmallDay bare() {
        SmallDay day = SmallDay.good();
        return day.crew("Q", "start", pid("S2"))
                .inJob("features", List.of())
                .inJob("zones", List.of())
                .inJob("wires", List.of())
                .inJob(
                        "loads",
                        day.job().loads().stream()
                                .filter(load -> load.id().equals(lid("B1")))
                                .toList());
    }

    private static List<GeoPoint> ring(double radiusM) {
        List<GeoPoint> ring = new ArrayList<>();
        for (int i = 0; i <= 12; i++) {
            double bearing = i % 12 * Math.PI / 6;
            ring.add(geo(1000 + radiusM * Math.sin(bearing), radiusM * Math.cos(bearing)));
        }
        return ring;
    }

    private static MapFeature feature(
            String id, MapFeature.Kind kind, MapFeature.Shape shape, List<GeoPoint> outline) {
        return new MapFeature(
                id,
                kind,
                shape,
                outline,
                shape == MapFeature.Shape.POINT ? 60 : 5,
                CrossingRule.NEVER,
                OptionalDouble.empty(),
                false,
                "map");
    }

    /** One more thing that closes the way, of a seeded kind. */
    private static SmallDay closed(SmallDay day, String id, double radiusM, Random random) {
        int kind = random.nextInt(LINES.size() + 1);
        if (kind == LINES.size()) {
            List<Wire> wires = new ArrayList<>(day.job().wires());
            Wire wire = SmallDay.good().job().wires().get(0);
            wires.add(with(with(wire, "id", id), "supports", ring(radiusM)));
            return day.inJob("wires", wires);
        }
        List<MapFeature> features = new ArrayList<>(day.job().features());
        features.add(feature(id, LINES.get(kind), MapFeature.Shape.LINE, ring(radiusM)));
        return day.inJob("features", features);
    }

    /** What the message offers after "Perhaps": one of these, each of which may be several together. */
    private static List<List<String>> measures(Finding refusal) {
        String message = refusal.message();
        assertThat(message).contains(" Perhaps ");
        String offered = message.substring(message.lastIndexOf(" Perhaps ") + 9);
        return Arrays.stream(offered.substring(0, offered.length() - 1).split(" or "))
                .map(one -> List.of(one.replace(" and its owner's word", "").split(" and ")))
                .toList();
    }

    private static SmallDay taken(SmallDay day, List<String> measures) {
        SmallDay opened = day;
        for (String measure : measures) {
            opened = taken(opened, measure);
        }
        return opened;
    }

    /** The job with a measure taken. */
    private static SmallDay taken(SmallDay day, String measure) {
        Matcher laydown = Pattern.compile("the laydown (\\w+), from which.*").matcher(measure);
        if (laydown.matches()) {
            return day.load("B1", "from", pid(laydown.group(1)))
                    .crew("L", "start", pid(laydown.group(1)))
                    .inJob("machineStart", pid(laydown.group(1)));
        }
        String id = measure.replaceAll(".*\\b([FWZ]\\d)\\b.*", "$1");
        boolean away =
                measure.startsWith("nobody at") || measure.startsWith("a permission for zone");
        SmallDay wires =
                day.inJob(
                        "wires",
                        day.job().wires().stream()
                                .map(
                                        wire ->
                                                wire.id().equals(id)
                                                        ? with(
                                                                wire,
                                                                "crossing",
                                                                CrossingRule.ALLOWED)
                                                        : wire)
                                .toList());
        CrossingRule rule =
                measure.startsWith("a guard") ? CrossingRule.GUARDED : CrossingRule.ALLOWED;
        return wires.inJob(
                        "zones",
                        day.job().zones().stream().filter(zone -> !zone.id().equals(id)).toList())
                .inJob(
                        "features",
                        day.job().features().stream()
                                .filter(one -> !away || !one.id().equals(id))
                                .map(one -> one.id().equals(id) ? with(one, "crossing", rule) : one)
                                .toList());
    }

    @Test
    void one_ring_is_opened_by_its_measure_and_each_of_two_is_needed() {
        Random random = new Random(20260908);
        TreeSet<String> seen = new TreeSet<>();
        for (int i = 0; i < DAYS; i++) {
            double innerM = 200 + random.nextInt(100);
            SmallDay day = closed(bare(), "F1", innerM, random);
            boolean twice = random.nextBoolean();
            day = twice ? closed(day, "F2", innerM + 90 + random.nextInt(150), random) : day;
            Finding refusal = refusal(day, FindingCode.NO_WAY);
            List<List<String>> measures = measures(refusal);

            assertThat(measures).as(refusal.message()).hasSize(1);
            List<String> together = measures.get(0);
            together.forEach(measure -> seen.add(measure.replaceAll(" F\\d.*", "")));
            assertThat(together).as(refusal.message()).hasSize(twice ? 2 : 1);
            assertThat(isFlown(taken(day, together.subList(0, together.size() - 1))))
                    .as(refusal.message())
                    .isFalse();
            assertThat(isFlown(taken(day, together))).as(refusal.message()).isTrue();
        }
        assertThat(seen).containsExactly("a guard at", "a permission for", "an agreement to cross");
    }

    @Test
    void what_covers_a_place_is_opened_by_its_measure() {
        SmallDay zone =
                bare().zone(
                                PlanVerifierTest.zone(
                                        Zone.Rule.NO_OVERFLIGHT, SmallDay.v(1000, 0, 90, 0)));
        SmallDay house =
                bare().inJob(
                                "features",
                                List.of(
                                        feature(
                                                "F1",
                                                MapFeature.Kind.HOUSE,
                                                MapFeature.Shape.POINT,
                                                List.of(geo(1030, 0)))));

        for (SmallDay day : List.of(zone, house)) {
            Finding refusal = refusal(day, FindingCode.NO_WAY);

            assertThat(measures(refusal)).as(refusal.message()).hasSize(1);
            assertThat(isFlown(taken(day, measures(refusal).get(0))))
                    .as(refusal.message())
                    .isTrue();
        }
    }

    @Test
    void what_lies_below_every_last_part_is_opened_with_what_closes_the_way_to_it() {
        SmallDay day = bare();
        day =
                day.inJob(
                        "features",
                        List.of(
                                feature(
                                        "F1",
                                        MapFeature.Kind.ROAD,
                                        MapFeature.Shape.LINE,
                                        ring(60)),
                                feature(
                                        "F2",
                                        MapFeature.Kind.TRAIL,
                                        MapFeature.Shape.LINE,
                                        ring(300))));
        Finding refusal = refusal(day, FindingCode.NO_WAY);

        assertThat(refusal.message()).startsWith("Every last part to S2 would pass F1.");
        assertThat(measures(refusal).get(0)).containsExactly("a guard at F1", "a guard at F2");
        assertThat(isFlown(taken(day, List.of("a guard at F1")))).isFalse();
        assertThat(isFlown(taken(day, measures(refusal).get(0)))).isTrue();
    }

    @Test
    void a_direction_that_only_another_wind_allows_is_flown_in_it_or_once_the_other_is_opened() {
        // Open to the west and east only; the wind of 5 m/s comes from the north, 3 m/s from the
        // side
        // are allowed, and 6 m/s from behind: who comes over F2 in the north needs no other wind.
        SmallDay day = bare().rule("flying.crosswindMPerS", 3.0);
        List<MapFeature> walls = new ArrayList<>();
        for (int side : new int[] {-1, 1}) {
            walls.add(
                    feature(
                            side < 0 ? "F1" : "F2",
                            MapFeature.Kind.PROTECTED,
                            MapFeature.Shape.LINE,
                            List.of(geo(850, side * 80), geo(1150, side * 80))));
        }
        day = day.inJob("features", walls);
        Finding refusal = refusal(day, FindingCode.NO_WAY);

        assertThat(refusal.message()).contains("the wind is too much from behind or the side");
        assertThat(measures(refusal))
                .containsExactly(
                        List.of("a permission for F2"), List.of("another day with another wind"));
        assertThat(isFlown(taken(day, measures(refusal).get(0)))).isTrue();
        List<WeatherHour> fromWest =
                day.job().weather().hours().stream()
                        .map(hour -> with(hour, "windFromTrueRad", SmallDay.WEST))
                        .toList();
        assertThat(isFlown(day.inJob("weather", with(day.job().weather(), "hours", fromWest))))
                .isTrue();
    }

    @Test
    void another_laydown_that_is_named_has_a_way() {
        // A road all round A; S3 becomes a laydown north of it.
        SmallDay day = bare();
        List<GeoPoint> round = ring(300).stream().map(OpenedWaysPropertyTest::atA).toList();
        List<underhook.core.job.Place> places = new ArrayList<>(day.job().places());
        places.add(SmallDay.place("A2", PlaceKind.LAYDOWN, 300, 700));
        SmallDay shut =
                day.inJob("places", places)
                        .inJob(
                                "features",
                                List.of(
                                        feature(
                                                "F1",
                                                MapFeature.Kind.PROTECTED,
                                                MapFeature.Shape.LINE,
                                                round)));
        Finding refusal = refusal(shut, FindingCode.NO_WAY);

        assertThat(measures(refusal))
                .containsExactly(
                        List.of("a permission for F1"),
                        List.of("the laydown A2, from which the ground is open"));
        for (List<String> one : measures(refusal)) {
            assertThat(isFlown(taken(shut, one))).as(refusal.message()).isTrue();
        }
    }

    private static GeoPoint atA(GeoPoint atS2) {
        var p = SmallDay.FRAME.toPlane(atS2);
        return geo(p.eastM() - 1000, p.northM());
    }

    /** The lines reach over the trees, but a load as wide as the clearing hangs among them. */
    @Test
    void what_comes_too_near_is_named_with_its_metres() {
        SmallDay day =
                bare().place("S2", "canopyM", OptionalDouble.of(10))
                        .place("S2", "clearingRadiusM", 1.0);
        Finding refusal = refusal(day, FindingCode.NO_LINE_LONG_ENOUGH);

        assertThat(refusal.message())
                .isEqualTo(
                        "No line in stock leaves a way in to S2 with room: on any heading, with the"
                                + " longest line that may carry it the load has at most 0.0 m to trees"
                                + " and needs 2.0 m. Perhaps a wider clearing or another place.");
    }

    @Test
    void a_longer_line_that_is_asked_for_has_room() {
        SmallDay day = bare().place("S2", "canopyM", OptionalDouble.of(40));
        Finding refusal = refusal(day, FindingCode.NO_LINE_LONG_ENOUGH);

        // By hand: trees 40 m and the rule's 5 m on flat ground; the longest line in stock has 30
        // m.
        assertThat(refusal.message())
                .contains(
                        "trees of 40.0 m, a rise behind the tail of 0.0 m and a clearance of 5.0 m ask"
                                + " for at least 45.0 m; the longest line that may carry it gives at"
                                + " most 30.0 m")
                .endsWith("Perhaps a longer line.");
        assertThat(refusal.limit()).isEqualTo("45.0");
        List<LineItem> lines = new ArrayList<>(day.job().machine().lines());
        lines.add(new LineItem("50 m", 50, 50, 650));
        assertThat(isFlown(day.machine("lines", lines))).isTrue();
    }

    /** The tail reaches 7.5 m and 2 m more are looked at: a ring from 8 to 9 m has no heights on any heading. */
    @Test
    void no_heights_behind_the_tail_is_said_to_be_that() {
        SmallDay day =
                with(
                        bare(),
                        "ground",
                        new Ground(
                                SmallDay.FRAME, SmallDay.holedRoundS2(8, 9), Optional.empty(), 0));
        Finding refusal = refusal(day, FindingCode.NO_LINE_LONG_ENOUGH);

        assertThat(refusal.message())
                .contains("the terrain file has no heights behind the tail")
                .endsWith("Perhaps one that has them.");
        assertThat(refusal.limit()).isEmpty();
    }

    /**
     * Walls of 60 m stand 11 m from S2 on three sides. The rotor of 5 m with its 5 m has room, also along the open
     * side; the tail of 7.5 m has it towards there alone, so the machine may come from there and not leave.
     */
    @Test
    void room_over_the_place_alone_is_said_to_be_no_way_out() {
        SmallDay day =
                bare().place("S2", "canopyM", OptionalDouble.of(0))
                        .rule("margins.finalAngleRad", 0.2)
                        .inJob(
                                "features",
                                List.of(
                                        wall("M1", new double[] {985, 989, -60, 60}),
                                        wall("M2", new double[] {985, 1100, 11, 15}),
                                        wall("M3", new double[] {985, 1100, -15, -11})));
        Finding refusal = refusal(day, FindingCode.NO_LINE_LONG_ENOUGH);

        assertThat(refusal.message())
                .contains("there is room over the place, not on the way there and out");
        assertThat(refusal.value()).isEqualTo("30.0");
    }

    private static MapFeature wall(String id, double[] westEastSouthNorth) {
        double[] v = westEastSouthNorth;
        return new MapFeature(
                id,
                MapFeature.Kind.HOUSE,
                MapFeature.Shape.AREA,
                List.of(geo(v[0], v[2]), geo(v[1], v[2]), geo(v[1], v[3]), geo(v[0], v[3])),
                0,
                CrossingRule.ALLOWED,
                OptionalDouble.of(60),
                false,
                "map");
    }
}
