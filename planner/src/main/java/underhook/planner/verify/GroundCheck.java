package underhook.planner.verify;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Crew;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.job.WeatherHour;
import underhook.core.job.Zone;
import underhook.core.plan.Drop;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * What the ground at a place means is told: that nobody can get in or out there and why, a zone close by, ground that
 * falls away on most sides, lines that are too short or have no room. Only what surely holds is asked for.
 */
final class GroundCheck {
    /** Looked along every ten degrees, so far off the ground lies so much lower on so many. @source PRACTICE */
    private static final int BEARINGS = 36;

    private static final int FALLING_BEARINGS = 22;
    private static final double FAR_M = 100;
    private static final double FALLS_M = 5;

    private final Day day;
    private final Said said;
    private final LineCheck lines;
    private final Walks walks;
    private final Set<PlaceId> setDown = new TreeSet<>(Comparator.comparing(PlaceId::value));
    private final Set<PlaceId> worked = new TreeSet<>(Comparator.comparing(PlaceId::value));
    private final Set<PlaceId> begun = new TreeSet<>(Comparator.comparing(PlaceId::value));

    GroundCheck(Day day) {
        this.day = day;
        this.said = new Said(day);
        this.lines = new LineCheck(day);
        this.walks = new Walks(day.job().places(), day.job().walks());
    }

    void run() {
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(turn -> enter(step, turn));
        }
        day.job().places().stream()
                .filter(place -> day.isKnown(day.planeOf(place.id())))
                .forEach(this::checkLanding);
        worked.forEach(this::checkZones);
        setDown.stream().filter(this::standsFree).forEach(this::toldOfCues);
        day.plan().rooms().stream()
                .filter(room -> !begun.contains(room.place()))
                .forEach(this::checkRoom);
        day.plan().steps().stream()
                .filter(step -> !day.isBegun(step))
                .forEach(step -> step.rotation().ifPresent(this::checkLines));
    }

    private void enter(Step step, Rotation turn) {
        Set<PlaceId> all = day.isBegun(step) ? begun : worked;
        all.add(from(turn));
        turn.drops().stream().map(Drop::place).forEach(all::add);
        if (!day.isBegun(step)) {
            turn.drops().stream().map(Drop::place).forEach(setDown::add);
        }
    }

    private PlaceId from(Rotation turn) {
        return day.job().getLoad(turn.loads().get(0)).from();
    }

    /** Of a place where somebody asks to land, or where a crew would get in, it is told why nobody does, or what nobody saw. */
    private void checkLanding(Place place) {
        PlanePoint at = day.planeOf(place.id());
        boolean asked = place.landingAsked() || place.kind() == PlaceKind.LANDING;
        boolean stands = !place.isSite() && place.agreed() && place.standing();
        if (asked && day.treesRoundLandingM(place) > Tolerance.GRASS_M) {
            demand(FindingCode.LANDING_IN_TREES, place, Severity.NOTE);
        } else if (lines.isKnownRound(at) && !isPerhapsInTrees(place, asked)) {
            double slope = lines.slopeRad(at);
            double limit = day.job().rules().landing().landingSlopeRad();
            boolean level = slope <= limit - Tolerance.SLOPE_RAD;
            if (slope > limit + Tolerance.SLOPE_RAD && (asked || (stands && isBoarded(place)))) {
                demand(FindingCode.LANDING_TOO_STEEP, place, Severity.NOTE);
            }
            if (asked && level && place.isSite()) {
                demand(FindingCode.LANDING_AT_SITE, place, Severity.NOTE);
            }
            if (asked && level && stands && isUnseen(place)) {
                demand(FindingCode.LANDING_UNSEEN, place, Severity.CAUTION);
            }
        }
    }

    /** Who rounds the place a little wider finds trees there, and says so instead. */
    private boolean isPerhapsInTrees(Place place, boolean asked) {
        return asked
                && said.isTold(FindingCode.LANDING_IN_TREES, place.id().value(), Severity.NOTE)
                && place.canopyM().isEmpty()
                && day.ground()
                        .canopy()
                        .map(raster -> highestM(raster, place))
                        .filter(high -> high > Tolerance.GRASS_M)
                        .isPresent();
    }

    private double highestM(HeightField raster, Place place) {
        return raster.findHighestKnownWithinM(
                        day.planeOf(place.id()), day.standingReachM() + Tolerance.PLAN_M)
                .orElse(0);
    }

    /** Nobody surveyed the trees, and no raster covers all that a machine takes there. */
    private boolean isUnseen(Place place) {
        Optional<HeightField> raster = day.ground().canopy();
        double reachM = day.standingReachM() - Tolerance.PLAN_M;
        return place.canopyM().isEmpty()
                && raster.filter(one -> one.coversDisc(day.planeOf(place.id()), reachM)).isEmpty();
    }

    private boolean isBoarded(Place place) {
        return day.job().crews().stream()
                .filter(crew -> !crew.stays())
                .map(Crew::start)
                .anyMatch(
                        start ->
                                start.equals(place.id())
                                        || Double.isFinite(walks.durationS(start, place.id())));
    }

    private void demand(FindingCode code, Place place, Severity severity) {
        said.demand(code, place.id().value(), severity);
    }

    /** To the edge of each, from inside as from outside. */
    private void checkZones(PlaceId place) {
        double withinM = day.job().rules().flying().finalM() - Tolerance.PLAN_M;
        PlanePoint at = day.planeOf(place);
        long near =
                day.job().zones().stream()
                        .filter(zone -> zone.rule() != Zone.Rule.NO_FUEL)
                        .filter(zone -> zone.isActiveOn(day.job().date()))
                        .filter(zone -> toEdgeM(day.shapeOf(zone), at) <= withinM)
                        .count();
        if (near > 0) {
            Said.Least least = new Said.Least(Severity.NOTE, near);
            said.demand(FindingCode.PLACE_NEAR_ZONE, place.value(), least);
        }
    }

    private static double toEdgeM(Shape shape, PlanePoint at) {
        return shape.outline().size() == 1
                ? Plane.apartM(at, shape.outline().get(0)) - shape.radiusM()
                : shape.listEdges().stream()
                        .mapToDouble(edge -> Plane.toSegmentM(at, edge.a(), edge.b()))
                        .min()
                        .orElse(Double.POSITIVE_INFINITY);
    }

    private void toldOfCues(PlaceId place) {
        said.demand(FindingCode.FEW_HEIGHT_CUES, place.value(), Severity.NOTE);
    }

    private boolean standsFree(PlaceId place) {
        PlanePoint at = day.planeOf(place);
        if (!day.isKnown(at)) {
            return false;
        }
        List<PlanePoint> round =
                IntStream.range(0, BEARINGS)
                        .mapToObj(k -> Plane.along(at, 2 * Math.PI * k / BEARINGS, FAR_M))
                        .toList();
        double lowAmslM = day.groundAmslM(at) - FALLS_M - Tolerance.LENGTH_M;
        return round.stream().allMatch(day::isKnown)
                && round.stream().filter(there -> day.groundAmslM(there) <= lowAmslM).count()
                        >= FALLING_BEARINGS;
    }

    /** What the plan says of the room itself; of what came there before it may say more than was left to look at. */
    private void checkRoom(PlaceRoom room) {
        boolean refused =
                room.lines().stream()
                        .filter(line -> line.standsM() <= 0)
                        .anyMatch(
                                line ->
                                        line.sectors().stream()
                                                .allMatch(
                                                        one -> one.fit() == PlaceRoom.Fit.REFUSED));
        if (refused) {
            said.demand(FindingCode.ROOM_REFUSED, room.place().value(), Severity.NOTE);
        }
    }

    /** Lines in stock that lack less than the trees' height is known to, whatever the hour's wind. */
    private void checkLines(Rotation turn) {
        List<Load> loads = day.loadsOf(turn.loads());
        double underM =
                loads.stream()
                        .filter(load -> day.kindOf(load).standsUp())
                        .mapToDouble(Load::lengthM)
                        .max()
                        .orElse(0);
        Map<PlaceId, Double> hangsM = new TreeMap<>(Comparator.comparing(PlaceId::value));
        hangsM.put(from(turn), 0.0);
        if (loads.size() == 1 || underM <= 0) {
            hangsM.putIfAbsent(turn.drops().get(0).place(), underM);
        }
        long lacking = 0;
        for (Map.Entry<PlaceId, Double> one : hangsM.entrySet()) {
            Place place = day.job().getPlace(one.getKey());
            lacking +=
                    day.job().machine().lines().stream()
                            .map(LineItem::lengthM)
                            .filter(lengthM -> isJustShort(place, lengthM + one.getValue()))
                            .count();
        }
        if (lacking > 0) {
            String first = turn.loads().get(0).value();
            said.demand(FindingCode.LINE_SHORT, first, new Said.Least(Severity.NOTE, lacking));
        }
    }

    private boolean isJustShort(Place place, double hasM) {
        PlanePoint at = day.planeOf(place.id());
        return place.isSite()
                && place.canopySpreadM() > 0
                && lines.isKnownBehind(at)
                && tailsGridRad(place)
                        .map(tailRad -> lines.needM(place, lines.riseM(place, tailRad)) - hasM)
                        .allMatch(
                                lacksM ->
                                        lacksM > Tolerance.CLEARANCE_M
                                                && lacksM
                                                        < place.canopySpreadM()
                                                                - Tolerance.CLEARANCE_M);
    }

    /** Where the tail is of who heads into the wind of any hour. */
    private Stream<Double> tailsGridRad(Place place) {
        double convergenceRad = Plane.convergenceRad(day.ground().frame(), place.position());
        return day.job().weather().hours().stream()
                .map(WeatherHour::windFromTrueRad)
                .map(fromTrueRad -> fromTrueRad - convergenceRad + Math.PI);
    }
}
