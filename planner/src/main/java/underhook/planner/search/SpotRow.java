package underhook.planner.search;

/**
 * A place as the order of a day sees it. Times are whole seconds; {@link DayTable#NEVER_S} is never.
 *
 * @param site loads are set down among people there; elsewhere the machine's own laydowns
 * @param ground the machine may stand there with the engine off
 * @param fuel fuel may be taken there
 * @param refuellerFromS from when somebody refuels there
 * @param refuellerAloneHooks whether nobody else may hook there while that person refuels
 * @param hookerFromS from when somebody who stays there may hook loads
 * @param receiverFromS from when somebody who stays there receives loads
 * @param nearestGround where the machine lands from here; {@link DayTable#NONE} if nowhere
 * @param nearestFuel where the machine fuels from here; {@link DayTable#NONE} if nowhere
 */
public record SpotRow(
        boolean site,
        boolean ground,
        boolean fuel,
        long refuellerFromS,
        boolean refuellerAloneHooks,
        long hookerFromS,
        long receiverFromS,
        int nearestGround,
        int nearestFuel) {}
