package underhook.adapter.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The one embedded family, and how wide text is in it. */
final class Fonts implements AutoCloseable {
    private static final String WORD_END =
            "(?<!\\d) | (?!(?:%|m|km|kg|lb|ft|kt|min|s|N|deg|hPa)(?:[^\\p{L}\\d]|$))";

    private final TrueTypeFont regularFile;
    private final TrueTypeFont boldFile;
    private final PDType0Font regular;
    private final PDType0Font bold;
    private final CmapLookup regularGlyphs;
    private final CmapLookup boldGlyphs;

    Fonts(PDDocument document) throws IOException {
        regularFile = read("LiberationSans-Regular.ttf");
        boldFile = read("LiberationSans-Bold.ttf");
        regular = PDType0Font.load(document, regularFile, true);
        bold = PDType0Font.load(document, boldFile, true);
        regularGlyphs = regularFile.getUnicodeCmapLookup();
        boldGlyphs = boldFile.getUnicodeCmapLookup();
    }

    private static TrueTypeFont read(String name) throws IOException {
        try (InputStream in = Fonts.class.getResourceAsStream("/underhook/font/" + name)) {
            if (in == null) {
                throw new IOException("font " + name + " is missing from the program.");
            }
            return new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
        }
    }

    PDFont getFont(Face face) {
        return face.bold() ? bold : regular;
    }

    /** The text with everything that the font has no glyph for replaced by '?'. */
    String toPrintable(Face face, String text) {
        CmapLookup glyphs = face.bold() ? boldGlyphs : regularGlyphs;
        StringBuilder printable = new StringBuilder(text.length());
        text.codePoints()
                .forEach(
                        point -> {
                            if (Character.isWhitespace(point)) {
                                printable.append(' ');
                            } else if (Character.isISOControl(point)
                                    || glyphs.getGlyphId(point) == 0) {
                                printable.append('?');
                            } else {
                                printable.appendCodePoint(point);
                            }
                        });
        return printable.toString();
    }

    /** Width of printed text, points. */
    double width(Face face, String text) {
        try {
            return getFont(face).getStringWidth(toPrintable(face, text)) / 1000 * face.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
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
        int length = text.length();
        while (length > 1 && width(face, text.substring(0, length) + "...") > width) {
            length--;
        }
        return text.substring(0, length) + "...";
    }

    /** A number and its unit are one word: no line ends between them. */
    private static String[] words(String text) {
        return text.strip().replaceAll(" +", " ").split(WORD_END);
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
                int fitting = line.length() - 1;
                while (fitting > 1 && width(face, line.substring(0, fitting)) > width) {
                    fitting--;
                }
                fitting = joint(line, fitting);
                lines.add(line.substring(0, fitting).strip());
                line = line.substring(fitting);
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
        regularFile.close();
        boldFile.close();
    }
}
