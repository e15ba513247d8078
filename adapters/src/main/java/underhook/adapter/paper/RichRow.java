package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Cells with big digits and small words on one baseline. A cell that would run into the one before
 * moves right; one that would leave the row goes to the next line.
 */
final class RichRow {
    private static final char BIG = '\u0001';
    private static final char PLAIN = '\u0002';
    private static final double LINE = 16;
    private static final double BETWEEN = 7;

    private record Placed(double x, int line, String cell) {}

    private final Fonts fonts;
    private final double width;
    private final List<Placed> placed = new ArrayList<>();
    private int lines = 1;

    /**
     * @param tabs where cells begin at the earliest, from the left end of the row; further cells follow
     *     each other
     */
    RichRow(Fonts fonts, double width, List<Double> tabs, List<String> cells) {
        this.fonts = fonts;
        this.width = width;
        double x = 0;
        for (int i = 0; i < cells.size(); i++) {
            double start = i < tabs.size() ? Math.max(x, tabs.get(i)) : x;
            double cellWidth = widthOf(cells.get(i));
            if (start + cellWidth > width && x > 0) {
                // Without its tab it may still fit.
                start = x;
                if (start + cellWidth > width) {
                    lines++;
                    start = 0;
                }
            }
            placed.add(new Placed(start, lines - 1, cells.get(i)));
            x = start + cellWidth + BETWEEN;
        }
    }

    /** Marks text inside a cell as flown digits. */
    static String big(Object digits) {
        return BIG + digits.toString().replace(BIG, ' ').replace(PLAIN, ' ') + PLAIN;
    }

    double height() {
        return lines * LINE;
    }

    void draw(Sheet sheet, double left, double top) throws IOException {
        for (Placed one : placed) {
            double x = left + one.x();
            double baseline = top + one.line() * LINE + 13;
            for (Part part : parts(one.cell())) {
                double room = Math.max(left + width - x, 1);
                x = sheet.textWithin(new Sheet.Dot(x, baseline), room, part.face(), part.text());
            }
        }
    }

    private record Part(Face face, String text) {}

    private double widthOf(String cell) {
        return parts(cell).stream()
                .mapToDouble(part -> fonts.width(part.face(), part.text()))
                .sum();
    }

    private static List<Part> parts(String cell) {
        List<Part> parts = new ArrayList<>();
        Face face = Face.TEXT;
        int begin = 0;
        for (int i = 0; i <= cell.length(); i++) {
            char mark = i == cell.length() ? PLAIN : cell.charAt(i);
            if (mark == BIG || mark == PLAIN) {
                if (i > begin) {
                    parts.add(new Part(face, cell.substring(begin, i)));
                }
                face = mark == BIG ? Face.FLOWN : Face.TEXT;
                begin = i + 1;
            }
        }
        return parts;
    }
}
