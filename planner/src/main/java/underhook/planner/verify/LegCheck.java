package underhook.planner.verify;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/** Each leg's chain, ends, length, time and speed. */
final class LegCheck {
    private final Day day;
    private final Machine machine;
    private final Air air;

    LegCheck(Day day) {
        this.day = day;
        this.machine = day.job().machine();
        this.air = new Air(day.job().weather());
    }

    void run() {
        for (int i = 0; i < day.plan().steps().size(); i++) {
            Step step = day.plan().steps().get(i);
            checkChain(Day.name(i + 1), step);
            step.rotation().ifPresent(rotation -> checkCarried(rotation, step));
        }
        for (Flight flight : day.listFlights()) {
            checkEnds(flight);
            checkLength(flight);
            checkTime(flight);
            checkBound(flight);
            checkSpeed(flight);
        }
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(this::checkWaysIn);
        }
    }

    private void checkChain(String name, Step step) {
        PlaceId at = step.from();
        for (Leg leg : Day.legsOf(step)) {
            PlaceId here = at;
            day.ledger()
                    .demand(
                            leg.from().equals(here),
                            FindingCode.LEG_PATH,
                            leg.from() + "-" + leg.to(),
                            () -> Told.of("plan", "This leg does not start at " + here + "."));
            at = leg.to();
        }
        PlaceId end = at;
        day.ledger()
                .demand(
                        !Day.flies(step) || end.equals(step.to()),
                        FindingCode.LEG_PATH,
                        name,
                        () ->
                                Told.of(
                                        "plan",
                                        "The legs of "
                                                + name
                                                + " end at "
                                                + end
                                                + " instead of "
                                                + step.to()
                                                + "."));
    }

    /** The loads hang from where they wait to where they are let go, and nowhere else. */
    private void checkCarried(Rotation rotation, Step step) {
        List<LoadId> left = new ArrayList<>(rotation.loads());
        PlaceId from = day.job().getLoad(left.get(0)).from();
        boolean hooked = step.from().equals(from);
        boolean right = true;
        int next = 0;
        for (Leg leg : rotation.legs()) {
            right &= leg.carrying().equals(hooked ? left : List.of());
            if (!hooked) {
                hooked = leg.to().equals(from);
                continue;
            }
            while (next < rotation.drops().size()
                    && rotation.drops().get(next).place().equals(leg.to())) {
                left.remove(rotation.drops().get(next).load());
                next++;
            }
        }
        String first = rotation.loads().get(0).value();
        day.ledger()
                .demand(
                        right && left.isEmpty(),
                        FindingCode.LEG_PATH,
                        first,
                        () ->
                                Told.of(
                                        "plan",
                                        "The legs do not take "
                                                + first
                                                + " and its company from where they wait to where they belong."));
    }

    private void checkEnds(Flight flight) {
        Leg leg = flight.leg();
        double start = Plane.apartM(flight.track().get(0), day.planeOf(leg.from()));
        double end =
                Plane.apartM(flight.track().get(flight.track().size() - 1), day.planeOf(leg.to()));
        double worst = Math.max(start, end);
        day.ledger()
                .demand(
                        worst <= Tolerance.PATH_END_M,
                        FindingCode.LEG_PATH,
                        flight.subject(),
                        () ->
                                Told.of("plan", "The path misses its place.")
                                        .figures(worst, Tolerance.PATH_END_M, "m"));
        int last = leg.path().size() - 1;
        double lineM = flight.step().lineLengthM();
        checkEndHeight(flight, 0, lineM);
        checkEndHeight(flight, last, lineM + standsM(flight));
    }

    /** A pole is let go standing; what lies on the ground reaches no higher than somebody's hands. */
    private double standsM(Flight flight) {
        return flight.loads().stream()
                .filter(load -> day.kindOf(load).standsUp())
                .mapToDouble(Load::lengthM)
                .max()
                .orElse(0);
    }

    /** The line, and a pole that stands on the ground under it, are above it where a leg begins and ends. */
    private void checkEndHeight(Flight flight, int point, double leastM) {
        double aboveM =
                flight.leg().path().get(point).hookAltitudeAmslM()
                        - day.groundAmslM(flight.track().get(point));
        day.ledger()
                .demand(
                        aboveM >= leastM - Tolerance.CLEARANCE_M,
                        FindingCode.LEG_PATH,
                        flight.subject(),
                        () ->
                                Told.of("plan", "Line and load reach into the ground at an end.")
                                        .figures(aboveM, leastM, "m"));
    }

    private void checkLength(Flight flight) {
        double own = lengthM(flight.leg());
        double stated = flight.leg().distanceM();
        day.ledger()
                .demand(
                        Math.abs(stated - own)
                                <= Tolerance.DISTANCE_M + Tolerance.DISTANCE_FRACTION * own,
                        FindingCode.LEG_PATH,
                        flight.subject(),
                        () ->
                                Told.of("plan", "The distance is not that of the path.")
                                        .figures(stated, own, "m"));
    }

    private static double lengthM(Leg leg) {
        double sum = 0;
        for (int i = 1; i < leg.path().size(); i++) {
            sum += Plane.distanceM(leg.path().get(i - 1).position(), leg.path().get(i).position());
        }
        return sum;
    }

    private void checkTime(Flight flight) {
        Leg leg = flight.leg();
        double climbed = 0;
        double sunk = 0;
        for (int i = 1; i < leg.path().size(); i++) {
            double rise =
                    leg.path().get(i).hookAltitudeAmslM()
                            - leg.path().get(i - 1).hookAltitudeAmslM();
            climbed += Math.max(0, rise);
            sunk += Math.max(0, -rise);
        }
        double level = lengthM(leg) / leg.speedMPerS();
        double vertical = climbed / machine.climbMPerS() + sunk / machine.descentMPerS();
        double least = Tolerance.LEG_TIME_FRACTION * Math.max(level, vertical);
        day.ledger()
                .demand(
                        leg.durationS() >= least - Tolerance.TIME_S,
                        FindingCode.LEG_TIME,
                        flight.subject(),
                        () ->
                                Told.of(
                                                "machine",
                                                "The leg is flown faster than its speed and climb.")
                                        .figures(leg.durationS(), least, "s"));
    }

    /** A bound above the leg's own time is none. */
    private void checkBound(Flight flight) {
        Leg leg = flight.leg();
        day.ledger()
                .demand(
                        leg.boundS() <= leg.durationS() + Tolerance.TIME_S,
                        FindingCode.LEG_TIME,
                        flight.subject(),
                        () ->
                                Told.of("plan", "The leg is shorter than its stated bound.")
                                        .figures(leg.durationS(), leg.boundS(), "s"));
    }

    private void checkSpeed(Flight flight) {
        double limit =
                flight.loads().isEmpty()
                        ? flight.step().lineLengthM() > Tolerance.LENGTH_M
                                ? machine.emptyLineSpeedMPerS()
                                : machine.cabinSpeedMPerS()
                        : flight.loads().stream()
                                .mapToDouble(load -> day.kindOf(load).speedMPerS())
                                .min()
                                .orElseThrow();
        double speed = flight.leg().speedMPerS();
        day.ledger()
                .demand(
                        speed > 0 && speed <= limit + Tolerance.SPEED_M_PER_S,
                        FindingCode.LEG_SPEED,
                        flight.subject(),
                        () ->
                                Told.of("rules", "The leg is faster than what hangs there allows.")
                                        .figures(speed, limit, "m/s"));
        boolean weighed = flight.loads().stream().allMatch(load -> load.massKg().isPresent());
        if (!flight.loads().isEmpty() && weighed) {
            checkTrail(flight);
        }
    }

    private void checkTrail(Flight flight) {
        String first = flight.loads().get(0).id().value();
        double speed = flight.leg().speedMPerS();
        double least = day.job().rules().flying().leastSpeedMPerS();
        day.ledger()
                .demand(
                        speed >= least - Tolerance.SPEED_M_PER_S
                                || day.isAnswered(FindingCode.FLIES_BADLY, first),
                        FindingCode.FLIES_BADLY,
                        first,
                        () ->
                                Told.of("rules", first + " is flown slower than is worth flying.")
                                        .figures(speed, least, "m/s"));
        double limit = trailSpeedMPerS(flight);
        day.ledger()
                .demand(
                        speed <= limit * Tolerance.TRAIL_SPEED_FACTOR,
                        FindingCode.FLIES_BADLY,
                        first,
                        () ->
                                Told.of("rules", first + " trails too far at this speed.")
                                        .figures(speed, limit, "m/s"));
    }

    /**
     * Speed at which drag over weight of one of the loads reaches its trail limit, in the densest air of
     * the leg, m/s. Each hangs in a sling of its own, so the lightest for its size decides.
     *
     * @source DERIVED balance of drag and weight: tan(angle) = ρ V² CdA / (2 m g)
     */
    private double trailSpeedMPerS(Flight flight) {
        double ballast = flight.ballastKg();
        double lowest =
                flight.leg().path().stream()
                        .mapToDouble(PathPoint::hookAltitudeAmslM)
                        .min()
                        .orElseThrow();
        double density = 0;
        for (WeatherHour row : air.listRows(flight.step().startAt())) {
            density = Math.max(density, air.densityKgPerM3(row, lowest));
        }
        double least = Double.POSITIVE_INFINITY;
        for (Load load : flight.loads()) {
            double weight = (day.lightMassKg(load) + ballast) * Units.STANDARD_GRAVITY_M_PER_S2;
            double tan = Math.tan(day.kindOf(load).trailLimitRad());
            least =
                    Math.min(
                            least, Math.sqrt(2 * weight * tan / (density * dragAreaM2(day, load))));
        }
        return density > 0 ? least : Double.POSITIVE_INFINITY;
    }

    static double dragAreaM2(Day day, Load load) {
        LoadKind kind = day.kindOf(load);
        double face =
                Math.max(
                        load.lengthM() * load.widthM(),
                        Math.max(load.lengthM() * load.heightM(), load.widthM() * load.heightM()));
        return load.dragAreaM2().orElse(kind.dragCoefficient() * face);
    }

    /** The stated way in and out are those of the path's last and first part. */
    private void checkWaysIn(Rotation rotation) {
        for (int i = 0; i < rotation.legs().size(); i++) {
            Leg leg = rotation.legs().get(i);
            for (Drop drop : rotation.drops()) {
                if (leg.carrying().contains(drop.load()) && leg.to().equals(drop.place())) {
                    checkBearing(drop, leg, false);
                    // The way out is that after the last release at the place.
                    if (i + 1 < rotation.legs().size()
                            && !rotation.legs().get(i + 1).carrying().contains(drop.load())) {
                        checkBearing(drop, rotation.legs().get(i + 1), true);
                    }
                }
            }
        }
    }

    private void checkBearing(Drop drop, Leg leg, boolean out) {
        List<PlanePoint> track =
                new ArrayList<>(leg.path().stream().map(p -> day.planeOf(p.position())).toList());
        if (!out) {
            Collections.reverse(track);
        }
        PlanePoint far = Plane.walked(track, day.job().rules().flying().finalM());
        if (Plane.apartM(track.get(0), far) < 2 * Tolerance.PATH_END_M) {
            return;
        }
        double own =
                Plane.bearingGridRad(track.get(0), far)
                        + Plane.convergenceRad(
                                day.ground().frame(), day.job().getPlace(drop.place()).position());
        double stated = out ? drop.departureTrackTrueRad() : drop.approachFromTrueRad();
        double off = Math.abs(Units.wrapPiRad(own - stated));
        day.ledger()
                .demand(
                        off <= Tolerance.WAY_IN_RAD,
                        FindingCode.LEG_PATH,
                        leg.from() + "-" + leg.to(),
                        () ->
                                Told.of(
                                                "plan",
                                                (out ? "The way out" : "The way in")
                                                        + " is not that which is stated for "
                                                        + drop.load()
                                                        + ".")
                                        .figures(
                                                Math.toDegrees(Units.wrapTwoPiRad(own)),
                                                Math.toDegrees(Units.wrapTwoPiRad(stated)),
                                                "deg"));
    }
}
