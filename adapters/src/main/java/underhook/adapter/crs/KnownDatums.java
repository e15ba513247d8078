package underhook.adapter.crs;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What the name of a datum tells when its text states neither a shift to WGS 84 nor a code.
 *
 * @source EPSG for the codes; PRACTICE the names are those that desktop programs write
 */
final class KnownDatums {
    /** Datums that often come without shift and code, and a geographic code that has the shift. */
    private static final Map<String, String> CODE_OF_DATUM =
            Map.ofEntries(
                    Map.entry("ch1903", "4149"),
                    Map.entry("ch1903plus", "4150"),
                    Map.entry("osgb1936", "4277"),
                    Map.entry("deutscheshauptdreiecksnetz", "4314"),
                    Map.entry("militargeographischeinstitut", "4312"),
                    Map.entry("mgi", "4312"),
                    Map.entry("amersfoort", "4289"),
                    Map.entry("european1950", "4230"),
                    Map.entry("europeandatum1950", "4230"),
                    Map.entry("montemario", "4265"),
                    Map.entry("newzealand1949", "4272"),
                    Map.entry("newzealandgeodeticdatum1949", "4272"),
                    Map.entry("nouvelletriangulationfrancaise", "4275"),
                    Map.entry("tm65", "4299"));

    /** Families tied to the Earth's centre: plates have since moved them by 2 m at most. */
    private static final Pattern GEOCENTRIC =
            Pattern.compile(
                    "wgs(19)?84.*|worldgeodeticsystem(of)?1984.*|itrf.*|igs[0-9].*|etr[sf].*|europeanterrestrial.*"
                            + "|northamerican(datumof)?1983.*|nad(19)?83.*|nationalspatialreferencesystem2011"
                            + "|gda(1994|94|2020)|geocentricdatumofaustralia.*|nzgd2000|newzealandgeodeticdatum2000"
                            + "|sirgas.*|sistemadereferencia.*|posgar.*|marcogeo.*|magna.*|peru96|regven"
                            + "|rgf(19)?93.*|reseaugeodesiquefrancais.*|rgr1992|rgaf.*|rraf1991|rgfg1995|sweref99"
                            + "|jgd(2000|2011)|japanesegeodeticdatum(2000|2011)|china2000|cgcs2000|korea2000"
                            + "|geocentricdatumofkorea|koreangeodeticdatum2002|twd(19)?97|taiwandatum1997|svy21|gdm2000"
                            + "|hartebeesthoek1994|moznet|mexic.*(1993|itrf.*)|greenland1996|irenet95|igm1995"
                            + "|latvia1992|lithuania1994|estonia1997|sloveniageodeticdatum1996|islandsnet.*"
                            + "|croatianterrestrialreferencesystem|retedinamicanazionale2008|turkishnationalreferenceframe");

    private KnownDatums() {}

    /** A geographic code that has the shift of this datum. */
    static Optional<String> codeOf(String name) {
        return Optional.ofNullable(CODE_OF_DATUM.get(key(name)));
    }

    /** Whether positions on this datum may stand for positions on WGS 84. */
    static boolean isGeocentric(String name) {
        return GEOCENTRIC.matcher(key(name)).matches();
    }

    private static String key(String name) {
        String bare = name.startsWith("D_") ? name.substring(2) : name;
        return bare.replace("+", "plus").toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }
}
