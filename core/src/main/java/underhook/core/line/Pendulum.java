package underhook.core.line;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/** A load swinging on a line without drag, in closed forms. */
public final class Pendulum {
    private Pendulum() {}

    /**
     * Full period, s, exact for any amplitude.
     *
     * <p>T = 2π √(L/g) / agm(1, cos(amplitude/2)); the arithmetic-geometric mean is run to the last digit.
     *
     * @param lengthM hook to the load's centre, m, above 0
     * @param amplitudeRad largest angle from plumb, rad, in [0, π/2]: beyond, a line goes slack
     * @throws IllegalArgumentException if an argument is out of range
     * @source DERIVED complete elliptic integral of the first kind by the arithmetic-geometric mean
     */
    public static double periodS(double lengthM, double amplitudeRad) {
        if (!(lengthM > 0 && lengthM < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("lengthM (" + lengthM + ") must be above 0.");
        }
        if (!(amplitudeRad >= 0 && amplitudeRad <= Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "amplitudeRad (" + amplitudeRad + ") must lie in [0, π/2].");
        }
        double arithmetic = 1;
        double geometric = Math.cos(amplitudeRad / 2);
        for (int i = 0; i < 6; i++) {
            double next = (arithmetic + geometric) / 2;
            geometric = Math.sqrt(arithmetic * geometric);
            arithmetic = next;
        }
        return 2 * Math.PI * Math.sqrt(lengthM / Units.STANDARD_GRAVITY_M_PER_S2) / arithmetic;
    }

    /**
     * Period of a small swing when the machine above is free to give way, s.
     *
     * <p>Shorter than under a fixed hook. A machine held over its place by hand lies between the two.
     *
     * @param lengthM hook to the load's centre, m, above 0
     * @param loadOverMachineRatio load mass over machine mass, not negative
     * @source DERIVED two masses on a line, level momentum kept: ω² = g/L (1 + m/M)
     */
    public static double freePeriodS(double lengthM, double loadOverMachineRatio) {
        Ranges.requireNotNegative(loadOverMachineRatio, "loadOverMachineRatio");
        return periodS(lengthM, 0) / Math.sqrt(1 + loadOverMachineRatio);
    }

    /**
     * Period of a small swing of an even rod that hangs by its end, s: a pole without a line.
     *
     * @param lengthM of the rod, m, above 0
     * @source DERIVED moment of inertia m l²/3 about the end
     */
    public static double rodPeriodS(double lengthM) {
        return periodS(lengthM * 2 / 3, 0);
    }
}
