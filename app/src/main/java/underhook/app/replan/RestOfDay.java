package underhook.app.replan;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BooleanSupplier;
import underhook.app.PlanDay;
import underhook.app.port.ReadJob;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Plan;
import underhook.core.plan.ToldPlace;
import underhook.core.plan.VerifierReport;
import underhook.planner.order.OpenDay;
import underhook.planner.order.PlanSettings;
import underhook.planner.order.Standing;

/**
 * A day that is being flown: opened once, asked each time something changes. Safe for threads; one question
 * at a time.
 */
public final class RestOfDay {
    /** Hours of the forecast are no shorter, as a rule. */
    /** By so much a load turns out heavier that is weighed. */
    private static final double HEAVIER_FACTOR = 1.02;

    private static final Duration LATER = Duration.ofMinutes(30);

    private static final PlanSettings UNSEEN =
            new PlanSettings("ready", Instant.EPOCH, 1, "", () -> false);

    private final ReadJob asRead;
    private final PlanDay.Checking checking;
    private Plan record;
    private List<Change> modelled = List.of();
    private ReadJob job;
    private OpenDay open;
    private Instant named = Instant.EPOCH;

    /** How long an answer may take, besides its re-check. */
    public enum Patience {
        /** The known order, flown from how the day stands. */
        FIRST(Duration.ZERO),
        /** The best within a second. */
        BETTER(Duration.ofSeconds(1)),
        /** The best within ten seconds, and what no order ends before. */
        BOUND(Duration.ofSeconds(10));

        private final Duration longest;

        Patience(Duration longest) {
            this.longest = longest;
        }
    }

    /**
     * Opens a day; takes as long as finding its ways does.
     *
     * @param record the plan that is flown, re-checked
     */
    public RestOfDay(ReadJob job, Plan record, PlanDay.Checking checking) {
        this.asRead = job;
        this.job = job;
        this.record = record;
        this.checking = checking;
        this.open = new OpenDay(job.job(), job.ground());
    }

    /**
     * Makes ready what the first answers ask for, so that they need not be waited for: the whole day flown later
     * and later, and what is left of it from hour to hour, as planned and after what days bring most, each as an order
     * with its re-check, which keep what they find of ways and legs. To be called in the background; a question waits
     * for one of these orders at most.
     *
     * @param stop says true when no more is to be made ready
     */
    public void prepare(BooleanSupplier stop) {
        Instant start = plan().steps().isEmpty() ? asRead.job().rules().duty().from() : firstAt();
        Instant end = plan().summary().finishAt();
        ready(Now.notBegun(start));
        for (Instant at = start; at.isBefore(end) && !stop.getAsBoolean(); at = at.plus(LATER)) {
            ready(Now.asPlanned(at, OptionalDouble.empty()));
        }
        for (Instant at = start; at.isBefore(end) && !stop.getAsBoolean(); at = at.plus(LATER)) {
            ready(Now.notBegun(at));
        }
        for (Instant at = start; at.isBefore(end) && !stop.getAsBoolean(); at = at.plus(LATER)) {
            for (Change change : usual(at)) {
                ready(Now.asPlanned(at, OptionalDouble.empty()), List.of(change));
            }
        }
        Change wind = new Change.WindEarlier(LATER);
        for (Instant at = start; at.isBefore(end) && !stop.getAsBoolean(); at = at.plus(LATER)) {
            ready(Now.asPlanned(at, OptionalDouble.empty()), List.of(wind));
        }
        asRead();
    }

    /** What days bring most: whoever comes to the next lifts is late, their place is closed, or what hangs is heavier. */
    private List<Change> usual(Instant at) {
        List<Change> all = new ArrayList<>();
        asRead.job().crews().stream()
                .filter(crew -> !crew.stays())
                .forEach(crew -> all.add(new Change.CrewLate(crew.id(), at.plus(LATER))));
        plan().steps().stream()
                .filter(step -> step.startAt().isAfter(at))
                .flatMap(step -> step.rotation().stream())
                .limit(1)
                .forEach(
                        next -> {
                            all.add(new Change.PlaceClosed(next.drops().get(0).place()));
                            heavier(next.loads().get(0)).ifPresent(all::add);
                        });
        return all;
    }

    private Optional<Change> heavier(LoadId id) {
        OptionalDouble massKg = asRead.job().getLoad(id).massKg();
        return massKg.isPresent()
                ? Optional.of(new Change.Weighed(id, HEAVIER_FACTOR * massKg.getAsDouble()))
                : Optional.empty();
    }

    private Instant firstAt() {
        return plan().steps().get(0).startAt();
    }

    private void ready(Now now) {
        ready(now, List.of());
    }

    private synchronized void ready(Now now, List<Change> changes) {
        model(now, changes);
        OpenDay.Reordered found =
                open.reorder(record, standing(now, changes), UNSEEN, OpenDay.Effort.FIRST);
        checking.check(job, found.plan());
    }

    private synchronized void asRead() {
        model(Now.asPlanned(Instant.EPOCH, OptionalDouble.empty()), List.of());
    }

    /** The plan of record, as last accepted. */
    public synchronized Plan plan() {
        return record;
    }

    /**
     * A new order for what is left; nothing counts until it is accepted.
     *
     * @param changes all that is other than in the files, accepted with an earlier order or not
     * @param stop says true when the search must end with what it has
     */
    public synchronized Proposal propose(
            Now now, List<Change> changes, Patience patience, BooleanSupplier stop) {
        long startNanos = System.nanoTime();
        model(now, changes);
        long untilNanos = System.nanoTime() + patience.longest.toNanos();
        boolean searches = patience != Patience.FIRST;
        OpenDay.Effort effort =
                new OpenDay.Effort(
                        searches,
                        patience == Patience.BOUND,
                        () -> stop.getAsBoolean() || System.nanoTime() >= untilNanos);
        OpenDay.Reordered found =
                open.reorder(record, standing(now, changes), settings(now, changes), effort);
        VerifierReport report = checking.check(job, found.plan());
        Comparison beside = new Comparison(record, found.plan(), found.frozenSteps(), job.job());
        return new Proposal(
                found.plan(),
                job,
                report,
                beside.sentences(),
                found.frozenSteps(),
                beside.moved(),
                beside.leftOut(),
                found.plan().summary().anew().orElseThrow(),
                found.plan().summary().finishBoundAt(),
                Duration.ofNanos(System.nanoTime() - startNanos));
    }

    /**
     * Makes a proposal the plan of record.
     *
     * @throws IllegalArgumentException when the re-check refuses it
     */
    public synchronized void accept(Proposal proposal) {
        if (!proposal.isVerified()) {
            throw new IllegalArgumentException(
                    "The re-check refuses it: " + proposal.broken().get(0).message());
        }
        record = proposal.plan();
    }

    private PlanSettings settings(Now now, List<Change> changes) {
        // Two orders of one second have each an id of their own.
        named = now.at().isAfter(named) ? now.at() : named.plusSeconds(1);
        return new PlanSettings(
                Proposal.id(named, record.id() + now + changes),
                now.at(),
                record.seed(),
                record.program(),
                () -> false);
    }

    private static Standing standing(Now now, List<Change> changes) {
        List<ToldPlace> told = new ArrayList<>();
        Map<CrewId, Instant> late = new HashMap<>();
        Set<PlaceId> closed = new HashSet<>();
        Set<LoadId> dropped = new HashSet<>();
        for (Change change : changes) {
            if (change instanceof Change.CrewLate one) {
                late.put(one.crew(), one.until());
            } else if (change instanceof Change.CrewHere one) {
                // Who is here is late no more.
                late.remove(one.crew());
                told.add(new ToldPlace(one.crew(), one.place(), one.at()));
            } else if (change instanceof Change.PlaceClosed one) {
                closed.add(one.place());
            } else if (change instanceof Change.LoadDropped one) {
                dropped.add(one.load());
            }
        }
        return new Standing(
                now.at(),
                now.log(),
                now.done().stream()
                        .map(
                                one ->
                                        new Standing.Done(
                                                one.loads(), one.hookedAt(), one.releasedAt()))
                        .toList(),
                now.fuelKg(),
                told,
                late,
                closed,
                dropped,
                now.engine());
    }

    /** Works the day's ways and limits out anew when a change asks for that. */
    private void model(Now now, List<Change> changes) {
        List<Change> wanted = changes.stream().filter(Change::isOfTheModel).toList();
        if (wanted.equals(modelled)) {
            return;
        }
        Job changed = ChangedJob.after(asRead.job(), now.at(), wanted);
        job = asRead.with(changed);
        open = open.with(changed);
        modelled = wanted;
    }
}
