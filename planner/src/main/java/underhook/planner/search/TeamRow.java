package underhook.planner.search;

import java.util.List;

/**
 * People who go from place to place together.
 *
 * @param start where they are at first
 * @param fromS from when, s
 * @param guys whether they may guy poles
 * @param hooks whether they may hook loads
 * @param receives whether they may receive loads
 * @param serves the places where they may work, in the order in which they would go round them
 * @param landing for each place where they are landed to work there; {@link DayTable#NONE} if nowhere
 * @param cabinFuelKg most fuel with them aboard, kg
 */
public record TeamRow(
        int start,
        long fromS,
        boolean guys,
        boolean hooks,
        boolean receives,
        List<Integer> serves,
        List<Integer> landing,
        double cabinFuelKg) {
    public TeamRow {
        serves = List.copyOf(serves);
        landing = List.copyOf(landing);
    }
}
