package underhook.adapter.terrain;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** HGT, ESRI ASCII grids and the many ways of a GeoTIFF to say where and what, against GDAL. */
@Tag("slow")
class RasterVariantsIT {
    @TempDir Path folder;

    @BeforeAll
    static void needGdal() {
        GeoTiffIT.needGdal();
    }

    @ParameterizedTest
    @CsvSource({
        "N46E008.hgt,1201",
        "S01W001.hgt,1201",
        "N00E000.hgt,1201",
        "S46W073.hgt,1201",
        "S45E170.hgt,3601",
        "N60W180.hgt,1201",
        "N59E179.hgt,3601",
        "S56W068.hgt,1201",
        "n46e008.hgt,1201"
    })
    void reads_hgt_as_gdal_does(String name, int points) throws Exception {
        Path file = hgt(name, points);

        check(HgtSource.open(file, name), GdalGrid.read(file.toString(), folder), 0);
    }

    @Test
    void reads_a_zipped_hgt() throws Exception {
        Path file = hgt("N46W122.hgt", 1201);
        GdalGrid gdal = GdalGrid.read(file.toString(), folder);
        Path zip = folder.resolve("tile.zip");
        try (OutputStream out = Files.newOutputStream(zip);
                ZipOutputStream to = new ZipOutputStream(out)) {
            to.putNextEntry(new ZipEntry("srtm/N46W122.hgt"));
            to.write(Files.readAllBytes(file));
            to.closeEntry();
        }

        check(HgtSource.open(zip, "tile.zip"), gdal, 0);
    }

    private Path hgt(String name, int points) throws IOException {
        Random random = new Random(points);
        ByteBuffer data = ByteBuffer.allocate(2 * points * points);
        for (int i = 0; i < points * points; i++) {
            data.putShort((short) (i % 997 == 0 ? -32768 : random.nextInt(9000) - 420));
        }
        Path file = folder.resolve(name);
        Files.write(file, data.array());
        return file;
    }

    /** What GDAL takes for nothing is nothing to us; all else is the same number. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "nan",
                "-9999",
                "-32768",
                "-3.4028234663852886e+38",
                "-3.40282306073709653e+38",
                "1002.1",
                "1002.0999755859375",
                "99999"
            })
    void takes_a_nodata_tag_as_gdal_does(String nodata) throws Exception {
        Path file = folder.resolve("n.tif");
        for (ByteOrder order : List.of(ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN)) {
            Files.write(file, TiffBytes.floats(order).text(42113, nodata).encode());
            checkNodata(file);
            Files.write(file, TiffBytes.words(order).text(42113, nodata).encode());
            checkNodata(file);
        }
    }

    /** GDAL masks nodata when it resamples to a fill of its own; -9000 is no height. */
    private void checkNodata(Path file) throws IOException, RasterFault {
        Path filled = folder.resolve("filled.tif");
        GeoTiffIT.run(
                List.of(
                        "gdalwarp",
                        "-q",
                        "-overwrite",
                        "-ot",
                        "Float32",
                        "-dstnodata",
                        "-9000",
                        file + "",
                        filled + ""));
        GdalGrid gdal = GdalGrid.read(filled.toString(), folder);

        check(GeoTiffSource.open(file, ""), gdal, 0);
    }

    @Test
    void a_mark_of_nodata_that_the_words_cannot_hold_marks_nothing() throws Exception {
        Path file = folder.resolve("w.tif");
        Files.write(file, TiffBytes.words(ByteOrder.LITTLE_ENDIAN).text(42113, "-99999").encode());

        try (GeoTiffSource source = GeoTiffSource.open(file, "")) {
            Cells cells = source.read(whole(source.grid()));
            assertThat(cells.at(0, 0)).isEqualTo(1000);
            assertThat(cells.at(TiffBytes.COLUMNS - 1, TiffBytes.ROWS - 1)).isEqualTo(1101);
        }
    }

    /** A plain predictor tag, a tile, LZW, big end first: TiffBytes itself is right, too. */
    @Test
    void reads_other_writers_files_as_gdal_does() throws Exception {
        Path file = folder.resolve("o.tif");
        for (ByteOrder order : List.of(ByteOrder.LITTLE_ENDIAN, ByteOrder.BIG_ENDIAN)) {
            for (TiffBytes bytes :
                    List.of(
                            TiffBytes.floats(order),
                            TiffBytes.floats(order).predicted(2),
                            TiffBytes.floats(order).deflated(),
                            TiffBytes.words(order).predicted(2).deflated(),
                            TiffBytes.words(order).lzw(),
                            TiffBytes.words(order).predicted(2).lzw())) {
                Files.write(file, bytes.encode());

                check(GeoTiffSource.open(file, ""), GdalGrid.read(file.toString(), folder), 0);
            }
        }
    }

    /** A value may stand for a point or an area, by tie and scale or by matrix, tied anywhere. */
    @Test
    void lies_where_gdal_says() throws Exception {
        Path file = folder.resolve("w.tif");
        for (int kind : new int[] {1, 2}) {
            for (TiffBytes placed :
                    List.of(
                            plain(kind).scaleAndTie(),
                            plain(kind)
                                    .doubles(33550, 2.5, 7, 0)
                                    .doubles(33922, 3, 4, 0, 500_000, 5_200_000, 0),
                            plain(kind)
                                    .doubles(
                                            34264, 2.5, 0, 0, 500_000, 0, -7, 0, 5_200_000, 0, 0, 0,
                                            0, 0, 0, 0, 1))) {
                Files.write(file, placed.encode());

                check(GeoTiffSource.open(file, ""), GdalGrid.read(file.toString(), folder), 1e-9);
            }
        }
    }

    private static TiffBytes plain(int rasterType) {
        return TiffBytes.floats(ByteOrder.LITTLE_ENDIAN)
                .without(33550)
                .without(33922)
                .shorts(
                        34735,
                        1,
                        1,
                        0,
                        3,
                        1024,
                        0,
                        1,
                        1,
                        1025,
                        0,
                        1,
                        rasterType,
                        3072,
                        0,
                        1,
                        25832);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "xllcorner 1000\nyllcorner 2000\ncellsize 25\n",
                "xllcenter 1000\nyllcenter 2000\ncellsize 25\n",
                "XLLCORNER -1000.5\nYLLCORNER 2000.25\nCELLSIZE 0.5\nNODATA_VALUE -1\n",
                "xllcorner 1000\nyllcorner 2000\ndx 25\ndy 10\nNODATA_value -9999\n",
                "xllcorner 1e3\nyllcorner 2e3\ncellsize 25\nNODATA_value 7.25\n"
            })
    void reads_ascii_grids_as_gdal_does(String header) throws Exception {
        Path file = folder.resolve("a.asc");
        String cells = "1 -1 7.25 400\r\n-9998 -12.125 1e2 8\n1.5 2 3 4\n";
        Files.write(file, ("ncols 4\nnrows 3\n" + header + cells).getBytes(US_ASCII));

        check(AsciiGridSource.open(file), GdalGrid.read(file.toString(), folder), 1e-9);
    }

    @Test
    void an_ascii_grid_without_a_mark_of_nodata_has_minus_9999() throws Exception {
        Path file = folder.resolve("d.asc");
        String text = "ncols 2\nnrows 1\nxllcorner 0\nyllcorner 0\ncellsize 1\n-9999 5\n";
        Files.write(file, text.getBytes(US_ASCII));

        try (RasterSource source = AsciiGridSource.open(file)) {
            Cells cells = source.read(whole(source.grid()));
            assertThat(cells.at(0, 0)).isNaN();
            assertThat(cells.at(1, 0)).isEqualTo(5);
        }
    }

    private static RasterGrid.Window whole(RasterGrid grid) {
        return new RasterGrid.Window(0, 0, grid.columns(), grid.rows());
    }

    /** The same place, to its rounding in print, and the same cells where GDAL has a height on Earth. */
    private static void check(RasterSource opened, GdalGrid gdal, double toleranceOfPlace)
            throws IOException, RasterFault {
        try (RasterSource source = opened) {
            RasterGrid is = source.grid();
            RasterGrid was = gdal.grid();
            // gdalinfo prints 15 digits after the point.
            Offset<Double> near = within(Math.max(1e-12, toleranceOfPlace));
            assertThat(List.of(is.columns(), is.rows()))
                    .isEqualTo(List.of(was.columns(), was.rows()));
            assertThat(is.west()).isCloseTo(was.west(), near);
            assertThat(is.north()).isCloseTo(was.north(), near);
            assertThat(is.cellWidth()).isCloseTo(was.cellWidth(), near);
            assertThat(is.cellHeight()).isCloseTo(was.cellHeight(), near);
            Cells cells = source.read(whole(is));
            int wrong = 0;
            int heights = 0;
            for (int row = 0; row < is.rows(); row++) {
                for (int column = 0; column < is.columns(); column++) {
                    float theirs = gdal.at(column, row);
                    double ours = cells.at(column, row);
                    boolean nothing = !(theirs >= -1000 && theirs <= 9000);
                    boolean same = nothing ? Double.isNaN(ours) : (float) ours == theirs;
                    wrong += same || isStatedNothing(theirs, ours) ? 0 : 1;
                    heights += nothing ? 0 : 1;
                }
            }
            assertThat(wrong).isZero();
            assertThat(heights).isPositive();
        }
    }

    /** GDAL hands out the marks of an ASCII grid as numbers; ours are these two. */
    private static boolean isStatedNothing(float theirs, double ours) {
        return Double.isNaN(ours) && (theirs == -1f || theirs == 7.25f);
    }
}
