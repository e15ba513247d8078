package underhook.adapter.paper;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.job.Place;
import underhook.core.plan.Drop;
import underhook.core.unit.Units;

/** A pole from above with its guys. */
final class GuySketch {
    /** From this gap on the guys cannot hold the pole. @source DERIVED each guy only pulls */
    private static final double OPEN_RAD = Math.PI;

    private static final double RADIUS = 22;

    /** The pole as it comes, and whether its largest gap was found to be near the limit. */
    record Pole(Drop drop, boolean gapIsWide) {}

    private GuySketch() {}

    /** Largest angle between neighbours, rad; a whole turn for a single guy. */
    static double largestGapRad(List<Double> azimuthsRad) {
        List<Double> sorted = azimuthsRad.stream().map(Units::wrapTwoPiRad).sorted().toList();
        double largest = 0;
        for (int i = 0; i < sorted.size(); i++) {
            double next = i + 1 < sorted.size() ? sorted.get(i + 1) : sorted.get(0) + 2 * Math.PI;
            largest = Math.max(largest, next - sorted.get(i));
        }
        return largest;
    }

    static void draw(Sheet sheet, Dot corner, Place place, Pole pole) throws IOException {
        Dot centre = new Dot(corner.x() + 36, corner.y() + 42);
        sheet.stroke(0.5);
        sheet.outline(Sheet.ring(centre, RADIUS, 60));
        Dot comesFrom = at(centre, pole.drop().approachFromTrueRad(), RADIUS);
        Dot towards = at(centre, pole.drop().approachFromTrueRad(), RADIUS - 14);
        sheet.stroke(1, 3, 2);
        sheet.line(comesFrom.x(), comesFrom.y(), towards.x(), towards.y());
        sheet.stroke(1);
        sheet.arrowHead(comesFrom, towards, 7);
        double y = corner.y() + 12;
        double listX = corner.x() + 69;
        sheet.text(listX, y, new Face(true, 13), place.id().value());
        sheet.text(listX, y + 12, Face.STRONG, pole.drop().load().value());
        y += 27;
        int number = 1;
        for (double azimuthRad : place.guyAzimuthsTrueRad()) {
            Dot end = at(centre, azimuthRad, RADIUS - 2);
            sheet.stroke(2.2);
            sheet.line(centre.x(), centre.y(), end.x(), end.y());
            sheet.fill(Sheet.ring(end, 2.6, 4));
            Dot label = at(centre, azimuthRad, RADIUS + 7);
            sheet.textCentred(label.x(), label.y() + 4, Face.STRONG, Integer.toString(number));
            sheet.text(listX, y, Face.TEXT, number + ":");
            sheet.text(listX + 11, y, Face.STRONG, Words.bearing(azimuthRad));
            y += 13;
            number++;
        }
        sheet.fill(Sheet.ring(centre, 4.5, 24));
        double gapRad = largestGapRad(place.guyAzimuthsTrueRad());
        String gap =
                String.format(
                        Locale.ROOT,
                        "gap %d°, %s",
                        Words.up(Units.radToDeg(gapRad)),
                        state(gapRad, pole));
        sheet.text(corner.x() + 2, corner.y() + 87, Face.STRONG, sheet.say(gap));
    }

    private static String state(double gapRad, Pole pole) {
        return gapRad >= OPEN_RAD ? "outside" : pole.gapIsWide() ? "near" : "inside";
    }

    private static Dot at(Dot centre, double azimuthRad, double distance) {
        return new Dot(
                centre.x() + distance * Math.sin(azimuthRad),
                centre.y() - distance * Math.cos(azimuthRad));
    }
}
