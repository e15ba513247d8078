package underhook.core.geo;

import java.util.OptionalDouble;

/** How the ground lies in a ring round a point. */
public final class RingRise {
    private static final int BEARINGS = 36;

    /** Ground falls away where it lies so much lower so far off. @source PRACTICE */
    private static final double FAR_M = 100;

    private static final double FALLS_M = 5;

    /**
     * A place stands free from this much of the horizon on; half of it falls away on any slope, and one point
     * in thirty of a hilly town's ground stands free so.
     *
     * @source PRACTICE
     */
    public static final double FREE_FROM_RAD = Math.toRadians(220);

    private RingRise() {}

    /**
     * How much of the horizon the ground falls away on, 100 m off and by 5 m or more, rad, 0 to 2 pi; empty
     * where any of the ground there is not known.
     *
     * @source DERIVED heights every 10°
     */
    public static OptionalDouble fallsAwayRad(HeightField terrain, PlanePoint place) {
        if (!terrain.covers(place.eastM(), place.northM())) {
            return OptionalDouble.empty();
        }
        double lowAmslM = terrain.heightM(place.eastM(), place.northM()) - FALLS_M;
        int falling = 0;
        for (int k = 0; k < BEARINGS; k++) {
            PlanePoint at = place.towards(2 * Math.PI * k / BEARINGS, FAR_M);
            if (!terrain.covers(at.eastM(), at.northM())) {
                return OptionalDouble.empty();
            }
            falling += terrain.heightM(at.eastM(), at.northM()) <= lowAmslM ? 1 : 0;
        }
        return OptionalDouble.of(2 * Math.PI * falling / BEARINGS);
    }

    /** Whether ground that falls away on so much of the horizon leaves little that tells the height. */
    public static boolean standsFree(double fallsAwayRad) {
        return fallsAwayRad >= FREE_FROM_RAD - 1e-9;
    }
}
