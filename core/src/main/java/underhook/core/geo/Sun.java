package underhook.core.geo;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import underhook.core.unit.Units;

/**
 * The sun's place in the sky, its rise and set, and civil twilight.
 *
 * <p>Apparent ecliptic longitude from the mean orbit with the equation of the centre, aberration and the
 * main term of nutation; sidereal time; parallax; refraction of standard air. Position within 0.01° from
 * 1950 to 2100 (measured against the NREL algorithm in the tests); times of rise and set within 5 s for
 * latitudes up to 53°, and within the seconds that the sun takes for 0.01° beyond. Real refraction at the
 * horizon differs by minutes of time from day to day, so no use is made of the seconds.
 *
 * <p>Symbols: t Julian centuries of terrestrial time from J2000; λ apparent longitude; ε obliquity;
 * α right ascension; δ declination; H hour angle; φ latitude.
 *
 * @source MEEUS-1998 chapters 12, 13, 22, 25 and 40, the lower-accuracy solar position
 */
public final class Sun {
    /** Terrestrial minus universal time, s; it was 29 in 1950 and may be 90 in 2100. @source PRACTICE */
    private static final double TERRESTRIAL_LESS_UNIVERSAL_S = 69;

    private static final double J2000_EPOCH_S = 946728000.0;
    private static final double DAY_S = 86400;
    private static final double EARLIEST_EPOCH_S = -631152000.0;
    private static final double LATEST_EPOCH_S = 4102444800.0;

    /** Steps of the search for events, s; the sun's curve is smooth over them. */
    private static final long STEP_S = 600;

    /** No hump or hollow inside a step is higher than this, rad. */
    private static final double NEAR_RAD = 0.01;

    private Sun() {}

    /** Geocentric declination, hour angle at the place, distance over one astronomical unit. */
    private record Apparent(double declinationRad, double hourAngleRad, double distanceRatio) {}

    /**
     * Where the sun stands, seen from a place at sea level.
     *
     * @param when from 1950 to 2100
     * @throws IllegalArgumentException outside those years
     * @source MEEUS-1998 chapters 13 and 25; refraction NREL-SPA equation 42
     */
    public static SunPosition position(GeoPoint place, Instant when) {
        double epochS = epochS(when);
        Apparent sun = apparent(place, epochS);
        double latitude = Math.toRadians(place.latDeg());
        double geocentric = elevationRad(latitude, sun);
        double parallax = Math.toRadians(8.794 / 3600) / sun.distanceRatio() * Math.cos(geocentric);
        double geometric = geocentric - parallax;
        double azimuth =
                Math.PI
                        + Math.atan2(
                                Math.sin(sun.hourAngleRad()),
                                Math.cos(sun.hourAngleRad()) * Math.sin(latitude)
                                        - Math.tan(sun.declinationRad()) * Math.cos(latitude));
        return new SunPosition(
                Units.wrapTwoPiRad(azimuth), geometric, geometric + refractionRad(geometric));
    }

    /**
     * The first time on a local date at which the event happens; empty when it does not, as in polar day
     * or night.
     *
     * <p>The date runs from midnight to midnight of the zone, so a place far from its zone may see the
     * sunset before the sunrise.
     *
     * @param date from 1950 to 2099
     * @param zone whose date it is
     * @throws IllegalArgumentException outside those years
     * @source NREL-SPA appendix A.2 for the definition; crossing found by bisection on the position itself
     */
    public static Optional<Instant> find(
            SunEvent event, GeoPoint place, LocalDate date, ZoneId zone) {
        return find(
                event,
                place,
                date.atStartOfDay(zone).toInstant(),
                date.plusDays(1).atStartOfDay(zone).toInstant());
    }

    /**
     * The first time at or after one moment and before another at which the event happens, down to the
     * whole second; empty when it does not.
     *
     * @param begin from 1950 to 2100, as {@code end}
     * @throws IllegalArgumentException outside those years
     * @source NREL-SPA appendix A.2 for the definition; crossing found by bisection on the position itself
     */
    public static Optional<Instant> find(
            SunEvent event, GeoPoint place, Instant begin, Instant end) {
        double to = epochS(end);
        for (double at = epochS(begin); at < to; at += STEP_S) {
            double rise = riseS(event, place, at, Math.min(to, at + STEP_S));
            if (rise < to) {
                return Optional.of(Instant.ofEpochSecond((long) Math.floor(rise)));
            }
        }
        return Optional.empty();
    }

    /**
     * Whether the sun's centre is above the event's depth at a time: light enough, for a day that knows
     * neither dawn nor dusk.
     *
     * @throws IllegalArgumentException outside 1950 to 2100
     * @source DERIVED same elevation as the events
     */
    public static boolean isAbove(SunEvent event, GeoPoint place, Instant when) {
        return depthRad(event, place, epochS(when)) >= 0;
    }

    /** Time in a short span at which the height turns positive; infinite when it does not. */
    private static double riseS(SunEvent event, GeoPoint place, double fromS, double toS) {
        double first = heightRad(event, place, fromS);
        double last = heightRad(event, place, toS);
        if (first < 0 && last >= 0) {
            return crossingS(event, place, fromS, toS);
        }
        boolean sameSide = first < 0 == last < 0;
        if (sameSide && Math.min(Math.abs(first), Math.abs(last)) < NEAR_RAD) {
            // Between two looks on the same side the sun may cross and come back.
            double turn = turningS(event, place, fromS, toS);
            boolean belowAtTurn = heightRad(event, place, turn) < 0;
            if (first < 0 && !belowAtTurn) {
                return crossingS(event, place, fromS, turn);
            }
            if (first >= 0 && belowAtTurn) {
                return crossingS(event, place, turn, toS);
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    /** When the height turns from negative to positive; it is negative at the start only. */
    private static double crossingS(SunEvent event, GeoPoint place, double fromS, double toS) {
        double low = fromS;
        double high = toS;
        while (high - low > 0.01) {
            double middle = (low + high) / 2;
            if (heightRad(event, place, middle) >= 0) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Time of the hump or hollow in a short span; one of its ends where there is none. */
    private static double turningS(SunEvent event, GeoPoint place, double fromS, double toS) {
        double middle = (fromS + toS) / 2;
        double chord = (heightRad(event, place, fromS) + heightRad(event, place, toS)) / 2;
        double sign = heightRad(event, place, middle) >= chord ? 1 : -1;
        double low = fromS;
        double high = toS;
        while (high - low > 1) {
            double third = (high - low) / 3;
            if (sign * heightRad(event, place, low + third)
                    < sign * heightRad(event, place, high - third)) {
                low += third;
            } else {
                high -= third;
            }
        }
        return (low + high) / 2;
    }

    /** Above the event's depth, rad, counted so that the event is where it turns positive. */
    private static double heightRad(SunEvent event, GeoPoint place, double epochS) {
        double above = depthRad(event, place, epochS);
        return event.isRising() ? above : -above;
    }

    private static double depthRad(SunEvent event, GeoPoint place, double epochS) {
        return elevationRad(Math.toRadians(place.latDeg()), apparent(place, epochS))
                - event.elevationGeometricRad();
    }

    private static double elevationRad(double latitudeRad, Apparent sun) {
        double sine =
                Math.sin(latitudeRad) * Math.sin(sun.declinationRad())
                        + Math.cos(latitudeRad)
                                * Math.cos(sun.declinationRad())
                                * Math.cos(sun.hourAngleRad());
        return Math.asin(Math.max(-1, Math.min(1, sine)));
    }

    private static Apparent apparent(GeoPoint place, double epochS) {
        double days = (epochS - J2000_EPOCH_S) / DAY_S;
        double t = (days + TERRESTRIAL_LESS_UNIVERSAL_S / DAY_S) / 36525;
        double meanLongitude = 280.46646 + t * (36000.76983 + t * 0.0003032);
        double anomaly = Math.toRadians(357.52911 + t * (35999.05029 - t * 0.0001537));
        double eccentricity = 0.016708634 - t * (0.000042037 + t * 0.0000001267);
        double centre =
                (1.914602 - t * (0.004817 + t * 0.000014)) * Math.sin(anomaly)
                        + (0.019993 - t * 0.000101) * Math.sin(2 * anomaly)
                        + 0.000289 * Math.sin(3 * anomaly);
        double trueAnomaly = anomaly + Math.toRadians(centre);
        double distanceAu =
                1.000001018
                        * (1 - eccentricity * eccentricity)
                        / (1 + eccentricity * Math.cos(trueAnomaly));
        double node = Math.toRadians(125.04 - 1934.136 * t);
        double lambda = Math.toRadians(meanLongitude + centre - 0.00569 - 0.00478 * Math.sin(node));
        double epsilon =
                Math.toRadians(
                        23.4392911
                                - t * (0.013004167 + t * (1.64e-7 - t * 5.04e-7))
                                + 0.00256 * Math.cos(node));
        double alpha = Math.atan2(Math.cos(epsilon) * Math.sin(lambda), Math.cos(lambda));
        double delta = Math.asin(Math.sin(epsilon) * Math.sin(lambda));
        double ut = days / 36525;
        double siderealDeg =
                280.46061837
                        + 360.98564736629 * days
                        + ut * ut * 0.000387933
                        - 0.00478 * Math.sin(node) * Math.cos(epsilon);
        double hourAngle = Math.toRadians((siderealDeg + place.lonDeg()) % 360) - alpha;
        return new Apparent(delta, hourAngle, distanceAu);
    }

    /** Lift by standard air, rad; none once the whole disc is below the horizon. */
    private static double refractionRad(double elevationRad) {
        double elevationDeg = Math.toDegrees(elevationRad);
        if (elevationDeg < -(0.26667 + 0.5667)) {
            return 0;
        }
        double tangent = Math.tan(Math.toRadians(elevationDeg + 10.3 / (elevationDeg + 5.11)));
        double standardAir = 1013.25 / 1010 * (283 / 288.15);
        // The formula turns very slightly negative at the zenith.
        return Math.max(0, Math.toRadians(standardAir * 1.02 / (60 * tangent)));
    }

    private static double epochS(Instant when) {
        double epochS = when.getEpochSecond() + when.getNano() * 1e-9;
        if (!(epochS >= EARLIEST_EPOCH_S && epochS <= LATEST_EPOCH_S)) {
            throw new IllegalArgumentException("when (" + when + ") must lie in 1950 to 2099.");
        }
        return epochS;
    }
}
