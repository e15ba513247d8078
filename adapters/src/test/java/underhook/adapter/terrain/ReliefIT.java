package underhook.adapter.terrain;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.app.port.RasterReader;
import underhook.app.port.ReferenceSystem;
import underhook.core.geo.HeightField;
import underhook.core.geo.Hillshade;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.geo.Slope;

/** Slope and shade of the core on a raster that our reader read, cell by cell against gdaldem. */
@Tag("slow")
class ReliefIT {
    private static final int COLUMNS = 90;
    private static final int ROWS = 70;

    /** gdaldem reads and writes floats of 32 bits: 7 digits of heights near 1000 m over 20 m and more. */
    private static final double SLOPE_TOLERANCE_DEG = 0.001;

    /** gdaldem writes whole grey levels; its own sums are floats. */
    private static final double GREY_TOLERANCE = 0.5 + 0.01;

    @TempDir Path folder;

    @BeforeAll
    static void needGdal() {
        GeoTiffIT.needGdal();
    }

    @ParameterizedTest
    @CsvSource({"10,10,315,45", "10,25,315,45", "30,12.5,200,12", "5,5,60,80"})
    void agrees_on_the_raster_s_own_grid(
            double width, double height, double lightDeg, double elevationDeg) throws Exception {
        Path tif = raster(width, height);
        GdalGrid slope = gdaldem(tif, "slope");
        GdalGrid shade = gdaldem(tif, "hillshade", "-az", "" + lightDeg, "-alt", "" + elevationDeg);
        Hillshade light = new Hillshade(Math.toRadians(lightDeg), Math.toRadians(elevationDeg));
        try (GeoTiffSource source = GeoTiffSource.open(tif, "")) {
            RasterGrid grid = source.grid();
            HeightField field =
                    new OwnGrid(source.read(new RasterGrid.Window(0, 0, COLUMNS, ROWS)), grid);
            for (int row = 1; row < ROWS - 1; row++) {
                for (int column = 1; column < COLUMNS - 1; column++) {
                    PlanePoint here = new PlanePoint((column + 0.5) * width, -(row + 0.5) * height);
                    compare(
                            Slope.find(field, here, width, height).orElseThrow(),
                            slope.at(column, row));
                    assertThat(grey(light, field, here, width, height) - shade.at(column, row))
                            .isBetween(-GREY_TOLERANCE, GREY_TOLERANCE);
                }
            }
        }
    }

    /**
     * Through the reader and the local plane. On the middle meridian a metre of the plane is 0.9996 m of
     * the grid, which gdaldem is told. The plane's mapping is off by 5 mm at most, so slopes by 5 mm times
     * the steepness in a spacing, well below 0.05 degrees and half a grey level more.
     */
    @Test
    void agrees_over_the_local_plane() throws Exception {
        Path tif = raster(10, 10);
        String scale = String.format(Locale.ROOT, "%.9f", 1 / 0.9996);
        GdalGrid slope = gdaldem(tif, "slope", "-s", scale);
        GdalGrid shade = gdaldem(tif, "hillshade", "-s", scale);
        Proj4jReferenceSystems systems = new Proj4jReferenceSystems();
        ReferenceSystem utm = systems.find("EPSG:25832").getValue();
        LocalFrame frame = LocalFrame.of(utm.toGeo(500_000, 5_200_000));
        HeightField field =
                new RasterFiles(systems)
                        .read(
                                new RasterReader.Request(
                                        tif, "t.tif", Optional.empty(), "", frame, 300))
                        .field()
                        .orElseThrow();
        Hillshade light = new Hillshade(7 * Math.PI / 4, Math.PI / 4);
        double spacing = 10 / 0.9996;
        for (int row = 10; row < ROWS - 10; row++) {
            for (int column = 20; column < COLUMNS - 20; column++) {
                double x = slope.grid().west() + (column + 0.5) * 10;
                double y = slope.grid().north() - (row + 0.5) * 10;
                PlanePoint here = frame.toPlane(utm.toGeo(x, y));
                double degrees =
                        Math.toDegrees(Slope.find(field, here, spacing).orElseThrow().slopeRad());
                assertThat(degrees - slope.at(column, row)).isBetween(-0.05, 0.05);
                assertThat(grey(light, field, here, spacing, spacing) - shade.at(column, row))
                        .isBetween(-GREY_TOLERANCE - 0.5, GREY_TOLERANCE + 0.5);
            }
        }
    }

    private static void compare(Slope ours, float theirsDeg) {
        assertThat(Math.toDegrees(ours.slopeRad()) - theirsDeg)
                .isBetween(-SLOPE_TOLERANCE_DEG, SLOPE_TOLERANCE_DEG);
    }

    /** gdaldem keeps 0 for nothing, so brightness runs from 1 to 255. */
    private static double grey(
            Hillshade light, HeightField field, PlanePoint here, double width, double height) {
        return 1 + 254 * light.findBrightnessFraction(field, here, width, height).orElseThrow();
    }

    /** Hills of 100 m with rough ground on them, around the middle meridian of UTM 32. */
    private Path raster(double width, double height) throws IOException {
        Random random = new Random(17);
        List<Float> values = new ArrayList<>();
        for (int i = 0; i < COLUMNS * ROWS; i++) {
            double column = i % COLUMNS;
            double row = Math.floorDiv(i, COLUMNS);
            values.add(
                    (float)
                            (1000
                                    + 100 * Math.sin(column / 7) * Math.cos(row / 5)
                                    + 3 * random.nextDouble()));
        }
        RasterGrid shape =
                new RasterGrid(
                        COLUMNS,
                        ROWS,
                        500_000 - width * COLUMNS / 2,
                        5_200_000 + height * ROWS / 2,
                        width,
                        height);
        Path raw = folder.resolve("hills.img");
        GdalGrid.write(raw, shape, values);
        Path tif = folder.resolve("hills.tif");
        GeoTiffIT.run(
                List.of(
                        "gdal_translate",
                        "-q",
                        "-a_srs",
                        "EPSG:25832",
                        "-a_ullr",
                        "" + shape.west(),
                        "" + shape.north(),
                        "" + (shape.west() + width * COLUMNS),
                        "" + (shape.north() - height * ROWS),
                        raw.toString(),
                        tif.toString()));
        return tif;
    }

    private GdalGrid gdaldem(Path tif, String what, String... more) throws IOException {
        Path out = folder.resolve(what + ".tif");
        List<String> command = new ArrayList<>(List.of("gdaldem", what, tif + "", out + ""));
        command.addAll(List.of(more));
        GeoTiffIT.run(command);
        return GdalGrid.read(out.toString(), folder);
    }

    /** A plane laid on the raster's own grid, its origin in the north-west corner. */
    private record OwnGrid(Cells cells, RasterGrid grid) implements HeightField {
        @Override
        public boolean covers(double eastM, double northM) {
            return true;
        }

        @Override
        public double heightM(double eastM, double northM) {
            return cells.at(
                    (int) Math.floor(eastM / grid.cellWidth()),
                    (int) Math.floor(-northM / grid.cellHeight()));
        }

        @Override
        public double highestWithinM(PlanePoint centre, double radiusM) {
            throw new UnsupportedOperationException();
        }

        @Override
        public boolean coversDisc(PlanePoint centre, double radiusM) {
            throw new UnsupportedOperationException();
        }

        @Override
        public double cellSizeM() {
            return grid.cellWidth();
        }
    }
}
