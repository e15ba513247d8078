package underhook.planner.verify;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * Whether the plan speaks of things that the job has, in a form that can be re-checked, and only over
 * known ground. Where it does not, nothing else can be computed.
 */
final class FormCheck {
    /** No line is longer, nothing that lifts is faster or higher: beyond, it is no figure of a flight. */
    private static final double MOST_LINE_M = 1000;

    private static final double MOST_SPEED_M_PER_S = 200;
    private static final double MOST_AMSL_M = 10_000;

    /** Nothing of a day lies so far from its date. */
    private static final Duration NEAR = Duration.ofDays(3);

    private final Day day;

    FormCheck(Day day) {
        this.day = day;
    }

    void run() {
        day.ledger()
                .demand(
                        !day.plan().steps().isEmpty()
                                || !day.plan().leftOut().isEmpty()
                                || day.job().loads().isEmpty(),
                        FindingCode.PLAN_UNREADABLE,
                        day.plan().id(),
                        () -> Told.of("plan", "The plan has no step."));
        day.ledger()
                .demand(
                        !day.plan().id().isBlank(),
                        FindingCode.PLAN_UNREADABLE,
                        "planId",
                        () -> Told.of("plan", "The plan has no id."));
        day.job().places().forEach(place -> checkKnown(day.planeOf(place.position()), place.id()));
        for (int i = 0; i < day.plan().steps().size(); i++) {
            checkStep(i + 1, day.plan().steps().get(i));
        }
        day.plan()
                .crews()
                .forEach(
                        stay -> {
                            checkCrew(stay.crew());
                            checkPlace(stay.place());
                            checkDate(stay.crew().value(), stay.fromAt(), stay.toAt());
                        });
        day.plan().leftOut().forEach(left -> checkLoad(left.load()));
    }

    private void checkKnown(PlanePoint at, PlaceId id) {
        if (isUsed(id)) {
            double reach = day.job().machine().tailReachM() + 10;
            boolean known = day.ground().terrain().coversDisc(at, reach);
            day.ledger()
                    .demand(
                            known,
                            FindingCode.OUTSIDE_TERRAIN,
                            id.value(),
                            () -> Told.of("terrain", "The ground round " + id + " is not known."));
        }
    }

    private boolean isUsed(PlaceId id) {
        return day.plan().steps().stream()
                .anyMatch(
                        step ->
                                step.from().equals(id)
                                        || step.to().equals(id)
                                        || step.rotation().stream()
                                                .flatMap(turn -> turn.drops().stream())
                                                .anyMatch(drop -> drop.place().equals(id)));
    }

    private void checkStep(int number, Step step) {
        checkPlace(step.from());
        checkPlace(step.to());
        step.crew().ifPresent(this::checkCrew);
        boolean shaped =
                switch (step.kind()) {
                    case ROTATION -> step.rotation().isPresent() && step.legs().isEmpty();
                    case POSITION -> step.rotation().isEmpty() && !step.legs().isEmpty();
                    case CREW_MOVE ->
                            step.rotation().isEmpty()
                                    && step.crew().isPresent()
                                    && !step.legs().isEmpty();
                    case REFUEL, LINE_CHANGE, BREAK, WAIT ->
                            step.rotation().isEmpty() && step.legs().isEmpty();
                };
        demand(shaped, number, step.kind() + " does not hold what its kind needs.");
        boolean finite =
                Double.isFinite(step.fuelStartKg())
                        && Double.isFinite(step.fuelEndKg())
                        && step.lineLengthM() >= 0
                        && step.lineLengthM() <= MOST_LINE_M;
        demand(finite, number, "fuel or line length is no figure of a flight.");
        checkDate(Day.name(number), step.startAt(), step.endAt());
        step.rotation().ifPresent(rotation -> checkRotation(number, rotation));
        Day.legsOf(step).forEach(leg -> checkLeg(number, leg));
        if (step.kind() != StepKind.ROTATION) {
            demand(
                    step.legs().stream().allMatch(leg -> leg.carrying().isEmpty()),
                    number,
                    "a load rides on a step that is no rotation.");
        }
    }

    private void checkRotation(int number, Rotation rotation) {
        demand(!rotation.loads().isEmpty(), number, "a rotation carries nothing.");
        rotation.loads().forEach(this::checkLoad);
        List<LoadId> dropped = new ArrayList<>();
        for (Drop drop : rotation.drops()) {
            checkLoad(drop.load());
            checkPlace(drop.place());
            dropped.add(drop.load());
        }
        demand(dropped.equals(rotation.loads()), number, "drops are not the loads in their order.");
        Set<LoadId> distinct = new HashSet<>(rotation.loads());
        demand(distinct.size() == rotation.loads().size(), number, "a load rides twice.");
        checkDate(Day.name(number), rotation.hookedAt());
        rotation.drops().forEach(drop -> checkDate(Day.name(number), drop.releasedAt()));
        Instant before = rotation.hookedAt();
        for (Drop drop : rotation.drops()) {
            demand(!drop.releasedAt().isBefore(before), number, "releases are not in time order.");
            before = drop.releasedAt();
        }
    }

    private void checkLeg(int number, Leg leg) {
        checkPlace(leg.from());
        checkPlace(leg.to());
        leg.carrying().forEach(this::checkLoad);
        demand(
                leg.path().size() >= 2,
                number,
                "path " + leg.from() + "-" + leg.to() + " is empty.");
        demand(
                leg.speedMPerS() >= 0 && leg.speedMPerS() <= MOST_SPEED_M_PER_S,
                number,
                "a speed is no figure of a flight.");
        for (PathPoint point : leg.path()) {
            demand(
                    Math.abs(point.hookAltitudeAmslM()) <= MOST_AMSL_M,
                    number,
                    "an altitude is no figure of a flight.");
            if (!checkInPlane(number, point.position())) {
                return;
            }
        }
        leg.crossings().forEach(one -> checkInPlane(number, one.at()));
        leg.wires().forEach(one -> checkInPlane(number, one.at()));
    }

    private boolean checkInPlane(int number, GeoPoint at) {
        double apart = Plane.distanceM(at, day.ground().frame().origin());
        return demand(apart < 100_000, number, "a point lies outside the job's plane.");
    }

    private void checkDate(String name, Instant... times) {
        Instant noon = day.job().date().atTime(12, 0).atZone(day.job().zone()).toInstant();
        for (Instant at : times) {
            day.ledger()
                    .demand(
                            at.isAfter(noon.minus(NEAR)) && at.isBefore(noon.plus(NEAR)),
                            FindingCode.PLAN_UNREADABLE,
                            name,
                            () -> Told.of("plan", name + " lies on another day: " + at + "."));
        }
    }

    private boolean demand(boolean holds, int number, String what) {
        return day.ledger()
                .demand(
                        holds,
                        FindingCode.PLAN_UNREADABLE,
                        Day.name(number),
                        () -> Told.of("plan", "In " + Day.name(number) + " " + what));
    }

    private void checkPlace(PlaceId id) {
        known(day.job().findPlace(id).isPresent(), id.value());
    }

    private void checkLoad(LoadId id) {
        known(day.job().findLoad(id).isPresent(), id.value());
    }

    private void checkCrew(CrewId id) {
        known(day.job().crews().stream().anyMatch(crew -> crew.id().equals(id)), id.value());
    }

    private void known(boolean holds, String id) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.ID_UNKNOWN,
                        id,
                        () -> Told.of("plan", "The job has no " + id + "."));
    }
}
