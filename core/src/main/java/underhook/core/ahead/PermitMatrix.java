package underhook.core.ahead;

import java.time.LocalTime;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;
import underhook.core.ahead.Answer.Topic;
import underhook.core.ahead.PermitRule.Activity;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.PlaceKind;
import underhook.core.plan.Plan;

/**
 * What the day does in each zone, protected area and region, and whether the letters allow it.
 *
 * <p>The strictest of all letters counts that hold on the day at some hour of the duty. Where no letter holds for some
 * of those hours that is said too: silence is no permission.
 */
final class PermitMatrix {
    private final Job job;
    private final Ground ground;
    private final List<PermitRule> rules;
    private final List<List<PlanePoint>> ways;

    private PermitMatrix(Job job, Ground ground, List<PermitRule> rules, Optional<Plan> plan) {
        this.job = job;
        this.ground = ground;
        this.rules = rules;
        this.ways =
                plan.isPresent()
                        ? plan.get().steps().stream()
                                .flatMap(
                                        step ->
                                                Stream.concat(
                                                        step.legs().stream(),
                                                        step.rotation().stream()
                                                                .flatMap(
                                                                        one ->
                                                                                one
                                                                                        .legs()
                                                                                        .stream())))
                                .map(
                                        leg ->
                                                leg.path().stream()
                                                        .map(point -> plane(point.position()))
                                                        .toList())
                                .toList()
                        : job.loads().stream()
                                .map(
                                        load ->
                                                List.of(
                                                        plane(job.getPlace(load.from()).position()),
                                                        plane(job.getPlace(load.to()).position())))
                                .toList();
    }

    static Answer of(Job job, Ground ground, List<PermitRule> rules, Optional<Plan> plan) {
        PermitMatrix matrix = new PermitMatrix(job, ground, rules, plan);
        return new Answer(
                Topic.PERMITS,
                matrix.done().entrySet().stream()
                        .flatMap(
                                done ->
                                        done.getValue().entrySet().stream()
                                                .map(
                                                        one ->
                                                                matrix.point(
                                                                        done.getKey(),
                                                                        one.getKey(),
                                                                        one.getValue())))
                        .sorted(Comparator.comparing(Point::mark))
                        .toList());
    }

    private PlanePoint plane(GeoPoint point) {
        return ground.frame().toPlane(point);
    }

    /** What is done where, and at which places; an area that the day does not touch has nothing. */
    private Map<String, Map<Activity, Set<String>>> done() {
        Map<String, Map<Activity, Set<String>>> all = new LinkedHashMap<>();
        all.put(PermitRule.ANYWHERE, doneIn(place -> true, true));
        job.zones().stream()
                .filter(zone -> zone.isActiveOn(job.date()))
                .forEach(zone -> all.putIfAbsent(zone.id(), doneWithin(zone.ring())));
        job.features().stream()
                .filter(one -> one.kind() == MapFeature.Kind.PROTECTED)
                .filter(one -> one.shape() == MapFeature.Shape.AREA)
                .forEach(one -> all.putIfAbsent(one.id(), doneWithin(one.outline())));
        Set<String> named = rules.stream().map(PermitRule::subject).collect(Collectors.toSet());
        job.places().stream()
                .filter(place -> named.contains(place.id().value()))
                .forEach(
                        place -> all.putIfAbsent(place.id().value(), doneIn(place::equals, false)));
        return all;
    }

    private Map<Activity, Set<String>> doneWithin(List<GeoPoint> outline) {
        List<PlanePoint> ring = outline.stream().map(this::plane).toList();
        return doneIn(
                place -> {
                    PlanePoint at = plane(place.position());
                    double spreadM = job.rules().margins().placeSpreadM();
                    return isWithin(new PlaneLine(at, at), ring, spreadM);
                },
                ways.stream().anyMatch(way -> isOver(way, ring)));
    }

    /** As the ways themselves keep off zones: with half the strip that a track is checked over. */
    private boolean isOver(List<PlanePoint> way, List<PlanePoint> ring) {
        double stripM = job.rules().distances().stripHalfWidthM();
        for (int i = 0; i + 1 < way.size(); i++) {
            if (isWithin(new PlaneLine(way.get(i), way.get(i + 1)), ring, stripM)) {
                return true;
            }
        }
        return false;
    }

    private static boolean isWithin(PlaneLine piece, List<PlanePoint> ring, double nearM) {
        if (PlaneLine.isInside(piece.from(), ring)) {
            return true;
        }
        for (int k = 0; k < ring.size(); k++) {
            PlaneLine side = new PlaneLine(ring.get(k), ring.get((k + 1) % ring.size()));
            if (side.distanceToM(piece) <= nearM) {
                return true;
            }
        }
        return false;
    }

    private Map<Activity, Set<String>> doneIn(Predicate<Place> isIn, boolean isFlown) {
        Map<Activity, Set<String>> done = new EnumMap<>(Activity.class);
        for (Place place : job.places()) {
            if (!isIn.test(place)) {
                continue;
            }
            boolean from = job.loads().stream().anyMatch(one -> one.from().equals(place.id()));
            boolean to = job.loads().stream().anyMatch(one -> one.to().equals(place.id()));
            Set<Activity> here = EnumSet.noneOf(Activity.class);
            if (place.kind() != PlaceKind.SITE || place.landingAsked() || place.standing()) {
                here.add(Activity.LANDING);
            }
            if (from || to) {
                here.addAll(EnumSet.of(Activity.HOVER, Activity.LOW_FLIGHT));
            }
            if (to) {
                here.add(Activity.UNLOADING);
            }
            here.forEach(
                    one ->
                            done.computeIfAbsent(one, none -> new TreeSet<>())
                                    .add(place.id().value()));
        }
        if (isFlown) {
            done.computeIfAbsent(Activity.LOW_FLIGHT, none -> new TreeSet<>()).add("legs");
        }
        return done;
    }

    private Point point(String subject, Activity activity, Set<String> where) {
        LocalTime begin = job.rules().duty().from().atZone(job.zone()).toLocalTime();
        long wholeS = (long) Math.ceil(job.rules().duty().longestS());
        boolean isPastMidnight = begin.toSecondOfDay() + wholeS >= 86_400;
        LocalTime end = isPastMidnight ? LocalTime.MAX : begin.plusSeconds(wholeS);
        LocalTime first = isPastMidnight ? LocalTime.MIN : begin;
        List<PermitRule> holding =
                rules.stream()
                        .filter(rule -> rule.subject().equals(subject))
                        .filter(rule -> rule.activity() == activity)
                        .filter(rule -> rule.holdsOn(MonthDay.from(job.date())))
                        .filter(rule -> rule.hours().touches(first, end))
                        .sorted(Comparator.comparing(PermitRule::ruling).reversed())
                        .toList();
        List<String> said = new ArrayList<>();
        said.add(say(activity) + String.join(", ", where) + ".");
        Mark mark = Mark.OK;
        for (PermitRule rule : holding) {
            Mark one = mark(rule);
            mark = one.compareTo(mark) < 0 ? one : mark;
            said.add(say(rule));
        }
        if (holding.isEmpty()) {
            return new Point(
                    Mark.LOOK,
                    subject,
                    List.of(said.get(0), "No letter holds on this day: ask whose land it is."));
        }
        if (holding.stream().noneMatch(rule -> rule.hours().covers(first, end))) {
            mark = mark == Mark.OK ? Mark.LOOK : mark;
            said.add("For some hours of the duty no letter holds.");
        }
        return new Point(mark, subject, said);
    }

    private static Mark mark(PermitRule rule) {
        return switch (rule.ruling()) {
            case ALLOWED -> Mark.OK;
            case NEEDS_PERMIT -> rule.granted().isBlank() ? Mark.NO : Mark.OK;
            case FORBIDDEN -> Mark.NO;
        };
    }

    private static String say(Activity activity) {
        return switch (activity) {
            case LANDING -> "Landing here: ";
            case HOVER -> "Hovering here: ";
            case LOW_FLIGHT -> "Flying low here: ";
            case UNLOADING -> "Unloading here: ";
        };
    }

    private static String say(PermitRule rule) {
        String until = rule.hours().isAllDay() ? "" : " " + rule.hours().say();
        String what =
                switch (rule.ruling()) {
                    case ALLOWED -> "Allowed";
                    case NEEDS_PERMIT ->
                            rule.granted().isBlank()
                                    ? "Needs a permit: none is stated"
                                    : "Needs a permit: " + rule.granted() + " is at hand";
                    case FORBIDDEN -> "Forbidden";
                };
        return what + until + ", says " + rule.letter() + ".";
    }
}
