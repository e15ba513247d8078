package underhook.adapter.paper;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.app.port.OutputWriter.Output;
import underhook.app.port.ReadJob;
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
import underhook.core.job.InputFile;
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
import underhook.core.job.ReleaseArea;
import underhook.core.job.Rules;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;
import underhook.core.plan.VerifierReport;

/** An invented day with something of everything that the pages must show. */
final class PaperDay {
    static final LocalFrame FRAME = LocalFrame.of(new GeoPoint(46.8, -12.0));
    static final Instant START = Instant.parse("2026-09-08T07:00:00Z");
    static final int SITES = 12;

    private static final PlaceId A = new PlaceId("A");
    private static final PlaceId B = new PlaceId("B");

    private PaperDay() {}

    static Output output() {
        return new Output(
                new ReadJob(job(), new Ground(FRAME, new Hills(), Optional.empty(), 0)),
                plan(steps()),
                new VerifierReport(1234, List.of()));
    }

    /** The same day for people who read German. */
    static Output inGerman() {
        Output usual = output();
        List<Crew> crews =
                crews().stream()
                        .map(
                                crew ->
                                        new Crew(
                                                crew.id(),
                                                crew.people(),
                                                crew.massEachKg(),
                                                crew.start(),
                                                crew.availableFrom(),
                                                crew.roles(),
                                                crew.stays(),
                                                crew.serves(),
                                                Language.DE))
                        .toList();
        ReadJob read =
                new ReadJob(usual.readJob().job().withCrews(crews), usual.readJob().ground());
        return new Output(read, usual.plan(), usual.report());
    }

    static Output without(List<Step> steps) {
        return new Output(output().readJob(), plan(steps), new VerifierReport(0, List.of()));
    }

    /** The same day with a name of 300 letters, a plan id of 120 and thirty loads on one trip. */
    static Output withLongNames() {
        Output usual = output();
        Job job = usual.readJob().job();
        Job renamed = copy(job, "Vessenholt ".repeat(27), job.date(), job.zone());
        Plan plan = usual.plan();
        List<Step> steps = new ArrayList<>(plan.steps());
        Step step = steps.get(2);
        Rotation rotation = step.rotation().orElseThrow();
        Rotation wide =
                new Rotation(
                        Collections.nCopies(30, rotation.loads().get(0)),
                        rotation.hookedAt(),
                        141,
                        400,
                        1849,
                        171,
                        0,
                        rotation.drops(),
                        rotation.legs(),
                        rotation.limits());
        steps.set(
                2,
                new Step(
                        step.kind(),
                        step.from(),
                        step.to(),
                        step.startAt(),
                        step.endAt(),
                        141,
                        130,
                        40,
                        true,
                        Optional.of(wide),
                        Optional.empty(),
                        List.of(),
                        ""));
        Plan longer =
                new Plan(
                        "7f3a".repeat(30),
                        plan.job(),
                        plan.made(),
                        plan.summary(),
                        steps,
                        plan.crews(),
                        plan.leftOut(),
                        plan.findings(),
                        plan.rooms(),
                        List.of(),
                        List.of(),
                        Optional.empty());
        return new Output(new ReadJob(renamed, usual.readJob().ground()), longer, usual.report());
    }

    /** A valley with waves on its side; unknown far in the east. */
    private static final class Hills implements HeightField {
        @Override
        public boolean covers(double eastM, double northM) {
            return eastM < 7200;
        }

        @Override
        public double heightM(double eastM, double northM) {
            double slope = 180 + 0.3 * Math.max(0, northM - 200) + 0.03 * eastM;
            return slope + 25 * Math.sin(eastM / 420) * Math.cos(northM / 370);
        }

        @Override
        public double highestWithinM(PlanePoint centre, double radiusM) {
            return heightM(centre.eastM(), centre.northM()) + radiusM;
        }

        @Override
        public boolean coversDisc(PlanePoint centre, double radiusM) {
            return covers(centre.eastM() + radiusM, centre.northM());
        }

        @Override
        public double cellSizeM() {
            return 10;
        }
    }

    static GeoPoint geo(double eastM, double northM) {
        return FRAME.toGeo(new PlanePoint(eastM, northM));
    }

    static String siteId(int number) {
        return String.format(Locale.ROOT, "S%02d", number);
    }

    private static double siteEastM(int number) {
        // The last two stand so close together that their names collide.
        return number == SITES ? 4795 : 380 + 440.0 * (number - 1);
    }

    private static double siteNorthM(int number) {
        return number == SITES ? 1532 : 120 + 140.0 * (number - 1);
    }

    private static Place place(String id, PlaceKind kind, GeoPoint at, List<Double> guysDeg) {
        return new Place(
                new PlaceId(id),
                kind,
                id.equals("A") ? "River Bar é Ø Ž" : id.equals("B") ? "Old Quarry" : "",
                at,
                OptionalDouble.empty(),
                OptionalDouble.of(12),
                2,
                15,
                0.8,
                !id.equals("A'"),
                kind == PlaceKind.LAYDOWN,
                id.equals("A"),
                false,
                guysDeg.stream().map(Math::toRadians).toList(),
                "");
    }

    private static List<Place> places() {
        List<Place> places = new ArrayList<>();
        places.add(place("A", PlaceKind.LAYDOWN, geo(260, -130), List.of()));
        places.add(place("A'", PlaceKind.LAYDOWN, geo(640, 190), List.of()));
        places.add(place("B", PlaceKind.LAYDOWN, geo(3740, 760), List.of()));
        places.add(place("H", PlaceKind.LANDING, geo(5150, 2050), List.of()));
        for (int i = 1; i <= SITES; i++) {
            List<Double> guys =
                    i == 8
                            ? List.of(20.0, 150.0, 195.0)
                            : List.of(10.0 * i, 120.0 + 10 * i, 240.0 + 10 * i);
            places.add(place(siteId(i), PlaceKind.SITE, geo(siteEastM(i), siteNorthM(i)), guys));
        }
        return places;
    }

    static LoadId bag(int site) {
        return new LoadId(String.format(Locale.ROOT, "L%02d", site));
    }

    static LoadId pole(int site) {
        return new LoadId(String.format(Locale.ROOT, "P%02d", site));
    }

    private static PlaceId from(int site) {
        return site <= 5 ? A : B;
    }

    private static List<Load> loads() {
        List<Load> loads = new ArrayList<>();
        for (int i = 1; i <= SITES; i++) {
            boolean estimated = i == 3;
            loads.add(
                    new Load(
                            bag(i),
                            "bag",
                            from(i),
                            new PlaceId(siteId(i)),
                            estimated ? MassStatus.ESTIMATED : MassStatus.WEIGHED,
                            OptionalDouble.of(150 + 7.3 * i),
                            estimated ? "about 172 kg" : Math.round(150 + 7.3 * i) + " kg",
                            0.9,
                            0.9,
                            1.1,
                            OptionalDouble.empty(),
                            "guy wires, anchors",
                            i == 2 ? "UN 1202" : "",
                            List.of(),
                            List.of(),
                            false,
                            ""));
            loads.add(
                    new Load(
                            pole(i),
                            "pole",
                            from(i),
                            new PlaceId(siteId(i)),
                            MassStatus.WEIGHED,
                            OptionalDouble.of(360 + i),
                            Math.round((360 + i) / 0.45359237) + " lb",
                            11,
                            0.3,
                            0.3,
                            OptionalDouble.empty(),
                            "wood",
                            "",
                            List.of(),
                            List.of(),
                            false,
                            ""));
        }
        return loads;
    }

    private static LoadKind kind(String name, boolean pole) {
        return new LoadKind(
                name,
                pole ? 18 : 28,
                40,
                pole ? 240 : 30,
                pole,
                false,
                !pole,
                false,
                0.26,
                1.1,
                300,
                300,
                new WindLimit(13, 16, 6),
                underhook.core.job.LoadShape.BOX,
                1);
    }

    /** The same steps by the clocks of Vienna, for a job of the day on which they change. */
    static Output onClockChange() {
        Job job = on(LocalDate.of(2026, 10, 25), ZoneId.of("Europe/Vienna"));
        return new Output(
                new ReadJob(job, output().readJob().ground()),
                plan(steps()),
                new VerifierReport(0, List.of()));
    }

    /** The job on another day, by other clocks. */
    static Job on(LocalDate date, ZoneId zone) {
        return copy(job(), job().name(), date, zone);
    }

    private static Job copy(Job job, String name, LocalDate date, ZoneId zone) {
        return new Job(
                name,
                date,
                zone,
                job.origin(),
                job.magneticVariationRad(),
                job.machineStart(),
                job.places(),
                job.loads(),
                job.machine(),
                job.weather(),
                job.crews(),
                job.walks(),
                job.rules(),
                job.features(),
                job.wires(),
                job.zones(),
                job.releaseAreas(),
                job.confirmations(),
                job.inputs(),
                job.readingFindings(),
                job.waivers());
    }

    private static Job job() {
        Machine machine =
                new Machine(
                        "demo machine",
                        5.1,
                        7.5,
                        1110,
                        95,
                        1850,
                        2050,
                        750,
                        340,
                        5,
                        2.3 / 60,
                        2.5 / 60,
                        8,
                        1200,
                        4,
                        28,
                        50,
                        4,
                        3,
                        new HoverTable(
                                List.of(0.0, 1000.0),
                                List.of(273.15, 293.15),
                                List.of(List.of(2050.0, 2025.0), List.of(2050.0, 1875.0)),
                                5,
                                "invented"),
                        List.of(
                                new LineItem("15 m line, 26 kg", 15, 26, 750),
                                new LineItem("25 m line, 34 kg", 25, 34, 750),
                                new LineItem("40 m line, 46 kg", 40, 46, 750)),
                        Optional.empty(),
                        underhook.core.job.Machine.Body.assumed(5),
                        underhook.core.job.Machine.PilotSide.RIGHT);
        Rules rules =
                new Rules(
                        new Rules.Masses(0.1, 1.15, 60, 450),
                        new Rules.Distances(15, 5, 30, 30, 20, 5, 100),
                        new Rules.Flying(250, 2.5, 7, 12),
                        new Rules.Landing(0.12, false),
                        new Rules.Times(25, 30, 60, 300),
                        new Rules.Refuelling(240, 1.2, 300, 600),
                        new Rules.Duty(START, 36000, 10800, 1800, 28800, 1800),
                        new Rules.Costs(3500, 1200, 1000, "EUR"),
                        underhook.core.job.Rules.Margins.USUAL,
                        List.of(kind("bag", false), kind("pole", true)),
                        underhook.core.job.Handling.USUAL);
        Weather weather =
                new Weather(
                        List.of(new WeatherHour(START, 102000, 285, 3.9, 4, 6, "")),
                        START.plusSeconds(40000),
                        Weather.Between.STRICTER,
                        177,
                        0.0065,
                        "invented");
        return new Job(
                "Vessenholt feeder Ø é ü Ž \u4e2d",
                LocalDate.of(2026, 9, 8),
                ZoneId.of("-01:00"),
                new GeoPoint(46.8, -12.0),
                Math.toRadians(3),
                A,
                places(),
                loads(),
                machine,
                weather,
                crews(),
                List.of(),
                rules,
                features(),
                List.of(
                        new Wire(
                                "LL-1",
                                line(
                                        -400, 300, 600, 380, 1100, 330, 1500, 300, 2600, 420, 3700,
                                        500, 4900, 560, 6400, 620),
                                18,
                                2,
                                true,
                                66000,
                                CrossingRule.ALLOWED,
                                30,
                                0.5,
                                true,
                                underhook.core.job.Hanging.of(
                                        underhook.core.job.WireKind.POWER, false),
                                "survey"),
                        new Wire(
                                "LV-1",
                                line(1560, 130, 2120, 180),
                                6.5,
                                2,
                                true,
                                400,
                                CrossingRule.NEVER,
                                30,
                                0.5,
                                false,
                                underhook.core.job.Hanging.of(
                                        underhook.core.job.WireKind.POWER, false),
                                "survey")),
                zones(),
                List.of(
                        new ReleaseArea(
                                "J1",
                                line(900, -220, 1200, -220, 1200, -150, 900, -150),
                                true,
                                "survey"),
                        new ReleaseArea(
                                "J2",
                                line(2650, 560, 2850, 560, 2850, 660, 2650, 660),
                                true,
                                "survey"),
                        new ReleaseArea(
                                "J5",
                                line(700, 120, 1000, 120, 1000, 200, 700, 200),
                                false,
                                "survey")),
                List.of(),
                List.of(
                        new InputFile("loads.csv", "loads", "", ""),
                        new InputFile(
                                "roads.geojson",
                                "roads",
                                "ODbL 1.0",
                                "© OpenStreetMap contributors"),
                        new InputFile("terrain.tif", "terrain", "CC BY 4.0", "Invented Survey")),
                List.of(),
                List.of());
    }

    private static List<Crew> crews() {
        return List.of(
                new Crew(
                        new CrewId("C1"),
                        3,
                        95,
                        A,
                        START,
                        Set.of(Crew.Role.HOOK, Crew.Role.RECEIVE, Crew.Role.GUY),
                        false,
                        List.of(),
                        Language.EN),
                new Crew(
                        new CrewId("C2"),
                        4,
                        92.5,
                        B,
                        START,
                        Set.of(Crew.Role.RECEIVE, Crew.Role.GUY),
                        false,
                        List.of(),
                        Language.EN),
                new Crew(
                        new CrewId("HA"),
                        2,
                        95,
                        A,
                        START,
                        Set.of(Crew.Role.HOOK, Crew.Role.REFUEL),
                        true,
                        List.of(),
                        Language.EN),
                new Crew(
                        new CrewId("HB"),
                        1,
                        95,
                        B,
                        START,
                        Set.of(Crew.Role.HOOK),
                        true,
                        List.of(),
                        Language.EN));
    }

    private static List<MapFeature> features() {
        List<MapFeature> features = new ArrayList<>();
        features.add(
                new MapFeature(
                        "RV-9",
                        MapFeature.Kind.ROAD,
                        MapFeature.Shape.LINE,
                        line(-600, -10, 800, 60, 1700, 20, 3000, 70, 4800, 90, 6700, 110),
                        30,
                        CrossingRule.GUARDED,
                        java.util.OptionalDouble.empty(),
                        false,
                        "roads"));
        features.add(
                new MapFeature(
                        "H-1",
                        MapFeature.Kind.TRAIL,
                        MapFeature.Shape.LINE,
                        line(2880, 100, 3020, 420, 3060, 800, 3600, 1240, 4400, 1700, 5150, 2050),
                        30,
                        CrossingRule.GUARDED,
                        java.util.OptionalDouble.empty(),
                        false,
                        "roads"));
        int number = 1;
        for (double[] at :
                new double[][] {
                    {1340, 80}, {1380, 150}, {1420, 95}, {1490, 110}, {1585, 140}, {4700, 1330}
                }) {
            features.add(
                    new MapFeature(
                            "house" + number++,
                            MapFeature.Kind.HOUSE,
                            MapFeature.Shape.POINT,
                            List.of(geo(at[0], at[1])),
                            150,
                            CrossingRule.NEVER,
                            java.util.OptionalDouble.empty(),
                            false,
                            "roads"));
        }
        features.add(
                new MapFeature(
                        "school",
                        MapFeature.Kind.PEOPLE,
                        MapFeature.Shape.POINT,
                        List.of(geo(2100, -100)),
                        150,
                        CrossingRule.NEVER,
                        java.util.OptionalDouble.empty(),
                        false,
                        "roads"));
        return features;
    }

    private static List<Zone> zones() {
        return List.of(
                zone("Z1", List.of(geo(3180, 820)), 200, Zone.Rule.NO_OVERFLIGHT),
                new Zone(
                        "Z2",
                        "cliff",
                        List.of(geo(5450, 1300)),
                        350,
                        Zone.Rule.MIN_HEIGHT,
                        List.of(),
                        300,
                        Optional.of(LocalDate.of(2026, 3, 1)),
                        Optional.of(LocalDate.of(2026, 8, 15)),
                        Hours.ALL_DAY,
                        "x"),
                zone(
                        "Z3",
                        line(5350, 2000, 9000, 2000, 9000, 6000, 5350, 6000),
                        0,
                        Zone.Rule.MIN_HEIGHT),
                zone(
                        "Z4",
                        line(2000, 190, 2350, 190, 2350, 260, 2000, 260),
                        0,
                        Zone.Rule.NO_HOVER_BELOW),
                zone("Z5", List.of(geo(4300, 400)), 220, Zone.Rule.NO_FUEL));
    }

    private static Zone zone(String id, List<GeoPoint> outline, double radiusM, Zone.Rule rule) {
        return new Zone(
                id,
                id,
                outline,
                radiusM,
                rule,
                List.of(),
                100,
                Optional.empty(),
                Optional.empty(),
                Hours.ALL_DAY,
                "survey");
    }

    private static List<GeoPoint> line(double... eastNorthM) {
        List<GeoPoint> points = new ArrayList<>();
        for (int i = 0; i < eastNorthM.length; i += 2) {
            points.add(geo(eastNorthM[i], eastNorthM[i + 1]));
        }
        return points;
    }

    // --- the plan

    private static Instant at(double minutes) {
        return START.plusMillis(Math.round(minutes * 60000));
    }

    private static Leg leg(List<LoadId> carrying, PlaceId from, PlaceId to) {
        Job job = job();
        GeoPoint a = job.getPlace(from).position();
        GeoPoint b = job.getPlace(to).position();
        PlanePoint pa = FRAME.toPlane(a);
        PlanePoint pb = FRAME.toPlane(b);
        GeoPoint middle = geo((pa.eastM() + pb.eastM()) / 2 + 60, (pa.northM() + pb.northM()) / 2);
        double distanceM = pa.distanceToM(pb);
        List<Leg.Crossing> crossings = new ArrayList<>();
        List<Leg.WirePass> passes = new ArrayList<>();
        if (from.equals(A) || to.equals(A)) {
            crossings.add(new Leg.Crossing("RV-9", geo(300, 35), "guard stops the traffic"));
            crossings.add(
                    new Leg.Crossing(
                            "LL-1", geo(900, 350), "at least 30 m above the highest wire"));
            passes.add(
                    new Leg.WirePass(
                            "LL-1", 34.2, 30, geo(900, 350), OptionalDouble.of(34.2), true));
        }
        return new Leg(
                carrying,
                from,
                to,
                List.of(
                        new PathPoint(a, 260),
                        new PathPoint(middle, 640.4),
                        new PathPoint(b, to.equals(A) || to.equals(B) ? 230 : 512.3)),
                distanceM,
                distanceM / 25,
                distanceM / 30,
                32,
                25,
                crossings,
                passes,
                Leg.Looks.NONE);
    }

    private static Drop drop(LoadId load, int site, double minutes) {
        return new Drop(
                load,
                new PlaceId(siteId(site)),
                at(minutes),
                Math.toRadians(228.4),
                Math.toRadians(47),
                site % 4 == 0 ? -1.2 : 3.2,
                site % 2 == 0 ? 1.9 : -1.1,
                List.of("into the wind, clear of the wire"));
    }

    private static Step rotation(List<LoadId> loads, List<Integer> sites, double minutes) {
        return rotation(from(sites.get(0)), loads, sites, minutes);
    }

    /** What a crew has hooked at one site goes on to another. */
    static List<Step> movedOn() {
        LoadId tools = bag(4);
        return List.of(
                rotation(List.of(pole(3)), List.of(3), 0),
                rotation(new PlaceId("S03"), List.of(tools), List.of(4), 2.6));
    }

    /** The machine stays where it set down, for what is hooked there next. */
    static List<Step> staying() {
        Step step = rotation(List.of(bag(4)), List.of(4), 0);
        Rotation lift = step.rotation().orElseThrow();
        PlaceId end = lift.drops().get(0).place();
        return List.of(
                new Step(
                        step.kind(),
                        step.from(),
                        end,
                        step.startAt(),
                        step.endAt(),
                        step.fuelStartKg(),
                        step.fuelEndKg(),
                        step.lineLengthM(),
                        step.engineRunning(),
                        step.rotation(),
                        step.crew(),
                        step.legs(),
                        step.because()));
    }

    private static Step rotation(
            PlaceId base, List<LoadId> loads, List<Integer> sites, double minutes) {
        List<Drop> drops = new ArrayList<>();
        List<Leg> legs = new ArrayList<>();
        PlaceId before = base;
        double now = minutes + 2.5;
        for (int i = 0; i < loads.size(); i++) {
            drops.add(drop(loads.get(i), sites.get(i), now));
            legs.add(leg(loads.subList(i, loads.size()), before, drops.get(i).place()));
            before = drops.get(i).place();
            now += 1;
        }
        legs.add(leg(List.of(), before, base));
        boolean pole = loads.get(0).value().startsWith("P");
        Rotation rotation =
                new Rotation(
                        loads,
                        at(minutes),
                        141.6,
                        pole ? 400.2 : 246.1 * loads.size(),
                        1849,
                        171.9,
                        sites.get(0) == 1 ? 15 : 0,
                        drops,
                        legs,
                        List.of(
                                new Limit(
                                        "HOVER_MASS", 1811.2, 1849.7, "kg", 2.08, "invented", true),
                                new Limit("HOOK_LIMIT", 400, 750, "kg", 46, "invented", false)));
        return new Step(
                StepKind.ROTATION,
                base,
                base,
                at(minutes - 0.6),
                at(minutes + 5),
                141.6,
                130.2,
                pole ? 25 : 40,
                true,
                Optional.of(rotation),
                Optional.empty(),
                List.of(),
                "");
    }

    private static Step other(StepKind kind, PlaceId to, double minutes, double lineM) {
        PlaceId from = kind == StepKind.POSITION || kind == StepKind.CREW_MOVE ? A : to;
        return new Step(
                kind,
                from,
                to,
                at(minutes),
                at(minutes + (kind == StepKind.BREAK ? 32 : 7)),
                88.4,
                kind == StepKind.REFUEL ? 210.7 : 80,
                lineM,
                kind != StepKind.BREAK && kind != StepKind.REFUEL,
                Optional.empty(),
                kind == StepKind.CREW_MOVE ? Optional.of(new CrewId("C2")) : Optional.empty(),
                from.equals(to) ? List.of() : List.of(leg(List.of(), from, to)),
                kind == StepKind.REFUEL ? "the next lifts need more than is in the tank" : "");
    }

    static List<Step> steps() {
        List<Step> steps = new ArrayList<>();
        steps.add(other(StepKind.CREW_MOVE, new PlaceId("H"), 0, 0));
        steps.add(other(StepKind.LINE_CHANGE, A, 8, 40));
        steps.add(rotation(List.of(bag(1), bag(2)), List.of(1, 2), 16));
        double minutes = 23;
        for (int site = 3; site <= 5; site++) {
            steps.add(rotation(List.of(bag(site)), List.of(site), minutes));
            minutes += 6;
        }
        steps.add(other(StepKind.LINE_CHANGE, A, minutes, 25));
        steps.add(other(StepKind.REFUEL, A, minutes + 7, 25));
        minutes += 15;
        for (int site = 1; site <= 5; site++) {
            steps.add(rotation(List.of(pole(site)), List.of(site), minutes));
            minutes += 10;
        }
        steps.add(other(StepKind.BREAK, A, minutes, 25));
        steps.add(other(StepKind.POSITION, B, minutes + 33, 25));
        minutes += 41;
        for (int site = 6; site <= SITES; site++) {
            steps.add(rotation(List.of(pole(site)), List.of(site), minutes));
            minutes += 10;
        }
        steps.add(other(StepKind.WAIT, B, minutes, 25));
        steps.add(other(StepKind.LINE_CHANGE, B, minutes + 7, 0));
        return steps;
    }

    private static List<CrewStay> stays(List<Step> steps) {
        List<CrewStay> stays = new ArrayList<>();
        stays.add(new CrewStay(new CrewId("HA"), A, at(0), at(400), "hooks and refuels"));
        stays.add(new CrewStay(new CrewId("HB"), B, at(0), at(400), "hooks"));
        Instant free1 = at(0);
        Instant free2 = at(0);
        for (Step step : steps) {
            for (Drop drop : step.rotation().map(Rotation::drops).orElse(List.of())) {
                boolean low = drop.place().value().compareTo("S06") < 0;
                String doing =
                        (drop.load().value().startsWith("P") ? "guys " : "receives ") + drop.load();
                Instant until = drop.releasedAt().plusSeconds(40);
                stays.add(
                        new CrewStay(
                                new CrewId(low ? "C1" : "C2"),
                                drop.place(),
                                low ? free1 : free2,
                                until,
                                doing));
                if (low) {
                    free1 = until;
                } else {
                    free2 = until;
                }
            }
        }
        return stays;
    }

    private static Plan plan(List<Step> steps) {
        return new Plan(
                "20260907T201500-7f3a",
                "Vessenholt feeder",
                new Plan.Made(Instant.parse("2026-09-07T21:15:00Z"), 42, 10, "Underhook 0.1.0"),
                new Summary(
                        7200,
                        at(300),
                        new Summary.Counts(16, 1, 3),
                        Summary.Bounds.NONE,
                        false,
                        Optional.empty(),
                        List.of(),
                        Optional.empty()),
                steps,
                stays(steps),
                List.of(
                        new LeftOut(
                                new LoadId("L33"),
                                FindingCode.MASS_MISSING,
                                "The mass is missing. Weigh it and plan again."),
                        new LeftOut(
                                new LoadId("L45"),
                                FindingCode.HOOK_LIMIT,
                                "790 kg and the line pass the hook's 750 kg. Perhaps it can be split.")),
                findings(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty());
    }

    private static List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        findings.add(
                Finding.of(
                        FindingCode.WEATHER_HELD,
                        Severity.NOTE,
                        "weather",
                        "rules.yaml",
                        "A forecast value holds until the next hour, which is optimistic while the wind rises."));
        findings.add(
                new Finding(
                        FindingCode.GUY_GAP,
                        Severity.STOP,
                        "S08",
                        "185",
                        "180",
                        "deg",
                        "places.csv",
                        "The guys leave a gap of 185 degrees, so nothing holds the pole that way."));
        findings.add(
                new Finding(
                        FindingCode.LINE_NEAR,
                        Severity.CAUTION,
                        "S04",
                        "25",
                        "24.2",
                        "m",
                        "places.csv",
                        "The line is long enough by less than the spread of the canopy height."));
        for (int i = 1; i <= SITES; i++) {
            findings.add(
                    Finding.of(
                            FindingCode.ROAD_CROSSING,
                            Severity.NOTE,
                            "A-" + siteId(i),
                            "roads.geojson",
                            "The leg crosses RV-9; a guard must stop the traffic."));
        }
        return findings;
    }
}
