package underhook.core.wire;

/**
 * Between which two curves a wire hangs in one span.
 *
 * @param spanM level distance of the supports, m, above 0
 * @param heightDiffM second support minus first, m
 * @param tightestM largest level tension over weight per length it can have, m; infinite is straight
 * @param slackestM smallest level tension over weight per length it can have, m
 */
public record SagRange(double spanM, double heightDiffM, double tightestM, double slackestM) {
    /** With so many spans of level tension over weight the sag is below a millionth of the span. */
    private static final double STRAIGHT_SPANS_RATIO = 2e5;

    public SagRange {
        if (!(spanM > 0 && spanM < Double.POSITIVE_INFINITY && Double.isFinite(heightDiffM))) {
            throw new IllegalArgumentException(
                    "spanM (" + spanM + ") or heightDiffM (" + heightDiffM + ") is out of range.");
        }
        if (!(slackestM > 0 && slackestM <= tightestM)) {
            throw new IllegalArgumentException(
                    "slackestM ("
                            + slackestM
                            + ") must not be above tightestM ("
                            + tightestM
                            + ").");
        }
    }

    /**
     * Least vertical distance from the chord down to the wire, m.
     *
     * @param alongFraction 0 at the first support, 1 at the second
     */
    public double leastM(double alongFraction) {
        return sagM(tightestM, alongFraction);
    }

    /**
     * Largest vertical distance from the chord down to the wire, m.
     *
     * @param alongFraction 0 at the first support, 1 at the second
     */
    public double mostM(double alongFraction) {
        return sagM(slackestM, alongFraction);
    }

    private double sagM(double parameterM, double alongFraction) {
        if (!(alongFraction >= 0 && alongFraction <= 1)) {
            throw new IllegalArgumentException(
                    "alongFraction (" + alongFraction + ") must lie in [0, 1].");
        }
        if (parameterM > STRAIGHT_SPANS_RATIO * Math.hypot(spanM, heightDiffM)) {
            return 0;
        }
        Catenary curve = Catenary.ofParameter(spanM, heightDiffM, parameterM);
        double chordM = alongFraction * heightDiffM;
        return Math.max(0, chordM - curve.heightAboveFirstM(alongFraction * spanM));
    }
}
