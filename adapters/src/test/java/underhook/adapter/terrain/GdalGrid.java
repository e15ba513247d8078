package underhook.adapter.terrain;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A raster as GDAL reads it: its cells as floats, north-west corner first, and where they lie. */
final class GdalGrid {
    private static final Pattern SIZE = Pattern.compile("Size is ([0-9]+), ([0-9]+)");
    private static final Pattern ORIGIN =
            Pattern.compile("Origin = \\(([-0-9.e+]+),([-0-9.e+]+)\\)");
    private static final Pattern CELL =
            Pattern.compile("Pixel Size = \\(([-0-9.e+]+),([-0-9.e+]+)\\)");

    private final RasterGrid grid;
    private final ByteBuffer values;

    private GdalGrid(RasterGrid grid, ByteBuffer values) {
        this.grid = grid;
        this.values = values;
    }

    /** Any file that GDAL opens, named as GDAL names it. */
    static GdalGrid read(String name, Path folder) throws IOException {
        Path raw = folder.resolve("gdal.img");
        GeoTiffIT.run(
                List.of("gdal_translate", "-q", "-of", "ENVI", "-ot", "Float32", name, raw + ""));
        String said = GeoTiffIT.run(List.of("gdalinfo", name));
        double[] size = numbers(SIZE, said);
        double[] origin = numbers(ORIGIN, said);
        double[] cell = numbers(CELL, said);
        return new GdalGrid(
                new RasterGrid(
                        (int) size[0], (int) size[1], origin[0], origin[1], cell[0], -cell[1]),
                ByteBuffer.wrap(Files.readAllBytes(raw)).order(ByteOrder.LITTLE_ENDIAN));
    }

    private static double[] numbers(Pattern pattern, String text) {
        Matcher matcher = pattern.matcher(text);
        if (!matcher.find()) {
            throw new IllegalStateException(pattern + " is not in " + text);
        }
        return new double[] {
            Double.parseDouble(matcher.group(1)), Double.parseDouble(matcher.group(2))
        };
    }

    /** Writes cells as GDAL's raw format has them. */
    static void write(Path file, RasterGrid shape, List<Float> values) throws IOException {
        ByteBuffer data = ByteBuffer.allocate(4 * values.size()).order(ByteOrder.LITTLE_ENDIAN);
        values.forEach(data::putFloat);
        Files.write(file, data.array());
        Files.writeString(
                Path.of(file.toString().replace(".img", ".hdr")),
                "ENVI\nsamples="
                        + shape.columns()
                        + "\nlines="
                        + shape.rows()
                        + "\nbands=1\nheader offset=0\nfile type=ENVI Standard\ndata type=4\n"
                        + "interleave=bsq\nbyte order=0\n",
                UTF_8);
    }

    RasterGrid grid() {
        return grid;
    }

    float at(int column, int row) {
        return values.getFloat(4 * (row * grid.columns() + column));
    }
}
