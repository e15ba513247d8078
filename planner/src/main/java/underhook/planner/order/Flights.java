package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * What a built day flies.
 *
 * @param flown every lift in the order of the day
 * @param legs every leg, loaded or not
 */
record Flights(
        DayModel model, List<Trip> trips, List<DayState.Flown> flown, List<DayLegs.LegAt> legs) {
    static Flights of(DayModel model, List<Trip> trips, DayState day) {
        List<DayState.Flown> flown = new ArrayList<>();
        List<DayLegs.LegAt> legs = new ArrayList<>();
        for (DayState.Event event : day.events()) {
            DayState.Flown one = event.flown();
            if (one != null) {
                flown.add(one);
                legs.addAll(one.before());
                legs.add(one.loaded());
            }
            legs.addAll(event.legs());
        }
        return new Flights(model, trips, List.copyOf(flown), List.copyOf(legs));
    }

    Trip trip(DayState.Flown one) {
        return trips.get(one.trip());
    }

    /** The lifts to each place where something is set down, by its index. */
    TreeMap<Integer, List<DayState.Flown>> byPlace() {
        TreeMap<Integer, List<DayState.Flown>> all = new TreeMap<>();
        for (DayState.Flown one : flown) {
            all.computeIfAbsent(trip(one).to(), unused -> new ArrayList<>()).add(one);
        }
        return all;
    }

    /** Hours in which the wind lets at least one of these lifts be flown to its place. */
    List<Integer> hours(List<DayState.Flown> lifts) {
        List<Integer> all = new ArrayList<>();
        for (int slot = 0; slot < model.air().slots.size(); slot++) {
            int now = slot;
            if (lifts.stream().anyMatch(one -> isFlyable(trip(one), now))) {
                all.add(slot);
            }
        }
        return all;
    }

    private boolean isFlyable(Trip trip, int slot) {
        return model.air().isWindWithin(trip, trip.to(), slot);
    }

    /** The time of day as the job's clocks show it. */
    String clock(long timeS) {
        return java.time.format.DateTimeFormatter.ofPattern("HH:mm", java.util.Locale.ROOT)
                .format(model.instant(timeS).atZone(model.job.zone()));
    }

    /** Hours as spans, neighbours run together. */
    String spans(List<Integer> hours) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < hours.size(); ) {
            int last = i;
            while (last + 1 < hours.size() && hours.get(last + 1) == hours.get(last) + 1) {
                last++;
            }
            all.add(
                    clock(model.air().slots.get(hours.get(i)).fromS())
                            + " to "
                            + clock(model.air().slots.get(hours.get(last)).untilS()));
            i = last + 1;
        }
        return String.join(", ", all);
    }
}
