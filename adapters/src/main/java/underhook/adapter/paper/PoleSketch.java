package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.job.Load;
import underhook.core.plan.Drop;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.PoleSetting.GuyPull;
import underhook.core.unit.Units;

/** A pole for the people who set it: its guys from above and from the side, and what each must hold. */
final class PoleSketch {
    /** Height on the page of one pole, points. */
    static final double HEIGHT = 160;

    private static final Face SAID = new Face(false, 9);
    private static final double PLAN_RADIUS = 34;
    private static final double SIDE_WIDTH = 132;

    /** Within this of square to the lean a guy only holds. @source PRACTICE as the calculation has it */
    private static final double SQUARE_RAD = Math.toRadians(15);

    private final Sheet sheet;
    private final Dot corner;
    private final PoleSetting pole;
    private final Load load;
    private final Drop drop;
    private final boolean isPounds;

    private PoleSketch(Sheet sheet, Dot corner, Shown shown) {
        this.sheet = sheet;
        this.corner = corner;
        this.pole = shown.pole();
        this.load = shown.load();
        this.drop = shown.drop();
        this.isPounds = shown.isPounds();
    }

    /** What is drawn, its mass in pounds too for those who list them. */
    record Shown(PoleSetting pole, Load load, Drop drop, boolean isPounds) {}

    static void draw(Sheet sheet, Dot corner, Shown shown) throws IOException {
        PoleSketch sketch = new PoleSketch(sheet, corner, shown);
        sketch.title();
        sketch.fromAbove();
        sketch.fromTheSide();
        sketch.numbers();
    }

    private void title() throws IOException {
        sheet.textWithin(
                new Dot(corner.x(), corner.y() + 12),
                sheet.right() - corner.x(),
                new Face(true, 13),
                sheet.say(
                        String.format(
                                Locale.ROOT,
                                "%s %s: %d kg%s, %.1f m, balance %.1f m from the butt",
                                pole.place(),
                                load.id(),
                                Words.up(pole.massKg()),
                                isPounds ? ", " + Words.upLb(pole.massKg()) + " lb" : "",
                                load.lengthM(),
                                pole.centreM())));
    }

    private void fromAbove() throws IOException {
        Dot centre = new Dot(corner.x() + 74, corner.y() + 92);
        double farthestM =
                pole.guys().stream().mapToDouble(GuyPull::anchorDistanceM).max().orElseThrow();
        Dot comes = at(centre, drop.approachFromTrueRad(), PLAN_RADIUS + 8);
        Dot towards = at(centre, drop.approachFromTrueRad(), 14);
        sheet.stroke(1, 3, 2);
        sheet.line(comes.x(), comes.y(), towards.x(), towards.y());
        sheet.stroke(1);
        sheet.arrowHead(comes, towards, 7);
        for (int i = 0; i < pole.guys().size(); i++) {
            GuyPull guy = pole.guys().get(i);
            double length = PLAN_RADIUS * guy.anchorDistanceM() / farthestM;
            Dot end = at(centre, guy.azimuthTrueRad(), length);
            sheet.stroke(2);
            sheet.line(centre.x(), centre.y(), end.x(), end.y());
            sheet.fill(Sheet.ring(end, 3, 4));
            // Two lines of words, wider than high, that the anchor is not to touch.
            double aside = 15 * Math.sin(guy.azimuthTrueRad());
            double above = 6 * Math.max(0, Math.cos(guy.azimuthTrueRad()));
            Dot out = at(centre, guy.azimuthTrueRad(), length + 13);
            Dot label = new Dot(out.x() + aside, out.y() - above);
            sheet.textCentred(
                    label.x(),
                    label.y() + 1,
                    Face.STRONG,
                    (i + 1) + ": " + Words.bearing(guy.azimuthTrueRad()));
            sheet.textCentred(
                    label.x(),
                    label.y() + 11,
                    Face.SMALL,
                    String.format(Locale.ROOT, "%.1f m", guy.anchorDistanceM()));
        }
        sheet.fill(Sheet.ring(centre, 4.5, 24));
        sheet.text(corner.x(), corner.y() + 28, Face.SMALL, sheet.say("from above, TRUE, N up"));
    }

    /** Seen square to guy 1, which goes to the right; the others as far as they lie in that plane. */
    private void fromTheSide() throws IOException {
        double left = corner.x() + 152;
        double widestM =
                pole.guys().stream().mapToDouble(GuyPull::anchorDistanceM).max().orElseThrow();
        double deepestM =
                pole.guys().stream()
                        .mapToDouble(guy -> Math.max(0, -guy.anchorAboveButtM()))
                        .max()
                        .orElseThrow();
        double scale = Math.min((SIDE_WIDTH - 20) / 2 / widestM, 88 / (load.lengthM() + deepestM));
        double lowest = corner.y() + 126;
        Dot butt = new Dot(left + SIDE_WIDTH / 2, lowest - deepestM * scale);
        Dot top = new Dot(butt.x(), butt.y() - scale * load.lengthM());
        Dot attach = new Dot(butt.x(), butt.y() - scale * pole.attachM());
        double firstRad = pole.guys().get(0).azimuthTrueRad();
        List<Dot> ground = new ArrayList<>(List.of(butt));
        double belowRight = 0;
        double belowLeft = 0;
        sheet.stroke(1.2);
        for (int i = 0; i < pole.guys().size(); i++) {
            GuyPull guy = pole.guys().get(i);
            double along =
                    guy.anchorDistanceM() * Math.cos(guy.azimuthTrueRad() - firstRad) * scale;
            Dot anchor = new Dot(butt.x() + along, butt.y() - guy.anchorAboveButtM() * scale);
            ground.add(anchor);
            sheet.line(attach.x(), attach.y(), anchor.x(), anchor.y());
            sheet.fill(Sheet.ring(anchor, 2.6, 4));
            boolean right = along > 0;
            double below = right ? belowRight : belowLeft;
            sheet.textCentred(
                    right ? left + SIDE_WIDTH - 18 : left + 18,
                    lowest + 10 + below,
                    Face.SMALL,
                    String.format(
                            Locale.ROOT, "%d: %+.1f m", i + 1, tenths(guy.anchorAboveButtM())));
            belowRight += right ? 9 : 0;
            belowLeft += right ? 0 : 9;
        }
        ground.sort(java.util.Comparator.comparingDouble(Dot::x));
        sheet.stroke(0.6, 1.5, 1.5);
        sheet.polyline(ground);
        sheet.stroke(3.5);
        sheet.line(butt.x(), butt.y(), top.x(), top.y());
        sheet.stroke(1, 3, 2);
        sheet.line(top.x(), top.y(), top.x(), corner.y() + 34);
        sheet.stroke(1);
        double balance = butt.y() - scale * pole.centreM();
        sheet.line(butt.x() - 6, balance, butt.x() + 6, balance);
        sheet.text(
                butt.x() + 6,
                attach.y() - 2,
                Face.SMALL,
                sheet.say(String.format(Locale.ROOT, "guys at %.1f m", pole.attachM())));
        sheet.text(
                left, corner.y() + 28, Face.SMALL, sheet.say("from the side, guy 1 to the right"));
    }

    private void numbers() throws IOException {
        double x = corner.x() + 292;
        double y = corner.y() + 28;
        double[] tabs = {0, 30, 74, 118, 164};
        String[] head = {"no.", "gust N", "lean N", "both N", "hold by"};
        for (int i = 0; i < head.length; i++) {
            sheet.text(x + tabs[i], y, new Face(true, 9), sheet.say(head[i]));
        }
        for (int i = 0; i < pole.guys().size(); i++) {
            GuyPull guy = pole.guys().get(i);
            y += 14;
            String weakest = i == pole.weakest() ? " *" : "";
            String[] cells = {
                (i + 1) + weakest,
                Long.toString(Words.up(guy.windN())),
                Long.toString(Words.up(guy.leanN())),
                Long.toString(Words.up(guy.worstN())),
                sheet.say(guy.byHand() ? "one person" : "BELAY")
            };
            for (int k = 0; k < cells.length; k++) {
                sheet.text(x + tabs[k], y, k == 3 || k == 4 ? Face.STRONG : Face.TEXT, cells[k]);
            }
        }
        y += 4;
        for (String line : sheet.fonts().wrap(SAID, sheet.say(said()), sheet.right() - x)) {
            y += 10.5;
            sheet.text(x, y, SAID, line);
        }
    }

    private String said() {
        long gustKt = Math.round(Units.mPerSToKt(pole.gustMPerS()));
        return String.format(
                Locale.ROOT,
                "Gust %d kt, lean %.0f°, from any side. * weakest anchor, %d %% used. gap %d°, %s."
                        + " In calm air one person at each guy holds %.1f° of lean. %s Hover %.1f min,"
                        + " %d kg of fuel; %d kg to spare on arrival. Line pulls at most %d N sideways."
                        + " Free: reading %d kg.",
                gustKt,
                Units.radToDeg(pole.leanRad()),
                Words.up(pole.guys().get(pole.weakest()).anchorUsedRatio() * 100),
                Words.up(Units.radToDeg(pole.largestGapRad())),
                pole.largestGapRad() < Math.PI ? "inside" : "outside",
                Units.radToDeg(pole.handLeanRad()),
                hands(),
                Units.sToMinutes(pole.hoverS()),
                Words.up(pole.hoverFuelKg()),
                Words.down(pole.spareKg()),
                Words.down(pole.sidePullN()),
                Words.up(pole.readingKg()));
    }

    /** For a lean toward each guy: who gives slack and who takes in. */
    private String hands() {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < pole.guys().size(); i++) {
            double leanRad = pole.guys().get(i).azimuthTrueRad();
            String slack = numbers(leanRad, 1);
            String others =
                    IntStream.rangeClosed(1, pole.guys().size())
                            .mapToObj(Integer::toString)
                            .filter(number -> !number.equals(slack))
                            .collect(Collectors.joining(", "));
            String taken = numbers(leanRad, -1);
            boolean isPlain = slack.equals(Integer.toString(i + 1)) && taken.equals(others);
            if (!isPlain) {
                all.add("Leans to " + (i + 1) + ": slacken " + slack + ", take in " + taken + ".");
            }
        }
        return all.isEmpty()
                ? "Leans it to a guy: slacken that one, take in the others."
                : String.join(" ", all);
    }

    private String numbers(double leanRad, int side) {
        String found =
                IntStream.range(0, pole.guys().size())
                        .filter(
                                i -> {
                                    double towards =
                                            Math.cos(pole.guys().get(i).azimuthTrueRad() - leanRad);
                                    return side * towards > Math.sin(SQUARE_RAD);
                                })
                        .mapToObj(i -> Integer.toString(i + 1))
                        .collect(Collectors.joining(", "));
        return found.isEmpty() ? "none" : found;
    }

    private static Dot at(Dot centre, double azimuthRad, double distance) {
        return new Dot(
                centre.x() + distance * Math.sin(azimuthRad),
                centre.y() - distance * Math.cos(azimuthRad));
    }

    /** Rounded, and never a minus before nothing. */
    static double tenths(double valueM) {
        return Math.round(valueM * 10) / 10.0;
    }
}
