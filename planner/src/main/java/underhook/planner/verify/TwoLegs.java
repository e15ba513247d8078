package underhook.planner.verify;

import java.util.Optional;

/**
 * What two legs of a bridle pull: sides of the triangle first, then the sum of the forces.
 *
 * @source DERIVED Heron's formula for the hook over the load, Cramer's rule for the pulls
 */
final class TwoLegs {
    private TwoLegs() {}

    /**
     * How two legs hang.
     *
     * @param harderKg harder pull of the two, as a mass hung straight, kg
     * @param flatterRad the flatter of the two above the level, rad
     */
    record Hung(double harderKg, double flatterRad) {}

    /**
     * Pull and slope of the legs; empty when it does not hang on both.
     *
     * @param legsM lengths of both legs, m
     * @param pointsM where they hold, along the load from its centre of gravity, m; the first smaller
     * @param aboveM the points above the centre of gravity, m
     */
    static Optional<Hung> find(double massKg, double[] legsM, double[] pointsM, double aboveM) {
        double span = pointsM[1] - pointsM[0];
        double half = (legsM[0] + legsM[1] + span) / 2;
        double square = half * (half - legsM[0]) * (half - legsM[1]) * (half - span);
        if (!(span > 0 && square > 0)) {
            return Optional.empty();
        }
        double up = 2 * Math.sqrt(square) / span;
        double upM = up + aboveM;
        double foot = Math.sqrt(Math.max(0, legsM[0] * legsM[0] - up * up));
        boolean obtuse = legsM[1] * legsM[1] > legsM[0] * legsM[0] + span * span;
        double alongM = pointsM[0] + (obtuse ? -foot : foot);
        // Unit vectors from the hook: along both legs and down to the centre of gravity.
        double down = Math.hypot(alongM, upM);
        double x1 = (pointsM[0] - alongM) / legsM[0];
        double x2 = (pointsM[1] - alongM) / legsM[1];
        double y = -up;
        double y1 = y / legsM[0];
        double y2 = y / legsM[1];
        double turn = x1 * y2 - x2 * y1;
        double share1 = (-alongM / down * y2 + upM / down * x2) / turn;
        double share2 = (x1 * -upM / down + y1 * alongM / down) / turn;
        boolean hangs = upM > 0 && share1 >= 0 && share2 >= 0;
        // Of each leg that part which goes with the plumb line, of one metre.
        double drop1 = (x1 * -alongM + y1 * -upM) / down;
        double drop2 = (x2 * -alongM + y2 * -upM) / down;
        return hangs
                ? Optional.of(
                        new Hung(
                                massKg * Math.max(share1, share2),
                                Math.asin(Math.max(-1, Math.min(1, Math.min(drop1, drop2))))))
                : Optional.empty();
    }
}
