package underhook.adapter.crs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.locationtech.proj4j.CRSFactory;
import org.locationtech.proj4j.CoordinateReferenceSystem;
import org.locationtech.proj4j.Proj4jException;
import org.locationtech.proj4j.datum.Datum;
import org.locationtech.proj4j.datum.Ellipsoid;
import org.locationtech.proj4j.io.Proj4FileReader;
import underhook.app.port.ReferenceSystem;
import underhook.app.port.ReferenceSystems;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;

/** Finds reference systems in proj4j's EPSG data set, or builds them from WKT. */
public final class Proj4jReferenceSystems implements ReferenceSystems {
    private static final Pattern CODE =
            Pattern.compile(
                    "(?:EPSG *:{1,2} *|urn:ogc:def:crs:EPSG:[0-9.]*:)?([0-9]{4,9})",
                    Pattern.CASE_INSENSITIVE);

    /** The data set says no shift for the intermediate Israeli systems, GDAL one of 78 m. */
    private static final Set<String> SHIFT_MISSING = Set.of("6990", "6991");

    private static final int LONGEST_TEXT = 65_536;

    private final Map<String, Outcome<ReferenceSystem>> byCode = new ConcurrentHashMap<>();
    private final CRSFactory factory = new CRSFactory();
    private final CoordinateReferenceSystem wgs84 =
            factory.createFromParameters("EPSG:4326", "+proj=longlat +datum=WGS84 +no_defs");

    @Override
    public Outcome<ReferenceSystem> find(String codeOrWkt) {
        String text = codeOrWkt.strip();
        Matcher code = CODE.matcher(text);
        if (code.matches()) {
            return byCode.computeIfAbsent(code.group(1), this::ofCode);
        }
        if (text.length() > LONGEST_TEXT) {
            return refused(text, "it is longer than " + LONGEST_TEXT + " characters.");
        }
        return ofWkt(text);
    }

    private Outcome<ReferenceSystem> ofCode(String code) {
        String name = "EPSG:" + code;
        Optional<String> parameters = parametersOf(code);
        if (parameters.isEmpty()) {
            return refused(name, "the EPSG data set has no such code, or not all of it.");
        }
        return build(name, parameters.get());
    }

    private Outcome<ReferenceSystem> ofWkt(String text) {
        WktSystem system;
        try {
            system = WktSystem.read(WktNode.parse(text), this::parametersOf);
        } catch (WktFault e) {
            return refused(text, e.reason());
        }
        return build(system.name(), system.parameters());
    }

    private Outcome<ReferenceSystem> build(String name, String parameters) {
        ProjText text = ProjText.of(parameters);
        if (text.refusal().isPresent()) {
            return refused(name, text.refusal().get());
        }
        try {
            CoordinateReferenceSystem system = factory.createFromParameters(name, text.text());
            if (!isShiftKnown(system.getDatum())) {
                return refused(
                        name,
                        "the shift from its datum to WGS 84 is not known."
                                + " Perhaps the data can be had in the country's present system.");
            }
            return Outcome.done(new Proj4jReferenceSystem(system, wgs84));
        } catch (Proj4jException e) {
            return refused(name, "it cannot be built from \"" + parameters + "\".");
        }
    }

    /** Whether a shift is stated, or the ellipsoid is that of the present geocentric datums. */
    private static boolean isShiftKnown(Datum datum) {
        if (datum.getTransformType() != Datum.TYPE_UNKNOWN) {
            return true;
        }
        Ellipsoid ellipsoid = datum.getEllipsoid();
        return Math.abs(ellipsoid.getA() - 6378137) < 1e-3
                && Math.abs(ellipsoid.getB() - 6356752.3) < 0.1;
    }

    /** The proj text of an EPSG code; heights and geoids are left out. */
    private Optional<String> parametersOf(String code) {
        if (SHIFT_MISSING.contains(code)) {
            return Optional.empty();
        }
        @Nullable String[] parameters;
        try {
            parameters = new Proj4FileReader().readParametersFromFile("epsg", code);
        } catch (IOException e) {
            throw new UncheckedIOException("the EPSG data set cannot be read", e);
        }
        if (parameters == null) {
            return Optional.empty();
        }
        StringBuilder text = new StringBuilder();
        Arrays.stream(parameters)
                .filter(p -> p.length() > 1)
                .filter(p -> !p.startsWith("+vunits=") && !p.startsWith("+geoidgrids="))
                .forEach(p -> text.append(p).append(' '));
        return Optional.of(text.toString().strip());
    }

    private static Outcome<ReferenceSystem> refused(String text, String why) {
        String shown = text.length() <= 80 ? text : text.substring(0, 80) + "…";
        return Outcome.refused(
                new Finding(
                        FindingCode.REFERENCE_SYSTEM_UNKNOWN,
                        Severity.STOP,
                        "crs",
                        shown,
                        "EPSG:n or WKT",
                        "",
                        "",
                        "Reference system \"" + shown + "\" cannot be used: " + why));
    }
}
