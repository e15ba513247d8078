package underhook.planner.verify;

import java.time.Instant;
import java.util.List;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.PlaceId;

/**
 * What stands round the places: ground, wires, the sun over it.
 *
 * <p>It is worked out when it is first asked for and kept, as no plan changes it. It hangs on what {@link
 * Proofs#areOf} compares and on what is asked alone. Not safe for threads.
 */
final class Surroundings {
    /** Of every place all directions of a day's wind, several times. */
    private static final int KEPT = 12_000;

    private static final long MINUTE_S = 60;

    private final Job job;
    private final Ground ground;
    private final List<HungWire> wires;
    private final Kept<Look, Double> stands = new Kept<>(KEPT);
    private final Kept<Glare, Integer> glares = new Kept<>(KEPT);

    /** From a point in a direction, so far. */
    private record Look(PlanePoint from, double bearingGridRad, double withinM) {}

    /**
     * A look ahead at the sun over a place.
     *
     * @param fromAt its first minute
     * @param untilAt its last minute begins before
     */
    record Glare(PlaceId place, double intoTrueRad, Instant fromAt, Instant untilAt) {}

    Surroundings(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
        this.wires = job.wires().stream().map(wire -> new HungWire(job, ground, wire)).toList();
    }

    /** Every wire of the job, in order. */
    List<HungWire> wires() {
        return wires;
    }

    /**
     * How steeply the highest ground in a direction stands over a point, rad, cell by cell as far as it is known;
     * the Earth's bend is nothing. The point must be covered.
     */
    double standsRad(PlanePoint from, double bearingGridRad, double withinM) {
        return stands.get(new Look(from, bearingGridRad, withinM), this::standsRad);
    }

    private double standsRad(Look look) {
        double hereM = heightAmslM(look.from());
        double cellM = ground.terrain().cellSizeM();
        double steepest = -Math.PI / 2;
        for (double far = cellM; far <= look.withinM(); far += cellM) {
            PlanePoint there = Plane.along(look.from(), look.bearingGridRad(), far);
            if (!ground.terrain().covers(there.eastM(), there.northM())) {
                break;
            }
            steepest = Math.max(steepest, Math.atan2(heightAmslM(there) - hereM, far));
        }
        return steepest;
    }

    private double heightAmslM(PlanePoint at) {
        return ground.terrain().heightM(at.eastM(), at.northM());
    }

    /** For how many full minutes on end the sun surely dazzles, looked at once a minute from the beginning. */
    int dazzledMinutes(Glare glare) {
        return glares.get(glare, this::longestMinutes);
    }

    private int longestMinutes(Glare glare) {
        int longest = 0;
        int now = 0;
        Instant at = glare.fromAt();
        while (at.isBefore(glare.untilAt())) {
            now = isDazzled(glare.place(), glare.intoTrueRad(), at) ? now + 1 : 0;
            longest = Math.max(longest, now);
            at = at.plusSeconds(MINUTE_S);
        }
        return longest;
    }

    /** Whether the sun surely dazzles who looks ahead from over a place. */
    boolean isDazzled(PlaceId place, double intoTrueRad, Instant at) {
        // Terrain only ever hides it; the longest line puts the pilot highest.
        return SunSight.overSea(job.getPlace(place).position(), at).dazzles(intoTrueRad, true)
                && sight(place, at).dazzles(intoTrueRad, true);
    }

    /** The sun as the pilot over a place on the longest line sees it. */
    SunSight sight(PlaceId place, Instant at) {
        double eyeAglM =
                job.machine().lines().stream().mapToDouble(LineItem::lengthM).max().orElse(0);
        return SunSight.over(ground, job.getPlace(place).position(), eyeAglM, at);
    }
}
