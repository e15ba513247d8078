package underhook.planner.order;

import java.util.List;
import org.jspecify.annotations.Nullable;
import underhook.core.plan.StepKind;

/**
 * A day as it was built, with the ways it flies.
 *
 * @param events of the machine, in order
 * @param stays of the teams that move
 * @param releasedS for each trip its last release, s; negative when it is left out
 * @param timeS when the machine is down for the last time, s
 * @param flightS seconds in the air
 */
record DayState(
        List<Event> events,
        List<Stay> stays,
        List<Long> releasedS,
        List<TeamEnd> teams,
        long timeS,
        long flightS) {
    /** Something that happened to the machine. */
    record Event(
            StepKind kind,
            int from,
            int to,
            long startS,
            long endS,
            double fuelStartKg,
            double fuelEndKg,
            int line,
            boolean engineOn,
            @Nullable Flown flown,
            int team,
            List<DayLegs.LegAt> legs,
            String because) {}

    /** The lifting part of a rotation; it begins at a place, at a time. */
    record Flown(
            int trip,
            List<DayLegs.LegAt> before,
            DayLegs.LegAt loaded,
            long hookedS,
            double fuelAtHookKg,
            List<Long> releasedS,
            int slotFrom,
            int slotTo,
            int line,
            int from) {}

    /** Something that happened to a team. */
    record Stay(int team, int place, long fromS, long toS, String doing, boolean walks) {}

    /** Where a team is in the end, since when, and from when it is free. */
    record TeamEnd(int place, long arrivedS, long freeS) {}
}
