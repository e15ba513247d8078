package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;

/** One page being drawn. Lengths in points, x from the left edge, y down from the top edge. */
final class Sheet {
    /** A point of the page. */
    record Dot(double x, double y) {}

    private final PDPageContentStream ink;
    private final Fonts fonts;
    private final Tongue tongue;
    private final double height;
    private final double width;
    private final double margin;

    Sheet(PDPageContentStream ink, Fonts fonts, Tongue tongue, Dot size) {
        this.ink = ink;
        this.fonts = fonts;
        this.tongue = tongue;
        this.width = size.x();
        this.height = size.y();
        this.margin = width < 450 ? 17 : 34;
    }

    Fonts fonts() {
        return fonts;
    }

    /** In the tongue of the page. */
    String say(String english) {
        return tongue.say(english);
    }

    double width() {
        return width;
    }

    double height() {
        return height;
    }

    double left() {
        return margin;
    }

    double right() {
        return width - margin;
    }

    /** Where the body begins, below the head of the page. */
    double top() {
        return 58;
    }

    /** Where the body ends, above the caution. */
    double bottom() {
        return height - 48;
    }

    /** Writes with the baseline at y; returns where the text ends. */
    double text(double x, double y, Face face, String text) throws IOException {
        String printable = fonts.toPrintable(face, text);
        ink.beginText();
        ink.setFont(fonts.getFont(face), (float) face.size());
        ink.newLineAtOffset((float) x, (float) (height - y));
        ink.showText(printable);
        ink.endText();
        return x + fonts.width(face, printable);
    }

    /** Writes it smaller, and at last cut, so that it is no wider than the room; returns its end. */
    double textWithin(Dot start, double room, Face face, String text) throws IOException {
        Face smaller = fonts.shrunk(face, text, room);
        return text(start.x(), start.y(), smaller, fonts.cut(smaller, text, room));
    }

    void textRight(double x, double y, Face face, String text) throws IOException {
        text(x - fonts.width(face, text), y, face, text);
    }

    void textCentred(double x, double y, Face face, String text) throws IOException {
        text(x - fonts.width(face, text) / 2, y, face, text);
    }

    void line(double x1, double y1, double x2, double y2) throws IOException {
        polyline(List.of(new Dot(x1, y1), new Dot(x2, y2)));
    }

    void polyline(List<Dot> dots) throws IOException {
        path(dots);
        ink.stroke();
    }

    void outline(List<Dot> ring) throws IOException {
        path(ring);
        ink.closeAndStroke();
    }

    void fill(List<Dot> ring) throws IOException {
        path(ring);
        ink.fill();
    }

    private void path(List<Dot> dots) throws IOException {
        for (int i = 0; i < dots.size(); i++) {
            float x = (float) dots.get(i).x();
            float y = (float) (height - dots.get(i).y());
            if (i == 0) {
                ink.moveTo(x, y);
            } else {
                ink.lineTo(x, y);
            }
        }
    }

    void box(double x, double y, double boxWidth, double boxHeight) throws IOException {
        outline(corners(x, y, boxWidth, boxHeight));
    }

    void fillBox(double x, double y, double boxWidth, double boxHeight) throws IOException {
        fill(corners(x, y, boxWidth, boxHeight));
    }

    private static List<Dot> corners(double x, double y, double boxWidth, double boxHeight) {
        return List.of(
                new Dot(x, y),
                new Dot(x + boxWidth, y),
                new Dot(x + boxWidth, y + boxHeight),
                new Dot(x, y + boxHeight));
    }

    /** Corners of a regular polygon with a corner at the top; many corners make a circle. */
    static List<Dot> ring(Dot centre, double radius, int corners) {
        List<Dot> ring = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            double turn = 2 * Math.PI * i / corners;
            ring.add(
                    new Dot(
                            centre.x() + radius * Math.sin(turn),
                            centre.y() - radius * Math.cos(turn)));
        }
        return ring;
    }

    /** A filled arrow head at the end of a stroke. */
    void arrowHead(Dot from, Dot tip, double size) throws IOException {
        double turn = Math.atan2(tip.y() - from.y(), tip.x() - from.x());
        fill(
                List.of(
                        tip,
                        new Dot(
                                tip.x() - size * Math.cos(turn - 0.4),
                                tip.y() - size * Math.sin(turn - 0.4)),
                        new Dot(
                                tip.x() - size * Math.cos(turn + 0.4),
                                tip.y() - size * Math.sin(turn + 0.4))));
    }

    /** Line width and dashes, points; no dashes for a solid line. */
    void stroke(double lineWidth, double... dashes) throws IOException {
        ink.setLineWidth((float) lineWidth);
        float[] pattern = new float[dashes.length];
        for (int i = 0; i < dashes.length; i++) {
            pattern[i] = (float) dashes[i];
        }
        ink.setLineDashPattern(pattern, 0);
    }

    void black() throws IOException {
        ink.setNonStrokingColor(0f);
        ink.setStrokingColor(0f);
    }

    void white() throws IOException {
        ink.setNonStrokingColor(1f);
        ink.setStrokingColor(1f);
    }

    /** What follows up to {@link #unclip} shows only inside the ring. */
    void clip(List<Dot> ring) throws IOException {
        ink.saveGraphicsState();
        path(ring);
        ink.closePath();
        ink.clip();
    }

    void unclip() throws IOException {
        ink.restoreGraphicsState();
    }

    void finish() throws IOException {
        ink.close();
    }
}
