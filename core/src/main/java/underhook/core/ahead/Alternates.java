package underhook.core.ahead;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import underhook.core.finding.FindingCode;
import underhook.core.geo.Ground;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.geo.Slope;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * Where the machine can be put down when a place that loads come to is shut: of each place the other
 * places where it may land, those that take least fuel first, with the height that clears what stands on
 * the straight way and the fuel that must be aboard to be down there with the reserve untouched.
 *
 * <p>All of it on the safe side: the load is still on, at the slowest speed that any leg to or from the
 * place is flown with, against the whole of the strongest gust; what is climbed and what is come down is
 * added to the way, and time to look at the landing on top. It is an estimate along a straight line that
 * nobody surveyed, for the head and not for the autopilot.
 */
public final class Alternates {
    /** To look at a landing, lay line and load down beside it and land. @source PRACTICE */
    private static final double LANDING_S = 180;

    /** Slower over the ground than this is not called a way: the wind decides. @source PRACTICE 10 kt */
    private static final double LEAST_GROUND_M_PER_S = Units.ktToMPerS(10);

    /** Slope at a landing is taken over this spacing, m, as for landing people. */
    private static final double SLOPE_SPACING_M = 5;

    /** What is no higher is grass and no tree, m. @source PRACTICE */
    private static final double GRASS_M = 0.3;

    /**
     * A landing for a place.
     *
     * @param bearingTrueRad of the straight way, rad from true north
     * @param distanceM of the straight way, m
     * @param hookAmslM least altitude of the hook under the belly that clears ground, trees, things that
     *     stand and wires with line and load on, m AMSL
     * @param durationS to be down, s
     * @param fuelKg to be aboard when it is decided, reserve and the gauge's spread included, kg
     * @param plannedKg least fuel with which the plan leaves the place, kg
     * @param passes wires under the way, zones on it that are closed to what hangs there, and houses, people, roads and
     *     trails that loads may not pass over or only guarded, by id
     * @param seen whether somebody surveyed the trees round the landing or a raster shows them all
     */
    public record Alternate(
            PlaceId landing,
            double bearingTrueRad,
            double distanceM,
            double hookAmslM,
            double durationS,
            double fuelKg,
            double plannedKg,
            List<String> passes,
            boolean seen) {
        public Alternate {
            passes = List.copyOf(passes);
        }

        /** Whether the day as planned has it aboard whenever it leaves the place. */
        public boolean isEnough() {
            return plannedKg >= fuelKg;
        }
    }

    /** How a place is used by the plan. */
    private static final class Use {
        double underHookM;
        double lowestHookAmslM = Double.POSITIVE_INFINITY;
        double leastFuelKg = Double.POSITIVE_INFINITY;
        final List<Visit> visits = new ArrayList<>();
        final Set<String> kinds = new LinkedHashSet<>();
    }

    /** One coming and going, with the slowest speed that it is flown with. */
    private record Visit(Instant from, Instant until, double slowestMPerS) {}

    private final Job job;
    private final Ground ground;
    private final Plan plan;
    private final StraightWays ways;

    private Alternates(Job job, Ground ground, Plan plan) {
        this.job = job;
        this.ground = ground;
        this.plan = plan;
        double gustMPerS =
                job.weather().hours().stream()
                                .mapToDouble(Alternates::strongestMPerS)
                                .max()
                                .orElse(0)
                        * job.places().stream().mapToDouble(Place::exposureFactor).max().orElse(1);
        this.ways = new StraightWays(job, ground, gustMPerS);
    }

    /**
     * For each place that loads come to, in the order of their first set-down, the landings that can be
     * reached, least fuel first; an empty list where there is none.
     */
    public static Map<PlaceId, List<Alternate>> of(Job job, Ground ground, Plan plan) {
        Alternates alternates = new Alternates(job, ground, plan);
        Map<PlaceId, List<Alternate>> all = new LinkedHashMap<>();
        alternates.uses().forEach((place, use) -> all.put(place, alternates.from(place, use)));
        return all;
    }

    /**
     * Whether the plan found that nobody can be landed at a place: too steep, or in trees. Such a place is
     * none to go to in need either.
     */
    public static boolean isRefused(Plan plan, PlaceId place) {
        return plan.findings().stream()
                .filter(
                        finding ->
                                finding.code() == FindingCode.LANDING_TOO_STEEP
                                        || finding.code() == FindingCode.LANDING_IN_TREES)
                .anyMatch(finding -> finding.subject().equals(place.value()));
    }

    private static double strongestMPerS(WeatherHour hour) {
        return Math.max(hour.windMPerS(), hour.gustMPerS());
    }

    private Map<PlaceId, Use> uses() {
        Map<PlaceId, Use> uses = new LinkedHashMap<>();
        for (Step step : plan.steps()) {
            step.rotation()
                    .ifPresent(
                            rotation -> {
                                for (Drop drop : rotation.drops()) {
                                    Use use =
                                            uses.computeIfAbsent(drop.place(), unused -> new Use());
                                    add(use, step, rotation, drop.place());
                                }
                            });
        }
        return uses;
    }

    private void add(Use use, Step step, Rotation rotation, PlaceId place) {
        double hangsM = 0;
        double slowestMPerS = Double.POSITIVE_INFINITY;
        for (LoadId id : rotation.loads()) {
            hangsM = Math.max(hangsM, hangsM(job.getLoad(id)));
            use.kinds.add(job.getLoad(id).kind());
        }
        use.underHookM = Math.max(use.underHookM, step.lineLengthM() + hangsM);
        double afterS = 0;
        for (Leg leg : rotation.legs()) {
            afterS += leg.durationS();
            if (!leg.to().equals(place) && !leg.from().equals(place)) {
                continue;
            }
            slowestMPerS = Math.min(slowestMPerS, leg.speedMPerS());
            if (leg.to().equals(place) && !leg.path().isEmpty()) {
                double endAmslM = leg.path().get(leg.path().size() - 1).hookAltitudeAmslM();
                use.lowestHookAmslM = Math.min(use.lowestHookAmslM, endAmslM);
                afterS = 0;
            }
        }
        use.visits.add(new Visit(step.startAt(), step.endAt(), slowestMPerS));
        // What else is burnt until the step ends is left out, so that there is no less than this.
        double leavesKg = step.fuelEndKg() + afterS * job.machine().burnKgPerS();
        use.leastFuelKg = Math.min(use.leastFuelKg, leavesKg);
    }

    private double hangsM(Load load) {
        return job.getKind(load.kind()).standsUp() ? load.lengthM() : load.heightM();
    }

    private List<Alternate> from(PlaceId place, Use use) {
        List<Alternate> all = new ArrayList<>();
        for (Place landing : job.places()) {
            if (!landing.id().equals(place) && isLanding(landing)) {
                to(job.getPlace(place), landing, use).ifPresent(all::add);
            }
        }
        all.sort(
                Comparator.comparingDouble(Alternate::fuelKg)
                        .thenComparing(one -> one.landing().value()));
        return List.copyOf(all);
    }

    /** A place for machines, level enough and clear of trees as far as anybody knows. */
    private boolean isLanding(Place place) {
        PlanePoint at = ground.frame().toPlane(place.position());
        return place.agreed()
                && !place.isSite()
                && !isRefused(plan, place.id())
                && Slope.find(ground.terrain(), at, SLOPE_SPACING_M)
                        .filter(
                                slope ->
                                        slope.slopeRad() <= job.rules().landing().landingSlopeRad())
                        .isPresent()
                && !isInTrees(place, at);
    }

    private double treesOffM() {
        return Math.max(job.machine().rotorRadiusM(), job.machine().tailReachM())
                + job.rules().distances().rotorClearanceM();
    }

    private boolean isInTrees(Place place, PlanePoint at) {
        if (place.canopyM().isPresent()) {
            return place.canopyM().getAsDouble() + place.canopySpreadM() > GRASS_M
                    && place.clearingRadiusM() < treesOffM();
        }
        return ground.canopy()
                .map(raster -> raster.findHighestKnownWithinM(at, treesOffM()).orElse(0))
                .filter(highestM -> highestM > GRASS_M)
                .isPresent();
    }

    private boolean isSeen(Place place, PlanePoint at) {
        return place.canopyM().isPresent()
                || place.clearingRadiusM() >= treesOffM()
                || ground.canopy().filter(raster -> raster.coversDisc(at, treesOffM())).isPresent();
    }

    private Optional<Alternate> to(Place place, Place landing, Use use) {
        PlanePoint here = ground.frame().toPlane(place.position());
        PlanePoint there = ground.frame().toPlane(landing.position());
        PlaneLine way = new PlaneLine(here, there);
        double distanceM = here.distanceToM(there);
        double groundMPerS = groundMPerS(use, place, landing);
        OptionalDouble topAmslM = ways.findHighestAmslM(way);
        OptionalDouble downAmslM = ground.terrain().findHeightM(there.eastM(), there.northM());
        if (!(groundMPerS >= LEAST_GROUND_M_PER_S)
                || topAmslM.isEmpty()
                || downAmslM.isEmpty()
                || Double.isInfinite(use.lowestHookAmslM)) {
            return Optional.empty();
        }
        Set<String> passes = new LinkedHashSet<>();
        double clearAmslM =
                Math.max(
                        topAmslM.getAsDouble()
                                + job.rules().distances().clearanceM()
                                + use.underHookM,
                        ways.overWiresAmslM(way, use.underHookM, passes));
        if (Double.isInfinite(clearAmslM)) {
            return Optional.empty();
        }
        double climbM = Math.max(0, clearAmslM - use.lowestHookAmslM);
        double downM = Math.max(clearAmslM, use.lowestHookAmslM) - downAmslM.getAsDouble();
        double durationS =
                distanceM / groundMPerS
                        + climbM / job.machine().climbMPerS()
                        + Math.max(0, downM) / job.machine().descentMPerS()
                        + LANDING_S;
        double flowKgPerS = Math.max(job.machine().burnKgPerS(), job.machine().hoverBurnKgPerS());
        double fuelKg =
                durationS * flowKgPerS
                        + job.machine().reserveS() * job.machine().burnKgPerS()
                        + job.machine().fuelGaugeSpreadKg();
        passes.addAll(ways.zones(way, use.kinds));
        passes.addAll(ways.features(way));
        return Optional.of(
                new Alternate(
                        landing.id(),
                        Units.wrapTwoPiRad(
                                here.bearingToGridRad(there) + ground.frame().convergenceRad(here)),
                        distanceM,
                        clearAmslM,
                        durationS,
                        fuelKg,
                        use.leastFuelKg,
                        List.copyOf(passes),
                        isSeen(landing, there)));
    }

    /** The least of all visits: against the strongest gust of all rows that may hold in each. */
    private double groundMPerS(Use use, Place place, Place landing) {
        double exposureFactor = Math.max(place.exposureFactor(), landing.exposureFactor());
        return use.visits.stream()
                .mapToDouble(visit -> visit.slowestMPerS() - exposureFactor * gustMPerS(visit))
                .min()
                .orElse(0);
    }

    private double gustMPerS(Visit visit) {
        List<WeatherHour> hours = job.weather().hours();
        int first = 0;
        int last = 0;
        for (int i = 1; i < hours.size(); i++) {
            first = hours.get(i).from().isAfter(visit.from()) ? first : i;
            last = hours.get(i).from().isAfter(visit.until()) ? last : i;
        }
        boolean next =
                job.weather().between() == Weather.Between.STRICTER && last + 1 < hours.size();
        return hours.subList(first, last + (next ? 2 : 1)).stream()
                .mapToDouble(Alternates::strongestMPerS)
                .max()
                .orElse(0);
    }
}
