package underhook.adapter.terrain;

import java.io.IOException;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What the GeoKeys of a GeoTIFF say of its reference system.
 *
 * @source OGC-19-008 section 7 and annex B
 */
final class GeoKeys {
    private static final int USER_DEFINED = 32767;

    private final Map<Integer, Double> values = new HashMap<>();

    private GeoKeys() {}

    static GeoKeys read(TiffDirectory tags) throws IOException, RasterFault {
        GeoKeys keys = new GeoKeys();
        double[] table = tags.numbers(34735);
        double[] doubles = tags.numbers(34736);
        int count = table.length < 4 ? 0 : (int) Math.min(table[3], (table.length - 4) / 4.0);
        for (int i = 1; i <= count; i++) {
            int at = 4 * i;
            int place = (int) table[at + 3];
            if (table[at + 1] < 1) {
                keys.values.put((int) table[at], table[at + 3]);
            } else if (Math.round(table[at + 1]) == 34736 && place < doubles.length) {
                keys.values.put((int) table[at], doubles[place]);
            }
        }
        return keys;
    }

    boolean isPoint() {
        return code(1025) == 2;
    }

    boolean isVerticalFoot() {
        return code(4099) == 9002 || code(4099) == 9003;
    }

    /** EPSG code, or WKT of a transverse Mercator on a known geographic system. */
    Optional<String> systemText() throws RasterFault {
        int projected = code(3072);
        int geographic = code(2048);
        if (projected > 0 && projected != USER_DEFINED) {
            return Optional.of("EPSG:" + projected);
        }
        if (code(1024) == 2 && geographic > 0 && geographic != USER_DEFINED) {
            return Optional.of("EPSG:" + geographic);
        }
        if (code(1024) == 1 && code(3075) == 1 && isGrs80Like(geographic) && code(3076) == 9001) {
            return Optional.of(
                    String.format(
                            Locale.ROOT,
                            "PROJCS[\"transverse Mercator of the file\",GEOGCS[\"base\",DATUM[\"%s\",SPHEROID[\"base\",%s,%s]],UNIT[\"degree\",0.017453292519943295]],"
                                    + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\",%s],PARAMETER[\"central_meridian\",%s],PARAMETER[\"scale_factor\",%s],"
                                    + "PARAMETER[\"false_easting\",%s],PARAMETER[\"false_northing\",%s],UNIT[\"metre\",1]]",
                            // All of them are tied to the Earth's centre: 2 m apart at most.
                            geographic == 4326 ? "WGS_1984" : "ETRS89",
                            6378137.0,
                            geographic == 4326 ? 298.257223563 : 298.257222101,
                            values.getOrDefault(3081, 0.0),
                            values.getOrDefault(3080, 0.0),
                            values.getOrDefault(3092, 1.0),
                            values.getOrDefault(3082, 0.0),
                            values.getOrDefault(3083, 0.0)));
        }
        return Optional.empty();
    }

    /** WGS 84, ETRS89, NAD83, GDA94, GDA2020 and NZGD2000 by code. */
    private static boolean isGrs80Like(int code) {
        return code == 4326
                || code == 4258
                || code == 4269
                || code == 4283
                || code == 7844
                || code == 4167;
    }

    private int code(int key) {
        return values.getOrDefault(key, 0.0).intValue();
    }
}
