package underhook.adapter.crs;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * A reference system out of WKT, version 1 (also as drawn up by desktop programs) or 2.
 *
 * @param name its name in the text
 * @param parameters the same as proj text
 * @source IOGP-373-7-2 for the methods and their parameters; OGC-01-009 and OGC-18-010 for the text
 */
record WktSystem(String name, String parameters) {
    private static final double DEG_PER_RAD = 180 / Math.PI;

    /** 2.5969213 grads east of Greenwich. @source EPSG prime meridian 8903 */
    private static final double PARIS_DEG = 2.33722917;

    static WktSystem read(WktNode root, Function<String, Optional<String>> parametersOfCode)
            throws WktFault {
        return switch (root.keyword()) {
            case "COMPD_CS", "COMPOUNDCRS" -> {
                if (root.children().isEmpty()) {
                    throw new WktFault(root.keyword() + " holds nothing.");
                }
                yield read(root.children().get(0), parametersOfCode);
            }
            case "BOUNDCRS" -> {
                WktNode source = root.get("SOURCECRS");
                if (source.children().isEmpty()) {
                    throw new WktFault("SOURCECRS holds nothing.");
                }
                yield ofHorizontal(
                        source.children().get(0), Optional.of(boundShift(root)), parametersOfCode);
            }
            default -> ofHorizontal(root, Optional.empty(), parametersOfCode);
        };
    }

    private static WktSystem ofHorizontal(
            WktNode node, Optional<String> shift, Function<String, Optional<String>> codes)
            throws WktFault {
        switch (node.keyword()) {
            case "GEOGCS", "GEOGCRS", "GEODCRS", "GEOGRAPHICCRS" -> {
                if (node.find("CS").isPresent()
                        && !plain(node.get("CS").text()).equals("ellipsoidal")) {
                    throw new WktFault("it is geocentric, not a map.");
                }
                if (Math.abs(angleUnit(node) * DEG_PER_RAD - 1) > 1e-9) {
                    throw new WktFault("its angles are not in degrees.");
                }
                return new WktSystem(
                        node.text(), "+proj=longlat " + datum(node, shift, codes) + " +no_defs");
            }
            case "PROJCS", "PROJCRS", "PROJECTEDCRS" -> {
                if (node.find("EXTENSION").isPresent()) {
                    return ofExtension(node, codes);
                }
                WktNode base =
                        node.get("GEOGCS", "BASEGEOGCRS", "BASEGEODCRS", "GEOGCRS", "GEODCRS");
                return new WktSystem(
                        node.text(),
                        new Conversion(node, base).proj()
                                + " "
                                + datum(base, shift, codes)
                                + String.format(
                                        Locale.ROOT, " +to_meter=%s +no_defs", lengthUnit(node)));
            }
            default -> throw new WktFault("\"" + node.keyword() + "\" is not a map's system.");
        }
    }

    /** What an extension says stands against the rest of the text, so only the code counts. */
    private static WktSystem ofExtension(WktNode node, Function<String, Optional<String>> codes)
            throws WktFault {
        Optional<String> parameters = node.epsgCode().flatMap(codes);
        if (parameters.isEmpty()) {
            throw new WktFault("an extension says otherwise than its projection.");
        }
        return new WktSystem(node.text(), parameters.get());
    }

    private static String boundShift(WktNode bound) throws WktFault {
        WktNode change = bound.get("ABRIDGEDTRANSFORMATION");
        String[] names = {
            "xaxistranslation",
            "yaxistranslation",
            "zaxistranslation",
            "xaxisrotation",
            "yaxisrotation",
            "zaxisrotation",
            "scaledifference"
        };
        String method = plain(change.get("METHOD").text());
        double turn = method.contains("coordinateframe") ? -1 : 1;
        if (!method.contains("geocentrictranslation")
                && !method.contains("positionvector")
                && turn > 0) {
            throw new WktFault("\"" + change.get("METHOD").text() + "\" is not a shift we know.");
        }
        double[] values = new double[7];
        for (WktNode parameter : change.list("PARAMETER")) {
            String name = plain(parameter.text());
            int index = List.of(names).indexOf(name);
            if (index < 0) {
                throw new WktFault("\"" + parameter.text() + "\" is not part of a shift we know.");
            }
            values[index] = parameter.number(0);
        }
        // proj wants position-vector rotations in arc seconds and the scale in parts per million.
        for (int i = 3; i < 6; i++) {
            values[i] *= turn;
        }
        if (values[6] > 0.5) {
            values[6] = (values[6] - 1) * 1e6;
        }
        return toWgs84(values);
    }

    private static String datum(
            WktNode base, Optional<String> shift, Function<String, Optional<String>> codes)
            throws WktFault {
        WktNode datum = base.get("DATUM", "GEODETICDATUM", "TRF", "ENSEMBLE");
        WktNode ellipsoid = datum.get("SPHEROID", "ELLIPSOID");
        double axis =
                ellipsoid.number(0)
                        * ellipsoid.find("LENGTHUNIT", "UNIT").map(WktSystem::factor).orElse(1.0);
        double inverse = ellipsoid.number(1);
        StringBuilder out =
                new StringBuilder(
                        // proj4j misreads a flattening.
                        String.format(
                                Locale.ROOT,
                                "+a=%s +b=%s",
                                axis,
                                inverse > 0 ? axis * (1 - 1 / inverse) : axis));
        double meridianDeg = meridianDeg(base);
        if (Math.abs(meridianDeg) > 0) {
            out.append(String.format(Locale.ROOT, " +pm=%s", meridianDeg));
        }
        out.append(' ').append(shift.isPresent() ? shift.get() : statedShift(base, datum, codes));
        return out.toString().strip();
    }

    /** Degrees of the prime meridian from Greenwich. */
    private static double meridianDeg(WktNode base) throws WktFault {
        Optional<WktNode> meridian = base.find("PRIMEM", "PRIMEMERIDIAN");
        if (meridian.isEmpty()) {
            return 0;
        }
        double stated = meridian.get().number(0);
        Optional<WktNode> own = meridian.get().find("ANGLEUNIT", "UNIT");
        if (own.isPresent()) {
            return stated * factor(own.get()) * DEG_PER_RAD;
        }
        boolean isDegree = Math.abs(angleUnit(base) * DEG_PER_RAD - 1) < 1e-9;
        // Programs write degrees here even where the system counts in grads.
        if (isDegree || Math.abs(stated - PARIS_DEG) < 1e-6) {
            return stated;
        }
        if (Math.abs(stated - PARIS_DEG / 0.9) < 1e-6) {
            return PARIS_DEG;
        }
        if (Math.abs(stated) > 0) {
            throw new WktFault("the unit of its prime meridian is not clear.");
        }
        return 0;
    }

    private static String statedShift(
            WktNode base, WktNode datum, Function<String, Optional<String>> codes) throws WktFault {
        Optional<WktNode> stated = datum.find("TOWGS84");
        if (stated.isPresent()) {
            double[] values = new double[7];
            int count = stated.get().numbers().size();
            if (count != 3 && count != 7) {
                throw new WktFault("TOWGS84 has " + count + " numbers instead of 3 or 7.");
            }
            for (int i = 0; i < count; i++) {
                values[i] = stated.get().number(i);
            }
            return toWgs84(values);
        }
        String name = datum.text();
        Optional<String> known = base.epsgCode().or(() -> KnownDatums.codeOf(name)).flatMap(codes);
        if (known.isEmpty() && !KnownDatums.isGeocentric(name)) {
            throw new WktFault(
                    "the shift from datum \""
                            + name
                            + "\" to WGS 84 is not known. Perhaps the system has an EPSG code.");
        }
        // Without any shift the datum's ellipsoid decides, see Proj4jReferenceSystems.
        return known.map(WktSystem::shiftIn).orElse("");
    }

    private static String shiftIn(String parameters) {
        for (String parameter : parameters.split(" ")) {
            if (parameter.startsWith("+towgs84=") || parameter.startsWith("+datum=")) {
                return parameter;
            }
        }
        return "";
    }

    private static String toWgs84(double[] values) {
        List<String> texts = new ArrayList<>();
        for (double value : values) {
            texts.add(Double.toString(value));
        }
        return "+towgs84=" + String.join(",", texts);
    }

    /** Radians of one unit of a geographic system. */
    private static double angleUnit(WktNode base) {
        return unit(base, "ANGLEUNIT").orElse(Math.PI / 180);
    }

    /** Metres of one unit of a projected system. */
    private static double lengthUnit(WktNode node) throws WktFault {
        double metres = unit(node, "LENGTHUNIT").orElse(1.0);
        if (!(metres > 0)) {
            throw new WktFault("its unit of length is not above 0.");
        }
        return metres;
    }

    private static Optional<Double> unit(WktNode node, String keyword) {
        return node.find(keyword, "UNIT")
                .or(() -> node.find("CS").flatMap(cs -> cs.find(keyword, "UNIT")))
                .or(() -> node.find("AXIS").flatMap(axis -> axis.find(keyword, "UNIT")))
                .map(WktSystem::factor);
    }

    private static double factor(WktNode unit) {
        return unit.numbers().isEmpty() ? Double.NaN : unit.numbers().get(0);
    }

    static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }

    /** The projection of a projected system, in its base system's degrees and in metres. */
    private static final class Conversion {
        private final String methodName;
        private final Map<String, Double> values = new HashMap<>();
        private final Map<String, String> shown = new HashMap<>();

        Conversion(WktNode node, WktNode base) throws WktFault {
            Optional<WktNode> second = node.find("CONVERSION");
            WktNode holder = second.orElse(node);
            methodName = holder.get("PROJECTION", "METHOD").text();
            double length = lengthUnit(node);
            double angle = second.isPresent() ? Math.PI / 180 : angleUnit(base);
            for (WktNode parameter : holder.list("PARAMETER")) {
                String key = plain(parameter.text());
                double value = parameter.number(0);
                Optional<Double> own =
                        parameter
                                .find("LENGTHUNIT", "ANGLEUNIT", "SCALEUNIT", "UNIT")
                                .map(WktSystem::factor);
                if (key.contains("easting") || key.contains("northing")) {
                    value *= own.orElse(second.isPresent() ? 1.0 : length);
                } else if (key.contains("scale")) {
                    value *= own.orElse(1.0);
                } else {
                    value *= own.orElse(angle) * DEG_PER_RAD;
                }
                values.put(key, value);
                shown.put(key, parameter.text());
            }
        }

        String proj() throws WktFault {
            String text = projOfMethod();
            if (!values.isEmpty()) {
                String key = values.keySet().iterator().next();
                throw new WktFault(
                        "\"" + shown.get(key) + "\" is no parameter of \"" + methodName + "\".");
            }
            return text;
        }

        private String projOfMethod() throws WktFault {
            String method = plain(methodName);
            return switch (method) {
                case "transversemercator", "gausskruger" ->
                        "+proj=tmerc" + lat0() + lon0() + scale() + offsets();
                case "lambertconformalconic1sp", "lambertconicconformal1sp" -> {
                    double lat = required("latitudeoforigin", "latitudeofnaturalorigin");
                    yield "+proj=lcc"
                            + part("lat_1", lat)
                            + part("lat_0", lat)
                            + lon0()
                            + scale()
                            + offsets();
                }
                case "lambertconformalconic2sp", "lambertconicconformal2sp" ->
                        "+proj=lcc" + lat0() + lon0() + parallels() + offsets();
                case "lambertconformalconic" -> {
                    boolean two = values.containsKey("standardparallel2");
                    double first = required("standardparallel1");
                    yield "+proj=lcc"
                            + lat0()
                            + lon0()
                            + part("lat_1", first)
                            + part("lat_2", two ? required("standardparallel2") : first)
                            + scale()
                            + offsets();
                }
                case "lambertazimuthalequalarea" -> "+proj=laea" + lat0() + lon0() + offsets();
                case "albersconicequalarea", "albersequalarea", "albers" ->
                        "+proj=aea" + lat0() + lon0() + parallels() + offsets();
                case "mercator1sp", "mercatorvarianta" -> {
                    optional("latitudeoforigin", "latitudeofnaturalorigin");
                    yield "+proj=merc" + lon0() + scale() + offsets();
                }
                case "mercator2sp", "mercatorvariantb", "mercator" -> {
                    double parallel =
                            required("standardparallel1", "latitudeof1ststandardparallel");
                    yield "+proj=merc" + part("lat_ts", parallel) + lon0() + offsets();
                }
                case "obliquestereographic", "doublestereographic" ->
                        "+proj=sterea" + lat0() + lon0() + scale() + offsets();
                case "polarstereographic",
                        "polarstereographicvarianta",
                        "polarstereographicvariantb",
                        "stereographicnorthpole",
                        "stereographicsouthpole" ->
                        polarStereographic();
                case "hotineobliquemercator",
                        "hotineobliquemercatorvarianta",
                        "hotineobliquemercatorazimuthnaturalorigin",
                        "rectifiedskeworthomorphicnaturalorigin" ->
                        oblique(false);
                case "hotineobliquemercatorazimuthcenter",
                        "hotineobliquemercatorvariantb",
                        "obliquemercator",
                        "rectifiedskeworthomorphiccenter" ->
                        oblique(true);
                case "swissobliquecylindrical", "swissobliquemercator" -> {
                    String lat = part("lat_0", required("latitudeofcenter"));
                    String lon = part("lon_0", required("longitudeofcenter", "centralmeridian"));
                    yield "+proj=somerc" + lat + lon + scale() + offsets();
                }
                default -> throw new WktFault("projection \"" + methodName + "\" is not known.");
            };
        }

        private String polarStereographic() throws WktFault {
            double lat =
                    required(
                            "latitudeoforigin",
                            "latitudeofnaturalorigin",
                            "latitudeofstandardparallel",
                            "standardparallel1");
            String pole = part("lat_0", lat < 0 ? -90 : 90);
            double scale = optional(SCALE_NAMES).orElse(1.0);
            if (Math.abs(lat) < 90 && Math.abs(scale - 1) > 0) {
                throw new WktFault("it states both a true latitude and a scale factor.");
            }
            return "+proj=stere"
                    + pole
                    + part("lat_ts", lat)
                    + lon0()
                    + part("k", scale)
                    + offsets();
        }

        private String oblique(boolean atCentre) throws WktFault {
            double lat = required("latitudeofcenter", "latitudeofprojectioncentre");
            double lon = required("longitudeofcenter", "longitudeofprojectioncentre");
            double azimuth =
                    required("azimuth", "azimuthofinitialline", "azimuthatprojectioncentre");
            double rectified =
                    optional(
                                    "rectifiedgridangle",
                                    "anglefromrectifiedtoskewgrid",
                                    "xyplanerotation")
                            .orElse(azimuth);
            String scale = scale();
            String offsets = offsets();
            boolean square = Math.abs(azimuth - 90) < 1e-9 && Math.abs(rectified - 90) < 1e-9;
            if (square && atCentre) {
                return "+proj=somerc" + part("lat_0", lat) + part("lon_0", lon) + scale + offsets;
            }
            if (square) {
                throw new WktFault("an oblique Mercator at 90° counted from its equator.");
            }
            return "+proj=omerc"
                    + (atCentre ? "" : " +no_uoff")
                    + part("lat_0", lat)
                    + part("lonc", lon)
                    + part("alpha", azimuth)
                    + part("gamma", rectified)
                    + scale
                    + offsets;
        }

        private static final String[] SCALE_NAMES = {
            "scalefactor",
            "scalefactoratnaturalorigin",
            "scalefactoratprojectioncentre",
            "scalefactoroninitialline"
        };

        private String lat0() throws WktFault {
            return part(
                    "lat_0",
                    required(
                            "latitudeoforigin",
                            "latitudeofnaturalorigin",
                            "latitudeoffalseorigin",
                            "latitudeofcenter",
                            "latitudeofprojectioncentre"));
        }

        private String lon0() throws WktFault {
            return part(
                    "lon_0",
                    required(
                            "centralmeridian",
                            "longitudeofnaturalorigin",
                            "longitudeoffalseorigin",
                            "longitudeofcenter",
                            "longitudeoforigin"));
        }

        private String parallels() throws WktFault {
            return part("lat_1", required("standardparallel1", "latitudeof1ststandardparallel"))
                    + part("lat_2", required("standardparallel2", "latitudeof2ndstandardparallel"));
        }

        private String scale() {
            return part("k_0", optional(SCALE_NAMES).orElse(1.0));
        }

        private String offsets() throws WktFault {
            return part(
                            "x_0",
                            required(
                                    "falseeasting",
                                    "eastingatfalseorigin",
                                    "eastingatprojectioncentre"))
                    + part(
                            "y_0",
                            required(
                                    "falsenorthing",
                                    "northingatfalseorigin",
                                    "northingatprojectioncentre"));
        }

        private static String part(String key, double value) {
            return String.format(Locale.ROOT, " +%s=%s", key, value);
        }

        private Optional<Double> optional(String... keys) {
            for (String key : keys) {
                Double value = values.remove(key);
                if (value != null) {
                    return Optional.of(value);
                }
            }
            return Optional.empty();
        }

        private double required(String... keys) throws WktFault {
            Optional<Double> value = optional(keys);
            if (value.isEmpty()) {
                throw new WktFault("\"" + methodName + "\" lacks its " + keys[0] + ".");
            }
            return value.get();
        }
    }
}
