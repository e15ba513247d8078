package underhook.planner.order;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.planner.search.DayTable;

/** What is done or begun, and until when it keeps people where they are. */
final class DoneSteps {
    private final Job job;
    private final List<Step> steps;

    /** Asked for again and again: what is looked for is found by load, and by place. */
    private final Map<LoadId, List<Rotation>> lifts = new HashMap<>();

    private final Map<PlaceId, List<Drop>> drops = new HashMap<>();

    DoneSteps(Job job, List<Step> steps) {
        this.job = job;
        this.steps = steps;
        steps.stream()
                .flatMap(step -> step.rotation().stream())
                .forEach(
                        turn -> {
                            turn.loads().forEach(id -> lift(id).add(turn));
                            turn.drops().forEach(drop -> dropsAt(drop.place()).add(drop));
                        });
    }

    private List<Rotation> lift(LoadId id) {
        return lifts.computeIfAbsent(id, unused -> new ArrayList<>());
    }

    private List<Drop> dropsAt(PlaceId place) {
        return drops.computeIfAbsent(place, unused -> new ArrayList<>());
    }

    /** Flights that brought a crew to a place, in turn. */
    List<Step> flights(CrewId crew, PlaceId to) {
        return steps.stream()
                .filter(step -> step.kind() == StepKind.CREW_MOVE)
                .filter(step -> step.crew().filter(crew::equals).isPresent())
                .filter(step -> step.to().equals(to))
                .toList();
    }

    /** When whoever receives something must be there; before a pole as long as making ready for it and standing it up takes. */
    Instant neededAt(Drop drop) {
        LoadKind kind = kind(drop.load());
        double readyS =
                drops.getOrDefault(drop.place(), List.of()).stream()
                        .filter(one -> kind.standsUp())
                        .filter(one -> one.releasedAt().isBefore(drop.releasedAt()))
                        .mapToDouble(one -> kind(one.load()).readyAfterS())
                        .max()
                        .orElse(0);
        double standingUpS = kind.standsUp() ? kind.setDownS() : 0;
        double aheadS = Math.max(DayTable.READY_BEFORE_S, readyS + standingUpS);
        return drop.releasedAt().minusMillis((long) Math.ceil(aheadS * 1000));
    }

    private LoadKind kind(LoadId load) {
        return job.getKind(job.getLoad(load).kind());
    }

    /** As it was flown, in as many lifts, one once for each of its loads; none when it was not begun. */
    List<Rotation> flown(Rotation planned) {
        return planned.loads().stream()
                .flatMap(id -> lifts.getOrDefault(id, List.of()).stream())
                .toList();
    }

    /** When a lift keeps nobody at a place any more. */
    Instant doneAt(Rotation turn, PlaceId place, boolean hooks) {
        Instant at = hooks ? turn.hookedAt().plusSeconds(1) : Instant.MIN;
        for (Drop drop : turn.drops()) {
            if (drop.place().equals(place)) {
                at = later(at, freeAfter(drop));
            }
        }
        return at;
    }

    boolean isSetDown(PlaceId place, Instant after, Predicate<Drop> which) {
        return drops.getOrDefault(place, List.of()).stream()
                .filter(drop -> drop.releasedAt().isAfter(after))
                .anyMatch(which);
    }

    /** Until when what is begun needs those who stay at a place: to hook, to receive, to refuel. */
    Instant neededUntil(PlaceId place) {
        Instant until = busyUntil(place);
        for (Step step : steps) {
            boolean hooks =
                    step.rotation()
                            .map(one -> job.getLoad(one.loads().get(0)).from())
                            .filter(place::equals)
                            .isPresent();
            if (hooks) {
                until = later(until, step.rotation().orElseThrow().hookedAt());
            } else if (step.kind() == StepKind.REFUEL && step.from().equals(place)) {
                until = later(until, step.endAt());
            }
        }
        return until;
    }

    /** Until when what is begun is hooked up at a site. */
    Instant hookedUntil(PlaceId place) {
        Instant until = Instant.MIN;
        for (Step step : steps) {
            boolean hooks =
                    job.getPlace(place).isSite()
                            && step.rotation().stream()
                                    .flatMap(one -> one.loads().stream())
                                    .anyMatch(id -> job.getLoad(id).from().equals(place));
            if (hooks) {
                until = later(until, step.rotation().orElseThrow().hookedAt().plusSeconds(1));
            }
        }
        return until;
    }

    Instant busyUntil(PlaceId place) {
        Instant until = Instant.MIN;
        for (Step step : steps) {
            if (step.rotation().isPresent()
                    && step.rotation().get().drops().get(0).place().equals(place)) {
                for (Drop drop : step.rotation().get().drops()) {
                    until = later(until, freeAfter(drop));
                }
            }
        }
        return until;
    }

    /** When those who received something are free again. */
    Instant freeAfter(Drop drop) {
        double busyS = kind(drop.load()).busyAfterS();
        return drop.releasedAt().plusMillis((long) Math.ceil(busyS * 1000));
    }

    static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}
