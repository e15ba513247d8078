package underhook.core.job;

/**
 * Most wind in which a kind of load may be flown; each part limits on its own.
 *
 * @param meanMPerS mean wind, m/s
 * @param gustMPerS gust, m/s
 * @param spreadMPerS gust less mean, m/s
 */
public record WindLimit(double meanMPerS, double gustMPerS, double spreadMPerS) {
    public WindLimit {
        if (!(meanMPerS > 0 && gustMPerS > 0 && spreadMPerS > 0)) {
            throw new IllegalArgumentException("wind limits must be above 0.");
        }
    }
}
