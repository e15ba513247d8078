package underhook.app.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import underhook.core.fall.Fall;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.line.Bridle;
import underhook.core.line.HungBridle;
import underhook.core.line.LegTension;
import underhook.core.line.Sling;
import underhook.core.unit.Units;

/** What hangs on the line, and what falls off it. */
final class LineTopics {
    private static final Flag MASS = Flag.positive("mass-kg", 100000);
    private static final Flag DRAG_AREA = Flag.number("drag-area-m2", 0, 1000);
    private static final Flag DENSITY = Flag.number("density-kgm3", 0.3, 2);

    static final List<Topic> ALL =
            List.of(
                    new Topic(
                            "legs",
                            List.of(
                                    MASS,
                                    Flag.number("legs", 1, 8).whole(),
                                    Flag.number("angle-deg", 30, 90),
                                    Flag.of("rigid", Flag.Kind.YES_NO).optional(),
                                    Flag.positive("leg-limit-kg", 100000).optional()),
                            LineTopics::legs),
                    new Topic(
                            "bridle",
                            List.of(
                                    MASS,
                                    Flag.number("d1-m", 0, 100),
                                    Flag.number("d2-m", 0, 100),
                                    Flag.positive("height-m", 100),
                                    Flag.positive("leg1-m", 100).optional(),
                                    Flag.positive("leg2-m", 100).optional(),
                                    Flag.number("attach-above-m", -100, 100).optional()),
                            LineTopics::bridle),
                    new Topic(
                            "fall",
                            List.of(
                                    Flag.positive("height-m", 3000),
                                    Flag.number("speed-kt", 0, 200),
                                    MASS.optional(),
                                    DRAG_AREA.optional(),
                                    DENSITY.optional(),
                                    Flag.number("tailwind-kt", -100, 100).optional()),
                            LineTopics::fall));

    private LineTopics() {}

    private static Outcome<Map<String, Object>> legs(Flags flags) {
        LegTension legs =
                LegTension.of(
                        flags.number("mass-kg"),
                        flags.whole("legs"),
                        Units.degToRad(flags.number("angle-deg")),
                        flags.isSet("rigid"));
        Answer answer =
                new Answer()
                        .with("legTensionN", legs.legTensionN())
                        .with("factor", legs.angleFactor())
                        .with("legsCounted", (double) legs.legsCounted())
                        .with("weightPerLegN", legs.legTensionN() / legs.angleFactor())
                        .from("tension = W/(n sin(angle))", "LOAD-ANGLE");
        if (flags.has("leg-limit-kg")) {
            answer.with(
                    "limitKg",
                    Sling.legsLimitKg(
                            flags.number("leg-limit-kg"),
                            flags.whole("legs"),
                            Units.degToRad(flags.number("angle-deg")),
                            flags.isSet("rigid")));
        }
        if (flags.isSet("rigid")) {
            answer.from("a rigid load hangs on two of three or more legs", "PRACTICE");
        }
        return answer.done();
    }

    private static Outcome<Map<String, Object>> bridle(Flags flags) {
        Bridle bridle =
                Bridle.of(
                        flags.number("mass-kg"),
                        flags.number("d1-m"),
                        flags.number("d2-m"),
                        flags.number("height-m"));
        Answer answer =
                new Answer()
                        .with("tension1N", bridle.tension1N())
                        .with("tension2N", bridle.tension2N())
                        .with("length1M", bridle.length1M())
                        .with("length2M", bridle.length2M())
                        .from(
                                "T1 = W D2 S1/(H (D1 + D2)); T2 = W D1 S2/(H (D1 + D2))",
                                "LOAD-ANGLE-UNEQUAL");
        if (flags.has("leg1-m") || flags.has("leg2-m")) {
            return hung(flags, answer, bridle);
        }
        double heightM = flags.number("height-m");
        return answer.saying(
                        flat(
                                Math.min(
                                        Math.asin(heightM / bridle.length1M()),
                                        Math.asin(heightM / bridle.length2M()))))
                .done();
    }

    /** The same load on legs that were not cut for it; a leg not given is as worked out. */
    private static Outcome<Map<String, Object>> hung(Flags flags, Answer answer, Bridle bridle) {
        HungBridle.Attachments attachments =
                new HungBridle.Attachments(
                        flags.number("d1-m"),
                        flags.number("d2-m"),
                        flags.numberOr("attach-above-m", 0));
        return HungBridle.find(
                        flags.number("mass-kg"),
                        attachments,
                        flags.numberOr("leg1-m", bridle.length1M()),
                        flags.numberOr("leg2-m", bridle.length2M()))
                .map(
                        hung ->
                                answer.with("tiltDeg", Units.radToDeg(hung.tiltRad()))
                                        .with("hung1N", hung.tension1N())
                                        .with("hung2N", hung.tension2N())
                                        .from("hook plumb over the centre of gravity", "DERIVED")
                                        .saying(flat(hung.flatterRad()))
                                        .done())
                .orElseGet(
                        () ->
                                Outcome.refused(
                                        Finding.of(
                                                FindingCode.VALUE_OUT_OF_RANGE,
                                                Severity.STOP,
                                                "leg1-m",
                                                "calc bridle",
                                                "These legs do not meet above the load, or one would have to push.")));
    }

    /** Worked out all the same, for the angle may be what is asked; no plan hangs a load like that. */
    private static List<Finding> flat(double flatterRad) {
        double leastDeg = Units.radToDeg(HungBridle.LEAST_LEG_ANGLE_RAD);
        double standsDeg = Units.radToDeg(flatterRad);
        return standsDeg >= leastDeg - 1e-9
                ? List.of()
                : List.of(
                        new Finding(
                                FindingCode.BRIDLE_TILT,
                                Severity.CAUTION,
                                "bridle",
                                String.format(Locale.ROOT, "%.1f", Math.floor(standsDeg * 10) / 10),
                                String.format(Locale.ROOT, "%.0f", leastDeg),
                                "deg",
                                "PRACTICE",
                                "A leg stands flatter above the level than legs may."));
    }

    private static Outcome<Map<String, Object>> fall(Flags flags) {
        double height = flags.number("height-m");
        double speed = Units.ktToMPerS(flags.number("speed-kt"));
        boolean inAir =
                List.of("mass-kg", "drag-area-m2", "density-kgm3", "tailwind-kt").stream()
                        .anyMatch(flags::has);
        List<Finding> missing = new ArrayList<>();
        for (String name : List.of("mass-kg", "drag-area-m2", "density-kgm3")) {
            if (inAir && !flags.has(name)) {
                missing.add(
                        Finding.of(
                                FindingCode.FIELD_MISSING,
                                Severity.STOP,
                                name,
                                "calc fall",
                                "--"
                                        + name
                                        + " is missing: with the air counted, mass, drag area and density are needed."));
            }
        }
        if (!missing.isEmpty()) {
            return Outcome.refused(missing);
        }
        Fall fall =
                inAir
                        ? Fall.inAir(
                                new Fall.Body(
                                        flags.number("mass-kg"),
                                        flags.number("drag-area-m2"),
                                        flags.number("density-kgm3")),
                                height,
                                speed,
                                Units.ktToMPerS(flags.numberOr("tailwind-kt", 0)))
                        : Fall.vacuum(height, speed);
        return new Answer()
                .with("timeS", fall.timeS())
                .with("throwM", fall.throwM())
                .with("impactMPerS", fall.impactMPerS())
                .from(
                        inAir
                                ? "a = -(rho CdA/2m) |v - w| (v - w) - g, integrated"
                                : "t = sqrt(2 h/g); throw = speed t",
                        "DERIVED")
                .done();
    }
}
