package underhook.adapter.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The one embedded family, and how wide text is in it. */
final class Fonts implements AutoCloseable {
    private static final String DOTS = "...";
    private static final Pattern SPACES = Pattern.compile(" +");
    private static final Pattern WORD_END =
            Pattern.compile(
                    "(?<!\\d) | (?!(?:%|m|km|kg|lb|ft|kt|min|s|N|deg|hPa)(?:[^\\p{L}\\d]|$))");

    private final Map<String, String> told = new LinkedHashMap<>();
    private final Cut regular;
    private final Cut bold;

    Fonts(PDDocument document) throws IOException {
        regular = Cut.of(document, "LiberationSans-Regular.ttf");
        bold = Cut.of(document, "LiberationSans-Bold.ttf");
    }

    /**
     * The family, upright or bold.
     *
     * @param widths of the signs that were measured, thousandths of the size
     */
    private record Cut(
            TrueTypeFont file, PDType0Font font, CmapLookup glyphs, Map<Integer, Float> widths) {
        static Cut of(PDDocument document, String name) throws IOException {
            TrueTypeFont file = read(name);
            return new Cut(
                    file,
                    PDType0Font.load(document, file, true),
                    file.getUnicodeCmapLookup(),
                    new HashMap<>());
        }

        /** Joiners and selectors are seen in no font. */
        boolean lacks(int point) {
            return !Character.isWhitespace(point)
                    && Character.getType(point) != Character.FORMAT
                    && !isSelector(point)
                    && !hasGlyph(point);
        }

        private boolean hasGlyph(int point) {
            return !Character.isISOControl(point) && glyphs.getGlyphId(point) != 0;
        }

        /** Of how a sign before it looks, skin tones among them. */
        private static boolean isSelector(int point) {
            return (point >= 0xFE00 && point <= 0xFE0F) || (point >= 0x1F3FB && point <= 0x1F3FF);
        }

        String printable(int point) {
            if (Character.isWhitespace(point)) {
                return " ";
            }
            if (hasGlyph(point)) {
                return Character.toString(point);
            }
            if (!lacks(point)) {
                return "";
            }
            String name = Character.getName(point);
            if (Character.isLetter(point) || Character.isISOControl(point)) {
                return "?";
            }
            return "["
                    + (name == null
                            ? String.format(Locale.ROOT, "U+%04X", point)
                            : name.toLowerCase(Locale.ROOT))
                    + "]";
        }

        float width(int point) {
            return widths.computeIfAbsent(
                    point,
                    unused -> {
                        try {
                            return font.getStringWidth(printable(point));
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    });
        }
    }

    private static TrueTypeFont read(String name) throws IOException {
        try (InputStream in = Fonts.class.getResourceAsStream("/underhook/font/" + name)) {
            if (in == null) {
                throw new IOException("font " + name + " is missing from the program.");
            }
            TrueTypeFont file =
                    new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
            // All it substitutes is tone letters of phonetic script; to look for them in each word
            // took more time than all else on paper.
            file.setEnableGsub(false);
            return file;
        }
    }

    private Cut cut(Face face) {
        return face.bold() ? bold : regular;
    }

    PDFont getFont(Face face) {
        return cut(face).font();
    }

    /**
     * The text with every sign that the font has no glyph for as its name in brackets, or '?' where it is a letter of
     * a script that the font has not.
     */
    String toPrintable(Face face, String text) {
        Cut cut = cut(face);
        StringBuilder printable = new StringBuilder(text.length());
        Set<Integer> lacking = new LinkedHashSet<>();
        text.codePoints()
                .forEach(
                        point -> {
                            printable.append(cut.printable(point));
                            if (cut.lacks(point)) {
                                lacking.add(point);
                            }
                        });
        if (!lacking.isEmpty()) {
            told.putIfAbsent(
                    printable.toString(),
                    lacking.stream().map(Fonts::named).collect(Collectors.joining(", ")));
        }
        return printable.toString();
    }

    /** Texts that were not printed as written, in order: as printed, and the signs that the font does not have. */
    Map<String, String> told() {
        return Collections.unmodifiableMap(new LinkedHashMap<>(told));
    }

    private static String named(int point) {
        String name = Character.getName(point);
        return String.format(Locale.ROOT, "U+%04X", point) + (name == null ? "" : " " + name);
    }

    /** Width of printed text, points. */
    double width(Face face, String text) {
        Cut cut = cut(face);
        float width = 0;
        for (int i = 0; i < text.length(); i = text.offsetByCodePoints(i, 1)) {
            width += cut.width(text.codePointAt(i));
        }
        return width / 1000 * face.size();
    }

    /** The face, made smaller until the text fits, but never below half. */
    Face shrunk(Face face, String text, double width) {
        double full = width(face, text);
        return full <= width
                ? face
                : face.withSize(Math.max(face.size() / 2, face.size() * width / full * 0.999));
    }

    /** The text, cut at its end with three dots where it is wider. */
    String cut(Face face, String text, double width) {
        if (width(face, text) <= width) {
            return text;
        }
        return text.substring(0, fitting(face, text, width - width(face, DOTS))) + DOTS;
    }

    /** How much of a text fits into a width, its first sign in any case. */
    private int fitting(Face face, String text, double width) {
        Cut cut = cut(face);
        double most = width * 1000 / face.size();
        double sum = 0;
        int end = 0;
        while (end < text.length()) {
            sum += cut.width(text.codePointAt(end));
            if (sum > most && end > 0) {
                return end;
            }
            end = text.offsetByCodePoints(end, 1);
        }
        return end;
    }

    /** A number and its unit are one word: no line ends between them. */
    private static String[] words(String text) {
        return WORD_END.split(SPACES.matcher(text.strip()).replaceAll(" "));
    }

    /** Lines of at most that width; a word that is longer is broken, at a joint if it has one. */
    List<String> wrap(Face face, String text, double width) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : words(toPrintable(face, text))) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(face, longer) <= width) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (width(face, line) > width && line.length() > 1) {
                int end = joint(line, fitting(face, line, width));
                lines.add(line.substring(0, end).strip());
                line = line.substring(end);
            }
        }
        lines.add(line);
        return lines;
    }

    /** Behind the last joint that fits: 1.07 read as 1.0 and 007 as 00 are other things. */
    private static int joint(String word, int fitting) {
        for (int end = fitting; end > 1; end--) {
            if ("-/_× ".indexOf(word.charAt(end - 1)) >= 0) {
                return end;
            }
        }
        return fitting;
    }

    @Override
    public void close() throws IOException {
        regular.file().close();
        bold.file().close();
    }
}
