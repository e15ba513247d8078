package underhook.core.job;

/** A way on foot, both ways. */
public record Walk(PlaceId one, PlaceId other, double durationS) {
    public Walk {
        if (!(durationS > 0 && durationS < 86400)) {
            throw new IllegalArgumentException("durationS (" + durationS + ") must be above 0.");
        }
    }
}
