package underhook.planner.order;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;

/** Makes hook trips of a job's loads and says which loads cannot be flown, and why. */
final class TripMaker {
    private final DayModel model;
    private final Ceiling enough;
    private final int leastTrips;
    private final Settled settled;
    private final Waits waits;
    private final Map<LoadId, LeftOut> leftOut = new TreeMap<>();
    private final List<Finding> findings = new ArrayList<>();
    private final List<Trip> trips = new ArrayList<>();

    /**
     * @param enough when it is reached no further load is looked at
     * @param leastTrips made in any case, if there are as many
     */
    TripMaker(DayModel model, Ceiling enough, int leastTrips) {
        this(model, enough, leastTrips, Settled.NOTHING);
    }

    /**
     * @param settled what is flown hangs as it did, and what is off hangs nowhere
     */
    TripMaker(DayModel model, Settled settled) {
        this(model, new Ceiling(() -> false), 0, settled);
    }

    private TripMaker(DayModel model, Ceiling enough, int leastTrips, Settled settled) {
        this.model = model;
        this.enough = enough;
        this.leastTrips = leastTrips;
        this.settled = settled;
        this.waits = new Waits(model.job);
        make();
    }

    /** Whether some load was not looked at to the end. */
    boolean isCut() {
        return enough.cuts() > 0;
    }

    List<Trip> trips() {
        return List.copyOf(trips);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    Map<LoadId, LeftOut> leftOut() {
        return leftOut;
    }

    /** Each load alone that there was no time to look at to the end. */
    List<Trip> notLookedAt() {
        return leftOut.values().stream()
                .filter(out -> out.code() == FindingCode.SEARCH_CUT)
                .map(out -> OnHook.of(model, List.of(model.job.getLoad(out.load()))).trip())
                .flatMap(Optional::stream)
                .toList();
    }

    /** Puts the true reason for a load in the place of one that only said that the time was over. */
    void tellWhy(Load load, Unflown.Reason why) {
        String id = load.id().value();
        findings.removeIf(one -> one.code() == FindingCode.SEARCH_CUT && one.subject().equals(id));
        refuse(load, Finding.of(why.code(), Severity.STOP, id, "crews", why.message()));
    }

    private void make() {
        LoadChecks checks = new LoadChecks(model);
        for (Load load : model.job.loads()) {
            LoadChecks.Checked checked = checks.check(load);
            findings.addAll(checked.said());
            checked.stop().ifPresent(stop -> refuse(load, stop));
            if (load.anotherDay() && !isFlown(load.id()) && !leftOut.containsKey(load.id())) {
                refuse(
                        load,
                        Finding.of(
                                FindingCode.ANOTHER_DAY,
                                Severity.STOP,
                                load.id().value(),
                                "loads",
                                "It is left for another day."));
            }
            if (settled.off().contains(load.id()) && !leftOut.containsKey(load.id())) {
                refuse(
                        load,
                        Finding.of(
                                FindingCode.NO_ROOM_IN_DAY,
                                Severity.STOP,
                                load.id().value(),
                                "rules",
                                "It was taken off the day."));
            }
        }
        Set<LoadId> taken = new HashSet<>();
        for (List<LoadId> hung : settled.flown()) {
            addFlown(hung.stream().map(model.job::getLoad).toList());
            taken.addAll(hung);
        }
        refuseAtLeftPlaces();
        for (Load load : model.job.loads()) {
            if (leftOut.containsKey(load.id()) || taken.contains(load.id())) {
                continue;
            }
            List<Load> together = partners(load, taken);
            together.forEach(one -> taken.add(one.id()));
            addTrip(together);
        }
        while (splitOne()) {
            // What was split off may be refused, and something wait for that.
        }
    }

    /** Where the last thing has left, nobody is there for another load with what it takes. */
    private void refuseAtLeftPlaces() {
        for (List<LoadId> hung : settled.flown()) {
            for (LoadId gone : hung) {
                Load last = model.job.getLoad(gone);
                for (Load load : model.job.loads()) {
                    boolean comes =
                            model.job.getKind(last.kind()).lastAtPlace()
                                    && load.to().equals(last.from())
                                    && !leftOut.containsKey(load.id())
                                    && !isFlown(load.id());
                    if (comes) {
                        refuse(
                                load,
                                Finding.of(
                                        FindingCode.ORDER_RULE,
                                        Severity.STOP,
                                        load.id().value(),
                                        "rules",
                                        gone
                                                + " has left "
                                                + last.from()
                                                + " as the last thing there; nothing is brought"
                                                + " there any more. If it is still worked there,"
                                                + " state its kind as not last at its place."));
                    }
                }
            }
        }
    }

    private boolean isFlown(LoadId load) {
        return settled.flown().stream().anyMatch(hung -> hung.contains(load));
    }

    /**
     * Takes a trip apart of which some loads wait in vain, or which waits for itself only because its loads hang
     * together; those that wait in vain stay behind. False when there is none.
     */
    private boolean splitOne() {
        for (Trip trip : trips) {
            List<Load> waiting = trip.loads().stream().filter(this::waitsForLeftOut).toList();
            boolean apart = trip.loads().size() > 1 && waitsForItself(trip);
            if (isFlown(trip.ids().get(0)) || (waiting.isEmpty() && !apart)) {
                continue;
            }
            trips.remove(trip);
            waiting.forEach(this::refuseWaiting);
            List<Load> rest =
                    trip.loads().stream().filter(load -> !waiting.contains(load)).toList();
            if (apart) {
                rest.forEach(load -> addTrip(List.of(load)));
            } else if (!rest.isEmpty()) {
                addTrip(rest);
            }
            return true;
        }
        return false;
    }

    private boolean waitsForLeftOut(Load load) {
        return load.after().stream().anyMatch(one -> leftOut.containsKey(one.load()));
    }

    private void refuseWaiting(Load load) {
        LeftOut out = waits.inVain(load.id(), before -> !leftOut.containsKey(before)).orElseThrow();
        refuse(
                load,
                Finding.of(out.code(), Severity.STOP, load.id().value(), "rules", out.message()));
    }

    private boolean waitsForItself(Trip trip) {
        Set<Trip> seen = new HashSet<>();
        Deque<Trip> open = new ArrayDeque<>(List.of(trip));
        while (!open.isEmpty()) {
            Trip one = open.remove();
            for (Trip before : trips) {
                if (isBefore(before, one) && seen.add(before)) {
                    open.add(before);
                }
            }
        }
        return seen.contains(trip);
    }

    private boolean isBefore(Trip first, Trip then) {
        return first.loads().stream()
                .anyMatch(one -> then.loads().stream().anyMatch(two -> waits.isBefore(one, two)));
    }

    /** Whether no further load is looked at. */
    private boolean isOver() {
        return trips.size() >= leastTrips && enough.isReached();
    }

    private Optional<Trip> hang(List<Load> loads) {
        OnHook onHook = OnHook.of(model, loads);
        if (onHook.stop().isPresent() && refuse(loads.get(0), onHook.stop().get())) {
            return Optional.empty();
        }
        findings.addAll(onHook.said());
        return onHook.trip();
    }

    private void addTrip(List<Load> loads) {
        Optional<Trip> trip = hang(loads);
        if (trip.isEmpty()) {
            addApart(loads);
            return;
        }
        Optional<Finding> stop =
                model.gear()
                        .findStop(trip.get())
                        .or(() -> new Liftable(model).findStop(trip.get(), this::isOver));
        if (stop.isEmpty()) {
            trips.add(trip.get());
        } else if (loads.size() > 1) {
            addApart(loads);
        } else {
            refuse(loads.get(0), stop.get());
        }
    }

    /** Whatever is known of it now, it was flown; a load that was is left out by nothing. */
    private void addFlown(List<Load> hung) {
        trips.add(hang(hung).orElseGet(() -> OnHook.slowest(model, hung)));
        hung.forEach(load -> leftOut.remove(load.id()));
    }

    private void addApart(List<Load> together) {
        if (together.size() > 1) {
            together.forEach(load -> addTrip(List.of(load)));
        }
    }

    /** Says why a load stays behind; false when somebody answers for flying it all the same. */
    private boolean refuse(Load load, Finding finding) {
        findings.add(finding);
        if (Waivers.isLifted(model.job, finding)) {
            return false;
        }
        leftOut.put(load.id(), new LeftOut(load.id(), finding.code(), finding.message()));
        return true;
    }

    private List<Load> partners(Load load, Set<LoadId> taken) {
        List<Load> together = new ArrayList<>(List.of(load));
        double sumKg = model.liftMassKg(load);
        for (Load other : model.job.loads()) {
            boolean fits =
                    isFree(load)
                            && isFree(other)
                            && !other.id().equals(load.id())
                            && !taken.contains(other.id())
                            && !leftOut.containsKey(other.id())
                            && together.stream().allMatch(one -> fits(one, other))
                            && sumKg + model.liftMassKg(other)
                                    <= model.rules.masses().combineMassKg();
            if (fits) {
                together.add(other);
                sumKg += model.liftMassKg(other);
            }
        }
        return together;
    }

    private boolean isFree(Load load) {
        return !settled.alone().contains(load.id());
    }

    private boolean fits(Load one, Load other) {
        return OnHook.mayShare(model, one, other) && !isOrdered(one, other);
    }

    private static boolean isOrdered(Load one, Load other) {
        return Waits.isListed(one, other) || Waits.isListed(other, one);
    }
}
