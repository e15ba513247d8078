package underhook.planner.search;

import java.util.List;

/**
 * How a day stands when its rest is ordered anew. Times are whole seconds.
 *
 * @param timeS when the machine is free
 * @param place where it is then
 * @param fuelKg fuel then, kg
 * @param line fitted line; {@link DayTable#NONE} without one
 * @param offS how long the engine has been off by then
 * @param onSinceBreakS engine time since the last break
 * @param onTotalS engine time of the day
 * @param releasedS for each trip when it was let go; negative when it is still to be flown
 * @param closed trips that are not flown any more
 * @param teams where each team is
 * @param refuelBusyS for each place until when whoever refuelled there hooks nothing
 */
public record Midday(
        long timeS,
        int place,
        double fuelKg,
        int line,
        boolean engineOff,
        long offS,
        long onSinceBreakS,
        long onTotalS,
        List<Long> releasedS,
        List<Integer> closed,
        List<Team> teams,
        List<Long> refuelBusyS) {
    /** A team: where it is or will be, since when, and from when it is free. */
    public record Team(int place, long arrivedS, long freeS) {}

    /** The same with the machine free at another time. */
    public Midday freeAt(long otherS) {
        return new Midday(
                otherS,
                place,
                fuelKg,
                line,
                engineOff,
                offS,
                onSinceBreakS,
                onTotalS,
                releasedS,
                closed,
                teams,
                refuelBusyS);
    }

    public Midday {
        releasedS = List.copyOf(releasedS);
        closed = List.copyOf(closed);
        teams = List.copyOf(teams);
        refuelBusyS = List.copyOf(refuelBusyS);
    }
}
