package underhook.core.pole;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * A pole on a hinged foot, held by one guy against leaning straight away from it.
 *
 * <p>The guy's angle above the horizontal is held at its upright value; with a fixed anchor the angle
 * flattens a little as the pole leans and the real pull is lower (6 % at 3°).
 *
 * @param massKg pole with fittings, kg, above 0
 * @param centreOfGravityM centre of gravity from the foot, m, above 0
 * @param attachM guy's attachment from the foot, m, above 0
 * @param guyAngleRad guy above the horizontal when upright, rad, in [0, π/2)
 */
public record GuyedPole(
        double massKg, double centreOfGravityM, double attachM, double guyAngleRad) {
    public GuyedPole {
        Ranges.requirePositive(massKg, "massKg");
        Ranges.requirePositive(centreOfGravityM, "centreOfGravityM");
        Ranges.requirePositive(attachM, "attachM");
        if (!(guyAngleRad >= 0 && guyAngleRad < Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "guyAngleRad (" + guyAngleRad + ") must lie in [0, π/2).");
        }
    }

    /**
     * Pull of the guy, N.
     *
     * @param leanRad lean from plumb, away from the guy, rad, in [0, π/2 − guy angle)
     * @throws IllegalArgumentException outside that range: the guy would no longer hold
     * @source DERIVED moments about the foot: T = m g c sin(lean) / (h cos(lean + guy angle))
     */
    public double tensionN(double leanRad) {
        if (!(leanRad >= 0 && leanRad + guyAngleRad < Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "leanRad ("
                            + leanRad
                            + ") must not be negative and, with guyAngleRad ("
                            + guyAngleRad
                            + "), stay below π/2.");
        }
        return massKg
                * Units.STANDARD_GRAVITY_M_PER_S2
                * centreOfGravityM
                * Math.sin(leanRad)
                / (attachM * Math.cos(leanRad + guyAngleRad));
    }
}
