package underhook.core.air;

/**
 * Wind at one height.
 *
 * @param fromTrueRad direction it blows from, rad from true north, finite
 * @param speedMPerS speed, m/s, not negative
 */
public record Wind(double fromTrueRad, double speedMPerS) {
    public Wind {
        if (!Double.isFinite(fromTrueRad)) {
            throw new IllegalArgumentException("fromTrueRad (" + fromTrueRad + ") must be finite.");
        }
        if (!(speedMPerS >= 0 && speedMPerS < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "speedMPerS (" + speedMPerS + ") must be finite and not negative.");
        }
    }

    /**
     * Component against a direction of movement, m/s; negative when it pushes from behind.
     *
     * @source DERIVED projection on the track
     */
    public double headMPerS(double trackTrueRad) {
        return speedMPerS * Math.cos(fromTrueRad - trackTrueRad);
    }

    /**
     * Component across a direction of movement, m/s; positive when it comes from the right.
     *
     * @source DERIVED projection on the track
     */
    public double crossMPerS(double trackTrueRad) {
        return speedMPerS * Math.sin(fromTrueRad - trackTrueRad);
    }
}
