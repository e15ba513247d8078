package underhook.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import underhook.core.air.AirState;
import underhook.core.air.Atmosphere;
import underhook.core.air.Wind;
import underhook.core.air.WindTriangle;
import underhook.core.aircraft.HoverChart;
import underhook.core.aircraft.MomentumHover;
import underhook.core.fall.Fall;
import underhook.core.geo.PlanePoint;
import underhook.core.job.HoverTable;
import underhook.core.job.WireBufferRule;
import underhook.core.line.Bridle;
import underhook.core.line.LegTension;
import underhook.core.line.Pendulum;
import underhook.core.line.RiggingChain;
import underhook.core.load.Trail;
import underhook.core.pole.GuyedPole;
import underhook.core.pole.Guys;
import underhook.core.unit.Units;
import underhook.core.wire.Catenary;
import underhook.core.wire.Curtain;
import underhook.core.wire.Flyer;
import underhook.core.wire.Swing;
import underhook.core.wire.WireBuffers;
import underhook.testkit.ReferenceCases;
import underhook.testkit.ReferenceCases.Case;

/** Runs every row of every reference file against the model it is about; sun and hanging loads have their own. */
class ModelsReferenceTest {
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;
    private static final List<String> OF_THE_SUN =
            List.of("sun-azimuth", "sun-events", "sun-twilight", "sun-zenith");
    private static final Map<String, ToDoubleFunction<Case>> MODELS = models();

    static Stream<Arguments> rows() {
        return MODELS.keySet().stream()
                .flatMap(
                        topic ->
                                ReferenceCases.read(topic).cases().stream()
                                        .map(row -> Arguments.of(topic, row)));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("rows")
    void agrees_with_the_reference_row(String topic, Case row) {
        double value = Objects.requireNonNull(MODELS.get(topic)).applyAsDouble(row);

        assertThat(value)
                .as("%s, tolerance is %s", row.locator(), row.basis())
                .isCloseTo(row.expected(), within(row.tolerance()));
    }

    @Test
    void every_reference_file_is_run() throws IOException, URISyntaxException {
        URL folder =
                Objects.requireNonNull(
                        ModelsReferenceTest.class.getResource("/reference/isa-density.csv"));
        List<String> run = new ArrayList<>(MODELS.keySet());
        run.addAll(OF_THE_SUN);
        run.addAll(HangingReferenceTest.topics());

        try (Stream<Path> files =
                Files.list(Objects.requireNonNull(Path.of(folder.toURI()).getParent()))) {
            List<String> topics =
                    files.map(file -> file.getFileName().toString())
                            .filter(name -> name.endsWith(".csv"))
                            .map(name -> name.substring(0, name.length() - 4))
                            .toList();
            assertThat(run).containsAll(topics);
        }
    }

    private static Map<String, ToDoubleFunction<Case>> models() {
        Map<String, ToDoubleFunction<Case>> models = new TreeMap<>();
        air(models);
        machine(models);
        line(models);
        fall(models);
        wire(models);
        return models;
    }

    private static void air(Map<String, ToDoubleFunction<Case>> models) {
        models.put("isa-temperature", row -> isa(row).temperatureK());
        models.put("isa-pressure", row -> Units.paToHpa(isa(row).pressurePa()));
        models.put("isa-density", row -> isa(row).densityKgPerM3());
        models.put("isa-sound", row -> Atmosphere.soundMPerS(isa(row).temperatureK()));
        models.put("geopotential", row -> Atmosphere.geopotentialM(row.number("geometricM")));
        models.put(
                "pressure-altitude",
                row -> Atmosphere.pressureAltitudeM(Units.hpaToPa(row.number("pressureHpa"))));
        ToDoubleFunction<Case> altimeter =
                row ->
                        Units.mToFt(
                                Atmosphere.pressureAltitudeM(
                                        Units.inHgToPa(row.number("settingInHg")),
                                        Units.ftToM(row.number("elevationFt"))));
        models.put("altimeter-correction", altimeter);
        models.put("altimeter-correction-remembered", altimeter);
        models.put(
                "qnh-pressure-altitude",
                row ->
                        Atmosphere.pressureAltitudeM(
                                Units.hpaToPa(row.number("qnhHpa")), row.number("elevationAmslM")));
        models.put(
                "station-pressure",
                row ->
                        Units.paToHpa(
                                Atmosphere.stationPressurePa(
                                        Units.hpaToPa(row.number("qnhHpa")),
                                        row.number("elevationAmslM"))));
        ToDoubleFunction<Case> dryAltitude =
                row -> Units.mToFt(Atmosphere.densityAltitudeM(dry(row).densityKgPerM3()));
        models.put("density-altitude-dry", dryAltitude);
        models.put("density-altitude-chart", dryAltitude);
        models.put("density-dry", row -> dry(row).densityKgPerM3());
        models.put("density-humid", row -> humid(row).densityKgPerM3());
        models.put(
                "density-altitude-humid",
                row -> Atmosphere.densityAltitudeM(humid(row).densityKgPerM3()));
        models.put(
                "vapour-pressure",
                row ->
                        Units.paToHpa(
                                Atmosphere.vapourPressurePa(
                                        Units.celsiusToKelvin(row.number("dewPointC")))));
        models.put("true-airspeed", ModelsReferenceTest::trueAirspeedKt);
        ToDoubleFunction<Case> head = row -> Units.mPerSToKt(wind(row).headMPerS(track(row)));
        models.put("wind-head", head);
        models.put("wind-component-test-item", head);
        models.put("wind-cross", row -> Units.mPerSToKt(wind(row).crossMPerS(track(row))));
        models.put("wind-ground-speed", row -> Units.mPerSToKt(triangle(row).groundSpeedMPerS()));
        models.put("wind-correction", row -> Math.toDegrees(triangle(row).correctionRad()));
    }

    private static void machine(Map<String, ToDoubleFunction<Case>> models) {
        models.put("hover-induced", row -> hover(row).inducedMPerS());
        models.put("hover-power", row -> hover(row).idealPowerW() / 1000);
        models.put(
                "hover-wake",
                row ->
                        MomentumHover.of(row.number("discLoadingPa") * Math.PI / G, 1, 1.225)
                                .farWakeMPerS());
        models.put(
                "takeoff-table",
                row ->
                        HoverChart.of(
                                        new HoverTable(
                                                List.of(0.0, 1.0),
                                                List.of(280.0, 290.0),
                                                List.of(
                                                        List.of(
                                                                row.number("low"),
                                                                row.number("high")),
                                                        List.of(
                                                                row.number("low"),
                                                                row.number("high"))),
                                                1,
                                                "handbook"),
                                        99999)
                                .tableMassKg(row.number("fraction"), 285));
    }

    private static void line(Map<String, ToDoubleFunction<Case>> models) {
        models.put(
                "load-angle-factor",
                row ->
                        LegTension.of(100, 2, Math.toRadians(row.number("angleDeg")), false)
                                .angleFactor());
        models.put(
                "leg-tension",
                row ->
                        LegTension.of(
                                                250,
                                                (int) row.number("legs"),
                                                Math.toRadians(row.number("angleDeg")),
                                                row.text("rigid").equals("true"))
                                        .legTensionN()
                                / (250 * G));
        models.put("bridle-tension-1", row -> bridle(row).tension1N());
        models.put("bridle-tension-2", row -> bridle(row).tension2N());
        models.put("bridle-length-2", row -> bridle(row).length2M());
        models.put("pendulum-period", row -> Pendulum.periodS(row.number("lengthM"), 0));
        models.put(
                "pendulum-amplitude",
                row ->
                        Pendulum.periodS(20, Math.toRadians(row.number("amplitudeDeg")))
                                / Pendulum.periodS(20, 0));
        models.put("rigging-use", ModelsReferenceTest::rigging);
        models.put("trail-angle", row -> Math.toDegrees(trail(row).trailAngleRad()));
        models.put("trail-tension", row -> trail(row).lineTensionN());
    }

    private static void fall(Map<String, ToDoubleFunction<Case>> models) {
        models.put("fall-vacuum-time", row -> Fall.vacuum(row.number("heightM"), 0).timeS());
        models.put("fall-vacuum-speed", row -> Fall.vacuum(row.number("heightM"), 0).impactMPerS());
        models.put(
                "fall-vacuum-throw",
                row -> Fall.vacuum(row.number("heightM"), row.number("speedMPerS")).throwM());
        models.put("fall-drag-time", row -> Fall.plumb(body(row), row.number("heightM")).timeS());
        models.put(
                "fall-drag-speed",
                row -> Fall.plumb(body(row), row.number("heightM")).impactMPerS());
        models.put("fall-air-time", row -> thrown(row).timeS());
        models.put("fall-air-throw", row -> thrown(row).throwM());
        models.put("fall-air-forward", row -> thrown(row).impactForwardMPerS());
        models.put("fall-air-down", row -> thrown(row).impactDownMPerS());
        ToDoubleFunction<Case> terminal =
                row ->
                        new Fall.Body(row.number("massKg"), row.number("dragAreaM2"), 1.225)
                                .terminalMPerS();
        models.put("terminal-speed", terminal);
        models.put(
                "terminal-speed-textbook",
                row ->
                        new Fall.Body(row.number("massKg"), row.number("dragAreaM2"), 1.21)
                                .terminalMPerS());
    }

    private static void wire(Map<String, ToDoubleFunction<Case>> models) {
        models.put("wire-sag", row -> Units.mToFt(spanInFeet(row).sagM()));
        models.put("wire-sag-printed", row -> Units.mToFt(spanInFeet(row).sagM()));
        models.put("wire-length", row -> Units.mToFt(spanInFeet(row).lengthM()));
        models.put("wire-tension", row -> Units.kgToLb(spanInFeet(row).highestTensionN() / G));
        models.put(
                "wire-inclined-height",
                row ->
                        512
                                + Catenary.of(120, 8, 0.6 * G, 3000)
                                        .heightAboveFirstM(row.number("alongM")));
        models.put(
                "wire-level-tension",
                row ->
                        Catenary.of(
                                        row.number("spanM"),
                                        0,
                                        row.number("weightNPerM"),
                                        row.number("tensionN"))
                                .sagM());
        models.put(
                "wire-inclined-sag",
                row ->
                        Catenary.of(
                                        row.number("spanM"),
                                        row.number("riseM"),
                                        row.number("weightKgPerM") * G,
                                        row.number("tensionN"))
                                .sagM());
        models.put("wire-buffer-load", row -> bufferFt(WireBufferRule.CRANE, row));
        models.put("wire-buffer-travel", row -> bufferFt(WireBufferRule.CRANE_TRAVEL, row));
        models.put(
                "wire-buffer-altitude",
                row -> WireBuffers.altitudeFactor(row.number("elevationM")));
        models.put(
                "wire-swing",
                row ->
                        Units.radToDeg(
                                Swing.angleRad(
                                        row.number("forceNPerM"), row.number("weightNPerM"))));
        models.put(
                "wire-wind-force",
                row ->
                        Swing.forceNPerM(
                                row.number("windMPerS"),
                                row.number("diameterM"),
                                row.number("dragCoefficient")));
        models.put("wire-blown-sag", ModelsReferenceTest::blownSagM);
        models.put("wire-safe-height", ModelsReferenceTest::overWireM);
        models.put(
                "guys-worst",
                row ->
                        new Guys(
                                        Stream.of(row.text("azimuthsDeg").split(" "))
                                                .map(
                                                        text ->
                                                                Math.toRadians(
                                                                        Double.parseDouble(text)))
                                                .toList())
                                .findWorstFactor()
                                .orElseThrow());
        models.put(
                "guy-tension",
                row ->
                        new GuyedPole(
                                        row.number("massKg"),
                                        row.number("centreM"),
                                        row.number("attachM"),
                                        Math.toRadians(row.number("guyAngleDeg")))
                                .tensionN(Math.toRadians(row.number("leanDeg"))));
    }

    private static AirState isa(Case row) {
        return Atmosphere.isa(row.number("geopotentialM"));
    }

    private static AirState dry(Case row) {
        return Atmosphere.dry(
                Atmosphere.isa(Units.ftToM(row.number("pressureAltitudeFt"))).pressurePa(),
                Units.celsiusToKelvin(row.number("temperatureC")));
    }

    private static AirState humid(Case row) {
        return Atmosphere.humid(
                Units.hpaToPa(row.number("pressureHpa")),
                Units.celsiusToKelvin(row.number("temperatureC")),
                Units.celsiusToKelvin(row.number("dewPointC")));
    }

    private static double trueAirspeedKt(Case row) {
        AirState standard = Atmosphere.isa(Units.ftToM(row.number("pressureAltitudeFt")));
        AirState air =
                Atmosphere.dry(
                        standard.pressurePa(),
                        standard.temperatureK() + row.number("isaDeviationK"));
        return Units.mPerSToKt(
                Atmosphere.trueAirspeedMPerS(Units.ktToMPerS(row.number("calibratedKt")), air));
    }

    private static double track(Case row) {
        return Math.toRadians(row.number("trackDeg"));
    }

    private static Wind wind(Case row) {
        return new Wind(
                Math.toRadians(row.number("fromDeg")), Units.ktToMPerS(row.number("speedKt")));
    }

    private static WindTriangle triangle(Case row) {
        return WindTriangle.of(track(row), Units.ktToMPerS(row.number("trueAirspeedKt")), wind(row))
                .getValue();
    }

    private static MomentumHover hover(Case row) {
        return MomentumHover.of(
                row.number("massKg"), row.number("rotorRadiusM"), row.number("densityKgPerM3"));
    }

    private static Bridle bridle(Case row) {
        return Bridle.of(
                row.number("massKg"), row.number("d1M"), row.number("d2M"), row.number("heightM"));
    }

    /** An invented chain of 1300 kg: two legs of 800 kg at 60°, hook, swivel, line, belly hook. */
    private static double rigging(Case row) {
        double sling = 800 * 2 * Math.sin(Math.toRadians(60));
        RiggingChain chain =
                RiggingChain.of(
                        1300,
                        List.of(
                                RiggingChain.Item.ofUntagged("sling", sling, 8, false),
                                RiggingChain.Item.ofUntagged("hook", 1360, 12, false),
                                RiggingChain.Item.ofUntagged("swivel", 1360, 0, false),
                                RiggingChain.Item.ofUntagged("line", 1500, 30, true),
                                RiggingChain.Item.ofUntagged("belly", 1400, 0, false)));
        assertThat(chain.governing().item().name()).isEqualTo("swivel");
        assertThat(chain.isWithinLimits()).isTrue();
        return chain.uses().stream()
                .filter(use -> use.item().name().equals(row.text("item")))
                .findFirst()
                .orElseThrow()
                .usedRatio();
    }

    private static Trail trail(Case row) {
        return Trail.of(
                row.number("massKg"),
                row.number("dragAreaM2"),
                Units.ktToMPerS(row.number("airspeedKt")),
                1.225);
    }

    /** A body of 1 kg with the row's terminal speed: CdA = 2 m g / (rho vt²). */
    private static Fall.Body body(Case row) {
        double terminal = row.number("terminalMPerS");
        return new Fall.Body(1, 2 * G / (1.225 * terminal * terminal), 1.225);
    }

    private static Fall thrown(Case row) {
        return Fall.inAir(
                body(row),
                row.number("heightM"),
                row.number("speedMPerS"),
                row.number("tailwindMPerS"));
    }

    private static double bufferFt(WireBufferRule rule, Case row) {
        return Units.mToFt(WireBuffers.distanceM(rule, row.number("voltageKv") * 1000));
    }

    /** Span 160 m, 0.65 kg/m, 9.5 mm, 4250 kgf/cm² with a factor of safety of 5, wind of 40 kgf/m². */
    private static double blownSagM(Case row) {
        double weight = 0.65 * G;
        double force = 40 * G * 0.0095;
        double tension = 4250 * Math.PI / 4 * 0.95 * 0.95 / 5 * G;
        double slantM = Catenary.of(160, 0, Math.hypot(weight, force), tension).sagM();
        return row.text("part").equals("slant")
                ? slantM
                : slantM * Math.cos(Swing.angleRad(force, weight));
    }

    private static double overWireM(Case row) {
        PlanePoint here = new PlanePoint(0, 0);
        Curtain wire =
                new Curtain(new PlanePoint(0, -50), new PlanePoint(0, 50), row.number("wireM"), 0);
        double hookM = row.number("hookM");
        return wire.nearest(
                        new Flyer(row.number("underHookM"), 0, 6),
                        new Curtain.Flown(here, here, hookM, hookM))
                .leastM();
    }

    private static Catenary spanInFeet(Case row) {
        return Catenary.of(
                Units.ftToM(row.number("spanFt")),
                0,
                Units.lbToKg(row.number("weightLbPerFt")) * G / Units.ftToM(1),
                Units.lbToKg(row.number("tensionLb")) * G);
    }
}
