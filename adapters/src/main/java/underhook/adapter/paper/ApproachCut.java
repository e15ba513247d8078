package underhook.adapter.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.adapter.paper.Sheet.Dot;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Machine;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;

/** The last part of the way in cut through along its track: ground, trees, machine, line and load. */
final class ApproachCut {
    /** Height and width on the page, points. */
    static final double HEIGHT = 108;

    static final double WIDTH = 156;

    /** How far out the cut goes, and how far beyond the place, m. */
    private static final double OUT_M = 120;

    private static final double BEYOND_M = 30;
    private static final double STEP_M = 2.5;
    private static final double DRAWN_HEIGHT = 66;

    private final Sheet sheet;
    private final Dot corner;
    private final Shown shown;
    private final Ground ground;
    private final PlanePoint place;
    private final double buttAmslM;
    private final double scale = WIDTH / (OUT_M + BEYOND_M + 12);

    /** What is cut: the leg with the load, where it ends, and the machine. */
    record Shown(Drop drop, Leg leg, double lineM, Machine machine) {}

    private ApproachCut(Sheet sheet, Dot corner, Shown shown, Words words, Ground ground) {
        this.sheet = sheet;
        this.corner = corner;
        this.shown = shown;
        this.ground = ground;
        List<PathPoint> path = shown.leg().path();
        this.place = words.plane(path.get(path.size() - 1).position());
        this.buttAmslM =
                ground.terrain().covers(place.eastM(), place.northM())
                        ? ground.terrain().heightM(place.eastM(), place.northM())
                        : path.get(path.size() - 1).hookAltitudeAmslM() - shown.lineM();
    }

    /** Draws one cut; the machine comes from the right. */
    static void draw(Sheet sheet, Dot corner, Shown shown, Words words, Ground ground)
            throws IOException {
        ApproachCut cut = new ApproachCut(sheet, corner, shown, words, ground);
        sheet.clip(
                List.of(
                        new Dot(corner.x(), corner.y() + 24),
                        new Dot(corner.x() + WIDTH - 6, corner.y() + 24),
                        new Dot(corner.x() + WIDTH - 6, corner.y() + HEIGHT),
                        new Dot(corner.x(), corner.y() + HEIGHT)));
        cut.drawGround();
        cut.drawMachine(words);
        sheet.unclip();
        cut.label();
    }

    private Dot dot(double outM, double amslM) {
        return new Dot(
                corner.x() + (BEYOND_M + outM) * scale,
                corner.y() + 26 + DRAWN_HEIGHT - (amslM - buttAmslM) * scale);
    }

    private PlanePoint along(double outM) {
        double gridRad = shown.drop().approachFromTrueRad() - ground.frame().convergenceRad(place);
        return place.towards(gridRad, outM);
    }

    private void drawGround() throws IOException {
        List<Dot> floor = new ArrayList<>();
        List<Dot> trees = new ArrayList<>();
        for (double outM = -BEYOND_M; outM <= OUT_M; outM += STEP_M) {
            PlanePoint at = along(outM);
            if (!ground.terrain().covers(at.eastM(), at.northM())) {
                continue;
            }
            double amslM = ground.terrain().heightM(at.eastM(), at.northM());
            double canopyM =
                    ground.canopy()
                            .filter(canopy -> canopy.covers(at.eastM(), at.northM()))
                            .map(canopy -> canopy.heightM(at.eastM(), at.northM()))
                            .orElse(0.0);
            floor.add(dot(outM, amslM));
            if (canopyM > 0.5) {
                trees.add(dot(outM, amslM + canopyM));
                sheet.stroke(0.4);
                sheet.polyline(List.of(dot(outM, amslM), dot(outM, amslM + canopyM)));
            }
        }
        sheet.stroke(1.4);
        if (floor.size() > 1) {
            sheet.polyline(floor);
        }
        for (Dot tree : trees) {
            sheet.fill(Sheet.ring(tree, 1.1, 8));
        }
    }

    private void drawMachine(Words words) throws IOException {
        List<Dot> way = new ArrayList<>();
        List<PathPoint> path = shown.leg().path();
        double outM = 0;
        for (int i = path.size() - 1; i >= 0 && outM <= OUT_M; i--) {
            outM = words.plane(path.get(i).position()).distanceToM(place);
            way.add(dot(outM, path.get(i).hookAltitudeAmslM()));
        }
        sheet.stroke(1, 3, 2);
        if (way.size() > 1) {
            sheet.polyline(way);
        }
        double hookAmslM =
                shown.leg().path().get(shown.leg().path().size() - 1).hookAltitudeAmslM();
        double rotorAmslM = hookAmslM + Math.max(1.5, shown.machine().body().rotorAboveHookM());
        sheet.stroke(1);
        sheet.polyline(List.of(dot(0, hookAmslM), dot(0, hookAmslM - shown.lineM())));
        sheet.stroke(3);
        sheet.polyline(List.of(dot(0, hookAmslM - shown.lineM()), dot(0, buttAmslM + 0.3)));
        sheet.stroke(1.6);
        double radiusM = shown.machine().rotorRadiusM();
        sheet.polyline(List.of(dot(-radiusM, rotorAmslM), dot(radiusM, rotorAmslM)));
        // The nose points the way it came, so the tail lies to where it came from.
        sheet.stroke(2.4);
        sheet.polyline(
                List.of(
                        dot(-shown.machine().body().noseReachM() / 2, hookAmslM),
                        dot(shown.machine().tailReachM(), rotorAmslM)));
    }

    private void label() throws IOException {
        List<PathPoint> path = shown.leg().path();
        sheet.textWithin(
                new Dot(corner.x(), corner.y() + 11),
                WIDTH - 6,
                Face.STRONG,
                sheet.say(
                        shown.drop().place()
                                + " "
                                + shown.drop().load()
                                + ", from "
                                + Words.bearing(shown.drop().approachFromTrueRad())));
        String slowing =
                shown.leg()
                        .slowing()
                        .map(one -> ", slows from " + Words.up(one.beginM()) + " m")
                        .orElse("");
        sheet.text(
                corner.x(),
                corner.y() + 21,
                Face.SMALL,
                sheet.say(
                        String.format(
                                Locale.ROOT,
                                "hook at %d m%s",
                                Words.hookM(path.get(path.size() - 1).hookAltitudeAmslM()),
                                slowing)));
    }
}
