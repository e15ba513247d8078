package underhook.core.site;

/**
 * How near one part comes to what it comes nearest to.
 *
 * @param id of the thing or wire, {@link Surroundings#UNKNOWN_GROUND} where the raster says nothing;
 *     empty for ground and trees
 * @param headingGridRad heading it holds for, rad from grid north
 * @param marginM distance, m; negative inside
 * @param neededM least distance allowed, m
 * @param unknownM how far the distance may be off for what is not known, m
 */
public record Margin(
        Part part,
        Cause cause,
        String id,
        double headingGridRad,
        double marginM,
        double neededM,
        double unknownM) {

    /** The same on another heading. */
    Margin on(double otherGridRad) {
        return new Margin(part, cause, id, otherGridRad, marginM, neededM, unknownM);
    }

    /** What is left over the needed, m; negative when it is refused. */
    public double spareM() {
        return marginM - neededM;
    }

    public Fit fit() {
        if (!(spareM() >= 0)) {
            return Fit.REFUSED;
        }
        return spareM() >= unknownM ? Fit.FREE : Fit.NEAR;
    }

    /** Whether this one decides rather than another: the worse fit, then the smaller spare. */
    public boolean isTighterThan(Margin other) {
        int byFit = fit().compareTo(other.fit());
        return byFit != 0 ? byFit > 0 : spareM() < other.spareM();
    }
}
