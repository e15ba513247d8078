package underhook.planner.search;

/**
 * Ways that take the same between any two places, and loads that are always allowed.
 *
 * @param wayS with a load, within one hour
 * @param intoNextS with a load, from one hour into another
 */
record EvenWays(int wayS, int intoNextS) implements LegTimes {
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
        return 90;
    }

    @Override
    public double leastEmptyS(int from, int to, int slot) {
        return from == to ? 0 : 100;
    }

    @Override
    public int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
        return 20_000;
    }

    @Override
    public boolean isOpen(int trip, int slot) {
        return true;
    }
}
