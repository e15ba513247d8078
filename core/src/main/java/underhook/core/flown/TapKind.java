package underhook.core.flown;

/** What somebody saw and tapped. */
public enum TapKind {
    /** The engine was started. */
    ENGINE_ON,
    /** The engine was shut down. */
    ENGINE_OFF,
    /** The machine left the ground. */
    TAKE_OFF,
    /** The machine landed. */
    LANDING,
    /** The line was hung on the belly hook; the value is its length. */
    LINE_ON,
    /** All releases were tried with the line on. */
    LINE_CHECKED,
    /** The line was taken off. */
    LINE_OFF,
    /** People got in; the value says how many. */
    PEOPLE_ABOARD,
    /** Everybody got out. */
    PEOPLE_OUT,
    /** Loads were hooked; the value is the mass that the load cell read, if any. */
    HOOKED,
    /** A load stands on the ground and its hook was opened. */
    OFF,
    /** One person saw the hook empty and the load free. */
    FREE_SEEN,
    /** A second person said the same. */
    FREE_CONFIRMED,
    /** The lift was given up and the load brought back or let go. */
    ABORTED,
    /** Fuel was taken; the value is the fuel after it. */
    REFUELLED,
    /** The line caught in something, or there was a hard jerk. */
    SNAGGED,
    /** One person had the briefing. */
    BRIEFED,
    /** People were counted; the value says how many of them are here and well. */
    COUNTED,
    /** Something was told that changes the day: somebody is late, the wind, a place; the note says it. */
    REPORTED,
    /** Takes an earlier tap back. */
    UNDONE
}
