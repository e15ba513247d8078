package underhook.planner.route;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import underhook.core.geo.PlanePoint;

/** All spots where a way may turn, numbered: corners of closed ground first, then the others. */
final class Spots {
    private final Spot[] all;
    private final int[] byCorner;
    private final int firstOther;
    private final CellLists others;

    /** Those of them that lie in no wire's corridor and not on closed ground. */
    Spots(ClosedGround ground, CrossableWires wires, List<PlanePoint> others) {
        List<Spot> spots = new ArrayList<>();
        byCorner = new int[ground.size()];
        Arrays.fill(byCorner, -1);
        for (int corner = 0; corner < ground.size(); corner++) {
            Spot spot = ground.corner(corner);
            if (ground.isBulge(corner) && !wires.isInCorridor(spot.toPoint())) {
                byCorner[corner] = spots.size();
                spots.add(spot);
            }
        }
        firstOther = spots.size();
        for (PlanePoint other : others) {
            if (!ground.isClosed(other) && !wires.isInCorridor(other)) {
                spots.add(Spot.of(other));
            }
        }
        all = spots.toArray(Spot[]::new);
        this.others =
                CellLists.of(
                        ground.grid,
                        all.length - firstOther,
                        i ->
                                new CellRows(
                                        ground.grid, all[firstOther + i], all[firstOther + i], 0));
    }

    int size() {
        return all.length;
    }

    Spot get(int at) {
        return all[at];
    }

    /** Number of a corner's spot; -1 when no way turns there. */
    int ofCorner(int corner) {
        return byCorner[corner];
    }

    int firstOther() {
        return firstOther;
    }

    /** The others by cell, counted from the first of them. */
    CellLists others() {
        return others;
    }
}
