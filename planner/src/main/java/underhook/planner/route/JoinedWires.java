package underhook.planner.route;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import underhook.core.geo.PlanePoint;

/**
 * Which wires go on in one another: many files have a feature for each span, and a way that crosses one span passes
 * near the next ones too. Wires join where an end of one lies at a support of the other.
 */
final class JoinedWires {
    /** Ends drawn for the same support lie no further apart. @source PRACTICE */
    static final double JOIN_M = 0.5;

    private final List<List<PlanePoint>> wires;
    private final int[] first;

    /** Supports by square metre of the plane. */
    private final Map<List<Long>, List<Support>> byMetre = new HashMap<>();

    private record Support(int wire, PlanePoint at) {}

    private JoinedWires(List<List<PlanePoint>> wires) {
        this.wires = wires;
        this.first = new int[wires.size()];
        for (int wire = 0; wire < first.length; wire++) {
            first[wire] = wire;
            for (PlanePoint at : wires.get(wire)) {
                byMetre.computeIfAbsent(metre(at, 0, 0), unused -> new ArrayList<>())
                        .add(new Support(wire, at));
            }
        }
    }

    /**
     * For each wire the least number of those that it goes on in, itself among them.
     *
     * @param wires supports of each in the plane
     */
    static int[] chains(List<List<PlanePoint>> wires) {
        JoinedWires joined = new JoinedWires(wires);
        joined.join();
        int[] chains = new int[wires.size()];
        for (int wire = 0; wire < chains.length; wire++) {
            chains[wire] = joined.find(wire);
        }
        return chains;
    }

    private void join() {
        for (int wire = 0; wire < first.length; wire++) {
            List<PlanePoint> points = wires.get(wire);
            join(wire, points.get(0));
            join(wire, points.get(points.size() - 1));
        }
    }

    private void join(int wire, PlanePoint end) {
        for (int east = -1; east <= 1; east++) {
            for (int north = -1; north <= 1; north++) {
                for (Support near : byMetre.getOrDefault(metre(end, east, north), List.of())) {
                    if (end.distanceToM(near.at()) <= JOIN_M) {
                        int one = find(wire);
                        int other = find(near.wire());
                        first[Math.max(one, other)] = Math.min(one, other);
                    }
                }
            }
        }
    }

    private int find(int wire) {
        int at = wire;
        while (first[at] != at) {
            first[at] = first[first[at]];
            at = first[at];
        }
        return at;
    }

    private static List<Long> metre(PlanePoint at, int east, int north) {
        return List.of(
                (long) Math.floor(at.eastM()) + east, (long) Math.floor(at.northM()) + north);
    }
}
