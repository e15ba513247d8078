package underhook.core.job;

import java.util.List;
import java.util.OptionalDouble;

/**
 * How a wire hangs, as far as it is known.
 *
 * @param kind what it is, which says what is assumed where nothing is known
 * @param supportTopsM highest wire above ground at each support, m; empty when one height stands for all
 * @param sagM vertical distance from chord to wire at mid-span of the longest span, m, as stated
 * @param levelTensionN level part of the tension, N, as stated
 * @param weightNPerM weight per length, N/m, as stated
 * @param diameterM diameter, m, as stated
 * @param heightEstimated whether the heights are a default of the kind and were never measured
 */
public record Hanging(
        WireKind kind,
        List<Double> supportTopsM,
        OptionalDouble sagM,
        OptionalDouble levelTensionN,
        OptionalDouble weightNPerM,
        OptionalDouble diameterM,
        boolean heightEstimated) {
    /** Nothing is known but what it is. */
    public static Hanging of(WireKind kind, boolean heightEstimated) {
        return new Hanging(
                kind,
                List.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                heightEstimated);
    }

    public Hanging {
        supportTopsM = List.copyOf(supportTopsM);
        boolean good =
                supportTopsM.stream().allMatch(Hanging::isAbove)
                        && sagM.stream().allMatch(Hanging::isAbove)
                        && levelTensionN.stream().allMatch(Hanging::isAbove)
                        && weightNPerM.stream().allMatch(Hanging::isAbove)
                        && diameterM.stream().allMatch(Hanging::isAbove);
        if (!good) {
            throw new IllegalArgumentException("how the wire hangs has a value out of range.");
        }
    }

    private static boolean isAbove(Double figureRatio) {
        return figureRatio > 0 && figureRatio < Double.POSITIVE_INFINITY;
    }
}
