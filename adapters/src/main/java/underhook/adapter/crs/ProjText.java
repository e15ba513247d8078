package underhook.adapter.crs;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A system as proj text, before the library builds it: what the library would compute otherwise than
 * IOGP-373-7-2 says is put so that it cannot, or refused. A text names each parameter once.
 *
 * @source IOGP-373-7-2 section 3.2.1.2 for Mercator variant B
 */
final class ProjText {
    private static final Map<String, Double> INVERSE_FLATTENING =
            Map.of("WGS84", 298.257223563, "GRS80", 298.257222101, "krass", 298.3);
    private static final Set<String> UNITS = Set.of("m", "ft", "us-ft");

    private final Map<String, String> values = new LinkedHashMap<>();

    private ProjText() {}

    static ProjText of(String text) {
        ProjText parsed = new ProjText();
        for (String word : text.strip().split("\\s+")) {
            int sign = word.indexOf('=');
            parsed.values.put(
                    sign < 0 ? word : word.substring(0, sign),
                    sign < 0 ? "" : word.substring(sign + 1));
        }
        return parsed;
    }

    /** Why it must not be built, as the end of a sentence. */
    Optional<String> refusal() {
        String projection = values.getOrDefault("+proj", "");
        if (values.containsKey("+axis")) {
            return Optional.of("its axes do not point east and north.");
        }
        if (projection.equals("geocent")) {
            return Optional.of("it is geocentric, not a map.");
        }
        if (!UNITS.contains(values.getOrDefault("+units", "m"))) {
            return Optional.of("its unit of length is not known.");
        }
        // The library is off by kilometres for these, see docs/validation.md.
        if (projection.equals("poly")) {
            return Optional.of("the polyconic projection is not read.");
        }
        if (projection.equals("krovak")) {
            // The data set's shift of its datum is off by up to 16 m, too.
            return Optional.of(
                    "Krovak's projection is not read. Perhaps the data can be had in UTM.");
        }
        if (projection.equals("omerc") && !values.containsKey("+no_uoff")) {
            return Optional.of("an oblique Mercator counted from its centre is not read.");
        }
        if (isMercator()
                && !values.containsKey("+a")
                && !INVERSE_FLATTENING.containsKey(ellipsoid())) {
            return Optional.of("a Mercator on this ellipsoid is not read.");
        }
        return Optional.empty();
    }

    private boolean isMercator() {
        return values.getOrDefault("+proj", "").equals("merc") && values.containsKey("+lat_ts");
    }

    /** The text for the library: a Mercator's true parallel is given as the scale at the equator. */
    String text() {
        Map<String, String> mended = new LinkedHashMap<>(values);
        if (isMercator()) {
            double parallelRad = Math.toRadians(number("+lat_ts"));
            mended.remove("+lat_ts");
            if (Math.abs(parallelRad) > 0) {
                mended.put("+k_0", Double.toString(scaleAtEquator(parallelRad)));
            }
        }
        return mended.entrySet().stream()
                .map(e -> e.getValue().isEmpty() ? e.getKey() : e.getKey() + "=" + e.getValue())
                .collect(Collectors.joining(" "));
    }

    private double scaleAtEquator(double parallelRad) {
        double e2 = eccentricitySquared();
        double sine = Math.sin(parallelRad);
        return Math.cos(parallelRad) / Math.sqrt(1 - e2 * sine * sine);
    }

    private double eccentricitySquared() {
        if (values.containsKey("+a") && values.containsKey("+b")) {
            double ratio = number("+b") / number("+a");
            return 1 - ratio * ratio;
        }
        double flattening = 1 / INVERSE_FLATTENING.getOrDefault(ellipsoid(), 0.0);
        return flattening * (2 - flattening);
    }

    private String ellipsoid() {
        return values.getOrDefault("+ellps", values.getOrDefault("+datum", ""));
    }

    private double number(String key) {
        return Double.parseDouble(values.getOrDefault(key, ""));
    }
}
