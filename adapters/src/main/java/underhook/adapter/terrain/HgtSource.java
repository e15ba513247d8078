package underhook.adapter.terrain;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * One degree of heights as big-endian words, named after its south-west corner; values stand for points,
 * the outermost on the degree lines.
 *
 * @source SRTM-COLLECTION sections on HGT files
 */
final class HgtSource implements RasterSource {
    private static final Pattern NAME =
            Pattern.compile("([NS])([0-9]{2})([EW])([0-9]{3})", Pattern.CASE_INSENSITIVE);

    private final Path file;
    private final Optional<String> entryName;
    private final RasterGrid grid;

    private HgtSource(Path file, Optional<String> entryName, RasterGrid grid) {
        this.file = file;
        this.entryName = entryName;
        this.grid = grid;
    }

    static HgtSource open(Path file, String statedName) throws IOException, RasterFault {
        if (!statedName.toLowerCase(Locale.ROOT).endsWith(".zip")) {
            return new HgtSource(file, Optional.empty(), gridOf(statedName, Files.size(file)));
        }
        try (ZipFile zip = new ZipFile(file.toFile())) {
            ZipEntry only = null;
            Enumeration<? extends ZipEntry> all = zip.entries();
            while (all.hasMoreElements()) {
                ZipEntry entry = all.nextElement();
                if (entry.getName().toLowerCase(Locale.ROOT).endsWith(".hgt")) {
                    if (only != null) {
                        throw RasterFault.unreadable(
                                "holds more than one HGT file", entry.getName(), "one");
                    }
                    only = entry;
                }
            }
            if (only == null) {
                throw RasterFault.unreadable("holds no HGT file", "", "one");
            }
            return new HgtSource(
                    file, Optional.of(only.getName()), gridOf(only.getName(), only.getSize()));
        }
    }

    private static RasterGrid gridOf(String path, long size) throws RasterFault {
        String name = path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
        Matcher corner = NAME.matcher(name);
        if (!corner.lookingAt()) {
            throw RasterFault.unreadable(
                    "its name does not give its corner", name, "as N46E008.hgt");
        }
        int points = size == 2L * 3601 * 3601 ? 3601 : size == 2L * 1201 * 1201 ? 1201 : 0;
        if (points == 0) {
            throw RasterFault.unreadable(
                    "is not as long as a 1 or 3 second file",
                    size + " bytes",
                    "25934402 or 2884802");
        }
        int south = Integer.parseInt(corner.group(2));
        int west = Integer.parseInt(corner.group(4));
        if (corner.group(1).equalsIgnoreCase("S")) {
            south = -south;
        }
        if (corner.group(3).equalsIgnoreCase("W")) {
            west = -west;
        }
        if (south < -90 || south > 89 || west < -180 || west > 179) {
            throw RasterFault.unreadable("its corner is not on Earth", name, "as N46E008.hgt");
        }
        double step = 1.0 / (points - 1);
        return RasterGrid.of(
                points, points, new double[] {west - step / 2, south + 1 + step / 2, step, step});
    }

    @Override
    public RasterGrid grid() {
        return grid;
    }

    @Override
    public Optional<String> systemText() {
        return Optional.of("EPSG:4326");
    }

    @Override
    public Cells read(RasterGrid.Window window) throws IOException, RasterFault {
        if (entryName.isEmpty()) {
            try (InputStream in = Files.newInputStream(file)) {
                return read(window, in);
            }
        }
        try (ZipFile zip = new ZipFile(file.toFile())) {
            ZipEntry entry = zip.getEntry(entryName.get());
            if (entry == null) {
                throw RasterFault.unreadable("changed while it was read", entryName.get(), "");
            }
            try (InputStream in = zip.getInputStream(entry)) {
                return read(window, in);
            }
        }
    }

    private Cells read(RasterGrid.Window window, InputStream raw) throws IOException, RasterFault {
        Cells cells = new Cells(window, false);
        HeightValues values = new HeightValues(-32768, 1, 0);
        byte[] row = new byte[2 * grid.columns()];
        InputStream in = new BufferedInputStream(raw, 1 << 16);
        in.skipNBytes((long) window.firstRow() * row.length);
        for (int y = 0; y < window.rows(); y++) {
            if (in.readNBytes(row, 0, row.length) < row.length) {
                throw RasterFault.unreadable("ends early", "", "");
            }
            for (int x = 0; x < window.columns(); x++) {
                int at = 2 * (x + window.firstColumn());
                cells.set(x, y, values.of((short) ((row[at] << 8) | (row[at + 1] & 0xff))));
            }
        }
        return cells;
    }

    @Override
    public void close() {
        // The file is open only while cells are read.
    }
}
