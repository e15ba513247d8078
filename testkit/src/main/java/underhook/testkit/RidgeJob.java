package underhook.testkit;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * A job on a real mountain ridge: 24 invented loads from one laydown on the valley's floor to eight poles up
 * to the crest, 311 m to about 950 m AMSL.
 *
 * <p>The relief is the sample raster of 3 arc-seconds, 344 by 403 cells, that Debian's package {@value
 * #PACKAGE} carries. It is fetched through apt into the temp folder, once, and turned into a GeoTIFF by
 * GDAL's own tools, so the reader meets a file that we did not write. Everything else is invented.
 */
public final class RidgeJob {
    /** The Debian package that carries the relief. */
    public static final String PACKAGE = "python-matplotlib-data";

    private static final Path IN_PACKAGE =
            Path.of("usr/share/matplotlib/mpl-data/sample_data/jacksboro_fault_dem.npz");

    private RidgeJob() {}

    /** The relief or the tool that turns it cannot be had here; the message names the package. */
    public static final class PackageMissing extends IOException {
        PackageMissing(String name, String why) {
            super("The package " + name + " could not be had: " + why);
        }
    }

    /** A place by its row and column in the relief, counted from 0 in the north-west. */
    private record Spot(String id, String kind, int row, int column, String more) {}

    private static final String LANDING = ",yes,";
    private static final String SITE = ",no,0;120;240";
    private static final List<Spot> SPOTS =
            List.of(
                    new Spot("V", "laydown", 169, 235, "open,0.6,yes,no,"),
                    new Spot("K", "landing", 164, 209, "open,0.8,no" + LANDING),
                    new Spot("R", "landing", 176, 176, "open,1,no" + LANDING),
                    new Spot("T1", "site", 164, 200, "20,0.8,no" + SITE),
                    new Spot("T2", "site", 165, 196, "20,0.8,no" + SITE),
                    new Spot("T3", "site", 166, 190, "20,0.8,no" + SITE),
                    new Spot("T4", "site", 167, 186, "20,0.8,no" + SITE),
                    new Spot("T5", "site", 168, 182, "20,1,no" + SITE),
                    new Spot("T6", "site", 171, 180, "20,1,no" + SITE),
                    new Spot("T7", "site", 173, 178, "20,1,no" + SITE),
                    new Spot("T8", "site", 175, 177, "20,1,no" + SITE));

    /**
     * Writes the job's folder.
     *
     * @throws PackageMissing if the relief or GDAL's tools cannot be had
     * @throws IOException if a file cannot be written
     */
    public static void write(Path folder) throws IOException {
        Relief relief = Relief.of(fetch());
        Files.createDirectories(folder);
        writeTerrain(relief, folder);
        text(folder, "job.yaml", JOB);
        text(folder, "places.csv", places(relief));
        text(folder, "loads.csv", loads());
        text(folder, "machine.yaml", MACHINE);
        text(folder, "weather.yaml", WEATHER);
        text(folder, "crews.yaml", CREWS);
        text(folder, "rules.yaml", RULES + kinds());
        text(folder, "map.geojson", map(relief));
    }

    private static void text(Path folder, String name, String content) throws IOException {
        Files.writeString(folder.resolve(name), content, StandardCharsets.UTF_8);
    }

    private static byte[] fetch() throws IOException {
        Path installed = Path.of("/").resolve(IN_PACKAGE);
        if (Files.isReadable(installed)) {
            return Files.readAllBytes(installed);
        }
        Path kept = Path.of(System.getProperty("java.io.tmpdir"), "underhook-ridge.npz");
        if (!Files.isReadable(kept)) {
            Path work = Files.createTempDirectory("underhook-ridge");
            try {
                run(work, PACKAGE, "apt-get", "-q", "download", PACKAGE);
                run(work, PACKAGE, "dpkg", "-x", onlyDeb(work).toString(), "unpacked");
                // Moved in whole, so that a second test never reads half a file.
                Files.move(
                        work.resolve("unpacked").resolve(IN_PACKAGE),
                        kept,
                        StandardCopyOption.ATOMIC_MOVE);
            } finally {
                remove(work);
            }
        }
        return Files.readAllBytes(kept);
    }

    private static Path onlyDeb(Path work) throws IOException {
        try (Stream<Path> files = Files.list(work)) {
            return files.filter(file -> file.toString().endsWith(".deb"))
                    .findFirst()
                    .orElseThrow(() -> new PackageMissing(PACKAGE, "apt-get left no file."));
        }
    }

    private static void remove(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    private static void run(Path where, String needs, String... command) throws IOException {
        Process process;
        try {
            process =
                    new ProcessBuilder(command)
                            .directory(where.toFile())
                            .redirectErrorStream(true)
                            .start();
        } catch (IOException absent) {
            throw new PackageMissing(needs, command[0] + " is not here.");
        }
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            if (process.waitFor() != 0) {
                throw new PackageMissing(needs, command[0] + " said: " + said.strip());
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while waiting for " + command[0], stopped);
        }
    }

    private static void writeTerrain(Relief relief, Path folder) throws IOException {
        StringBuilder ascii = new StringBuilder();
        ascii.append("ncols ").append(relief.columns).append("\nnrows ").append(relief.rows);
        ascii.append("\nxllcorner ").append(relief.westDeg).append("\nyllcorner ");
        ascii.append(relief.northDeg - relief.rows * relief.cellDeg).append("\ncellsize ");
        ascii.append(relief.cellDeg).append("\nNODATA_value -32768\n");
        for (int row = 0; row < relief.rows; row++) {
            for (int column = 0; column < relief.columns; column++) {
                ascii.append(relief.elevationAmslM(row, column)).append(' ');
            }
            ascii.append('\n');
        }
        text(folder, "terrain.asc", ascii.toString());
        run(
                folder,
                "gdal-bin",
                ("gdal_translate -q -a_srs EPSG:4326 -ot Int16 -co COMPRESS=DEFLATE"
                                + " -co PREDICTOR=2 -co TILED=YES terrain.asc terrain.tif")
                        .split(" "));
        Files.delete(folder.resolve("terrain.asc"));
    }

    private static String places(Relief relief) {
        StringBuilder out =
                new StringBuilder(
                        "id,kind,lat_deg,lon_deg,elevation_m,canopy_m,canopy_spread_m,"
                                + "clearing_radius_m,exposure,fuel,landing_asked,guy_azimuths_deg\n");
        for (Spot spot : SPOTS) {
            boolean site = spot.kind.equals("site");
            out.append(spot.id).append(',').append(spot.kind).append(',');
            out.append(degrees(relief.latDeg(spot.row))).append(',');
            out.append(degrees(relief.lonDeg(spot.column))).append(',');
            out.append(relief.elevationAmslM(spot.row, spot.column)).append(',');
            out.append(site ? "12,1," : "0,0,").append(spot.more).append('\n');
        }
        return out.toString();
    }

    private static String degrees(double value) {
        return String.format(Locale.ROOT, "%.7f", value);
    }

    private static String loads() {
        int[] bagKg = {182, 196, 171, 205, 188, 164, 193, 176};
        int[] poleKg = {341, 338, 352, 329, 347, 335, 318, 344};
        int[] crateKg = {84, 91, 79, 88, 86, 93, 81, 77};
        StringBuilder out =
                new StringBuilder(
                        "id,kind,from,to,mass_kg,mass_status,length_m,width_m,height_m,material,"
                                + "after,combine_with\n");
        for (int i = 0; i < 8; i++) {
            int site = i + 1;
            out.append(
                    String.format(
                            Locale.ROOT,
                            "B%d,bag,V,T%d,%d,weighed,0.9,0.9,1.1,,,C%d\n",
                            site,
                            site,
                            bagKg[i],
                            site));
            out.append(
                    String.format(
                            Locale.ROOT,
                            "P%d,pole,V,T%d,%d,%s,11.5,0.3,0.3,composite,B%d,\n",
                            site,
                            site,
                            poleKg[i],
                            site == 4 ? "estimated" : "weighed",
                            site));
            out.append(
                    String.format(
                            Locale.ROOT,
                            "C%d,crate,V,T%d,%d,weighed,1.2,0.8,0.8,,,B%d\n",
                            site,
                            site,
                            crateKg[i],
                            site));
        }
        return out.toString();
    }

    /** A road along the valley and a house beside it, both east of the laydown. */
    private static String map(Relief relief) {
        String north = point(relief, 150, 240);
        String south = point(relief, 190, 240);
        return String.format(
                Locale.ROOT,
                """
               {"type": "FeatureCollection", "features": [
               {"type": "Feature", "properties": {"id": "road1", "kind": "road"},
                "geometry": {"type": "LineString", "coordinates": [%s, %s]}},
               {"type": "Feature", "properties": {"id": "house1", "kind": "house", "buffer_m": 100},
                "geometry": {"type": "Point", "coordinates": %s}}
               ]}
               """,
                north,
                south,
                point(relief, 176, 241));
    }

    private static String point(Relief relief, int row, int column) {
        return "[" + degrees(relief.lonDeg(column)) + ", " + degrees(relief.latDeg(row)) + "]";
    }

    private static String kinds() {
        return kind("bag", 55, 55) + kind("pole", 35, 390) + kind("crate", 50, 55);
    }

    private static String kind(String name, int speedKt, int setDownSeconds) {
        boolean pole = name.equals("pole");
        String yesForPole = pole ? "yes" : "no";
        return String.format(
                        Locale.ROOT,
                        """
               - kind: %s
                 speed-kt: %d
                 hook-up-s: 75
                 set-down-s: %d
                 stands-up: %s
                 construction-margin: %s
                 shares-hook: %s
                 last-at-place: no
                 trail-limit-deg: 30
                 drag-coefficient: 1.05
                 busy-after-min: %d
                 ready-after-min: %d
                 wind-mean-kt: %d
                 wind-gust-kt: %d
                 wind-spread-kt: %d
               """,
                        name,
                        speedKt,
                        setDownSeconds,
                        yesForPole,
                        yesForPole,
                        pole ? "no" : "yes",
                        pole ? 10 : 0,
                        name.equals("bag") ? 20 : 0,
                        pole ? 15 : 25,
                        pole ? 22 : 32,
                        pole ? 8 : 12)
                .indent(2);
    }

    private static final String JOB =
            """
            version: 1
            name: Ridge line, poles T1 to T8 (invented work on real relief)
            date: 2026-09-15
            zone: America/New_York
            magnetic-variation-deg: -5
            machine-start: V
            loads: loads.csv
            places: places.csv
            machine: machine.yaml
            weather: weather.yaml
            crews: crews.yaml
            rules: rules.yaml
            map: map.geojson
            terrain:
              file: terrain.tif
              attribution: sample elevation data of the package python-matplotlib-data
            """;

    private static final String MACHINE =
            """
            version: 1
            name: Test machine T-1 (invented)
            rotor-radius-m: 5.1
            tail-reach-m: 7.5
            empty-mass-kg: 1110
            crew-mass-kg: 95
            max-internal-mass-kg: 1850
            max-external-mass-kg: 2050
            hook-limit-kg: 750
            fuel-usable-kg: 340
            fuel-gauge-spread-kg: 8
            burn-kg-per-min: 2.3
            hover-burn-kg-per-min: 2.5
            start-fuel-kg: 8
            reserve-min: 20
            seats: 4
            empty-line-speed-kt: 55
            cabin-speed-kt: 70
            climb-ft-per-min: 800
            descent-ft-per-min: 600
            hover-table:
              source: invented manual of T-1
              rounded-down-to-kg: 5
              pressure-altitude-ft: [0, 2000, 4000, 6000]
              rows:
                - {oat-c: 0, mass-kg: [2050, 2050, 2020, 1895]}
                - {oat-c: 10, mass-kg: [2050, 2050, 1945, 1830]}
                - {oat-c: 20, mass-kg: [2050, 1970, 1870, 1760]}
                - {oat-c: 30, mass-kg: [2035, 1890, 1800, 1695]}
            lines:
              - {name: 25 m, length-m: 25, mass-kg: 34, limit-kg: 750}
              - {name: 40 m, length-m: 40, mass-kg: 46, limit-kg: 750}
            """;

    private static final String WEATHER =
            """
            version: 1
            reference-elevation-m: 311
            lapse-c-per-100m: 0.65
            until: "18:00"
            source: invented
            hours:
              - {time: "07:00", qnh-hpa: 1019, oat-c: 11, wind-from-deg: 230, wind-kt: 4, gust-kt: 6}
              - {time: "09:00", qnh-hpa: 1019, oat-c: 15, wind-from-deg: 230, wind-kt: 5, gust-kt: 8}
              - {time: "11:00", qnh-hpa: 1018, oat-c: 19, wind-from-deg: 240, wind-kt: 7, gust-kt: 11}
              - {time: "13:00", qnh-hpa: 1017, oat-c: 22, wind-from-deg: 240, wind-kt: 8, gust-kt: 13}
              - {time: "15:00", qnh-hpa: 1016, oat-c: 23, wind-from-deg: 250, wind-kt: 9, gust-kt: 15}
            """;

    private static final String CREWS =
            """
            version: 1
            crews:
              - id: high
                people: 4
                mass-each-kg: 100
                start: V
                from: "07:45"
                roles: [hook, receive, guy]
                stays: no
                serves: [T8, T7, T6, T5]
              - id: low
                people: 4
                mass-each-kg: 100
                start: V
                from: "07:45"
                roles: [hook, receive, guy]
                stays: no
                serves: [T1, T2, T3, T4]
              - id: loader
                people: 1
                mass-each-kg: 100
                start: V
                from: "07:30"
                roles: [hook, refuel]
                stays: yes
                serves: [V]
            walks:
              - {between: [R, T8], minutes: 6}
              - {between: [T8, T7], minutes: 10}
              - {between: [T7, T6], minutes: 12}
              - {between: [T6, T5], minutes: 15}
              - {between: [T5, T4], minutes: 15}
              - {between: [T4, T3], minutes: 15}
              - {between: [T3, T2], minutes: 20}
              - {between: [T2, T1], minutes: 15}
              - {between: [T1, K], minutes: 12}
            """;

    private static final String RULES =
            """
            version: 1
            construction-margin-percent: 10
            estimated-mass-percent: 15
            clearance-m: 10
            rotor-clearance-m: 5
            wire-clearance-m: 30
            strip-half-width-m: 30
            canopy-on-legs-m: 15
            final-m: 150
            tailwind-limit-kt: 5
            crosswind-limit-kt: 20
            landing-slope-deg: 7
            hover-exit: no
            elevation-tolerance-m: 10
            trail-near-m: 60
            second-release-s: 45
            return-extra-s: 35
            boarding-min: 3
            line-change-min: 6
            refuel-min: 4
            refuel-kg-per-min: 25
            refuel-handler-busy-min: 3
            contingency-min: 10
            ballast-kg: 15
            least-speed-kt: 25
            combine-mass-kg: 300
            duty-from: "07:00"
            duty-hours: 12
            engine-on-hours: 3
            break-min: 30
            engine-on-day-hours: 6
            day-end-before-sunset-min: 30
            costs: {flying-per-min: 35.00, standing-per-min: 12.00, people-per-min: 10.00, currency: EUR}
            kinds:
            """;

    /** The relief as the package's archive of NumPy arrays has it: rows from the north. */
    private static final class Relief {
        private final int rows;
        private final int columns;
        private final double cellDeg;
        private final double westDeg;
        private final double northDeg;
        private final ByteBuffer elevations;

        private Relief(Map<String, byte[]> arrays) throws IOException {
            elevations = body(arrays, "elevation", "<i2", "(344, 403)");
            rows = 344;
            columns = 403;
            cellDeg = body(arrays, "dx", "<f8", "()").getDouble(0);
            westDeg = body(arrays, "xmin", "<f8", "()").getDouble(0);
            // The archive calls its northern edge ymin.
            northDeg =
                    Math.max(
                            body(arrays, "ymin", "<f8", "()").getDouble(0),
                            body(arrays, "ymax", "<f8", "()").getDouble(0));
        }

        static Relief of(byte[] archive) throws IOException {
            Map<String, byte[]> arrays = new HashMap<>();
            try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
                for (ZipEntry entry = zip.getNextEntry();
                        entry != null;
                        entry = zip.getNextEntry()) {
                    arrays.put(entry.getName().replace(".npy", ""), zip.readAllBytes());
                }
            }
            return new Relief(arrays);
        }

        private static ByteBuffer body(
                Map<String, byte[]> arrays, String name, String type, String shape)
                throws IOException {
            byte[] array = arrays.get(name);
            if (array == null) {
                throw new EOFException("no array " + name + " in the relief.");
            }
            try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(array))) {
                in.skipNBytes(8);
                int headLength = Short.reverseBytes(in.readShort());
                String head = new String(in.readNBytes(headLength), StandardCharsets.ISO_8859_1);
                if (array[6] != 1
                        || !head.contains("'" + type + "'")
                        || !head.contains("'fortran_order': False")
                        || !head.contains("'shape': " + shape)) {
                    throw new IOException("array " + name + " is not as expected: " + head);
                }
                return ByteBuffer.wrap(in.readAllBytes()).order(ByteOrder.LITTLE_ENDIAN);
            }
        }

        int elevationAmslM(int row, int column) {
            return elevations.getShort(2 * (row * columns + column));
        }

        double latDeg(int row) {
            return northDeg - (row + 0.5) * cellDeg;
        }

        double lonDeg(int column) {
            return westDeg + (column + 0.5) * cellDeg;
        }
    }
}
