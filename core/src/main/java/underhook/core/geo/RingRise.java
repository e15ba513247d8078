package underhook.core.geo;

import java.util.OptionalDouble;

/** How the ground lies in a ring round a point. */
public final class RingRise {
    private static final int BEARINGS = 36;

    /** A place stands free when all ground so far off lies lower by so much. @source PRACTICE */
    private static final double FAR_M = 100;

    private static final double FALLS_M = 5;
    private static final double NEAR_M = 50;

    private RingRise() {}

    /**
     * Whether the ground falls away on all sides of a place, so that little near it tells the height; not
     * where the ground around is not known.
     */
    public static boolean standsFree(HeightField terrain, PlanePoint place) {
        OptionalDouble far = findHighestM(terrain, place, FAR_M);
        OptionalDouble near = findHighestM(terrain, place, NEAR_M);
        return far.isPresent()
                && near.isPresent()
                && far.getAsDouble() <= -FALLS_M
                && near.getAsDouble() <= 0;
    }

    /**
     * The highest ground on a ring over the ground at its centre, m, negative where all of it lies lower;
     * empty where any of it is not known.
     *
     * @param radiusM of the ring, m, above 0
     * @source DERIVED heights every 10°; a spur narrower than that may be missed
     */
    public static OptionalDouble findHighestM(
            HeightField terrain, PlanePoint centre, double radiusM) {
        if (!(radiusM > 0 && radiusM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("radiusM (" + radiusM + ") must be above 0.");
        }
        if (!terrain.covers(centre.eastM(), centre.northM())) {
            return OptionalDouble.empty();
        }
        double highestAmslM = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < BEARINGS; k++) {
            PlanePoint at = centre.towards(2 * Math.PI * k / BEARINGS, radiusM);
            if (!terrain.covers(at.eastM(), at.northM())) {
                return OptionalDouble.empty();
            }
            highestAmslM = Math.max(highestAmslM, terrain.heightM(at.eastM(), at.northM()));
        }
        return OptionalDouble.of(highestAmslM - terrain.heightM(centre.eastM(), centre.northM()));
    }
}
