package underhook.planner.route;

import java.util.List;

/**
 * What lies under a straight piece beside a place.
 *
 * @param isOpen whether it may be flown
 * @param inReach whether what refuses it does not lie under it but where a load could fall
 * @param blockers ids of what refuses it
 * @param guarded ids of roads and trails that must be guarded while a load passes over them
 */
record Lies(boolean isOpen, boolean inReach, List<String> blockers, List<String> guarded) {
    Lies(boolean isOpen, List<String> blockers, List<String> guarded) {
        this(isOpen, false, blockers, guarded);
    }

    Lies {
        blockers = List.copyOf(blockers);
        guarded = List.copyOf(guarded);
    }

    /** Refused because what is let go there could hit something. */
    static Lies hitting(List<String> ids) {
        return new Lies(false, true, ids, List.of());
    }

    /** Tells what lies under the piece from a place to so far off on a bearing. */
    interface Below {
        Lies lies(double bearingGridRad);
    }
}
