package underhook.core.ahead;

import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;
import underhook.core.ahead.Answer.Topic;
import underhook.core.air.Atmosphere;
import underhook.core.aircraft.HoverChart;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.Machine;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.unit.Units;

/**
 * Whether the heaviest pieces can be lifted in the job's month at all.
 *
 * <p>The hover mass is the chart's, at the worst of the places that loads come from and go to, never outside the
 * chart, cut at the most mass with an external load; machine, crew, the heaviest line and the fuel come off, and the
 * margin for construction as in the plan. Fuel is what the straight way there and back needs, without wind, with
 * reserve, contingency and the gauge off both ways.
 *
 * @source DERIVED the plan's own sum for a trip, with the month's air in the place of a forecast
 */
final class FirstFeasibility {
    /** What can be lifted in the middle of the month's air, and in its warm air. */
    private record Pair(double middleKg, double warmKg) {}

    private final Job job;
    private final Ground ground;
    private final MonthClimate climate;
    private final Machine machine;
    private final HoverChart chart;
    private final LineItem line;

    private FirstFeasibility(Job job, Ground ground, MonthClimate climate) {
        this.job = job;
        this.ground = ground;
        this.climate = climate;
        this.machine = job.machine();
        this.chart = HoverChart.of(machine.hover(), machine.maxExternalMassKg());
        this.line =
                machine.lines().stream()
                        .max(Comparator.comparingDouble(LineItem::massKg))
                        .orElseThrow();
    }

    static Answer of(Job job, Ground ground, MonthClimate climate) {
        return new Answer(Topic.FEASIBILITY, new FirstFeasibility(job, ground, climate).points());
    }

    private List<Point> points() {
        List<Point> points = new ArrayList<>();
        Optional<Place> worst = Optional.empty();
        Pair least = new Pair(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
        for (Place place : places()) {
            Outcome<Double> middle = hover(place, climate.middleK());
            Outcome<Double> warm = hover(place, climate.warmK());
            if (!middle.isDone() || !warm.isDone()) {
                points.add(
                        new Point(
                                Mark.NO,
                                place.id().value(),
                                Stream.concat(middle.findings().stream(), warm.findings().stream())
                                        .map(Finding::message)
                                        .distinct()
                                        .toList()));
            } else {
                worst = warm.getValue() < least.warmKg ? Optional.of(place) : worst;
                least =
                        new Pair(
                                Math.min(least.middleKg, middle.getValue()),
                                Math.min(least.warmKg, warm.getValue()));
            }
        }
        if (!points.isEmpty() || worst.isEmpty()) {
            return points;
        }
        points.addAll(verdicts(least));
        points.add(new Point(Mark.NOTED, worst.get().id().value(), sayAir(worst.get(), least)));
        points.add(new Point(Mark.NOTED, machine.name(), sayPieces(least)));
        return points;
    }

    private Set<Place> places() {
        Set<PlaceId> ids = new LinkedHashSet<>();
        job.loads().forEach(load -> ids.addAll(List.of(load.from(), load.to())));
        Set<Place> places = new LinkedHashSet<>();
        ids.forEach(id -> places.add(job.getPlace(id)));
        return places;
    }

    /** The listed height counts where it is above the terrain's. */
    private double elevationAmslM(Place place) {
        PlanePoint at = ground.frame().toPlane(place.position());
        double groundM =
                ground.terrain().covers(at.eastM(), at.northM())
                        ? ground.terrain().heightM(at.eastM(), at.northM())
                        : Double.NEGATIVE_INFINITY;
        return Math.max(groundM, place.statedElevationAmslM().orElse(Double.NEGATIVE_INFINITY));
    }

    private double temperatureK(Place place, double referenceK) {
        return referenceK
                - climate.lapseKPerM()
                        * (elevationAmslM(place) - climate.referenceElevationAmslM());
    }

    private Outcome<Double> hover(Place place, double referenceK) {
        double elevationM = elevationAmslM(place);
        return elevationM > Double.NEGATIVE_INFINITY
                ? chart.massKg(
                        Math.ceil(Atmosphere.pressureAltitudeM(climate.lowQnhPa(), elevationM)),
                        temperatureK(place, referenceK))
                : Outcome.refused(
                        Finding.of(
                                FindingCode.OUTSIDE_TERRAIN,
                                Severity.STOP,
                                place.id().value(),
                                "terrain",
                                "Nothing says how high this place is."));
    }

    static String month(Job job) {
        return job.date().getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    private List<String> sayAir(Place place, Pair hoverKg) {
        return List.of(
                "Least hover mass of all places in "
                        + month(job)
                        + ", at "
                        + (long) Math.ceil(elevationAmslM(place))
                        + " m and "
                        + (long) Math.floor(Units.paToHpa(climate.lowQnhPa()))
                        + " hPa: half of the hours up to "
                        + celsius(temperatureK(place, climate.middleK()))
                        + " °C: "
                        + (long) hoverKg.middleKg
                        + " kg; nine of ten up to "
                        + celsius(temperatureK(place, climate.warmK()))
                        + " °C: "
                        + (long) hoverKg.warmKg
                        + " kg.",
                "The month's air is from: " + climate.source() + ".");
    }

    /** From the least fuel that any load needs up to a full tank. */
    private List<String> sayPieces(Pair hoverKg) {
        double leastKg = job.loads().stream().mapToDouble(this::fuelNeedKg).min().orElse(0);
        List<String> said = new ArrayList<>();
        for (int step = 0; step <= 3; step++) {
            double fuelKg = Math.ceil(leastKg + (machine.fuelUsableKg() - leastKg) * step / 3.0);
            said.add(
                    "Fuel of "
                            + (long) fuelKg
                            + " kg leaves a piece at most "
                            + (long) pieceKg(hoverKg.middleKg, fuelKg, false)
                            + " kg in half of the hours, at most "
                            + (long) pieceKg(hoverKg.warmKg, fuelKg, false)
                            + " kg in nine of ten; for construction at most "
                            + (long) pieceKg(hoverKg.warmKg, fuelKg, true)
                            + " kg.");
        }
        said.add(
                "Counted is line "
                        + line.name()
                        + ", the heaviest, with the straight way there and back and no wind.");
        return said;
    }

    private double pieceKg(double hoverKg, double fuelKg, boolean construction) {
        double capacityKg =
                hoverKg - machine.emptyMassKg() - machine.crewMassKg() - line.massKg() - fuelKg;
        double marginFraction = construction ? job.rules().masses().constructionFraction() : 0;
        double heldKg = Math.min(line.limitKg(), machine.hookLimitKg() - line.massKg());
        return Math.max(0, Math.floor(Math.min(heldKg, capacityKg * (1 - marginFraction))));
    }

    private double massKg(Load load) {
        double estimated =
                load.massStatus() == MassStatus.ESTIMATED
                        ? job.rules().masses().estimatedMassFactor()
                        : 1;
        return Math.ceil(
                load.massKg().orElseThrow() * estimated * job.getKind(load.kind()).heavierFactor()
                        - 1e-9);
    }

    private double fuelNeedKg(Load load) {
        LoadKind kind = job.getKind(load.kind());
        Place from = job.getPlace(load.from());
        Place to = job.getPlace(load.to());
        double wayM =
                ground.frame()
                        .toPlane(from.position())
                        .distanceToM(ground.frame().toPlane(to.position()));
        double upM = elevationAmslM(to) - elevationAmslM(from);
        double outS = Math.max(wayM / kind.speedMPerS(), climbS(upM));
        double backS = Math.max(wayM / machine.emptyLineSpeedMPerS(), climbS(-upM));
        double burn = machine.burnKgPerS();
        return Math.ceil(
                burn
                                * (outS
                                        + backS
                                        + job.rules().times().returnExtraS()
                                        + machine.reserveS()
                                        + job.rules().refuelling().contingencyS())
                        + Math.max(burn, machine.hoverBurnKgPerS()) * kind.setDownS()
                        + 2 * machine.fuelGaugeSpreadKg());
    }

    private double climbS(double upM) {
        return upM > 0 ? upM / machine.climbMPerS() : -upM / machine.descentMPerS();
    }

    /** What cannot be lifted first; of what can, the heaviest of each kind. */
    private List<Point> verdicts(Pair hoverKg) {
        List<Point> points = new ArrayList<>();
        List<Point> good = new ArrayList<>();
        Set<String> told = new LinkedHashSet<>();
        job.loads().stream()
                .filter(load -> load.massKg().isPresent())
                .sorted(Comparator.comparingDouble(this::massKg).reversed())
                .forEach(
                        load -> {
                            Point point = verdict(load, hoverKg);
                            if (point.mark() != Mark.OK) {
                                points.add(point);
                            } else if (told.add(load.kind())) {
                                good.add(point);
                            }
                        });
        points.sort(Comparator.comparing(Point::mark));
        job.loads().stream()
                .filter(load -> load.massKg().isEmpty())
                .forEach(
                        load ->
                                points.add(
                                        new Point(
                                                Mark.LOOK,
                                                load.id().value(),
                                                List.of(
                                                        "No mass is stated, so nothing is said."))));
        points.addAll(good);
        return points;
    }

    private Point verdict(Load load, Pair hoverKg) {
        LoadKind kind = job.getKind(load.kind());
        double fuelKg = fuelNeedKg(load);
        double warmKg = pieceKg(hoverKg.warmKg, fuelKg, kind.constructionMargin());
        double middleKg = pieceKg(hoverKg.middleKg, fuelKg, kind.constructionMargin());
        double massKg = massKg(load);
        String weighs = "It weighs " + (long) massKg + " kg; with " + (long) fuelKg + " kg of fuel";
        String id = load.id().value();
        if (massKg <= warmKg) {
            return new Point(
                    Mark.OK,
                    id,
                    List.of(
                            weighs
                                    + " at most "
                                    + (long) warmKg
                                    + " kg can be lifted in nine of ten hours: the heaviest "
                                    + load.kind()
                                    + " that is liftable.",
                            "Liftable."));
        }
        if (massKg <= middleKg) {
            return new Point(
                    Mark.LOOK,
                    id,
                    List.of(
                            weighs
                                    + " at most "
                                    + (long) middleKg
                                    + " kg can be lifted in half of the hours, at most "
                                    + (long) warmKg
                                    + " kg in nine of ten.",
                            "Only in the cooler hours, or split it."));
        }
        boolean canSplit = !kind.standsUp() && warmKg > 0;
        return new Point(
                Mark.NO,
                id,
                List.of(
                        weighs
                                + " at most "
                                + (long) middleKg
                                + " kg can be lifted in half of the hours, at most "
                                + (long) warmKg
                                + " kg in nine of ten.",
                        canSplit
                                ? "Split it: "
                                        + (long) Math.ceil(massKg / warmKg)
                                        + " pieces or more, or a larger machine."
                                : "A larger machine, or something lighter in its place."));
    }

    private static String celsius(double valueK) {
        return String.format(Locale.ROOT, "%.1f", Units.kelvinToCelsius(valueK));
    }
}
