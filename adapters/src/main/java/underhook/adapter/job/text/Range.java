package underhook.adapter.job.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Values that a field may have, in the unit of the field's SI value unless said otherwise.
 *
 * @param least smallest allowed
 * @param most largest allowed
 * @param leastIncluded whether the smallest itself is allowed
 * @param words what is allowed, for a fault
 */
public record Range(double least, double most, boolean leastIncluded, String words) {
    /** From here on the upper end is none. */
    private static final double ENDLESS = 1e9;

    public static final Range ANY = new Range(-1e12, 1e12, true, "a number");
    public static final Range POSITIVE = new Range(0, 1e9, false, "above 0");
    public static final Range NOT_NEGATIVE = new Range(0, 1e9, true, "0 or more");

    /** Both ends allowed. */
    public static Range of(double least, double most, String words) {
        return new Range(least, most, true, words);
    }

    /** The lower end not allowed. */
    public static Range above(double least, double most, String words) {
        return new Range(least, most, false, words);
    }

    /** The same, said also in the unit that a value was typed in where its words are of another. */
    Range saidIn(Quantity.Unit unit) {
        double zero = unit.toSi().applyAsDouble(0);
        double one = unit.toSi().applyAsDouble(1) - zero;
        if (most >= ENDLESS || (one == 1 && zero == 0) || unit.isSaidIn(words)) {
            return this;
        }
        // A limit is never said wider than it is.
        String from = text((least - zero) / one, RoundingMode.CEILING);
        String to = text((most - zero) / one, RoundingMode.FLOOR);
        return new Range(
                least,
                most,
                leastIncluded,
                words + ", which is " + from + " to " + to + " " + unit.word());
    }

    private static String text(double value, RoundingMode rounding) {
        // What is off in the tenth digit is arithmetic.
        return new BigDecimal(value, new MathContext(10))
                .setScale(2, rounding)
                .stripTrailingZeros()
                .toPlainString();
    }

    public boolean holds(double value) {
        return value <= most && (leastIncluded ? value >= least : value > least);
    }
}
