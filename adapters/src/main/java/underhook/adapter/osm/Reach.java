package underhook.adapter.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToLongFunction;
import underhook.adapter.osm.OsmFile.Spot;
import underhook.app.port.MapBox;

/**
 * The box, in whole units of 1e-7 degrees, its edges rounded outwards.
 *
 * <p>A code says on which sides of the box a position lies. All positions of a line or an outline have a
 * side in common only when it lies wholly on that side, and then it cannot touch the box. Lines are
 * straight between their nodes in latitude and longitude, as the map draws them.
 */
final class Reach {
    /** On every side: the code of what is not there, and changes nothing when sides are intersected. */
    static final int EVERY_SIDE = 15;

    private static final int SOUTH = 1;
    private static final int NORTH = 2;
    private static final int WEST = 4;
    private static final int EAST = 8;
    private static final long HALF_TURN_E7 = 1_800_000_000;

    /** Nearer than this to the 180th meridian, east and west of a position are no longer clear. */
    private static final long NEAR_E7 = 100_000_000;

    private final long southE7;
    private final long westE7;
    private final long northE7;
    private final long eastE7;

    Reach(MapBox box) {
        southE7 = (long) Math.floor(box.southDeg() * 1e7);
        westE7 = (long) Math.floor(box.westDeg() * 1e7);
        northE7 = (long) Math.ceil(box.northDeg() * 1e7);
        eastE7 = (long) Math.ceil(box.eastDeg() * 1e7);
    }

    /** The sides of the box on which a position lies; 0 in the box. */
    int sides(Spot spot) {
        int sides = 0;
        if (spot.latE7() < southE7) {
            sides |= SOUTH;
        } else if (spot.latE7() > northE7) {
            sides |= NORTH;
        }
        if (isNearDateLine()) {
            return sides;
        }
        if (spot.lonE7() < westE7) {
            sides |= WEST;
        } else if (spot.lonE7() > eastE7) {
            sides |= EAST;
        }
        return sides;
    }

    boolean holds(Spot spot) {
        long lon = unwrapped(spot);
        return spot.latE7() >= southE7 && spot.latE7() <= northE7 && lon >= westE7 && lon <= eastE7;
    }

    /** Whether the straight line between two positions has a point in common with the box. */
    boolean touches(Spot a, Spot b) {
        if (holds(a) || holds(b)) {
            return true;
        }
        double ax = unwrapped(a);
        double bx = unwrapped(b);
        if (Math.abs(ax - bx) > HALF_TURN_E7
                || Math.max(ax, bx) < westE7
                || Math.min(ax, bx) > eastE7
                || Math.max(a.latE7(), b.latE7()) < southE7
                || Math.min(a.latE7(), b.latE7()) > northE7) {
            return false;
        }
        // All four corners strictly on one side of the line: it passes by.
        int left = 0;
        int right = 0;
        for (long x : new long[] {westE7, eastE7}) {
            for (long y : new long[] {southE7, northE7}) {
                double cross =
                        (bx - ax) * (y - a.latE7()) - ((double) b.latE7() - a.latE7()) * (x - ax);
                left += cross > 0 ? 1 : 0;
                right += cross < 0 ? 1 : 0;
            }
        }
        return left < 4 && right < 4;
    }

    /** Whether the box's south-west corner lies in a ring, by counting what is crossed going north. */
    boolean isInside(List<Spot> ring) {
        boolean inside = false;
        for (int i = 0; i < ring.size(); i++) {
            Spot a = ring.get(i);
            Spot b = ring.get((i + 1) % ring.size());
            double ax = unwrapped(a);
            double bx = unwrapped(b);
            if (Math.abs(ax - bx) > HALF_TURN_E7 || (ax > westE7) == (bx > westE7)) {
                continue;
            }
            double crossedAt =
                    a.latE7() + ((double) b.latE7() - a.latE7()) * (westE7 - ax) / (bx - ax);
            inside ^= crossedAt > southE7;
        }
        return inside;
    }

    /**
     * The part of a ring that lies in the box, where its points are many: a forest may reach far beyond.
     *
     * <p>Cuts by one side of the box after the other. Where the ring leaves the box, its outline then runs
     * along the box's edge, which lies in the area too.
     *
     * @source SUTHERLAND-HODGMAN-1974
     */
    List<Spot> clipped(List<Spot> ring) {
        if (isNearDateLine()) {
            return ring;
        }
        List<Spot> inside = cut(ring, spot -> spot.latE7() - southE7);
        inside = cut(inside, spot -> northE7 - spot.latE7());
        inside = cut(inside, spot -> spot.lonE7() - westE7);
        inside = cut(inside, spot -> eastE7 - spot.lonE7());
        return inside.size() < 3 ? ring : inside;
    }

    private static List<Spot> cut(List<Spot> ring, ToLongFunction<Spot> depth) {
        List<Spot> kept = new ArrayList<>();
        for (int i = 0; i < ring.size(); i++) {
            Spot a = ring.get(i);
            Spot b = ring.get((i + 1) % ring.size());
            long depthA = depth.applyAsLong(a);
            long depthB = depth.applyAsLong(b);
            if (depthA >= 0) {
                kept.add(a);
            }
            if ((depthA > 0 && depthB < 0) || (depthA < 0 && depthB > 0)) {
                double along = (double) depthA / ((double) depthA - depthB);
                long lat = Math.round(a.latE7() + along * ((double) b.latE7() - a.latE7()));
                long lon = Math.round(a.lonE7() + along * ((double) b.lonE7() - a.lonE7()));
                kept.add(new Spot((int) lat, (int) lon));
            }
        }
        return kept;
    }

    private boolean isNearDateLine() {
        return eastE7 > HALF_TURN_E7 - NEAR_E7 || westE7 < NEAR_E7 - HALF_TURN_E7;
    }

    /** Longitude of what lies just across the 180th meridian, counted on beyond it. */
    private long unwrapped(Spot spot) {
        long lon = spot.lonE7();
        boolean wide = eastE7 - westE7 > HALF_TURN_E7;
        if (!wide && eastE7 > HALF_TURN_E7 - NEAR_E7 && lon < 0) {
            return lon + 2 * HALF_TURN_E7;
        }
        if (!wide && westE7 < NEAR_E7 - HALF_TURN_E7 && lon > 0) {
            return lon - 2 * HALF_TURN_E7;
        }
        return lon;
    }
}
