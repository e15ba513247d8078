package underhook.planner.odds;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import underhook.core.job.LoadKind;
import underhook.core.job.Place;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;

/** When the forecast's wind lets a kind of load be hooked up or let go at a place. */
final class Windows {
    /** A wind this far over its limit still counts as at it. */
    private static final double DUST_M_PER_S = 1e-6;

    private final Weather weather;

    /**
     * A time without a break in which the wind is inside its limits, s of the day's clock.
     *
     * @param opensS minus infinity when it is open from the forecast's first row on
     * @param closesS infinity when it is open to the forecast's end
     */
    record Window(double opensS, double closesS) {
        /** Inside both. */
        Window and(Window other) {
            return new Window(Math.max(opensS, other.opensS), Math.min(closesS, other.closesS));
        }
    }

    Windows(Weather weather) {
        this.weather = weather;
    }

    /** The window of loads at a place that holds a time; an empty one when none does. */
    Window at(List<LoadKind> kinds, Place place, Clock clock, Instant time) {
        List<WeatherHour> rows = weather.hours();
        int row = rowAt(time);
        if (row < 0 || !isOpen(kinds, place, row)) {
            return new Window(clock.timeS(time), clock.timeS(time));
        }
        int first = row;
        while (first > 0 && isOpen(kinds, place, first - 1)) {
            first--;
        }
        int last = row;
        while (last + 1 < rows.size() && isOpen(kinds, place, last + 1)) {
            last++;
        }
        return new Window(
                first == 0 ? Double.NEGATIVE_INFINITY : clock.timeS(rows.get(first).from()),
                last + 1 == rows.size()
                        ? Double.POSITIVE_INFINITY
                        : clock.timeS(rows.get(last + 1).from()));
    }

    /** Row that holds at a time; negative outside the forecast. */
    private int rowAt(Instant time) {
        List<WeatherHour> rows = weather.hours();
        int row = -1;
        while (row + 1 < rows.size() && !rows.get(row + 1).from().isAfter(time)) {
            row++;
        }
        return time.isAfter(weather.until()) ? -1 : row;
    }

    /** From a row to the next: by the job's rule the row itself, or the worse of the two. */
    private boolean isOpen(List<LoadKind> kinds, Place place, int row) {
        List<Integer> rows = new ArrayList<>(List.of(row));
        if (weather.between() == Weather.Between.STRICTER && row + 1 < weather.hours().size()) {
            rows.add(row + 1);
        }
        return kinds.stream()
                .map(LoadKind::windLimit)
                .allMatch(limit -> rows.stream().allMatch(at -> isWithin(limit, place, at)));
    }

    private boolean isWithin(WindLimit limit, Place place, int row) {
        WeatherHour hour = weather.hours().get(row);
        double meanMPerS = hour.windMPerS() * place.exposureFactor();
        double gustMPerS = hour.gustMPerS() * place.exposureFactor();
        return meanMPerS <= limit.meanMPerS() + DUST_M_PER_S
                && gustMPerS <= limit.gustMPerS() + DUST_M_PER_S
                && gustMPerS - meanMPerS <= limit.spreadMPerS() + DUST_M_PER_S;
    }
}
