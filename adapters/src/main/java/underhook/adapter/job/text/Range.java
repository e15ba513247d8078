package underhook.adapter.job.text;

/**
 * Values that a field may have, in the unit of the field's SI value unless said otherwise.
 *
 * @param least smallest allowed
 * @param most largest allowed
 * @param leastIncluded whether the smallest itself is allowed
 * @param words what is allowed, for a fault
 */
public record Range(double least, double most, boolean leastIncluded, String words) {
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

    public boolean holds(double value) {
        return value <= most && (leastIncluded ? value >= least : value > least);
    }
}
