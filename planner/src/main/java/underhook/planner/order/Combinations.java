package underhook.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.planner.search.HookChoices;

/**
 * Every way of putting the loads of a day on hooks together: those that may share the hook, lie at one place and go
 * to one place, each listed with each, not too heavy in sum.
 *
 * <p>The day's own trips keep their numbers; the trips of other ways follow.
 */
final class Combinations {
    /** So many loads may hang together in 203 ways; of more only the day's own way is known. */
    private static final int MOST_LOADS = 6;

    private final DayModel model;
    private final List<Trip> trips;
    private final Map<Set<LoadId>, Optional<Integer>> numbers = new HashMap<>();
    private final List<List<List<Integer>>> groups = new ArrayList<>();
    private boolean all = true;

    /**
     * @param own the day's trips
     * @param isFlown whether one of them is flown, by its number
     */
    Combinations(DayModel model, List<Trip> own, IntPredicate isFlown) {
        this.model = model;
        this.trips = new ArrayList<>(own);
        List<Integer> left =
                new ArrayList<>(IntStream.range(0, own.size()).filter(isFlown).boxed().toList());
        left.forEach(k -> numbers.put(Set.copyOf(own.get(k).ids()), Optional.of(k)));
        while (!left.isEmpty()) {
            addGroup(takeGroup(left));
        }
    }

    /** The day's own trips and after them those of other ways. */
    List<Trip> trips() {
        return List.copyOf(trips);
    }

    HookChoices hooks() {
        return new HookChoices(groups);
    }

    /** Whether no way was left out. */
    boolean isAll() {
        return all;
    }

    /** Trips of which some load may hang with one of another, and so on. */
    private List<Integer> takeGroup(List<Integer> left) {
        List<Integer> group = new ArrayList<>(List.of(left.remove(0)));
        for (int i = 0; i < group.size(); i++) {
            Trip one = trips.get(group.get(i));
            List<Integer> more =
                    left.stream().filter(k -> isAnyTogether(one, trips.get(k))).toList();
            group.addAll(more);
            left.removeAll(more);
        }
        return group;
    }

    private boolean isAnyTogether(Trip one, Trip other) {
        return one.loads().stream()
                .anyMatch(a -> other.loads().stream().anyMatch(b -> maySharePair(a, b)));
    }

    private boolean maySharePair(Load one, Load other) {
        return OnHook.mayShare(model, one, other)
                && model.liftMassKg(one) + model.liftMassKg(other)
                        <= model.rules.masses().combineMassKg();
    }

    private void addGroup(List<Integer> own) {
        List<Load> loads = own.stream().flatMap(k -> trips.get(k).loads().stream()).toList();
        List<List<Integer>> ways = new ArrayList<>(List.of(own));
        if (loads.size() > MOST_LOADS) {
            all = false;
        } else if (loads.size() > 1) {
            addWays(loads, List.of(), ways);
        }
        groups.add(ways);
    }

    /** Puts the first of what is left on a hook, alone and with all that may hang with it. */
    private void addWays(List<Load> left, List<Integer> begun, List<List<Integer>> ways) {
        if (left.isEmpty()) {
            List<Integer> way = begun.stream().sorted().toList();
            if (!way.equals(ways.get(0).stream().sorted().toList())) {
                ways.add(way);
            }
            return;
        }
        List<Load> others = left.subList(1, left.size());
        for (int chosen = 0; chosen < 1 << others.size(); chosen++) {
            List<Load> hung = new ArrayList<>(List.of(left.get(0)));
            List<Load> rest = new ArrayList<>();
            for (int i = 0; i < others.size(); i++) {
                ((chosen >> i & 1) == 1 ? hung : rest).add(others.get(i));
            }
            Optional<Integer> trip = number(hung);
            // What waits for a load is held to wait for it alone: let go soonest.
            all &= trip.isPresent() || hung.size() > 1;
            if (trip.isPresent()) {
                List<Integer> more = new ArrayList<>(begun);
                more.add(trip.get());
                addWays(rest, more, ways);
            }
        }
    }

    /** The number of the trip of these loads; none where they may not hang together. */
    private Optional<Integer> number(List<Load> hung) {
        Set<LoadId> ids = Set.copyOf(hung.stream().map(Load::id).toList());
        return numbers.computeIfAbsent(ids, unused -> made(hung));
    }

    private Optional<Integer> made(List<Load> hung) {
        double sumKg = hung.stream().mapToDouble(model::liftMassKg).sum();
        boolean may = hung.size() == 1 || sumKg <= model.rules.masses().combineMassKg();
        for (Load one : hung) {
            may &= hung.stream().allMatch(other -> one.equals(other) || maySharePair(one, other));
        }
        Optional<Trip> trip = may ? OnHook.of(model, hung).unlessStopped(model) : Optional.empty();
        trip.ifPresent(trips::add);
        return trip.map(unused -> trips.size() - 1);
    }
}
