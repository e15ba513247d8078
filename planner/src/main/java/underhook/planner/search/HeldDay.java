package underhook.planner.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import underhook.core.plan.StepKind;

/**
 * What of a known day a bound holds on to; all else is free.
 *
 * @param flights of people, all that there are; empty where people may be flown in any way
 * @param hookedIn of each trip the hour of the weather in which it is hooked up; {@link DayTable#NONE} where any will do
 */
record HeldDay(Optional<List<EmptyWay>> flights, List<Integer> hookedIn) {
    HeldDay {
        flights = flights.map(List::copyOf);
        hookedIn = List.copyOf(hookedIn);
    }

    /** Nothing is held. */
    static HeldDay free(DayTable table) {
        return new HeldDay(Optional.empty(), anyHour(table.trips.length));
    }

    /** People are flown from where to where a day flies them. */
    static HeldDay people(Ordered day) {
        List<EmptyWay> flights =
                day.events().stream()
                        .filter(event -> event.kind() == StepKind.CREW_MOVE)
                        .flatMap(event -> event.legs().stream())
                        .toList();
        return new HeldDay(Optional.of(flights), anyHour(day.releasedS().size()));
    }

    /** And every trip is hooked up in the hour in which that day hooks it up. */
    static HeldDay hours(Ordered day) {
        List<Integer> hookedIn = new ArrayList<>(anyHour(day.releasedS().size()));
        for (DayEvent event : day.events()) {
            event.lift().ifPresent(lift -> hookedIn.set(lift.trip(), lift.slotFrom()));
        }
        return new HeldDay(people(day).flights, hookedIn);
    }

    private static List<Integer> anyHour(int trips) {
        return Collections.nCopies(trips, DayTable.NONE);
    }

    boolean mayHook(int trip, int hour) {
        return hookedIn.get(trip) < 0 || hookedIn.get(trip) == hour;
    }

    /** Whether one trip is hooked up in an hour before that of the other. */
    boolean isBefore(int first, int then) {
        return hookedIn.get(first) >= 0 && hookedIn.get(first) < hookedIn.get(then);
    }
}
