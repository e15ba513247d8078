package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import underhook.core.geo.PlanePoint;

/**
 * The string pulled tight round discs in a row: tangent, arc, tangent.
 *
 * <p>Where no tangent joins two neighbours, only {@link #untouched} may be asked.
 */
final class TightString {
    private final Bends bends;
    private final List<Disc> discs;

    /** Direction of the piece behind each disc, rad. */
    private final double[] directionRad;

    private int untouched = -1;

    /**
     * A way with the pieces of it that stay as they are.
     *
     * @param rigid for each piece whether it keeps its direction and its whole length
     */
    record Bends(List<PlanePoint> way, List<Boolean> rigid) {
        Bends {
            way = List.copyOf(way);
            rigid = List.copyOf(rigid);
        }

        static Bends of(List<PlanePoint> way, Set<Integer> rigid) {
            List<Boolean> pieces = new ArrayList<>();
            for (int i = 0; i + 1 < way.size(); i++) {
                pieces.add(rigid.contains(i));
            }
            return new Bends(way, pieces);
        }

        /** False for a piece that there is not. */
        boolean isRigid(int piece) {
            return piece >= 0 && piece < rigid.size() && rigid.get(piece);
        }

        double directionRad(int piece) {
            return Circles.directionRad(way.get(piece), way.get(piece + 1));
        }

        /** Turn at a corner, rad, to the left positive. */
        double turnRad(int corner) {
            return Circles.turnRad(directionRad(corner - 1), directionRad(corner));
        }
    }

    /**
     * Pulls it tight.
     *
     * @param discs the ends as points and what lies between them
     */
    TightString(Bends bends, List<Disc> discs) {
        this.bends = bends;
        this.discs = List.copyOf(discs);
        this.directionRad = new double[discs.size()];
        for (int i = 0; i + 1 < discs.size() && untouched < 0; i++) {
            Disc a = discs.get(i);
            if (isRigidAfter(a)) {
                directionRad[i] =
                        Circles.directionRad(
                                bends.way().get(a.last()),
                                bends.way().get(discs.get(i + 1).first()));
            } else {
                OptionalDouble tangentRad = Circles.tangentRad(a, discs.get(i + 1));
                untouched = tangentRad.isEmpty() ? i : -1;
                directionRad[i] = tangentRad.orElse(0);
            }
        }
    }

    List<Disc> discs() {
        return discs;
    }

    /** The first of two neighbours that no tangent joins; -1 where none. */
    int untouched() {
        return untouched;
    }

    /** The first disc that the string would have to go round the wrong way; -1 where none. */
    int backwards() {
        for (int i = 1; i + 1 < discs.size(); i++) {
            if (discs.get(i).radiusM() > 0 && sweepRad(i) > mostRad(discs.get(i))) {
                return i;
            }
        }
        return -1;
    }

    /** Behind a final a turn may be wider than a half circle. */
    private double mostRad(Disc disc) {
        return isRound(disc) ? Math.PI : 1.5 * Math.PI;
    }

    /** The neighbour that may share one disc with another; -1 where none. */
    int partner(int at) {
        int found = -1;
        double leastM = Double.POSITIVE_INFINITY;
        for (int other : new int[] {at - 1, at + 1}) {
            Disc one = discs.get(other);
            boolean fits =
                    one.radiusM() > 0
                            && one.side() == discs.get(at).side()
                            && isRound(one)
                            && isRound(discs.get(at));
            double apartM = one.centre().distanceToM(discs.get(at).centre());
            if (fits && apartM < leastM) {
                leastM = apartM;
                found = other;
            }
        }
        return found;
    }

    private boolean isRound(Disc disc) {
        return !bends.isRigid(disc.first() - 1) && !isRigidAfter(disc);
    }

    private boolean isRigidAfter(Disc disc) {
        return bends.isRigid(disc.last());
    }

    /** Corners of a disc and its neighbours. */
    Set<Integer> around(int at) {
        Set<Integer> corners = corners(at - 1, at);
        corners.addAll(corners(at, at + 1));
        return corners;
    }

    /** Corners of two discs; the ends of the way are none. */
    Set<Integer> corners(int one, int other) {
        Set<Integer> corners = new TreeSet<>();
        for (Disc disc : List.of(discs.get(one), discs.get(other))) {
            if (disc.radiusM() > 0) {
                corners.addAll(disc.corners());
            }
        }
        return corners;
    }

    private double sweepRad(int at) {
        double sweepRad = discs.get(at).side() * (directionRad[at] - directionRad[at - 1]);
        double whole = 2 * Math.PI;
        double wrapped = ((sweepRad % whole) + whole) % whole;
        // A hair of turning back is rounding.
        return wrapped > whole - 1e-9 ? 0 : wrapped;
    }

    /** Whether the piece that leads to a disc stays as it was found. */
    boolean isAsFound(int at) {
        return isRigidAfter(discs.get(at - 1));
    }

    /** Where the string meets a disc. */
    PlanePoint begins(int at) {
        return touch(discs.get(at), directionRad[at - 1]);
    }

    private static PlanePoint touch(Disc disc, double directionRad) {
        return Circles.aside(disc.centre(), directionRad, -disc.side() * disc.radiusM());
    }

    /** The arc's outside points and its end. */
    List<PlanePoint> arc(int at) {
        Disc disc = discs.get(at);
        double sweepRad = disc.radiusM() > 0 ? sweepRad(at) : 0;
        int pieces = (int) Math.ceil(Math.toDegrees(sweepRad) / RoundedWay.STEP_DEG - 1e-9);
        List<PlanePoint> points = new ArrayList<>();
        double outsideM = disc.radiusM() / Math.cos(sweepRad / (2 * Math.max(1, pieces)));
        for (int k = 0; k < pieces; k++) {
            double alongRad = directionRad[at - 1] + disc.side() * sweepRad * (k + 0.5) / pieces;
            points.add(Circles.aside(disc.centre(), alongRad, -disc.side() * outsideM));
        }
        points.add(touch(disc, directionRad[at]));
        return points;
    }
}
