package underhook.planner.search;

/**
 * Times and limits that hold all day.
 *
 * @param startPlace where the machine stands in the morning
 * @param startS from when it may fly, s
 * @param endS by when it must be down, s
 * @param stretchS longest with the engine on between breaks, what is kept free before its limit taken off, s
 * @param engineOnDayS longest with the engine on in all, s
 * @param breakS shortest break, s
 * @param boardingS to board or to leave, s
 * @param lineChangeS to change, fit or take off the line, s
 * @param returnExtraS added to an empty way back, s
 * @param refuelHandlerBusyS how long whoever refuelled hooks nothing afterwards, s
 */
public record DayRules(
        int startPlace,
        long startS,
        long endS,
        long stretchS,
        long engineOnDayS,
        long breakS,
        long boardingS,
        long lineChangeS,
        long returnExtraS,
        long refuelHandlerBusyS) {}
