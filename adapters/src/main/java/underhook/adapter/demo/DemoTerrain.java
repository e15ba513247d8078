package underhook.adapter.demo;

/**
 * The ground of the demo day: a valley floor, a northern slope up to a plateau, a gully, two knolls and
 * the levelled floor of a quarry.
 *
 * <p>{@link StrictMath} throughout, so that every machine makes the same bytes.
 */
final class DemoTerrain {
    private static final double QUARRY_EAST_M = 3740;
    private static final double QUARRY_NORTH_M = 760;
    private static final double QUARRY_RADIUS_M = 45;
    private static final double QUARRY_FLOOR_AMSL_M = 362;
    private static final double PLATEAU_AMSL_M = 790;

    private DemoTerrain() {}

    /** Ground height, m AMSL, at a point of the demo's local grid. */
    static double groundAmslM(double eastM, double northM) {
        if (StrictMath.hypot(eastM - QUARRY_EAST_M, northM - QUARRY_NORTH_M) <= QUARRY_RADIUS_M) {
            return QUARRY_FLOOR_AMSL_M;
        }
        double steepness = 0.62 + 0.38 * clamp(eastM, 0, 6500) / 6500;
        double ground =
                173
                        + 0.012 * eastM
                        + 0.40 * rampM(northM - 330, 60) * steepness
                        + 0.50 * rampM(-northM - 330, 60);
        double t = clamp((northM - 420) / 500, 0, 1);
        double gully = 42 * StrictMath.exp(-squared((eastM - 3180) / 120)) * t * t * (3 - 2 * t);
        ground -= gully;
        ground += 66 * bump(eastM - 2560, northM - 1080, 105);
        ground += 48 * bump(eastM - 4720, northM - 1540, 130);
        return PLATEAU_AMSL_M - rampM(PLATEAU_AMSL_M - ground, 20);
    }

    /** Nought well below zero, the value itself well above, rounded off over the given width. */
    private static double rampM(double valueM, double widthM) {
        double scaled = valueM / widthM;
        // Beyond this the exponential would run over and the difference is below a rounding error.
        return scaled > 40 ? valueM : widthM * StrictMath.log1p(StrictMath.exp(scaled));
    }

    private static double bump(double dx, double dy, double width) {
        return StrictMath.exp(-squared(dx / width) - squared(dy / width));
    }

    private static double squared(double value) {
        return value * value;
    }

    private static double clamp(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }
}
