package underhook.planner.route;

import java.util.List;

/**
 * What lies under a straight piece beside a place.
 *
 * @param isOpen whether it may be flown
 * @param blockers ids of what refuses it
 * @param guarded ids of roads and trails that must be guarded while a load passes over them
 */
record Lies(boolean isOpen, List<String> blockers, List<String> guarded) {
    Lies {
        blockers = List.copyOf(blockers);
        guarded = List.copyOf(guarded);
    }

    /** Tells what lies under the piece from a place to so far off on a bearing. */
    interface Below {
        Lies lies(double bearingGridRad);
    }
}
