package underhook.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.GridHeightField;
import underhook.core.geo.GridShape;
import underhook.core.geo.Ground;
import underhook.core.geo.LocalFrame;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.PlaceKind;
import underhook.core.job.Rules;
import underhook.core.site.Cause;
import underhook.core.site.Column;
import underhook.core.site.Craft;
import underhook.core.site.HeadingRoom;
import underhook.core.site.Margin;
import underhook.core.site.Needs;
import underhook.core.site.Part;
import underhook.core.site.Rig;
import underhook.core.site.Room;
import underhook.core.site.Surroundings;
import underhook.core.site.Surroundings.Layer;

/**
 * Room on 72 headings for five lines, against looking at every cell.
 *
 * <p>The baseline does what can be done without search: parts that look alike on every heading are looked
 * at once for each line, the level distance of a cell once for all lines. Both must agree to the bit.
 */
final class RoomBench {
    private static final Craft CRAFT = new Craft(5.1, 7.5, new Machine.Body(5.1, 1.5, 1.5, 0));
    private static final Needs NEEDS = new Needs(5, 30, 0, Rules.Margins.USUAL);
    private static final List<Rig> RIGS =
            List.of(15, 25, 40, 50, 60).stream().map(m -> new Rig(m, 0, 0.64, 1.1)).toList();

    private RoomBench() {}

    static Comparison room() {
        Room room = Room.of(around(), CRAFT, NEEDS);
        EveryCell cells = new EveryCell(room);
        if (!room.table(RIGS).equals(cells.table())) {
            throw new IllegalStateException(
                    "the table of room differs from the scan of all cells.");
        }
        return new Comparison(
                "room",
                "looking at every cell",
                () -> sum(cells.table()),
                () -> sum(room.table(RIGS)));
    }

    /** The least steepness in and out for the same table; there is no other way to compare it with. */
    static Comparison ways() {
        Room room = Room.of(around(), CRAFT, NEEDS);
        return new Comparison(
                "room-ways",
                "the table of margins alone",
                () -> sum(room.table(RIGS)),
                () -> {
                    double sum = 0;
                    for (Rig rig : RIGS) {
                        for (int k = 0; k < Room.HEADINGS; k++) {
                            double heading = 2 * Math.PI * k / Room.HEADINGS;
                            sum += room.straightIn(heading, rig).leastRad();
                            sum += room.straightOut(heading, rig).leastRad();
                        }
                    }
                    return sum;
                });
    }

    /** A wooded slope of 16° with a knoll, surveyed trees of 17.2 m and a clearing of 16 m. */
    private static Surroundings around() {
        LocalFrame frame = LocalFrame.of(new GeoPoint(46.8, -12));
        GridHeightField terrain =
                GridHeightField.of(
                        new GridShape(-90.5, -90.5, 1, 181, 181),
                        (e, n) ->
                                300
                                        + 0.2 * n
                                        + 0.2 * e
                                        + 9 * Math.exp(-Math.pow(Math.hypot(e - 40, n) / 9, 2)));
        Place place =
                new Place(
                        new PlaceId("S"),
                        PlaceKind.SITE,
                        "S",
                        frame.origin(),
                        OptionalDouble.empty(),
                        OptionalDouble.of(17.2),
                        2,
                        16,
                        1,
                        true,
                        false,
                        false,
                        false,
                        List.of(),
                        "");
        return Surroundings.of(
                new Ground(frame, terrain, Optional.empty(), 0),
                place,
                Room.view(CRAFT, NEEDS),
                List.of());
    }

    private static double sum(List<List<HeadingRoom>> table) {
        double sum = 0;
        for (List<HeadingRoom> line : table) {
            for (HeadingRoom heading : line) {
                sum += heading.tightest().marginM();
            }
        }
        return sum;
    }

    /** The same table with every cell looked at. */
    private static final class EveryCell {
        private final Room room;
        private final double slopeFactor;
        private final Cells machine;
        private final Cells hanging;

        /** Where a column is and how far it reaches, as plain numbers. */
        private static final class Cells {
            final double[] eastM;
            final double[] northM;
            final double[] topAmslM;
            final double[] padM;

            Cells(Surroundings around, Layer layer) {
                // Trees are all there is here; anything else would be left out of the comparison.
                for (Cause cause : List.of(Cause.GROUND, Cause.THING, Cause.WIRE)) {
                    if (!around.listColumns(layer, cause).isEmpty()) {
                        throw new IllegalStateException("the scene has more than trees.");
                    }
                }
                List<Column> trees = around.listColumns(layer, Cause.TREES);
                eastM = trees.stream().mapToDouble(Column::eastM).toArray();
                northM = trees.stream().mapToDouble(Column::northM).toArray();
                topAmslM = trees.stream().mapToDouble(Column::topAmslM).toArray();
                padM = trees.stream().mapToDouble(Column::padM).toArray();
            }
        }

        /** A bar from behind the place to ahead of it. */
        private record Shape(Part part, double behindM, double aheadM, double radiusM) {}

        EveryCell(Room room) {
            this.room = room;
            this.slopeFactor = room.around().slopeFactor();
            this.machine = new Cells(room.around(), Layer.MACHINE);
            this.hanging = new Cells(room.around(), Layer.HANGING);
        }

        List<List<HeadingRoom>> table() {
            double placeM = room.around().elevationAmslM();
            double[] hooksM = RIGS.stream().mapToDouble(rig -> placeM + rig.hookAglM()).toArray();
            Machine.Body body = CRAFT.body();
            Shape tail = new Shape(Part.TAIL, CRAFT.tailReachM(), 0, body.tailHalfWidthM());
            double noseM = body.noseReachM() - body.halfWidthM();
            Shape fuselage = new Shape(Part.FUSELAGE, noseM, noseM, body.halfWidthM());
            // All lines carry the same load here, so what hangs is looked at once for all.
            double[] footM = {placeM};
            Margin rope = scan(hanging, new Shape(Part.LINE, 0, 0, 0), footM, 0).get(0);
            Margin load =
                    scan(hanging, new Shape(Part.LOAD, 0, 0, RIGS.get(0).loadRadiusM()), footM, 0)
                            .get(0);
            List<Margin> rotors =
                    scan(machine, new Shape(Part.ROTOR, 0, 0, CRAFT.rotorRadiusM()), hooksM, 0);
            List<List<HeadingRoom>> all = new ArrayList<>();
            RIGS.forEach(unused -> all.add(new ArrayList<>()));
            for (int k = 0; k < Room.HEADINGS; k++) {
                double heading = 2 * Math.PI * k / Room.HEADINGS;
                double riseM = room.riseBehindM(heading);
                List<Margin> tails = scan(machine, tail, hooksM, heading);
                List<Margin> bodies = scan(machine, fuselage, hooksM, heading);
                for (int i = 0; i < RIGS.size(); i++) {
                    Margin reach = reach(RIGS.get(i), heading, riseM);
                    Margin behind = tails.get(i).isTighterThan(reach) ? tails.get(i) : reach;
                    all.get(i)
                            .add(
                                    new HeadingRoom(
                                            heading,
                                            List.of(
                                                    turned(rotors.get(i), heading),
                                                    behind,
                                                    bodies.get(i),
                                                    turned(rope, heading),
                                                    turned(load, heading))));
                }
            }
            return all;
        }

        private Margin reach(Rig rig, double headingRad, double riseM) {
            double treesM = room.around().canopyM();
            return new Margin(
                    Part.TAIL,
                    Cause.TREES,
                    "",
                    headingRad,
                    rig.hookAglM() - treesM - riseM,
                    NEEDS.rotorClearanceM(),
                    unknownM(0));
        }

        private static Margin turned(Margin margin, double headingRad) {
            return new Margin(
                    margin.part(),
                    margin.cause(),
                    margin.id(),
                    headingRad,
                    margin.marginM(),
                    margin.neededM(),
                    margin.unknownM());
        }

        private double unknownM(double asideRatio) {
            return NEEDS.margins().placeSpreadM() * Math.min(1, asideRatio + slopeFactor)
                    + slopeFactor * Surroundings.CELL_M / 2
                    + room.around().canopySpreadM();
        }

        /** The least margin at each height; a cell's level distance is worked out once for all. */
        private List<Margin> scan(Cells cells, Shape shape, double[] bottomsM, double headingRad) {
            double[] best = new double[bottomsM.length];
            double[] bestLevel = new double[bottomsM.length];
            Arrays.fill(best, Double.POSITIVE_INFINITY);
            boolean round = shape.behindM() + shape.aheadM() <= 0;
            double east = round ? 0 : Math.sin(headingRad);
            double north = round ? 1 : Math.cos(headingRad);
            for (int c = 0; c < cells.eastM.length; c++) {
                double along = cells.eastM[c] * east + cells.northM[c] * north;
                double aside = cells.eastM[c] * north - cells.northM[c] * east;
                double beyond =
                        Math.max(0, Math.max(-shape.behindM() - along, along - shape.aheadM()));
                double level =
                        Math.sqrt(beyond * beyond + aside * aside)
                                - shape.radiusM()
                                - cells.padM[c];
                for (int i = 0; i < bottomsM.length; i++) {
                    double over = bottomsM[i] - cells.topAmslM[c];
                    double margin;
                    if (level <= 0) {
                        margin = over <= 0 ? Math.max(level, over) : over;
                    } else {
                        margin = over <= 0 ? level : Math.sqrt(level * level + over * over);
                    }
                    if (margin < best[i]) {
                        best[i] = margin;
                        bestLevel[i] = level;
                    }
                }
            }
            boolean hangs = shape.part() == Part.LINE || shape.part() == Part.LOAD;
            double needed = hangs ? NEEDS.margins().underClearanceM() : NEEDS.rotorClearanceM();
            List<Margin> all = new ArrayList<>();
            for (int i = 0; i < bottomsM.length; i++) {
                double asideRatio =
                        best[i] > 0 && bestLevel[i] < best[i]
                                ? Math.max(0, bestLevel[i]) / best[i]
                                : 1;
                all.add(
                        new Margin(
                                shape.part(),
                                Cause.TREES,
                                "",
                                headingRad,
                                best[i],
                                needed,
                                unknownM(asideRatio)));
            }
            return all;
        }
    }
}
