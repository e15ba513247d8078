package underhook.core.job;

import java.util.List;
import java.util.Objects;
import underhook.core.geo.GeoPoint;

/**
 * A wire or a line of wires between supports.
 *
 * @param supports positions of the supports, or of the bends where only these are known
 * @param highestM highest conductor or earth wire above ground at a support, m
 * @param lateralM how far its position may be off, m
 * @param live whether it is live
 * @param voltageV nominal voltage, V; 0 when it is no power line
 * @param crossing whether it may be crossed with a load
 * @param crossingAboveM least height of load and line above the highest wire when crossing, m
 * @param crossingOffSquareRad most departure from a right angle when crossing, rad
 * @param registered whether it stands in the official obstacle file
 * @param hanging how it hangs, as far as known
 * @param source file it is from
 */
public record Wire(
        String id,
        List<GeoPoint> supports,
        double highestM,
        double lateralM,
        boolean live,
        double voltageV,
        CrossingRule crossing,
        double crossingAboveM,
        double crossingOffSquareRad,
        boolean registered,
        Hanging hanging,
        String source) {
    public Wire {
        Objects.requireNonNull(id, "id");
        supports = List.copyOf(supports);
        if (supports.size() < 2) {
            throw new IllegalArgumentException("wire " + id + " needs two supports.");
        }
        if (!hanging.supportTopsM().isEmpty() && hanging.supportTopsM().size() != supports.size()) {
            throw new IllegalArgumentException("wire " + id + " needs a height for each support.");
        }
        if (!(highestM > 0 && lateralM >= 0 && voltageV >= 0 && crossingAboveM > 0)) {
            throw new IllegalArgumentException("wire " + id + " has a value out of range.");
        }
        if (!(crossingOffSquareRad >= 0 && crossingOffSquareRad <= Math.PI / 2)) {
            throw new IllegalArgumentException(
                    "crossing angle of wire " + id + " is out of range.");
        }
    }
}
