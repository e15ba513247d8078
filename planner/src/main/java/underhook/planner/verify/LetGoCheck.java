package underhook.planner.verify;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.LoadShape;
import underhook.core.job.MapFeature;
import underhook.core.job.ReleaseArea;
import underhook.core.job.Zone;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Use;

/** What letting a load go means is told: no agreed area near, things in its run, ground on which it does not stop. */
final class LetGoCheck {
    /** So far flies a machine that still reaches an area, s. @source PRACTICE as in docs/findings.md */
    private static final double REACHED_IN_S = 10;

    /** Where it lands in no wind, and beyond: so many spots. */
    private static final int SPOTS = 8;

    private static final double BEYOND_RATIO = 1.5;
    private static final double EVERY_M = 20;
    private static final double GRAVITY_M_PER_S2 = 9.80665;

    /** Slopes by two stencils over one throw, rad. */
    private static final double SLOPE_SPREAD_RAD = 0.05;

    private final Day day;
    private final Said said;
    private final FallBoxes boxes;

    LetGoCheck(Day day) {
        this.day = day;
        this.said = new Said(day);
        this.boxes = new FallBoxes(day);
    }

    void run() {
        List<Flight> loaded =
                day.listFlights().stream()
                        .filter(flight -> !flight.loads().isEmpty())
                        .filter(flight -> !day.isBegun(flight.step()))
                        .toList();
        checkUnnamed(loaded);
        checkRunsTo(loaded);
        checkRuns(loaded);
    }

    /** Where areas are agreed, of each way off all of them; another load on it may fly by one. */
    private void checkUnnamed(List<Flight> loaded) {
        List<Shape> agreed =
                day.job().releaseAreas().stream()
                        .filter(ReleaseArea::agreed)
                        .map(area -> area.outline().stream().map(p -> day.planeOf(p)).toList())
                        .map(ring -> new Shape(ring, 0, true))
                        .toList();
        Map<String, Boolean> off = new TreeMap<>();
        for (Flight flight : agreed.isEmpty() ? List.<Flight>of() : loaded) {
            off.merge(flight.subject(), isOff(flight, agreed), Boolean::logicalAnd);
        }
        off.forEach(
                (way, isOff) -> {
                    if (isOff) {
                        said.demand(FindingCode.RELEASE_UNNAMED, way, Severity.CAUTION);
                    }
                });
    }

    private boolean isOff(Flight flight, List<Shape> agreed) {
        Optional<ReleaseLook> look = flight.leg().release();
        boolean served =
                look.isEmpty()
                        || look.get().stretches().isEmpty()
                        || look.get().stretches().stream().anyMatch(one -> one.use() == Use.NAMED);
        double withinM =
                (flight.leg().speedMPerS() + Tolerance.SPEED_M_PER_S) * REACHED_IN_S
                        + Tolerance.DISTANCE_M;
        if (served) {
            return false;
        }
        Box near = Box.round(flight.track()).widened(withinM);
        return agreed.stream()
                .filter(area -> !Box.round(area.outline()).misses(near))
                .allMatch(area -> stretches(flight).allMatch(one -> area.distanceM(one) > withinM));
    }

    private static Stream<Plane.Stretch> stretches(Flight flight) {
        List<PlanePoint> track = flight.track();
        return Stream.iterate(1, i -> i < track.size(), i -> i + 1)
                .map(i -> new Plane.Stretch(track.get(i - 1), track.get(i)));
    }

    /** No way is flown from which such a thing is hit: what the way itself says of one lies in a run. */
    private void checkRunsTo(List<Flight> loaded) {
        Set<String> ways = new TreeSet<>();
        for (Flight flight : loaded) {
            Set<String> never = never(flight);
            boolean runs =
                    flight.leg().release().stream()
                            .flatMap(look -> look.stretches().stream())
                            .filter(one -> one.use() == Use.CLOSED)
                            .flatMap(one -> one.what().stream())
                            .anyMatch(never::contains);
            if (runs) {
                ways.add(flight.subject());
            }
        }
        ways.forEach(way -> said.demand(FindingCode.RELEASE_RUNS, way, Severity.CAUTION));
    }

    private Set<String> never(Flight flight) {
        Set<String> ids = new TreeSet<>();
        day.job().features().stream()
                .filter(one -> one.crossing() == CrossingRule.NEVER)
                .filter(one -> one.kind() != MapFeature.Kind.MAST)
                .forEach(one -> ids.add(one.id()));
        day.job().zones().stream()
                .filter(one -> one.rule() == Zone.Rule.NO_OVERFLIGHT)
                .filter(one -> Ways.applies(day, one, flight))
                .forEach(one -> ids.add(one.id()));
        // An id of a wire too may be the wire.
        day.job().wires().forEach(wire -> ids.remove(wire.id()));
        return ids;
    }

    /** Of each shape of load that surely runs away somewhere, one way is told. */
    private void checkRuns(List<Flight> loaded) {
        EnumMap<LoadShape, Set<String>> ways = new EnumMap<>(LoadShape.class);
        EnumSet<LoadShape> running = EnumSet.noneOf(LoadShape.class);
        for (Flight flight : loaded) {
            LoadShape shape = day.kindOf(flight.loads().get(0)).shape();
            ways.computeIfAbsent(shape, unused -> new TreeSet<>()).add(flight.subject());
            if (!running.contains(shape) && isRunning(flight, shape)) {
                running.add(shape);
            }
        }
        Set<String> subjects = new TreeSet<>();
        running.forEach(shape -> subjects.addAll(ways.getOrDefault(shape, Set.of())));
        long told =
                day.plan().findings().stream()
                        .filter(one -> one.code() == FindingCode.RELEASE_RUNS)
                        .filter(one -> one.severity() == Severity.NOTE)
                        .filter(one -> subjects.contains(one.subject()))
                        .count();
        if (!running.isEmpty()) {
            said.told(told >= running.size(), subjects.iterator().next(), FindingCode.RELEASE_RUNS);
        }
    }

    /** Let go somewhere, the ground is too steep from under the hook to beyond where it lands. */
    private boolean isRunning(Flight flight, LoadShape shape) {
        double holdsRad = Math.atan(Friction.frictionCoefficient(shape)) + SLOPE_SPREAD_RAD;
        double speed = flight.leg().speedMPerS() + boxes.wind(flight).speedMPerS();
        return flight.track().stream().allMatch(day::isKnown)
                && FallCheck.spots(flight).stream()
                        .filter(spot -> Math.rint(spot.alongM()) % EVERY_M == 0)
                        .anyMatch(spot -> leastSlopeRad(spot, speed) > holdsRad);
    }

    private double leastSlopeRad(FallBoxes.Spot spot, double speedMPerS) {
        double high = Math.max(1, spot.hookAmslM() - day.groundAmslM(spot.at()));
        double far = BEYOND_RATIO * speedMPerS * Math.sqrt(2 * high / GRAVITY_M_PER_S2);
        double cellM = day.ground().terrain().cellSizeM();
        double least = Math.PI / 2;
        for (int i = 0; i <= SPOTS; i++) {
            PlanePoint at = Plane.along(spot.at(), spot.bearingGridRad(), far * i / SPOTS);
            double rise =
                    Math.hypot(
                            day.riseFactor(at, Math.PI / 2, cellM), day.riseFactor(at, 0, cellM));
            least = Math.min(least, Math.atan(rise));
        }
        return least;
    }
}
