package underhook.core.fall;

import underhook.core.job.LoadShape;
import underhook.core.unit.Units;

/**
 * How far a load runs on after it has hit the ground.
 *
 * <p>The blow takes friction times the speed into the ground off the speed along it; what is left slides
 * or rolls against friction, helped or hindered by the slope. Where friction does not hold on the slope it
 * runs to the shape's cap, which is our own setting: trees and hollows end every run somewhere, and a
 * slope as steep as that is not survived by anybody's arithmetic.
 */
public final class Runout {
    private final LoadShape shape;
    private final double frictionCoefficient;
    private final double cosRatio;
    private final double sinRatio;

    /** By how much friction slows it on the slope, m/s²; it comes to rest where that is above 0. */
    private final double slowingMPerS2;

    private Runout(LoadShape shape, double fallRad) {
        this.shape = shape;
        this.frictionCoefficient = frictionCoefficient(shape);
        this.cosRatio = Math.cos(fallRad);
        this.sinRatio = Math.sin(fallRad);
        this.slowingMPerS2 =
                Units.STANDARD_GRAVITY_M_PER_S2 * (frictionCoefficient * cosRatio - sinRatio);
    }

    /**
     * Runs of one shape in one direction, for whoever asks for many.
     *
     * @param fallRad slope of the ground in that direction, rad, in (−π/2, π/2); falling is positive
     * @throws IllegalArgumentException if the slope is out of range
     */
    public static Runout on(LoadShape shape, double fallRad) {
        if (!(Math.abs(fallRad) < Math.PI / 2)) {
            throw new IllegalArgumentException("fallRad (" + fallRad + ") is out of range.");
        }
        return new Runout(shape, fallRad);
    }

    /**
     * Friction on the ground, on the low side.
     *
     * @source PRACTICE no published figures for slung loads were found: low values for soil and rock
     */
    static double frictionCoefficient(LoadShape shape) {
        return switch (shape) {
            case BAG -> 0.4;
            case BOX -> 0.3;
            case SHEET -> 0.25;
            case ROUND -> 0.08;
        };
    }

    /** Farthest run that is counted, m. @source PRACTICE own setting */
    static double capM(LoadShape shape) {
        return switch (shape) {
            case BAG, BOX -> 60;
            case SHEET -> 60;
            case ROUND -> 200;
        };
    }

    /**
     * Run from the point of impact in one direction, m, in [0, cap].
     *
     * @param alongMPerS level speed in that direction at impact, m/s; 0 where it moves another way
     * @param downMPerS speed downward at impact, m/s, not negative
     * @param fallRad slope of the ground in that direction, rad, in (−π/2, π/2); falling is positive
     * @throws IllegalArgumentException if the slope is out of range
     * @source DERIVED Coulomb friction in the blow and in the slide
     */
    public static double runM(
            LoadShape shape, double alongMPerS, double downMPerS, double fallRad) {
        return on(shape, fallRad).runM(alongMPerS, downMPerS);
    }

    /**
     * The same in its direction.
     *
     * @param alongMPerS level speed in that direction at impact, m/s; 0 where it moves another way
     * @param downMPerS speed downward at impact, m/s, not negative
     */
    public double runM(double alongMPerS, double downMPerS) {
        double along = alongMPerS * cosRatio + downMPerS * sinRatio;
        double into = Math.max(0, downMPerS * cosRatio - alongMPerS * sinRatio);
        double left = along - frictionCoefficient * into;
        boolean rests = slowingMPerS2 > 0;
        if (left <= 0 && rests) {
            return 0;
        }
        double run =
                rests ? left * left / (2 * slowingMPerS2) * cosRatio : Double.POSITIVE_INFINITY;
        return Math.min(capM(shape), run);
    }

    /** Whether a load of that shape does not come to rest by friction alone on such a slope. */
    public static boolean runsAway(LoadShape shape, double slopeRad) {
        return Math.tan(slopeRad) >= frictionCoefficient(shape);
    }
}
