package underhook.app.replan;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures as a refusal tells them: what was converted from another unit has decimals nobody typed. */
final class Figure {
    private static final int FEWEST_DIGITS = 1;

    private Figure() {}

    /**
     * A value that a limit refuses, with so many decimals that it does not read as allowed.
     *
     * @param value in the limit's unit; told as it is where it is not finite
     * @return at least one decimal
     */
    static String beside(double value, double limit) {
        return Double.isFinite(value)
                ? text(value, digits(value, limit), RoundingMode.HALF_EVEN)
                : Double.toString(value);
    }

    /** The upper limit beside it, with as many decimals: never more than is allowed. */
    static String most(double limit, double value) {
        return text(limit, digits(value, limit), RoundingMode.FLOOR);
    }

    /** Ends: two numbers that differ do so in some decimal. */
    private static int digits(double value, double limit) {
        int digits = FEWEST_DIGITS;
        while (Double.isFinite(value)
                && Double.compare(value, limit) != 0
                && new BigDecimal(text(value, digits, RoundingMode.HALF_EVEN))
                                .compareTo(new BigDecimal(text(limit, digits, RoundingMode.FLOOR)))
                        == 0) {
            digits++;
        }
        return digits;
    }

    private static String text(double value, int digits, RoundingMode how) {
        return BigDecimal.valueOf(value).setScale(digits, how).toPlainString();
    }
}
