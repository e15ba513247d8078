package underhook.core.pole;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.unit.Units;

/**
 * The directions in which a pole is guyed.
 *
 * <p>A push between two neighbouring guys is shared by those two. With the gap g the larger pull is at most
 * 1/sin(g) of the push once g is over a quarter turn, and grows without bound towards a half turn.
 *
 * @param azimuthsTrueRad guy directions from the pole, rad from true north, ascending in [0, 2π)
 */
public record Guys(List<Double> azimuthsTrueRad) {
    /** From here on the gap is worth a note, rad. @source PRACTICE own setting */
    private static final double NOTE_GAP_RAD = Math.toRadians(125);

    /** From here on the gap is worth a caution, rad. @source PRACTICE own setting */
    private static final double CAUTION_GAP_RAD = Math.toRadians(150);

    /** A gap is called a half turn already this much below, rad: no staking is truer. */
    private static final double ROUNDING_RAD = 1e-9;

    public Guys {
        for (double azimuth : azimuthsTrueRad) {
            if (!Double.isFinite(azimuth)) {
                throw new IllegalArgumentException(
                        "azimuthsTrueRad (" + azimuth + ") must be finite.");
            }
        }
        azimuthsTrueRad = azimuthsTrueRad.stream().map(Units::wrapTwoPiRad).sorted().toList();
        if (azimuthsTrueRad.isEmpty()) {
            throw new IllegalArgumentException("azimuthsTrueRad must not be empty.");
        }
    }

    /** Largest gap between neighbours, rad, in (0, 2π]. @source DERIVED */
    public double largestGapRad() {
        int last = azimuthsTrueRad.size() - 1;
        double largest = azimuthsTrueRad.get(0) + 2 * Math.PI - azimuthsTrueRad.get(last);
        for (int i = 0; i < last; i++) {
            largest = Math.max(largest, azimuthsTrueRad.get(i + 1) - azimuthsTrueRad.get(i));
        }
        return largest;
    }

    /** Whether they hold a push from every side. @source DERIVED guys only pull */
    public boolean holds() {
        return largestGapRad() < Math.PI - ROUNDING_RAD;
    }

    /**
     * Largest pull of one guy over the level force at its height, at worst direction; empty when they do
     * not hold.
     *
     * <p>Level part of the pull; a guy at an angle above the ground pulls 1/cos of it.
     *
     * @source DERIVED equilibrium of a push between two guys
     */
    public Optional<Double> findWorstFactor() {
        if (!holds()) {
            return Optional.empty();
        }
        double gap = largestGapRad();
        return Optional.of(gap <= Math.PI / 2 ? 1.0 : 1 / Math.sin(gap));
    }

    /** What must be said of the gaps, about the given place: STOP at a half turn. */
    public List<Finding> findings(String subject) {
        double gap = largestGapRad();
        if (!holds()) {
            return List.of(
                    finding(
                            subject,
                            Severity.STOP,
                            "180",
                            "The pole falls into the gap: guys only pull. These would hold: "
                                    + degrees(proposeHolding())
                                    + "."));
        }
        if (gap > CAUTION_GAP_RAD) {
            return List.of(wide(subject, Severity.CAUTION, "150"));
        }
        if (gap > NOTE_GAP_RAD) {
            return List.of(wide(subject, Severity.NOTE, "125"));
        }
        return List.of();
    }

    /**
     * Guys that hold, as near to these as one can get: these if their gaps are at most 150°, else with one
     * moved into the middle of the widest gap left, else evenly spaced; never fewer than three.
     *
     * @source PRACTICE moves as few stakes as possible
     */
    public Guys proposeHolding() {
        if (largestGapRad() <= CAUTION_GAP_RAD) {
            return this;
        }
        Guys best = azimuthsTrueRad.size() == 2 ? withMiddleOfWidest(azimuthsTrueRad) : evenly();
        if (azimuthsTrueRad.size() >= 3) {
            Guys moved = evenly();
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < azimuthsTrueRad.size(); i++) {
                List<Double> rest = new ArrayList<>(azimuthsTrueRad);
                rest.remove(i);
                Guys candidate = withMiddleOfWidest(rest);
                if (candidate.largestGapRad() < least) {
                    least = candidate.largestGapRad();
                    moved = candidate;
                }
            }
            best = moved;
        }
        return best.largestGapRad() <= CAUTION_GAP_RAD ? best : evenly();
    }

    private static Guys withMiddleOfWidest(List<Double> rest) {
        double widest = 0;
        double middle = 0;
        for (int i = 0; i < rest.size(); i++) {
            double next = i + 1 < rest.size() ? rest.get(i + 1) : rest.get(0) + 2 * Math.PI;
            if (next - rest.get(i) > widest) {
                widest = next - rest.get(i);
                middle = (next + rest.get(i)) / 2;
            }
        }
        List<Double> all = new ArrayList<>(rest);
        all.add(middle);
        return new Guys(all);
    }

    /** Evenly spaced from the first guy on, at least three. */
    private Guys evenly() {
        int count = Math.max(3, azimuthsTrueRad.size());
        List<Double> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(azimuthsTrueRad.get(0) + 2 * Math.PI * i / count);
        }
        return new Guys(all);
    }

    private Finding wide(String subject, Severity severity, String limit) {
        return finding(
                subject,
                severity,
                limit,
                String.format(
                        Locale.ROOT,
                        "A push into the gap pulls one guy with up to %.2f times its force.",
                        findWorstFactor().orElseThrow()));
    }

    private Finding finding(String subject, Severity severity, String limit, String message) {
        FindingCode code =
                severity == Severity.STOP ? FindingCode.GUY_GAP : FindingCode.GUY_GAP_WIDE;
        String value = String.format(Locale.ROOT, "%.1f", Math.toDegrees(largestGapRad()));
        return new Finding(
                code,
                severity,
                subject,
                value,
                limit,
                "°",
                "PRACTICE",
                "The largest gap between guys is " + value + "°. " + message);
    }

    private static String degrees(Guys guys) {
        StringBuilder text = new StringBuilder();
        for (double azimuth : guys.azimuthsTrueRad()) {
            text.append(text.isEmpty() ? "" : ", ")
                    .append(String.format(Locale.ROOT, "%03.0f°", Math.toDegrees(azimuth)));
        }
        return text.toString();
    }
}
