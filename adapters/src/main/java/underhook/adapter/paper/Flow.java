package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Fills pages of one title from top to bottom and begins a new one when a thing does not fit. */
final class Flow {
    /** A column of a table. */
    record Column(String head, double width, Face face) {
        static Column of(String head, double width) {
            return new Column(head, width, Face.TEXT);
        }

        static Column strong(String head, double width) {
            return new Column(head, width, Face.STRONG);
        }
    }

    private static final Face HEAD = new Face(true, 9);
    private static final double LINE_HEIGHT = 1.2;
    private static final double GAP = 5;

    private final Book book;
    private final PDRectangle size;
    private final String title;
    private final Tongue tongue;
    private Sheet sheet;
    private double y;
    private List<Column> columns = List.of();

    /** Not drawn before what it stands over, so that neither is left alone at a page's foot. */
    private String dueHeading = "";

    private boolean isHeadDue;

    Flow(Book book, PDRectangle size, String title) throws IOException {
        this(book, size, title, Tongue.ENGLISH);
    }

    /** What is written is said in the tongue. */
    Flow(Book book, PDRectangle size, String title, Tongue tongue) throws IOException {
        this.tongue = tongue;
        this.book = book;
        this.size = size;
        this.title = title;
        this.sheet = book.newPage(size, title, tongue);
        this.y = sheet.top();
    }

    Sheet sheet() throws IOException {
        settle();
        return sheet;
    }

    /** Top of what comes next. */
    double y() throws IOException {
        settle();
        return y;
    }

    /** Makes sure that so much height is left; true when a new page was begun. */
    boolean need(double height) throws IOException {
        boolean isNew = turn(headingHeight() + height);
        drawHeading();
        return isNew;
    }

    private boolean turn(double height) throws IOException {
        if (y + height <= sheet.bottom() || y <= sheet.top()) {
            return false;
        }
        sheet = book.newPage(size, title + ", continued", tongue);
        y = sheet.top();
        return true;
    }

    /** A gap, which ends the table: its head is not repeated on a page that begins behind it. */
    void space(double height) throws IOException {
        settle();
        y += height;
        columns = List.of();
        isHeadDue = false;
    }

    void heading(String text) throws IOException {
        settle();
        dueHeading = tongue.say(text);
    }

    /** Draws a heading that waits, with room below it. */
    private void settle() throws IOException {
        if (!dueHeading.isEmpty()) {
            need(27);
        }
    }

    private double headingHeight() {
        return dueHeading.isEmpty() ? 0 : 23;
    }

    private void drawHeading() throws IOException {
        if (!dueHeading.isEmpty()) {
            sheet.text(sheet.left(), y + 16, new Face(true, 13), dueHeading);
            y += headingHeight();
            dueHeading = "";
        }
    }

    void paragraph(Face face, String text) throws IOException {
        double step = face.size() * LINE_HEIGHT;
        for (String line :
                sheet.fonts().wrap(face, tongue.say(text), sheet.right() - sheet.left())) {
            need(step);
            y += step;
            sheet.text(sheet.left(), y - face.size() * 0.2, face, line);
        }
    }

    /** Begins a table; rows follow, and the head is repeated on each page. */
    void table(List<Column> tableColumns) throws IOException {
        columns =
                tableColumns.stream()
                        .map(one -> new Column(tongue.say(one.head()), one.width(), one.face()))
                        .toList();
        isHeadDue = true;
    }

    private int headLines() {
        return columns.stream()
                .mapToInt(
                        column ->
                                sheet.fonts()
                                        .wrap(HEAD, column.head(), column.width() - GAP)
                                        .size())
                .max()
                .orElse(1);
    }

    /** Room for a row or bar, with the heading and the table's head before it where they are due. */
    private void needBelowHead(double height) throws IOException {
        boolean isNew = need((isHeadDue ? 4 + headLines() * 10.5 : 0) + height);
        if (isHeadDue || (isNew && !columns.isEmpty())) {
            tableHead();
        }
        isHeadDue = false;
    }

    private void tableHead() throws IOException {
        int lines = headLines();
        double x = sheet.left();
        for (Column column : columns) {
            List<String> words = sheet.fonts().wrap(HEAD, column.head(), column.width() - GAP);
            for (int i = 0; i < words.size(); i++) {
                sheet.text(x + 2, y + 10 + (lines - words.size() + i) * 10.5, HEAD, words.get(i));
            }
            x += column.width();
        }
        y += 4 + lines * 10.5;
        sheet.stroke(1.2);
        sheet.line(sheet.left(), y, sheet.right(), y);
    }

    /** A row of the table; a cell "[]" is a box for a pencil tick. One that no page holds is parted. */
    void row(List<String> cells) throws IOException {
        List<List<String>> wrapped = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            Column column = columns.get(i);
            wrapped.add(
                    sheet.fonts()
                            .wrap(column.face(), tongue.say(cells.get(i)), column.width() - GAP));
        }
        needBelowHead(height(wrapped));
        while (y + height(wrapped) > sheet.bottom()) {
            double room = sheet.bottom() - y;
            drawRow(part(wrapped, room, true));
            wrapped = part(wrapped, room, false);
            need(sheet.bottom());
            tableHead();
        }
        drawRow(wrapped);
    }

    private double height(List<List<String>> wrapped) {
        double height = 13.5;
        for (int i = 0; i < columns.size(); i++) {
            height = Math.max(height, wrapped.get(i).size() * step(i));
        }
        return height + 4;
    }

    private double step(int column) {
        return columns.get(column).face().size() * LINE_HEIGHT;
    }

    /** The lines of each cell that fit into the room, or those that do not; one always fits. */
    private List<List<String>> part(List<List<String>> wrapped, double room, boolean fitting) {
        List<List<String>> out = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            List<String> lines = wrapped.get(i);
            int count = Math.min(lines.size(), Math.max(1, (int) ((room - 4) / step(i))));
            out.add(fitting ? lines.subList(0, count) : lines.subList(count, lines.size()));
        }
        return out;
    }

    private void drawRow(List<List<String>> wrapped) throws IOException {
        double x = sheet.left();
        for (int i = 0; i < columns.size(); i++) {
            Face face = columns.get(i).face();
            if (wrapped.get(i).equals(List.of("[]"))) {
                sheet.stroke(1);
                sheet.box(x + 2, y + 2.5, 12.5, 12.5);
            } else {
                double baseline = y + 3 + face.size();
                for (String line : wrapped.get(i)) {
                    sheet.text(x + 2, baseline, face, line);
                    baseline += step(i);
                }
            }
            x += columns.get(i).width();
        }
        y += height(wrapped);
        sheet.stroke(0.4);
        sheet.line(sheet.left(), y, sheet.right(), y);
    }

    /** A line across the table that cannot be overlooked: white on black. */
    void bar(String text) throws IOException {
        Face face = new Face(true, 12);
        List<String> lines =
                sheet.fonts().wrap(face, tongue.say(text), sheet.right() - sheet.left() - 30);
        double height = lines.size() * 15 + 5;
        needBelowHead(height);
        sheet.black();
        sheet.fillBox(sheet.left(), y + 1, sheet.right() - sheet.left(), height - 1);
        sheet.white();
        sheet.fillBox(sheet.left() + 2, y + 4, 13, 13);
        double baseline = y + 15;
        for (String line : lines) {
            sheet.text(sheet.left() + 24, baseline, face, line);
            baseline += 15;
        }
        sheet.black();
        y += height;
    }
}
