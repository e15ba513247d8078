package underhook.core.billing;

import java.util.ArrayList;
import java.util.List;

/**
 * The basis of a day's invoice.
 *
 * @param lines one for each item of the tariff, and one that fills up to the day's minimum
 * @param total their sum
 */
public record Invoice(List<Line> lines, Money total) {
    /**
     * What was done on the day.
     *
     * @param flyingMillis time from take-off to landing, ms, not negative
     * @param engineMillis time with the engine on, ms, not negative
     * @param standbyMillis time ready with the engine off, ms, not negative
     * @param lifts trips with something on the hook
     * @param poles poles standing
     * @param fuelKg fuel taken, whole kilograms
     */
    public record Quantities(
            long flyingMillis,
            long engineMillis,
            long standbyMillis,
            int lifts,
            int poles,
            long fuelKg) {
        public Quantities {
            if (flyingMillis < 0
                    || engineMillis < 0
                    || standbyMillis < 0
                    || lifts < 0
                    || poles < 0
                    || fuelKg < 0) {
                throw new IllegalArgumentException("quantities must not be negative.");
            }
        }
    }

    /**
     * One line.
     *
     * @param measured what was measured, with its unit
     * @param units what is charged
     * @param unit what one unit is
     * @param centsPerUnit for one unit
     * @param cents for all
     */
    public record Line(
            String name, String measured, long units, String unit, long centsPerUnit, long cents) {}

    public Invoice {
        lines = List.copyOf(lines);
    }

    /**
     * Works the invoice out.
     *
     * @throws ArithmeticException when the sum leaves the range of whole cents
     */
    public static Invoice of(Tariff tariff, Quantities done) {
        List<Line> lines = new ArrayList<>();
        long sum = 0;
        for (Tariff.Item item : tariff.items()) {
            Line line = line(item, done);
            lines.add(line);
            sum = Math.addExact(sum, line.cents());
        }
        if (sum < tariff.dayMinimumCents()) {
            long missing = tariff.dayMinimumCents() - sum;
            lines.add(new Line("up to the day's minimum", "", 1, "day", missing, missing));
            sum = tariff.dayMinimumCents();
        }
        return new Invoice(lines, new Money(sum, tariff.currency()));
    }

    private static Line line(Tariff.Item item, Quantities done) {
        return switch (item.basis()) {
            case FLYING_TIME -> time(item, done.flyingMillis());
            case ENGINE_TIME -> time(item, done.engineMillis());
            case STANDBY_TIME -> time(item, done.standbyMillis());
            case LIFTS -> count(item, done.lifts(), "lift");
            case POLES -> count(item, done.poles(), "pole");
            case FUEL_KG -> count(item, done.fuelKg(), "kg");
            case DAY -> count(item, 1, "day");
        };
    }

    private static Line time(Tariff.Item item, long millis) {
        long seconds = (millis + 500) / 1000;
        String measured =
                seconds / 3600 + " h " + seconds / 60 % 60 + " min " + seconds % 60 + " s";
        return charged(item, measured, item.rounding().units(millis), unit(item.rounding()));
    }

    private static String unit(Tariff.Rounding rounding) {
        return switch (rounding) {
            case NEAREST_MINUTE -> "minute, to the nearest";
            case STARTED_MINUTE -> "started minute";
            case STARTED_TENTH_OF_HOUR -> "started tenth of an hour";
            case STARTED_HOUR -> "started hour";
        };
    }

    private static Line count(Tariff.Item item, long units, String unit) {
        return charged(item, units + " " + unit, units, unit);
    }

    private static Line charged(Tariff.Item item, String measured, long units, String unit) {
        return new Line(
                item.name(),
                measured,
                units,
                unit,
                item.centsPerUnit(),
                Math.multiplyExact(units, item.centsPerUnit()));
    }
}
