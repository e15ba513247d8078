package underhook.core.unit;

/** Checks of a value of any unit, for constructors and formulas; each refuses NaN. */
public final class Ranges {
    private Ranges() {}

    /**
     * Above 0 and finite.
     *
     * @throws IllegalArgumentException naming the variable, its value and the rule
     */
    public static void requirePositive(double value, String name) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    name + " (" + value + ") must be above 0 and finite.");
        }
    }

    /**
     * Not negative and finite.
     *
     * @throws IllegalArgumentException naming the variable, its value and the rule
     */
    public static void requireNotNegative(double value, String name) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    name + " (" + value + ") must be finite and not negative.");
        }
    }

    /** Difference of two values of one unit over the first, or over 1 when that is larger. */
    public static double differenceRatio(double value, double other) {
        return Math.abs(value - other) / Math.max(1, Math.abs(value));
    }
}
