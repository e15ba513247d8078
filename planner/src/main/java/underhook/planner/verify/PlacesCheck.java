package underhook.planner.verify;

import java.util.List;
import java.util.Optional;
import underhook.core.finding.FindingCode;
import underhook.core.job.Load;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Drop;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.PlaceRoom.Fit;
import underhook.core.plan.PlaceRoom.LineRoom;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * The table of room at each place that people take a line by: every place used is in it with the line that is
 * flown there, and no heading is said to be free that is not.
 */
final class PlacesCheck {
    /** Headings tried all round. */
    private static final int HEADINGS = 12;

    /** A swing counts as died down after so many. @source PRACTICE as in docs/formats.md */
    private static final int SETTLING_PERIODS = 3;

    private static final double GRAVITY_M_PER_S2 = Units.STANDARD_GRAVITY_M_PER_S2;

    /** Densities by two right ways, and a knot that was rounded. */
    private static final double LEAST_WASH_RATIO = 0.97;

    private static final List<String> HANGING = List.of("line", "load");
    private static final List<String> PARTS = List.of("rotor", "tail", "fuselage", "line", "load");

    private final Day day;
    private final Rules rules;
    private final RoomCheck space;
    private final Air air;

    PlacesCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
        this.space = new RoomCheck(day);
        this.air = new Air(day.job().weather());
    }

    void run() {
        for (Step step : day.plan().steps()) {
            if (step.rotation().isEmpty()) {
                continue;
            }
            List<Load> loads = day.loadsOf(step.rotation().get().loads());
            checkFlown(loads.get(0).from(), step, false);
            for (Drop drop : step.rotation().get().drops()) {
                boolean stands = day.kindOf(day.job().getLoad(drop.load())).standsUp();
                checkFlown(drop.place(), step, stands);
            }
        }
        for (PlaceRoom room : day.plan().rooms()) {
            Optional<Place> place = day.job().findPlace(room.place());
            demand(place.isPresent(), room.place(), "is no place of the job");
            place.ifPresent(there -> check(there, room));
        }
    }

    private void checkFlown(PlaceId place, Step step, boolean stands) {
        boolean told =
                day.plan().rooms().stream()
                        .filter(room -> room.place().equals(place))
                        .flatMap(room -> room.lines().stream())
                        .anyMatch(
                                line ->
                                        isNear(line.lineLengthM(), step.lineLengthM())
                                                && line.standsM() > 0 == stands);
        demand(told, place, "is used with a line of which no room is stated");
    }

    private void check(Place place, PlaceRoom room) {
        for (LineRoom line : room.lines()) {
            demand(
                    day.job().machine().lines().stream()
                            .anyMatch(
                                    item ->
                                            item.name().equals(line.line())
                                                    && isNear(item.lengthM(), line.lineLengthM())),
                    room.place(),
                    "has room for a line that is not in stock");
            demand(
                    line.standsM() <= 0 || isStanding(place, line.standsM()),
                    room.place(),
                    "has room for a load that is not set up there");
            demand(
                    line.cost().reachM()
                            >= line.lineLengthM() + line.standsM() - Tolerance.LENGTH_M,
                    room.place(),
                    "is reached with less than the line");
            checkTightest(place, line);
            checkCost(place, line);
            if (day.isKnown(day.planeOf(place.id()))) {
                day.prove(
                        new Proofs.Asked(PlacesCheck.class, List.of(place, line)),
                        () -> {
                            checkFree(place, line);
                            checkMargin(place, line);
                        });
            }
        }
        demand(
                room.advisedLine().isEmpty() || hasRoom(room, room.advisedLine().get()),
                room.place(),
                "is advised a line that has no room");
    }

    /** For what hangs, which needs the longer line; where only poles are set, for them. */
    private static boolean hasRoom(PlaceRoom room, String advised) {
        boolean anyHangs = room.lines().stream().anyMatch(line -> line.standsM() <= 0);
        List<LineRoom> rows =
                room.lines().stream()
                        .filter(line -> line.line().equals(advised))
                        .filter(line -> !anyHangs || line.standsM() <= 0)
                        .toList();
        return !rows.isEmpty() && rows.stream().noneMatch(PlacesCheck::isRefused);
    }

    /** How long it swings, and how hard the air comes down: estimates, and no lower than by the plain formulas. */
    private void checkCost(Place place, LineRoom line) {
        double periodS = 2 * Math.PI * Math.sqrt(line.lineLengthM() / GRAVITY_M_PER_S2);
        demand(
                line.cost().settleS() >= SETTLING_PERIODS * periodS - Tolerance.TIME_S,
                place.id(),
                "has loads at rest sooner than they swing");
        demand(
                line.cost().downwashMPerS() >= LEAST_WASH_RATIO * washMPerS(place),
                place.id(),
                "has less wind under the rotor than it holds the machine up with");
    }

    /**
     * Far below the heaviest machine in the thinnest air of the day.
     *
     * @source DERIVED momentum theory: half the air's momentum a second is had at the rotor, so w² = 2 m g / ρ π R²
     */
    private double washMPerS(Place place) {
        double radiusM = day.job().machine().rotorRadiusM();
        double weightN = day.job().machine().maxExternalMassKg() * GRAVITY_M_PER_S2;
        double thinnestKgPerM3 =
                day.job().weather().hours().stream()
                        .mapToDouble(row -> densityKgPerM3(row, place))
                        .min()
                        .orElse(Double.POSITIVE_INFINITY);
        return Math.sqrt(2 * weightN / (thinnestKgPerM3 * Math.PI * radiusM * radiusM));
    }

    private double densityKgPerM3(WeatherHour row, Place place) {
        return day.isKnown(day.planeOf(place.id()))
                ? air.densityKgPerM3(row, day.groundAmslM(place.id()))
                : Double.POSITIVE_INFINITY;
    }

    private boolean isStanding(Place place, double standsM) {
        return day.job().loads().stream()
                .anyMatch(
                        load ->
                                load.to().equals(place.id())
                                        && day.kindOf(load).standsUp()
                                        && isNear(load.lengthM(), standsM));
    }

    private static boolean isRefused(LineRoom line) {
        return line.sectors().stream().allMatch(one -> one.fit() == Fit.REFUSED);
    }

    /** What is nearest agrees with what the headings say. */
    private void checkTightest(Place place, LineRoom line) {
        PlaceRoom.Tightest tightest = line.tightest();
        double needed =
                HANGING.contains(tightest.part())
                        ? rules.margins().underClearanceM()
                        : rules.distances().rotorClearanceM();
        demand(PARTS.contains(tightest.part()), place.id(), "is tight for what no machine has");
        demand(
                tightest.neededM() >= needed - Tolerance.LENGTH_M,
                place.id(),
                "needs more than is stated");
        double spare = tightest.marginM() - tightest.neededM();
        boolean anyRefused = line.sectors().stream().anyMatch(one -> one.fit() == Fit.REFUSED);
        demand(
                anyRefused ? spare < Tolerance.LENGTH_M : spare > -Tolerance.LENGTH_M,
                place.id(),
                "states a margin that its headings do not have");
    }

    /** On the heading that decides, the part that decides has no more to spare than by our own distances. */
    private void checkMargin(Place place, LineRoom line) {
        PlaceRoom.Tightest tightest = line.tightest();
        double own = space.spareM(place, line, tightest);
        demand(
                tightest.marginM() - tightest.neededM() <= own + Tolerance.CLEARANCE_M,
                place.id(),
                "has less room with the line " + line.line() + " than its margin says");
    }

    private void checkFree(Place place, LineRoom line) {
        for (int i = 0; i < HEADINGS; i++) {
            double heading = 2 * Math.PI * i / HEADINGS;
            demand(
                    line.fitAt(heading) != Fit.FREE
                            || space.spareM(place, line, heading) >= -Tolerance.CLEARANCE_M,
                    place.id(),
                    "is said to be free on " + Math.round(Math.toDegrees(heading)) + "°");
        }
    }

    private static boolean isNear(double statedM, double ownM) {
        return Math.abs(statedM - ownM) <= Tolerance.LENGTH_M;
    }

    private void demand(boolean holds, PlaceId place, String what) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.STATED_WRONG,
                        place.value(),
                        () -> Told.of("plan", place + " " + what + "."));
    }
}
