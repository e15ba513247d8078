package underhook.planner.verify;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import underhook.core.finding.FindingCode;
import underhook.core.job.Handling.Flying;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;
import underhook.core.unit.Units;

/**
 * How line and load hang at the speed of a leg, and whether the leg leaves time to come to rest.
 *
 * <p>The line is laid out in short straight pieces from the load up, each turned by what hangs below it: a
 * chain of statics, no equation of motion.
 *
 * @source DERIVED balance of each piece; HOERNER-1965 push across an inclined cylinder; MATTHEWS-DATA 1.2
 */
final class HangCheck {
    private static final int PIECES = 400;
    private static final double CYLINDER_COEFFICIENT = 1.2;

    /** Drag of a remote hook, m², as the plan takes it. @source PRACTICE */
    private static final double HOOK_AREA_M2 = 0.06;

    /** An angle by two ways of adding up, rad. */
    private static final double ANGLE_RAD = Math.toRadians(0.5);

    /** A distance by two ways of adding up, m. */
    private static final double DISTANCE_M = 0.2;

    private final Day day;
    private final Air air;
    private final Flying flying;

    HangCheck(Day day) {
        this.day = day;
        this.air = new Air(day.job().weather());
        this.flying = day.job().rules().handling().flying();
    }

    void run() {
        // Plans of earlier programs say nothing of slowing down.
        boolean isTold =
                day.listFlights().stream().anyMatch(flight -> flight.leg().slowing().isPresent());
        for (Flight flight : day.listFlights()) {
            Optional<LineItem> line = findLine(flight);
            boolean weighed = flight.loads().stream().allMatch(load -> load.massKg().isPresent());
            if (line.isPresent() && weighed) {
                // Besides leg and loads it looks at the air of the step's hour alone.
                day.prove(
                        Proofs.Asked.of(
                                HangCheck.class,
                                day.haul(flight),
                                List.of(air.listRows(flight.step().startAt()))),
                        () -> checkShape(flight, line.get()));
                checkStated(flight, line.get());
                if (isTold) {
                    checkRest(flight);
                }
            }
        }
    }

    private Optional<LineItem> findLine(Flight flight) {
        return day.job().machine().lines().stream()
                .filter(
                        line ->
                                Math.abs(line.lengthM() - flight.step().lineLengthM())
                                        < Tolerance.LENGTH_M)
                .findFirst();
    }

    /** What a card says of the trail and of the distance to the tail with a load is no better than it is. */
    private void checkStated(Flight flight, LineItem line) {
        List<Limit> limits =
                flight.loads().isEmpty()
                        ? List.of()
                        : flight.step().rotation().map(Rotation::limits).orElse(List.of());
        if (limits.isEmpty()) {
            return;
        }
        day.prove(
                new Proofs.Asked(
                        HangCheck.class,
                        List.of(
                                limits,
                                Proofs.Asked.of(
                                        HangCheck.class,
                                        day.haul(flight),
                                        List.of(air.listRows(flight.step().startAt()))))),
                () -> {
                    Laid laid = lay(flight, line, hung(flight));
                    double widest = Math.max(laid.widestRad, ownTrailRad(flight));
                    double trailDeg = Math.toDegrees(widest - ANGLE_RAD);
                    double allowedDeg = Math.toDegrees(allowedRad(flight) + ANGLE_RAD);
                    demandStated(
                            flight,
                            limits,
                            "TRAIL",
                            one -> one.value() >= trailDeg && one.limit() <= allowedDeg);
                    demandStated(
                            flight,
                            limits,
                            "TAIL_DISTANCE",
                            one ->
                                    one.value() >= flying.tailClearM() - DISTANCE_M
                                            && one.limit() <= laid.nearestM + DISTANCE_M);
                });
    }

    private void demandStated(
            Flight flight, List<Limit> limits, String code, Predicate<Limit> isSo) {
        day.ledger()
                .demand(
                        limits.stream().filter(one -> one.code().equals(code)).anyMatch(isSo),
                        FindingCode.MARGIN_WRONG,
                        flight.loads().get(0).id().value(),
                        () -> Told.of("plan", code + " is not stated, or better than it is."));
    }

    /** What hangs at the line's end. */
    private record End(double massKg, double areaM2) {}

    private End hung(Flight flight) {
        double mass = 0;
        double area = HOOK_AREA_M2;
        if (!flight.loads().isEmpty()) {
            mass += flight.ballastKg();
        }
        for (Load load : flight.loads()) {
            mass += day.lightMassKg(load);
            area += LegCheck.dragAreaM2(day, load);
        }
        return new End(mass, area);
    }

    /** How far the load trails that is lightest for its size, each in a sling of its own, rad. */
    private double ownTrailRad(Flight flight) {
        double speed = flight.leg().speedMPerS();
        double pressure = 0.5 * densityKgPerM3(flight) * speed * speed;
        double widest = 0;
        for (Load load : flight.loads()) {
            double weight =
                    (day.lightMassKg(load) + flight.ballastKg()) * Units.STANDARD_GRAVITY_M_PER_S2;
            widest =
                    Math.max(widest, Math.atan2(pressure * LegCheck.dragAreaM2(day, load), weight));
        }
        return widest;
    }

    private double allowedRad(Flight flight) {
        double allowed = flight.loads().isEmpty() ? flying.emptyTrailRad() : Math.PI / 2;
        for (Load load : flight.loads()) {
            allowed = Math.min(allowed, day.kindOf(load).trailLimitRad());
        }
        return allowed;
    }

    private void checkShape(Flight flight, LineItem line) {
        Laid laid = lay(flight, line, hung(flight));
        double limitRad = allowedRad(flight);
        day.ledger()
                .demand(
                        laid.widestRad <= limitRad + ANGLE_RAD,
                        FindingCode.LEG_SPEED,
                        flight.subject(),
                        () ->
                                Told.of("rules", "The line trails too far at this speed.")
                                        .figures(
                                                Math.toDegrees(laid.widestRad),
                                                Math.toDegrees(limitRad),
                                                "deg"));
        day.ledger()
                .demand(
                        laid.nearestM >= flying.tailClearM() - DISTANCE_M,
                        FindingCode.LEG_SPEED,
                        flight.subject(),
                        () ->
                                Told.of("rules", "The line comes too near the tail.")
                                        .figures(laid.nearestM, flying.tailClearM(), "m"));
    }

    /** A line as it hangs: its widest angle from plumb, and how near it comes to the tail when swung. */
    private record Laid(double widestRad, double nearestM) {}

    private Laid lay(Flight flight, LineItem line, End end) {
        double speed = flight.leg().speedMPerS();
        double pressure = 0.5 * densityKgPerM3(flight) * speed * speed;
        double piece = line.lengthM() / PIECES;
        double weight = line.ropeMassKg() * Units.STANDARD_GRAVITY_M_PER_S2 / PIECES;
        double push = pressure * CYLINDER_COEFFICIENT * line.make().diameterM() * piece;
        double down = (line.make().endMassKg() + end.massKg()) * Units.STANDARD_GRAVITY_M_PER_S2;
        double back = pressure * end.areaM2();
        double[] aft = new double[PIECES + 1];
        double[] below = new double[PIECES + 1];
        double widest = Math.atan2(back, down);
        for (int i = 0; i < PIECES; i++) {
            double angle = Math.atan2(back, down);
            double cosine = Math.cos(angle);
            // Across the piece: up and back.
            back += push * cosine * cosine * cosine;
            down += weight - push * cosine * cosine * Math.sin(angle);
            aft[i + 1] = aft[i] + piece * Math.sin(angle);
            below[i + 1] = below[i] + piece * cosine;
            widest = Math.max(widest, Math.atan2(back, down));
        }
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= PIECES; i++) {
            double behind = aft[PIECES] - aft[i];
            double under = below[PIECES] - below[i];
            double turned = Math.atan2(behind, under) + flying.swingRad();
            double far = Math.hypot(behind, under);
            nearest =
                    Math.min(
                            nearest,
                            Math.hypot(
                                    far * Math.sin(turned) - day.job().machine().tailReachM(),
                                    far * Math.cos(turned)
                                            + day.job().machine().body().rotorAboveHookM()));
        }
        return new Laid(widest, nearest);
    }

    /** At the lowest point of the leg, in the rows of its hour. */
    private double densityKgPerM3(Flight flight) {
        double lowest =
                flight.leg().path().stream()
                        .mapToDouble(PathPoint::hookAltitudeAmslM)
                        .min()
                        .orElseThrow();
        double density = 0;
        for (WeatherHour row : air.listRows(flight.step().startAt())) {
            density = Math.max(density, air.densityKgPerM3(row, lowest));
        }
        return density;
    }

    /** Nobody comes to a hover harder than the rules let him, and the leg's time holds what is stated. */
    private void checkRest(Flight flight) {
        Leg leg = flight.leg();
        Optional<Leg.Slowing> stated = leg.slowing();
        boolean told =
                day.ledger()
                        .demand(
                                stated.isPresent(),
                                FindingCode.LEG_TIME,
                                flight.subject(),
                                () -> Told.of("plan", "Nothing is said of slowing down."));
        if (!told) {
            return;
        }
        double hardest =
                Math.min(
                        flying.slowingMPerS2(),
                        Units.STANDARD_GRAVITY_M_PER_S2 * Math.tan(flying.noseUpRad()));
        double speed = leg.speedMPerS();
        double beginM = speed * speed / (2 * hardest);
        day.ledger()
                .demand(
                        stated.get().beginM() >= beginM - Tolerance.DISTANCE_M
                                && stated.get().lastsS() >= speed / hardest - Tolerance.TIME_S,
                        FindingCode.LEG_TIME,
                        flight.subject(),
                        () ->
                                Told.of("rules", "It slows down harder than the rules allow.")
                                        .figures(stated.get().beginM(), beginM, "m"));
        double least = leg.distanceM() / speed + stated.get().extraS(speed);
        day.ledger()
                .demand(
                        leg.durationS() >= Tolerance.LEG_TIME_FRACTION * least - Tolerance.TIME_S,
                        FindingCode.LEG_TIME,
                        flight.subject(),
                        () ->
                                Told.of("rules", "The leg leaves no time to come to rest.")
                                        .figures(leg.durationS(), least, "s"));
    }
}
