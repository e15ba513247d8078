package underhook.core.ahead;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;
import underhook.core.ahead.PermitRule.Activity;
import underhook.core.geo.GeoPoint;
import underhook.core.job.Hours;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** When a plan lands, hovers, sets down and flies low at some places or over some ground. */
final class PlannedTimes {
    /** A minute before and after what has one moment. @source PRACTICE times are planned to the minute */
    private static final long MOMENT_S = 60;

    /**
     * A time of the job's day by its clock; one that runs over midnight is two.
     *
     * @param begin counted
     * @param end not before the beginning
     */
    record Span(LocalTime begin, LocalTime end) {
        /** Longer on both ends, within the day. */
        Span widened(long byS) {
            int beginS = begin.toSecondOfDay();
            int endS = end.toSecondOfDay();
            return new Span(
                    beginS < byS ? LocalTime.MIN : begin.minusSeconds(byS),
                    endS + byS >= LocalTime.MAX.toSecondOfDay()
                            ? LocalTime.MAX
                            : end.plusSeconds(byS));
        }

        boolean touches(Hours hours) {
            return hours.touches(begin, end);
        }

        boolean isWithin(Hours hours) {
            return hours.covers(begin, end);
        }
    }

    private final Job job;
    private final Predicate<Place> isIn;
    private final Predicate<List<GeoPoint>> isOver;
    private final Map<Activity, List<Span>> spans = new EnumMap<>(Activity.class);

    private PlannedTimes(Job job, Predicate<Place> isIn, Predicate<List<GeoPoint>> isOver) {
        this.job = job;
        this.isIn = isIn;
        this.isOver = isOver;
    }

    /**
     * Of each thing that is done there, in the order of the plan.
     *
     * @param isIn the places that count
     * @param isOver whether a way leads there
     */
    static Map<Activity, List<Span>> of(
            Job job, Plan plan, Predicate<Place> isIn, Predicate<List<GeoPoint>> isOver) {
        PlannedTimes times = new PlannedTimes(job, isIn, isOver);
        plan.steps().forEach(times::add);
        return times.spans;
    }

    private void add(Step step) {
        Stream<Leg> legs =
                Stream.concat(
                        step.legs().stream(),
                        step.rotation().stream().flatMap(turn -> turn.legs().stream()));
        if (legs.anyMatch(
                leg -> isOver.test(leg.path().stream().map(PathPoint::position).toList()))) {
            add(Activity.LOW_FLIGHT, step.startAt(), step.endAt());
        }
        step.rotation().ifPresent(turn -> add(step, turn));
        if (step.kind() == StepKind.CREW_MOVE) {
            landed(step.from(), step.startAt(), step.startAt());
            landed(step.to(), step.endAt(), step.endAt());
        } else if (step.rotation().isEmpty() && step.legs().isEmpty()) {
            landed(step.from(), step.startAt(), step.endAt());
        }
    }

    private void add(Step step, Rotation turn) {
        if (isAt(step.hookedUpAt())) {
            moment(List.of(Activity.HOVER, Activity.LOW_FLIGHT), turn.hookedAt(), turn.hookedAt());
        }
        for (Drop drop : turn.drops()) {
            if (isAt(drop.place())) {
                double setDownS =
                        job.findLoad(drop.load())
                                .map(load -> job.getKind(load.kind()).setDownS())
                                .orElse(0.0);
                Instant over = drop.releasedAt().minusSeconds((long) Math.ceil(setDownS));
                moment(List.of(Activity.UNLOADING), drop.releasedAt(), drop.releasedAt());
                moment(List.of(Activity.HOVER, Activity.LOW_FLIGHT), over, drop.releasedAt());
            }
        }
    }

    private void landed(PlaceId place, Instant begin, Instant end) {
        if (isAt(place)) {
            moment(List.of(Activity.LANDING), begin, end);
        }
    }

    private boolean isAt(PlaceId place) {
        return job.findPlace(place).filter(isIn).isPresent();
    }

    private void moment(List<Activity> activities, Instant begin, Instant end) {
        activities.forEach(
                one -> add(one, begin.minusSeconds(MOMENT_S), end.plusSeconds(MOMENT_S)));
    }

    private void add(Activity activity, Instant begin, Instant end) {
        ZonedDateTime from = begin.atZone(job.zone());
        ZonedDateTime until = end.atZone(job.zone());
        List<Span> all = spans.computeIfAbsent(activity, unused -> new ArrayList<>());
        if (from.toLocalDate().equals(until.toLocalDate())) {
            all.add(new Span(from.toLocalTime(), until.toLocalTime()));
        } else {
            all.add(new Span(from.toLocalTime(), LocalTime.MAX));
            all.add(new Span(LocalTime.MIN, until.toLocalTime()));
        }
    }
}
