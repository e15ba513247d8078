package underhook.planner.order;

import static underhook.planner.order.DoneSteps.later;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * When what is begun of a plan was done.
 *
 * <p>Sure are the lifts that were tapped, in the order in which they were hooked, each with the loads that were tapped
 * and no other; of all else nobody told. It was done
 * at its planned time, shifted by as much as the lift before it was late, and before the lift that it stands ahead of
 * in the plan; where that was hooked sooner, as late as it can have been. A flight lasts as long as ever and no crew is
 * flown before it can have come; waits end first, then stops were shorter. In a wait
 * the engine ran unless somebody told that it was off. On a flight whose crew was said to be elsewhere it was not. What does not fit so was not done: first the
 * flights of crews that lead back to where they began, the last first, then all of it. The time it would have taken
 * counts with the engine running.
 */
final class Past {
    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private static final Set<StepKind> STOPS =
            EnumSet.of(StepKind.REFUEL, StepKind.BREAK, StepKind.LINE_CHANGE);

    /** A lift that was quicker by no more is said by the re-check alone. @source PRACTICE a tap's worth */
    private static final Duration UNSAID = Duration.ofMinutes(1);

    private final Job job;
    private final Plan plan;
    private final Standing standing;
    private final Set<LoadId> held = new HashSet<>();
    private final List<Part> parts = new ArrayList<>();
    private final List<Finding> doubts = new ArrayList<>();
    private final boolean[] taken;
    private final Set<Step> without;
    private Duration behind = Duration.ZERO;
    private int waiting;

    /**
     * A step of the plan with the times as they were.
     *
     * @param hookedAt when a lift was hooked up; of no meaning where nothing is lifted
     * @param behind how much later than planned its loads were let go
     * @param starts whether the engine was planned to be started for it
     * @param running whether the engine ran
     */
    record Part(
            Step planned,
            Instant startAt,
            Instant endAt,
            Instant hookedAt,
            Duration behind,
            boolean starts,
            boolean running) {
        Instant releasedAt() {
            return planned.rotation().map(turn -> released(turn).plus(behind)).orElse(startAt);
        }

        private Part until(Instant end) {
            return new Part(planned, startAt, end, hookedAt, behind, starts, running);
        }
    }

    /** When a step was; when a lift was hooked up, or of no meaning where nothing is lifted. */
    private record When(Instant startAt, Instant endAt, Instant hookedAt) {}

    /** What hung of a step of the plan, by index, and how it was told. */
    private record Told(int at, List<LoadId> hung, Standing.Done done) {}

    /** Steps of the plan, by index, and when each begins. */
    private record Laid(List<Integer> steps, List<Instant> starts, boolean shorter) {}

    /**
     * @param without flights of crews of the plan on which they were not, wherever they were planned to go
     */
    Past(Job job, Plan plan, Standing standing, Set<Step> without) {
        this.without = Set.copyOf(without);
        this.job = job;
        this.plan = plan;
        this.standing = standing;
        this.taken = new boolean[plan.steps().size()];
        if (standing.log() == Standing.Log.NOT_BEGUN) {
            return;
        }
        List<Told> told = told();
        told.forEach(this::lift);
        int next = told.isEmpty() ? 0 : told.get(told.size() - 1).at() + 1;
        if (IntStream.range(0, next).noneMatch(this::isAwaited)) {
            goOn(next);
        }
        waitUntilNow();
    }

    List<Part> parts() {
        return List.copyOf(parts);
    }

    List<Finding> doubts() {
        return List.copyOf(doubts);
    }

    /** Whether nothing was begun since some time. */
    boolean waits() {
        return waiting > 0;
    }

    /** How many of the last parts are that wait. */
    int waiting() {
        return waiting;
    }

    /** As planned; a flight of a crew that was not on it is an empty way, and takes as long. */
    private Step step(int at) {
        Step step = plan.steps().get(at);
        return without.contains(step) ? empty(step) : step;
    }

    private static Step empty(Step flight) {
        return new Step(
                StepKind.POSITION,
                flight.from(),
                flight.to(),
                flight.startAt(),
                flight.endAt(),
                flight.fuelStartKg(),
                flight.fuelEndKg(),
                flight.lineLengthM(),
                flight.engineRunning(),
                Optional.empty(),
                Optional.empty(),
                flight.legs(),
                flight.because());
    }

    /** What was tapped as hooked, each load once, by the lifts that it was planned in, in the order of hook-up. */
    private List<Told> told() {
        List<Told> all = new ArrayList<>();
        for (Standing.Done done : standing.done()) {
            for (int at = 0; at < taken.length; at++) {
                List<LoadId> hung =
                        loads(at).stream()
                                .filter(done.loads()::contains)
                                .filter(held::add)
                                .toList();
                if (!hung.isEmpty()) {
                    all.add(new Told(at, hung, done));
                }
            }
        }
        all.sort(Comparator.comparing(told -> told.done().hookedAt()));
        return all;
    }

    private List<LoadId> loads(int at) {
        return step(at).rotation().map(Rotation::loads).orElse(List.of());
    }

    /** Whether a lift was passed over that may still be flown: nobody knows then what comes next. */
    private boolean isAwaited(int at) {
        return loads(at).stream()
                .anyMatch(id -> !held.contains(id) && !standing.dropped().contains(id));
    }

    private void lift(Told told) {
        int at = told.at();
        Standing.Done done = told.done();
        Step step = Hung.of(job, step(at), told.hung());
        Rotation turn = step.rotation().orElseThrow();
        Instant begin = done.hookedAt().minus(Duration.between(step.startAt(), turn.hookedAt()));
        List<Integer> pending =
                IntStream.range(0, at)
                        .filter(i -> !taken[i] && step(i).rotation().isEmpty())
                        .boxed()
                        .toList();
        int before = at;
        while (before > 0 && step(before - 1).rotation().isEmpty()) {
            before--;
        }
        int first = before;
        List<Integer> own = pending.stream().filter(i -> i >= first).toList();
        Laid ahead =
                laid(pending, begin)
                        .filter(one -> !one.shorter())
                        .or(() -> laid(own, begin))
                        .or(() -> withoutFlights(own, begin))
                        .orElse(new Laid(List.of(), List.of(), false));
        doubt(step, done, own, ahead);
        take(ahead, begin);
        Instant free = free();
        if (!parts.isEmpty() && free.isAfter(begin)) {
            Part last = parts.get(parts.size() - 1);
            Instant released = last.releasedAt();
            Instant hooked = done.hookedAt();
            free = later(begin, released.isAfter(hooked) ? hooked : released);
            parts.set(parts.size() - 1, last.until(free));
        }
        Instant planned = released(turn);
        Duration hookBehind = Duration.between(turn.hookedAt(), done.hookedAt());
        // What nobody told to be let go still hangs.
        Instant letGo = done.releasedAt().orElse(later(planned.plus(hookBehind), standing.at()));
        behind = Duration.between(planned, letGo);
        Instant start = parts.isEmpty() ? begin : free;
        Instant end = later(step.endAt().plus(behind), start);
        add(at, step, new When(start, end, done.hookedAt()));
    }

    /** When the machine is free; before the first lift when the day can have begun. */
    private Instant free() {
        if (!parts.isEmpty()) {
            return parts.get(parts.size() - 1).endAt();
        }
        Instant duty = job.rules().duty().from();
        Instant first = step(0).startAt();
        return duty.isBefore(first) ? duty : first;
    }

    /** The steps as late as they can have been before a time, but not later than planned; empty when they do not fit. */
    private Optional<Laid> laid(List<Integer> steps, Instant begin) {
        int count = steps.size();
        Instant[] whole = new Instant[count];
        Instant[] shortest = new Instant[count];
        Instant late = begin;
        Instant latest = begin;
        for (int k = count - 1; k >= 0; k--) {
            Step step = step(steps.get(k));
            late = late.minus(lasts(step));
            latest = latest.minus(STOPS.contains(step.kind()) ? Duration.ZERO : lasts(step));
            whole[k] = late;
            shortest[k] = latest;
        }
        List<Instant> starts = new ArrayList<>();
        List<Part> flown = new ArrayList<>(parts);
        Instant soonest = free();
        boolean shorter = false;
        for (int k = 0; k < count; k++) {
            Step step = step(steps.get(k));
            Optional<Instant> can = step.crew().map(crew -> soonest(crew, step, flown));
            soonest = later(soonest, can.orElse(soonest));
            if (shortest[k].isBefore(soonest)) {
                return Optional.empty();
            }
            Instant wanted = later(step.startAt().plus(behind), soonest);
            Instant start = later(soonest, whole[k]);
            start = start.isAfter(wanted) ? wanted : start;
            shorter |= whole[k].isBefore(soonest);
            starts.add(start);
            flown.add(part(steps.get(k), step, new When(start, start.plus(lasts(step)), start)));
            soonest = start.plus(lasts(step));
            if (STOPS.contains(step.kind()) && k + 1 < count && shortest[k + 1].isBefore(soonest)) {
                soonest = shortest[k + 1];
            }
        }
        return Optional.of(new Laid(steps, starts, shorter));
    }

    /** Without flights of crews that lead back to where they began, the last ones left out first. */
    private Optional<Laid> withoutFlights(List<Integer> own, Instant begin) {
        List<Integer> left = new ArrayList<>(own);
        for (int k = own.size() - 1; k >= 0; k--) {
            Step flight = step(own.get(k));
            int back = k;
            while (back < own.size() && !step(own.get(back)).to().equals(flight.from())) {
                back++;
            }
            boolean crews = plan.steps().get(own.get(k)).kind() == StepKind.CREW_MOVE;
            if (crews && back < own.size()) {
                left.removeAll(own.subList(k, back + 1));
                Optional<Laid> fits = laid(left, begin);
                if (fits.isPresent()) {
                    return fits;
                }
            }
        }
        return Optional.empty();
    }

    private void take(Laid ahead, Instant begin) {
        for (int k = 0; k < ahead.steps().size(); k++) {
            int at = ahead.steps().get(k);
            Step step = step(at);
            Instant start = ahead.starts().get(k);
            Instant next = k + 1 < ahead.steps().size() ? ahead.starts().get(k + 1) : begin;
            Instant end = start.plus(lasts(step));
            if (step.kind() == StepKind.WAIT) {
                end = later(start, step.endAt().plus(behind));
            }
            add(at, step, new When(start, end.isAfter(next) ? next : end, start));
        }
    }

    /** Least time of a step that was planned: a wait may end at any time. */
    private static Duration lasts(Step step) {
        return step.kind() == StepKind.WAIT
                ? Duration.ZERO
                : Duration.between(step.startAt(), step.endAt());
    }

    /** When a crew can be where a flight begins at the soonest; never when it was not flown to where it set out. */
    private Instant soonest(CrewId id, Step flight, List<Part> flown) {
        Instant at =
                job.crews().stream()
                        .filter(crew -> crew.id().equals(id))
                        .map(Crew::availableFrom)
                        .findFirst()
                        .orElseThrow();
        List<CrewStay> lines =
                plan.crews().stream()
                        .filter(stay -> stay.crew().equals(id))
                        .sorted(Comparator.comparing(CrewStay::fromAt))
                        .toList();
        List<Part> moves =
                flown.stream()
                        .filter(part -> part.planned().crew().equals(Optional.of(id)))
                        .toList();
        long before =
                plan.steps().subList(0, plan.steps().indexOf(flight)).stream()
                        .filter(step -> step.crew().equals(Optional.of(id)))
                        .count();
        int moved = 0;
        for (CrewStay stay : lines) {
            if (stay.doing().startsWith("flown")) {
                if (moved == before) {
                    return at;
                }
                at = moved < moves.size() ? moves.get(moved).endAt() : Instant.MAX;
                moved++;
            } else if (stay.isOnTheWay() && at.isBefore(Instant.MAX)) {
                at = at.plus(Duration.between(stay.fromAt(), stay.toAt()));
            } else {
                at = later(at, worked(stay, flown));
            }
        }
        return at;
    }

    /** When the last thing that was planned for somebody at a place, and is done, kept them there no more. */
    private Instant worked(CrewStay stay, List<Part> flown) {
        Instant last = Instant.MIN;
        for (Part part : flown) {
            Rotation turn = part.planned().rotation().orElse(null);
            for (Drop drop : turn == null ? List.<Drop>of() : turn.drops()) {
                if (drop.place().equals(stay.place()) && isDuring(stay, drop.releasedAt())) {
                    double busyS = job.getKind(job.getLoad(drop.load()).kind()).busyAfterS();
                    Instant free = drop.releasedAt().plus(part.behind());
                    last = later(last, free.plusMillis((long) Math.ceil(busyS * 1000)));
                }
            }
            if (turn != null && isDuring(stay, turn.hookedAt()) && hooksAt(turn, stay.place())) {
                last = later(last, part.hookedAt());
            }
        }
        return last;
    }

    private boolean hooksAt(Rotation turn, PlaceId place) {
        return turn.loads().stream().anyMatch(id -> job.getLoad(id).from().equals(place));
    }

    private static boolean isDuring(CrewStay stay, Instant at) {
        return !at.isBefore(stay.fromAt()) && !at.isAfter(stay.toAt());
    }

    /** What follows the last lift, as planned, up to now. */
    private void goOn(int next) {
        for (int at = next; at < taken.length; at++) {
            Step step = step(at);
            boolean tells = standing.log() == Standing.Log.AS_PLANNED || step.rotation().isEmpty();
            Instant start = step.startAt().plus(behind);
            start = parts.isEmpty() ? start : later(start, free());
            if (standing.log() == Standing.Log.KEPT && step.crew().isPresent()) {
                start = later(start, soonest(step.crew().get(), step, parts));
            }
            if (!tells || !start.isBefore(standing.at())) {
                return;
            }
            if (without.contains(plan.steps().get(at)) && !isLiftBegunAfter(at)) {
                unflown(at, "as not made");
                return;
            }
            Instant end = start.plus(Duration.between(step.startAt(), step.endAt()));
            if (step.kind() == StepKind.WAIT) {
                end = later(start, step.endAt().plus(behind));
                end = end.isAfter(standing.at()) ? standing.at() : end;
            }
            Instant began = start;
            Instant hookedAt =
                    step.rotation()
                            .map(turn -> turn.hookedAt())
                            .map(hook -> began.plus(Duration.between(step.startAt(), hook)))
                            .orElse(start);
            behind = step.rotation().isPresent() ? Duration.between(step.endAt(), end) : behind;
            add(at, step, new When(start, end, hookedAt));
        }
    }

    /** Whether a lift counts as begun by now that the plan has after a step. */
    private boolean isLiftBegunAfter(int at) {
        return standing.log() == Standing.Log.AS_PLANNED
                && IntStream.range(at + 1, taken.length)
                        .mapToObj(this::step)
                        .filter(step -> step.startAt().plus(behind).isBefore(standing.at()))
                        .anyMatch(step -> step.rotation().isPresent());
    }

    /** Says what a flight counts as on which its crew was not. */
    private void unflown(int at, String counts) {
        Step flight = plan.steps().get(at);
        CrewId crew = flight.crew().orElseThrow();
        doubts.add(
                Finding.of(
                        FindingCode.CREW_ABSENT,
                        Severity.CAUTION,
                        crew.value(),
                        "plan",
                        crew
                                + " is said to be elsewhere: its flight to "
                                + flight.to()
                                + " at "
                                + CLOCK.format(flight.startAt().atZone(job.zone()))
                                + " counts "
                                + counts
                                + "."));
    }

    /** Time of which nobody told anything may lie between two parts. */
    private void add(int at, Step as, When when) {
        Instant start = when.startAt();
        taken[at] = true;
        if (without.contains(plan.steps().get(at))) {
            unflown(at, "as flown without it");
        }
        if (parts.isEmpty() && at > 0 && step(0).startAt().isBefore(start)) {
            untold(step(0).startAt(), start);
        } else if (!parts.isEmpty() && free().isBefore(start)) {
            untold(free(), start);
        }
        if (as.kind() == StepKind.WAIT && standing.log() == Standing.Log.KEPT) {
            untold(start, when.endAt());
        } else {
            parts.add(part(at, as, when));
        }
    }

    private Part part(int at, Step step, When when) {
        Instant start = when.startAt();
        Instant end = when.endAt();
        boolean starts = step.engineRunning() && (at == 0 || !step(at - 1).engineRunning());
        return new Part(
                step,
                start,
                end,
                when.hookedAt(),
                behind,
                starts,
                step.engineRunning() || standing.ran(start, end));
    }

    /** Of what lies between two parts: where nobody told that the engine was off it may have run. */
    private void untold(Instant from, Instant to) {
        Instant since = from;
        for (Standing.Spell spell : standing.stood()) {
            Instant off = later(since, spell.from());
            Instant on = spell.to().isAfter(to) ? to : spell.to();
            if (off.isBefore(on)) {
                if (since.isBefore(off)) {
                    idle(since, off, true);
                }
                idle(off, on, false);
                since = on;
            }
        }
        if (since.isBefore(to)) {
            idle(since, to, true);
        }
    }

    private void idle(Instant from, Instant to, boolean running) {
        boolean first = parts.isEmpty();
        Step by = first ? step(0) : parts.get(parts.size() - 1).planned();
        PlaceId place = first ? by.from() : by.to();
        double fuelKg = first ? by.fuelStartKg() : by.fuelEndKg();
        Step none =
                new Step(
                        StepKind.WAIT,
                        place,
                        place,
                        from,
                        from,
                        fuelKg,
                        fuelKg,
                        by.lineLengthM(),
                        running,
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        "waited");
        parts.add(new Part(none, from, to, from, Duration.ZERO, false, running));
    }

    /**
     * The time until now in which nothing was begun is a wait: with the engine off where that was told, or where the
     * plan is over and was flown as planned.
     */
    private void waitUntilNow() {
        if (parts.isEmpty() || !free().isBefore(standing.at())) {
            return;
        }
        Step before = parts.get(parts.size() - 1).planned();
        boolean planned =
                standing.log() == Standing.Log.AS_PLANNED && job.getPlace(before.to()).standing();
        Instant off = planned ? free() : standing.offSince().orElse(standing.at());
        off = later(free(), off.isAfter(standing.at()) ? standing.at() : off);
        int count = parts.size();
        if (free().isBefore(off)) {
            idle(free(), off, true);
        }
        if (off.isBefore(standing.at())) {
            idle(off, standing.at(), false);
        }
        waiting = parts.size() - count;
    }

    /** Says what a lift was hooked too soon for, and what that leaves undone. */
    private void doubt(Step lift, Standing.Done done, List<Integer> own, Laid ahead) {
        Rotation turn = lift.rotation().orElseThrow();
        Instant can = free();
        for (int one : own) {
            Step step = step(one);
            Instant there = step.crew().map(crew -> soonest(crew, step, parts)).orElse(can);
            // Who cannot be there at all is among what is not done.
            can = there.isBefore(Instant.MAX) ? later(can, there) : can;
            can = can.plus(lasts(step));
        }
        can = can.plus(Duration.between(lift.startAt(), turn.hookedAt()));
        boolean all = ahead.steps().containsAll(own);
        if (all && !can.isAfter(done.hookedAt().plus(UNSAID))) {
            return;
        }
        String undone =
                own.stream()
                        .filter(one -> !ahead.steps().contains(one))
                        .map(this::step)
                        .filter(step -> step.kind() != StepKind.WAIT)
                        .map(Past::words)
                        .collect(Collectors.joining(", "));
        String what =
                undone.isEmpty()
                        ? ahead.shorter()
                                ? "Its stops count as shorter"
                                        + (ahead.steps().stream().anyMatch(this::isRefuelling)
                                                ? ", with no more fuel than there was time for. Perhaps"
                                                        + " tell what the gauge reads."
                                                : ".")
                                : "One tap is wrong, or the machine was quicker than its ways."
                        : "Counted as not done: " + undone + ".";
        String load = turn.loads().get(0).value();
        String sooner = minutes(Duration.between(done.hookedAt(), later(can, done.hookedAt())));
        doubts.add(
                new Finding(
                        FindingCode.STEP_TIME,
                        Severity.CAUTION,
                        load,
                        sooner,
                        "0",
                        "min",
                        "plan",
                        load
                                + " was tapped as hooked "
                                + sooner
                                + " min sooner than what the plan has before it can be done. "
                                + what));
    }

    private boolean isRefuelling(int at) {
        return step(at).kind() == StepKind.REFUEL;
    }

    private static String words(Step step) {
        return switch (step.kind()) {
            case CREW_MOVE -> "crew " + step.crew().orElseThrow() + " flown to " + step.to();
            case POSITION -> "the way to " + step.to();
            case REFUEL -> "fuel at " + step.from();
            case LINE_CHANGE -> "the line at " + step.from();
            case BREAK -> "a break at " + step.from();
            case ROTATION, WAIT -> step.kind().toString();
        };
    }

    private static String minutes(Duration span) {
        return BigDecimal.valueOf(span.toMillis())
                .divide(BigDecimal.valueOf(60_000), 1, RoundingMode.CEILING)
                .toPlainString();
    }

    private static Instant released(Rotation turn) {
        return turn.drops().get(turn.drops().size() - 1).releasedAt();
    }
}
