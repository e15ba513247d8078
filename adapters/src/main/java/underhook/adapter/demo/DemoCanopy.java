package underhook.adapter.demo;

import java.util.List;
import java.util.Random;

/**
 * The forest of the demo day: none on the valley's fields, trees that grow shorter with height, scrub
 * above the tree line, and round clearings.
 */
final class DemoCanopy {
    private static final long SEED = 20260908L;
    private static final double NOISE_M = 2;

    private DemoCanopy() {}

    /** Ground without trees around a place of the job. */
    record Clearing(double eastM, double northM, double radiusM) {
        boolean holds(double otherEastM, double otherNorthM) {
            return StrictMath.hypot(otherEastM - eastM, otherNorthM - northM) <= radiusM;
        }
    }

    /** Tree height above ground, m, that the forest has at a height of the ground, m AMSL. */
    static double treesAboveGroundM(double groundAmslM) {
        if (groundAmslM < 190) {
            return 0;
        }
        if (groundAmslM > 560) {
            return 2;
        }
        return Math.max(8, Math.min(20, 20 - 0.03 * (groundAmslM - 190)));
    }

    /** Tree heights above ground, m, uneven by up to 2 m either way. */
    static DemoGrid grow(DemoGrid terrain, List<Clearing> clearings) {
        // One draw for each cell, cleared or not, so that a new clearing changes nothing elsewhere.
        Random random = new Random(SEED);
        return DemoGrid.of(
                (eastM, northM) -> {
                    double unevenM = NOISE_M * (2 * random.nextDouble() - 1);
                    double treesM = treesAboveGroundM(terrain.valueM(eastM, northM));
                    boolean cleared = clearings.stream().anyMatch(c -> c.holds(eastM, northM));
                    return treesM == 0 || cleared ? 0 : Math.max(0, treesM + unevenM);
                });
    }
}
