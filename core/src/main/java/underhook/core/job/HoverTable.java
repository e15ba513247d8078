package underhook.core.job;

import java.util.List;

/**
 * A flight-manual table of hover masses out of ground effect, as printed.
 *
 * @param pressureAltitudeM ascending, m
 * @param temperatureK ascending, K
 * @param massKg one row for each temperature, one column for each pressure altitude, kg
 * @param roundedDownToKg step to which the printed masses were rounded down, kg
 * @param source manual, supplement and revision that the table is from
 */
public record HoverTable(
        List<Double> pressureAltitudeM,
        List<Double> temperatureK,
        List<List<Double>> massKg,
        double roundedDownToKg,
        String source) {
    public HoverTable {
        pressureAltitudeM = ascending(pressureAltitudeM, "pressureAltitudeM");
        temperatureK = ascending(temperatureK, "temperatureK");
        massKg = massKg.stream().map(List::copyOf).toList();
        if (massKg.size() != temperatureK.size()) {
            throw new IllegalArgumentException("massKg must have one row for each temperature.");
        }
        for (List<Double> row : massKg) {
            if (row.size() != pressureAltitudeM.size()) {
                throw new IllegalArgumentException(
                        "each row of massKg must have one column for each pressure altitude.");
            }
            for (double value : row) {
                if (!(value > 0 && value < 1e6)) {
                    throw new IllegalArgumentException("massKg (" + value + ") must be above 0.");
                }
            }
        }
    }

    private static List<Double> ascending(List<Double> values, String name) {
        if (values.size() < 2) {
            throw new IllegalArgumentException(name + " needs at least two values.");
        }
        for (int i = 0; i < values.size(); i++) {
            if (!Double.isFinite(values.get(i))
                    || (i > 0 && !(values.get(i) > values.get(i - 1)))) {
                throw new IllegalArgumentException(name + " must ascend: " + values + ".");
            }
        }
        return List.copyOf(values);
    }
}
