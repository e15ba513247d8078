package underhook.planner.verify;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.job.Zone;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * Why a load stays behind. Where the job alone decides it, it is worked out anew; else nothing that is
 * flown may contradict it: a load of the same kind and size on the same way. Each has its finding that stops.
 */
final class LeftOutCheck {
    /** Reasons of the search and the ways, which no fact of the job alone proves or refutes. */
    private static final Set<FindingCode> OF_THE_DAY =
            EnumSet.of(
                    FindingCode.NO_ROOM_IN_DAY,
                    FindingCode.ANOTHER_DAY,
                    FindingCode.NO_WAY,
                    FindingCode.NO_LINE_LONG_ENOUGH,
                    FindingCode.NO_CREW,
                    FindingCode.NO_HANDLER,
                    FindingCode.CENTRE_OF_GRAVITY);

    private static final Set<FindingCode> OF_THE_GEAR =
            EnumSet.of(
                    FindingCode.RIGGING_LIMIT,
                    FindingCode.RIGGING_EXPIRED,
                    FindingCode.BRIDLE_TILT,
                    FindingCode.KIT_SHORT);

    /** A day may have no room for one of two that are the same, and one may balance with another beside it. */
    private static final Set<FindingCode> OF_ONE_ALONE =
            EnumSet.of(
                    FindingCode.NO_ROOM_IN_DAY,
                    FindingCode.ANOTHER_DAY,
                    FindingCode.SEARCH_CUT,
                    FindingCode.ORDER_RULE,
                    FindingCode.PLACE_UNUSED,
                    FindingCode.CENTRE_OF_GRAVITY,
                    FindingCode.KIT_SHORT);

    /** Speeds, pulls and fuel by two ways of counting. */
    private static final double SPREAD_FACTOR = 1.1;

    private static final double PULL_FACTOR = 0.8;

    /** A trip with more fuel than for so long, besides the reserve, has enough, s. @source PRACTICE */
    private static final double LONG_S = 3600;

    /** A short sling, and the least at its end. @source SERVICE-LETTER-1727 */
    private static final double SHORT_M = 10;

    private static final double SHORT_END_KG = 15;

    /** Just under half the compass. */
    private static final double LESS_RAD = Math.PI - 1e-6;

    private final Day day;
    private final Rules rules;
    private final Machine machine;
    private final Air air;

    LeftOutCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
        this.machine = day.job().machine();
        this.air = new Air(day.job().weather());
    }

    void run() {
        for (LeftOut out : day.plan().leftOut()) {
            Load load = day.job().getLoad(out.load());
            demand(
                    follows(load, out.code()),
                    load,
                    "The job does not say of " + load.id() + " that " + out.code() + ".");
            demand(
                    OF_ONE_ALONE.contains(out.code())
                            || day.job().loads().stream()
                                    .noneMatch(one -> isFlownTwin(one, out.code(), load)),
                    load,
                    "One like " + load.id() + " is flown, which " + out.code() + " would forbid.");
            demand(
                    day.plan().findings().stream()
                            .anyMatch(
                                    one ->
                                            one.code() == out.code()
                                                    && one.severity() == Severity.STOP
                                                    && one.subject().equals(load.id().value())),
                    load,
                    "No finding stops " + load.id() + ", which is left out.");
        }
    }

    private void demand(boolean holds, Load load, String what) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.STATED_WRONG,
                        load.id().value(),
                        () -> Told.of("plan", what));
    }

    private boolean isFlownTwin(Load other, FindingCode code, Load load) {
        return isFlownUnder(other.id(), code)
                && other.kind().equals(load.kind())
                && other.from().equals(load.from())
                && other.to().equals(load.to())
                && other.massStatus() == load.massStatus()
                && List.of(other.massKg(), other.dragAreaM2(), other.material())
                        .equals(List.of(load.massKg(), load.dragAreaM2(), load.material()))
                && List.of(other.lengthM(), other.widthM(), other.heightM())
                        .equals(List.of(load.lengthM(), load.widthM(), load.heightM()));
    }

    /** Whether it is flown by what is known now, and nobody answers for it. */
    private boolean isFlownUnder(LoadId other, FindingCode code) {
        boolean begun = day.begunBefore(day.plan().plannedAt()).contains(other);
        return day.drops().containsKey(other)
                && (!begun || isMadeBehind())
                && !day.isAnswered(code, other.value());
    }

    private boolean follows(Load load, FindingCode code) {
        if (load.massKg().isEmpty() || code == FindingCode.MASS_MISSING) {
            return load.massKg().isEmpty() && code == FindingCode.MASS_MISSING;
        }
        if (OF_THE_DAY.contains(code)) {
            return true;
        }
        if (OF_THE_GEAR.contains(code)) {
            return rules.handling().rigging().findSet(load.kind()).isPresent()
                    || !rules.handling().rigging().belly().isEmpty()
                    || machine.lines().stream().anyMatch(line -> !line.make().gear().isEmpty());
        }
        return switch (code) {
            case SEARCH_CUT -> day.plan().summary().cutShort();
            case PLACE_UNUSED -> eitherEnd(load, place -> !place.agreed() || isShutNow(place.id()));
            case OUTSIDE_TERRAIN ->
                    eitherEnd(load, place -> !day.isKnown(day.planeOf(place.position())));
            case HOOK_LIMIT ->
                    Math.ceil(day.liftMassKg(load)) + lightestLineKg() > machine.hookLimitKg();
            case LINE_LIMIT -> machine.lines().stream().noneMatch(line -> holds(load, line));
            case GUY_GAP -> day.kindOf(load).standsUp() && GuyCheck.gapRad(end(load)) > LESS_RAD;
            case GUY_PULL -> isPulledHard(load);
            case FLIES_BADLY ->
                    trailSpeedMPerS(load) <= rules.flying().leastSpeedMPerS() * SPREAD_FACTOR;
            case EMPTY_LINE_LIGHT ->
                    machine.lines().stream()
                            .anyMatch(
                                    line ->
                                            line.lengthM() <= SHORT_M
                                                    && line.make().endMassKg() < SHORT_END_KG);
            case HOVER_IN_ZONE -> alwaysAt(load, (place, row) -> isInZone(load, place, row));
            case WIND_LIMIT -> alwaysAt(load, (place, row) -> isWindy(load, place, row));
            // In the other hours there may be too much wind, or no way: nobody looks for one here.
            case CHART_RANGE -> sometimesAt(load, (place, row) -> hoverKg(place, row).isEmpty());
            case FUEL_TOO_LOW_FOR_LOAD ->
                    machine.fuelUsableKg() < generousKg()
                            || sometimesAt(
                                    load,
                                    (place, row) -> mostFuelKg(load, place, row) < generousKg());
            case ORDER_RULE -> waits(load);
            // All other codes are never why a load stays behind.
            default -> false;
        };
    }

    private Place end(Load load) {
        return day.job().getPlace(load.to());
    }

    private boolean eitherEnd(Load load, Predicate<Place> what) {
        return what.test(day.job().getPlace(load.from())) || what.test(end(load));
    }

    /**
     * A place may be closed before the day or while it is flown: then no lift is begun to or from it any more. One
     * that is begun is flown to its end.
     */
    private boolean isShutNow(PlaceId id) {
        Set<LoadId> begun = day.begunBefore(day.plan().plannedAt());
        return !isMadeBehind()
                && day.drops().values().stream()
                        .filter(drop -> !begun.contains(drop.load()))
                        .noneMatch(
                                drop ->
                                        drop.place().equals(id)
                                                || day.job()
                                                        .getLoad(drop.load())
                                                        .from()
                                                        .equals(id));
    }

    /** Whether the plan is of a day that was over when it was made. */
    private boolean isMadeBehind() {
        List<Step> steps = day.plan().steps();
        return !steps.isEmpty()
                && day.plan().plannedAt().isAfter(steps.get(steps.size() - 1).endAt());
    }

    private double lightestLineKg() {
        return machine.lines().stream().mapToDouble(line -> line.massKg()).min().orElse(0);
    }

    /** Ballast may hang with it. */
    private boolean holds(Load load, LineItem line) {
        double mass = day.liftMassKg(load) + rules.masses().ballastKg();
        return mass <= line.limitKg() && mass + line.massKg() <= machine.hookLimitKg();
    }

    private boolean isPulledHard(Load load) {
        return day.kindOf(load).standsUp()
                && !end(load).guyAzimuthsTrueRad().isEmpty()
                && new GuyCheck(day).hardestN(load, end(load))
                        >= PULL_FACTOR * rules.handling().guying().anchorHoldN();
    }

    /** Speed at which it trails as far as allowed in the densest air of the day, ballast counted, m/s. */
    private double trailSpeedMPerS(Load load) {
        double lowest =
                day.job().places().stream()
                        .filter(place -> day.isKnown(day.planeOf(place.id())))
                        .mapToDouble(place -> day.groundAmslM(place.id()))
                        .min()
                        .orElse(0);
        double density = 0;
        for (WeatherHour row : day.job().weather().hours()) {
            density = Math.max(density, air.densityKgPerM3(row, lowest));
        }
        double mass = day.lightMassKg(load) + rules.masses().ballastKg();
        double push = density * LegCheck.dragAreaM2(day, load) / 2;
        return Math.sqrt(
                mass
                        * Units.STANDARD_GRAVITY_M_PER_S2
                        * Math.tan(day.kindOf(load).trailLimitRad())
                        / push);
    }

    /** At some time of a row: a zone that holds in none says nothing of it. */
    private boolean isInZone(Load load, Place place, WeatherHour row) {
        Instant until =
                day.job().weather().hours().stream()
                        .map(WeatherHour::from)
                        .filter(row.from()::isBefore)
                        .findFirst()
                        .orElse(day.job().weather().until());
        return day.job().zones().stream()
                .anyMatch(
                        zone ->
                                (zone.rule() == Zone.Rule.NO_HOVER_BELOW
                                                || zone.rule() == Zone.Rule.MIN_HEIGHT)
                                        && Ways.applies(day, zone, List.of(load))
                                        && Ways.isInForce(day, zone, row.from(), until)
                                        && day.shapeOf(zone).covers(day.planeOf(place.position())));
    }

    /** What may be so at a place by a row of the forecast. */
    private interface Then {
        boolean holds(Place place, WeatherHour row);
    }

    /** Whether something is so at one end or the other at any time, by the row or the one that follows. */
    private boolean alwaysAt(Load load, Then what) {
        List<WeatherHour> rows = day.job().weather().hours();
        boolean both = day.job().weather().between() == Weather.Between.STRICTER;
        for (int i = 0; i < rows.size(); i++) {
            WeatherHour row = rows.get(i);
            WeatherHour next = both && i + 1 < rows.size() ? rows.get(i + 1) : row;
            if (!eitherEnd(load, place -> what.holds(place, row) || what.holds(place, next))) {
                return false;
            }
        }
        return true;
    }

    private boolean sometimesAt(Load load, Then what) {
        return day.job().weather().hours().stream()
                .anyMatch(row -> eitherEnd(load, place -> what.holds(place, row)));
    }

    private boolean isWindy(Load load, Place place, WeatherHour row) {
        WindLimit limit = day.kindOf(load).windLimit();
        double mean = row.windMPerS() * place.exposureFactor();
        double gust = row.gustMPerS() * place.exposureFactor();
        return mean > limit.meanMPerS()
                || gust > limit.gustMPerS()
                || gust - mean > limit.spreadMPerS();
    }

    private OptionalDouble hoverKg(Place place, WeatherHour row) {
        double elevation = day.groundAmslM(place.id());
        return new Chart(machine.hover(), machine.maxExternalMassKg())
                .findMassKg(
                        Math.ceil(Air.pressureAltitudeM(row, elevation) - 1e-6),
                        air.temperatureK(row, elevation));
    }

    /** Most fuel with which it hovers at a place with the lightest line, kg. */
    private double mostFuelKg(Load load, Place place, WeatherHour row) {
        double mass = day.liftMassKg(load);
        double needs =
                day.kindOf(load).constructionMargin()
                        ? mass / (1 - rules.masses().constructionFraction())
                        : mass;
        return hoverKg(place, row).orElse(0)
                - machine.emptyMassKg()
                - machine.crewMassKg()
                - lightestLineKg()
                - needs;
    }

    private double generousKg() {
        return machine.burnKgPerS()
                        * (machine.reserveS() + rules.refuelling().contingencyS() + LONG_S)
                + machine.startFuelKg()
                + machine.fuelGaugeSpreadKg();
    }

    /**
     * Whether something that must come before it is left out too or waits for it, or the last thing there was out of
     * its place before the day was ordered anew.
     */
    private boolean waits(Load load) {
        return load.after().stream().anyMatch(one -> !day.drops().containsKey(one.load()))
                || day.job().loads().stream()
                        .anyMatch(one -> leaves(one, load.to()) && day.isDone(one.id()))
                || waitsForItself(load)
                || (day.kindOf(load).lastAtPlace()
                        && day.job().loads().stream()
                                .anyMatch(
                                        one ->
                                                one.to().equals(load.from())
                                                        && !day.drops().containsKey(one.id())));
    }

    private boolean leaves(Load last, PlaceId place) {
        return last.from().equals(place) && day.kindOf(last).lastAtPlace();
    }

    /** Whether the job lets a load come only behind itself. */
    private boolean waitsForItself(Load load) {
        Set<Load> seen = new HashSet<>();
        Deque<Load> open = new ArrayDeque<>(List.of(load));
        while (!open.isEmpty()) {
            Load one = open.remove();
            for (Load other : day.job().loads()) {
                if (!other.equals(one) && comesBefore(other, one)) {
                    if (other.equals(load)) {
                        return true;
                    }
                    if (seen.add(other)) {
                        open.add(other);
                    }
                }
            }
        }
        return false;
    }

    private boolean comesBefore(Load other, Load load) {
        boolean poles = day.kindOf(other).standsUp() && day.kindOf(load).readyAfterS() > 0;
        return load.after().stream().anyMatch(one -> one.load().equals(other.id()))
                || leaves(load, other.to())
                || (day.kindOf(load).standsUp()
                        && day.kindOf(other).readyAfterS() > 0
                        && other.to().equals(load.to())
                        && !poles);
    }
}
