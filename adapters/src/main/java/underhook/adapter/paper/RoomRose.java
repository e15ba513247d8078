package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.plan.Drop;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.PlaceRoom.Fit;
import underhook.core.plan.PlaceRoom.LineRoom;
import underhook.core.plan.PlaceRoom.Sector;

/** Room by heading at a place with the line that is fitted: open is free, striped near, black refused. */
final class RoomRose {
    private static final double RADIUS = 22;
    private static final double INNER = 13;
    private static final double STRIPE_RAD = Math.toRadians(10);

    /** What is drawn: the hover as flown, the room there and what the line is called. */
    record Shown(Drop drop, LineRoom room, String line) {}

    private RoomRose() {}

    static void draw(Sheet sheet, Dot corner, Shown shown) throws IOException {
        Dot centre = new Dot(corner.x() + 36, corner.y() + 42);
        for (Sector sector : shown.room().sectors()) {
            draw(sheet, centre, sector);
        }
        sheet.stroke(0.5);
        sheet.outline(Sheet.ring(centre, RADIUS, 60));
        sheet.outline(Sheet.ring(centre, INNER, 60));
        // The nose, as the machine hovers.
        Dot tail = at(centre, shown.drop().approachFromTrueRad(), INNER - 1);
        Dot nose = at(centre, shown.drop().approachFromTrueRad() + Math.PI, INNER - 1);
        sheet.stroke(1);
        sheet.line(tail.x(), tail.y(), nose.x(), nose.y());
        sheet.arrowHead(tail, nose, 7);
        sheet.textCentred(centre.x(), centre.y() - RADIUS - 3, Face.STRONG, "N");
        label(sheet, new Dot(corner.x() + 63, corner.y() + 12), shown);
    }

    private static void label(Sheet sheet, Dot start, Shown shown) throws IOException {
        LineRoom room = shown.room();
        PlaceRoom.Tightest worst = room.tightest();
        double headingRad = shown.drop().approachFromTrueRad() + Math.PI;
        List<String> lines = new ArrayList<>();
        lines.add(shown.drop().load().value());
        lines.add("line " + shown.line());
        lines.add("nose " + Words.bearing(headingRad));
        lines.add(word(room.fitAt(headingRad % (2 * Math.PI))));
        // The words over the cut begin at this height.
        sheet.textWithin(start, 42, new Face(true, 13), shown.drop().place().value());
        double y = start.y() + 12;
        for (String line : lines) {
            sheet.textWithin(new Dot(start.x(), y), 53, Face.STRONG, sheet.say(line));
            y += 12;
        }
        String decides =
                Double.isFinite(worst.marginM())
                        ? String.format(
                                Locale.ROOT,
                                "%s %.1f m of %.0f",
                                worst.part(),
                                Math.floor(worst.marginM() * 10) / 10,
                                Math.ceil(worst.neededM()))
                        : worst.part() + " not known";
        sheet.textWithin(
                new Dot(start.x() - 61, start.y() + 66), 103, Face.TEXT, sheet.say(decides));
        sheet.textWithin(
                new Dot(start.x() - 61, start.y() + 76),
                103,
                Face.TEXT,
                sheet.say("to " + worst.cause() + " on " + Words.bearing(worst.headingTrueRad())));
    }

    private static String word(Fit fit) {
        return switch (fit) {
            case FREE -> "free";
            case NEAR -> "NEAR";
            case REFUSED -> "edge";
        };
    }

    private static void draw(Sheet sheet, Dot centre, Sector sector) throws IOException {
        double widthRad = sector.toTrueRad() - sector.fromTrueRad();
        double turnRad = widthRad < 0 ? widthRad + 2 * Math.PI : widthRad;
        switch (sector.fit()) {
            case FREE -> {}
            case NEAR -> {
                sheet.stroke(0.8);
                int stripes = Math.max(1, (int) Math.round(turnRad / STRIPE_RAD));
                for (int i = 0; i <= stripes; i++) {
                    double bearingRad = sector.fromTrueRad() + turnRad * i / stripes;
                    Dot inner = at(centre, bearingRad, INNER);
                    Dot outer = at(centre, bearingRad, RADIUS);
                    sheet.line(inner.x(), inner.y(), outer.x(), outer.y());
                }
            }
            case REFUSED -> sheet.fill(wedge(centre, sector.fromTrueRad(), turnRad));
        }
    }

    private static List<Dot> wedge(Dot centre, double fromRad, double turnRad) {
        int pieces = Math.max(2, (int) Math.ceil(turnRad / Math.toRadians(5)));
        List<Dot> ring = new ArrayList<>();
        for (int i = 0; i <= pieces; i++) {
            ring.add(at(centre, fromRad + turnRad * i / pieces, RADIUS));
        }
        for (int i = pieces; i >= 0; i--) {
            ring.add(at(centre, fromRad + turnRad * i / pieces, INNER));
        }
        return ring;
    }

    private static Dot at(Dot centre, double bearingRad, double distance) {
        return new Dot(
                centre.x() + distance * Math.sin(bearingRad),
                centre.y() - distance * Math.cos(bearingRad));
    }
}
