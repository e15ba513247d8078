package underhook.adapter.job.text;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import underhook.core.unit.Units;

/** A kind of number with the units it may be written in, and its SI unit. */
public enum Quantity {
    MASS(
            new Unit("kg", List.of("kg"), v -> v),
            new Unit("lb", List.of("lb", "lbs"), Units::lbToKg)),
    LENGTH(new Unit("m", List.of("m"), v -> v), new Unit("ft", List.of("ft"), Units::ftToM)),
    SPEED(
            new Unit("kt", List.of("kt", "kts"), Units::ktToMPerS),
            new Unit("m_per_s", List.of("m/s"), v -> v)),
    VERTICAL_SPEED(
            new Unit("ft_per_min", List.of("ft/min"), Units::ftPerMinuteToMPerS),
            new Unit("m_per_s", List.of("m/s"), v -> v)),
    PRESSURE(
            new Unit("hpa", List.of("hpa"), Units::hpaToPa),
            new Unit("inhg", List.of("inhg"), Units::inHgToPa)),
    TEMPERATURE(new Unit("c", List.of("°c", "c"), Units::celsiusToKelvin)),
    ANGLE(new Unit("deg", List.of("°", "deg"), Units::degToRad)),
    MASS_FLOW(
            new Unit("kg_per_min", List.of("kg/min"), Units::kgPerMinuteToKgPerS),
            new Unit("kg_per_h", List.of("kg/h", "kg/hr"), v -> Units.kgPerMinuteToKgPerS(v / 60)),
            new Unit(
                    "lb_per_min",
                    List.of("lb/min", "lbs/min"),
                    v -> Units.kgPerMinuteToKgPerS(Units.lbToKg(v))),
            new Unit(
                    "lb_per_h",
                    List.of("lb/h", "lb/hr", "lbs/h", "lbs/hr", "pph"),
                    v -> Units.kgPerMinuteToKgPerS(Units.lbToKg(v) / 60))),
    TIME(
            new Unit("s", List.of("s"), v -> v),
            new Unit("min", List.of("min"), Units::minutesToS),
            new Unit("hours", List.of("h"), v -> Units.minutesToS(v * 60))),
    AREA(new Unit("m2", List.of("m2", "m²"), v -> v)),
    FRACTION(new Unit("percent", List.of("%"), v -> v / 100)),
    FORCE(new Unit("n", List.of("n"), v -> v), new Unit("kn", List.of("kn"), v -> v * 1000)),
    VOLTAGE(new Unit("v", List.of("v"), v -> v));

    @SuppressWarnings("ImmutableEnumChecker") // List.of gives an immutable list
    private final List<Unit> units;

    Quantity(Unit... units) {
        this.units = List.of(units);
    }

    /** Its units; the first is the usual one. */
    List<Unit> units() {
        return units;
    }

    /** The unit whose field names end in this. */
    Unit ending(String suffix) {
        return units.stream()
                .filter(unit -> unit.suffix.equals(suffix))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no unit " + suffix));
    }

    Optional<Unit> written(String word) {
        return units.stream().filter(unit -> unit.words.contains(word)).findFirst();
    }

    /** Units that are said in whole words. */
    private static final Map<String, String> WHOLE =
            Map.of("c", "degrees", "min", "minutes", "s", "seconds");

    /** One unit: end of the field's name, what people write behind the number, way to SI. */
    record Unit(String suffix, List<String> words, DoubleUnaryOperator toSi) {
        String word() {
            return words.get(0);
        }

        /** Whether these words, of what is allowed, are of this unit. */
        boolean isSaidIn(String allowed) {
            String end = allowed.substring(allowed.lastIndexOf(' ') + 1).toLowerCase(Locale.ROOT);
            return words.contains(end) || end.startsWith(suffix) || end.equals(WHOLE.get(suffix));
        }
    }
}
