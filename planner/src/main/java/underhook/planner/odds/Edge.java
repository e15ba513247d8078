package underhook.planner.odds;

/**
 * One moment waits for another.
 *
 * @param fixedS not before so long after it, s; negative where it may begin ahead of it
 * @param variesS times what is drawn for the piece, added, s
 * @param piece number of what is drawn; 0 where nothing varies
 * @param kind what it stands for
 * @param about whom or what it is about; empty where that does not matter
 */
record Edge(int from, int to, double fixedS, double variesS, int piece, Kind kind, String about) {
    /** What an edge stands for, so that a change can find it. */
    enum Kind {
        /** One thing after another. */
        ORDER,
        /** The clock: nothing before its time. */
        CLOCK,
        /** A crew is ready in the morning. */
        CREW_READY,
        /** Whoever refuelled hooks nothing for a while. */
        HANDLER,
        /** A pole is held while it is guyed. */
        GUYING,
        REFUEL,
        /** The engine is off for as long as a break must be. */
        REST,
        LINE_CHANGE,
        /** A place is made ready. */
        MAKING_READY
    }

    Edge withFixed(double otherS) {
        return new Edge(from, to, otherS, variesS, piece, kind, about);
    }

    Edge withVaries(double otherS) {
        return new Edge(from, to, fixedS, otherS, piece, kind, about);
    }
}
