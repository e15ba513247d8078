package underhook.core.job;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import underhook.core.geo.GeoPoint;

/**
 * A place of the job.
 *
 * @param statedElevationAmslM elevation that the file states, m AMSL, when it does
 * @param canopyM height of the trees around it as surveyed, m above ground, when stated; else the
 *     canopy raster counts
 * @param canopySpreadM how far that height may be off either way, m
 * @param clearingRadiusM no trees within this distance, m
 * @param exposureFactor wind speed here over wind speed of the forecast
 * @param agreed whether the owner has agreed to its use; a place not agreed is not used
 * @param standing whether the machine may stand here with the engine off
 * @param fuel whether fuel is kept here
 * @param landingAsked whether somebody asks to land people here
 * @param guyAzimuthsTrueRad planned guys, rad from true north; empty when none are planned
 */
public record Place(
        PlaceId id,
        PlaceKind kind,
        String name,
        GeoPoint position,
        OptionalDouble statedElevationAmslM,
        OptionalDouble canopyM,
        double canopySpreadM,
        double clearingRadiusM,
        double exposureFactor,
        boolean agreed,
        boolean standing,
        boolean fuel,
        boolean landingAsked,
        List<Double> guyAzimuthsTrueRad,
        String remarks) {
    public Place {
        Objects.requireNonNull(id, "id");
        guyAzimuthsTrueRad = List.copyOf(guyAzimuthsTrueRad);
        if (!(exposureFactor > 0 && canopySpreadM >= 0 && clearingRadiusM >= 0)) {
            throw new IllegalArgumentException("place " + id + " has a value out of range.");
        }
    }

    /** Whether people receive what is set down there: at sites always. */
    public boolean isSite() {
        return kind == PlaceKind.SITE;
    }

    /** The same as if its owner had agreed to its use. */
    public Place asIfAgreed() {
        return new Place(
                id,
                kind,
                name,
                position,
                statedElevationAmslM,
                canopyM,
                canopySpreadM,
                clearingRadiusM,
                exposureFactor,
                true,
                standing,
                fuel,
                landingAsked,
                guyAzimuthsTrueRad,
                remarks);
    }
}
