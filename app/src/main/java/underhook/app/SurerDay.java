package underhook.app;

import java.io.IOException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import underhook.app.port.ReadJob;
import underhook.core.job.LoadId;
import underhook.core.plan.Plan;
import underhook.planner.odds.DayOdds;
import underhook.planner.order.OpenDay;
import underhook.planner.order.PlanSettings;

/**
 * Looks for loads to leave for another day, so that what stays is in time on as many replayed days as is wished.
 * One lift after the other is taken off, each time the one that gives the most time for each load that is lost with it;
 * each time the rest is flown near the known order. That is a way of choosing, not the least that could be left.
 */
public final class SurerDay {
    /** What is being done while loads are looked for. */
    private static final String LEAVING = "looking for loads to leave for another day";

    /** How often loads are left at most: a day searched anew may be less sure than the one it was looked for on. */
    private static final int ROUNDS = 3;

    /** Days drawn to compare lifts; all are compared over the same ones. */
    private static final int COMPARED = 400;

    private final ReadJob job;
    private final OpenDay day;
    private final double wishedFraction;
    private final BooleanSupplier stop;

    /**
     * What is wished.
     *
     * @param plan with all loads, its day replayed
     * @param inTimeFraction share of the replayed days that are to be in time, in (0, 1)
     * @param stop says true when it must end with what it has
     */
    public record Wish(ReadJob job, Plan plan, double inTimeFraction, BooleanSupplier stop) {}

    /** Plans a day with some loads left for another one. */
    public interface Planning<T> {
        T plan(Set<LoadId> left, Progress progress) throws IOException;

        /** Its plan, replayed; empty where none came of it. */
        Optional<Plan> planOf(T planned);
    }

    /**
     * The surest day of those planned with more and more loads left, until one is as sure as is wished.
     *
     * @return empty when the first plan is as sure already or nothing that is left makes it surer; one without a plan
     *     where the first of them has none
     */
    public static <T> Optional<T> find(Wish wish, Planning<T> planning, Progress progress)
            throws IOException {
        Optional<T> best = Optional.empty();
        double bestFraction = inTimeFraction(wish.plan());
        Set<LoadId> left = new TreeSet<>();
        Plan last = wish.plan();
        for (int round = 0; round < ROUNDS && !isDone(wish, last); round++) {
            Progress part = progress.part((double) round / ROUNDS, 1.0 / ROUNDS);
            part.at(LEAVING, 0);
            Set<LoadId> more = new SurerDay(wish, left).leave(last);
            if (more.isEmpty()) {
                break;
            }
            left.addAll(more);
            T planned = planning.plan(Set.copyOf(left), part);
            Optional<Plan> plan = planning.planOf(planned);
            if (plan.isEmpty()) {
                return best.isPresent() ? best : Optional.of(planned);
            }
            last = plan.get();
            if (inTimeFraction(last) > bestFraction) {
                best = Optional.of(planned);
                bestFraction = inTimeFraction(last);
            }
        }
        return best;
    }

    private static boolean isDone(Wish wish, Plan last) {
        return inTimeFraction(last) >= wish.inTimeFraction() || wish.stop().getAsBoolean();
    }

    static double inTimeFraction(Plan plan) {
        return plan.odds().map(odds -> odds.allInTime().leastFraction()).orElse(1.0);
    }

    /** Opens the day with some loads left; takes as long as finding its ways does. */
    private SurerDay(Wish wish, Set<LoadId> left) {
        this.job = wish.job().leaving(left);
        this.day = new OpenDay(job.job(), job.ground());
        this.wishedFraction = wish.inTimeFraction();
        this.stop = wish.stop();
    }

    /** A day with some lifts taken off. */
    private record Thinned(Plan plan, Set<LoadId> off, double slackS) {
        /** What is gained for each load that is lost against another one. */
        double worthS(Thinned before) {
            int lost = plan.leftOut().size() - before.plan.leftOut().size();
            return (slackS - before.slackS) / Math.max(1, lost);
        }
    }

    /**
     * Loads to leave for another day, those besides that can then not be flown not named; empty when the day is as sure
     * as is wished, or nothing that is taken off makes it surer.
     */
    private Set<LoadId> leave(Plan plan) {
        Thinned now = new Thinned(plan, Set.of(), slackS(plan, DayOdds.REPLAYS));
        while (now.slackS < 0 && !stop.getAsBoolean()) {
            Optional<Thinned> next = next(now);
            if (next.isEmpty()) {
                break;
            }
            now = next.get();
        }
        Set<LoadId> off = now.slackS < 0 ? now.off : withPutBack(plan, now.off);
        Set<LoadId> all = new TreeSet<>(off);
        all.retainAll(loads(plan));
        return all;
    }

    /** What went first was chosen when least was known: each lift is put back that the day is sure enough with. */
    private Set<LoadId> withPutBack(Plan plan, Set<LoadId> taken) {
        Set<LoadId> off = taken;
        for (List<LoadId> hung : lifts(plan)) {
            if (!off.containsAll(hung) || stop.getAsBoolean()) {
                continue;
            }
            Set<LoadId> less = new HashSet<>(off);
            hung.forEach(less::remove);
            // With nothing left the same day would be planned as before.
            if (!less.isEmpty() && slackS(searched(plan, less), DayOdds.REPLAYS) >= 0) {
                off = less;
            }
        }
        return off;
    }

    private Plan searched(Plan plan, Set<LoadId> off) {
        return day.without(plan, off, settings(plan), new OpenDay.Effort(true, false, stop));
    }

    private Optional<Thinned> next(Thinned now) {
        Thinned base = new Thinned(now.plan, now.off, slackS(now.plan, COMPARED));
        Optional<Thinned> best = Optional.empty();
        for (List<LoadId> hung : lifts(now.plan)) {
            if (stop.getAsBoolean()) {
                break;
            }
            Set<LoadId> off = new HashSet<>(now.off);
            off.addAll(hung);
            Plan less = day.without(now.plan, off, settings(now.plan), OpenDay.Effort.FIRST);
            if (less.steps().isEmpty()) {
                continue;
            }
            Thinned thinned = new Thinned(less, off, slackS(less, COMPARED));
            double leastWorthS = best.map(one -> one.worthS(base)).orElse(0.0);
            if (thinned.worthS(base) > leastWorthS) {
                best = Optional.of(thinned);
            }
        }
        return best.map(
                one -> {
                    Plan better = searched(one.plan, one.off);
                    double firstS = slackS(one.plan, DayOdds.REPLAYS);
                    double betterS = slackS(better, DayOdds.REPLAYS);
                    return better.leftOut().size() <= one.plan.leftOut().size() && betterS >= firstS
                            ? new Thinned(better, one.off, betterS)
                            : new Thinned(one.plan, one.off, firstS);
                });
    }

    private double slackS(Plan plan, int replays) {
        return DayOdds.slackS(job.job(), plan, replays, wishedFraction);
    }

    private static PlanSettings settings(Plan plan) {
        return new PlanSettings(
                plan.id(), plan.plannedAt(), plan.seed(), plan.program(), () -> false);
    }

    private static List<List<LoadId>> lifts(Plan plan) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .map(rotation -> rotation.loads())
                .toList();
    }

    private static Set<LoadId> loads(Plan plan) {
        return lifts(plan).stream().flatMap(List::stream).collect(Collectors.toSet());
    }
}
