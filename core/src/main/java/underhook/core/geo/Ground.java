package underhook.core.geo;

import java.util.Objects;
import java.util.Optional;

/**
 * The ground and what grows on it.
 *
 * @param frame the local plane that the height fields are laid over
 * @param terrain bare ground, m AMSL
 * @param canopy height of the trees above the ground, m, when a raster of it was given
 * @param canopySpreadM how far the canopy may be off either way, m
 */
public record Ground(
        LocalFrame frame, HeightField terrain, Optional<HeightField> canopy, double canopySpreadM) {
    public Ground {
        Objects.requireNonNull(frame, "frame");
        Objects.requireNonNull(terrain, "terrain");
        if (!(canopySpreadM >= 0)) {
            throw new IllegalArgumentException(
                    "canopySpreadM (" + canopySpreadM + ") must not be negative.");
        }
    }
}
