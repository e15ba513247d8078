package underhook.adapter.paper;

import java.io.IOException;
import java.util.List;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.job.PlaceKind;

/** Single marks, the same on the map and in its key. */
final class MapMarks {
    /** Distance between ticks. */
    private static final double TICK = 5;

    /** Half the size of a mark. */
    static final double HOUSE = 2.2;

    static final double MAST = 4.2;

    private MapMarks() {}

    static void house(Sheet sheet, Dot at) throws IOException {
        sheet.fillBox(at.x() - HOUSE, at.y() - HOUSE, 2 * HOUSE, 2 * HOUSE);
    }

    /** A ring with a mast in it, for nobody may take it for a house. */
    static void mast(Sheet sheet, Dot at) throws IOException {
        ringed(sheet, Sheet.ring(at, MAST, 5), 1.2);
        sheet.fill(Sheet.ring(at, 1.1, 12));
    }

    /** The pen for water, forest and what is protected. */
    static void ground(Sheet sheet) throws IOException {
        sheet.stroke(0.5, 7, 2);
    }

    static void place(Sheet sheet, Dot at, PlaceKind kind) throws IOException {
        switch (kind) {
            case LAYDOWN -> {
                sheet.black();
                sheet.fillBox(at.x() - 5, at.y() - 5, 10, 10);
            }
            case SITE -> ringed(sheet, Sheet.ring(at, 4.6, 24), 1.8);
            case LANDING -> ringed(sheet, Sheet.ring(at, 6, 4), 1.8);
        }
    }

    private static void ringed(Sheet sheet, List<Dot> ring, double width) throws IOException {
        sheet.white();
        sheet.fill(ring);
        sheet.black();
        sheet.stroke(width);
        sheet.outline(ring);
    }

    /** A line with cross strokes, and a dot at each support. */
    static void wire(Sheet sheet, List<Dot> supports) throws IOException {
        sheet.stroke(1.1);
        sheet.polyline(supports);
        double sinceStroke = 0;
        for (int i = 1; i < supports.size(); i++) {
            Dot a = supports.get(i - 1);
            Dot b = supports.get(i);
            double length = Math.hypot(b.x() - a.x(), b.y() - a.y());
            double alongX = length > 0 ? (b.x() - a.x()) / length : 0;
            double alongY = length > 0 ? (b.y() - a.y()) / length : 0;
            for (double d = 10 - sinceStroke; d < length; d += 10) {
                double x = a.x() + alongX * d;
                double y = a.y() + alongY * d;
                sheet.line(
                        x - 2.6 * (alongX + alongY),
                        y - 2.6 * (alongY - alongX),
                        x + 2.6 * (alongX + alongY),
                        y + 2.6 * (alongY - alongX));
            }
            sinceStroke = (sinceStroke + length) % 10;
        }
        for (Dot support : supports) {
            sheet.fill(Sheet.ring(support, 1.8, 12));
        }
    }

    static void leg(Sheet sheet, List<Dot> path, boolean loaded) throws IOException {
        if (loaded) {
            sheet.stroke(1.7);
        } else {
            sheet.stroke(0.9, 1, 2.5);
        }
        sheet.polyline(path);
        sheet.stroke(1);
        if (loaded) {
            Dot from = path.get(path.size() - 2);
            Dot to = path.get(path.size() - 1);
            Dot middle = new Dot((from.x() + to.x()) / 2, (from.y() + to.y()) / 2);
            sheet.arrowHead(from, middle, 9);
        }
    }

    /** Short ticks across a path. */
    static void closed(Sheet sheet, List<Dot> path) throws IOException {
        sheet.stroke(0.9);
        double sinceTick = TICK / 2;
        for (int i = 1; i < path.size(); i++) {
            Dot a = path.get(i - 1);
            Dot b = path.get(i);
            double length = Math.hypot(b.x() - a.x(), b.y() - a.y());
            double alongX = length > 0 ? (b.x() - a.x()) / length : 0;
            double alongY = length > 0 ? (b.y() - a.y()) / length : 0;
            for (double d = TICK - sinceTick; d < length; d += TICK) {
                double x = a.x() + alongX * d;
                double y = a.y() + alongY * d;
                sheet.line(x - 3.2 * alongY, y + 3.2 * alongX, x + 3.2 * alongY, y - 3.2 * alongX);
            }
            sinceTick = (sinceTick + length) % TICK;
        }
    }
}
