package underhook.planner.verify;

import java.time.Instant;
import java.util.List;
import underhook.core.job.Load;
import underhook.core.job.Zone;

/** Which rule holds for whom. */
final class Ways {
    private Ways() {}

    /** Whether a zone's rule holds at some hour of the day for what hangs on the hook. */
    static boolean applies(Day day, Zone zone, List<Load> loads) {
        return zone.isActiveOn(day.job().date()) && isAbout(zone, loads);
    }

    /** Whether it holds while a leg is flown. */
    static boolean applies(Day day, Zone zone, Flight flight) {
        Instant from = flight.from();
        return isAbout(zone, flight.loads()) && isInForce(day, zone, from, flight.until());
    }

    /** Whether it holds at some time from one instant to another, for whatever it is about; both alike are one moment. */
    static boolean isInForce(Day day, Zone zone, Instant from, Instant until) {
        return day.job().isInForce(zone, from, until.isAfter(from) ? until : from.plusNanos(1));
    }

    private static boolean isAbout(Zone zone, List<Load> loads) {
        return zone.kinds().isEmpty()
                || loads.stream().anyMatch(load -> zone.kinds().contains(load.kind()));
    }
}
