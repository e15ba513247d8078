package underhook.planner.route;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;

/**
 * Ways in to places and out of them, over straight pieces as long as the last part.
 *
 * <p>What lies under a piece is kept once looked at.
 */
public final class Approaches {
    /** Ways in and out are judged in steps of this. */
    public static final int DIRECTION_STEP_DEG = Directions.STEP_DEG;

    private final Job job;
    private final WayMaps maps;
    private final Passed passed;
    private final ClosedWays closed;
    private final WaysIn waysIn;
    private final Judges.Limits limits;
    private final Memo<Piece, Lies> liesUnder = Memo.of();

    /** The piece before or behind a place, with all that what lies under it hangs on. */
    private record Piece(PlanePoint place, long millionths, String mapKey, boolean empty) {}

    Approaches(Job job, WayMaps maps, Passed passed, ClosedWays closed) {
        this.job = job;
        this.maps = maps;
        this.passed = passed;
        this.closed = closed;
        this.limits =
                new Judges.Limits(
                        job.rules().flying().tailwindMPerS(),
                        job.rules().flying().crosswindMPerS());
        this.waysIn = new WaysIn(limits, job.machine().pilotSide());
    }

    /** Whether a way in keeps the limits of cross and tail wind in every one of some winds. */
    public boolean isKept(double approachFromGridRad, List<PlaceWind> winds) {
        return Judges.wind(winds, limits).judge(approachFromGridRad + Math.PI).refusal().isEmpty();
    }

    /**
     * The way in and out of a place: as near into the wind as what speaks against it allows.
     *
     * @return empty when no direction is allowed
     */
    public Optional<WayIn> findWayIn(PlaceHour at) {
        return rankWays(at, Map.of()).map(RankedWays::best);
    }

    /**
     * Every way in and out that is allowed, best first, when some directions are shut, because a load let
     * go there could hit something.
     *
     * @param shut what it could hit, by the bearing from the place that the way would come from, in
     *     millionths of a radian
     * @return empty when no direction is allowed
     */
    public Optional<RankedWays> rankWays(PlaceHour at, Map<Long, List<String>> shut) {
        String key = maps.key(at.kinds());
        return waysIn.rank(
                at,
                bearing -> {
                    long millionths = millionths(bearing);
                    List<String> hit = shut.get(millionths);
                    return hit != null
                            ? Lies.hitting(hit)
                            : liesUnder.get(
                                    new Piece(at.place(), millionths, key, at.kinds().isEmpty()),
                                    unused -> lies(at.place(), bearing, at.kinds()));
                });
    }

    /** A bearing as a whole number, to be looked up by. */
    public static long millionths(double bearingGridRad) {
        return Math.round(Directions.normalRad(bearingGridRad) * 1e6);
    }

    /** What lies under the piece from a place as long as the last part. */
    private Lies lies(PlanePoint place, double bearingGridRad, List<String> kinds) {
        PlanePoint end = place.towards(bearingGridRad, job.rules().flying().finalM());
        if (!maps.of(kinds).isFree(place, end) || !passed.crossesNoWire(place, end)) {
            return new Lies(false, closed.blockers(place, end, kinds), List.of());
        }
        // Under the empty line nobody has to keep away.
        List<String> guarded = kinds.isEmpty() ? List.of() : passed.guarded(place, end);
        return new Lies(true, List.of(), guarded);
    }
}
