package underhook.core.plan;

/**
 * One limit of a rotation with what it leaves.
 *
 * @param code stable word
 * @param value what is used
 * @param limit what is allowed
 * @param marginPercent (limit less value) over limit, percent, rounded down
 * @param governing whether this one leaves least
 */
public record Limit(
        String code,
        double value,
        double limit,
        String unit,
        double marginPercent,
        String source,
        boolean governing) {
    /** A limit with less left counts as near, percent of the limit. @source PRACTICE own choice */
    private static final double NEAR_FRACTION = 0.1;

    /** Whether nothing is left; what is not a number counts as nothing. */
    public boolean isOutside() {
        return !(marginPercent >= 0);
    }

    /** Whether little is left. */
    public boolean isNear() {
        return !isOutside() && marginPercent < 100 * NEAR_FRACTION;
    }
}
