package underhook.planner.search;

import java.util.ArrayList;
import java.util.List;

/**
 * A day built to the end.
 *
 * @param events of the machine, in order
 * @param stays of the teams, in order for each
 * @param releasedS for each trip its last release, s; negative when it is left out
 * @param teams where each team is at the end
 * @param flownS seconds in the air
 * @param finishS when the machine is down for the last time
 * @param cents price of the day by the job's rates
 */
public record Ordered(
        List<DayEvent> events,
        List<TeamStay> stays,
        List<Long> releasedS,
        List<TeamEnd> teams,
        long flownS,
        long finishS,
        long cents) {
    /** A team at the end of the day: where, since when, and from when it is free. */
    public record TeamEnd(int place, long arrivedS, long freeS) {}

    public Ordered {
        events = List.copyOf(events);
        stays = List.copyOf(stays);
        releasedS = List.copyOf(releasedS);
        teams = List.copyOf(teams);
    }

    static Ordered of(Run run, DayLog log, long cents) {
        List<Long> released = new ArrayList<>();
        for (long one : run.releasedS) {
            released.add(one);
        }
        List<TeamEnd> ends = new ArrayList<>();
        for (int team = 0; team < run.teamPlace.length; team++) {
            ends.add(new TeamEnd(run.teamPlace[team], run.teamArrivedS[team], run.teamFreeS[team]));
        }
        return new Ordered(
                joined(log.events), log.stays, released, ends, run.flightS, run.timeS, cents);
    }

    /** What was filled in while refuelling is part of it. */
    private static List<DayEvent> joined(List<DayEvent> events) {
        List<DayEvent> all = new ArrayList<>();
        for (DayEvent event : events) {
            int last = all.size() - 1;
            if (last >= 0 && event.goesOnFilling(all.get(last))) {
                all.set(last, all.get(last).filledOn(event));
            } else {
                all.add(event);
            }
        }
        return all;
    }

    /** Whether a trip is flown. */
    public boolean isFlown(int trip) {
        return releasedS.get(trip) >= 0;
    }
}
