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

    /**
     * Shifts that the data set takes for a whole datum, and that are off by 30 m to 5 km somewhere in the
     * area of a system that uses them: Fatu Iva 72, Nuku Hiva, Indian 1975, Pampa del Castillo, Kalianpur,
     * PSAD56, Tete, Arc 1950.
     *
     * @source DERIVED from every projected EPSG system against GDAL 3.6.2 with EPSG's operations alone
     */
    private static final Set<String> MEAN_SHIFTS =
            Set.of(
                    "347.103,1078.125,2623.922,-33.8875,70.6773,-9.3943,186.074",
                    "84,274,65",
                    "210,814,289",
                    "27.5,14,186.4",
                    "214,804,268",
                    "295,736,257",
                    "-288,175,-376",
                    "-80,-100,-228",
                    "-143,-90,-294");

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
        if (hasMeanShift()) {
            return Optional.of(
                    "the shift from its datum to WGS 84 differs from region to region."
                            + " Perhaps the data can be had in the country's present system.");
        }
        if (isFerro()) {
            return Optional.of(
                    "it counts from Ferro, which lies elsewhere from one user to the next.");
        }
        if (isMercator()
                && !values.containsKey("+a")
                && !INVERSE_FLATTENING.containsKey(ellipsoid())) {
            return Optional.of("a Mercator on this ellipsoid is not read.");
        }
        return Optional.empty();
    }

    /** Whole numbers may have a fraction of 0, and rotations of 0 may follow. */
    private boolean hasMeanShift() {
        String shift =
                ("," + values.getOrDefault("+towgs84", ""))
                        .replaceAll("\\.0+(?=,|$)", "")
                        .replaceAll("(,-?0)+$", "");
        return shift.length() > 1 && MEAN_SHIFTS.contains(shift.substring(1));
    }

    /** 17°40' west of Greenwich, or 14 seconds less. @source EPSG prime meridian 8909 */
    private boolean isFerro() {
        String meridian = values.getOrDefault("+pm", "");
        return meridian.equals("ferro") || meridian.startsWith("-17.66");
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
