package underhook.adapter.terrain;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** An ESRI ASCII grid, with its reference system in a .prj beside it when there is one. */
final class AsciiGridSource implements RasterSource {
    private static final double USUAL_NODATA = -9999;

    private final Path file;
    private final Map<String, Double> header = new HashMap<>();
    private final RasterGrid grid;

    private AsciiGridSource(Path file) throws IOException, RasterFault {
        this.file = file;
        try (Words words = new Words(file)) {
            readHeader(words);
        }
        grid = gridOf();
    }

    static AsciiGridSource open(Path file) throws IOException, RasterFault {
        return new AsciiGridSource(file);
    }

    /** Leaves the words at the first value. */
    private void readHeader(Words words) throws IOException, RasterFault {
        header.clear();
        while (Character.isLetter(words.peek().charAt(0))
                && !words.peek().equalsIgnoreCase("nan")) {
            String key = words.next().toLowerCase(Locale.ROOT);
            if (header.size() > 16) {
                throw RasterFault.unreadable(words.line(), "its header does not end", key);
            }
            header.put(key, words.number());
        }
    }

    private RasterGrid gridOf() throws RasterFault {
        double width = header.containsKey("cellsize") ? get("cellsize") : get("dx");
        double height = header.containsKey("cellsize") ? get("cellsize") : get("dy");
        double columns = get("ncols");
        double rows = get("nrows");
        boolean isWhole = columns == Math.rint(columns) && rows == Math.rint(rows);
        if (!(isWhole && columns >= 1 && rows >= 1 && columns < 1e9 && rows < 1e9)) {
            throw RasterFault.unreadable("has no sensible size", columns + " x " + rows, "");
        }
        double west =
                header.containsKey("xllcenter") ? get("xllcenter") - width / 2 : get("xllcorner");
        double south =
                header.containsKey("yllcenter") ? get("yllcenter") - height / 2 : get("yllcorner");
        return RasterGrid.of(
                (int) columns,
                (int) rows,
                new double[] {west, south + rows * height, width, height});
    }

    private double get(String key) throws RasterFault {
        Double value = header.get(key);
        if (value == null) {
            throw RasterFault.unreadable("its header lacks " + key, "", "");
        }
        return value;
    }

    @Override
    public RasterGrid grid() {
        return grid;
    }

    @Override
    public Optional<String> systemText() throws RasterFault {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        Path beside = file.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ".prj");
        try {
            if (!Files.isRegularFile(beside) || Files.size(beside) > 65_536) {
                return Optional.empty();
            }
            return Optional.of(
                    new String(Files.readAllBytes(beside), StandardCharsets.ISO_8859_1).strip());
        } catch (IOException e) {
            throw RasterFault.unreadable("its .prj cannot be read", beside.getFileName() + "", "");
        }
    }

    /** Reads past the window to the end: a file with other than all its values has its rows elsewhere. */
    @Override
    public Cells read(RasterGrid.Window window) throws IOException, RasterFault {
        Cells cells = new Cells(window, false);
        HeightValues values =
                new HeightValues(header.getOrDefault("nodata_value", USUAL_NODATA), 1, 0);
        try (Words words = new Words(file)) {
            readHeader(words);
            for (int row = 0; row < grid.rows(); row++) {
                for (int column = 0; column < grid.columns(); column++) {
                    if (row >= window.firstRow()
                            && row <= window.lastRow()
                            && column >= window.firstColumn()
                            && column <= window.lastColumn()) {
                        cells.set(
                                column - window.firstColumn(),
                                row - window.firstRow(),
                                values.of(words.number()));
                    } else {
                        words.next();
                    }
                }
            }
            if (!words.isAtEnd()) {
                throw RasterFault.unreadable(
                        words.line(), "goes on after its last value", words.peek());
            }
        }
        return cells;
    }

    @Override
    public void close() {
        // The file is open only while it is read.
    }

    /** The words of a text, one after the other. */
    private static final class Words implements AutoCloseable {
        private static final int LONGEST = 64;
        private static final String MARK = "\u00EF\u00BB\u00BF";

        private final BufferedReader reader;
        private int line = 1;
        private String word = "";

        Words(Path file) throws IOException, RasterFault {
            reader = Files.newBufferedReader(file, StandardCharsets.ISO_8859_1);
            advance();
            // What some editors put before a text, as it reads in this charset.
            word = word.startsWith(MARK) ? word.substring(MARK.length()) : word;
        }

        int line() {
            return line;
        }

        boolean isAtEnd() {
            return word.isEmpty();
        }

        String peek() throws RasterFault {
            if (word.isEmpty()) {
                throw RasterFault.unreadable(line, "ends early. Perhaps it is truncated", "");
            }
            return word;
        }

        String next() throws IOException, RasterFault {
            String now = peek();
            advance();
            return now;
        }

        double number() throws IOException, RasterFault {
            int at = line;
            String now = next();
            if (now.equalsIgnoreCase("nan")) {
                return Double.NaN;
            }
            char end = now.charAt(now.length() - 1);
            try {
                if (Character.isDigit(end) || end == '.') {
                    return Double.parseDouble(now);
                }
            } catch (NumberFormatException e) {
                // Said below, with the text.
            }
            throw RasterFault.unreadable(at, "holds a word that is no number", now);
        }

        private void advance() throws IOException, RasterFault {
            StringBuilder out = new StringBuilder();
            int c = reader.read();
            while (c >= 0 && (c > ' ' || out.isEmpty())) {
                if (c > ' ') {
                    out.append((char) c);
                } else if (c == '\n') {
                    line++;
                }
                if (out.length() > LONGEST) {
                    throw RasterFault.unreadable(line, "is no text of numbers", out.toString());
                }
                c = reader.read();
            }
            if (c == '\n') {
                line++;
            }
            word = out.toString();
        }

        @Override
        public void close() throws IOException {
            reader.close();
        }
    }
}
