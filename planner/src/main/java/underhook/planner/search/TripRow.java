package underhook.planner.search;

import java.util.List;

/**
 * Loads on one hook as the order of a day sees them. Times are whole seconds.
 *
 * @param from place of the hook-up
 * @param to place of the set-down
 * @param hookUpS time to hook up
 * @param firstSetDownS time in the hover to the first release
 * @param nextReleaseS more for each further release
 * @param releases how many loads are let go
 * @param standsUp a pole, guyed by the crew
 * @param lastAtPlace leaves its place after everything meant for that place is there
 * @param busyAfterS how long its crew is busy after the release
 * @param readyAfterS how long after its release, with the crew there, a pole may come
 * @param after what must be released before
 * @param waitsForLeftOut whether something it must wait for is not flown at all
 * @param linesAllowed for each line whether it may carry this
 */
public record TripRow(
        int from,
        int to,
        long hookUpS,
        long firstSetDownS,
        long nextReleaseS,
        int releases,
        boolean standsUp,
        boolean lastAtPlace,
        long busyAfterS,
        long readyAfterS,
        List<After> after,
        boolean waitsForLeftOut,
        List<Boolean> linesAllowed) {
    /** A trip that must have been let go so long before. */
    public record After(int trip, long waitS) {}

    public TripRow {
        after = List.copyOf(after);
        linesAllowed = List.copyOf(linesAllowed);
        if (releases < 1) {
            throw new IllegalArgumentException("releases (" + releases + ") must be at least 1.");
        }
    }

    /**
     * Whether its place must be made ready by this before a pole may come. Of two poles that both make ready either
     * may be first.
     */
    boolean readies(TripRow pole) {
        return pole.standsUp && readyAfterS > 0 && to == pole.to && !isEitherFirst(pole);
    }

    /** Whether a pole that comes after this one waits so long too, though it could have come before. */
    boolean isEitherFirst(TripRow pole) {
        return standsUp
                && pole.standsUp
                && readyAfterS > 0
                && pole.readyAfterS > 0
                && to == pole.to;
    }

    /** How long before its release people and ground must be ready for it: a pole is stood up by them meanwhile, s. */
    long standingUpS() {
        return standsUp ? firstSetDownS : 0;
    }

    /** From arrival to the last release, s. */
    public long setDownS() {
        return firstSetDownS + (releases - 1) * nextReleaseS;
    }
}
