package underhook.planner.search;

import java.util.List;
import java.util.Optional;
import underhook.core.plan.StepKind;

/**
 * Something that happened to the machine.
 *
 * @param line fitted during it, after a line change the new one; {@link DayTable#NONE} without one
 * @param lift what was lifted, for a rotation
 * @param team who is flown, for a crew move; else {@link DayTable#NONE}
 * @param legs empty ways flown; for a rotation the way back
 */
public record DayEvent(
        StepKind kind,
        int from,
        int to,
        long startS,
        long endS,
        double fuelStartKg,
        double fuelEndKg,
        int line,
        boolean engineOn,
        Optional<LiftDone> lift,
        int team,
        List<EmptyWay> legs,
        Cause cause) {
    public DayEvent {
        legs = List.copyOf(legs);
    }

    /** Whether it is a refuelling straight behind another. */
    boolean goesOnFilling(DayEvent before) {
        return kind == StepKind.REFUEL && before.kind == StepKind.REFUEL && before.endS == startS;
    }

    /** A refuelling with what was filled in besides. */
    DayEvent filledOn(DayEvent more) {
        return new DayEvent(
                kind,
                from,
                to,
                startS,
                more.endS,
                fuelStartKg,
                more.fuelEndKg,
                line,
                engineOn,
                lift,
                team,
                legs,
                cause);
    }
}
