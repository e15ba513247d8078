package underhook.planner.verify;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.WeatherHour;
import underhook.core.job.Zone;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** Where a plan is not flown as straight as it looks is told: corners, last parts not into the wind, straight ways shut. */
final class StraightCheck {
    /** An arc is drawn in pieces that turn by a third of this at most: what turns so much in one point is no arc. */
    private static final double CORNER_RAD = Math.toRadians(30);

    /** Shorter pieces have no direction to be sure of, m. */
    private static final double PIECE_M = 1;

    /** Round what may not be passed and has no buffer of its own, m. @source PRACTICE no way runs along a wall */
    private static final double LEAST_KEPT_M = 1;

    private static final double SAME_RAD = 1e-6;

    private final Day day;
    private final Said said;
    private final Air air;
    private final WayCheck ways;

    StraightCheck(Day day) {
        this.day = day;
        this.said = new Said(day);
        this.air = new Air(day.job().weather());
        this.ways = new WayCheck(day);
    }

    void run() {
        Set<String> cornered = new TreeSet<>();
        day.listFlights().stream()
                .filter(flight -> !flight.loads().isEmpty() && !day.isBegun(flight.step()))
                .filter(flight -> hasCorner(flight.track()))
                .forEach(flight -> cornered.add(flight.subject()));
        cornered.forEach(way -> said.demand(FindingCode.TURN_TIGHT, way, Severity.NOTE));
        Set<String> turned = new TreeSet<>();
        for (Step step : day.plan().steps()) {
            if (!day.isBegun(step)) {
                step.rotation()
                        .filter(this::isShutIntoWind)
                        .ifPresent(turn -> turned.add(turn.drops().get(0).place().value()));
            }
        }
        turned.forEach(place -> said.demand(FindingCode.APPROACH_REFUSED, place, Severity.NOTE));
        checkDetours();
        day.job().zones().stream().filter(this::isPassedAtOtherTimes).forEach(this::toldOfHours);
    }

    private void toldOfHours(Zone zone) {
        said.demand(FindingCode.ZONE_HOURS, zone.id(), Severity.CAUTION);
    }

    /** Whether something is surely flown where a zone holds, but at other hours of the day. */
    private boolean isPassedAtOtherTimes(Zone zone) {
        double stripM = day.job().rules().distances().stripHalfWidthM() - Tolerance.PLAN_M;
        return !zone.hours().isAllDay()
                && (zone.rule() == Zone.Rule.NO_OVERFLIGHT || zone.rule() == Zone.Rule.MIN_HEIGHT)
                && day.listFlights().stream()
                        .filter(flight -> Ways.applies(day, zone, flight.loads()))
                        .anyMatch(flight -> flight.isWithinM(day.shapeOf(zone), stripM));
    }

    private static boolean hasCorner(List<PlanePoint> track) {
        for (int i = 2; i < track.size(); i++) {
            PlanePoint at = track.get(i - 1);
            boolean drawn =
                    Plane.apartM(track.get(i - 2), at) >= PIECE_M
                            && Plane.apartM(at, track.get(i)) >= PIECE_M;
            double turnRad =
                    Plane.bearingGridRad(at, track.get(i))
                            - Plane.bearingGridRad(track.get(i - 2), at);
            if (drawn && Math.abs(Math.IEEEremainder(turnRad, 2 * Math.PI)) > CORNER_RAD) {
                return true;
            }
        }
        return false;
    }

    /** In the wind that it is flown in, where all rows that count have it from one side. */
    private boolean isShutIntoWind(Rotation turn) {
        PlanePoint at = day.planeOf(turn.drops().get(0).place());
        List<WeatherHour> rows = day.rowsOver(turn, 0);
        List<WeatherHour> after = air.listRows(turn.drops().get(0).releasedAt().plusSeconds(1));
        if (rows.isEmpty() || after.isEmpty() || !rows.containsAll(after)) {
            return false;
        }
        double fromTrueRad = rows.get(0).windFromTrueRad();
        boolean one =
                rows.stream()
                        .allMatch(row -> Math.abs(row.windFromTrueRad() - fromTrueRad) < SAME_RAD);
        double fromGridRad =
                fromTrueRad
                        - Plane.convergenceRad(
                                day.ground().frame(),
                                day.job().getPlace(turn.drops().get(0).place()).position());
        Plane.Stretch last =
                new Plane.Stretch(
                        Plane.along(at, fromGridRad + Math.PI, day.job().rules().flying().finalM()),
                        at);
        Predicate<Zone> then =
                zone ->
                        Ways.isInForce(
                                day, zone, turn.hookedAt(), turn.drops().get(0).releasedAt());
        return one && !shut(last, day.loadsOf(turn.loads()), then).isEmpty();
    }

    /** Ids of what a straight piece surely may not pass with these loads, wires aside. */
    private Set<String> shut(Plane.Stretch piece, List<Load> loads, Predicate<Zone> holds) {
        Set<String> ids = new HashSet<>();
        for (MapFeature feature : day.job().features()) {
            double keptM = Math.max(ways.keepM(feature), LEAST_KEPT_M) - Tolerance.PLAN_M;
            if (feature.crossing() == CrossingRule.NEVER
                    && day.shapeOf(feature).distanceM(piece) < keptM) {
                ids.add(feature.id());
            }
        }
        double stripM = day.job().rules().distances().stripHalfWidthM() - Tolerance.PLAN_M;
        for (Zone zone : day.job().zones()) {
            // No way is looked for over a zone with a least height either.
            boolean keptOff =
                    zone.rule() == Zone.Rule.NO_OVERFLIGHT || zone.rule() == Zone.Rule.MIN_HEIGHT;
            if (keptOff
                    && holds.test(zone)
                    && Ways.applies(day, zone, loads)
                    && day.shapeOf(zone).distanceM(piece) < stripM) {
                ids.add(zone.id());
            }
        }
        day.job().wires().forEach(wire -> ids.remove(wire.id()));
        return ids;
    }

    /** Of each load's straight way: of a zone that speaks of its kind by the load, else by the way. */
    private void checkDetours() {
        TreeMap<String, Set<String>> told = new TreeMap<>();
        for (Load load : day.job().loads()) {
            Plane.Stretch straight =
                    new Plane.Stretch(day.planeOf(load.from()), day.planeOf(load.to()));
            boolean known = day.isKnown(straight.a()) && day.isKnown(straight.b());
            for (String id :
                    known ? shut(straight, List.of(load), zone -> true) : Set.<String>of()) {
                String subject =
                        speaksOf(id, load.kind())
                                ? load.id().value()
                                : load.from() + "-" + load.to();
                told.computeIfAbsent(subject, unused -> new HashSet<>()).add(id);
            }
        }
        told.forEach(
                (subject, ids) ->
                        said.demand(
                                FindingCode.DETOUR,
                                subject,
                                new Said.Least(Severity.NOTE, ids.size())));
    }

    private boolean speaksOf(String id, String kind) {
        return day.job().zones().stream()
                .anyMatch(zone -> zone.id().equals(id) && zone.kinds().contains(kind));
    }
}
