package underhook.core.ahead;

import java.time.LocalTime;
import java.time.MonthDay;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
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
import underhook.core.ahead.PlannedTimes.Span;
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
 * <p>The strictest of all letters counts that hold on the day when the plan does it, or without a plan at some hour of
 * the duty. Where no letter holds for some of that time that is said too: silence is no permission. A day seldom runs to
 * the minute, so what comes within half an hour of hours that say no is to be looked at.
 */
final class PermitMatrix {
    /** Days run late or early by as much. @source PRACTICE own choice */
    private static final long NEAR_S = 1800;

    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    /** What is done somewhere: at which places, and when by the plan; no times without one. */
    private record Done(Map<Activity, Set<String>> where, Map<Activity, List<Span>> when) {}

    private final Optional<Plan> plan;
    private final Job job;
    private final Ground ground;
    private final List<PermitRule> rules;
    private final List<List<PlanePoint>> ways;

    private PermitMatrix(Job job, Ground ground, List<PermitRule> rules, Optional<Plan> plan) {
        this.job = job;
        this.ground = ground;
        this.rules = rules;
        this.plan = plan;
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
        List<Point> points = new ArrayList<>();
        matrix.done()
                .forEach(
                        (subject, done) ->
                                done.where()
                                        .forEach(
                                                (activity, unused) ->
                                                        points.add(
                                                                matrix.point(
                                                                        subject, activity, done))));
        points.sort(Comparator.comparing(Point::mark));
        return new Answer(Topic.PERMITS, points);
    }

    private PlanePoint plane(GeoPoint point) {
        return ground.frame().toPlane(point);
    }

    /** What is done where, and at which places; an area that the day does not touch has nothing. */
    private Map<String, Done> done() {
        Map<String, Done> all = new LinkedHashMap<>();
        all.put(PermitRule.ANYWHERE, doneIn(place -> true, way -> true));
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
                        place ->
                                all.putIfAbsent(
                                        place.id().value(), doneIn(place::equals, way -> false)));
        return all;
    }

    private Done doneWithin(List<GeoPoint> outline) {
        List<PlanePoint> ring = outline.stream().map(this::plane).toList();
        return doneIn(
                place -> {
                    PlanePoint at = plane(place.position());
                    double spreadM = job.rules().margins().placeSpreadM();
                    return isWithin(new PlaneLine(at, at), ring, spreadM);
                },
                way -> isOver(way, ring));
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

    private Done doneIn(Predicate<Place> isIn, Predicate<List<PlanePoint>> isOver) {
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
        if (ways.stream().anyMatch(isOver)) {
            done.computeIfAbsent(Activity.LOW_FLIGHT, none -> new TreeSet<>()).add("legs");
        }
        return new Done(
                done,
                plan.map(
                                flown ->
                                        PlannedTimes.of(
                                                job,
                                                flown,
                                                isIn,
                                                way ->
                                                        isOver.test(
                                                                way.stream()
                                                                        .map(this::plane)
                                                                        .toList())))
                        .orElse(Map.of()));
    }

    private Point point(String subject, Activity activity, Done done) {
        List<Span> planned = done.when().getOrDefault(activity, List.of());
        boolean isPlanned = !planned.isEmpty();
        List<Span> exactly = isPlanned ? planned : duty();
        List<Span> nearly =
                isPlanned ? planned.stream().map(span -> span.widened(NEAR_S)).toList() : exactly;
        List<PermitRule> today =
                rules.stream()
                        .filter(rule -> rule.subject().equals(subject))
                        .filter(rule -> rule.activity() == activity)
                        .filter(rule -> rule.holdsOn(MonthDay.from(job.date())))
                        .sorted(Comparator.comparing(PermitRule::ruling).reversed())
                        .toList();
        List<PermitRule> holding =
                today.stream()
                        .filter(
                                rule ->
                                        nearly.stream()
                                                .anyMatch(span -> span.touches(rule.hours())))
                        .toList();
        List<String> said = new ArrayList<>();
        said.add(
                say(activity)
                        + String.join(", ", done.where().getOrDefault(activity, Set.of()))
                        + ".");
        if (isPlanned) {
            said.add("Planned from " + first(planned) + " to " + last(planned) + ".");
        }
        Mark mark = Mark.OK;
        // What a plan does not do now it may do when the day slips.
        for (PermitRule rule : isPlanned ? today : holding) {
            said.add(say(rule));
            Optional<Span> then =
                    exactly.stream().filter(span -> span.touches(rule.hours())).findFirst();
            Mark one = mark(rule);
            if (one == Mark.NO && isPlanned && !rule.hours().isAllDay()) {
                said.add(
                        then.map(
                                        span ->
                                                "The plan does it then, first at "
                                                        + clock(span.begin())
                                                        + ".")
                                .orElse(
                                        holding.contains(rule)
                                                ? "The plan comes within half an hour of that."
                                                : "The plan does it at other hours."));
            }
            Mark near = holding.contains(rule) ? Mark.LOOK : Mark.OK;
            Mark counted = one == Mark.NO && then.isEmpty() ? near : one;
            mark = counted.compareTo(mark) < 0 ? counted : mark;
        }
        if (holding.isEmpty()) {
            said.add(
                    today.isEmpty()
                            ? "No letter holds on this day: ask whose land it is."
                            : "No letter holds at these hours: ask whose land it is.");
            return new Point(Mark.LOOK, subject, said);
        }
        Optional<String> silence = silence(holding, exactly, nearly, isPlanned);
        silence.ifPresent(said::add);
        return new Point(silence.isPresent() && mark == Mark.OK ? Mark.LOOK : mark, subject, said);
    }

    /** What is said where no letter holds for some of the time. */
    private static Optional<String> silence(
            List<PermitRule> holding, List<Span> exactly, List<Span> nearly, boolean isPlanned) {
        Predicate<Span> isSilent =
                span -> holding.stream().noneMatch(rule -> span.isWithin(rule.hours()));
        Optional<Span> first = exactly.stream().filter(isSilent).findFirst();
        if (!isPlanned) {
            return first.map(span -> "For some hours of the duty no letter holds.");
        }
        return first.map(
                        span ->
                                "The plan does it when no letter holds, first at "
                                        + clock(span.begin())
                                        + ".")
                .or(
                        () ->
                                nearly.stream()
                                        .filter(isSilent)
                                        .findFirst()
                                        .map(
                                                span ->
                                                        "The plan comes within half an hour of hours"
                                                                + " in which no letter holds."));
    }

    /** The hours of the duty; the whole day where it runs over midnight. */
    private List<Span> duty() {
        LocalTime begin = job.rules().duty().from().atZone(job.zone()).toLocalTime();
        long wholeS = (long) Math.ceil(job.rules().duty().longestS());
        return begin.toSecondOfDay() + wholeS >= 86_400
                ? List.of(new Span(LocalTime.MIN, LocalTime.MAX))
                : List.of(new Span(begin, begin.plusSeconds(wholeS)));
    }

    private static String first(List<Span> spans) {
        return clock(spans.stream().map(Span::begin).min(Comparator.naturalOrder()).orElseThrow());
    }

    /** Up to the next minute. */
    private static String last(List<Span> spans) {
        LocalTime last = spans.stream().map(Span::end).max(Comparator.naturalOrder()).orElseThrow();
        return clock(last.isAfter(LocalTime.of(23, 59)) ? last : last.plusSeconds(59));
    }

    private static String clock(LocalTime time) {
        return CLOCK.format(time);
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
