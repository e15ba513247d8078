package underhook.adapter.job;

import java.util.Optional;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.ReferenceSystem;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;

/**
 * A pair of coordinates as a file states it, and where it is.
 *
 * @param at line and field of the first of the two
 */
record Position(Source source, At at, Pair pair, GeoPoint point) {
    /** Two coordinates in a reference system. */
    record Pair(ReferenceSystem system, double x, double y) {
        /** Where it is; empty when the system does not reach there. */
        Optional<GeoPoint> toGeo() {
            try {
                return Optional.of(system.toGeo(x, y));
            } catch (IllegalArgumentException outside) {
                return Optional.empty();
            }
        }

        /** The same with its coordinates the other way round. */
        Pair swapped() {
            return new Pair(system, y, x);
        }

        String typed() {
            return plain(x) + " " + plain(y);
        }

        private static String plain(double value) {
            return new java.math.BigDecimal(Double.toString(value)).toPlainString();
        }
    }

    /** Finds where a pair is; empty, with a fault, when it is nowhere. */
    static Optional<Position> of(Source source, At at, Pair pair) {
        Optional<GeoPoint> point = pair.toGeo();
        if (point.isEmpty()) {
            if (pair.swapped().toGeo().isPresent()) {
                reportSwapped(source, at, pair);
            } else {
                source.fault(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        at,
                        "is nowhere in " + pair.system.name(),
                        new Found(pair.typed(), "coordinates of the stated reference system"));
            }
        }
        return point.map(there -> new Position(source, at, pair, there));
    }

    static void reportSwapped(Source source, At at, Pair pair) {
        source.fault(
                FindingCode.AXES_SWAPPED,
                at,
                "is far off. Perhaps easting and northing are swapped",
                new Found(pair.typed(), "x is easting or longitude, y is northing or latitude"));
    }
}
