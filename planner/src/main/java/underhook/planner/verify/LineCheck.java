package underhook.planner.verify;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Zone;
import underhook.core.plan.Drop;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** The line that is fitted, its length at every hover, and the ground that people land on. */
final class LineCheck {
    /** Ground counts this far behind the tail, m. @source PRACTICE room to turn the tail a little */
    private static final double BEHIND_TAIL_M = 2.5;

    private static final double SAMPLE_M = 0.5;

    /** Half the side of the square over which a landing slope is taken, m. */
    private static final double SLOPE_STENCIL_M = 5.0;

    private final Day day;
    private final Machine machine;

    /** Of places that loads were hooked up at. */
    private final Map<PlaceId, Double> leastRisesM = new HashMap<>();

    LineCheck(Day day) {
        this.day = day;
        this.machine = day.job().machine();
    }

    void run() {
        List<Step> steps = day.plan().steps();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            checkState(i, step);
            step.rotation().ifPresent(rotation -> checkLengths(step, rotation));
            if (step.kind() == StepKind.CREW_MOVE) {
                checkLanding(step.from());
                checkLanding(step.to());
                if (!day.isBegun(step)) {
                    checkTrees(step.from());
                    checkTrees(step.to());
                }
            }
        }
    }

    private void checkState(int index, Step step) {
        String name = Day.name(index + 1);
        double fitted = step.lineLengthM();
        boolean inStock =
                fitted < Tolerance.LENGTH_M
                        || machine.lines().stream()
                                .anyMatch(
                                        line ->
                                                Math.abs(line.lengthM() - fitted)
                                                        < Tolerance.LENGTH_M);
        day.ledger()
                .demand(
                        inStock,
                        FindingCode.LINE_STATE,
                        name,
                        () ->
                                Told.of("machine", "No line of that length is in stock.")
                                        .figures(fitted, 0, "m"));
        day.ledger()
                .demand(
                        step.kind() != StepKind.ROTATION || fitted > Tolerance.LENGTH_M,
                        FindingCode.LINE_STATE,
                        name,
                        () -> Told.of("plan", name + " flies a load without a line."));
        day.ledger()
                .demand(
                        step.kind() != StepKind.CREW_MOVE || fitted < Tolerance.LENGTH_M,
                        FindingCode.LINE_ON_WITH_PEOPLE,
                        name,
                        () ->
                                Told.of("rules", name + " moves people with the line on.")
                                        .figures(fitted, 0, "m"));
        if (index > 0 && step.kind() != StepKind.LINE_CHANGE) {
            double before = day.plan().steps().get(index - 1).lineLengthM();
            day.ledger()
                    .demand(
                            Math.abs(before - fitted) < Tolerance.LENGTH_M,
                            FindingCode.LINE_STATE,
                            name,
                            () ->
                                    Told.of(
                                                    "plan",
                                                    name
                                                            + " has another line without a line change.")
                                            .figures(fitted, before, "m"));
        }
    }

    private void checkLengths(Step step, Rotation rotation) {
        List<Load> loads = day.loadsOf(rotation.loads());
        Load first = loads.get(0);
        Place from = day.job().getPlace(first.from());
        // No way in is stated for a hook-up: the best heading must do.
        checkLength(first, from, step.lineLengthM(), leastRiseM(from));
        checkHover(first, from, step.lineLengthM(), rotation);
        for (int i = 0; i < loads.size(); i++) {
            Load load = loads.get(i);
            Drop drop = rotation.drops().get(i);
            Place place = day.job().getPlace(drop.place());
            double reach = step.lineLengthM() + (day.kindOf(load).standsUp() ? load.lengthM() : 0);
            checkLength(load, place, reach, riseM(place, drop));
            checkHover(load, place, reach, rotation);
        }
    }

    /** Least length of line and standing load over a set-down, m. */
    double needM(Drop drop) {
        Place place = day.job().getPlace(drop.place());
        return needM(place, riseM(place, drop));
    }

    /** Least length of line over a place on its best heading, m. */
    double leastNeedM(Place place) {
        return needM(place, leastRiseM(place));
    }

    double needM(Place place, double riseM) {
        return day.canopyAtM(place) + day.job().rules().distances().rotorClearanceM() + riseM;
    }

    private double riseM(Place place, Drop drop) {
        double convergenceRad = Plane.convergenceRad(day.ground().frame(), place.position());
        return riseM(place, drop.approachFromTrueRad() - convergenceRad);
    }

    private void checkLength(Load load, Place place, double reachM, double riseM) {
        double needs = needM(place, riseM);
        day.ledger()
                .demand(
                        reachM >= needs - Tolerance.LENGTH_M,
                        FindingCode.LINE_LENGTH,
                        load.id().value(),
                        () ->
                                Told.of(
                                                "rules",
                                                "The line is too short for "
                                                        + load.id()
                                                        + " at "
                                                        + place.id()
                                                        + ".")
                                        .figures(reachM, needs, "m"));
    }

    /** Loads hang over a place from the hook-up on, or up to the last release. */
    private void checkHover(Load load, Place place, double reachM, Rotation rotation) {
        double hover = reachM;
        List<Drop> drops = rotation.drops();
        Instant released = drops.get(drops.size() - 1).releasedAt();
        for (Zone zone : day.job().zones()) {
            boolean holds =
                    zone.rule() == Zone.Rule.NO_HOVER_BELOW
                            && Ways.applies(day, zone, List.of(load))
                            && Ways.isInForce(day, zone, rotation.hookedAt(), released)
                            && day.shapeOf(zone).covers(day.planeOf(place.position()));
            day.ledger()
                    .demand(
                            !holds || hover >= zone.minAglM(),
                            FindingCode.HOVER_IN_ZONE,
                            place.id().value(),
                            () ->
                                    Told.of(
                                                    zone.source(),
                                                    place.id()
                                                            + " lies in zone "
                                                            + zone.id()
                                                            + " where nobody hovers so low.")
                                            .figures(hover, zone.minAglM(), "m"));
        }
    }

    private double leastRiseM(Place place) {
        return leastRisesM.computeIfAbsent(place.id(), unused -> findLeastRiseM(place));
    }

    private double findLeastRiseM(Place place) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 36; i++) {
            least = Math.min(least, riseM(place, i * Math.PI / 18));
        }
        return least;
    }

    /** How far the ground behind the tail rises above the place, m, not negative. */
    double riseM(Place place, double tailGridRad) {
        PlanePoint at = day.planeOf(place.position());
        double here = day.groundAmslM(at);
        double most = 0;
        double reach = machine.tailReachM() + BEHIND_TAIL_M;
        int samples = (int) Math.ceil(reach / SAMPLE_M);
        for (int i = 1; i <= samples; i++) {
            PlanePoint p = Plane.along(at, tailGridRad, reach * i / samples);
            most = Math.max(most, day.groundAmslM(p) - here);
        }
        return most;
    }

    /** Whether the ground is known as far out as a tail with its room reaches, whichever way it points. */
    boolean isKnownBehind(PlanePoint at) {
        return day.ground().terrain().coversDisc(at, machine.tailReachM() + BEHIND_TAIL_M);
    }

    /** Whether the ground is known as far round as a slope is taken over. */
    boolean isKnownRound(PlanePoint at) {
        return Stream.of(-1, 0, 1)
                .flatMap(
                        east ->
                                Stream.of(-1, 0, 1)
                                        .map(
                                                north ->
                                                        new PlanePoint(
                                                                at.eastM() + east * SLOPE_STENCIL_M,
                                                                at.northM()
                                                                        + north * SLOPE_STENCIL_M)))
                .allMatch(day::isKnown);
    }

    private void checkLanding(PlaceId id) {
        PlanePoint at = day.planeOf(id);
        double limit = day.job().rules().landing().landingSlopeRad();
        double slope = slopeRad(at);
        day.ledger()
                .demand(
                        slope <= limit + Tolerance.SLOPE_RAD,
                        FindingCode.LANDING_TOO_STEEP,
                        id.value(),
                        () ->
                                Told.of(
                                                "rules",
                                                "The ground at " + id + " is too steep to land on.")
                                        .figures(
                                                Math.toDegrees(slope),
                                                Math.toDegrees(limit),
                                                "deg"));
    }

    /** Round a machine that stands there with its nose anywhere. */
    private void checkTrees(PlaceId id) {
        double treesM = day.treesRoundLandingM(day.job().getPlace(id));
        day.ledger()
                .demand(
                        treesM <= Tolerance.GRASS_M,
                        FindingCode.LANDING_IN_TREES,
                        id.value(),
                        () ->
                                Told.of(
                                                "canopy",
                                                "Trees stand within rotor, tail and their margin where"
                                                        + " people are landed at "
                                                        + id
                                                        + ".")
                                        .figures(treesM, Tolerance.GRASS_M, "m"));
    }

    /** Slope of the best plane through nine heights, rad. @source DERIVED least squares on a square */
    double slopeRad(PlanePoint at) {
        double east = 0;
        double north = 0;
        for (int i = -1; i <= 1; i++) {
            for (int j = -1; j <= 1; j++) {
                double height =
                        day.groundAmslM(
                                new PlanePoint(
                                        at.eastM() + i * SLOPE_STENCIL_M,
                                        at.northM() + j * SLOPE_STENCIL_M));
                east += i * height;
                north += j * height;
            }
        }
        return Math.atan(Math.sqrt(east * east + north * north) / (6 * SLOPE_STENCIL_M));
    }
}
