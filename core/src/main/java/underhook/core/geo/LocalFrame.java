package underhook.core.geo;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The job's local plane: transverse Mercator on WGS 84 with scale 1 at its central meridian.
 *
 * <p>Krüger's series to the sixth order in the third flattening; forward and back agree to less than a
 * micrometre within 4° of the central meridian. Scale error grows with the square of the distance from
 * the central meridian: 1.2e-6 at 10 km.
 *
 * @source KARNEY-2011 equations 7 to 12 and 35 to 36
 */
public final class LocalFrame {
    /** WGS 84 semi-major axis, m. @source NGA-WGS84 table 3.1 */
    private static final double SEMI_MAJOR_M = 6378137.0;

    /** WGS 84 flattening. @source NGA-WGS84 table 3.1 */
    private static final double FLATTENING_RATIO = 1 / 298.257223563;

    private final GeoPoint origin;
    private final double eccentricityRatio;
    private final double rectifyingRadiusM;
    private final double[] alpha;
    private final double[] beta;
    private final double originNorthM;

    private LocalFrame(GeoPoint origin) {
        this.origin = origin;
        eccentricityRatio = Math.sqrt(FLATTENING_RATIO * (2 - FLATTENING_RATIO));
        double n = FLATTENING_RATIO / (2 - FLATTENING_RATIO);
        double n2 = n * n;
        double n3 = n2 * n;
        double n4 = n3 * n;
        double n5 = n4 * n;
        double n6 = n5 * n;
        rectifyingRadiusM = SEMI_MAJOR_M / (1 + n) * (1 + n2 / 4 + n4 / 64 + n6 / 256);
        alpha =
                new double[] {
                    n / 2
                            - 2 * n2 / 3
                            + 5 * n3 / 16
                            + 41 * n4 / 180
                            - 127 * n5 / 288
                            + 7891 * n6 / 37800,
                    13 * n2 / 48
                            - 3 * n3 / 5
                            + 557 * n4 / 1440
                            + 281 * n5 / 630
                            - 1983433 * n6 / 1935360,
                    61 * n3 / 240 - 103 * n4 / 140 + 15061 * n5 / 26880 + 167603 * n6 / 181440,
                    49561 * n4 / 161280 - 179 * n5 / 168 + 6601661 * n6 / 7257600,
                    34729 * n5 / 80640 - 3418889 * n6 / 1995840,
                    212378941 * n6 / 319334400
                };
        beta =
                new double[] {
                    n / 2
                            - 2 * n2 / 3
                            + 37 * n3 / 96
                            - n4 / 360
                            - 81 * n5 / 512
                            + 96199 * n6 / 604800,
                    n2 / 48 + n3 / 15 - 437 * n4 / 1440 + 46 * n5 / 105 - 1118711 * n6 / 3870720,
                    17 * n3 / 480 - 37 * n4 / 840 - 209 * n5 / 4480 + 5569 * n6 / 90720,
                    4397 * n4 / 161280 - 11 * n5 / 504 - 830251 * n6 / 7257600,
                    4583 * n5 / 161280 - 108847 * n6 / 3991680,
                    20648693 * n6 / 638668800
                };
        originNorthM = rawForward(origin.latDeg(), 0)[1];
    }

    /** The plane centred on a point; latitudes within 84° of the equator. */
    public static LocalFrame of(GeoPoint origin) {
        if (!(Math.abs(origin.latDeg()) <= 84)) {
            throw new IllegalArgumentException(
                    "latDeg (" + origin.latDeg() + ") of the origin must lie in [-84, 84].");
        }
        return new LocalFrame(origin);
    }

    public GeoPoint origin() {
        return origin;
    }

    /**
     * The point in the plane.
     *
     * @throws IllegalArgumentException if it lies more than 4° of longitude away
     */
    public PlanePoint toPlane(GeoPoint point) {
        double dLonDeg = Math.IEEEremainder(point.lonDeg() - origin.lonDeg(), 360);
        if (!(Math.abs(dLonDeg) <= 4 && Math.abs(point.latDeg()) <= 85)) {
            throw new IllegalArgumentException(
                    point + " is too far from the frame's origin " + origin);
        }
        double[] eastNorth = rawForward(point.latDeg(), dLonDeg);
        return new PlanePoint(eastNorth[0], eastNorth[1] - originNorthM);
    }

    private double[] rawForward(double latDeg, double dLonDeg) {
        double lambda = Math.toRadians(dLonDeg);
        double tau = Math.tan(Math.toRadians(latDeg));
        double tauPrime = toConformal(tau);
        double xiPrime = Math.atan2(tauPrime, Math.cos(lambda));
        double etaPrime = asinh(Math.sin(lambda) / Math.hypot(tauPrime, Math.cos(lambda)));
        double xi = xiPrime;
        double eta = etaPrime;
        for (int j = 1; j <= alpha.length; j++) {
            xi += alpha[j - 1] * Math.sin(2 * j * xiPrime) * Math.cosh(2 * j * etaPrime);
            eta += alpha[j - 1] * Math.cos(2 * j * xiPrime) * Math.sinh(2 * j * etaPrime);
        }
        return new double[] {rectifyingRadiusM * eta, rectifyingRadiusM * xi};
    }

    /** The position on WGS 84. */
    public GeoPoint toGeo(PlanePoint point) {
        double xi = (point.northM() + originNorthM) / rectifyingRadiusM;
        double eta = point.eastM() / rectifyingRadiusM;
        double xiPrime = xi;
        double etaPrime = eta;
        for (int j = 1; j <= beta.length; j++) {
            xiPrime -= beta[j - 1] * Math.sin(2 * j * xi) * Math.cosh(2 * j * eta);
            etaPrime -= beta[j - 1] * Math.cos(2 * j * xi) * Math.sinh(2 * j * eta);
        }
        double sinhEta = Math.sinh(etaPrime);
        double cosXi = Math.cos(xiPrime);
        double tauPrime = Math.sin(xiPrime) / Math.hypot(sinhEta, cosXi);
        double lambda = Math.atan2(sinhEta, cosXi);
        double latDeg = Math.toDegrees(Math.atan(fromConformal(tauPrime)));
        double lonDeg = origin.lonDeg() + Math.toDegrees(lambda);
        return new GeoPoint(latDeg, Math.IEEEremainder(lonDeg, 360));
    }

    /**
     * Angle from true north to grid north at a point, rad, east positive: a true bearing is the grid
     * bearing plus this.
     */
    public double convergenceRad(PlanePoint point) {
        GeoPoint here = toGeo(point);
        double dLonRad = Math.toRadians(Math.IEEEremainder(here.lonDeg() - origin.lonDeg(), 360));
        // Spherical form; within 4° of the meridian the ellipsoid changes it by less than 1e-5 rad.
        return Math.atan(Math.tan(dLonRad) * Math.sin(Math.toRadians(here.latDeg())));
    }

    private double toConformal(double tau) {
        double sinPhi = tau / Math.hypot(1, tau);
        double sigma = Math.sinh(eccentricityRatio * atanh(eccentricityRatio * sinPhi));
        return tau * Math.hypot(1, sigma) - sigma * Math.hypot(1, tau);
    }

    /**
     * Corners, counter-clockwise, of a polygon whose sides touch a circle from outside.
     *
     * @param radiusM above 0, m
     * @param corners at least 3
     */
    public static List<GeoPoint> aroundCircle(GeoPoint centre, double radiusM, int corners) {
        LocalFrame frame = of(centre);
        double stepRad = 2 * Math.PI / corners;
        double cornerM = radiusM / Math.cos(stepRad / 2);
        return IntStream.range(0, corners)
                .mapToObj(
                        i ->
                                frame.toGeo(
                                        new PlanePoint(
                                                cornerM * Math.cos(i * stepRad),
                                                cornerM * Math.sin(i * stepRad))))
                .toList();
    }

    private double fromConformal(double tauPrime) {
        double oneMinusE2 = 1 - eccentricityRatio * eccentricityRatio;
        double tau = tauPrime / oneMinusE2;
        for (int i = 0; i < 6; i++) {
            double now = toConformal(tau);
            double step =
                    (tauPrime - now)
                            / Math.hypot(1, now)
                            * (1 + oneMinusE2 * tau * tau)
                            / (oneMinusE2 * Math.hypot(1, tau));
            tau += step;
            if (Math.abs(step) < 1e-15 * Math.max(1, Math.abs(tau))) {
                break;
            }
        }
        return tau;
    }

    private static double asinh(double x) {
        double a = Math.abs(x);
        double y = Math.log1p(a * (1 + a / (Math.hypot(1, a) + 1)));
        return x < 0 ? -y : y;
    }

    private static double atanh(double x) {
        return 0.5 * Math.log1p(2 * x / (1 - x));
    }
}
