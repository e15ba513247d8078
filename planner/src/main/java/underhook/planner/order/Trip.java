package underhook.planner.order;

import java.util.List;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.site.Rig;

/**
 * Loads that ride on one hook trip to one place, with what does not change over the day.
 *
 * @param loads in the order of release
 * @param kinds kind of each load
 * @param from index of the place it is hooked up at
 * @param to index of the place it is set down at
 * @param liftMassKg planned mass of the loads with their ballast, kg, rounded up
 * @param needMassKg sling capacity that this takes, the construction margin included, kg
 * @param ballastKg ballast added, kg
 * @param underM from the remote hook to the load's lowest end, m
 * @param speedMPerS true airspeed, m/s
 * @param hookUpS time to hook up, s
 * @param setDownS time in the hover from arrival to the last release, s
 */
record Trip(
        List<Load> loads,
        List<LoadKind> kinds,
        int from,
        int to,
        double liftMassKg,
        double needMassKg,
        double ballastKg,
        double underM,
        double speedMPerS,
        long hookUpS,
        long setDownS) {
    Trip {
        loads = List.copyOf(loads);
        kinds = List.copyOf(kinds);
    }

    /** What hangs under a line of so much while it is set down. */
    Rig rig(double lineLengthM) {
        return Rig.of(lineLengthM, loads, kinds);
    }

    boolean standsUp() {
        return kinds.stream().anyMatch(LoadKind::standsUp);
    }

    boolean lastAtPlace() {
        return kinds.stream().anyMatch(LoadKind::lastAtPlace);
    }

    long busyAfterS() {
        return (long) Math.ceil(kinds.stream().mapToDouble(LoadKind::busyAfterS).max().orElse(0));
    }

    long readyAfterS() {
        return (long) Math.ceil(kinds.stream().mapToDouble(LoadKind::readyAfterS).max().orElse(0));
    }

    List<String> kindNames() {
        return kinds.stream().map(LoadKind::name).distinct().toList();
    }

    List<LoadId> ids() {
        return loads.stream().map(Load::id).toList();
    }

    boolean carries(LoadId id) {
        return loads.stream().anyMatch(load -> load.id().equals(id));
    }

    @Override
    public String toString() {
        return String.join("+", loads.stream().map(load -> load.id().value()).toList());
    }
}
