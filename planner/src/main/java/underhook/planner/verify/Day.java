package underhook.planner.verify;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.MapFeature;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;
import underhook.core.job.Zone;
import underhook.core.plan.Anew;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** Job, ground and plan side by side, with what all checks look up. */
final class Day {
    private static final Duration WHOLE_DAY = Duration.ofDays(1);

    private final Job job;
    private final Ground ground;
    private final Plan plan;
    private final Proofs proofs;
    private Ledger ledger;
    private final Map<LoadId, Drop> drops = new HashMap<>();
    private final Map<LoadId, Rotation> rotations = new HashMap<>();
    private final Map<PlaceId, PlanePoint> places = new HashMap<>();
    private final IdentityHashMap<Object, Shape> shapes = new IdentityHashMap<>();
    private final List<Flight> flights = new ArrayList<>();
    private final IdentityHashMap<Flight, Proofs.Haul> hauls = new IdentityHashMap<>();

    Day(Job job, Ground ground, Plan plan, Proofs proofs) {
        this.job = job;
        this.ground = ground;
        this.plan = plan;
        this.proofs = proofs;
        this.ledger = new Ledger();
        for (Step step : plan.steps()) {
            step.rotation()
                    .ifPresent(
                            rotation -> {
                                rotation.loads().forEach(id -> rotations.putIfAbsent(id, rotation));
                                rotation.drops()
                                        .forEach(drop -> drops.putIfAbsent(drop.load(), drop));
                            });
        }
    }

    /**
     * What was done or begun when the day was ordered anew, alone; empty where it was not, or nothing was. Who was at
     * a place then stays there: that somebody leaves too soon after that is of what is to come.
     */
    Optional<Day> done() {
        Optional<Instant> from = plan.summary().anew().map(Anew::fromAt);
        List<Step> begun = plan.steps().stream().filter(this::isBegun).toList();
        if (from.isEmpty() || begun.isEmpty()) {
            return Optional.empty();
        }
        Instant end = begun.get(begun.size() - 1).endAt();
        List<CrewStay> crews = new ArrayList<>();
        for (CrewStay stay : plan.crews()) {
            if (stay.fromAt().isBefore(end)) {
                boolean stays = !stay.toAt().isBefore(end);
                crews.add(
                        new CrewStay(
                                stay.crew(),
                                stay.place(),
                                stay.fromAt(),
                                stays ? stay.toAt().plus(WHOLE_DAY) : stay.toAt(),
                                stay.doing()));
            }
        }
        Plan alone =
                new Plan(
                        plan.id(),
                        plan.job(),
                        plan.made(),
                        plan.summary(),
                        begun,
                        crews,
                        List.of(),
                        plan.findings(),
                        plan.rooms(),
                        plan.poles(),
                        plan.kit(),
                        Optional.empty());
        return Optional.of(new Day(job, ground, alone, proofs));
    }

    Job job() {
        return job;
    }

    /** Whether somebody answers for what would otherwise stop this. */
    boolean isAnswered(FindingCode code, String subject) {
        return job.waivers().stream()
                .anyMatch(waiver -> waiver.isLifting() && waiver.isAbout(code, subject));
    }

    Ground ground() {
        return ground;
    }

    Plan plan() {
        return plan;
    }

    Ledger ledger() {
        return ledger;
    }

    /** First drop of each load that is placed. */
    Map<LoadId, Drop> drops() {
        return drops;
    }

    /** Whether a load was flown, or hung, when the day was ordered anew. */
    boolean isDone(LoadId load) {
        return plan.summary()
                .anew()
                .map(anew -> drops.containsKey(load) && begunBefore(anew.fromAt()).contains(load))
                .orElse(false);
    }

    /** When what is let go as number so much hangs over its place: when it comes, or the one before is off. */
    Instant comesAt(Rotation rotation, int index) {
        if (index > 0) {
            return rotation.drops().get(index - 1).releasedAt();
        }
        Drop first = rotation.drops().get(0);
        double setDownS =
                loadsOf(rotation.loads()).stream()
                        .mapToDouble(load -> kindOf(load).setDownS())
                        .max()
                        .orElse(0);
        Instant comes = first.releasedAt().minusMillis(Math.round(setDownS * 1000));
        return comes.isBefore(rotation.hookedAt()) ? rotation.hookedAt() : comes;
    }

    /** The weather's rows that count while what is let go as number so much hangs over its place. */
    List<WeatherHour> rowsOver(Rotation rotation, int index) {
        return new Air(job.weather())
                .listRows(comesAt(rotation, index), rotation.drops().get(index).releasedAt());
    }

    /**
     * From when people and ground are needed for a load: a pole that is still to be flown is stood up by them until it
     * is let go, all else only rests where it comes down. What was flown stood up as quickly as it did.
     */
    Instant neededFrom(Drop drop) {
        LoadKind kind = kindOf(job.getLoad(drop.load()));
        boolean stoodUp = kind.standsUp() && !isDone(drop.load());
        return stoodUp
                ? drop.releasedAt().minusMillis(Math.round(kind.setDownS() * 1000))
                : drop.releasedAt();
    }

    /** From when people hook loads up that are still to be flown; what was hooked up is as it was. */
    Instant hookedFrom(Rotation rotation) {
        return isHooked(rotation)
                ? rotation.hookedAt()
                : rotation.hookedAt().minusMillis(Math.round(hookUpS(rotation) * 1000));
    }

    /** How long loads are hooked up, s; of several on a hook the longest counts. */
    double hookUpS(Rotation rotation) {
        return loadsOf(rotation.loads()).stream()
                .mapToDouble(load -> kindOf(load).hookUpS())
                .max()
                .orElse(0);
    }

    /** Whether a step was begun when the day was ordered anew. */
    boolean isBegun(Step step) {
        return plan.summary()
                .anew()
                .map(anew -> step.startAt().isBefore(anew.fromAt()))
                .orElse(false);
    }

    /** Whether a lift hung already, or was done, when the day was ordered anew. */
    boolean isHooked(Rotation rotation) {
        return plan.summary().anew().isPresent() && !rotation.hookedAt().isAfter(plan.plannedAt());
    }

    /** Loads whose lift is done or begun at a time. */
    Set<LoadId> begunBefore(Instant time) {
        Set<LoadId> begun = new HashSet<>();
        for (Step step : plan.steps()) {
            step.rotation()
                    .filter(turn -> step.startAt().isBefore(time) || !turn.hookedAt().isAfter(time))
                    .ifPresent(turn -> begun.addAll(turn.loads()));
        }
        return begun;
    }

    /** First rotation of each load that is placed. */
    Map<LoadId, Rotation> rotations() {
        return rotations;
    }

    /** A flight's leg and what hangs there, as other plans may have it too. */
    Proofs.Haul haul(Flight flight) {
        return hauls.computeIfAbsent(flight, proofs::haul);
    }

    /**
     * Enters what a check of one leg or hover finds, or found before.
     *
     * @param asked all that the check looks at besides the job and the ground
     */
    void prove(Proofs.Asked asked, Runnable check) {
        Ledger whole = ledger;
        proofs.enter(
                asked,
                own -> {
                    ledger = own;
                    check.run();
                    ledger = whole;
                },
                whole);
    }

    static String name(int number) {
        return "step " + number;
    }

    static double betweenS(Instant from, Instant to) {
        return Duration.between(from, to).toNanos() / 1e9;
    }

    static double durationS(Step step) {
        return betweenS(step.startAt(), step.endAt());
    }

    static boolean flies(Step step) {
        return step.kind() == StepKind.ROTATION
                || step.kind() == StepKind.POSITION
                || step.kind() == StepKind.CREW_MOVE;
    }

    LoadKind kindOf(Load load) {
        return job.getKind(load.kind());
    }

    List<Load> loadsOf(List<LoadId> ids) {
        return ids.stream().map(job::getLoad).toList();
    }

    /** Mass for lift, kg: an estimate with its factor, rounded up. The mass must be known. */
    double liftMassKg(Load load) {
        double factor =
                load.massStatus() == MassStatus.ESTIMATED
                        ? job.rules().masses().estimatedMassFactor()
                        : 1;
        return Math.ceil(
                load.massKg().orElseThrow() * factor * kindOf(load).heavierFactor()
                        - Tolerance.DUST_KG);
    }

    /** Mass for how it flies, kg: an estimate may be lighter by the same factor. */
    double lightMassKg(Load load) {
        double factor =
                load.massStatus() == MassStatus.ESTIMATED
                        ? job.rules().masses().estimatedMassFactor()
                        : 1;
        return load.massKg().orElseThrow() / factor;
    }

    PlanePoint planeOf(GeoPoint point) {
        return ground.frame().toPlane(point);
    }

    PlanePoint planeOf(PlaceId id) {
        return places.computeIfAbsent(id, unused -> planeOf(job.getPlace(id).position()));
    }

    /** A zone or feature of the job in the plane. */
    Shape shapeOf(Zone zone) {
        return shapes.computeIfAbsent(
                zone,
                unused ->
                        new Shape(
                                zone.outline().stream().map(p -> planeOf(p)).toList(),
                                zone.outline().size() == 1 ? zone.radiusM() : 0,
                                zone.outline().size() > 1));
    }

    Shape shapeOf(MapFeature feature) {
        return shapes.computeIfAbsent(
                feature,
                unused ->
                        new Shape(
                                feature.outline().stream().map(p -> planeOf(p)).toList(),
                                0,
                                feature.shape() == MapFeature.Shape.AREA));
    }

    /** Every wire of the job, in order. */
    List<HungWire> wires() {
        return around().wires();
    }

    /** What stands round the places, whatever is planned. */
    Surroundings around() {
        return proofs.around();
    }

    boolean isKnown(PlanePoint p) {
        return ground.terrain().covers(p.eastM(), p.northM());
    }

    /** Bare ground, m AMSL; empty where it is not known. */
    OptionalDouble findGroundAmslM(PlanePoint p) {
        return ground.terrain().findHeightM(p.eastM(), p.northM());
    }

    /** Bare ground, m AMSL; the point must be covered. */
    double groundAmslM(PlanePoint p) {
        return ground.terrain().heightM(p.eastM(), p.northM());
    }

    double groundAmslM(PlaceId id) {
        return groundAmslM(planeOf(id));
    }

    /** By how much the ground rises on a bearing, from so far behind to so far ahead; level where it is not known. */
    double riseFactor(PlanePoint at, double bearingGridRad, double stepM) {
        PlanePoint ahead = Plane.along(at, bearingGridRad, stepM);
        PlanePoint back = Plane.along(at, bearingGridRad, -stepM);
        return isKnown(ahead) && isKnown(back)
                ? (groundAmslM(ahead) - groundAmslM(back)) / (2 * stepM)
                : 0;
    }

    /** Trees on a leg, m above ground: the raster where there is one, else the job's assumption. */
    double canopyM(PlanePoint p) {
        return ground.canopy()
                .filter(raster -> raster.covers(p.eastM(), p.northM()))
                .map(raster -> raster.heightM(p.eastM(), p.northM()))
                .orElse(job.rules().distances().canopyLegM());
    }

    /** Trees by the raster alone, m above ground; 0 where there is none. */
    double rasterCanopyM(PlanePoint p) {
        return ground.canopy()
                .filter(raster -> raster.covers(p.eastM(), p.northM()))
                .map(raster -> raster.heightM(p.eastM(), p.northM()))
                .orElse(0.0);
    }

    /** Trees round a place, m above ground: as surveyed, else the highest that is known under rotor and tail. */
    double canopyAtM(Place place) {
        if (place.canopyM().isPresent()) {
            return place.canopyM().getAsDouble();
        }
        double reach = job.machine().rotorRadiusM() + job.machine().tailReachM();
        PlanePoint at = planeOf(place.position());
        return ground.canopy()
                .map(raster -> raster.findHighestKnownWithinM(at, reach).orElse(0))
                .orElse(0.0);
    }

    /** How far round a machine on the ground no tree may stand, m: its longer end and the rotor's margin. */
    double standingReachM() {
        double longer = Math.max(job.machine().rotorRadiusM(), job.machine().tailReachM());
        return longer + job.rules().distances().rotorClearanceM();
    }

    /** Whether somebody looked and there are no trees where the machine stands, or grass alone. */
    boolean isSeenBare(Place place) {
        return place.canopyM().isPresent()
                && (place.clearingRadiusM() >= standingReachM()
                        || place.canopyM().getAsDouble() + place.canopySpreadM()
                                <= Tolerance.GRASS_M);
    }

    /**
     * Trees round a machine that stands on a place, m above ground: as surveyed, else as the raster has them
     * as far as it reaches; 0 where nothing is known.
     */
    double treesRoundLandingM(Place place) {
        if (place.canopyM().isPresent()) {
            return isSeenBare(place) ? 0 : place.canopyM().getAsDouble() + place.canopySpreadM();
        }
        PlanePoint at = planeOf(place.position());
        return ground.canopy()
                .map(raster -> raster.findHighestKnownWithinM(at, standingReachM()).orElse(0))
                .orElse(0.0);
    }

    /** Every leg of every step, in order. */
    List<Flight> listFlights() {
        if (flights.isEmpty()) {
            addFlights();
        }
        return Collections.unmodifiableList(flights);
    }

    private void addFlights() {
        for (int i = 0; i < plan.steps().size(); i++) {
            Step step = plan.steps().get(i);
            boolean hung = false;
            for (Leg leg : legsOf(step)) {
                hung |= !leg.carrying().isEmpty();
                flights.add(flight(i + 1, step, leg, hung));
            }
        }
    }

    /**
     * A leg of a step. Of a lift it is flown before the loads hang, while they do, or after the last release.
     *
     * @param hung whether loads hung on this or an earlier leg of the step
     */
    private Flight flight(int number, Step step, Leg leg, boolean hung) {
        List<PlanePoint> track =
                leg.path().stream().map(PathPoint::position).map(point -> planeOf(point)).toList();
        Optional<Rotation> lift = step.rotation();
        Instant hooked = lift.map(Rotation::hookedAt).orElse(step.startAt());
        Instant released =
                lift.flatMap(one -> one.drops().stream().reduce((a, b) -> b))
                        .map(Drop::releasedAt)
                        .orElse(step.startAt());
        boolean loaded = !leg.carrying().isEmpty();
        Instant from = loaded ? hooked : hung ? released : step.startAt();
        Instant until = loaded ? released : step.endAt();
        if (!hung && lift.isPresent()) {
            until = hooked.minusMillis((long) (1000 * hookUpS(lift.get())));
        }
        return new Flight(number, step, leg, loadsOf(leg.carrying()), track, from, until);
    }

    static List<Leg> legsOf(Step step) {
        return step.rotation().map(Rotation::legs).orElse(step.legs());
    }
}
