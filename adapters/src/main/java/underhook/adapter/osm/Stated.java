package underhook.adapter.osm;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.core.unit.Units;

/**
 * A height as somebody typed it.
 *
 * @param heightM height, m, above 0 and at most 1000
 * @param isRough whether it was given as a guess or a range
 * @source OSM-WIKI pages "Key:height" (metres unless a unit follows; feet and inches as 7'4"),
 *     "Key:voltage" (volts, several with a semicolon)
 */
record Stated(double heightM, boolean isRough) {
    private static final double HIGHEST_M = 1000;
    private static final double HIGHEST_VOLTAGE_V = 2_000_000;
    private static final String NUMBER = "([0-9]{1,9}(?:[.,][0-9]{1,9})?)";
    private static final Pattern HEIGHT =
            Pattern.compile(
                    NUMBER
                            + "\\s*(|m|metre|metres|meter|meters|ft|feet|foot|'|’)\\.?"
                            + "(?:\\s*"
                            + NUMBER
                            + "\\s*(?:\"|”|''|in|inch|inches))?");
    private static final Pattern ROUGH =
            Pattern.compile(
                    "(?:~|≈|<|>|=|ca\\.?|circa|about|approx\\.?|up to|around|c\\.)\\s*(.*)");
    private static final Pattern RANGE = Pattern.compile(NUMBER + "\\s*(?:-|–|to)\\s*(.*)");
    private static final Pattern VOLTAGE =
            Pattern.compile("([0-9]{1,9}(?:\\.[0-9]{1,9})?)\\s*(v|kv|)");
    private static final Pattern THOUSANDS = Pattern.compile("[0-9]{1,3}(?:[, ][0-9]{3})+\\s*v?");

    /** The highest of the heights of a thing: height, est_height, tower:height, building:height. */
    static Optional<Stated> heightOf(Map<String, String> tags) {
        Optional<Stated> stated = Optional.empty();
        for (String key : new String[] {"height", "tower:height", "building:height"}) {
            stated = higher(stated, length(tags.getOrDefault(key, "")));
        }
        if (stated.isPresent()) {
            return stated;
        }
        return length(tags.getOrDefault("est_height", ""))
                .map(guess -> new Stated(guess.heightM, true));
    }

    /** The highest of one or several lengths with their units; empty when none can be read. */
    static Optional<Stated> length(String text) {
        Optional<Stated> highest = Optional.empty();
        for (String one : text.toLowerCase(Locale.ROOT).split(";")) {
            highest = higher(highest, oneLength(one.strip(), false));
        }
        return highest;
    }

    private static Optional<Stated> higher(Optional<Stated> a, Optional<Stated> b) {
        if (a.isEmpty() || b.isEmpty()) {
            return a.isPresent() ? a : b;
        }
        return a.get().heightM >= b.get().heightM ? a : b;
    }

    private static Optional<Stated> oneLength(String text, boolean rough) {
        Matcher guess = ROUGH.matcher(text);
        if (guess.matches()) {
            return oneLength(guess.group(1), true);
        }
        Matcher range = RANGE.matcher(text);
        if (range.matches()) {
            return oneLength(range.group(2), true);
        }
        Matcher matcher = HEIGHT.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        boolean isFeet = !matcher.group(2).isEmpty() && !matcher.group(2).startsWith("m");
        OptionalDouble main = number(matcher.group(1));
        String inches = matcher.group(3);
        if (main.isEmpty() || (inches != null && !isFeet)) {
            return Optional.empty();
        }
        double value = main.getAsDouble();
        if (inches != null) {
            value += number(inches).orElse(12) / 12;
        }
        double heightM = isFeet ? Units.ftToM(value) : value;
        return heightM > 0 && heightM <= HIGHEST_M
                ? Optional.of(new Stated(heightM, rough))
                : Optional.empty();
    }

    /** Three digits behind a comma may be thousands: then nobody knows what was meant. */
    private static OptionalDouble number(String text) {
        if (text.matches("[0-9]+,[0-9]{3}")) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
    }

    /**
     * The highest of one or several voltages, V; 0 when none can be read.
     *
     * @param leastVoltageV bare numbers below this are not believed to be volts and count as kilovolts
     */
    static double voltageV(String text, double leastVoltageV) {
        double highestV = 0;
        String lower = text.toLowerCase(Locale.ROOT).strip();
        String list = THOUSANDS.matcher(lower).matches() ? lower.replaceAll("[, ]", "") : lower;
        for (String one : list.split("[;,/]")) {
            Matcher matcher = VOLTAGE.matcher(one.strip());
            if (!matcher.matches()) {
                continue;
            }
            double value = Double.parseDouble(matcher.group(1));
            boolean isKilo =
                    matcher.group(2).equals("kv")
                            || (matcher.group(2).isEmpty() && value < leastVoltageV);
            double voltageV = isKilo ? Units.kvToV(value) : value;
            if (voltageV <= HIGHEST_VOLTAGE_V) {
                highestV = Math.max(highestV, voltageV);
            }
        }
        return highestV;
    }
}
