package underhook.planner.verify;

import underhook.core.job.Wire;
import underhook.core.job.WireBufferRule;
import underhook.core.job.WireKind;

/** Least distances to live power lines, a table of the verifier's own. */
final class WireTable {
    /**
     * Highest voltage of each class, V, and its distance, ft, with a load.
     *
     * @source OSHA-1926.1408 table A
     */
    private static final int[][] WITH_LOAD = {
        {50_000, 10}, {200_000, 15}, {350_000, 20}, {500_000, 25}, {750_000, 35}, {1_000_000, 45}
    };

    /** The same travelling without a load. @source OSHA-1926.1411 table T */
    private static final int[][] TRAVELLING = {
        {750, 4}, {50_000, 6}, {345_000, 10}, {750_000, 16}, {1_000_000, 20}
    };

    /** Heights, m, and percent added up to there. @source UFC-3-560-01 table 3-2 */
    private static final int[][] HEIGHT_PERCENT = {
        {900, 0}, {1200, 2}, {1500, 5}, {1800, 8}, {2100, 11}, {2400, 14}, {2700, 17}, {3000, 20}
    };

    private static final double FOOT_M = 0.3048;

    private WireTable() {}

    /** Least distance to a wire that reaches so high: the operator's own or the table's, m. */
    static double needM(Wire wire, WireBufferRule rule, double ownM, double topAmslM) {
        boolean counts = wire.live() && wire.hanging().kind() == WireKind.POWER;
        if (!counts || rule == WireBufferRule.OWN) {
            return ownM;
        }
        int[][] table = rule == WireBufferRule.CRANE ? WITH_LOAD : TRAVELLING;
        int feet = table[table.length - 1][1];
        for (int i = table.length - 1; i >= 0; i--) {
            // No voltage stated is the largest class.
            if (wire.voltageV() > 0 && wire.voltageV() <= table[i][0]) {
                feet = table[i][1];
            }
        }
        return Math.max(ownM, feet * FOOT_M * (1 + addedPercent(topAmslM) / 100.0));
    }

    private static int addedPercent(double topAmslM) {
        int percent = HEIGHT_PERCENT[HEIGHT_PERCENT.length - 1][1];
        for (int i = HEIGHT_PERCENT.length - 1; i >= 0; i--) {
            percent = topAmslM <= HEIGHT_PERCENT[i][0] ? HEIGHT_PERCENT[i][1] : percent;
        }
        return percent;
    }
}
