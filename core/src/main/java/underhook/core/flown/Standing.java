package underhook.core.flown;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.job.LoadId;

/**
 * How everything stands.
 *
 * @param lineM line on the belly hook, m; empty with the line off
 * @param lineChecked whether the releases were tried with this line on
 * @param peopleAboard people in the cabin besides the pilot
 * @param onHook loads on the hook
 * @param notYetFree loads set down that two people have not yet called free
 * @param freeSeenBy who called them free first
 * @param fuelKg fuel after the last refuelling, kg; empty when none was tapped
 */
public record Standing(
        boolean engineOn,
        boolean inTheAir,
        OptionalDouble lineM,
        boolean lineChecked,
        int peopleAboard,
        List<LoadId> onHook,
        List<LoadId> notYetFree,
        Optional<String> freeSeenBy,
        OptionalDouble fuelKg) {
    public Standing {
        onHook = List.copyOf(onHook);
        notYetFree = List.copyOf(notYetFree);
    }
}
