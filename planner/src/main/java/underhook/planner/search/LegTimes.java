package underhook.planner.search;

/** Times of ways and limits of lifts by hour; asked once for each question and then remembered. */
public interface LegTimes {
    /**
     * Whole seconds of a loaded way; {@link DayTable#NONE} where there is none.
     *
     * @param slotFrom hour of the hook-up
     * @param slotTo hour of the set-down, the same or a later one
     */
    int loadedS(int trip, int line, int slotFrom, int slotTo);

    /** Whole seconds with the empty line, or without one (line {@link DayTable#NONE}). */
    int emptyS(int from, int to, int line, int slot);

    /**
     * Whether the way in of an empty way that is left in one hour of the weather keeps the limits of wind until the
     * end of another; where it does until a later one, it does until each before that.
     */
    default boolean holdsUntil(EmptyWay way, int slotEnd) {
        return true;
    }

    /** What no loaded way of a trip goes below in an hour, with any line, s. */
    double leastLoadedS(int trip, int slot);

    /** What no empty way goes below in an hour, s; with a line where it begins or ends at a site. */
    double leastEmptyS(int from, int to, int slot);

    /** Most fuel with which both hovers of a trip are within limits, whole kg; 0 or less if none. */
    int mostFuelKg(int trip, int line, int slotFrom, int slotTo);

    /** Prices of comforts that a loaded way which is known refuses where it ends. */
    default SetDownPrice setDownPrice(int trip, int line, int slotFrom, int slotTo) {
        return SetDownPrice.NONE;
    }

    /** The same of the way in that the place alone would take, for a loaded way that is not looked for yet. */
    default SetDownPrice guessedSetDownPrice(int trip, int line, int slotTo) {
        return SetDownPrice.NONE;
    }

    /** Whether wind and zones let a trip be flown in an hour. */
    boolean isOpen(int trip, int slot);

    /** Whether there may be a way in one hour that there is not in another: then a day waits for it. */
    default boolean isClosedByHours() {
        return false;
    }

    /**
     * How often a question was given up because the time was over. What was answered while this grew is no
     * answer.
     */
    default int cuts() {
        return 0;
    }
}
