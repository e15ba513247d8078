package underhook.adapter.terrain;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.core.unit.Units;

/**
 * A band of a GeoTIFF.
 *
 * @source OGC-19-008 sections 7 and 8; nodata and band names in tags 42113 and 42112 as GDAL writes them
 */
final class GeoTiffSource implements RasterSource {
    private static final Pattern ITEM =
            Pattern.compile("<Item\\s+([^>]*)>([^<]*)</Item>", Pattern.DOTALL);
    private static final Pattern SAMPLE = Pattern.compile("sample=\"([0-9]+)\"");
    private static final Pattern ROLE = Pattern.compile("role=\"([a-z]+)\"");

    private final FileChannel channel;
    private final TiffDirectory tags;
    private final TiffBlocks blocks;
    private final GeoKeys keys;
    private final RasterGrid grid;
    private final int band;

    private GeoTiffSource(FileChannel channel, String bandText) throws IOException, RasterFault {
        this.channel = channel;
        tags = TiffDirectory.open(channel);
        blocks = new TiffBlocks(tags);
        keys = GeoKeys.read(tags);
        grid = gridOf();
        band = bandOf(bandText);
    }

    static GeoTiffSource open(Path file, String band) throws IOException, RasterFault {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
        boolean opened = false;
        try {
            GeoTiffSource source = new GeoTiffSource(channel, band);
            opened = true;
            return source;
        } finally {
            if (!opened) {
                channel.close();
            }
        }
    }

    private RasterGrid gridOf() throws IOException, RasterFault {
        double[] scale = tags.numbers(33550);
        double[] tie = tags.numbers(33922);
        double[] matrix = tags.numbers(34264);
        // A value that stands for a point lies in the middle of its cell.
        double shift = keys.isPoint() ? 0.5 : 0;
        double[] at;
        if (scale.length >= 2 && tie.length == 6) {
            at =
                    new double[] {
                        tie[3] - (tie[0] + shift) * scale[0],
                        tie[4] + (tie[1] + shift) * scale[1],
                        scale[0],
                        scale[1]
                    };
        } else if (matrix.length == 16) {
            if (Math.abs(matrix[1]) > 0 || Math.abs(matrix[4]) > 0) {
                throw RasterFault.unreadable(
                        "is turned against north",
                        "",
                        "rows from north to south; gdalwarp makes such a file");
            }
            at =
                    new double[] {
                        matrix[3] - shift * matrix[0],
                        matrix[7] - shift * matrix[5],
                        matrix[0],
                        -matrix[5]
                    };
        } else {
            throw RasterFault.unreadable(
                    "does not say where on Earth it lies", "", "a tie point and a pixel scale");
        }
        return RasterGrid.of(blocks.columns(), blocks.rows(), at);
    }

    private int bandOf(String text) throws IOException, RasterFault {
        if (text.isBlank()) {
            if (blocks.bands() > 1) {
                throw RasterFault.unreadable(
                        "has several bands and none is named", "", allowedBands());
            }
            return 0;
        }
        String wanted = text.strip();
        for (int i = 0; i < blocks.bands(); i++) {
            if (wanted.equals(Integer.toString(i + 1))
                    || item("description", i).filter(wanted::equalsIgnoreCase).isPresent()) {
                return i;
            }
        }
        throw RasterFault.unreadable("has no such band", text, allowedBands());
    }

    private String allowedBands() throws IOException, RasterFault {
        StringBuilder out = new StringBuilder("1 to " + blocks.bands());
        for (int i = 0; i < Math.min(20, blocks.bands()); i++) {
            item("description", i).ifPresent(name -> out.append(", ").append(name));
        }
        return out.toString();
    }

    private Optional<String> item(String role, int sample) throws IOException, RasterFault {
        Matcher items = ITEM.matcher(tags.text(42112).orElse(""));
        while (items.find()) {
            Matcher of = SAMPLE.matcher(items.group(1));
            Matcher is = ROLE.matcher(items.group(1));
            if (is.find()
                    && is.group(1).equals(role)
                    && of.find()
                    && of.group(1).equals(Integer.toString(sample))) {
                return Optional.of(
                        items.group(2)
                                .strip()
                                .replace("&lt;", "<")
                                .replace("&gt;", ">")
                                .replace("&quot;", "\"")
                                .replace("&amp;", "&"));
            }
        }
        return Optional.empty();
    }

    @Override
    public RasterGrid grid() {
        return grid;
    }

    @Override
    public Optional<String> systemText() throws RasterFault {
        return keys.systemText();
    }

    @Override
    public Cells read(RasterGrid.Window window) throws IOException, RasterFault {
        double unit = unitFactor();
        HeightValues values =
                new HeightValues(
                        numberOf(tags.text(42113), Double.NaN),
                        numberOf(item("scale", band), 1) * unit,
                        numberOf(item("offset", band), 0) * unit);
        return readRaw(window, values);
    }

    Cells readRaw(RasterGrid.Window window, TiffBlocks.Values values)
            throws IOException, RasterFault {
        Cells cells = new Cells(window, blocks.needsDoubles());
        blocks.read(band, cells, values);
        return cells;
    }

    private double unitFactor() throws IOException, RasterFault {
        String unit = item("unittype", band).orElse("").toLowerCase(Locale.ROOT);
        boolean foot = unit.startsWith("ft") || unit.contains("foot") || unit.contains("feet");
        boolean metre = unit.isEmpty() || unit.equals("m") || unit.startsWith("met");
        if (!foot && !metre) {
            throw RasterFault.unreadable("its heights are in an unknown unit", unit, "m or ft");
        }
        // The US survey foot is longer by 2 parts in a million: 1 cm in 5 km.
        return foot || keys.isVerticalFoot() ? Units.ftToM(1) : 1;
    }

    private static double numberOf(Optional<String> text, double other) throws RasterFault {
        if (text.isEmpty() || text.get().isBlank()) {
            return other;
        }
        String plain = text.get().strip();
        if (plain.toLowerCase(Locale.ROOT).endsWith("nan")) {
            return Double.NaN;
        }
        try {
            return Double.parseDouble(plain);
        } catch (NumberFormatException e) {
            throw RasterFault.unreadable("its nodata, scale or offset is no number", plain, "");
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
