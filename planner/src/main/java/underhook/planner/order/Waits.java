package underhook.planner.order;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import underhook.core.finding.FindingCode;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.plan.LeftOut;

/** What of a job's loads must be down before what: by the list, at a place that something leaves last, for a pole. */
final class Waits {
    private final Job job;

    Waits(Job job) {
        this.job = job;
    }

    /** Whether one load must be down before another comes. */
    boolean isBefore(Load first, Load then) {
        return !first.id().equals(then.id())
                && (isListed(first, then) || isBrought(first, then) || makesReady(first, then));
    }

    /** Whether one may come only after another by the list. */
    static boolean isListed(Load first, Load then) {
        return then.after().stream().anyMatch(one -> one.load().equals(first.id()));
    }

    private boolean isBrought(Load first, Load then) {
        return kind(then).lastAtPlace() && first.to().equals(then.from());
    }

    private boolean makesReady(Load first, Load then) {
        boolean eitherFirst = kind(first).standsUp() && kind(then).readyAfterS() > 0;
        return kind(then).standsUp()
                && kind(first).readyAfterS() > 0
                && first.to().equals(then.to())
                && !eitherFirst;
    }

    private LoadKind kind(Load load) {
        return job.getKind(load.kind());
    }

    /**
     * Why a load waits in vain: for one that is not flown, or for itself; empty when it does not.
     *
     * @param flown whether a load is flown
     */
    Optional<LeftOut> inVain(LoadId id, Predicate<LoadId> flown) {
        Load load = job.getLoad(id);
        List<Load> circle = circle(load);
        if (!circle.isEmpty()) {
            return Optional.of(inCircle(circle));
        }
        return load.after().stream()
                .map(Load.After::load)
                .filter(before -> !flown.test(before))
                .findFirst()
                .map(
                        before ->
                                new LeftOut(
                                        id,
                                        FindingCode.ORDER_RULE,
                                        before + ", which must come before it, is left out."));
    }

    /** From a load on each that the one before waits for, back to it; empty when it does not wait for itself. */
    private List<Load> circle(Load load) {
        Map<LoadId, Load> behind = new HashMap<>();
        Deque<Load> open = new ArrayDeque<>(List.of(load));
        while (!open.isEmpty()) {
            Load one = open.remove();
            for (Load before : job.loads()) {
                if (isBefore(before, one) && !behind.containsKey(before.id())) {
                    behind.put(before.id(), one);
                    open.add(before);
                }
            }
        }
        List<Load> circle = new ArrayList<>();
        for (Load one = behind.get(load.id()); one != null; one = behind.get(one.id())) {
            circle.add(one);
            if (one.equals(load)) {
                Collections.reverse(circle);
                return circle;
            }
        }
        return List.of();
    }

    private LeftOut inCircle(List<Load> circle) {
        List<String> waits = new ArrayList<>();
        for (int i = 0; i < circle.size(); i++) {
            Load then = circle.get(i);
            Load first = circle.get((i + 1) % circle.size());
            waits.add(
                    isListed(first, then)
                            ? then.id() + " comes after " + first.id()
                            : isBrought(first, then)
                                    ? then.id() + " leaves " + then.from() + " after " + first.id()
                                    : first.id() + " makes ready for " + then.id());
        }
        return new LeftOut(
                circle.get(0).id(),
                FindingCode.ORDER_RULE,
                "It waits for itself: "
                        + String.join(", ", waits)
                        + ". Mend what must come before what.");
    }
}
