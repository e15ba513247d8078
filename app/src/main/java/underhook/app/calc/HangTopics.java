package underhook.app.calc;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.line.Approach;
import underhook.core.line.Arrival;
import underhook.core.line.HangingLine;
import underhook.core.line.LineTrail;
import underhook.core.line.Pendulum;
import underhook.core.line.SlowDownLimits;
import underhook.core.line.SlungLoad;
import underhook.core.line.Swing;
import underhook.core.line.SwingAir;
import underhook.core.load.Trail;
import underhook.core.unit.Units;

/** How a load trails and swings. */
final class HangTopics {
    private static final Flag MASS = Flag.positive("mass-kg", 100000);
    private static final Flag DRAG_AREA = Flag.number("drag-area-m2", 0, 1000);
    private static final Flag DENSITY = Flag.number("density-kgm3", 0.3, 2);
    private static final Flag LINE_MASS = Flag.number("line-kg", 0, 1000).optional();
    private static final Flag LINE_WIDTH = Flag.number("line-mm", 0, 200).optional();

    /** The period is taken to be off so far either way. @source PRACTICE own setting */
    private static final double PERIOD_SPREAD_FRACTION = 0.1;

    /** How long the load is watched over the place, s. */
    private static final double WATCH_S = 120;

    static final List<Topic> ALL =
            List.of(
                    new Topic(
                            "trail",
                            List.of(
                                    MASS,
                                    DRAG_AREA,
                                    Flag.number("airspeed-kt", 0, 200),
                                    DENSITY,
                                    Flag.positive("line-m", 500).optional(),
                                    LINE_MASS,
                                    LINE_WIDTH),
                            HangTopics::trail),
                    new Topic(
                            "swing",
                            List.of(
                                    Flag.positive("length-m", 500),
                                    Flag.number("amplitude-deg", 0, 90).optional(),
                                    Flag.positive("machine-kg", 100000).optional(),
                                    MASS.optional(),
                                    Flag.positive("speed-kt", 190).optional(),
                                    Flag.positive("deceleration-mps2", 10).optional(),
                                    Flag.positive("nose-up-deg", 45).optional(),
                                    DRAG_AREA.optional(),
                                    DENSITY.optional(),
                                    LINE_MASS,
                                    LINE_WIDTH,
                                    Flag.number("headwind-kt", -60, 60).optional(),
                                    Flag.positive("still-m", 100).optional()),
                            HangTopics::swing));

    private HangTopics() {}

    private static Outcome<Map<String, Object>> trail(Flags flags) {
        double mass = flags.number("mass-kg");
        double area = flags.number("drag-area-m2");
        double airspeed = Units.ktToMPerS(flags.number("airspeed-kt"));
        double density = flags.number("density-kgm3");
        Trail trail = Trail.of(mass, area, airspeed, density);
        Answer answer =
                new Answer()
                        .with("trailAngleDeg", Units.radToDeg(trail.trailAngleRad()))
                        .with("lineTensionN", trail.lineTensionN())
                        .with("dragN", trail.dragN())
                        .from("tan(angle) = drag/weight; drag = rho V^2 CdA/2", "DERIVED");
        if (flags.has("line-m")) {
            LineTrail line =
                    LineTrail.of(
                            line(flags, "line-m"),
                            mass,
                            area,
                            new LineTrail.Flow(airspeed, density));
            answer.with("hookAngleDeg", Units.radToDeg(line.hookAngleRad()))
                    .with("hookTensionN", line.hookTensionN())
                    .with("aftM", line.aftM())
                    .with("belowM", line.belowM())
                    .from("T dt/ds = rho V^2 Cd d/2 cos(t)^2 - w sin(t)", "HOERNER-1965");
        }
        return answer.done();
    }

    private static HangingLine line(Flags flags, String length) {
        return new HangingLine(
                flags.number(length),
                flags.numberOr("line-kg", 0),
                Units.mmToM(flags.numberOr("line-mm", 0)));
    }

    private static Outcome<Map<String, Object>> swing(Flags flags) {
        double length = flags.number("length-m");
        Answer answer =
                new Answer()
                        .with(
                                "periodS",
                                Pendulum.periodS(
                                        length, Units.degToRad(flags.numberOr("amplitude-deg", 0))))
                        .from("T = 2 pi sqrt(L/g)/agm(1, cos(amplitude/2))", "DERIVED");
        List<Finding> missing = new ArrayList<>();
        if (flags.has("machine-kg")) {
            require(flags, List.of("mass-kg"), missing);
        }
        if (flags.has("speed-kt")) {
            require(
                    flags,
                    List.of(
                            "mass-kg",
                            "drag-area-m2",
                            "density-kgm3",
                            "deceleration-mps2",
                            "nose-up-deg"),
                    missing);
        }
        if (!missing.isEmpty()) {
            return Outcome.refused(missing);
        }
        if (flags.has("machine-kg")) {
            answer.with(
                            "freePeriodS",
                            Pendulum.freePeriodS(
                                    length, flags.number("mass-kg") / flags.number("machine-kg")))
                    .from("T/sqrt(1 + m/M): the machine gives way", "DERIVED");
        }
        if (flags.has("speed-kt")) {
            arrive(flags, answer);
        }
        return answer.done();
    }

    private static void require(Flags flags, List<String> names, List<Finding> missing) {
        for (String name : names) {
            if (!flags.has(name)) {
                missing.add(
                        Finding.of(
                                FindingCode.FIELD_MISSING,
                                Severity.STOP,
                                name,
                                "calc swing",
                                "--" + name + " is missing: it is needed with the others given."));
            }
        }
    }

    private static void arrive(Flags flags, Answer answer) {
        SlungLoad load =
                line(flags, "length-m")
                        .carrying(flags.number("mass-kg"), flags.number("drag-area-m2"));
        SwingAir air =
                new SwingAir(
                        flags.number("density-kgm3"),
                        -Units.ktToMPerS(flags.numberOr("headwind-kt", 0)),
                        0,
                        SwingAir.Gust.NONE);
        SlowDownLimits limits =
                new SlowDownLimits(
                        flags.number("deceleration-mps2"),
                        Units.degToRad(flags.number("nose-up-deg")),
                        PERIOD_SPREAD_FRACTION);
        Swing.Watch watch = new Swing.Watch(WATCH_S, flags.numberOr("still-m", 1));
        List<Map<String, Object>> ways = new ArrayList<>();
        for (Arrival arrival :
                new Approach(load, air, limits, watch)
                        .compare(Units.ktToMPerS(flags.number("speed-kt")))) {
            ways.add(way(arrival));
            answer.saying(slack(arrival));
        }
        answer.with("ways", List.copyOf(ways))
                .from("two half steps half a period apart", "SINGER-SEERING-1990")
                .from("spherical pendulum with drag, integrated", "DORMAND-PRINCE-1980")
                .from("period off by 10 % either way for worstResidualM", "PRACTICE");
    }

    private static Map<String, Object> way(Arrival arrival) {
        Map<String, Object> way = new LinkedHashMap<>();
        way.put("way", arrival.slowDown().kind().name().toLowerCase(Locale.ROOT));
        way.put("beginM", arrival.beginM());
        way.put("lastsS", arrival.lastsS());
        way.put("hardestMPerS2", arrival.hardestMPerS2());
        way.put("noseUpDeg", Units.radToDeg(arrival.noseUpRad()));
        way.put("greatestForeDeg", Units.radToDeg(arrival.swing().greatestForeRad()));
        way.put("overshootM", arrival.swing().overshootM());
        way.put("residualM", arrival.residualM());
        if (Double.isFinite(arrival.worstResidualM())) {
            way.put("worstResidualM", arrival.worstResidualM());
        }
        way.put("settled", arrival.swing().settled());
        way.put("settlingS", arrival.swing().settlingS());
        way.put("hookTensionN", arrival.swing().hookTensionN());
        way.put("slack", !arrival.swing().isWhole());
        return way;
    }

    private static List<Finding> slack(Arrival arrival) {
        if (arrival.swing().isWhole() && Double.isFinite(arrival.worstResidualM())) {
            return List.of();
        }
        return List.of(
                Finding.of(
                        FindingCode.LINE_SLACK,
                        Severity.CAUTION,
                        arrival.slowDown().kind().name().toLowerCase(Locale.ROOT),
                        "DERIVED",
                        "Slowing down in this way the line goes slack or the load rises beyond 80°."));
    }
}
