package underhook.planner.search;

/**
 * Why something is done, or not before.
 *
 * @param trip the trip it is done for; {@link DayTable#NONE} for none
 * @param other the team, trip or place that forces it; {@link DayTable#NONE} for none
 */
public record Cause(Kind kind, int trip, int other) {
    /** What forces a step. */
    public enum Kind {
        /** A trip is flown as soon as the machine is there; nothing else holds it back. */
        LIFT,
        /** The machine goes where it is needed next. */
        MOVE,
        /** A trip, or moving people, needs more fuel. */
        FUEL,
        /** A trip needs another line, or people none. */
        LINE,
        /** The engine was on for long enough. */
        ENGINE_LIMIT,
        /** A wait long enough to be a break, or a break taken early. */
        EARLY_BREAK,
        /** People are brought to their work. */
        TEAM_MOVE,
        /** A team is busy or on its way. */
        TEAM,
        /** Something must have been down for long enough. */
        AFTER,
        /** The place is not ready for a pole. */
        READY,
        /** Whoever hooks has just refuelled. */
        HANDLER,
        /** Whoever stays at the place comes later. */
        STAFF,
        /** Begun sooner, the next row of the weather would begin while it is flown. */
        ROW,
        /** The wind at a place is over a limit of the trip. */
        WIND,
        /** A zone closes the way to a place for some hours. */
        ZONE,
        /** The wind lets no way in to a place, at which it may be within the trip's own limits. */
        WAY_IN,
        /** The day's last landing. */
        HOME
    }

    static Cause of(Kind kind, int trip) {
        return new Cause(kind, trip, DayTable.NONE);
    }
}
