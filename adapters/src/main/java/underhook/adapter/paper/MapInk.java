package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.adapter.paper.Labels.Box;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.geo.ContourStep;
import underhook.core.geo.Contours;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.Wire;
import underhook.core.job.Zone;

/** Marks of the map. Words are collected and written last. */
final class MapInk {
    private static final Face NAME = Face.STRONG;
    private static final Face WORD = new Face(false, 9.5);
    private static final double SAMPLE = 4;
    private static final double SMALL = 45;
    private static final double LEG_PART = 4;

    /** More names of features than this would cover the map. */
    private static final int MOST_NAMES = 60;

    /** Of so many features the nearest names are enough; the cards name every crossing. */
    private static final int MOST_NAMES_OF_CROWD = 25;

    private final Sheet sheet;
    private final MapView view;
    private final Labels labels;
    private final List<Labels.Wish> places = new ArrayList<>();
    private final List<Labels.Wish> others = new ArrayList<>();
    private final List<Labels.Wish> features = new ArrayList<>();
    private final List<Labels.Wish> numbers = new ArrayList<>();
    private final List<List<Dot>> legs = new ArrayList<>();

    MapInk(Sheet sheet, MapView view) {
        this.sheet = sheet;
        this.view = view;
        this.labels = new Labels(view.frame());
    }

    void begin() throws IOException {
        Box frame = view.frame();
        sheet.clip(
                List.of(
                        new Dot(frame.x(), frame.y()),
                        new Dot(frame.x() + frame.width(), frame.y()),
                        new Dot(frame.x() + frame.width(), frame.y() + frame.height()),
                        new Dot(frame.x(), frame.y() + frame.height())));
    }

    void end() throws IOException {
        sheet.unclip();
    }

    // --- contours

    private record HeightMark(String text, Dot middle) {}

    private final List<HeightMark> heightMarks = new ArrayList<>();

    /** Draws lines of equal height; returns their step, nothing where no height is known. */
    Optional<ContourStep> contours(HeightField terrain, ContourStep.Unit heights)
            throws IOException {
        Contours.Grid grid = sample(terrain);
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (double height : grid.heightM()) {
            if (!Double.isNaN(height)) {
                lowest = Math.min(lowest, height);
                highest = Math.max(highest, height);
            }
        }
        if (!(highest > lowest)) {
            return Optional.empty();
        }
        ContourStep step = ContourStep.between(lowest, highest, heights);
        for (ContourStep.Level level : step.levels(lowest, highest)) {
            sheet.stroke(level.main() ? 0.7 : 0.25);
            for (List<Contours.Node> line : Contours.trace(grid, level.heightAmslM())) {
                List<Dot> dots = line.stream().map(this::toDot).toList();
                sheet.polyline(dots);
                if (level.main() && dots.size() > 25) {
                    heightMarks.add(
                            new HeightMark(
                                    Integer.toString(level.number()), dots.get(dots.size() / 2)));
                }
            }
        }
        return Optional.of(step);
    }

    private Contours.Grid sample(HeightField terrain) {
        Box frame = view.frame();
        int columns = (int) (frame.width() / SAMPLE) + 2;
        int rows = (int) (frame.height() / SAMPLE) + 2;
        List<Double> heightM = new ArrayList<>(columns * rows);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                PlanePoint point = view.toPlane(toDot(new Contours.Node(column, row)));
                heightM.add(
                        terrain.covers(point.eastM(), point.northM())
                                ? terrain.heightM(point.eastM(), point.northM())
                                : Double.NaN);
            }
        }
        return new Contours.Grid(columns, rows, heightM);
    }

    private Dot toDot(Contours.Node node) {
        return new Dot(
                view.frame().x() + node.columnRatio() * SAMPLE,
                view.frame().y() + node.rowRatio() * SAMPLE);
    }

    // --- areas

    void releaseArea(List<PlanePoint> ring, String name) throws IOException {
        List<Dot> dots = toPage(ring);
        Pattern.RELEASE.fill(sheet, dots);
        sheet.stroke(0.8);
        sheet.outline(dots);
        keepSmallFree(dots);
        wish(others, name, WORD, middle(dots));
    }

    /** A small area would vanish under a word; a big one has room for it. */
    private void keepSmallFree(List<Dot> ring) {
        double left = ring.stream().mapToDouble(Dot::x).min().orElse(0);
        double top = ring.stream().mapToDouble(Dot::y).min().orElse(0);
        double width = ring.stream().mapToDouble(Dot::x).max().orElse(0) - left;
        double height = ring.stream().mapToDouble(Dot::y).max().orElse(0) - top;
        if (width < SMALL && height < SMALL) {
            labels.keepFree(new Box(left, top, width, height));
        }
    }

    void zone(List<PlanePoint> ring, Zone zone, boolean active) throws IOException {
        if (ring.size() < 3) {
            return;
        }
        List<Dot> dots = toPage(ring);
        if (active) {
            Pattern.of(zone.rule()).fill(sheet, dots);
            sheet.stroke(1.3);
        } else {
            sheet.stroke(1, 2, 3);
        }
        sheet.outline(dots);
        keepSmallFree(dots);
        String hours = zone.hours().isAllDay() ? "" : " " + zone.hours().say();
        wish(others, zone.id() + (active ? hours : " not active"), NAME, middle(dots));
    }

    /** A feature, with its name if it is wanted; what lies off the map is passed over. */
    void feature(List<PlanePoint> outline, MapFeature feature, boolean named) throws IOException {
        List<Dot> dots = toPage(outline);
        if (dots.isEmpty()) {
            return;
        }
        if (named) {
            nameOf(feature, dots);
        }
        switch (feature.kind()) {
            case ROAD, RAILWAY -> {
                sheet.stroke(3);
                drawOutline(dots, feature);
                sheet.white();
                sheet.stroke(1.6);
                drawOutline(dots, feature);
                sheet.black();
            }
            case TRAIL, TRACK -> {
                sheet.stroke(1.2, 5, 2.5);
                drawOutline(dots, feature);
            }
            case HOUSE -> {
                if (feature.shape() == MapFeature.Shape.AREA) {
                    sheet.fill(dots);
                }
                // Whatever the scale: a farm of 15 m would be a speck.
                if (feature.shape() != MapFeature.Shape.AREA
                        || isSmaller(dots, 2 * MapMarks.HOUSE)) {
                    MapMarks.house(sheet, middle(dots));
                    keepFree(middle(dots), MapMarks.HOUSE);
                }
            }
            case MAST -> {
                MapMarks.mast(sheet, dots.get(0));
                keepFree(dots.get(0), MapMarks.MAST);
            }
            case WATER, FOREST, PROTECTED -> {
                MapMarks.ground(sheet);
                drawOutline(dots, feature);
            }
            case PEOPLE -> {
                Dot at = middle(dots);
                if (feature.shape() == MapFeature.Shape.AREA) {
                    sheet.stroke(0.8, 1.5, 1.5);
                    sheet.outline(dots);
                }
                sheet.stroke(1.2);
                sheet.line(at.x() - 3, at.y() - 3, at.x() + 3, at.y() + 3);
                sheet.line(at.x() - 3, at.y() + 3, at.x() + 3, at.y() - 3);
            }
        }
    }

    private void nameOf(MapFeature feature, List<Dot> dots) {
        switch (feature.kind()) {
            case HOUSE, WATER, FOREST, PROTECTED -> {}
            case MAST -> wish(features, feature.id(), WORD, dots.get(0));
            case ROAD, RAILWAY, TRAIL, TRACK, PEOPLE ->
                    wish(features, feature.id(), WORD, middle(dots));
        }
    }

    private static boolean isSmaller(List<Dot> ring, double size) {
        Dot first = ring.get(0);
        return ring.stream()
                .allMatch(
                        at ->
                                Math.abs(at.x() - first.x()) < size
                                        && Math.abs(at.y() - first.y()) < size);
    }

    private void keepFree(Dot at, double half) {
        labels.keepFree(new Box(at.x() - half, at.y() - half, 2 * half, 2 * half));
    }

    private void drawOutline(List<Dot> dots, MapFeature feature) throws IOException {
        if (feature.shape() == MapFeature.Shape.AREA) {
            sheet.outline(dots);
        } else if (dots.size() > 1) {
            sheet.polyline(dots);
        }
    }

    void wire(List<PlanePoint> supports, Wire wire) throws IOException {
        List<Dot> dots = toPage(supports);
        if (dots.size() < 2) {
            return;
        }
        MapMarks.wire(sheet, dots);
        String name = wire.id() + (wire.live() ? " LIVE" : "");
        wish(others, name, NAME, middle(dots));
    }

    void leg(List<PlanePoint> path, boolean loaded) throws IOException {
        List<Dot> dots = toPage(path);
        if (dots.size() > 1) {
            MapMarks.leg(sheet, dots, loaded);
            legs.add(dots);
        }
    }

    /** The number under which a list names what is crossed there. */
    void number(Dot at, int number) {
        wish(numbers, Integer.toString(number), WORD, at);
    }

    /** A stretch of a leg over which nothing may be let go. */
    void closed(List<PlanePoint> path) throws IOException {
        List<Dot> dots = toPage(path);
        if (dots.size() > 1) {
            MapMarks.closed(sheet, dots);
            for (Dot dot : dots) {
                labels.keepFree(new Box(dot.x() - 4, dot.y() - 4, 8, 8));
            }
        }
    }

    void place(PlanePoint position, Place place) throws IOException {
        Dot at = view.toPage(position);
        MapMarks.place(sheet, at, place.kind());
        labels.keepFree(new Box(at.x() - 5, at.y() - 5, 10, 10));
        String name =
                place.id().value()
                        + (place.fuel() ? " fuel" : "")
                        + (place.isSite() || place.agreed() ? "" : " not agreed");
        wish(places, name, NAME, at);
    }

    // --- words

    private List<Dot> toPage(List<PlanePoint> points) {
        return points.stream().map(view::toPage).toList();
    }

    /** The middle of what of it is on the map. */
    private Dot middle(List<Dot> dots) {
        List<Dot> seen = new ArrayList<>();
        for (int i = 0; i < dots.size(); i++) {
            Dot a = dots.get(i);
            Dot b = dots.get(Math.min(i + 1, dots.size() - 1));
            for (int part = 0; part < 20; part++) {
                Dot between =
                        new Dot(
                                a.x() + (b.x() - a.x()) * part / 20,
                                a.y() + (b.y() - a.y()) * part / 20);
                if (view.shows(between)) {
                    seen.add(between);
                }
            }
        }
        return seen.isEmpty() ? dots.get(0) : seen.get(seen.size() / 2);
    }

    private void wish(List<Labels.Wish> list, String text, Face face, Dot anchor) {
        if (view.shows(anchor)) {
            Dot size = new Dot(sheet.fonts().width(face, text) + 2, face.size());
            list.add(new Labels.Wish(text, face, anchor, size));
        }
    }

    /**
     * Writes every word that was asked for; heights only where there is room, and of a large map the names
     * of features too, so many that they do not cover it.
     */
    void writeLabels(boolean isLarge) throws IOException {
        List<Labels.Placed> placed = new ArrayList<>();
        places.forEach(wish -> placed.add(labels.place(wish)));
        others.forEach(wish -> placed.add(labels.place(wish)));
        if (!numbers.isEmpty()) {
            keepLegsFree();
        }
        numbers.forEach(wish -> placed.add(labels.place(wish)));
        boolean crowded = isLarge || features.size() > MOST_NAMES;
        int names = 0;
        for (Labels.Wish wish : features) {
            if (!crowded || (names < MOST_NAMES_OF_CROWD && labels.hasRoom(wish))) {
                placed.add(labels.place(wish));
                names++;
            }
        }
        for (HeightMark mark : heightMarks) {
            double width = sheet.fonts().width(Face.SMALL, mark.text()) + 2;
            Box box = new Box(mark.middle().x() - width / 2, mark.middle().y() - 4, width, 8);
            if (labels.isFree(box)) {
                labels.keepFree(box);
                onWhite(box, Face.SMALL, mark.text());
            }
        }
        for (Labels.Placed one : placed) {
            if (one.away()) {
                Dot end = one.box().nearest(one.wish().anchor());
                sheet.stroke(0.7);
                sheet.line(one.wish().anchor().x(), one.wish().anchor().y(), end.x(), end.y());
            }
            onWhite(one.box(), one.wish().face(), one.wish().text());
        }
    }

    private void keepLegsFree() {
        for (List<Dot> leg : legs) {
            for (int i = 1; i < leg.size(); i++) {
                Dot a = leg.get(i - 1);
                Dot b = leg.get(i);
                int parts = 1 + (int) (Math.hypot(b.x() - a.x(), b.y() - a.y()) / LEG_PART);
                for (int part = 0; part <= parts; part++) {
                    double x = a.x() + (b.x() - a.x()) * part / parts;
                    double y = a.y() + (b.y() - a.y()) * part / parts;
                    labels.keepFree(new Box(x - 1, y - 1, 2, 2));
                }
            }
        }
    }

    private void onWhite(Box box, Face face, String text) throws IOException {
        sheet.white();
        sheet.fillBox(box.x(), box.y(), box.width(), box.height());
        sheet.black();
        sheet.text(box.x() + 1, box.y() + face.size() * 0.86, face, text);
    }
}
