package underhook.planner.verify;

import java.time.Instant;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;

/**
 * The sun as a pilot over a place sees it: direction, height with refraction, and the terrain below it.
 *
 * @param azimuthTrueRad direction, rad from true north
 * @param elevationRad of its centre over the horizontal, refraction counted, rad
 * @param terrainRad of the highest terrain in its direction, rad, not below 0
 * @source NOAA-SOLAR solar calculation details, general equations and refraction
 */
record SunSight(double azimuthTrueRad, double elevationRad, double terrainRad) {
    /** As far as terrain is looked at, m. @source PRACTICE */
    private static final double REACH_M = 5000;

    private static final double EARTH_RADIUS_M = 6_371_000;

    /** What refraction leaves of the Earth's bend. @source PRACTICE usual in surveying */
    private static final double BEND_RATIO = 0.87;

    /** What is seen of the disc before its centre is, rad. */
    private static final double DISC_RAD = Math.toRadians(0.27);

    /** Nearer than this it dazzles. @source PRACTICE as docs/calculations/sun.md has it */
    private static final double DAZZLE_RAD = Math.toRadians(30);

    /** Two algorithms of the sun, two walks over the terrain, a bearing in a file, rad. */
    private static final double TOLERANCE_RAD = Math.toRadians(0.3);

    /** From so high over a place, with the terrain. */
    static SunSight over(Ground ground, GeoPoint at, double eyeAglM, Instant when) {
        SunSight open = overSea(at, when);
        double gridRad = open.azimuthTrueRad - Plane.convergenceRad(ground.frame(), at);
        return new SunSight(
                open.azimuthTrueRad, open.elevationRad, terrainRad(ground, at, eyeAglM, gridRad));
    }

    /** With nothing in its way. */
    static SunSight overSea(GeoPoint at, Instant when) {
        Daylight.Sun sun = new Daylight.Sun(when);
        double lat = Math.toRadians(at.latDeg());
        double utcS = Math.floorMod(when.getEpochSecond(), 86400L) + when.getNano() / 1e9;
        double hour = Math.toRadians((utcS + sun.timeEquationS) / 240 + at.lonDeg() - 180);
        double up =
                Math.sin(lat) * Math.sin(sun.declinationRad)
                        + Math.cos(lat) * Math.cos(sun.declinationRad) * Math.cos(hour);
        double east = -Math.cos(sun.declinationRad) * Math.sin(hour);
        double north =
                Math.cos(lat) * Math.sin(sun.declinationRad)
                        - Math.sin(lat) * Math.cos(sun.declinationRad) * Math.cos(hour);
        double elevation = Math.asin(Math.max(-1, Math.min(1, up)));
        return new SunSight(Math.atan2(east, north), refractedRad(elevation), 0);
    }

    private static double refractedRad(double elevationRad) {
        double deg = Math.toDegrees(elevationRad);
        double tan = Math.tan(elevationRad);
        double seconds;
        if (deg > 85) {
            seconds = 0;
        } else if (deg > 5) {
            seconds = 58.1 / tan - 0.07 / Math.pow(tan, 3) + 0.000086 / Math.pow(tan, 5);
        } else if (deg > -0.575) {
            seconds = 1735 + deg * (-518.2 + deg * (103.4 + deg * (-12.79 + deg * 0.711)));
        } else {
            seconds = -20.774 / tan;
        }
        return elevationRad + Math.toRadians(seconds / 3600);
    }

    private static double terrainRad(Ground ground, GeoPoint at, double eyeAglM, double gridRad) {
        HeightField terrain = ground.terrain();
        PlanePoint place = ground.frame().toPlane(at);
        if (!terrain.covers(place.eastM(), place.northM())) {
            return 0;
        }
        double eyeAmslM = terrain.heightM(place.eastM(), place.northM()) + eyeAglM;
        double steepest = 0;
        double stepM = terrain.cellSizeM() / 2;
        double sin = Math.sin(gridRad);
        double cos = Math.cos(gridRad);
        for (double far = stepM; far <= REACH_M; far += stepM) {
            double eastM = place.eastM() + far * sin;
            double northM = place.northM() + far * cos;
            if (!terrain.covers(eastM, northM)) {
                break;
            }
            double bendM = BEND_RATIO * far * far / (2 * EARTH_RADIUS_M);
            steepest =
                    Math.max(steepest, (terrain.heightM(eastM, northM) - bendM - eyeAmslM) / far);
        }
        return Math.atan(steepest);
    }

    /** Whether it dazzles somebody who looks level in a direction, surely or perhaps. */
    boolean dazzles(double lookTrueRad, boolean surely) {
        double givenRad = surely ? -TOLERANCE_RAD : TOLERANCE_RAD;
        double offRad = Math.acos(Math.cos(elevationRad) * Math.cos(azimuthTrueRad - lookTrueRad));
        return elevationRad + DISC_RAD > terrainRad - givenRad && offRad < DAZZLE_RAD + givenRad;
    }
}
