package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.site.Craft;
import underhook.core.site.Needs;
import underhook.core.site.Room;
import underhook.core.site.Surroundings;
import underhook.core.site.Wall;
import underhook.core.site.Walls;
import underhook.planner.route.LegFinder;
import underhook.planner.route.Memo;

/**
 * What one lift needs at each hour: air, wind, room for the line, legs and the most fuel.
 *
 * <p>Times are whole seconds after the base instant, places and lines indices. Not safe for threads:
 * what was once computed is kept.
 */
final class DayModel {
    /** Legs over ground that is known end here; nothing may be planned beyond. */
    static final long NEVER_S = Long.MAX_VALUE / 4;

    final Job job;
    final Ground ground;
    final Rules rules;
    final Machine machine;
    final Instant base;
    final List<Place> places;
    final List<PlanePoint> points;
    final double[] elevationAmslM;
    private final DayAir air;
    private final WaysIn ways;
    private final DayLegs legs;
    private final ZoneHours zoneHours;
    private final BalancedFuel balancedFuel;
    private final Carriage carriage;
    private final Gear gear;
    private final ZonesAtPlaces zonesAtPlaces;
    private final Map<PlaceId, Integer> placeIndex = new HashMap<>();
    private final SkyView sky;
    private final PlaceRooms placeRooms;
    private final Poles poles;
    private final List<Wall> walls;
    private final Memo<Integer, Room> rooms;

    DayModel(Job job, Ground ground) {
        this(job, ground, () -> false);
    }

    /**
     * @param stop says true when no more ways may be looked for
     */
    DayModel(Job job, Ground ground, BooleanSupplier stop) {
        this.job = job;
        this.ground = ground;
        this.rules = job.rules();
        this.machine = job.machine();
        this.base = job.date().atStartOfDay(job.zone()).toInstant();
        this.zonesAtPlaces = new ZonesAtPlaces(job, ground);
        this.places = job.places().stream().map(zonesAtPlaces::asUsable).toList();
        this.points =
                places.stream().map(place -> ground.frame().toPlane(place.position())).toList();
        this.elevationAmslM = new double[places.size()];
        for (int i = 0; i < places.size(); i++) {
            placeIndex.put(places.get(i).id(), i);
            PlanePoint point = points.get(i);
            elevationAmslM[i] =
                    ground.terrain().covers(point.eastM(), point.northM())
                            ? ground.terrain().heightM(point.eastM(), point.northM())
                            : Double.NEGATIVE_INFINITY;
        }
        this.rooms = Memo.of();
        this.zoneHours = new ZoneHours(job, ground);
        this.air = new DayAir(this);
        this.placeRooms = new PlaceRooms(this);
        this.sky = new SkyView(this);
        this.walls =
                Stream.concat(Walls.things(job, ground).stream(), finder().wireWalls().stream())
                        .toList();
        this.ways = new WaysIn(this);
        this.balancedFuel = new BalancedFuel(machine);
        this.carriage = new Carriage(this);
        this.gear = new Gear(this);
        this.poles = new Poles(this);
        this.legs = new DayLegs(this, stop);
    }

    /**
     * The same day with other hours of weather, or with loads of other masses: all that hangs on neither is kept,
     * and what hangs on a mass or an hour for the trips and hours that are as they were.
     *
     * @param before of a job that {@link #isButForMasses} or {@link #isButForHours} like this one
     */
    DayModel(Job job, DayModel before) {
        boolean sameHours = job.weather().equals(before.job.weather());
        this.job = job;
        this.ground = before.ground;
        this.rules = before.rules;
        this.machine = before.machine;
        this.base = before.base;
        this.zonesAtPlaces = before.zonesAtPlaces;
        this.places = before.places;
        this.points = before.points;
        this.elevationAmslM = before.elevationAmslM;
        this.placeIndex.putAll(before.placeIndex);
        this.rooms = before.rooms;
        this.zoneHours = before.zoneHours;
        this.air = sameHours ? before.air : new DayAir(this);
        this.sky = sameHours ? before.sky : new SkyView(this, before.sky);
        this.walls = before.walls;
        this.ways = new WaysIn(this, before.ways);
        this.poles = before.poles.in(this);
        this.balancedFuel = before.balancedFuel;
        this.carriage = before.carriage;
        this.gear = new Gear(this);
        this.legs = new DayLegs(this, before.legs);
        this.placeRooms = legs.isInAirOf(before.legs) ? before.placeRooms : new PlaceRooms(this);
    }

    /** Takes over what stands round the places, from a day that {@link #hasPlacesOf} this one. */
    DayModel withRoomsOf(DayModel before) {
        rooms.learn(before.rooms);
        ways.keepRoomsOf(before.ways);
        return this;
    }

    /**
     * Whether another job is this one with other hours of weather and other masses, and no way, speed or wire knows
     * them apart: the strongest wind and gust of the day and its densest air are the same.
     */
    boolean isButForHours(Job other) {
        return hasPlacesOf(other)
                && Double.compare(DayAir.mostWindMPerS(job), DayAir.mostWindMPerS(other)) == 0
                && Double.compare(
                                DayAir.densestKgPerM3(this, job.weather()),
                                DayAir.densestKgPerM3(this, other.weather()))
                        == 0;
    }

    /** Whether another job is this one with other weather, in which wires swing as far, and other masses. */
    boolean hasPlacesOf(Job other) {
        return job.withLoads(other.loads()).withWeather(other.weather()).equals(other)
                && alike(job.loads()).equals(alike(other.loads()))
                && Double.compare(DayAir.mostGustMPerS(job), DayAir.mostGustMPerS(other)) == 0;
    }

    /** Whether another job is this one with loads of other masses, or others of them left for another day. */
    boolean isButForMasses(Job other) {
        return job.withLoads(other.loads()).equals(other)
                && alike(job.loads()).equals(alike(other.loads()));
    }

    /** All as if they weighed the same and none were flown. */
    private static List<Load> alike(List<Load> loads) {
        return loads.stream().map(load -> load.weighing(1).onAnotherDay()).toList();
    }

    /** The air at its places, hour by hour. */
    DayAir air() {
        return air;
    }

    /** The ways in to its places. */
    WaysIn ways() {
        return ways;
    }

    /** Its legs. */
    DayLegs legs() {
        return legs;
    }

    /** Its legs while every rule of a zone holds that holds at some hour of the day. */
    LegFinder finder() {
        return zoneHours.wholeDay().finder;
    }

    ZoneHours zoneHours() {
        return zoneHours;
    }

    /** What trips hang in. */
    Gear gear() {
        return gear;
    }

    /** How poles are held up. */
    Poles poles() {
        return poles;
    }

    /** Mass as planned for lift, kg: an estimate with its factor, rounded up. */
    double liftMassKg(Load load) {
        return liftMassKg(job, load);
    }

    static double liftMassKg(Job job, Load load) {
        double statedKg = load.massKg().orElse(0) * job.getKind(load.kind()).heavierFactor();
        return Math.ceil(
                load.massStatus() == MassStatus.ESTIMATED
                        ? statedKg * job.rules().masses().estimatedMassFactor() - 1e-9
                        : statedKg - 1e-9);
    }

    /** How trips and empty lines are flown. */
    BalancedFuel balancedFuel() {
        return balancedFuel;
    }

    Carriage carriage() {
        return carriage;
    }

    int place(PlaceId id) {
        Integer index = placeIndex.get(id);
        if (index == null) {
            throw new IllegalArgumentException("no place " + id + " in the job.");
        }
        return index;
    }

    long seconds(Instant instant) {
        return Duration.between(base, instant).toSeconds();
    }

    Instant instant(long seconds) {
        return base.plusSeconds(seconds);
    }

    boolean isKnown(int place) {
        return elevationAmslM[place] > Double.NEGATIVE_INFINITY;
    }

    double operatingMassKg() {
        return machine.emptyMassKg() + machine.crewMassKg();
    }

    /**
     * Least hover mass of a trip, kg: where it is hooked up, and over the set-down in any hour from then to
     * the last release, for it may come in the one and be let go in the other.
     */
    double hoverMassKg(Trip trip, int slotFrom, int slotTo) {
        return Math.min(
                air.hoverMassKg(trip.from(), slotFrom), setDownMassKg(trip, slotFrom, slotTo));
    }

    /** Least hover mass over a set-down, kg. */
    double setDownMassKg(Trip trip, int slotFrom, int slotTo) {
        double leastKg = Double.POSITIVE_INFINITY;
        for (int slot = slotFrom; slot <= slotTo; slot++) {
            leastKg = Math.min(leastKg, air.hoverMassKg(trip.to(), slot));
        }
        return leastKg;
    }

    /**
     * Most fuel with which a trip is within limits, whole kg down, or what the tank holds; below 0 where it may not be
     * flown with any.
     */
    double fuelMaxKg(Trip trip, int line, int slotFrom, int slotTo) {
        double balancedKg =
                balancedFuel.withLoadKg(trip.liftMassKg() + machine.lines().get(line).massKg());
        return Math.min(hoverFuelMaxKg(trip, line, slotFrom, slotTo), balancedKg);
    }

    /** The same by its hovers alone, whatever its balance. */
    double hoverFuelMaxKg(Trip trip, int line, int slotFrom, int slotTo) {
        double hoverKg = hoverMassKg(trip, slotFrom, slotTo);
        double lineKg = machine.lines().get(line).massKg();
        return Math.min(
                Math.floor(hoverKg - operatingMassKg() - lineKg - trip.needMassKg()),
                machine.fuelUsableKg());
    }

    /** Room at a place; gathered when first asked for. */
    Room room(int place) {
        return rooms.get(place, this::gatherRoom);
    }

    private Room gatherRoom(int place) {
        Craft craft = Craft.of(machine);
        Needs needs = Needs.of(rules);
        return Room.of(
                Surroundings.of(ground, places.get(place), Room.view(craft, needs), walls),
                craft,
                needs);
    }

    /** Line length that rotor and tail need at a place on a heading, m. */
    double lineNeedM(int place, double headingGridRad) {
        return room(place).lineNeedM(headingGridRad);
    }

    /** Length that counts at the place of set-down: a standing load lifts the machine by its length. */
    double lengthAtDropM(Trip trip, int line) {
        double lineM = machine.lines().get(line).lengthM();
        return trip.standsUp() ? lineM + trip.underM() : lineM;
    }

    ZonesAtPlaces zonesAtPlaces() {
        return zonesAtPlaces;
    }

    /** Room at its places, by line. */
    PlaceRooms placeRooms() {
        return placeRooms;
    }

    SkyView sky() {
        return sky;
    }

    /** Lines in stock, shortest first, as indices. */
    List<Integer> linesByLength() {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < machine.lines().size(); i++) {
            order.add(i);
        }
        order.sort(
                (one, other) -> {
                    LineItem a = machine.lines().get(one);
                    LineItem b = machine.lines().get(other);
                    int byLength = Double.compare(a.lengthM(), b.lengthM());
                    return byLength != 0 ? byLength : Integer.compare(one, other);
                });
        return order;
    }
}
