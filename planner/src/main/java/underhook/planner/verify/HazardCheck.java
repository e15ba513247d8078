package underhook.planner.verify;

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
import underhook.core.geo.GeoPoint;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Confirmation;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.PlaceId;
import underhook.core.job.Wire;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;

/**
 * What hangs or stands up near ways and places is told: that nobody looked at it on the day, that its height is a
 * guess, that a wire may go on where the file ends it.
 */
final class HazardCheck {
    /** A mast so near to a way is looked at. @source PRACTICE as in docs/findings.md */
    private static final double PASSED_M = 150;

    /** So is what is so near to a place that is worked at. @source PRACTICE as in docs/findings.md */
    private static final double ROUND_PLACE_M = 200;

    /** So far straight on a wire may go. @source PRACTICE as in docs/findings.md */
    private static final double GOES_ON_M = 1000;

    /** What so near to its end may be what it ends at. @source PRACTICE as in docs/findings.md */
    private static final double ENDS_AT_M = 50;

    /** A crossing to be sure of leads from one side to the other by more than a file rounds, m. */
    private static final double ASIDE_M = 0.05;

    private final Day day;
    private final Said said;
    private final List<Flight> ahead;
    private final Set<PlaceId> worked = new TreeSet<>((a, b) -> a.value().compareTo(b.value()));
    private final Map<String, Confirmation> looks = new TreeMap<>();

    HazardCheck(Day day) {
        this.day = day;
        this.said = new Said(day);
        this.ahead = day.listFlights().stream().filter(one -> !day.isBegun(one.step())).toList();
        day.plan().steps().stream()
                .filter(step -> !day.isBegun(step))
                .flatMap(step -> step.rotation().stream())
                .map(Rotation::loads)
                .flatMap(loads -> day.loadsOf(loads).stream())
                .flatMap((Load load) -> Stream.of(load.from(), load.to()))
                .forEach(worked::add);
        // Of two looks on one day the later line counts.
        for (Confirmation one : day.job().confirmations()) {
            looks.merge(one.subject(), one, (old, now) -> now.on().isBefore(old.on()) ? old : now);
        }
    }

    void run() {
        for (Wire wire : day.job().wires()) {
            List<PlanePoint> supports = plane(wire.supports());
            boolean passed =
                    ahead.stream()
                            .map(Flight::leg)
                            .map(Leg::wires)
                            .anyMatch(all -> all.stream().anyMatch(one -> isOf(one, wire)));
            if (passed || isRoundPlace(supports)) {
                looked(wire.id());
            }
            checkEnds(wire, supports);
        }
        day.job().features().stream()
                .filter(one -> one.kind() == MapFeature.Kind.MAST)
                .forEach(this::checkMast);
        for (String subject : looks.keySet()) {
            if (!isLookedAt(subject)) {
                said.demand(FindingCode.HAZARD_UNCONFIRMED, subject, Severity.NOTE);
            }
        }
    }

    private static boolean isOf(Leg.WirePass pass, Wire wire) {
        return pass.wire().equals(wire.id());
    }

    private boolean isLookedAt(String subject) {
        return Optional.ofNullable(looks.get(subject))
                .filter(one -> one.on().equals(day.job().date()))
                .isPresent();
    }

    private void looked(String subject) {
        if (!isLookedAt(subject)) {
            said.demand(FindingCode.HAZARD_UNCONFIRMED, subject, Severity.CAUTION);
        }
    }

    private void checkMast(MapFeature mast) {
        List<PlanePoint> outline = plane(mast.outline());
        List<Plane.Stretch> pieces = pieces(outline);
        boolean passed =
                ahead.stream()
                        .flatMap(flight -> pieces(flight.track()).stream())
                        .anyMatch(
                                way ->
                                        pieces.stream()
                                                .anyMatch(
                                                        one ->
                                                                Plane.stretchesApartM(one, way)
                                                                        <= PASSED_M
                                                                                - Tolerance
                                                                                        .PLAN_M));
        if (passed && (mast.heightM().isEmpty() || mast.heightEstimated())) {
            said.demand(FindingCode.HEIGHT_ASSUMED, mast.id(), Severity.CAUTION);
        }
        if (passed || isRoundPlace(outline)) {
            looked(mast.id());
        }
    }

    private boolean isRoundPlace(List<PlanePoint> outline) {
        double withinM = ROUND_PLACE_M - Tolerance.PLAN_M;
        return worked.stream()
                .map(place -> day.planeOf(place))
                .anyMatch(at -> apartM(at, pieces(outline)) <= withinM);
    }

    /** An end at which nothing is that it could end at, and a way that crosses the wire carried straight on. */
    private void checkEnds(Wire wire, List<PlanePoint> supports) {
        int last = supports.size() - 1;
        boolean crossed =
                Stream.of(
                                new Plane.Stretch(supports.get(1), supports.get(0)),
                                new Plane.Stretch(supports.get(last - 1), supports.get(last)))
                        .filter(end -> Plane.apartM(end.a(), end.b()) > 1)
                        .filter(end -> isOpen(end.b(), wire))
                        .anyMatch(
                                end ->
                                        ahead.stream()
                                                .flatMap(one -> pieces(one.track()).stream())
                                                .anyMatch(way -> isCrossedBeyond(end, way)));
        if (crossed) {
            said.demand(FindingCode.WIRE_END, wire.id(), Severity.CAUTION);
        }
    }

    private boolean isOpen(PlanePoint end, Wire wire) {
        Stream<List<GeoPoint>> stands =
                day.job().features().stream()
                        .filter(
                                one ->
                                        one.kind() == MapFeature.Kind.HOUSE
                                                || one.kind() == MapFeature.Kind.MAST)
                        .map(MapFeature::outline);
        Stream<List<GeoPoint>> hangs =
                day.job().wires().stream()
                        .filter(other -> !other.id().equals(wire.id()))
                        .map(Wire::supports);
        return Stream.concat(stands, hangs)
                .map(outline -> pieces(plane(outline)))
                .allMatch(pieces -> apartM(end, pieces) > ENDS_AT_M + Tolerance.PLAN_M);
    }

    /** Wherever between a hand's breadth to the one side and to the other, it is beyond the end and not too far. */
    private static boolean isCrossedBeyond(Plane.Stretch end, Plane.Stretch way) {
        double bearingRad = Plane.bearingGridRad(end.a(), end.b());
        double fromM = alongM(end.b(), way.a(), bearingRad + Math.PI / 2);
        double toM = alongM(end.b(), way.b(), bearingRad + Math.PI / 2);
        if (Math.min(fromM, toM) >= -ASIDE_M || Math.max(fromM, toM) <= ASIDE_M) {
            return false;
        }
        double aheadM = alongM(end.b(), way.a(), bearingRad);
        double moreM = alongM(end.b(), way.b(), bearingRad) - aheadM;
        return Stream.of(-ASIDE_M, ASIDE_M)
                .map(aside -> aheadM + (aside - fromM) / (toM - fromM) * moreM)
                .allMatch(
                        beyond ->
                                beyond >= Tolerance.PLAN_M
                                        && beyond <= GOES_ON_M - Tolerance.PLAN_M);
    }

    /** How far a point lies from another on a bearing. */
    private static double alongM(PlanePoint from, PlanePoint to, double bearingGridRad) {
        return (to.eastM() - from.eastM()) * Math.sin(bearingGridRad)
                + (to.northM() - from.northM()) * Math.cos(bearingGridRad);
    }

    private List<PlanePoint> plane(List<GeoPoint> points) {
        return points.stream().map(point -> day.planeOf(point)).toList();
    }

    /** A line's pieces; of a single point one without a length. */
    private static List<Plane.Stretch> pieces(List<PlanePoint> points) {
        return IntStream.range(0, Math.max(1, points.size() - 1))
                .mapToObj(
                        i ->
                                new Plane.Stretch(
                                        points.get(i),
                                        points.get(Math.min(i + 1, points.size() - 1))))
                .toList();
    }

    private static double apartM(PlanePoint at, List<Plane.Stretch> pieces) {
        return pieces.stream()
                .mapToDouble(one -> Plane.toSegmentM(at, one.a(), one.b()))
                .min()
                .orElseThrow();
    }
}
