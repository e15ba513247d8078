package underhook.planner.search;

import java.util.List;

/**
 * The lifting part of a rotation.
 *
 * @param before the empty way to a hook-up out at a site, when there is one
 * @param hookedS when the load is hooked, s
 * @param fuelAtHookKg fuel then, kg
 * @param releasedS each release, s
 * @param slotFrom hour of the hook-up
 * @param slotTo hour of the set-down
 */
public record LiftDone(
        int trip,
        int line,
        List<EmptyWay> before,
        long hookedS,
        double fuelAtHookKg,
        List<Long> releasedS,
        int slotFrom,
        int slotTo) {
    public LiftDone {
        before = List.copyOf(before);
        releasedS = List.copyOf(releasedS);
    }
}
