package underhook.core.wire;

import java.util.List;
import java.util.OptionalDouble;
import underhook.core.job.Hanging;

/**
 * How tight and how slack one wire can be in its spans, from what is stated of it.
 *
 * <p>A wire that runs over suspended insulators has one level tension in all spans, so that level tension
 * over weight per length, a, is one number for all of them. It follows from stated tension and weight, or
 * from a stated sag. What was stated holds at one temperature that nobody knows; on the day the wire may
 * be {@value #HOTTER_K} K hotter or {@value #COLDER_K} K colder than then:
 *
 * <ul>
 *   <li>slackest: length as stated, grown by heat as aluminium grows, with no stretch given back. A real
 *       wire shortens a little as its tension falls, so it hangs higher;
 *   <li>tightest: length as stated, shrunk by cold, stretched again as a solid steel bar of its diameter
 *       would be. A real wire stretches more, so it hangs lower. Without diameter and weight it does not
 *       stretch at all, which most often pulls it straight. Then {@value #EARTH_WIRE_FRACTION} of that
 *       sag, because the highest wire may be an earth wire, strung tighter than what was measured.
 * </ul>
 *
 * <p>Where nothing is stated it is straight at the tightest, and hangs {@value #UNKNOWN_SAG_FRACTION} of
 * the span at the slackest.
 */
public final class Slackness {
    /**
     * The wire on the day over the wire when stated, K: sun and current warm a conductor to about 80 °C.
     *
     * @source PRACTICE usual design range of bare conductors
     */
    static final double HOTTER_K = 60;

    /** @source PRACTICE stated on a hot afternoon, flown on a cold morning */
    static final double COLDER_K = 40;

    /**
     * Growth for each kelvin, of aluminium, the largest of all wires; copper has 17e-6, steel 12e-6.
     *
     * @source CPUC-GO95 appendix C (a) for copper and steel; aluminium PRACTICE, from memory
     */
    static final double EXPANSION_COEFFICIENT = 23e-6;

    /** Modulus of solid steel, the stiffest of all wires. @source CPUC-GO95 appendix C (a): 29e6 psi */
    private static final double STIFFEST_PA = 200e9;

    /** @source PRACTICE earth wires are strung with about four fifths of the conductor's sag or more */
    static final double EARTH_WIRE_FRACTION = 0.8;

    /**
     * Sag over span where nothing is stated; conductors have 1 to 4 percent, slack service wires more.
     *
     * @source PRACTICE
     */
    static final double UNKNOWN_SAG_FRACTION = 0.06;

    /** No wire is strung with less sag than this part of its span. @source PRACTICE */
    private static final double TAUTEST_SAG_FRACTION = 0.01;

    private static final int HALVINGS = 200;

    /** Level distance and height difference (second minus first) of two supports, m. */
    public record Size(double spanM, double heightDiffM) {
        public Size {
            if (!(spanM > 0 && Double.isFinite(spanM) && Double.isFinite(heightDiffM))) {
                throw new IllegalArgumentException(
                        "spanM ("
                                + spanM
                                + ") and heightDiffM ("
                                + heightDiffM
                                + ") must be sizes.");
            }
        }

        private double lengthM(double parameterM) {
            return Catenary.ofParameter(spanM, heightDiffM, parameterM).lengthM();
        }
    }

    private final Hanging hanging;
    private final Size longest;
    private final OptionalDouble statedM;

    private Slackness(Hanging hanging, Size longest, OptionalDouble statedM) {
        this.hanging = hanging;
        this.longest = longest;
        this.statedM = statedM;
    }

    /**
     * From what is stated.
     *
     * @param spans all spans of the wire, at least one
     */
    public static Slackness of(Hanging hanging, List<Size> spans) {
        if (spans.isEmpty()) {
            throw new IllegalArgumentException("a wire needs a span.");
        }
        Size longest = spans.get(0);
        for (Size span : spans) {
            longest = span.spanM() > longest.spanM() ? span : longest;
        }
        OptionalDouble statedM = OptionalDouble.empty();
        if (hanging.levelTensionN().isPresent() && hanging.weightNPerM().isPresent()) {
            double parameterM =
                    hanging.levelTensionN().getAsDouble() / hanging.weightNPerM().getAsDouble();
            statedM = OptionalDouble.of(Math.max(parameterM, longest.spanM() / 39));
        } else if (hanging.sagM().isPresent()) {
            statedM =
                    OptionalDouble.of(
                            Catenary.parameterForSagM(
                                    longest.spanM(),
                                    longest.heightDiffM(),
                                    hanging.sagM().getAsDouble()));
        }
        return new Slackness(hanging, longest, statedM);
    }

    /** Whether tension or sag was stated. */
    public boolean isStated() {
        return statedM.isPresent();
    }

    /** Tightest and slackest between two supports. */
    public SagRange range(Size span) {
        if (statedM.isEmpty()) {
            double slackM =
                    Catenary.parameterForSagM(
                            span.spanM(), span.heightDiffM(), UNKNOWN_SAG_FRACTION * span.spanM());
            return new SagRange(span.spanM(), span.heightDiffM(), Double.POSITIVE_INFINITY, slackM);
        }
        double parameterM = statedM.getAsDouble();
        return new SagRange(
                span.spanM(),
                span.heightDiffM(),
                coldM(span, parameterM) / EARTH_WIRE_FRACTION,
                hotM(span, parameterM));
    }

    /**
     * Most sag anywhere between two bends that need not be supports, m. Supports between them make the
     * spans shorter: with one level tension the whole stretch as one span hangs lowest. Where only a sag
     * is stated, the span that it belongs to is not known either: it is no longer than the longest
     * stretch, and no longer than makes the sag a hundredth of it.
     */
    public double mostBetweenBendsM(Size stretch) {
        boolean bySag = hanging.levelTensionN().isEmpty() || hanging.weightNPerM().isEmpty();
        if (bySag && hanging.sagM().isPresent()) {
            double sagM = hanging.sagM().getAsDouble();
            double spanM = Math.min(longest.spanM(), sagM / TAUTEST_SAG_FRACTION);
            double parameterM = Catenary.parameterForSagM(spanM, 0, sagM);
            Size real = new Size(spanM, 0);
            return new SagRange(spanM, 0, Double.POSITIVE_INFINITY, hotM(real, parameterM))
                    .mostM(0.5);
        }
        return range(stretch).mostM(0.5);
    }

    private static double hotM(Size span, double parameterM) {
        double lengthM = span.lengthM(parameterM) * (1 + EXPANSION_COEFFICIENT * HOTTER_K);
        return Catenary.parameterForLengthM(span.spanM(), span.heightDiffM(), lengthM);
    }

    /**
     * Where length shrunk by cold and stretched by the tension that grows with it fit the span.
     *
     * @source DERIVED length(a') = length(a) (1 − expansion × cold) (1 + weight × (a' − a) × chord / span /
     *     stiffness)
     */
    private double coldM(Size span, double parameterM) {
        double shrunkM = span.lengthM(parameterM) * (1 - EXPANSION_COEFFICIENT * COLDER_K);
        double chordM = Math.hypot(span.spanM(), span.heightDiffM());
        if (hanging.diameterM().isEmpty() || hanging.weightNPerM().isEmpty()) {
            return shrunkM <= chordM
                    ? Double.POSITIVE_INFINITY
                    : Catenary.parameterForLengthM(span.spanM(), span.heightDiffM(), shrunkM);
        }
        double diameterM = hanging.diameterM().getAsDouble();
        double stiffnessN = STIFFEST_PA * Math.PI / 4 * diameterM * diameterM;
        double strainPerM =
                hanging.weightNPerM().getAsDouble() * chordM / span.spanM() / stiffnessN;
        double low = parameterM;
        double high = 2 * parameterM;
        while (span.lengthM(high) > shrunkM * (1 + strainPerM * (high - parameterM))) {
            low = high;
            high *= 2;
        }
        for (int i = 0; i < HALVINGS && high - low > 1e-12 * high; i++) {
            double middle = (low + high) / 2;
            if (span.lengthM(middle) > shrunkM * (1 + strainPerM * (middle - parameterM))) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }
}
