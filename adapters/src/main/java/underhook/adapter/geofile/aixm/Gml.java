package underhook.adapter.geofile.aixm;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javax.xml.stream.XMLStreamException;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.core.geo.GeoPoint;
import underhook.core.job.MapFeature.Shape;

/**
 * Reads the geometry of one part. Mutable.
 *
 * <p>Points are gathered in the order of the file, whatever pieces they stand in; each patch is an outline of
 * its own. An arc by its centre is taken as the whole circle. Holes count as filled.
 *
 * @source OGC-07-036 clauses 10 and 11 (pos, posList, curves, surfaces); AIXM-5.1.1 ElevatedPoint,
 *     ElevatedCurve, ElevatedSurface
 */
final class Gml {
    private final XmlCursor cursor;
    private final Shape shape;
    private final List<Outline> outlines = new ArrayList<>();
    private List<GeoPoint> points = new ArrayList<>();
    private OptionalDouble topAmslM = OptionalDouble.empty();
    private OptionalDouble accuracyM = OptionalDouble.empty();

    Gml(XmlCursor cursor, Shape shape) {
        this.cursor = cursor;
        this.shape = shape;
    }

    /** What an outer element says of the positions in it. */
    private record Frame(Axes axes, int dimension) {
        Frame in(XmlCursor cursor) throws Unreadable {
            String stated = cursor.attribute("srsDimension");
            if (!stated.isEmpty() && !stated.equals("2") && !stated.equals("3")) {
                throw Unreadable.field("srsDimension", "is out of any range").found(stated);
            }
            String srsName = cursor.attribute("srsName");
            int own = srsName.isEmpty() ? dimension : Axes.dimensionOf(srsName);
            return new Frame(axes.or(srsName), stated.isEmpty() ? own : stated.charAt(0) - '0');
        }
    }

    List<Outline> outlines() {
        return outlines;
    }

    OptionalDouble topAmslM() {
        return topAmslM;
    }

    OptionalDouble accuracyM() {
        return accuracyM;
    }

    /**
     * Reads what is in the current element.
     *
     * @param axes of the message, where it says so for everything in it
     */
    void read(Axes axes) throws XMLStreamException, Unreadable {
        walk(new Frame(axes, 2).in(cursor));
        flush();
    }

    private void flush() {
        if (!points.isEmpty()) {
            outlines.add(Outline.of(shape, points));
            points = new ArrayList<>();
        }
    }

    private void walk(Frame outer) throws XMLStreamException, Unreadable {
        cursor.eachChild(() -> readElement(outer.in(cursor)));
    }

    private void readElement(Frame frame) throws XMLStreamException, Unreadable {
        switch (cursor.name()) {
            case "pos" -> readPos(cursor.text().split("\\s+", -1), frame);
            case "posList" -> readList(cursor.text().split("\\s+", -1), frame);
            case "elevation" -> topAmslM = elevation();
            case "horizontalAccuracy" -> accuracyM = Lengths.read(cursor);
            case "interior", "annotation", "extension", "metaDataProperty" -> {
                // Nothing of the outer outline is in these.
            }
            case "PolygonPatch", "Polygon", "Rectangle", "Triangle" -> {
                flush();
                walk(frame);
                flush();
            }
            case "ArcByCenterPoint", "CircleByCenterPoint" -> readCircle(frame);
            case "Arc",
                    "ArcString",
                    "Circle",
                    "ArcByBulge",
                    "ArcStringByBulge",
                    "BSpline",
                    "Bezier",
                    "CubicSpline",
                    "Clothoid",
                    "OffsetCurve" ->
                    throw Unreadable.field(cursor.name(), "is a curve that is not read")
                            .allowing("GeodesicString, LineStringSegment or ArcByCenterPoint");
            default -> walk(frame);
        }
    }

    private OptionalDouble elevation() throws XMLStreamException, Unreadable {
        OptionalDouble topM = Lengths.read(cursor);
        double valueM = topM.orElse(0);
        if (!(valueM >= -500 && valueM <= 11_000)) {
            throw Unreadable.range("elevation", "is nowhere on Earth").found(valueM + " m");
        }
        return topM;
    }

    private void readPos(String[] numbers, Frame frame) throws Unreadable {
        if (numbers.length != 2 && numbers.length != 3) {
            throw Unreadable.field("pos", "is no position").found(String.join(" ", numbers));
        }
        add(frame.axes.point(numbers[0], numbers[1]));
    }

    private void readList(String[] numbers, Frame frame) throws Unreadable {
        if (numbers.length % frame.dimension != 0) {
            throw Unreadable.field("posList", "has a number too many or too few");
        }
        for (int i = 0; i < numbers.length; i += frame.dimension) {
            add(frame.axes.point(numbers[i], numbers[i + 1]));
        }
    }

    private void add(GeoPoint point) {
        if (points.isEmpty() || !points.get(points.size() - 1).equals(point)) {
            points.add(point);
        }
    }

    private void readCircle(Frame frame) throws XMLStreamException, Unreadable {
        List<GeoPoint> before = points;
        points = new ArrayList<>();
        List<Double> radiiM = new ArrayList<>();
        cursor.eachChild(
                () -> {
                    if (cursor.name().equals("radius")) {
                        Lengths.read(cursor).ifPresent(radiiM::add);
                    } else {
                        readElement(frame.in(cursor));
                    }
                });
        List<GeoPoint> centre = points;
        points = before;
        boolean isCircle = centre.size() == 1 && radiiM.size() == 1;
        if (!isCircle || !(radiiM.get(0) > 0 && radiiM.get(0) < 100_000)) {
            throw Unreadable.field("radius", "is no circle")
                    .allowing("one centre and a radius above 0 and below 100 km");
        }
        outlines.add(Outline.around(centre.get(0), radiiM.get(0)));
    }
}
