package underhook.core.wire;

import java.util.function.DoublePredicate;

/**
 * A wire between two supports at any heights.
 *
 * <p>Symbols: a = tension over weight per length, s = span / 2a, u = the lowest point's distance before
 * mid-span over a. All quantities are written so that shallow and steep spans keep their digits.
 *
 * @param spanM level distance of the supports, m
 * @param heightDiffM second support minus first, m
 * @param parameterM level tension over weight per length, m
 * @param levelTensionN level part of the tension, the same all along, N
 */
public record Catenary(double spanM, double heightDiffM, double parameterM, double levelTensionN) {
    public Catenary {
        if (!(spanM > 0 && spanM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("spanM (" + spanM + ") must be above 0.");
        }
        if (!Double.isFinite(heightDiffM)) {
            throw new IllegalArgumentException("heightDiffM (" + heightDiffM + ") must be finite.");
        }
        if (!(parameterM > 0 && parameterM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("parameterM (" + parameterM + ") must be above 0.");
        }
        if (!(spanM / parameterM <= 40)) {
            throw new IllegalArgumentException(
                    "spanM over parameterM (" + spanM / parameterM + ") must not be above 40.");
        }
    }

    /**
     * The wire of a level tension.
     *
     * @param spanM level distance of the supports, m, above 0
     * @param heightDiffM second support minus first, m
     * @param weightNPerM weight per length, N/m, above 0
     * @param levelTensionN level part of the tension, N, above a fortieth of span times weight
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED catenary of a flexible wire of even weight
     */
    public static Catenary of(
            double spanM, double heightDiffM, double weightNPerM, double levelTensionN) {
        if (!(weightNPerM > 0 && weightNPerM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "weightNPerM (" + weightNPerM + ") must be above 0.");
        }
        if (!(levelTensionN > 0 && levelTensionN < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "levelTensionN (" + levelTensionN + ") must be above 0.");
        }
        return new Catenary(spanM, heightDiffM, levelTensionN / weightNPerM, levelTensionN);
    }

    /**
     * The wire whose level tension over weight per length is known, for an even weight of 1 N/m.
     *
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static Catenary ofParameter(double spanM, double heightDiffM, double parameterM) {
        return new Catenary(spanM, heightDiffM, parameterM, parameterM);
    }

    /**
     * Level tension over weight per length of a wire with a known sag, m; rounded to the slack side, by
     * less than a part in 10¹².
     *
     * @param sagM vertical distance from chord to wire at mid-span, m, above 0; a sag that no wire of the
     *     allowed range reaches gives the slackest of the range
     * @source DERIVED sag falls steadily with the tension, so halving finds the one that fits
     */
    public static double parameterForSagM(double spanM, double heightDiffM, double sagM) {
        if (!(sagM > 0 && sagM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("sagM (" + sagM + ") must be above 0.");
        }
        return largestM(
                spanM, parameterM -> ofParameter(spanM, heightDiffM, parameterM).sagM() >= sagM);
    }

    /**
     * Level tension over weight per length of a wire of a known length, m; infinite when it is no longer
     * than the chord.
     *
     * @source DERIVED length falls steadily with the tension, so halving finds the one that fits
     */
    public static double parameterForLengthM(double spanM, double heightDiffM, double lengthM) {
        double chordM = Math.hypot(spanM, heightDiffM);
        if (!(lengthM > chordM * (1 + 1e-14))) {
            return Double.POSITIVE_INFINITY;
        }
        return largestM(
                spanM,
                parameterM -> ofParameter(spanM, heightDiffM, parameterM).lengthM() >= lengthM);
    }

    /** The largest parameter for which the wire still hangs that much, from a 39th of the span on. */
    private static double largestM(double spanM, DoublePredicate hangsEnough) {
        double low = spanM / 39;
        double high = spanM;
        while (hangsEnough.test(high)) {
            low = high;
            high *= 2;
        }
        while (high - low > 1e-13 * high) {
            double middle = (low + high) / 2;
            if (hangsEnough.test(middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Vertical distance from chord to wire at mid-span, m. @source DERIVED 2 a cosh(u) sinh²(s/2) */
    public double sagM() {
        double half = Math.sinh(spanM / (4 * parameterM));
        return 2 * parameterM * Math.cosh(tiltRatio()) * half * half;
    }

    /** Length of the wire, m. @source DERIVED √(height difference² + (2 a sinh s)²) */
    public double lengthM() {
        return Math.hypot(heightDiffM, levelLengthM());
    }

    /**
     * Level distance of the curve's lowest point from the first support, m; outside the span on steep
     * ones, where the lower support is the wire's lowest point.
     *
     * @source DERIVED span/2 − a u
     */
    public double lowestAtM() {
        return spanM / 2 - parameterM * tiltRatio();
    }

    /** Tension at the higher support, N. @source DERIVED level tension times cosh of the distance over a */
    public double highestTensionN() {
        return levelTensionN * Math.cosh(Math.abs(tiltRatio()) + spanM / (2 * parameterM));
    }

    /**
     * Height of the wire over the first support, m.
     *
     * @param alongM level distance from the first support, m, in [0, span]
     * @throws IllegalArgumentException outside the span
     * @source DERIVED 2 a sinh(x/2a) sinh((x/2 − lowest)/a)
     */
    public double heightAboveFirstM(double alongM) {
        if (!(alongM >= 0 && alongM <= spanM)) {
            throw new IllegalArgumentException("alongM (" + alongM + ") must lie in the span.");
        }
        return 2
                * parameterM
                * Math.sinh(alongM / (2 * parameterM))
                * Math.sinh((alongM - spanM) / (2 * parameterM) + tiltRatio());
    }

    /** u: asinh(height difference / (2 a sinh s)). */
    private double tiltRatio() {
        double slope = heightDiffM / levelLengthM();
        double size = Math.abs(slope);
        double value = Math.log1p(size + size * size / (1 + Math.hypot(1, size)));
        return slope < 0 ? -value : value;
    }

    private double levelLengthM() {
        return 2 * parameterM * Math.sinh(spanM / (2 * parameterM));
    }
}
