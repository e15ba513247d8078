package underhook.core.site;

import java.util.ArrayList;
import java.util.List;

/**
 * Solid columns of one cause, laid out in rings and sectors around the place.
 *
 * <p>The nearest one to a bar is found by leaving out rings and sectors that cannot hold it: none of
 * their columns is nearer than the ring or sector, and none higher than the highest in it. The answer
 * is that of looking at every column in order.
 */
final class Columns {
    /** Outer radius of what is looked at, m. */
    static final double WITHIN_M = 60;

    private static final double RING_M = 2;
    private static final int SECTORS = 24;

    /** Sums of rounding errors are far below this; a ring is left out only beyond it, m. */
    private static final double DUST_M = 1e-9;

    private final double[] eastM;
    private final double[] northM;
    private final double[] topAmslM;
    private final double[] padM;
    private final String[] ids;
    private final Ring[] rings;

    /** A ring with its sectors that hold columns, nearest ring first. */
    private record Ring(double nearM, double topAmslM, List<Group> groups) {}

    /** Columns of one sector of a ring: a circle that holds all of them with their pads. */
    private record Group(
            double eastM, double northM, double radiusM, double topAmslM, int first, int end) {}

    private Columns(List<Column> sorted, Ring[] rings) {
        int count = sorted.size();
        this.rings = rings;
        eastM = new double[count];
        northM = new double[count];
        topAmslM = new double[count];
        padM = new double[count];
        ids = new String[count];
        for (int i = 0; i < count; i++) {
            Column column = sorted.get(i);
            eastM[i] = column.eastM();
            northM[i] = column.northM();
            topAmslM[i] = column.topAmslM();
            padM[i] = column.padM();
            ids[i] = column.id();
        }
    }

    static Columns of(List<Column> columns) {
        List<Column> sorted =
                columns.stream()
                        .sorted((one, other) -> Integer.compare(binOf(one), binOf(other)))
                        .toList();
        int ringCount = sorted.isEmpty() ? 0 : binOf(sorted.get(sorted.size() - 1)) / SECTORS + 1;
        Ring[] rings = new Ring[ringCount];
        int at = 0;
        for (int ring = 0; ring < ringCount; ring++) {
            List<Group> groups = new ArrayList<>();
            double nearM = Double.POSITIVE_INFINITY;
            double topM = Double.NEGATIVE_INFINITY;
            while (at < sorted.size() && binOf(sorted.get(at)) / SECTORS == ring) {
                int first = at;
                while (at < sorted.size() && binOf(sorted.get(at)) == binOf(sorted.get(first))) {
                    Column column = sorted.get(at++);
                    nearM = Math.min(nearM, column.distanceM() - column.padM());
                    topM = Math.max(topM, column.topAmslM());
                }
                groups.add(group(sorted, first, at));
            }
            rings[ring] = new Ring(nearM, topM, List.copyOf(groups));
        }
        return new Columns(sorted, rings);
    }

    private static Group group(List<Column> sorted, int first, int end) {
        double eastM = 0;
        double northM = 0;
        double topM = Double.NEGATIVE_INFINITY;
        for (Column column : sorted.subList(first, end)) {
            eastM += column.eastM() / (end - first);
            northM += column.northM() / (end - first);
            topM = Math.max(topM, column.topAmslM());
        }
        double radiusM = 0;
        for (Column column : sorted.subList(first, end)) {
            double offM = Math.hypot(column.eastM() - eastM, column.northM() - northM);
            radiusM = Math.max(radiusM, offM + column.padM());
        }
        return new Group(eastM, northM, radiusM, topM, first, end);
    }

    private static int binOf(Column column) {
        int ring = (int) (column.distanceM() / RING_M);
        double turn = Math.atan2(column.eastM(), column.northM()) / (2 * Math.PI) + 0.5;
        return ring * SECTORS + Math.min(SECTORS - 1, (int) (turn * SECTORS));
    }

    /**
     * Index of the column nearest to a bar; the first of equals, -1 when there is none.
     *
     * @param beyondM columns that reach nearer to the place than this are left out, m
     * @param guess a column that is likely the one; -1 for none
     */
    int nearest(Bar bar, double beyondM, int guess) {
        double outM = bar.reachM() + bar.radiusM();
        int best = guess >= 0 && counts(guess, beyondM) ? guess : -1;
        double bestM = best >= 0 ? marginM(bar, best) : Double.POSITIVE_INFINITY;
        for (Ring ring : rings) {
            double levelM = ring.nearM() - outM - DUST_M;
            if (levelM > bestM) {
                continue;
            }
            double heightM = bar.bottomAmslM() - ring.topAmslM() - DUST_M;
            if (Bar.inSpaceM(levelM, heightM) > bestM) {
                continue;
            }
            for (Group group : ring.groups()) {
                double apartM = bar.apartM(group.eastM(), group.northM()) - group.radiusM();
                double overM = bar.bottomAmslM() - group.topAmslM() - DUST_M;
                if (Bar.inSpaceM(apartM - bar.radiusM() - DUST_M, overM) > bestM) {
                    continue;
                }
                for (int i = group.first(); i < group.end(); i++) {
                    double marginM = marginM(bar, i);
                    boolean better = marginM < bestM || (marginM == bestM && i < best);
                    if (better && counts(i, beyondM)) {
                        best = i;
                        bestM = marginM;
                    }
                }
            }
        }
        return best;
    }

    private boolean counts(int i, double beyondM) {
        return beyondM <= 0
                || Math.sqrt(eastM[i] * eastM[i] + northM[i] * northM[i]) - padM[i] > beyondM;
    }

    boolean isEmpty() {
        return ids.length == 0;
    }

    double marginM(Bar bar, int i) {
        return Bar.inSpaceM(levelM(bar, i), bar.bottomAmslM() - topAmslM[i]);
    }

    /** Level distance of a bar to a column, m; negative where they overlap. */
    double levelM(Bar bar, int i) {
        return bar.apartM(eastM[i], northM[i]) - bar.radiusM() - padM[i];
    }

    String id(int i) {
        return ids[i];
    }

    /**
     * Least steepness at which a bar keeps a margin while it goes straight up and away from the place,
     * as rise over run; infinite where only straight up does.
     *
     * <p>The way is cut into short steps. In each the bar is taken at the height of the step's lower end
     * and as near as at any point of it, so the answer errs steep.
     *
     * @param leastFactor steepness that is needed anyway
     * @return not below leastFactor
     */
    double steepnessFactor(Bar bar, Steps steps, double leastFactor) {
        double factor = leastFactor;
        double outM = bar.reachM() + bar.radiusM() + steps.needM() + Steps.STEP_M;
        for (Ring ring : rings) {
            if (ring.topAmslM() + steps.needM() - bar.bottomAmslM() <= 0) {
                continue;
            }
            for (Group group : ring.groups()) {
                double riseM = group.topAmslM() + steps.needM() - bar.bottomAmslM();
                double alongM = steps.alongM(group.eastM(), group.northM());
                double widthM = outM + group.radiusM();
                double firstM = alongM - widthM;
                boolean cannot =
                        riseM <= 0
                                || steps.asideM(group.eastM(), group.northM()) > widthM
                                || alongM + widthM < 0
                                || (firstM > 0 && riseM / firstM <= factor);
                for (int i = group.first(); !cannot && i < group.end(); i++) {
                    if (counts(i, steps.beyondM())) {
                        factor = columnFactor(bar, steps, i, factor);
                    }
                }
            }
        }
        return factor;
    }

    private double columnFactor(Bar bar, Steps steps, int i, double leastFactor) {
        double needM = steps.needM();
        double riseM = topAmslM[i] + needM - bar.bottomAmslM();
        double widthM = bar.reachM() + bar.radiusM() + needM + padM[i] + Steps.STEP_M;
        double alongM = steps.alongM(eastM[i], northM[i]);
        double factor = leastFactor;
        if (riseM <= 0 || steps.asideM(eastM[i], northM[i]) > widthM) {
            return factor;
        }
        int first = (int) Math.max(0, Math.floor((alongM - widthM) / Steps.STEP_M));
        int last = (int) Math.min(Steps.COUNT - 1, Math.ceil((alongM + widthM) / Steps.STEP_M));
        for (int k = first; k <= last; k++) {
            double lowerEndM = k * Steps.STEP_M;
            if (lowerEndM > 0 && riseM / lowerEndM <= factor) {
                return factor;
            }
            double middleM = lowerEndM + Steps.STEP_M / 2;
            double levelM =
                    bar.apartM(
                                    eastM[i] - middleM * steps.eastFactor(),
                                    northM[i] - middleM * steps.northFactor())
                            - Steps.STEP_M / 2
                            - bar.radiusM()
                            - padM[i];
            if (levelM < needM) {
                double insideM = Math.max(0, levelM);
                double lackM = riseM - needM + Math.sqrt(needM * needM - insideM * insideM);
                factor = lackM > 0 ? Math.max(factor, lackM / lowerEndM) : factor;
            }
        }
        return factor;
    }
}
