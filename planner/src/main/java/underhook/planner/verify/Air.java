package underhook.planner.verify;

import java.time.Instant;
import java.util.List;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;

/**
 * The day's weather at a time and a height, by the international standard atmosphere's lowest layer.
 *
 * @source ICAO-7488 section 2, constants of table B and equations of the gradient layer
 */
final class Air {
    private static final double SEA_LEVEL_PA = 101325.0;
    private static final double SEA_LEVEL_K = 288.15;
    private static final double LAPSE_RATIO = 0.0065;
    private static final double GAS_COEFFICIENT = 287.05287;
    private static final double GRAVITY_COEFFICIENT = 9.80665;

    private final Weather weather;

    Air(Weather weather) {
        this.weather = weather;
    }

    /** Rows that count at a time, by the job's rule between two rows; none outside the forecast. */
    List<WeatherHour> listRows(Instant at) {
        return listRows(at, at);
    }

    /** Rows that count at any time of a stretch; none where the forecast does not hold all of it. */
    List<WeatherHour> listRows(Instant from, Instant until) {
        List<WeatherHour> hours = weather.hours();
        if (from.isBefore(hours.get(0).from()) || until.isAfter(weather.until())) {
            return List.of();
        }
        int last = findRow(until);
        boolean both =
                weather.between() == Weather.Between.STRICTER
                        && last + 1 < hours.size()
                        && hours.get(last).from().isBefore(until);
        return hours.subList(findRow(from), last + (both ? 2 : 1));
    }

    /** When the row that begins last before or at a time ends. */
    Instant rowEnds(Instant at) {
        int next = findRow(at) + 1;
        List<WeatherHour> hours = weather.hours();
        return next < hours.size() ? hours.get(next).from() : weather.until();
    }

    private int findRow(Instant at) {
        List<WeatherHour> hours = weather.hours();
        int row = 0;
        while (row + 1 < hours.size() && !hours.get(row + 1).from().isAfter(at)) {
            row++;
        }
        return row;
    }

    double temperatureK(WeatherHour row, double elevationAmslM) {
        return row.temperatureK()
                - weather.lapseKPerM() * (elevationAmslM - weather.referenceElevationAmslM());
    }

    /**
     * Pressure altitude, m. The altimeter setting is the sea-level pressure of a standard column
     * through the station, so the two scales differ by the standard height of the setting alone.
     */
    static double pressureAltitudeM(WeatherHour row, double elevationAmslM) {
        double power = LAPSE_RATIO * GAS_COEFFICIENT / GRAVITY_COEFFICIENT;
        return elevationAmslM
                + SEA_LEVEL_K / LAPSE_RATIO * (1 - Math.pow(row.qnhPa() / SEA_LEVEL_PA, power));
    }

    /** Density of dry air, kg/m³; damp air is thinner and drags less. */
    double densityKgPerM3(WeatherHour row, double elevationAmslM) {
        double altitude = pressureAltitudeM(row, elevationAmslM);
        double power = GRAVITY_COEFFICIENT / (LAPSE_RATIO * GAS_COEFFICIENT);
        double pressure = SEA_LEVEL_PA * Math.pow(1 - LAPSE_RATIO * altitude / SEA_LEVEL_K, power);
        return pressure / (GAS_COEFFICIENT * temperatureK(row, elevationAmslM));
    }
}
