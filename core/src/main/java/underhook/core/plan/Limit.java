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
        boolean governing) {}
