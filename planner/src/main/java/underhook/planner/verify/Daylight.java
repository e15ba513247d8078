package underhook.planner.verify;

import java.time.Instant;
import java.util.Optional;
import underhook.core.geo.GeoPoint;

/**
 * Sunrise and sunset of a day: the sun's centre 0.833° below a level horizon.
 *
 * <p>Low-accuracy solar position, good to about a minute of time between the polar circles.
 *
 * @source NOAA-SOLAR solar calculation details, general equations
 */
record Daylight(Instant sunrise, Instant sunset) {
    /** Depression of the sun's centre at rise and set, rad. @source NOAA-SOLAR sunrise definition */
    private static final double HORIZON_RAD = Math.toRadians(-0.833);

    private static final double DAY_S = 86400.0;

    /** Julian day of 1970-01-01T00:00Z. */
    private static final double EPOCH_JULIAN_DAY_S = 2440587.5 * DAY_S;

    /**
     * The light in which work that begins then lies, else the next one; empty where the sun does not rise.
     *
     * <p>Where the sun does not set it lasts longer than any duty either way.
     */
    static Optional<Daylight> from(Instant begin, GeoPoint at) {
        return about(begin, at)
                .flatMap(
                        light ->
                                light.sunset().isBefore(begin)
                                        ? about(begin.plusSeconds(Math.round(DAY_S)), at)
                                        : Optional.of(light));
    }

    /** The light about the sun's transit that is nearest to a moment. */
    private static Optional<Daylight> about(Instant near, GeoPoint at) {
        Instant transit = near;
        for (int i = 0; i < 3; i++) {
            transit = transit.minusMillis(Math.round(pastTransitS(transit, at) * 1000));
        }
        double[] half = new double[2];
        for (int side = 0; side < 2; side++) {
            double offset = side == 0 ? -DAY_S / 4 : DAY_S / 4;
            for (int i = 0; i < 4; i++) {
                double cos = hourAngleRatio(transit.plusMillis(Math.round(offset * 1000)), at);
                if (cos > 1) {
                    return Optional.empty();
                }
                double angle = cos < -1 ? 3 * Math.PI : Math.acos(cos);
                offset = Math.copySign(angle / (2 * Math.PI) * DAY_S, offset);
            }
            half[side] = offset;
        }
        return Optional.of(
                new Daylight(
                        transit.plusMillis(Math.round(half[0] * 1000)),
                        transit.plusMillis(Math.round(half[1] * 1000))));
    }

    private static double hourAngleRatio(Instant when, GeoPoint at) {
        double lat = Math.toRadians(at.latDeg());
        double decl = new Sun(when).declinationRad;
        return (Math.sin(HORIZON_RAD) - Math.sin(lat) * Math.sin(decl))
                / (Math.cos(lat) * Math.cos(decl));
    }

    /** Seconds by which a time is past the sun's transit, in [-43200, 43200]. */
    private static double pastTransitS(Instant when, GeoPoint at) {
        double utc = Math.floorMod(when.getEpochSecond(), 86400L) + when.getNano() / 1e9;
        double solar = utc + new Sun(when).timeEquationS + at.lonDeg() * 240;
        return Math.IEEEremainder(solar - DAY_S / 2, DAY_S);
    }

    /** Declination and equation of time, in the symbols of the source. */
    static final class Sun {
        final double declinationRad;
        final double timeEquationS;

        Sun(Instant when) {
            double jd = (when.getEpochSecond() + EPOCH_JULIAN_DAY_S) / DAY_S;
            double t = (jd - 2451545.0) / 36525.0;
            double l0 = Math.toRadians((280.46646 + t * (36000.76983 + t * 0.0003032)) % 360);
            double m = Math.toRadians(357.52911 + t * (35999.05029 - 0.0001537 * t));
            double e = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
            double c =
                    Math.sin(m) * (1.914602 - t * (0.004817 + 0.000014 * t))
                            + Math.sin(2 * m) * (0.019993 - 0.000101 * t)
                            + Math.sin(3 * m) * 0.000289;
            double omega = Math.toRadians(125.04 - 1934.136 * t);
            double lambda = l0 + Math.toRadians(c - 0.00569 - 0.00478 * Math.sin(omega));
            double seconds = 21.448 - t * (46.8150 + t * (0.00059 - t * 0.001813));
            double epsilon =
                    Math.toRadians(23 + (26 + seconds / 60) / 60 + 0.00256 * Math.cos(omega));
            declinationRad = Math.asin(Math.sin(epsilon) * Math.sin(lambda));
            double y = Math.pow(Math.tan(epsilon / 2), 2);
            double eot =
                    y * Math.sin(2 * l0)
                            - 2 * e * Math.sin(m)
                            + 4 * e * y * Math.sin(m) * Math.cos(2 * l0)
                            - 0.5 * y * y * Math.sin(4 * l0)
                            - 1.25 * e * e * Math.sin(2 * m);
            timeEquationS = eot / (2 * Math.PI) * DAY_S;
        }
    }
}
