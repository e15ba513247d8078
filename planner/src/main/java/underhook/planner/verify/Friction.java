package underhook.planner.verify;

import underhook.core.job.LoadShape;

/** How a load moves on the ground. @source PRACTICE as in docs/calculations/fall.md */
final class Friction {
    private static final double SLIDES_AT_MOST_M = 60;
    private static final double ROLLS_AT_MOST_M = 200;

    /** Low values for soil and rock. */
    static double frictionCoefficient(LoadShape shape) {
        return switch (shape) {
            case BAG -> 0.4;
            case BOX -> 0.3;
            case SHEET -> 0.25;
            case ROUND -> 0.08;
        };
    }

    /** Farthest run that is counted where friction does not end it, m. */
    static double capM(LoadShape shape) {
        return shape == LoadShape.ROUND ? ROLLS_AT_MOST_M : SLIDES_AT_MOST_M;
    }

    private Friction() {}
}
