package underhook.planner.search;

/**
 * Ways that take the same between any two places, and loads that are always allowed.
 *
 * @param wayS with a load, within one hour
 * @param intoNextS with a load, from one hour into another
 */
record EvenWays(int wayS, int intoNextS) implements WaysAllDay {
    @Override
    public int loadedS(int trip, int line, int slotFrom, int slotTo) {
        return slotFrom == slotTo ? wayS : intoNextS;
    }

    @Override
    public int emptyS(int from, int to, int line, int slot) {
        return from == to ? 0 : 100;
    }

    @Override
    public double leastLoadedS(int trip, int slot) {
        return Math.min(wayS, intoNextS);
    }
}
