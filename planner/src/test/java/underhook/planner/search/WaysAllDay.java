package underhook.planner.search;

/** Made-up ways that take the same at every hour, all open, with all the fuel that a tank holds. */
interface WaysAllDay extends LegTimes {
    @Override
    default double leastLoadedS(int trip, int slot) {
        return loadedS(trip, 0, slot, slot);
    }

    @Override
    default double leastEmptyS(int from, int to, int slot) {
        return emptyS(from, to, 0, slot);
    }

    @Override
    default int mostFuelKg(int trip, int line, int slotFrom, int slotTo) {
        return 20_000;
    }

    @Override
    default boolean isOpen(int trip, int slot) {
        return true;
    }
}
