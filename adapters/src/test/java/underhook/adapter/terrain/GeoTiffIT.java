package underhook.adapter.terrain;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every kind of file that GDAL writes is read back as GDAL was given it, cell for cell. */
@Tag("slow")
class GeoTiffIT {
    private static final int WIDTH = 150;
    private static final int HEIGHT = 110;
    private static final RasterGrid.Window WINDOW = new RasterGrid.Window(20, 15, 101, 77);

    private enum Kind {
        BYTE(1, 1),
        INT16(2, 2),
        UINT16(12, 2),
        INT32(3, 4),
        FLOAT32(4, 4),
        FLOAT64(5, 8);

        final int envi;
        final int bytes;

        Kind(int envi, int bytes) {
            this.envi = envi;
            this.bytes = bytes;
        }

        boolean isFloat() {
            return this == FLOAT32 || this == FLOAT64;
        }

        double at(ByteBuffer data, int i) {
            return switch (this) {
                case BYTE -> Byte.toUnsignedInt(data.get(i));
                case INT16 -> data.getShort(2 * i);
                case UINT16 -> Short.toUnsignedInt(data.getShort(2 * i));
                case INT32 -> data.getInt(4 * i);
                case FLOAT32 -> data.getFloat(4 * i);
                case FLOAT64 -> data.getDouble(8 * i);
            };
        }
    }

    @Test
    void reads_every_cell_as_gdal_was_given_it(@TempDir Path folder) throws Exception {
        needGdal();
        int files = 0;
        for (Kind kind : Kind.values()) {
            for (int bands : new int[] {1, 3}) {
                ByteBuffer data = source(folder, kind, bands);
                for (List<String> options : variants(kind, bands)) {
                    Path tif = folder.resolve("out.tif");
                    List<String> command =
                            new ArrayList<>(
                                    List.of(
                                            "gdal_translate",
                                            "-q",
                                            "-a_srs",
                                            "EPSG:25832",
                                            "-a_ullr",
                                            "500000",
                                            "5200000",
                                            "501500",
                                            "5198900"));
                    options.forEach(o -> command.addAll(List.of("-co", o)));
                    command.addAll(List.of(folder.resolve("src.img").toString(), tif.toString()));
                    run(command);
                    ByteBuffer expected = data;
                    if (options.contains("PREDICTOR=3") && options.contains("ENDIANNESS=BIG")) {
                        // GDAL 3.6 turns these bytes round when it writes them: what it reads
                        // counts.
                        Path back = folder.resolve("back.img");
                        run(
                                List.of(
                                        "gdal_translate",
                                        "-q",
                                        "-of",
                                        "ENVI",
                                        "-co",
                                        "INTERLEAVE=BSQ",
                                        tif + "",
                                        back + ""));
                        expected =
                                ByteBuffer.wrap(Files.readAllBytes(back))
                                        .order(ByteOrder.LITTLE_ENDIAN);
                    }
                    for (int band = 0; band < bands; band++) {
                        check(tif, kind, expected, band, kind + " " + bands + " " + options);
                    }
                    Files.delete(tif);
                    files++;
                }
            }
        }
        assertThat(files).isGreaterThan(300);
    }

    private static void check(Path tif, Kind kind, ByteBuffer data, int band, String what)
            throws IOException, RasterFault {
        int wrong = 0;
        try (GeoTiffSource read = GeoTiffSource.open(tif, Integer.toString(band + 1))) {
            Cells cells = read.readRaw(WINDOW, stored -> stored);
            for (int y = 0; y < WINDOW.rows(); y++) {
                for (int x = 0; x < WINDOW.columns(); x++) {
                    int i =
                            (band * HEIGHT + y + WINDOW.firstRow()) * WIDTH
                                    + x
                                    + WINDOW.firstColumn();
                    if (Double.compare(cells.at(x, y), kind.at(data, i)) != 0) {
                        wrong++;
                    }
                }
            }
            assertThat(read.systemText()).contains("EPSG:25832");
            assertThat(read.grid())
                    .isEqualTo(new RasterGrid(WIDTH, HEIGHT, 500000, 5200000, 10, 10));
        }
        assertThat(wrong).as("wrong cells of %s band %d", what, band).isZero();
    }

    private static List<List<String>> variants(Kind kind, int bands) {
        List<List<String>> out = new ArrayList<>();
        for (boolean tiled : new boolean[] {false, true}) {
            for (String packed : new String[] {"NONE", "DEFLATE", "LZW"}) {
                for (int predictor = 1; predictor <= 3; predictor++) {
                    if ((packed.equals("NONE") && predictor > 1)
                            || (predictor == 3 && !kind.isFloat())) {
                        continue;
                    }
                    for (String order : new String[] {"LITTLE", "BIG"}) {
                        for (String layout :
                                bands > 1 ? List.of("PIXEL", "BAND") : List.of("PIXEL")) {
                            List<String> options =
                                    new ArrayList<>(
                                            List.of(
                                                    "COMPRESS=" + packed,
                                                    "ENDIANNESS=" + order,
                                                    "INTERLEAVE=" + layout,
                                                    "BIGTIFF=" + (predictor == 2 ? "YES" : "NO")));
                            if (!packed.equals("NONE")) {
                                options.add("PREDICTOR=" + predictor);
                            }
                            if (tiled) {
                                options.addAll(
                                        List.of("TILED=YES", "BLOCKXSIZE=64", "BLOCKYSIZE=48"));
                            }
                            out.add(options);
                        }
                    }
                }
            }
        }
        return out;
    }

    private static ByteBuffer source(Path folder, Kind kind, int bands) throws IOException {
        Random random = new Random(5);
        int count = WIDTH * HEIGHT * bands;
        ByteBuffer data = ByteBuffer.allocate(count * kind.bytes).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < count; i++) {
            double slope =
                    (i % WIDTH) * 3.7 + Math.floorDiv(i, WIDTH) * 1.3 + random.nextDouble() * 40;
            switch (kind) {
                case BYTE -> data.put((byte) slope);
                case INT16 -> data.putShort((short) (slope - 400));
                case UINT16 -> data.putShort((short) (slope * 90));
                case INT32 -> data.putInt((int) (slope * 900_000 - 300_000_000));
                case FLOAT32 -> data.putFloat((float) slope);
                case FLOAT64 -> data.putDouble(slope);
            }
        }
        Files.write(folder.resolve("src.img"), data.array());
        Files.writeString(
                folder.resolve("src.hdr"),
                String.format(
                        Locale.ROOT,
                        "ENVI%nsamples=%d%nlines=%d%nbands=%d%nheader offset=0%nfile type=ENVI Standard%ndata type=%d%ninterleave=bsq%nbyte order=0%n",
                        WIDTH,
                        HEIGHT,
                        bands,
                        kind.envi),
                UTF_8);
        return data;
    }

    static void needGdal() {
        boolean found;
        try {
            found = run(List.of("gdal_translate", "--version")).contains("GDAL");
        } catch (IOException e) {
            found = false;
        }
        Assumptions.assumeTrue(found, "missing package: gdal-bin");
    }

    static String run(List<String> command) throws IOException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), UTF_8);
        try {
            assertThat(process.waitFor()).as("%s: %s", command, said).isZero();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
        return said;
    }
}
