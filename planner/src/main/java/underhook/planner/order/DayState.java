package underhook.planner.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import underhook.core.plan.StepKind;

/**
 * A day as far as it is built. Copied for each attempt; what happened is a chain that copies share.
 *
 * <p>Mutable and not safe for threads; it never leaves this package.
 */
final class DayState {
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
            List<DayModel.LegAt> legs,
            String because) {}

    /** The lifting part of a rotation. */
    record Flown(
            int trip,
            List<DayModel.LegAt> before,
            DayModel.LegAt loaded,
            long hookedS,
            double fuelAtHookKg,
            List<Long> releasedS,
            int slotFrom,
            int slotTo,
            int line,
            int from,
            long startS,
            double fuelStartKg,
            String because) {}

    /** Something that happened to a team. */
    record Stay(int team, int place, long fromS, long toS, String doing) {}

    /** A chain, latest first. */
    record Chain<T>(T head, @Nullable Chain<T> rest) {
        static <T> List<T> inOrder(@Nullable Chain<T> chain) {
            List<T> all = new ArrayList<>();
            for (Chain<T> at = chain; at != null; at = at.rest()) {
                all.add(at.head());
            }
            Collections.reverse(all);
            return all;
        }
    }

    long timeS;
    int place;
    double fuelKg;
    int line = -1;
    boolean engineOff = true;
    long onSinceBreakS;
    long onTotalS;
    long flightS;
    long restWaitS;
    int refuels;
    @Nullable Flown open;
    @Nullable Chain<Event> events;
    @Nullable Chain<Stay> stays;
    long[] releasedS;
    boolean[] dropped;
    int[] teamPlace;
    long[] teamFreeS;
    long[] teamArrivedS;
    long[] refuelBusyS;

    DayState(int trips, int teams, int places) {
        releasedS = new long[trips];
        java.util.Arrays.fill(releasedS, -1);
        dropped = new boolean[trips];
        teamPlace = new int[teams];
        teamFreeS = new long[teams];
        teamArrivedS = new long[teams];
        refuelBusyS = new long[places];
    }

    DayState copy() {
        DayState other = new DayState(0, 0, 0);
        other.timeS = timeS;
        other.place = place;
        other.fuelKg = fuelKg;
        other.line = line;
        other.engineOff = engineOff;
        other.onSinceBreakS = onSinceBreakS;
        other.onTotalS = onTotalS;
        other.flightS = flightS;
        other.restWaitS = restWaitS;
        other.refuels = refuels;
        other.open = open;
        other.events = events;
        other.stays = stays;
        other.releasedS = releasedS.clone();
        other.dropped = dropped.clone();
        other.teamPlace = teamPlace.clone();
        other.teamFreeS = teamFreeS.clone();
        other.teamArrivedS = teamArrivedS.clone();
        other.refuelBusyS = refuelBusyS.clone();
        return other;
    }

    void add(Event event) {
        events = new Chain<>(event, events);
    }

    void add(Stay stay) {
        stays = new Chain<>(stay, stays);
    }
}
