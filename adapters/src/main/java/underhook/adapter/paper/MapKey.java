package underhook.adapter.paper;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.geo.ContourStep;
import underhook.core.job.PlaceKind;

/** What the marks of the map mean, with north arrow and scale bar. */
final class MapKey {
    private static final double ROW = 17.5;

    private final Sheet sheet;
    private final double left;
    private double y;

    private MapKey(Sheet sheet, double left, double top) {
        this.sheet = sheet;
        this.left = left;
        this.y = top;
    }

    static void draw(Sheet sheet, MapView view, Optional<ContourStep> contours) throws IOException {
        double left = view.frame().x() + view.frame().width() + 12;
        MapKey key = new MapKey(sheet, left, sheet.top() + 6);
        key.northAndScale(view);
        key.marks(contours);
    }

    private void northAndScale(MapView view) throws IOException {
        sheet.stroke(1.4);
        sheet.line(left + 10, y + 40, left + 10, y + 6);
        sheet.arrowHead(new Dot(left + 10, y + 40), new Dot(left + 10, y), 13);
        sheet.text(left + 18, y + 14, Face.STRONG, "TRUE north");
        sheet.text(left + 18, y + 30, Face.TEXT, "1:" + view.scaleNumber());
        sheet.text(left + 18, y + 40, Face.SMALL, "printed at full size");
        y += 58;
        double lengthM = 100_000;
        for (double candidate = 100; candidate <= 50_000; candidate *= 10) {
            for (double times : new double[] {5, 2, 1}) {
                boolean fits = candidate * times / view.metresPerPoint() <= 130;
                if (fits && (lengthM > 50_000 || candidate * times > lengthM)) {
                    lengthM = candidate * times;
                }
            }
        }
        double length = lengthM / view.metresPerPoint();
        sheet.stroke(0.9);
        sheet.box(left, y, length, 5);
        sheet.fillBox(left, y, length / 2, 5);
        sheet.text(left, y + 16, Face.TEXT, "0");
        String end =
                lengthM >= 1000
                        ? String.format(Locale.ROOT, "%.0f km", lengthM / 1000)
                        : String.format(Locale.ROOT, "%.0f m", lengthM);
        sheet.textRight(left + Math.max(length, 40), y + 16, Face.TEXT, end);
        y += 32;
    }

    private void marks(Optional<ContourStep> contours) throws IOException {
        for (PlaceKind kind : PlaceKind.values()) {
            MapMarks.place(sheet, new Dot(left + 16, y), kind);
            word(kind.name().toLowerCase(Locale.ROOT));
        }
        MapMarks.leg(sheet, sample(), true);
        word("leg with load");
        MapMarks.leg(sheet, sample(), true);
        MapMarks.closed(sheet, sample());
        word("no letting go");
        MapMarks.leg(sheet, sample(), false);
        word("leg without load");
        MapMarks.wire(sheet, sample());
        word("wire, support");
        sheet.stroke(3);
        sheet.polyline(sample());
        sheet.white();
        sheet.stroke(1.6);
        sheet.polyline(sample());
        sheet.black();
        word("road, railway");
        sheet.stroke(1.2, 5, 2.5);
        sheet.polyline(sample());
        word("trail, track");
        MapMarks.house(sheet, new Dot(left + 16, y));
        word("house");
        MapMarks.mast(sheet, new Dot(left + 16, y));
        word("mast");
        sheet.stroke(1.2);
        sheet.line(left + 13, y - 3, left + 19, y + 3);
        sheet.line(left + 13, y + 3, left + 19, y - 3);
        word("people");
        MapMarks.ground(sheet);
        sheet.polyline(sample());
        word("water, forest, other");
        area(Pattern.NO_OVERFLIGHT, "no overflight");
        area(Pattern.MIN_HEIGHT, "least height");
        area(Pattern.NO_HOVER_BELOW, "no low hover");
        area(Pattern.NO_FUEL, "no fuel");
        area(Pattern.RELEASE, "release area");
        if (contours.isPresent()) {
            // End to end: two lines side by side are a road.
            sheet.stroke(0.25);
            sheet.line(left, y, left + 16, y);
            sheet.stroke(0.7);
            sheet.line(left + 16, y, left + 32, y);
            word(
                    "contours "
                            + contours.get().number()
                            + ", "
                            + contours.get().main()
                            + (contours.get().unit() == ContourStep.Unit.FT ? " ft" : " m"));
        }
    }

    private List<Dot> sample() {
        return List.of(new Dot(left, y), new Dot(left + 32, y));
    }

    private void area(Pattern pattern, String name) throws IOException {
        List<Dot> box =
                List.of(
                        new Dot(left + 2, y - 6),
                        new Dot(left + 30, y - 6),
                        new Dot(left + 30, y + 6),
                        new Dot(left + 2, y + 6));
        pattern.fill(sheet, box);
        sheet.stroke(pattern == Pattern.RELEASE ? 0.8 : 1.3);
        sheet.outline(box);
        word(name);
    }

    private void word(String text) throws IOException {
        sheet.text(left + 40, y + 4, Face.TEXT, text);
        y += ROW;
    }
}
