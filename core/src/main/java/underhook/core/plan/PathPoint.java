package underhook.core.plan;

import underhook.core.geo.GeoPoint;

/** A point of a leg: position, and altitude of the hook under the belly, m AMSL. */
public record PathPoint(GeoPoint position, double hookAltitudeAmslM) {
    public PathPoint {
        if (!Double.isFinite(hookAltitudeAmslM)) {
            throw new IllegalArgumentException("hookAltitudeAmslM must be finite.");
        }
    }
}
