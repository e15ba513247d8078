package underhook.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import underhook.core.aircraft.Downwash;
import underhook.core.aircraft.InducedFlow;
import underhook.core.aircraft.MomentumHover;
import underhook.core.aircraft.VortexRing;
import underhook.core.line.HangAngle;
import underhook.core.line.Hitch;
import underhook.core.line.LegTension;
import underhook.core.line.Pendulum;
import underhook.core.line.Sling;
import underhook.core.load.DensityBand;
import underhook.core.load.Material;
import underhook.core.load.ShapeDrag;
import underhook.core.pole.PoleMass;
import underhook.core.pole.PoleShape;
import underhook.core.unit.Units;
import underhook.testkit.ReferenceCases;
import underhook.testkit.ReferenceCases.Case;

/** Runs the reference files on what hangs, swings and blows below the machine, and on poles. */
class HangingReferenceTest {
    private static final double G = Units.STANDARD_GRAVITY_M_PER_S2;
    private static final Map<String, ToDoubleFunction<Case>> MODELS = models();

    static Set<String> topics() {
        return MODELS.keySet();
    }

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

    private static Map<String, ToDoubleFunction<Case>> models() {
        Map<String, ToDoubleFunction<Case>> models = new TreeMap<>();
        swing(models);
        legs(models);
        rigging(models);
        density(models);
        poles(models);
        wake(models);
        vortex(models);
        return models;
    }

    private static void swing(Map<String, ToDoubleFunction<Case>> models) {
        models.put(
                "pendulum-free",
                row ->
                        Pendulum.freePeriodS(
                                row.number("lengthM"), row.number("loadOverMachineRatio")));
        models.put("pendulum-rod", row -> Pendulum.rodPeriodS(row.number("lengthM")));
        models.put(
                "hang-acceleration",
                row -> Math.toDegrees(HangAngle.steadyRad(row.number("accelerationMPerS2"))));
        models.put(
                "hang-acceleration-pull",
                row -> HangAngle.loadFactor(HangAngle.steadyRad(row.number("accelerationMPerS2"))));
        models.put(
                "hang-turn",
                row ->
                        Math.toDegrees(
                                HangAngle.turnRad(
                                        row.number("speedMPerS"), row.number("radiusM"))));
        models.put(
                "load-factor", row -> HangAngle.loadFactor(Math.toRadians(row.number("bankDeg"))));
        models.put(
                "stop-angle",
                row ->
                        Math.toDegrees(
                                HangAngle.afterStopRad(
                                        row.number("changeMPerS"), row.number("lengthM"))));
        models.put(
                "bottom-pull",
                row -> HangAngle.bottomPullFactor(Math.toRadians(row.number("amplitudeDeg"))));
    }

    private static void legs(Map<String, ToDoubleFunction<Case>> models) {
        models.put(
                "leg-limit",
                row ->
                        Sling.legsLimitKg(
                                row.number("legLimitLb"),
                                (int) row.number("legs"),
                                Math.toRadians(row.number("angleDeg")),
                                false));
        models.put(
                "leg-limit-set",
                row -> LegTension.of(row.number("setLb"), 4, Math.PI / 2, false).legTensionN() / G);
        models.put(
                "leg-tension-sheet",
                row ->
                        LegTension.of(
                                                row.number("massLb"),
                                                (int) row.number("legs"),
                                                Math.asin(
                                                        row.number("heightM") / row.number("legM")),
                                                false)
                                        .legTensionN()
                                / G);
        models.put(
                "bridle-limit",
                row ->
                        Sling.bridleLimitKg(
                                row.number("legLimitKg"),
                                row.number("heightM"),
                                row.number("longestLegM")));
        models.put(
                "hitch-basket",
                row ->
                        100
                                * Hitch.BASKET.limitFactor(
                                        Hitch.Material.WIRE_ROPE,
                                        Math.toRadians(row.number("angleDeg")),
                                        25));
        models.put("hitch-manila", HangingReferenceTest::manilaLb);
    }

    private static double manilaLb(Case row) {
        double limit =
                row.number("verticalLb")
                        * Hitch.valueOf(row.text("hitch"))
                                .limitFactor(
                                        Hitch.Material.FIBRE_ROPE,
                                        Math.toRadians(90 - row.number("fromPlumbDeg")),
                                        25);
        assertThat(limit).isLessThanOrEqualTo(row.expected() + 0.01);
        return limit;
    }

    private static void rigging(Map<String, ToDoubleFunction<Case>> models) {
        models.put(
                "shackle-field",
                row ->
                        Units.kgToLb(
                                Sling.shackleFieldKg(Units.inchToM(row.number("diameterInch")))));
        models.put(
                "shackle-table",
                row ->
                        Sling.shackleFieldKg(Units.inchToM(row.number("diameterInch")))
                                        <= Units.shortTonToKg(row.number("printedShortTon"))
                                ? 1
                                : 0);
        models.put(
                "shackle-aslant",
                row ->
                        100
                                * (1
                                        - Sling.shackleAslantFactor(
                                                Math.toRadians(row.number("angleDeg")))));
        models.put(
                "sling-breaking",
                row -> Sling.limitKg(row.number("breakingN"), Sling.BREAKING_FACTOR));
        models.put(
                "attachment-limit",
                row ->
                        Sling.attachmentLimitN(row.number("massKg"))
                                / 1000
                                * (row.text("ultimate").equals("true")
                                        ? Sling.ULTIMATE_FACTOR
                                        : 1));
    }

    private static void density(Map<String, ToDoubleFunction<Case>> models) {
        models.put(
                "wood-density",
                row ->
                        DensityBand.ofWood(
                                        row.number("gravityRatio"), row.number("moistureFraction"))
                                .likelyKgPerM3());
        models.put(
                "wood-density-rule",
                row ->
                        DensityBand.ofWood(row.number("gravityRatio"), 0.1).likelyKgPerM3()
                                / Units.lbPerFt3ToKgPerM3(1));
        models.put(
                "material-density",
                row ->
                        Material.valueOf(row.text("material")).band().likelyKgPerM3()
                                / Units.lbPerFt3ToKgPerM3(1));
        models.put(
                "material-mass",
                row ->
                        Material.CONCRETE.band().likelyKgPerM3()
                                / Units.lbPerFt3ToKgPerM3(1)
                                * row.number("volumeFt3"));
        models.put(
                "cylinder-drag",
                row -> ShapeDrag.cylinderCoefficient(row.number("slendernessRatio")));
    }

    private static void poles(Map<String, ToDoubleFunction<Case>> models) {
        models.put(
                "pole-class",
                row -> Units.mToInch(PoleShape.classTopDiameterM((int) row.number("class"))));
        models.put(
                "pole-setting",
                row -> Units.mToFt(PoleShape.settingDepthM(Units.ftToM(row.number("lengthFt")))));
        models.put(
                "pole-top",
                row -> {
                    double length = Units.ftToM(row.number("lengthFt"));
                    return length - PoleShape.settingDepthM(length);
                });
        models.put(
                "pole-mass",
                row ->
                        Units.kgToLb(
                                PoleMass.of(printed(row), Material.TREATED_FIR.band()).likelyKg()));
        models.put("pole-volume", row -> printed(row).volumeM3() / Math.pow(Units.ftToM(1), 3));
        models.put("pole-centre", row -> metric(row).centreFromButtM());
        models.put(
                "pole-frustum-mass",
                row ->
                        PoleMass.of(
                                        metric(row),
                                        DensityBand.ofExactly(row.number("densityKgPerM3")))
                                .likelyKg());
    }

    private static PoleShape printed(Case row) {
        return PoleShape.ofGirths(
                Units.ftToM(row.number("lengthFt")),
                Units.inchToM(row.number("topGirthInch")),
                Units.inchToM(row.number("gaugeGirthInch")),
                Units.ftToM(6));
    }

    private static PoleShape metric(Case row) {
        return new PoleShape(row.number("lengthM"), row.number("buttM"), row.number("topM"));
    }

    private static void wake(Map<String, ToDoubleFunction<Case>> models) {
        models.put("induced-level", row -> InducedFlow.levelRatio(row.number("forwardRatio")));
        models.put("induced-climb", row -> InducedFlow.climbRatio(row.number("climbRatio")));
        models.put(
                "wake-far",
                row ->
                        Downwash.of(
                                        MomentumHover.of(2250, 5.345, 1.225),
                                        5.345,
                                        1.225,
                                        row.number("belowM"))
                                .downMPerS());
        models.put(
                "wake-radius",
                row ->
                        Downwash.of(
                                        MomentumHover.of(2250, 5.345, 1.225),
                                        row.number("rotorRadiusM"),
                                        1.225,
                                        1000)
                                .wakeRadiusM());
        models.put("keep-off", row -> Downwash.keepOffM(row.number("rotorRadiusM")));
    }

    private static void vortex(Map<String, ToDoubleFunction<Case>> models) {
        models.put("vortex-upper", row -> ratio(row).fromMPerS());
        models.put("vortex-lower", row -> ratio(row).toMPerS());
        models.put("vortex-upper-feet", row -> Units.mPerSToFtPerMinute(real(row).fromMPerS()));
        models.put("vortex-lower-feet", row -> Units.mPerSToFtPerMinute(real(row).toMPerS()));
    }

    private static VortexRing.Band ratio(Case row) {
        return new VortexRing(1, row.number("forwardRatio"), 1).findBand().orElseThrow();
    }

    private static VortexRing.Band real(Case row) {
        double induced =
                MomentumHover.of(row.number("massKg"), 5.345, row.number("densityKgPerM3"))
                        .inducedMPerS();
        return new VortexRing(1, Units.ktToMPerS(row.number("airspeedKt")), induced)
                .findBand()
                .orElseThrow();
    }
}
