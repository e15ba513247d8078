package underhook.core.ahead;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;
import underhook.core.ahead.Answer.Topic;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.MapFeature;
import underhook.core.job.MapFeature.Kind;
import underhook.core.job.Place;
import underhook.core.job.PlaceKind;
import underhook.core.job.WeatherHour;
import underhook.core.job.Zone;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;
import underhook.core.unit.Units;

/**
 * Whether each laydown that loads come from is laid out well, by what the map knows.
 *
 * <p>Six checks, each with its figures: nothing into the wind, nobody near the rotor, fuel, a way for vehicles, ways
 * out, and the first part of each way with a load. Distances are those of the map less how far the place may be off.
 */
final class LaydownLayout {
    /** People who have no business there keep so far from a turning rotor. @source WAC-296-32 100 ft */
    private static final double EXCLUSION_M = Units.ftToM(100);

    /** To both sides of the wind. @source PRACTICE */
    private static final double BESIDE_WIND_RAD = Math.toRadians(30);

    /** Loads are carried by hand no farther. @source PRACTICE */
    private static final double VEHICLE_M = 200;

    /** Ground and trees under a way out rise no steeper. @source FAA-AC-150-5390 surface of 8 to 1 */
    private static final double RISE_RATIO = 1.0 / 8;

    /** What loads pass over within this many times the first part of their ways is looked at. @source PRACTICE */
    private static final double SOON_RATIO = 2;

    private static final int HEADINGS = 36;
    private static final double STEP_M = 2;
    private static final double CALM_M_PER_S = 0.5;

    private record Thing(String id, Kind kind, List<PlanePoint> corners, boolean area) {
        double distanceM(PlanePoint from) {
            if (area && PlaneLine.isInside(from, corners)) {
                return 0;
            }
            return sides().mapToDouble(side -> side.distanceToM(from))
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
        }

        Stream<PlaneLine> sides() {
            int count = corners.size();
            int last = area ? count : Math.max(1, count - 1);
            return IntStream.range(0, last)
                    .mapToObj(i -> new PlaneLine(corners.get(i), corners.get((i + 1) % count)));
        }
    }

    private record Seen(Thing thing, double distanceM) {}

    private final Job job;
    private final Ground ground;
    private final Optional<Plan> plan;
    private final List<Thing> things;
    private final double reachM;

    private LaydownLayout(Job job, Ground ground, Optional<Plan> plan) {
        this.job = job;
        this.ground = ground;
        this.plan = plan;
        this.reachM = job.rules().flying().finalM();
        this.things =
                Stream.concat(
                                job.features().stream()
                                        .map(
                                                one ->
                                                        new Thing(
                                                                one.id(),
                                                                one.kind(),
                                                                plane(one.outline()),
                                                                one.shape()
                                                                        == MapFeature.Shape.AREA)),
                                // A wire stands in the way as a mast does.
                                job.wires().stream()
                                        .map(
                                                wire ->
                                                        new Thing(
                                                                wire.id(),
                                                                Kind.MAST,
                                                                plane(wire.supports()),
                                                                false)))
                        .toList();
    }

    static Answer of(Job job, Ground ground, Optional<Plan> plan) {
        LaydownLayout layout = new LaydownLayout(job, ground, plan);
        return new Answer(
                Topic.LAYDOWNS,
                job.places().stream()
                        .filter(place -> place.kind() == PlaceKind.LAYDOWN)
                        .filter(
                                place ->
                                        job.loads().stream()
                                                .anyMatch(load -> load.from().equals(place.id())))
                        .flatMap(place -> layout.check(place).stream())
                        .toList());
    }

    private List<PlanePoint> plane(List<GeoPoint> points) {
        return points.stream().map(point -> ground.frame().toPlane(point)).toList();
    }

    private List<Point> check(Place place) {
        PlanePoint at = ground.frame().toPlane(place.position());
        List<Point> points =
                new ArrayList<>(
                        List.of(
                                intoWind(place, at),
                                exclusion(place, at),
                                fuel(place, at),
                                vehicle(place, at),
                                waysOut(place, at),
                                waysWithLoad(place)));
        points.sort(Comparator.comparing(Point::mark));
        return points;
    }

    private static Point point(Mark mark, Place place, String sentence) {
        return new Point(mark, place.id().value(), List.of(sentence));
    }

    private double farM(double distanceM) {
        return Math.max(0, distanceM - job.rules().margins().placeSpreadM());
    }

    private Stream<Seen> near(PlanePoint at, double withinM, Predicate<Kind> kinds) {
        return things.stream()
                .filter(thing -> kinds.test(thing.kind))
                .map(thing -> new Seen(thing, farM(thing.distanceM(at))))
                .filter(seen -> seen.distanceM <= withinM)
                .sorted(Comparator.comparingDouble(Seen::distanceM));
    }

    private static boolean isThirdParty(Kind kind) {
        return switch (kind) {
            case ROAD, TRACK, TRAIL, RAILWAY, HOUSE, PEOPLE -> true;
            case MAST, WATER, FOREST, PROTECTED -> false;
        };
    }

    private static boolean isInTheWay(Kind kind) {
        return kind == Kind.HOUSE || kind == Kind.PEOPLE || kind == Kind.MAST;
    }

    private Point intoWind(Place place, PlanePoint at) {
        List<Seen> round =
                near(at, reachM, kind -> isThirdParty(kind) || kind == Kind.MAST).toList();
        Optional<Seen> nearest = Optional.empty();
        int hours = 0;
        for (WeatherHour hour : job.weather().hours()) {
            double fromGridRad = hour.windFromTrueRad() - ground.frame().convergenceRad(at);
            Optional<Seen> seen =
                    round.stream()
                            .filter(
                                    one ->
                                            hour.windMPerS() < CALM_M_PER_S
                                                    || reaches(
                                                            one.thing,
                                                            at,
                                                            fromGridRad,
                                                            BESIDE_WIND_RAD))
                            .findFirst();
            hours += seen.isPresent() ? 1 : 0;
            if (seen.isPresent()
                    && (nearest.isEmpty() || seen.get().distanceM < nearest.get().distanceM)) {
                nearest = seen;
            }
        }
        int all = job.weather().hours().size();
        return nearest.isEmpty()
                ? point(
                        Mark.OK,
                        place,
                        "Into the wind, 30° to both sides, nothing of roads, houses, people, masts and"
                                + " wires is within "
                                + (long) Math.floor(reachM)
                                + " m.")
                : point(
                        Mark.NO,
                        place,
                        "Into the wind, 30° to both sides, "
                                + nearest.get().thing.id
                                + " is "
                                + (long) Math.floor(nearest.get().distanceM)
                                + " m away, in "
                                + hours
                                + " of "
                                + all
                                + " hours.");
    }

    /** Whether a part of it lies within the reach and the sector. */
    private boolean reaches(Thing thing, PlanePoint at, double towardsGridRad, double besideRad) {
        if (thing.area && PlaneLine.isInside(at, thing.corners)) {
            return true;
        }
        double withinM = reachM + job.rules().margins().placeSpreadM();
        return thing.sides()
                .filter(side -> side.distanceToM(at) <= withinM)
                .anyMatch(
                        side ->
                                along(side)
                                        .anyMatch(
                                                point ->
                                                        point.distanceToM(at) <= withinM
                                                                && isTowards(
                                                                        at,
                                                                        point,
                                                                        towardsGridRad,
                                                                        besideRad)));
    }

    private static boolean isTowards(
            PlanePoint at, PlanePoint point, double towardsGridRad, double besideRad) {
        double offRad = Units.wrapPiRad(at.bearingToGridRad(point) - towardsGridRad);
        // What is nearer than a step has no bearing worth the name.
        return point.distanceToM(at) < STEP_M || Math.abs(offRad) <= besideRad;
    }

    private static Stream<PlanePoint> along(PlaneLine line) {
        double lengthM = line.from().distanceToM(line.to());
        int steps = (int) Math.max(1, Math.ceil(lengthM / STEP_M));
        return IntStream.rangeClosed(0, steps)
                .mapToObj(
                        i ->
                                line.from()
                                        .towards(
                                                line.from().bearingToGridRad(line.to()),
                                                lengthM * i / steps));
    }

    private Point exclusion(Place place, PlanePoint at) {
        Optional<Seen> nearest =
                near(at, Double.POSITIVE_INFINITY, LaydownLayout::isThirdParty).findFirst();
        String least = (long) Math.ceil(EXCLUSION_M) + " m";
        if (nearest.isEmpty()) {
            return point(
                    Mark.LOOK,
                    place,
                    "The map knows no road, trail, house or people here; they keep at least "
                            + least
                            + " from the rotor.");
        }
        return point(
                nearest.get().distanceM >= EXCLUSION_M ? Mark.OK : Mark.NO,
                place,
                "Nearest of roads, trails, houses and people: "
                        + nearest.get().thing.id
                        + " is "
                        + (long) Math.floor(nearest.get().distanceM)
                        + " m away; people keep at least "
                        + least
                        + " from the rotor.");
    }

    private Point fuel(Place place, PlanePoint at) {
        Optional<Zone> forbidden =
                job.zones().stream()
                        .filter(zone -> zone.rule() == Zone.Rule.NO_FUEL)
                        .filter(zone -> zone.isActiveOn(job.date()))
                        .filter(zone -> PlaneLine.isInside(at, plane(zone.ring())))
                        .findFirst();
        if (place.fuel()) {
            return forbidden
                    .map(
                            zone ->
                                    point(
                                            Mark.NO,
                                            place,
                                            "Fuel is kept here, in zone "
                                                    + zone.id()
                                                    + ", where none is handled."))
                    .orElseGet(() -> point(Mark.OK, place, "Fuel is kept here."));
        }
        return job.places().stream()
                .filter(Place::fuel)
                .min(Comparator.comparingDouble(other -> distanceM(at, other)))
                .map(
                        other ->
                                point(
                                        Mark.LOOK,
                                        place,
                                        "No fuel is kept here; the nearest is at "
                                                + other.id()
                                                + ", which is "
                                                + (long) Math.floor(distanceM(at, other))
                                                + " m away."))
                .orElseGet(() -> point(Mark.NO, place, "No fuel is kept at any place."));
    }

    private double distanceM(PlanePoint at, Place other) {
        return ground.frame().toPlane(other.position()).distanceToM(at);
    }

    private Point vehicle(Place place, PlanePoint at) {
        return near(at, VEHICLE_M, kind -> kind == Kind.ROAD || kind == Kind.TRACK)
                .findFirst()
                .map(
                        seen ->
                                point(
                                        Mark.OK,
                                        place,
                                        "For vehicles: "
                                                + seen.thing.id
                                                + " is "
                                                + (long) Math.floor(seen.distanceM)
                                                + " m away."))
                .orElseGet(
                        () ->
                                point(
                                        Mark.LOOK,
                                        place,
                                        "No road or track of the map comes within "
                                                + (long) VEHICLE_M
                                                + " m: how do loads and fuel get here?"));
    }

    private Point waysOut(Place place, PlanePoint at) {
        List<Thing> standing =
                near(at, reachM, LaydownLayout::isInTheWay).map(Seen::thing).toList();
        boolean[] free = new boolean[HEADINGS];
        int count = 0;
        for (int i = 0; i < HEADINGS; i++) {
            double headingRad = 2 * Math.PI * i / HEADINGS;
            free[i] =
                    standing.stream()
                                    .noneMatch(
                                            thing ->
                                                    reaches(
                                                            thing,
                                                            at,
                                                            headingRad,
                                                            Math.PI / HEADINGS))
                            && !rises(at, headingRad);
            count += free[i] ? 1 : 0;
        }
        int widest = 0;
        int run = 0;
        for (int i = 0; i < 2 * HEADINGS; i++) {
            run = free[i % HEADINGS] ? Math.min(HEADINGS, run + 1) : 0;
            widest = Math.max(widest, run);
        }
        int wideDeg = widest * 360 / HEADINGS;
        return point(
                wideDeg >= 60 ? Mark.OK : wideDeg >= 20 ? Mark.LOOK : Mark.NO,
                place,
                "Ways out over "
                        + (long) Math.ceil(reachM)
                        + " m: "
                        + count
                        + " of "
                        + HEADINGS
                        + " headings are free, the widest opening has "
                        + wideDeg
                        + "°.");
    }

    /** Ground and trees above a slope that begins at the shortest line's length over the laydown. */
    private boolean rises(PlanePoint at, double headingRad) {
        if (!ground.terrain().covers(at.eastM(), at.northM())) {
            return true;
        }
        double hoverM =
                ground.terrain().heightM(at.eastM(), at.northM())
                        + job.machine().lines().stream()
                                .mapToDouble(LineItem::lengthM)
                                .min()
                                .orElse(0);
        for (double farM = 10; farM <= reachM; farM += 10) {
            PlanePoint below = at.towards(headingRad, farM);
            if (!ground.terrain().covers(below.eastM(), below.northM())
                    || topM(below) > hoverM + farM * RISE_RATIO) {
                return true;
            }
        }
        return false;
    }

    private double topM(PlanePoint at) {
        double treesM =
                ground.canopy()
                        .filter(canopy -> canopy.covers(at.eastM(), at.northM()))
                        .map(canopy -> canopy.heightM(at.eastM(), at.northM()))
                        .filter(heightM -> heightM > 0)
                        .map(heightM -> heightM + ground.canopySpreadM())
                        .orElse(0.0);
        return ground.terrain().heightM(at.eastM(), at.northM()) + treesM;
    }

    private record Way(String load, List<PlanePoint> points) {}

    private List<Way> ways(Place place) {
        if (plan.isPresent()) {
            return plan.get().steps().stream()
                    .flatMap(step -> step.rotation().stream())
                    .flatMap(rotation -> rotation.legs().stream())
                    .filter(leg -> leg.from().equals(place.id()) && !leg.carrying().isEmpty())
                    .map(leg -> new Way(leg.carrying().get(0).value(), points(leg)))
                    .toList();
        }
        return job.loads().stream()
                .filter(load -> load.from().equals(place.id()))
                .map(
                        load ->
                                new Way(
                                        load.id().value(),
                                        plane(
                                                List.of(
                                                        place.position(),
                                                        job.getPlace(load.to()).position()))))
                .toList();
    }

    private List<PlanePoint> points(Leg leg) {
        return leg.path().stream().map(point -> ground.frame().toPlane(point.position())).toList();
    }

    private Point waysWithLoad(Place place) {
        TreeSet<String> below = new TreeSet<>();
        TreeSet<String> loads = new TreeSet<>();
        boolean isOverPeople = false;
        for (Way way : ways(place)) {
            for (Thing thing : passedOver(firstPart(way.points))) {
                below.add(thing.id);
                loads.add(way.load);
                isOverPeople |= thing.kind == Kind.HOUSE || thing.kind == Kind.PEOPLE;
            }
        }
        if (below.isEmpty()) {
            return fartherOut(place);
        }
        return point(
                isOverPeople ? Mark.NO : Mark.LOOK,
                place,
                "Ways with a load within "
                        + first()
                        + " m pass over: "
                        + String.join(", ", below)
                        + "; loads: "
                        + loads.stream().limit(6).collect(Collectors.joining(", "))
                        + (loads.size() > 6 ? " …" : "")
                        + ".");
    }

    /** Nothing is passed over near by; what is passed over then, and how near that comes. */
    private Point fartherOut(Place place) {
        PlanePoint at = ground.frame().toPlane(place.position());
        Map<String, Long> nearestM = new TreeMap<>();
        List<Way> ways = ways(place);
        int over = 0;
        for (Way way : ways) {
            List<Thing> passed = passedOver(pieces(way.points, Double.POSITIVE_INFINITY));
            over += passed.isEmpty() ? 0 : 1;
            passed.forEach(
                    thing -> nearestM.put(thing.id, (long) Math.floor(farM(thing.distanceM(at)))));
        }
        boolean isSoon = nearestM.values().stream().anyMatch(farM -> farM < reachM * SOON_RATIO);
        String none =
                "No way with a load passes over roads, trails, railways, houses or people within "
                        + first()
                        + " m";
        return point(
                isSoon ? Mark.LOOK : Mark.OK,
                place,
                nearestM.isEmpty()
                        ? none + "."
                        : none
                                + "; farther out "
                                + over
                                + " of "
                                + ways.size()
                                + " do, these at the nearest: "
                                + nearestM.entrySet().stream()
                                        .map(one -> one.getKey() + " (" + one.getValue() + " m)")
                                        .collect(Collectors.joining(", "))
                                + ".");
    }

    private String first() {
        return String.valueOf((long) Math.ceil(reachM));
    }

    private List<Thing> passedOver(List<PlaneLine> pieces) {
        return things.stream()
                .filter(thing -> isThirdParty(thing.kind) && thing.kind != Kind.TRACK)
                .filter(thing -> pieces.stream().anyMatch(piece -> isOver(piece, thing)))
                .toList();
    }

    private static boolean isOver(PlaneLine piece, Thing thing) {
        return (thing.area && PlaneLine.isInside(piece.from(), thing.corners))
                || thing.sides().anyMatch(side -> side.distanceToM(piece) < STEP_M);
    }

    private List<PlaneLine> firstPart(List<PlanePoint> points) {
        return pieces(points, reachM);
    }

    private static List<PlaneLine> pieces(List<PlanePoint> points, double upToM) {
        List<PlaneLine> pieces = new ArrayList<>();
        double leftM = upToM;
        for (int i = 0; i + 1 < points.size() && leftM > 0; i++) {
            PlanePoint from = points.get(i);
            double lengthM = from.distanceToM(points.get(i + 1));
            PlanePoint to =
                    lengthM <= leftM
                            ? points.get(i + 1)
                            : from.towards(from.bearingToGridRad(points.get(i + 1)), leftM);
            pieces.add(new PlaneLine(from, to));
            leftM -= lengthM;
        }
        return pieces;
    }
}
