package underhook.planner.verify;

import java.util.List;
import underhook.core.job.Load;
import underhook.core.job.Zone;

/** Which rule holds for whom. */
final class Ways {
    private Ways() {}

    /** Whether a zone's rule holds today for what hangs on the hook. */
    static boolean applies(Day day, Zone zone, List<Load> loads) {
        return zone.isActiveOn(day.job().date())
                && (zone.kinds().isEmpty()
                        || loads.stream().anyMatch(load -> zone.kinds().contains(load.kind())));
    }
}
