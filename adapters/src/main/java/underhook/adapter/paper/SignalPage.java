package underhook.adapter.paper;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import underhook.adapter.paper.Sheet.Dot;

/**
 * Hand signals as line drawings, seen as the pilot sees them.
 *
 * @source OSHA-1926.551 figure N-1; positions as in WAC-296-829, drawings our own
 */
final class SignalPage {
    /**
     * One signal. Arms run from the shoulder over the elbow to the hand, in units of a tenth of the
     * figure's height, x to the right, y up, from the middle between the shoulders.
     *
     * @param motions strokes that end in an arrow head
     */
    private record Signal(
            String name,
            String how,
            List<Dot> leftArm,
            List<Dot> rightArm,
            List<List<Dot>> motions) {}

    private static final Dot LEFT = new Dot(-0.9, 0);
    private static final Dot RIGHT = new Dot(0.9, 0);

    private static final List<Signal> SIGNALS =
            List.of(
                    new Signal(
                            "HOLD THE HOVER",
                            "Both arms overhead, fists clenched.",
                            List.of(LEFT, new Dot(-1.5, 1.5), new Dot(-1.1, 3.1)),
                            List.of(RIGHT, new Dot(1.5, 1.5), new Dot(1.1, 3.1)),
                            List.of()),
                    new Signal(
                            "RELEASE THE LOAD",
                            "One arm low and away, the other slashes across it from above.",
                            List.of(LEFT, new Dot(-0.1, -0.5), new Dot(1.5, -1.3)),
                            List.of(RIGHT, new Dot(1.9, -0.9), new Dot(2.8, -2.0)),
                            List.of(
                                    List.of(
                                            new Dot(1.3, 0.6),
                                            new Dot(2.6, -0.3),
                                            new Dot(3.2, -1.2)))),
                    new Signal(
                            "MOVE UP",
                            "Arms level, palms up, sweeping up.",
                            List.of(LEFT, new Dot(-2, 0), new Dot(-3.1, 0)),
                            List.of(RIGHT, new Dot(2, 0), new Dot(3.1, 0)),
                            List.of(
                                    List.of(
                                            new Dot(-2.9, 0.5),
                                            new Dot(-2.8, 1.5),
                                            new Dot(-2.3, 2.4)),
                                    List.of(
                                            new Dot(2.9, 0.5),
                                            new Dot(2.8, 1.5),
                                            new Dot(2.3, 2.4)))),
                    new Signal(
                            "MOVE DOWN",
                            "Arms level, palms down, sweeping down.",
                            List.of(LEFT, new Dot(-2, 0), new Dot(-3.1, 0)),
                            List.of(RIGHT, new Dot(2, 0), new Dot(3.1, 0)),
                            List.of(
                                    List.of(
                                            new Dot(-2.9, -0.5),
                                            new Dot(-2.8, -1.5),
                                            new Dot(-2.3, -2.4)),
                                    List.of(
                                            new Dot(2.9, -0.5),
                                            new Dot(2.8, -1.5),
                                            new Dot(2.3, -2.4)))),
                    new Signal(
                            "MOVE THIS WAY",
                            "One arm level points the way, the other sweeps up over the head.",
                            List.of(LEFT, new Dot(-1.7, 1.2), new Dot(-0.9, 2.6)),
                            List.of(RIGHT, new Dot(2, 0), new Dot(3.1, 0)),
                            List.of(
                                    List.of(
                                            new Dot(-2.7, 0.4),
                                            new Dot(-2.2, 2.3),
                                            new Dot(-0.6, 3.3),
                                            new Dot(0.6, 3.2)))),
                    new Signal(
                            "MOVE THE OTHER WAY",
                            "The same with the arms changed.",
                            List.of(LEFT, new Dot(-2, 0), new Dot(-3.1, 0)),
                            List.of(RIGHT, new Dot(1.7, 1.2), new Dot(0.9, 2.6)),
                            List.of(
                                    List.of(
                                            new Dot(2.7, 0.4),
                                            new Dot(2.2, 2.3),
                                            new Dot(0.6, 3.3),
                                            new Dot(-0.6, 3.2)))),
                    new Signal(
                            "MOVE FORWARD",
                            "Both hands collect towards the body.",
                            List.of(LEFT, new Dot(-2, 0.1), new Dot(-1.8, 1.5)),
                            List.of(RIGHT, new Dot(2, 0.1), new Dot(1.8, 1.5)),
                            List.of(
                                    List.of(new Dot(-3.2, 1.9), new Dot(-2.2, 1.7)),
                                    List.of(new Dot(3.2, 1.9), new Dot(2.2, 1.7)))),
                    new Signal(
                            "MOVE BACK",
                            "Hands up, palms out, pushing away.",
                            List.of(LEFT, new Dot(-1.9, -0.2), new Dot(-1.7, 1.4)),
                            List.of(RIGHT, new Dot(1.9, -0.2), new Dot(1.7, 1.4)),
                            List.of(
                                    List.of(new Dot(-2.0, 1.6), new Dot(-3.1, 2.0)),
                                    List.of(new Dot(2.0, 1.6), new Dot(3.1, 2.0)))),
                    new Signal(
                            "TAKE-OFF",
                            "One hand behind the back, the other points up.",
                            List.of(LEFT, new Dot(-1.7, -1.1), new Dot(-0.5, -1.8)),
                            List.of(RIGHT, new Dot(1.4, 1.5), new Dot(1.3, 3.0)),
                            List.of(List.of(new Dot(2.0, 1.8), new Dot(2.0, 3.3)))),
                    new Signal(
                            "LAND",
                            "Arms crossed low in front of the body, pointing down.",
                            List.of(LEFT, new Dot(-0.7, -1.2), new Dot(0.8, -2.5)),
                            List.of(RIGHT, new Dot(0.7, -1.2), new Dot(-0.8, -2.5)),
                            List.of()));

    private static final double UNIT = 10.5;
    private static final int COLUMNS = 3;

    private SignalPage() {}

    static void draw(Book book, Tongue tongue) throws IOException {
        Sheet sheet = book.newPage(PDRectangle.A4, "Hand signals", tongue);
        double y = sheet.top() + 8;
        double width = sheet.right() - sheet.left();
        for (String line :
                sheet.fonts()
                        .wrap(
                                Face.STRONG,
                                sheet.say(
                                        "Agree ONE signal set on site before the first lift: sets differ, and"
                                                + " in some of them holding the hover is arms straight out"
                                                + " level. One signaller for each place, seen apart from all"
                                                + " others. No signal seen: no movement."),
                                width)) {
            y += 13.5;
            sheet.text(sheet.left(), y - 8, Face.STRONG, line);
        }
        y += 2;
        double cellWidth = width / COLUMNS;
        double cellHeight = 156;
        for (int i = 0; i < SIGNALS.size(); i++) {
            double x = sheet.left() + i % COLUMNS * cellWidth;
            drawSignal(
                    sheet,
                    SIGNALS.get(i),
                    new Dot(x, y + Math.floorDiv(i, COLUMNS) * cellHeight),
                    cellWidth);
        }
        // The last row has room for what must be agreed.
        double x = sheet.left() + cellWidth + 14;
        double rowTop = y + Math.floorDiv(SIGNALS.size() - 1, COLUMNS) * cellHeight + 20;
        for (String agreed :
                List.of("Signal set", "Signaller at each place", "Radio channel", "Word to stop")) {
            sheet.text(x, rowTop, Face.STRONG, sheet.say(agreed));
            sheet.stroke(0.8);
            sheet.line(x + 140, rowTop + 2, sheet.right(), rowTop + 2);
            rowTop += 26;
        }
        sheet.text(
                sheet.left(),
                sheet.bottom() - 6,
                Face.SMALL,
                sheet.say(
                        "Positions after 29 CFR 1926.551 figure N-1 and WAC 296-829. Drawn as the pilot sees the"
                                + " signaller."));
    }

    private static void drawSignal(Sheet sheet, Signal signal, Dot corner, double width)
            throws IOException {
        sheet.stroke(0.6);
        sheet.box(corner.x() + 3, corner.y() + 3, width - 6, 150);
        Dot shoulders = new Dot(corner.x() + width / 2, corner.y() + 47);
        sheet.stroke(3.2);
        sheet.fill(Sheet.ring(at(shoulders, new Dot(0, 1.15)), 0.75 * UNIT, 32));
        sheet.line(
                shoulders.x(),
                shoulders.y() - 0.4 * UNIT,
                shoulders.x(),
                shoulders.y() + 2.4 * UNIT);
        limb(sheet, shoulders, List.of(LEFT, RIGHT));
        limb(sheet, shoulders, List.of(new Dot(-0.9, -4.4), new Dot(0, -2.3), new Dot(0.9, -4.4)));
        limb(sheet, shoulders, signal.leftArm());
        limb(sheet, shoulders, signal.rightArm());
        for (List<Dot> arm : List.of(signal.leftArm(), signal.rightArm())) {
            sheet.fill(Sheet.ring(at(shoulders, arm.get(arm.size() - 1)), 3.2, 16));
        }
        for (List<Dot> motion : signal.motions()) {
            sheet.stroke(1.2, 3, 2);
            limb(sheet, shoulders, motion);
            sheet.stroke(1.2);
            sheet.arrowHead(
                    at(shoulders, motion.get(motion.size() - 2)),
                    at(shoulders, motion.get(motion.size() - 1)),
                    8);
        }
        double y = corner.y() + 108;
        sheet.textCentred(shoulders.x(), y, Face.STRONG, sheet.say(signal.name()));
        for (String line : sheet.fonts().wrap(Face.TEXT, sheet.say(signal.how()), width - 14)) {
            y += 12.5;
            sheet.textCentred(shoulders.x(), y, Face.TEXT, line);
        }
    }

    private static void limb(Sheet sheet, Dot shoulders, List<Dot> joints) throws IOException {
        sheet.polyline(joints.stream().map(joint -> at(shoulders, joint)).toList());
    }

    private static Dot at(Dot shoulders, Dot joint) {
        return new Dot(shoulders.x() + joint.x() * UNIT, shoulders.y() - joint.y() * UNIT);
    }
}
