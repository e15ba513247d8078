package underhook.core.geo;

import java.util.OptionalDouble;

/** How the ground lies in a ring round a point. */
public final class RingRise {
    private static final int BEARINGS = 36;

    private RingRise() {}

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
