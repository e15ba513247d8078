package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import underhook.core.air.Atmosphere;
import underhook.core.aircraft.HoverChart;
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
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.job.Zone;
import underhook.core.plan.Leg;
import underhook.core.site.Craft;
import underhook.core.site.Needs;
import underhook.core.site.Rig;
import underhook.core.site.Room;
import underhook.core.site.Surroundings;
import underhook.core.site.Wall;
import underhook.core.site.Walls;
import underhook.planner.route.Cargo;
import underhook.planner.route.ClearLegs;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.LegFinder;
import underhook.planner.route.LegWind;
import underhook.planner.route.PlaceHour;
import underhook.planner.route.PlaceWind;
import underhook.planner.route.RankedWays;
import underhook.planner.route.RoomView;
import underhook.planner.route.WayIn;
import underhook.planner.route.WayMap;

/**
 * What one lift needs at each hour: air, wind, room for the line, legs and the most fuel.
 *
 * <p>Times are whole seconds after the base instant, places and lines indices. Not safe for threads:
 * what was once computed is kept.
 */
final class DayModel {
    /** What hangs under a machine without a line when it moves people, for clearance, m. */
    private static final double CABIN_UNDER_M = 25;

    /** A leg against a wind that leaves less than this over the ground is not flown. */
    private static final double LEAST_GROUND_SPEED_M_PER_S = 1;

    /** Legs over ground that is known end here; nothing may be planned beyond. */
    static final long NEVER_S = Long.MAX_VALUE / 4;

    /**
     * A weather row as used: for each quantity the worse of what may hold.
     *
     * @param fromS start, s
     * @param untilS end, s
     * @param otherFromTrueRad the less windy of two rows that may hold; the same where only one may
     */
    record Slot(
            long fromS,
            long untilS,
            double qnhPa,
            double temperatureK,
            double windFromTrueRad,
            double windMPerS,
            double otherFromTrueRad,
            double otherMPerS,
            double gustMPerS,
            double spreadMPerS) {
        /** Whether but the times are the same. */
        boolean hasAirOf(Slot other) {
            return equals(
                    new Slot(
                            fromS,
                            untilS,
                            other.qnhPa,
                            other.temperatureK,
                            other.windFromTrueRad,
                            other.windMPerS,
                            other.otherFromTrueRad,
                            other.otherMPerS,
                            other.gustMPerS,
                            other.spreadMPerS));
        }
    }

    /**
     * A leg at an hour.
     *
     * @param leg path and heights
     * @param durationS whole seconds, headwind counted, tailwind not
     * @param wayIn at the place it goes to
     * @param wayOut at the place it comes from
     * @param request what was asked for
     * @param wind as it counts
     * @param arrivalS of the duration, what coming to rest takes beyond flying on
     */
    record LegAt(
            FlownLeg leg,
            long durationS,
            WayIn wayIn,
            WayIn wayOut,
            LegFinder.Request request,
            WayMap.Wind wind,
            long arrivalS) {
        /** The same with other words about its ends. */
        LegAt with(WayIn outWords, WayIn inWords) {
            return new LegAt(leg, durationS, inWords, outWords, request, wind, arrivalS);
        }
    }

    final Job job;
    final Ground ground;
    final Rules rules;
    final Machine machine;
    final Instant base;
    final List<Place> places;
    final List<PlanePoint> points;
    final double[] elevationAmslM;
    final List<Slot> slots;
    private final LegFinder finder;
    private final ClearLegs clearLegs;

    /** What a plan says of legs, by the leg itself: the next plan of the day mostly flies the same. */
    private final IdentityHashMap<LegAt, Optional<ClearLegs.Seen>> looks;

    private final IdentityHashMap<LegAt, Double> boundsS;
    private final IdentityHashMap<LegAt, Leg.Exposure> exposures;
    private final IdentityHashMap<LegAt, Leg> told;

    /** What was found by other jobs that are this one but for hours and masses. */
    private final LegMemory memory;

    /** For each hour the number of its air there. */
    private final int[] airs;

    private final Cargos cargos;
    private final Carriage carriage;
    private final Gear gear;
    private final ZonesAtPlaces zonesAtPlaces;
    private final Refusals refusals;
    private final Ceiling ceiling;
    private final Set<Trip> unlooked = Collections.newSetFromMap(new IdentityHashMap<>());
    private final HoverChart chart;
    private final double[] hoverMassKg;
    private final Map<PlaceId, Integer> placeIndex = new HashMap<>();
    private final IdentityHashMap<Trip, KnownLegs> loadedLegs = new IdentityHashMap<>();
    private final KnownLegs emptyLegs;
    private final List<Map<String, Optional<RankedWays>>> waysIn = new ArrayList<>();
    private final Map<String, RoomView> roomViews;
    private final SkyView sky;
    private final PlaceRooms placeRooms;
    private final Poles poles;
    private final List<Wall> walls;
    private final List<@Nullable Room> rooms;

    DayModel(Job job, Ground ground) {
        this(job, ground, () -> false);
    }

    /**
     * @param stop says true when no more ways may be looked for
     */
    DayModel(Job job, Ground ground, BooleanSupplier stop) {
        this.job = job;
        this.ceiling = new Ceiling(stop);
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
        this.refusals = new Refusals();
        this.looks = new IdentityHashMap<>();
        this.boundsS = new IdentityHashMap<>();
        this.exposures = new IdentityHashMap<>();
        this.told = new IdentityHashMap<>();
        this.memory = new LegMemory();
        this.roomViews = new HashMap<>();
        this.placeRooms = new PlaceRooms(this);
        this.rooms = new ArrayList<>(Collections.nCopies(places.size(), null));
        this.slots = slots(job.weather());
        this.airs = airs();
        slots.forEach(unused -> waysIn.add(new HashMap<>()));
        this.sky = new SkyView(this);
        this.finder = new LegFinder(job, ground);
        this.walls =
                Stream.concat(Walls.things(job, ground).stream(), finder.wireWalls().stream())
                        .toList();
        this.clearLegs = new ClearLegs(job, ground, finder, ceiling::isReached);
        this.cargos = new Cargos(this);
        this.carriage = new Carriage(this);
        this.gear = new Gear(this);
        this.poles = new Poles(this);
        this.emptyLegs = noEmptyLegs();
        this.hoverMassKg = noHoverMassKg();
        this.chart = HoverChart.of(machine.hover(), machine.maxExternalMassKg());
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
        this.ceiling = before.ceiling;
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
        this.memory = before.memory;
        this.slots = sameHours ? before.slots : slots(job.weather());
        this.airs = airs();
        this.sky = sameHours ? before.sky : new SkyView(this, before.sky);
        this.finder = before.finder;
        this.walls = before.walls;
        this.clearLegs = before.clearLegs;
        this.refusals = before.refusals;
        this.placeRooms =
                Arrays.equals(airs, before.airs) ? before.placeRooms : new PlaceRooms(this);
        this.poles = before.poles.in(this);
        this.cargos = before.cargos;
        this.carriage = before.carriage;
        this.gear = new Gear(this);
        this.emptyLegs = sameHours ? before.emptyLegs : noEmptyLegs();
        this.hoverMassKg = sameHours ? before.hoverMassKg : noHoverMassKg();
        this.chart = before.chart;
        for (Trip trip : before.loadedLegs.keySet()) {
            KnownLegs legs = before.loadedLegs.get(trip);
            this.loadedLegs.put(trip, sameHours && legs != null ? legs : noLoadedLegs());
        }
        for (Slot slot : slots) {
            int same = before.slots.indexOf(slot);
            this.waysIn.add(same < 0 ? new HashMap<>() : before.waysIn.get(same));
        }
        this.roomViews = before.roomViews;
        this.looks = before.looks;
        this.boundsS = before.boundsS;
        this.exposures = before.exposures;
        this.told = before.told;
    }

    private int[] airs() {
        return slots.stream().mapToInt(memory::air).toArray();
    }

    private KnownLegs noEmptyLegs() {
        int ways = places.size() * places.size() * (machine.lines().size() + 1);
        return new KnownLegs(ways * slots.size());
    }

    private KnownLegs noLoadedLegs() {
        return new KnownLegs(machine.lines().size() * slots.size() * slots.size());
    }

    private double[] noHoverMassKg() {
        double[] none = new double[places.size() * slots.size()];
        Arrays.fill(none, -1);
        return none;
    }

    /** Takes over what stands round the places, from a day that {@link #hasPlacesOf} this one. */
    DayModel withRoomsOf(DayModel before) {
        for (int i = 0; i < rooms.size(); i++) {
            rooms.set(i, before.rooms.get(i));
        }
        roomViews.putAll(before.roomViews);
        return this;
    }

    /**
     * Whether another job is this one with other hours of weather and other masses, and no way, speed or wire knows
     * them apart: the strongest wind and gust of the day and its densest air are the same.
     */
    boolean isButForHours(Job other) {
        return hasPlacesOf(other)
                && Double.compare(mostMPerS(job), mostMPerS(other)) == 0
                && Double.compare(
                                TripMaker.densestKgPerM3(this, job.weather()),
                                TripMaker.densestKgPerM3(this, other.weather()))
                        == 0;
    }

    /** Whether another job is this one with other weather, in which wires swing as far, and other masses. */
    boolean hasPlacesOf(Job other) {
        return job.withLoads(other.loads()).withWeather(other.weather()).equals(other)
                && alike(job.loads()).equals(alike(other.loads()))
                && Double.compare(gustMPerS(job), gustMPerS(other)) == 0;
    }

    private static double gustMPerS(Job of) {
        return of.weather().hours().stream().mapToDouble(WeatherHour::gustMPerS).max().orElse(0);
    }

    private static double mostMPerS(Job of) {
        return of.weather().hours().stream().mapToDouble(WeatherHour::windMPerS).max().orElse(0);
    }

    /** Whether another job is this one with loads of other masses. */
    boolean isButForMasses(Job other) {
        return job.withLoads(other.loads()).equals(other)
                && alike(job.loads()).equals(alike(other.loads()));
    }

    /** All as if they weighed the same. */
    private static List<Load> alike(List<Load> loads) {
        return loads.stream().map(load -> load.weighing(1)).toList();
    }

    /** The trip that was known before where it is the same. */
    Trip known(Trip made) {
        for (Trip one : loadedLegs.keySet()) {
            if (one.equals(made)) {
                return one;
            }
        }
        return made;
    }

    LegFinder finder() {
        return finder;
    }

    /** What trips hang in. */
    Gear gear() {
        return gear;
    }

    /** How poles are held up. */
    Poles poles() {
        return poles;
    }

    /** A leg as a plan says it. */
    Leg told(LegAt at, Supplier<Leg> written) {
        Leg known = told.get(at);
        if (known == null) {
            known = written.get();
            told.put(at, known);
        }
        return known;
    }

    /** Mass as planned for lift, kg: an estimate with its factor, rounded up. */
    double liftMassKg(Load load) {
        double statedKg = load.massKg().orElse(0) * job.getKind(load.kind()).heavierFactor();
        return Math.ceil(
                load.massStatus() == MassStatus.ESTIMATED
                        ? statedKg * rules.masses().estimatedMassFactor() - 1e-9
                        : statedKg - 1e-9);
    }

    /** How trips and empty lines are flown. */
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

    private List<Slot> slots(Weather weather) {
        List<Slot> all = new ArrayList<>();
        List<WeatherHour> hours = weather.hours();
        for (int i = 0; i < hours.size(); i++) {
            WeatherHour now = hours.get(i);
            boolean last = i + 1 == hours.size();
            WeatherHour next =
                    weather.between() == Weather.Between.HOLD || last ? now : hours.get(i + 1);
            // Direction and speed stay together: a head wind of two rows mixed is nobody's
            // forecast.
            WeatherHour windier = next.windMPerS() > now.windMPerS() ? next : now;
            WeatherHour calmer = next.windMPerS() > now.windMPerS() ? now : next;
            long untilS = seconds(last ? weather.until() : hours.get(i + 1).from());
            all.add(
                    new Slot(
                            seconds(now.from()),
                            untilS,
                            Math.min(now.qnhPa(), next.qnhPa()),
                            Math.max(now.temperatureK(), next.temperatureK()),
                            windier.windFromTrueRad(),
                            windier.windMPerS(),
                            calmer.windFromTrueRad(),
                            calmer.windMPerS(),
                            Math.max(now.gustMPerS(), next.gustMPerS()),
                            Math.max(
                                    now.gustMPerS() - now.windMPerS(),
                                    next.gustMPerS() - next.windMPerS())));
        }
        return all;
    }

    /** Index of the slot at a time; -1 when no weather is known then. */
    int slot(long timeS) {
        for (int i = 0; i < slots.size(); i++) {
            if (timeS >= slots.get(i).fromS() && timeS < slots.get(i).untilS()) {
                return i;
            }
        }
        return -1;
    }

    /** Whether wind, gust and spread at a place keep a limit. */
    boolean isWindWithin(WindLimit limit, int place, int slot) {
        Slot air = slots.get(slot);
        double exposure = places.get(place).exposureFactor();
        double tiny = 1e-9;
        return air.windMPerS() * exposure <= limit.meanMPerS() + tiny
                && air.gustMPerS() * exposure <= limit.gustMPerS() + tiny
                && air.spreadMPerS() * exposure <= limit.spreadMPerS() + tiny;
    }

    double pressureAltitudeM(int place, int slot) {
        // Rounded up to whole metres: less lift, never more.
        return Math.ceil(
                Atmosphere.pressureAltitudeM(slots.get(slot).qnhPa(), elevationAmslM[place]));
    }

    double temperatureK(int place, int slot) {
        Weather weather = job.weather();
        return slots.get(slot).temperatureK()
                - weather.lapseKPerM()
                        * (elevationAmslM[place] - weather.referenceElevationAmslM());
    }

    boolean isInChart(int place, int slot) {
        return chart.covers(pressureAltitudeM(place, slot), temperatureK(place, slot));
    }

    /** Hover mass out of ground effect, kg, whole and rounded down; 0 outside the chart. */
    double hoverMassKg(int place, int slot) {
        int at = place * slots.size() + slot;
        if (hoverMassKg[at] < 0) {
            hoverMassKg[at] =
                    isInChart(place, slot)
                            ? chart.tableMassKg(
                                    pressureAltitudeM(place, slot), temperatureK(place, slot))
                            : 0;
        }
        return hoverMassKg[at];
    }

    double operatingMassKg() {
        return machine.emptyMassKg() + machine.crewMassKg();
    }

    /** Most fuel with which the hovers of a trip are within limits, kg, rounded down. */
    double fuelMaxKg(Trip trip, int line, int slotFrom, int slotTo) {
        double hoverKg =
                Math.min(hoverMassKg(trip.from(), slotFrom), hoverMassKg(trip.to(), slotTo));
        double lineKg = machine.lines().get(line).massKg();
        return Math.floor(
                Math.min(
                        hoverKg - operatingMassKg() - lineKg - trip.needMassKg(),
                        machine.fuelUsableKg()));
    }

    /** Wind at a place as the legs see it: from grid north. */
    PlaceWind wind(int place, int slot) {
        double fromGridRad = slots.get(slot).windFromTrueRad() - convergenceRad(place);
        return new PlaceWind(
                fromGridRad, slots.get(slot).windMPerS() * places.get(place).exposureFactor());
    }

    /** Every wind that may hold then, the one that is flown by first. */
    List<PlaceWind> winds(int place, int slot) {
        Slot air = slots.get(slot);
        PlaceWind other =
                new PlaceWind(
                        air.otherFromTrueRad() - convergenceRad(place),
                        air.otherMPerS() * places.get(place).exposureFactor());
        PlaceWind flownBy = wind(place, slot);
        return other.equals(flownBy) ? List.of(flownBy) : List.of(flownBy, other);
    }

    /** Room at a place; gathered when first asked for. */
    Room room(int place) {
        Room known = rooms.get(place);
        if (known == null) {
            Craft craft = Craft.of(machine);
            Needs needs = Needs.of(rules);
            known =
                    Room.of(
                            Surroundings.of(
                                    ground, places.get(place), Room.view(craft, needs), walls),
                            craft,
                            needs);
            rooms.set(place, known);
        }
        return known;
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

    /** The way in to a place with what hangs there; empty when there is none. */
    Optional<WayIn> wayIn(int place, int slot, List<String> kinds, Rig rig) {
        return findTooLow(place, kinds, rig).isPresent()
                ? Optional.empty()
                : findWayIn(place, slot, kinds, rig);
    }

    /** The zone in which the hover over a place would be lower than is allowed. */
    Optional<Zone> findTooLow(int place, List<String> kinds, Rig rig) {
        return zonesAtPlaces.findTooLow(places.get(place), kinds, rig.hookAglM());
    }

    ZonesAtPlaces zonesAtPlaces() {
        return zonesAtPlaces;
    }

    private Optional<WayIn> findWayIn(int place, int slot, List<String> kinds, @Nullable Rig rig) {
        return rankWays(new Hung(place, slot, kinds, rig), Map.of()).map(RankedWays::best);
    }

    /** What hangs over a place in an hour; no rig where room is not asked for. */
    private record Hung(int place, int slot, List<String> kinds, @Nullable Rig rig) {}

    /** Those with nothing shut are kept: they are asked for again and again. */
    private Optional<RankedWays> rankWays(Hung at, Map<Long, List<String>> shut) {
        if (!shut.isEmpty()) {
            return finder.approaches().rankWays(placeHour(at), shut);
        }
        String key = at.place() + ":" + String.join("|", at.kinds()) + ":" + at.rig();
        return waysIn.get(at.slot())
                .computeIfAbsent(key, unused -> finder.approaches().rankWays(placeHour(at), shut));
    }

    private PlaceHour placeHour(Hung at) {
        Rig rig = at.rig();
        return new PlaceHour(
                points.get(at.place()),
                winds(at.place(), at.slot()),
                at.kinds(),
                convergenceRad(at.place()),
                sky.suns(at.place(), at.slot()),
                rig == null ? RoomView.NOT_ASKED : roomView(at.place(), rig));
    }

    private RoomView roomView(int place, Rig rig) {
        return roomViews.computeIfAbsent(
                place + ":" + rig, unused -> new KnownRoom(room(place), rig));
    }

    /** What is added to a grid bearing at a place to make it TRUE, rad. */
    double convergenceRad(int place) {
        return ground.frame().convergenceRad(points.get(place));
    }

    /** Room at its places, by line. */
    PlaceRooms placeRooms() {
        return placeRooms;
    }

    SkyView sky() {
        return sky;
    }

    /** A loaded leg; empty when there is no way, and when the ceiling came before one was found. */
    Optional<LegAt> loadedLeg(Trip trip, int line, int slotFrom, int slotTo) {
        int count = slots.size();
        KnownLegs known = loadedLegs.computeIfAbsent(trip, unused -> noLoadedLegs());
        int at = (line * count + slotFrom) * count + slotTo;
        Optional<LegAt> found = known.legs.get(at);
        if (found == null && !isHung(trip, line)) {
            found = Optional.empty();
            known.legs.set(at, found);
        }
        if (found == null) {
            int cuts = ceiling.cuts();
            found = computeLeg(trip, line, loadedWay(trip, line, slotFrom, slotTo));
            if (ceiling.cuts() > cuts) {
                unlooked.add(trip);
                return found;
            }
            known.legs.set(at, found);
        }
        return found;
    }

    /** Whether a trip is worth flying on a line, and its gear holds. */
    private boolean isHung(Trip trip, int line) {
        return carriage.isWorthFlying(trip, line) && gear.holds(trip, line);
    }

    private Way loadedWay(Trip trip, int line, int slotFrom, int slotTo) {
        double lineM = machine.lines().get(line).lengthM();
        Carriage.Carried carried = carriage.of(trip, line);
        return new Way(
                trip.from(),
                trip.to(),
                slotFrom,
                slotTo,
                lineM,
                trip.rig(lineM),
                trip.underM(),
                trip.kindNames(),
                carried.speedMPerS(),
                cargos.of(trip, line),
                carried.arrivalS());
    }

    /** A leg with the empty line; with the line off the machine flies as with people. */
    Optional<LegAt> emptyLeg(int from, int to, int line, int slot) {
        int at =
                ((from * places.size() + to) * (machine.lines().size() + 1) + line + 1)
                                * slots.size()
                        + slot;
        Optional<LegAt> found = emptyLegs.legs.get(at);
        if (found == null) {
            int cuts = ceiling.cuts();
            found = computeLeg(null, line, emptyWay(from, to, line, slot));
            if (ceiling.cuts() > cuts) {
                return found;
            }
            emptyLegs.legs.set(at, found);
        }
        return found;
    }

    private Way emptyWay(int from, int to, int line, int slot) {
        double lineM = line < 0 ? 0 : machine.lines().get(line).lengthM();
        double speedMPerS =
                line < 0 ? machine.cabinSpeedMPerS() : carriage.ofEmpty(line).speedMPerS();
        return new Way(
                from,
                to,
                slot,
                slot,
                lineM,
                lineM > 0 ? Rig.empty(lineM) : null,
                0,
                List.of(),
                speedMPerS,
                line < 0 ? List.of() : cargos.ofEmpty(line),
                line < 0 ? 0 : carriage.ofEmpty(line).arrivalS());
    }

    private long boundS(Way way) {
        WayIn anyhow = new WayIn(0, 0, 0, 0, 0, List.of(), List.of(), List.of());
        return isKnown(way.from()) && isKnown(way.to())
                ? (long)
                                Math.ceil(
                                        finder.least()
                                                .leastS(request(way, anyhow, anyhow), legWind(way)))
                        + way.arrivalS()
                : 0;
    }

    /** Whether the ceiling came before all ways that were asked for were looked at. */
    boolean isCut() {
        return ceiling.cuts() > 0;
    }

    /** Whether it came before all ways of a trip were. */
    boolean isCut(Trip trip) {
        return unlooked.contains(trip);
    }

    /** Legs once found, by a number made of places, line and hours; null where not yet asked. */
    private static final class KnownLegs {
        final List<@Nullable Optional<LegAt>> legs;

        KnownLegs(int count) {
            legs = new ArrayList<>(Collections.nCopies(count, null));
        }
    }

    private record Way(
            int from,
            int to,
            int slotFrom,
            int slotTo,
            double lineM,
            @Nullable Rig rig,
            double underM,
            List<String> kinds,
            double speedMPerS,
            List<Cargo> cargos,
            long arrivalS) {}

    private Optional<LegAt> computeLeg(@Nullable Trip trip, int line, Way way) {
        if (!isKnown(way.from()) || !isKnown(way.to()) || isTooLow(way)) {
            return Optional.empty();
        }
        LegEnds.Asked asked = asked(way);
        LegMemory.Ends ends = new LegMemory.Ends(asked.out(Map.of()), asked.in(Map.of()));
        String key =
                way.from()
                        + ":"
                        + way.to()
                        + ":"
                        + line
                        + ":"
                        + airs[way.slotFrom()]
                        + ":"
                        + airs[way.slotTo()];
        LegMemory.Known known = memory.find(trip, key, ends);
        if (known != null) {
            return known.leg();
        }
        int cuts = ceiling.cuts();
        Optional<LegAt> found = new LegEnds(asked).find();
        if (ceiling.cuts() == cuts) {
            memory.keep(trip, key, ends, found);
        }
        return found;
    }

    /** A leg as its ends are chosen for it. */
    private LegEnds.Asked asked(Way way) {
        Rig rig = way.rig();
        Rig rigAtStart = rig == null ? null : rig.withoutCredit();
        return new LegEnds.Asked() {
            @Override
            public Optional<RankedWays> out(Map<Long, List<String>> shut) {
                return rankWays(
                        new Hung(way.from(), way.slotFrom(), way.kinds(), rigAtStart), shut);
            }

            @Override
            public Optional<RankedWays> in(Map<Long, List<String>> shut) {
                return rankWays(new Hung(way.to(), way.slotTo(), way.kinds(), rig), shut);
            }

            @Override
            public ClearLegs.Found leg(WayIn out, WayIn in) {
                LegFinder.Request request = request(way, out, in);
                return way.lineM() <= 0 ? unslung(request) : clearLegs.find(request, carried(way));
            }

            @Override
            public Optional<LegAt> timed(FlownLeg leg, WayIn out, WayIn in) {
                return DayModel.this.timed(way, leg, request(way, out, in), new Ends(out, in));
            }

            @Override
            public boolean isOver() {
                return ceiling.isReached();
            }

            @Override
            public boolean isSlung() {
                return way.lineM() > 0;
            }

            @Override
            public void refused(ClearLegs.Found found) {
                refusals.add(way.from(), way.to(), found);
            }

            @Override
            public double priceS(LegAt leg) {
                return way.kinds().isEmpty() ? 0 : finder.prices().priceS(leg.leg(), way.kinds());
            }

            @Override
            public double priceAnyhowS(LegAt leg) {
                return finder.priceAnyhowS(leg.request());
            }

            @Override
            public double leastS(LegAt leg) {
                return finder.least().leastS(leg.request(), leg.wind()) + leg.arrivalS();
            }
        };
    }

    private boolean isTooLow(Way way) {
        Rig rig = way.rig();
        return rig != null
                && !way.kinds().isEmpty()
                && (findTooLow(way.from(), way.kinds(), rig.withoutCredit()).isPresent()
                        || findTooLow(way.to(), way.kinds(), rig).isPresent());
    }

    /** With the line off nothing hangs there that could be let go. */
    private ClearLegs.Found unslung(LegFinder.Request request) {
        return new ClearLegs.Found(
                finder.findLeg(request), List.of(), false, ClearLegs.Side.NEITHER);
    }

    private LegFinder.Request request(Way way, WayIn out, WayIn in) {
        boolean cabin = way.lineM() <= 0;
        double endHookM = cabin ? 0 : way.lineM() + way.underM();
        return new LegFinder.Request(
                new LegFinder.End(
                        points.get(way.from()),
                        out.departureTrackGridRad(),
                        elevationAmslM[way.from()] + endHookM),
                new LegFinder.End(
                        points.get(way.to()),
                        in.approachFromGridRad(),
                        elevationAmslM[way.to()] + endHookM),
                way.kinds(),
                cabin ? CABIN_UNDER_M : way.lineM() + way.underM(),
                way.speedMPerS());
    }

    private record Ends(WayIn out, WayIn in) {}

    private Optional<LegAt> timed(Way way, FlownLeg leg, LegFinder.Request request, Ends ends) {
        WayMap.Wind wind = legWind(way);
        long durationS = durationS(leg, wind);
        if (durationS >= NEVER_S) {
            refusals.addWind(way.from(), way.to());
            return Optional.empty();
        }
        return Optional.of(
                new LegAt(
                        leg,
                        durationS + way.arrivalS(),
                        ends.in(),
                        ends.out(),
                        request,
                        wind,
                        way.arrivalS()));
    }

    private ClearLegs.Carried carried(Way way) {
        return new ClearLegs.Carried(
                way.cargos(), driftWind(way.from(), way.to(), way.slotFrom(), way.slotTo()));
    }

    /** Why ways between two places were refused. */
    Refusals refusals() {
        return refusals;
    }

    /** What letting go means on a loaded leg; empty over unknown ground. */
    Optional<ClearLegs.Seen> look(Trip trip, DayState.Flown flown) {
        return looks.computeIfAbsent(
                flown.loaded(),
                leg ->
                        clearLegs.look(
                                leg.leg(),
                                trip.kindNames(),
                                new ClearLegs.Carried(
                                        cargos.of(trip, flown.line()),
                                        driftWind(
                                                trip.from(),
                                                trip.to(),
                                                flown.slotFrom(),
                                                flown.slotTo()))));
    }

    /**
     * The wind that may drift a load on a leg: from the mean at the calmer end less the gusts' spread to
     * the gusts at the windier one, in the windier of the hours.
     */
    private LegWind driftWind(int from, int to, int slotFrom, int slotTo) {
        Slot one = slots.get(slotFrom);
        Slot other = slots.get(slotTo);
        Slot air = other.windMPerS() > one.windMPerS() ? other : one;
        double atFrom = places.get(from).exposureFactor();
        double atTo = places.get(to).exposureFactor();
        double mostFactor = Math.max(atFrom, atTo);
        double leastFactor = Math.min(atFrom, atTo);
        double spreadMPerS = Math.max(one.spreadMPerS(), other.spreadMPerS());
        return new LegWind(
                air.windFromTrueRad() - ground.frame().convergenceRad(points.get(from)),
                air.windMPerS() * (mostFactor + leastFactor) / 2,
                air.windMPerS() * (mostFactor - leastFactor) / 2 + spreadMPerS * mostFactor);
    }

    /** The wind on a leg: a headwind is counted in full, a tailwind not at all. */
    private WayMap.Wind legWind(Way way) {
        Slot air = slots.get(way.slotFrom());
        double fromGridRad =
                air.windFromTrueRad() - ground.frame().convergenceRad(points.get(way.from()));
        double exposure =
                Math.max(
                        places.get(way.from()).exposureFactor(),
                        places.get(way.to()).exposureFactor());
        double windMPerS = air.windMPerS() * exposure;
        return new WayMap.Wind(
                -windMPerS * Math.sin(fromGridRad),
                -windMPerS * Math.cos(fromGridRad),
                way.speedMPerS(),
                false);
    }

    /** Whole seconds; never where the wind holds the machine nearly still. */
    private static long durationS(FlownLeg leg, WayMap.Wind wind) {
        double sumS = leg.verticalS() + leg.turnLossS();
        for (int i = 0; i + 1 < leg.points().size(); i++) {
            PlanePoint a = leg.points().get(i);
            PlanePoint b = leg.points().get(i + 1);
            double pieceS = wind.durationS(b.eastM() - a.eastM(), b.northM() - a.northM());
            if (pieceS > a.distanceToM(b) / LEAST_GROUND_SPEED_M_PER_S) {
                return NEVER_S;
            }
            sumS += pieceS;
        }
        return (long) Math.ceil(sumS);
    }

    /** What no legal leg between the same ends on the same ways in and out goes below at that hour, s. */
    double boundS(LegAt at) {
        return boundsS.computeIfAbsent(
                at,
                leg -> finder.least().leastAsDirectedS(leg.request(), leg.wind()) + leg.arrivalS());
    }

    /** What a loaded leg passes over at a price, and its bound with that; nothing where it is empty. */
    Leg.Exposure exposure(LegAt at) {
        List<String> kinds = at.request().kinds();
        return kinds.isEmpty()
                ? Leg.Exposure.NONE
                : exposures.computeIfAbsent(
                        at,
                        leg ->
                                new Leg.Exposure(
                                        finder.prices().priceS(leg.leg(), kinds),
                                        finder.least()
                                                        .leastCostAsDirectedS(
                                                                leg.request(), leg.wind())
                                                + leg.arrivalS(),
                                        finder.prices().overM(leg.leg(), kinds)));
    }

    /** What a loaded leg passes over at a price, and the price of each, s. */
    Map<String, Double> pricesS(LegAt at) {
        return finder.prices().pricesS(at.leg(), at.request().kinds());
    }

    /** What no way of a trip goes below in an hour, with any line, s. */
    double loadedBoundS(Trip trip, int slot) {
        long leastS = NEVER_S;
        for (int line = 0; line < machine.lines().size(); line++) {
            if (isHung(trip, line)) {
                leastS = Math.min(leastS, boundS(loadedWay(trip, line, slot, slot)));
            }
        }
        return leastS;
    }

    /**
     * What no empty way between two places goes below in an hour, s: with any line; or with none, which is fitted
     * and taken off at laydowns only.
     */
    double emptyBoundS(int from, int to, int slot) {
        boolean slung = TripMaker.isSite(places.get(from)) || TripMaker.isSite(places.get(to));
        long leastS = slung ? NEVER_S : boundS(emptyWay(from, to, -1, slot));
        for (int line = 0; line < machine.lines().size(); line++) {
            leastS = Math.min(leastS, boundS(emptyWay(from, to, line, slot)));
        }
        return leastS;
    }

    /** How often a way was given up because the time was over. */
    int cuts() {
        return ceiling.cuts();
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
