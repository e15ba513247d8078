package underhook.planner.route;

import underhook.core.geo.Glare;
import underhook.core.geo.SunPosition;

/**
 * The sun at one moment over the terrain of one place.
 *
 * @param horizonRad angle of the terrain in the sun's direction, rad from the horizontal
 */
public record SunSeen(SunPosition sun, double horizonRad) {
    /** Glare for somebody on a heading who looks down on one side. */
    public Glare glare(double headingTrueRad, boolean leansRight) {
        return Glare.of(sun, headingTrueRad, horizonRad, leansRight);
    }
}
