package underhook.app.calc;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import underhook.core.finding.Finding;
import underhook.core.finding.Outcome;
import underhook.core.pole.GuyedPole;
import underhook.core.pole.Guys;
import underhook.core.unit.Units;
import underhook.core.wire.Catenary;

/** Wires, poles and guys. */
final class PoleTopics {
    private static final Flag ATTACH = Flag.positive("attach-m", 100);
    private static final Flag CENTRE = Flag.positive("cg-m", 100).optional();
    private static final Flag LEAN = Flag.number("lean-deg", 0, 90).below();

    static final List<Topic> ALL =
            List.of(
                    new Topic(
                            "sag",
                            List.of(
                                    Flag.positive("span-m", 10000),
                                    Flag.number("height-diff-m", -5000, 5000),
                                    Flag.positive("weight-n-per-m", 10000),
                                    Flag.positive("tension-n", 1e8)),
                            PoleTopics::sag),
                    new Topic(
                            "guy",
                            List.of(
                                    Flag.positive("pole-mass-kg", 100000),
                                    Flag.positive("pole-length-m", 100),
                                    ATTACH,
                                    Flag.number("guy-angle-deg", 0, 90).below(),
                                    LEAN,
                                    CENTRE),
                            PoleTopics::guy),
                    new Topic(
                            "guys",
                            List.of(
                                    new Flag(
                                            "azimuths-deg",
                                            Flag.Kind.NUMBERS,
                                            true,
                                            0,
                                            360,
                                            false,
                                            false)),
                            PoleTopics::guys));

    private PoleTopics() {}

    private static Outcome<Map<String, Object>> sag(Flags flags) {
        Catenary wire =
                Catenary.of(
                        flags.number("span-m"),
                        flags.number("height-diff-m"),
                        flags.number("weight-n-per-m"),
                        flags.number("tension-n"));
        return new Answer()
                .with("sagM", wire.sagM())
                .with("lengthM", wire.lengthM())
                .with("lowestAtM", wire.lowestAtM())
                .with("highestTensionN", wire.highestTensionN())
                .from("catenary y = a cosh((x - x0)/a), a = H/w", "DERIVED")
                .done();
    }

    private static Outcome<Map<String, Object>> guy(Flags flags) {
        double length = flags.number("pole-length-m");
        double centre = flags.numberOr("cg-m", length / 2);
        double angle = flags.number("guy-angle-deg");
        double lean = flags.number("lean-deg");
        List<Finding> faults = new ArrayList<>();
        if (flags.number("attach-m") > length) {
            faults.add(tooFar(ATTACH, flags.number("attach-m"), "at most the pole's length"));
        }
        if (centre > length) {
            faults.add(tooFar(CENTRE, centre, "at most the pole's length"));
        }
        if (!(lean + angle < 90)) {
            faults.add(
                    tooFar(LEAN, lean, "below 90 less the guy's angle, or the guy holds nothing"));
        }
        if (!faults.isEmpty()) {
            return Outcome.refused(faults);
        }
        double tension =
                new GuyedPole(
                                flags.number("pole-mass-kg"),
                                centre,
                                flags.number("attach-m"),
                                Units.degToRad(angle))
                        .tensionN(Units.degToRad(lean));
        return new Answer()
                .with("tensionN", tension)
                .from("T = m g c sin(lean)/(h cos(lean + guy angle)), foot hinged", "DERIVED")
                .done();
    }

    private static Finding tooFar(Flag flag, double value, String limit) {
        return Flags.outOfRange("guy", flag, Double.toString(value), limit);
    }

    private static Outcome<Map<String, Object>> guys(Flags flags) {
        Guys guys = new Guys(flags.numbers("azimuths-deg").stream().map(Units::degToRad).toList());
        Answer answer =
                new Answer()
                        .with("largestGapDeg", Units.radToDeg(guys.largestGapRad()))
                        .with("holds", guys.holds())
                        .with("worstFactor", guys.findWorstFactor().orElse(null));
        if (!guys.holds()) {
            answer.with(
                    "proposedAzimuthsDeg",
                    guys.proposeHolding().azimuthsTrueRad().stream().map(Units::radToDeg).toList());
        }
        return answer.from("gap below 180 deg; worst pull 1/sin(gap) above 90 deg", "DERIVED")
                .saying(guys.findings("guys"))
                .done();
    }
}
