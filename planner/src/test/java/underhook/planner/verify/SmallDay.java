package underhook.planner.verify;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.DoubleBinaryOperator;
import java.util.function.UnaryOperator;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.CrossingRule;
import underhook.core.job.Hours;
import underhook.core.job.HoverTable;
import underhook.core.job.Job;
import underhook.core.job.Language;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.Machine;
import underhook.core.job.MapFeature;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.job.Rules;
import underhook.core.job.Walk;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Plan;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;

/**
 * An invented day: laydown A at the origin, site S1 1000 m north and 50 m up a slope, site S2 1000 m
 * east on the flat. Pressure altitude equals elevation (QNH 1013.25), 10 °C everywhere, wind from north
 * 5 m/s gusting 7.
 *
 * <p>Hover masses by hand, table {0 m: 2000, 500 m: 1900} at 0 °C and 100 less at 20 °C: at 100 m
 * (A, S2) halfway between 1980 and 1880 = 1930 kg; at 150 m (S1) between 1970 and 1870 = 1920 kg.
 * Operating mass 1200 kg, line 30 kg.
 */
record SmallDay(Job job, Ground ground, Plan plan) {
    static final LocalFrame FRAME = LocalFrame.of(new GeoPoint(46.8, -12.0));
    static final Instant SEVEN = Instant.parse("2026-09-08T08:00:00Z");
    static final double WEST = Math.toRadians(270);

    /** Flat at 100 m, rising by 1 in 10 from 500 m north on. */
    static final HeightField SLOPE = field((e, n) -> 0);

    /** The same with the ground under S2 tilted by 0.2 to the north. */
    static HeightField tiltedAtS2() {
        return field((e, n) -> Math.abs(e - 1000) < 8 && Math.abs(n) < 8 ? 0.2 * n : 0);
    }

    /** Falling evenly to the west besides. */
    static HeightField tilted(double eastRatio) {
        return field((e, n) -> eastRatio * e);
    }

    /** The same with a bank beside S2, 5 m high, from so far north of it on over 2 m. */
    static HeightField bankAtS2(double northM) {
        return field((e, n) -> Math.abs(e - 1000) < 6 && n >= northM && n <= northM + 2 ? 5 : 0);
    }

    /** The same with a mound round a point, 60 m high and 10 m wide. */
    static HeightField moundAt(double eastM, double northM) {
        return field((e, n) -> Math.abs(e - eastM) < 5 && Math.abs(n - northM) < 5 ? 60 : 0);
    }

    /** The same without heights in a ring round S2. */
    static HeightField holedRoundS2(double fromM, double toM) {
        return field(
                (e, n) -> 0,
                (e, n) -> Math.hypot(e - 1000, n) < fromM || Math.hypot(e - 1000, n) > toM);
    }

    /** The same without heights from 6 to 14 m north of S2. */
    static HeightField holedNorthOfS2() {
        return field((e, n) -> 0, (e, n) -> Math.abs(e - 1000) > 8 || n < 6 || n > 14);
    }

    static HeightField field(DoubleBinaryOperator more) {
        return field(more, (e, n) -> true);
    }

    private static HeightField field(
            DoubleBinaryOperator more, BiPredicate<Double, Double> isKnown) {
        return new HeightField() {
            @Override
            public boolean covers(double eastM, double northM) {
                return Math.abs(eastM) < 3000
                        && Math.abs(northM) < 3000
                        && isKnown.test(eastM, northM);
            }

            @Override
            public double heightM(double eastM, double northM) {
                return 100 + Math.max(0, northM - 500) * 0.1 + more.applyAsDouble(eastM, northM);
            }

            @Override
            public double highestWithinM(PlanePoint centre, double radiusM) {
                return heightM(centre.eastM(), centre.northM() + radiusM);
            }

            @Override
            public boolean coversDisc(PlanePoint centre, double radiusM) {
                return covers(centre.eastM(), centre.northM());
            }

            @Override
            public double cellSizeM() {
                return 5;
            }
        };
    }

    static GeoPoint geo(double eastM, double northM) {
        return FRAME.toGeo(new PlanePoint(eastM, northM));
    }

    static Instant at(double sinceSevenS) {
        return SEVEN.plusMillis(Math.round(sinceSevenS * 1000));
    }

    static PlaceId pid(String id) {
        return new PlaceId(id);
    }

    static LoadId lid(String id) {
        return new LoadId(id);
    }

    static Place place(String id, PlaceKind kind, double eastM, double northM) {
        boolean lay = kind == PlaceKind.LAYDOWN;
        return new Place(
                pid(id),
                kind,
                id,
                geo(eastM, northM),
                OptionalDouble.empty(),
                id.equals("S2") ? OptionalDouble.of(12) : OptionalDouble.of(0),
                0,
                20,
                1,
                true,
                lay,
                lay,
                false,
                List.of(),
                "");
    }

    static Load load(String id, String kind, String from, String to, double kg) {
        boolean pole = kind.equals("pole");
        boolean missing = kg <= 0;
        return new Load(
                lid(id),
                kind,
                pid(from),
                pid(to),
                missing
                        ? MassStatus.MISSING
                        : id.equals("B3") ? MassStatus.ESTIMATED : MassStatus.WEIGHED,
                missing ? OptionalDouble.empty() : OptionalDouble.of(kg),
                "",
                pole ? 10 : 1,
                pole ? 0.3 : 1,
                pole ? 0.3 : 1,
                OptionalDouble.empty(),
                "",
                "",
                id.equals("P1") ? List.of(new Load.After(lid("B1"), 600)) : List.of(),
                id.equals("B2") ? List.of(lid("B3")) : List.of(),
                false,
                "");
    }

    static LoadKind kind(String name, boolean pole, boolean bag) {
        return new LoadKind(
                name,
                pole ? 10 : 20,
                60,
                pole ? 120 : 40,
                pole,
                pole,
                bag,
                name.equals("back"),
                Math.toRadians(30),
                1.0,
                pole ? 600 : 0,
                bag ? 600 : 0,
                pole ? new WindLimit(8, 11, 6) : new WindLimit(12, 16, 6),
                underhook.core.job.LoadShape.BOX,
                1);
    }

    static Crew crew(String id, String start, Set<Crew.Role> roles, boolean stays) {
        return new Crew(
                new CrewId(id),
                id.equals("P") ? 4 : 1,
                100,
                pid(start),
                at(-1800),
                roles,
                stays,
                List.of(),
                Language.EN);
    }

    static Job newJob() {
        HoverTable table =
                new HoverTable(
                        List.of(0.0, 500.0),
                        List.of(273.15, 293.15),
                        List.of(List.of(2000.0, 1900.0), List.of(1900.0, 1800.0)),
                        5,
                        "invented");
        Machine machine =
                new Machine(
                        "T",
                        5,
                        7.5,
                        1100,
                        100,
                        1850,
                        2000,
                        700,
                        300,
                        5,
                        0.04,
                        0.05,
                        8,
                        1200,
                        4,
                        25,
                        35,
                        4,
                        3,
                        table,
                        List.of(
                                new LineItem("20 m", 20, 30, 650),
                                new LineItem("30 m", 30, 40, 650)),
                        Optional.empty(),
                        underhook.core.job.Machine.Body.assumed(5),
                        underhook.core.job.Machine.PilotSide.RIGHT);
        Weather weather =
                new Weather(
                        List.of(
                                new WeatherHour(at(-3600), 101325, 283.15, 0, 5, 7, ""),
                                new WeatherHour(at(7200), 101325, 283.15, 0, 5, 7, "")),
                        at(36000),
                        Weather.Between.HOLD,
                        100,
                        0,
                        "invented");
        Rules rules =
                new Rules(
                        new Rules.Masses(0.1, 1.15, 15, 300),
                        new Rules.Distances(5, 5, 30, 30, 0, 10, 60),
                        new Rules.Flying(100, 6, 10, 8),
                        new Rules.Landing(Math.toRadians(7), false),
                        new Rules.Times(30, 20, 180, 360),
                        new Rules.Refuelling(240, 0.5, 180, 600),
                        new Rules.Duty(at(-4500), 43200, 10800, 1800, 21600, 1800),
                        new Rules.Costs(0, 0, 0, "EUR"),
                        underhook.core.job.Rules.Margins.USUAL,
                        List.of(
                                kind("bag", false, true),
                                kind("pole", true, false),
                                kind("back", false, false)),
                        underhook.core.job.Handling.USUAL);
        return new Job(
                "small",
                LocalDate.of(2026, 9, 8),
                ZoneId.of("-01:00"),
                FRAME.origin(),
                0,
                pid("A"),
                List.of(
                        place("A", PlaceKind.LAYDOWN, 0, 0),
                        place("S1", PlaceKind.SITE, 0, 1000),
                        place("S2", PlaceKind.SITE, 1000, 0)),
                List.of(
                        load("B1", "bag", "A", "S2", 200), load("B2", "bag", "A", "S1", 100),
                        load("B3", "bag", "A", "S1", 80), load("P1", "pole", "A", "S2", 300),
                        load("W1", "back", "S1", "A", 60), load("X1", "bag", "A", "S1", 0)),
                machine,
                weather,
                List.of(
                        crew(
                                "L",
                                "A",
                                Set.of(Crew.Role.HOOK, Crew.Role.REFUEL, Crew.Role.RECEIVE),
                                true),
                        crew("Q", "S1", Set.of(Crew.Role.HOOK, Crew.Role.RECEIVE), true),
                        crew("P", "A", Set.of(Crew.Role.RECEIVE, Crew.Role.GUY), false)),
                List.of(new Walk(pid("S2"), pid("S1"), 1200)),
                rules,
                List.of(
                        new MapFeature(
                                "R1",
                                MapFeature.Kind.ROAD,
                                MapFeature.Shape.LINE,
                                List.of(geo(500, -100), geo(500, 100)),
                                0,
                                CrossingRule.GUARDED,
                                java.util.OptionalDouble.empty(),
                                false,
                                "map"),
                        new MapFeature(
                                "H1",
                                MapFeature.Kind.HOUSE,
                                MapFeature.Shape.POINT,
                                List.of(geo(500, 300)),
                                150,
                                CrossingRule.NEVER,
                                java.util.OptionalDouble.empty(),
                                false,
                                "map")),
                List.of(
                        new Wire(
                                "W1",
                                List.of(geo(-300, -300), geo(-300, 300)),
                                12,
                                5,
                                true,
                                66000,
                                CrossingRule.NEVER,
                                30,
                                Math.toRadians(15),
                                true,
                                underhook.core.job.Hanging.of(
                                        underhook.core.job.WireKind.POWER, false),
                                "wires")),
                List.of(
                        new Zone(
                                "Z1",
                                "Z1",
                                List.of(geo(500, 500)),
                                100,
                                Zone.Rule.NO_OVERFLIGHT,
                                List.of(),
                                0,
                                Optional.empty(),
                                Optional.empty(),
                                Hours.ALL_DAY,
                                "zones")),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /** Straight up, level at a height, straight down. */
    static Leg leg(String from, String to, List<String> loads, double[] v) {
        double[] a =
                from.equals("A")
                        ? new double[] {0, 0}
                        : from.equals("S1") ? new double[] {0, 1000} : new double[] {1000, 0};
        double[] b =
                to.equals("A")
                        ? new double[] {0, 0}
                        : to.equals("S1") ? new double[] {0, 1000} : new double[] {1000, 0};
        boolean road = from.equals("S2") || to.equals("S2");
        return new Leg(
                loads.stream().map(LoadId::new).toList(),
                pid(from),
                pid(to),
                List.of(
                        new PathPoint(geo(a[0], a[1]), v[0]), new PathPoint(geo(a[0], a[1]), v[1]),
                        new PathPoint(geo(b[0], b[1]), v[1]), new PathPoint(geo(b[0], b[1]), v[2])),
                1000,
                v[3],
                0,
                10,
                v[4],
                road ? List.of(new Leg.Crossing("R1", geo(500, 0), words(v[2]))) : List.of(),
                List.of(),
                new Leg.Looks(
                        loads.isEmpty() ? Optional.empty() : Optional.of(look(v[4])),
                        Optional.empty(),
                        Leg.Exposure.NONE));
    }

    /** With the line off the machine begins and ends at 100 m. */
    private static String words(double endHookAmslM) {
        return endHookAmslM > 100
                ? "guarded: nobody under the load while it passes"
                : "passed over, line off";
    }

    /** Nowhere: worse than there is, which a plan may say. */
    private static ReleaseLook look(double speedMPerS) {
        double wholeS = 940 / speedMPerS;
        return new ReleaseLook(
                List.of(
                        new ReleaseLook.Stretch(
                                ReleaseLook.Use.CLOSED, 30, 970, wholeS, List.of("R1"))),
                wholeS,
                wholeS,
                200);
    }

    static Drop drop(String load, String place, double releasedS, double[] v) {
        return new Drop(lid(load), pid(place), at(releasedS), v[0], v[1], v[2], v[3], List.of());
    }

    static Step step(StepKind kind, String way, double[] times, double[] fuelAndLine) {
        String[] ends = way.split("-", -1);
        boolean on = kind != StepKind.BREAK && kind != StepKind.REFUEL;
        return new Step(
                kind,
                pid(ends[0]),
                pid(ends[1]),
                at(times[0]),
                at(times[1]),
                fuelAndLine[0],
                fuelAndLine[1],
                fuelAndLine[2],
                on,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                "");
    }

    static Step flying(Step step, Leg leg) {
        return with(step, "legs", List.of(leg));
    }

    static Step carrying(Step step, Rotation rotation) {
        return with(step, "rotation", Optional.of(rotation));
    }

    static double[] v(double... values) {
        return values;
    }

    static Rotation turn(
            List<String> loads, double hookedS, double[] kg, List<Drop> drops, List<Leg> legs) {
        return new Rotation(
                loads.stream().map(LoadId::new).toList(),
                at(hookedS),
                kg[0],
                kg[1],
                kg[2],
                kg[3],
                0,
                drops,
                legs,
                List.of());
    }

    /**
     * Fuel by hand at 0.04 kg/s: 1: 8 start + 420 s = 24.8; 2: 60 s = 2.4; 3: 360 s = 14.4; 4: 240 s =
     * 9.6; 5: 270 s = 10.8; 6: +50; 8: 8 start + 370 s = 14.8 + 120 s of hover at 0.01 more = 1.2; 9:
     * 2.4; 10: 160 s = 6.4. Times: 4 = hook 60 + out 60 + set down 40 + back 60 + 20; 5 has 30 more for
     * the second release; 6 = 240 + 50/0.5 = 340; 8 = 60 + 110 + 120 + 60 + 20. Most fuel: B1 1930 -
     * 1230 - 200 = 500; B2 with B3 (80 x 1.15 = 92) at S1 1920 - 1230 - 192 = 498; pole 1930 - 1230 -
     * 300/0.9 = 366.6; W1 1920 - 1230 - 60 = 630. Wind from north: way in to S2 eastward, cross 5 from
     * the left; to S1 northward, head 5; to A southward, tail 5.
     */
    static Plan newPlan() {
        List<Step> steps = new ArrayList<>();
        Step move = step(StepKind.CREW_MOVE, "A-S2", v(0, 420), v(150, 125.2, 0));
        steps.add(
                with(
                        flying(move, leg("A", "S2", List.of(), v(100, 140, 100, 60, 35))),
                        "crew",
                        Optional.of(new CrewId("P"))));
        steps.add(
                flying(
                        step(StepKind.POSITION, "S2-A", v(420, 480), v(125.2, 122.8, 0)),
                        leg("S2", "A", List.of(), v(100, 140, 100, 60, 35))));
        steps.add(step(StepKind.LINE_CHANGE, "A-A", v(480, 840), v(122.8, 108.4, 20)));
        steps.add(
                carrying(
                        step(StepKind.ROTATION, "A-A", v(840, 1080), v(108.4, 98.8, 20)),
                        turn(
                                List.of("B1"),
                                900,
                                v(106, 230, 1930, 500),
                                List.of(drop("B1", "S2", 1000, v(WEST, WEST, 0, -5))),
                                List.of(
                                        leg("A", "S2", List.of("B1"), v(120, 150, 120, 60, 20)),
                                        leg("S2", "A", List.of(), v(120, 150, 120, 60, 25))))));
        steps.add(
                carrying(
                        step(StepKind.ROTATION, "A-A", v(1080, 1350), v(98.8, 88, 20)),
                        turn(
                                List.of("B2", "B3"),
                                1140,
                                v(96.4, 222, 1920, 498),
                                List.of(
                                        drop("B2", "S1", 1240, v(Math.PI, Math.PI, 5, 0)),
                                        drop("B3", "S1", 1270, v(Math.PI, Math.PI, 5, 0))),
                                List.of(
                                        leg(
                                                "A",
                                                "S1",
                                                List.of("B2", "B3"),
                                                v(120, 190, 170, 60, 20)),
                                        leg("S1", "A", List.of(), v(170, 190, 120, 60, 25))))));
        steps.add(step(StepKind.REFUEL, "A-A", v(1350, 1690), v(88, 138, 20)));
        steps.add(step(StepKind.BREAK, "A-A", v(1690, 3490), v(138, 138, 20)));
        steps.add(
                carrying(
                        step(StepKind.ROTATION, "A-A", v(3490, 3860), v(138, 114, 20)),
                        turn(
                                List.of("P1"),
                                3550,
                                v(127.6, 330, 1930, 366),
                                List.of(drop("P1", "S2", 3780, v(WEST, WEST, 0, -5))),
                                List.of(
                                        leg("A", "S2", List.of("P1"), v(120, 165, 130, 110, 10)),
                                        leg("S2", "A", List.of(), v(130, 150, 120, 60, 25))))));
        steps.add(
                flying(
                        step(StepKind.POSITION, "A-S1", v(3860, 3920), v(114, 111.6, 20)),
                        leg("A", "S1", List.of(), v(120, 190, 170, 60, 25))));
        steps.add(
                carrying(
                        step(StepKind.ROTATION, "S1-A", v(3920, 4080), v(111.6, 105.2, 20)),
                        turn(
                                List.of("W1"),
                                3980,
                                v(109.2, 90, 1920, 630),
                                List.of(drop("W1", "A", 4080, v(0, 0, -5, 0))),
                                List.of(leg("S1", "A", List.of("W1"), v(170, 190, 120, 60, 20))))));
        // 420 + 60 + 240 + 270 + 370 + 60 + 160
        Summary summary =
                new Summary(
                        1580,
                        at(4080),
                        new Summary.Counts(4, 1, 1),
                        new Summary.Bounds(
                                OptionalDouble.of(1000),
                                Optional.of(at(4000)),
                                Optional.of("chosen-combination")),
                        false,
                        Optional.empty(),
                        List.of(),
                        Optional.empty());
        return new Plan(
                "plan-1",
                "small",
                new Plan.Made(at(-7200), 1, 10, "underhook"),
                summary,
                steps,
                List.of(
                        stay("L", "A", -1800, 7200),
                        stay("Q", "S1", -1800, 7200),
                        stay("P", "A", -1800, 0),
                        stay("P", "S2", 420, 4800),
                        new CrewStay(new CrewId("P"), pid("S1"), at(4800), at(6000), "walks to S1"),
                        stay("P", "S1", 6000, 7200)),
                List.of(new LeftOut(lid("X1"), FindingCode.MASS_MISSING, "No mass is stated.")),
                List.of(
                        said(FindingCode.MASS_MISSING, Severity.STOP, "X1"),
                        said(FindingCode.MASS_ESTIMATED, Severity.CAUTION, "B3"),
                        said(FindingCode.ROAD_CROSSING, Severity.CAUTION, "A-S2"),
                        said(FindingCode.RELEASE_CLOSED, Severity.CAUTION, "A-S1"),
                        said(FindingCode.RELEASE_CLOSED, Severity.CAUTION, "A-S2"),
                        said(FindingCode.RELEASE_CLOSED, Severity.CAUTION, "S1-A"),
                        said(FindingCode.WEATHER_HELD, Severity.NOTE, "small"),
                        said(FindingCode.WEATHER_LAPSE_ASSUMED, Severity.NOTE, "small"),
                        // It comes down at 4 m/s, 787 ft/min, straight down: more than 300.
                        said(FindingCode.VORTEX_RING, Severity.CAUTION, "small"),
                        // A third of its 30 kg hangs at its end: less than 40.
                        said(FindingCode.EMPTY_LINE_LIGHT, Severity.CAUTION, "line 20 m")),
                List.of(room("A", 0), room("S1", 0), room("S2", 10)),
                List.of(),
                List.of(),
                Optional.empty());
    }

    /** What is to be told of a wire that is passed over on the ways to both sites, told as well. */
    SmallDay tellingOf(String wire) {
        List<Finding> all = new ArrayList<>(plan.findings());
        all.add(said(FindingCode.WIRE_CROSSING, Severity.CAUTION, "A-S1"));
        all.add(said(FindingCode.WIRE_CROSSING, Severity.CAUTION, "A-S2"));
        all.add(said(FindingCode.WIRE_CROSSING, Severity.CAUTION, "S1-A"));
        all.add(said(FindingCode.WIRE_NEAR, Severity.CAUTION, wire));
        all.add(said(FindingCode.WIRE_ASSUMED, Severity.CAUTION, wire));
        all.add(said(FindingCode.HAZARD_UNCONFIRMED, Severity.CAUTION, wire));
        all.add(said(FindingCode.WIRE_END, Severity.CAUTION, wire));
        return inPlan("findings", List.copyOf(all));
    }

    /** Nothing told under a code. */
    SmallDay silentOn(FindingCode code) {
        return inPlan(
                "findings", plan.findings().stream().filter(one -> one.code() != code).toList());
    }

    static Finding said(FindingCode code, Severity severity, String subject) {
        return Finding.of(code, severity, subject, "loads", "said");
    }

    /** Near all round with both lines, and under them with what stands up. */
    static PlaceRoom room(String place, double standsM) {
        List<PlaceRoom.LineRoom> lines = new ArrayList<>();
        for (double stands : standsM > 0 ? new double[] {0, standsM} : new double[] {0}) {
            lines.add(room(new LineItem("20 m", 20, 30, 650), stands, PlaceRoom.Fit.NEAR));
            lines.add(room(new LineItem("30 m", 30, 40, 650), stands, PlaceRoom.Fit.NEAR));
        }
        return new PlaceRoom(pid(place), lines, Optional.of("20 m"), "shortest");
    }

    static PlaceRoom.LineRoom room(LineItem line, double standsM, PlaceRoom.Fit fit) {
        return new PlaceRoom.LineRoom(
                line.name(),
                line.lengthM(),
                standsM,
                List.of(new PlaceRoom.Sector(fit, 0, 2 * Math.PI)),
                new PlaceRoom.Tightest("tail", "ground", 0, 6, 5, 1),
                new PlaceRoom.Cost(
                        line.lengthM() > 20 ? 33 : 27, 20, line.lengthM() + standsM + 1));
    }

    static CrewStay stay(String crew, String place, double fromS, double toS) {
        return new CrewStay(new CrewId(crew), pid(place), at(fromS), at(toS), "waits");
    }

    static SmallDay good() {
        return new SmallDay(newJob(), new Ground(FRAME, SLOPE, Optional.empty(), 0), newPlan());
    }

    SmallDay step(int number, UnaryOperator<Step> change) {
        List<Step> steps = new ArrayList<>(plan.steps());
        steps.set(number - 1, change.apply(steps.get(number - 1)));
        return with(this, "plan", with(plan, "steps", steps));
    }

    SmallDay turn(int number, UnaryOperator<Rotation> change) {
        return step(
                number,
                s -> with(s, "rotation", Optional.of(change.apply(s.rotation().orElseThrow()))));
    }

    SmallDay leg(int number, int index, UnaryOperator<Leg> change) {
        return turn(
                number,
                r -> {
                    List<Leg> legs = new ArrayList<>(r.legs());
                    legs.set(index, change.apply(legs.get(index)));
                    return with(r, "legs", legs);
                });
    }

    /** The leg of a step that lifts nothing. */
    SmallDay emptyLeg(int number, UnaryOperator<Leg> change) {
        return step(number, s -> with(s, "legs", List.of(change.apply(s.legs().get(0)))));
    }

    SmallDay drop(int number, int index, UnaryOperator<Drop> change) {
        return turn(
                number,
                r -> {
                    List<Drop> drops = new ArrayList<>(r.drops());
                    drops.set(index, change.apply(drops.get(index)));
                    return with(r, "drops", drops);
                });
    }

    SmallDay inJob(String component, Object value) {
        return with(this, "job", with(job, component, value));
    }

    SmallDay inPlan(String component, Object value) {
        return with(this, "plan", with(plan, component, value));
    }

    SmallDay rule(String component, Object value) {
        return inJob("rules", with(job.rules(), component, value));
    }

    SmallDay machine(String component, Object value) {
        return inJob("machine", with(job.machine(), component, value));
    }

    SmallDay place(String id, String component, Object value) {
        return inJob(
                "places",
                job.places().stream()
                        .map(p -> p.id().value().equals(id) ? with(p, component, value) : p)
                        .toList());
    }

    SmallDay load(String id, String component, Object value) {
        return inJob(
                "loads",
                job.loads().stream()
                        .map(p -> p.id().value().equals(id) ? with(p, component, value) : p)
                        .toList());
    }

    SmallDay kind(String name, String component, Object value) {
        return rule(
                "kinds",
                job.rules().kinds().stream()
                        .map(p -> p.name().equals(name) ? with(p, component, value) : p)
                        .toList());
    }

    SmallDay crew(String id, String component, Object value) {
        return inJob(
                "crews",
                job.crews().stream()
                        .map(p -> p.id().value().equals(id) ? with(p, component, value) : p)
                        .toList());
    }

    SmallDay stay(int index, CrewStay stay) {
        List<CrewStay> stays = new ArrayList<>(plan.crews());
        stays.set(index, stay);
        return inPlan("crews", stays);
    }

    SmallDay zone(Zone zone) {
        return inJob("zones", List.of(zone));
    }

    SmallDay wire(String component, Object value) {
        return inJob("wires", List.of(with(job.wires().get(0), component, value)));
    }

    /** States a wire on every leg between two places, whichever way. */
    SmallDay passing(String one, String other, Leg.WirePass pass) {
        UnaryOperator<Leg> state =
                leg ->
                        Set.of(leg.from().value(), leg.to().value()).equals(Set.of(one, other))
                                ? with(leg, "wires", List.of(pass))
                                : leg;
        UnaryOperator<Step> inStep =
                step ->
                        step.rotation().isEmpty()
                                ? with(step, "legs", step.legs().stream().map(state).toList())
                                : with(
                                        step,
                                        "rotation",
                                        step.rotation()
                                                .map(
                                                        turn ->
                                                                with(
                                                                        turn,
                                                                        "legs",
                                                                        turn.legs().stream()
                                                                                .map(state)
                                                                                .toList())));
        return inPlan("steps", plan.steps().stream().map(inStep).toList());
    }

    /** A copy of a record with one component changed; a dot stands before one of a record in it. */
    @SuppressWarnings("unchecked")
    static <T extends Record> T with(T record, String path, Object value) {
        int dot = path.indexOf('.');
        String component = dot < 0 ? path : path.substring(0, dot);
        try {
            RecordComponent[] parts = record.getClass().getRecordComponents();
            Class<?>[] types = new Class<?>[parts.length];
            Object[] values = new Object[parts.length];
            boolean found = false;
            for (int i = 0; i < parts.length; i++) {
                types[i] = parts[i].getType();
                boolean here = parts[i].getName().equals(component);
                found |= here;
                Object old = parts[i].getAccessor().invoke(record);
                if (here) {
                    values[i] =
                            dot < 0 ? value : with((Record) old, path.substring(dot + 1), value);
                } else {
                    values[i] = old;
                }
            }
            if (!found) {
                throw new IllegalArgumentException("no component " + component);
            }
            return (T) record.getClass().getDeclaredConstructor(types).newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
