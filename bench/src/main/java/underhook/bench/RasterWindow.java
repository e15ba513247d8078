package underhook.bench;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.adapter.terrain.RasterFiles;
import underhook.app.port.RasterReader;
import underhook.app.port.ReferenceSystem;
import underhook.core.geo.HeightField;
import underhook.core.geo.LocalFrame;

/**
 * The ground of a job 5 km across out of a raster of a hundred million cells of 1 m, against
 * gdal_translate on the same file and window, the file in the page cache.
 *
 * <p>Ours reads and lays over the plane inside a running program; gdal_translate is a process that reads
 * into memory and writes nothing. What a process costs that reads one cell is measured and told apart.
 */
final class RasterWindow implements Measured {
    private static final int CELLS = 10_000;
    private static final int ROUNDS = 7;
    private static final double HALF_M = 2500;
    private static final double WEST_M = 500_000 - CELLS / 2.0;
    private static final double NORTH_M = 5_200_000 + CELLS / 2.0;

    private final Proj4jReferenceSystems systems = new Proj4jReferenceSystems();
    private final RasterFiles files = new RasterFiles(systems);
    private final ReferenceSystem utm = systems.find("EPSG:25832").getValue();

    @Override
    public String name() {
        return "raster-window";
    }

    @Override
    public String measure() {
        try {
            if (!hasGdal()) {
                return "raster-window: skipped, because gdal_translate (package gdal-bin) is missing.";
            }
            Path folder = Files.createTempDirectory("raster-window");
            try {
                return measureIn(folder);
            } finally {
                try (Stream<Path> made = Files.list(folder)) {
                    for (Path file : made.toList()) {
                        Files.delete(file);
                    }
                }
                Files.delete(folder);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String measureIn(Path folder) throws IOException {
        Path raw = folder.resolve("raw.img");
        List<String> lines = new ArrayList<>();
        writeRaw(raw, 4);
        lines.add(line(folder, raw, List.of("TILED=YES", "COMPRESS=DEFLATE", "PREDICTOR=3")));
        lines.add(line(folder, raw, List.of("TILED=NO", "COMPRESS=NONE")));
        writeRaw(raw, 2);
        lines.add(line(folder, raw, List.of("TILED=YES", "COMPRESS=LZW", "PREDICTOR=2")));
        return String.join("\n", lines);
    }

    /** Hills on hills with a little roughness, floats of 4 bytes or words of 2. */
    private static void writeRaw(Path raw, int bytes) throws IOException {
        ByteBuffer row = ByteBuffer.allocate(CELLS * bytes).order(ByteOrder.LITTLE_ENDIAN);
        double[] waves = new double[CELLS];
        for (int x = 0; x < CELLS; x++) {
            waves[x] = Math.sin(x * 0.0011);
        }
        int noise = 1;
        try (DataOutputStream out =
                new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(raw)))) {
            for (int y = 0; y < CELLS; y++) {
                row.clear();
                for (int x = 0; x < CELLS; x++) {
                    noise = noise * 1_664_525 + 1_013_904_223;
                    double height =
                            1200
                                    + 400 * waves[x] * waves[(3 * y) % CELLS]
                                    + 30 * waves[(19 * x + 12 * y) % CELLS]
                                    + (noise >>> 24) * 0.002;
                    if (bytes == 4) {
                        row.putFloat(Math.round(height * 100) / 100f);
                    } else {
                        row.putShort((short) height);
                    }
                }
                out.write(row.array());
            }
        }
        Files.writeString(
                Path.of(raw.toString().replace(".img", ".hdr")),
                String.format(
                        Locale.ROOT,
                        "ENVI%nsamples=%d%nlines=%d%nbands=1%nheader offset=0%nfile type=ENVI Standard%n"
                                + "data type=%d%ninterleave=bsq%nbyte order=0%n",
                        CELLS,
                        CELLS,
                        bytes == 4 ? 4 : 2));
    }

    private String line(Path folder, Path raw, List<String> options) throws IOException {
        Path tif = folder.resolve("big.tif");
        List<String> make =
                new ArrayList<>(List.of("gdal_translate", "-q", "-a_srs", "EPSG:25832", "-a_ullr"));
        make.addAll(corners(WEST_M, NORTH_M, CELLS));
        options.forEach(option -> make.addAll(List.of("-co", option)));
        make.addAll(List.of(raw.toString(), tif.toString()));
        run(make);
        double[] ours = new double[ROUNDS];
        double[] theirs = new double[ROUNDS];
        double[] start = new double[ROUNDS];
        double first = oursS(tif);
        for (int round = -1; round < ROUNDS; round++) {
            double theirS = gdalS(tif, HALF_M);
            double ourS = oursS(tif);
            double startS = gdalS(tif, 0.4);
            if (round >= 0) {
                ours[round] = ourS;
                theirs[round] = theirS;
                start[round] = startS;
            }
        }
        long megabytes = Files.size(tif) >> 20;
        Files.delete(tif);
        return String.format(
                Locale.ROOT,
                "raster-window %s (%d MB): %.2f times the time of gdal_translate,"
                        + " %.2f times without its start (medians of %d rounds: ours %.3f s, first time %.3f s;"
                        + " gdal_translate %.3f s, of which start %.3f s; heap at most %d MB)",
                String.join(" ", options),
                megabytes,
                median(ours) / median(theirs),
                median(ours) / (median(theirs) - median(start)),
                ROUNDS,
                median(ours),
                first,
                median(theirs),
                median(start),
                Runtime.getRuntime().maxMemory() >> 20);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private double oursS(Path tif) {
        LocalFrame frame = LocalFrame.of(utm.toGeo(500_000, 5_200_000));
        long start = System.nanoTime();
        HeightField field =
                files.read(
                                new RasterReader.Request(
                                        tif, "big.tif", Optional.empty(), "", frame, HALF_M))
                        .field()
                        .orElseThrow();
        double seconds = (System.nanoTime() - start) / 1e9;
        if (!(field.heightM(0, 0) > 0)) {
            throw new IllegalStateException("the window has no height.");
        }
        return seconds;
    }

    private static double gdalS(Path tif, double halfM) throws IOException {
        List<String> command = new ArrayList<>(List.of("gdal_translate", "-q", "-of", "MEM"));
        command.add("-projwin");
        command.addAll(corners(500_000 - halfM, 5_200_000 + halfM, 2 * halfM));
        command.addAll(List.of(tif.toString(), "window"));
        long start = System.nanoTime();
        run(command);
        return (System.nanoTime() - start) / 1e9;
    }

    /** West, north, east, south. */
    private static List<String> corners(double westM, double northM, double sideM) {
        return Stream.of(westM, northM, westM + sideM, northM - sideM)
                .map(value -> Double.toString(value))
                .toList();
    }

    private static boolean hasGdal() {
        try {
            run(List.of("gdal_translate", "--version"));
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private static void run(List<String> command) throws IOException {
        Process process =
                new ProcessBuilder(command)
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start();
        process.getOutputStream().close();
        try {
            if (!process.waitFor(10, TimeUnit.MINUTES) || process.exitValue() != 0) {
                throw new IOException(command + " failed");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }
}
