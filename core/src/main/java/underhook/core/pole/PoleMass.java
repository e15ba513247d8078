package underhook.core.pole;

import java.util.List;
import java.util.Locale;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.load.DensityBand;
import underhook.core.unit.Ranges;

/**
 * What a pole weighs that nobody weighed, and where it balances.
 *
 * @param lightestKg counts for flying, kg
 * @param likelyKg kg
 * @param heaviestKg counts for lifting, kg
 * @param centreFromButtM centre of gravity from the butt, m; wet ground-line wood moves it butt-ward
 */
public record PoleMass(
        double lightestKg, double likelyKg, double heaviestKg, double centreFromButtM) {
    /**
     * From shape and density; fittings on the pole come on top.
     *
     * @source DERIVED volume of a cone's frustum times density
     */
    public static PoleMass of(PoleShape shape, DensityBand density) {
        double volume = shape.volumeM3();
        return new PoleMass(
                volume * density.lightestKgPerM3(),
                volume * density.likelyKgPerM3(),
                volume * density.heaviestKgPerM3(),
                shape.centreFromButtM());
    }

    /** Whether a stated mass can be that of this pole. */
    public boolean isPlausible(double statedKg) {
        return statedKg >= lightestKg && statedKg <= heaviestKg;
    }

    /**
     * What must be said of a stated mass: CAUTION outside the band, for the load is not what the list
     * says, or not as big.
     *
     * @param subject id of the load
     * @param statedKg with the fittings taken off, kg, above 0
     */
    public List<Finding> findings(String subject, double statedKg) {
        Ranges.requirePositive(statedKg, "statedKg");
        if (isPlausible(statedKg)) {
            return List.of();
        }
        boolean light = statedKg < lightestKg;
        String band =
                String.format(
                        Locale.ROOT, "%.0f to %.0f", Math.floor(lightestKg), Math.ceil(heaviestKg));
        String stated = String.format(Locale.ROOT, "%.0f", statedKg);
        String perhaps =
                light
                        ? " Perhaps the pole is wet, or pounds and kilograms or the sizes are mixed up."
                        : " Perhaps fittings are counted in, or pounds and kilograms are mixed up.";
        return List.of(
                new Finding(
                        FindingCode.MASS_IMPLAUSIBLE,
                        Severity.CAUTION,
                        subject,
                        stated,
                        band,
                        "kg",
                        "DERIVED",
                        "A pole of this size weighs "
                                + band
                                + " kg, the list says "
                                + stated
                                + " kg. Weigh it."
                                + perhaps));
    }
}
