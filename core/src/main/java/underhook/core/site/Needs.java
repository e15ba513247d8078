package underhook.core.site;

import java.util.Objects;
import underhook.core.job.Rules;

/**
 * The distances that an operator asks for at a place.
 *
 * @param rotorClearanceM for rotor, tail and fuselage, m
 * @param wireClearanceM for every part to a wire, m
 * @param canopyElsewhereM trees assumed where neither survey nor raster says, m above ground
 * @param margins for line and load, for the position of the place, for the way in
 */
public record Needs(
        double rotorClearanceM,
        double wireClearanceM,
        double canopyElsewhereM,
        Rules.Margins margins) {
    public Needs {
        if (!(rotorClearanceM >= 0 && wireClearanceM >= 0 && canopyElsewhereM >= 0)) {
            throw new IllegalArgumentException("needed distances must not be negative.");
        }
        Objects.requireNonNull(margins, "margins");
    }

    public static Needs of(Rules rules) {
        return new Needs(
                rules.distances().rotorClearanceM(),
                rules.distances().wireClearanceM(),
                rules.distances().canopyLegM(),
                rules.margins());
    }
}
