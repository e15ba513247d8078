package underhook.core.plan;

import java.time.Instant;
import java.util.List;
import underhook.core.job.LoadId;

/**
 * From hook-up to the next: out with the loads, back with the empty line.
 *
 * @param loads in the order of release
 * @param fuelAtHookKg fuel read at hook-up, kg
 * @param massOnHookKg loads as planned for lift, with their ballast and the line, kg, rounded up
 * @param hogeMassKg least hover mass of all hovers of the rotation, kg, rounded down
 * @param fuelMaxKg most fuel at hook-up with which every hover is within limits, kg, rounded down
 * @param ballastKg ballast added under light loads, kg
 */
public record Rotation(
        List<LoadId> loads,
        Instant hookedAt,
        double fuelAtHookKg,
        double massOnHookKg,
        double hogeMassKg,
        double fuelMaxKg,
        double ballastKg,
        List<Drop> drops,
        List<Leg> legs,
        List<Limit> limits) {
    public Rotation {
        loads = List.copyOf(loads);
        drops = List.copyOf(drops);
        legs = List.copyOf(legs);
        limits = List.copyOf(limits);
    }
}
