package underhook.core.air;

import underhook.core.unit.Ranges;
import underhook.core.unit.Units;

/**
 * The standard atmosphere of the troposphere, and the real air measured against it.
 *
 * <p>Temperature falls by 6.5 K per km of geopotential height; pressure follows from hydrostatic balance
 * of a perfect gas. Heights are geopotential unless a name says otherwise; below 3000 m the geometric
 * height is larger by less than 1.5 m. The formulas are exact for the model; printed tables agree to
 * their last digit.
 *
 * <p>Symbols: T0, p0 sea-level temperature and pressure; L lapse; R gas constant of dry air; n = g/(R L).
 *
 * @source ICAO-7488 tables and section 3, troposphere
 */
public final class Atmosphere {
    /** Temperature at the standard zero, K. @source ICAO-7488 table A */
    public static final double SEA_LEVEL_TEMPERATURE_K = 288.15;

    /** Pressure at the standard zero, Pa. @source ICAO-7488 table A */
    public static final double SEA_LEVEL_PRESSURE_PA = 101325.0;

    /** Density at the standard zero, kg/m³. @source ICAO-7488 table A */
    public static final double SEA_LEVEL_DENSITY_KG_PER_M3 = 1.225;

    /** Lowest height of the formulas, m. @source ICAO-7488 lowest row of the tables */
    public static final double LOWEST_M = -5000.0;

    /** Highest height of the formulas, m: the tropopause. @source ICAO-7488 table D */
    public static final double HIGHEST_M = 11000.0;

    /** Lapse, K/m. @source ICAO-7488 table D */
    private static final double LAPSE_K_PER_M = 0.0065;

    /** Specific gas constant of dry air, J/(kg K). @source ICAO-7488 table A */
    private static final double GAS_CONSTANT_J_PER_KG_K = 287.05287;

    /** Specific gas constant of water vapour, J/(kg K). @source PRACTICE 8314.46 over 18.016 */
    private static final double VAPOUR_GAS_CONSTANT_J_PER_KG_K = 461.495;

    /** Ratio of specific heats of air. @source ICAO-7488 table A */
    private static final double HEAT_RATIO = 1.4;

    /** Radius that turns geometric into geopotential height, m. @source ICAO-7488 section 2 */
    private static final double GEOPOTENTIAL_RADIUS_M = 6356766.0;

    private static final double PRESSURE_POWER_COEFFICIENT =
            Units.STANDARD_GRAVITY_M_PER_S2 / (GAS_CONSTANT_J_PER_KG_K * LAPSE_K_PER_M);

    private Atmosphere() {}

    /**
     * Standard air at a height.
     *
     * @param geopotentialM geopotential height above the standard zero, m, in [-5000, 11000]
     * @throws IllegalArgumentException outside that range
     * @source ICAO-7488 equations of the troposphere
     */
    public static AirState isa(double geopotentialM) {
        double temperatureK = isaTemperatureK(geopotentialM);
        double pressurePa =
                SEA_LEVEL_PRESSURE_PA
                        * Math.pow(
                                temperatureK / SEA_LEVEL_TEMPERATURE_K, PRESSURE_POWER_COEFFICIENT);
        return new AirState(
                pressurePa, temperatureK, pressurePa / (GAS_CONSTANT_J_PER_KG_K * temperatureK));
    }

    /**
     * Standard temperature at a height, K.
     *
     * @param geopotentialM geopotential height above the standard zero, m, in [-5000, 11000]
     * @throws IllegalArgumentException outside that range
     * @source ICAO-7488 table D
     */
    public static double isaTemperatureK(double geopotentialM) {
        if (!(geopotentialM >= LOWEST_M && geopotentialM <= HIGHEST_M)) {
            throw new IllegalArgumentException(
                    "geopotentialM (" + geopotentialM + ") must lie in [-5000, 11000].");
        }
        return SEA_LEVEL_TEMPERATURE_K - LAPSE_K_PER_M * geopotentialM;
    }

    /**
     * Speed of sound, m/s.
     *
     * @param temperatureK static temperature, K, above 0
     * @source ICAO-7488 section 3
     */
    public static double soundMPerS(double temperatureK) {
        Ranges.requirePositive(temperatureK, "temperatureK");
        return Math.sqrt(HEAT_RATIO * GAS_CONSTANT_J_PER_KG_K * temperatureK);
    }

    /**
     * Pressure altitude: the standard height that has this pressure, m.
     *
     * @param pressurePa static pressure, Pa; 22632 to 177687, the troposphere
     * @return m, in [-5000, 11000]
     * @throws IllegalArgumentException outside that range
     * @source ICAO-7488 equations of the troposphere, solved for the height
     */
    public static double pressureAltitudeM(double pressurePa) {
        Ranges.requirePositive(pressurePa, "pressurePa");
        return requireTroposphereM(
                heightOfPressureM(pressurePa), "pressurePa (" + pressurePa + ")");
    }

    /**
     * Pressure altitude of a place from the altimeter setting, m.
     *
     * <p>An altimeter set to QNH reads the elevation on the ground, so the pressure altitude is the
     * elevation plus the standard height of the QNH. Exact; the rule of 27.3 ft per hPa is not used.
     *
     * @param qnhPa altimeter setting, Pa, in [85000, 110000]
     * @param elevationAmslM elevation, m AMSL
     * @throws IllegalArgumentException if QNH is outside its range or the result outside [-5000, 11000]
     * @source DERIVED altimeter equation of ICAO-7488; agrees with the FAA-PHAK conversion table within 2 ft
     */
    public static double pressureAltitudeM(double qnhPa, double elevationAmslM) {
        if (!(qnhPa >= 85000 && qnhPa <= 110000)) {
            throw new IllegalArgumentException(
                    "qnhPa (" + qnhPa + ") must lie in [85000, 110000].");
        }
        return requireTroposphereM(
                elevationAmslM + heightOfPressureM(qnhPa),
                "elevationAmslM (" + elevationAmslM + ")");
    }

    /**
     * Static pressure at a place from the altimeter setting, Pa.
     *
     * @param qnhPa altimeter setting, Pa, in [85000, 110000]
     * @param elevationAmslM elevation, m AMSL
     * @throws IllegalArgumentException as for the pressure altitude
     * @source DERIVED altimeter equation of ICAO-7488
     */
    public static double stationPressurePa(double qnhPa, double elevationAmslM) {
        return isa(pressureAltitudeM(qnhPa, elevationAmslM)).pressurePa();
    }

    /**
     * Dry air from pressure and temperature.
     *
     * @param pressurePa static pressure, Pa, above 0
     * @param temperatureK static temperature, K, above 0
     * @source ICAO-7488 perfect gas law
     */
    public static AirState dry(double pressurePa, double temperatureK) {
        Ranges.requirePositive(pressurePa, "pressurePa");
        Ranges.requirePositive(temperatureK, "temperatureK");
        return new AirState(
                pressurePa, temperatureK, pressurePa / (GAS_CONSTANT_J_PER_KG_K * temperatureK));
    }

    /**
     * Humid air: lighter than dry air of the same pressure and temperature.
     *
     * @param pressurePa static pressure, Pa, above 0
     * @param temperatureK static temperature, K, above 0
     * @param dewPointK dew point, K, not above the temperature
     * @throws IllegalArgumentException if a value is out of range
     * @source DERIVED partial pressures of two perfect gases; vapour pressure as {@link #vapourPressurePa}
     */
    public static AirState humid(double pressurePa, double temperatureK, double dewPointK) {
        Ranges.requirePositive(pressurePa, "pressurePa");
        Ranges.requirePositive(temperatureK, "temperatureK");
        if (!(dewPointK <= temperatureK)) {
            throw new IllegalArgumentException(
                    "dewPointK ("
                            + dewPointK
                            + ") must not be above temperatureK ("
                            + temperatureK
                            + "). Perhaps the two are swapped.");
        }
        double vapourPa = vapourPressurePa(dewPointK);
        if (!(vapourPa < pressurePa)) {
            throw new IllegalArgumentException(
                    "dewPointK ("
                            + dewPointK
                            + ") is too high for pressurePa ("
                            + pressurePa
                            + ").");
        }
        double density =
                (pressurePa - vapourPa) / (GAS_CONSTANT_J_PER_KG_K * temperatureK)
                        + vapourPa / (VAPOUR_GAS_CONSTANT_J_PER_KG_K * temperatureK);
        return new AirState(pressurePa, temperatureK, density);
    }

    /**
     * Vapour pressure over water, Pa.
     *
     * @param dewPointK dew point, K, in [203.15, 333.15], that is -70 to 60 °C
     * @throws IllegalArgumentException outside that range
     * @source NWS-VAPOUR e = 6.11 · 10^(7.5 Td / (237.7 + Td)) hPa with Td in °C
     */
    public static double vapourPressurePa(double dewPointK) {
        double dewPointC = Units.kelvinToCelsius(dewPointK);
        if (!(dewPointC >= -70.0001 && dewPointC <= 60.0001)) {
            throw new IllegalArgumentException(
                    "dewPointK (" + dewPointK + ") must lie in [203.15, 333.15].");
        }
        return Units.hpaToPa(6.11 * Math.pow(10, 7.5 * dewPointC / (237.7 + dewPointC)));
    }

    /**
     * Density altitude: the standard height that has this density, m.
     *
     * @param densityKgPerM3 density, kg/m³; 0.3639 to 1.93, the troposphere
     * @return m, in [-5000, 11000]
     * @throws IllegalArgumentException outside that range
     * @source ICAO-7488 equations of the troposphere, solved for the height
     */
    public static double densityAltitudeM(double densityKgPerM3) {
        Ranges.requirePositive(densityKgPerM3, "densityKgPerM3");
        double ratio = densityKgPerM3 * GAS_CONSTANT_J_PER_KG_K * SEA_LEVEL_TEMPERATURE_K;
        double height =
                SEA_LEVEL_TEMPERATURE_K
                        / LAPSE_K_PER_M
                        * (1
                                - Math.pow(
                                        ratio / SEA_LEVEL_PRESSURE_PA,
                                        1 / (PRESSURE_POWER_COEFFICIENT - 1)));
        return requireTroposphereM(height, "densityKgPerM3 (" + densityKgPerM3 + ")");
    }

    /**
     * How much warmer than standard, K; negative when colder.
     *
     * @param pressureAltitudeM pressure altitude, m, in [-5000, 11000]
     * @param temperatureK static temperature, K
     * @source DERIVED difference from the standard temperature
     */
    public static double isaDeviationK(double pressureAltitudeM, double temperatureK) {
        Ranges.requirePositive(temperatureK, "temperatureK");
        return temperatureK - isaTemperatureK(pressureAltitudeM);
    }

    /**
     * Geopotential height of a geometric height, m.
     *
     * @param geometricM height above the standard zero, m, in [-5100, 11100]
     * @source ICAO-7488 section 2
     */
    public static double geopotentialM(double geometricM) {
        if (!(geometricM >= -5100 && geometricM <= 11100)) {
            throw new IllegalArgumentException(
                    "geometricM (" + geometricM + ") must lie in [-5100, 11100].");
        }
        return GEOPOTENTIAL_RADIUS_M * geometricM / (GEOPOTENTIAL_RADIUS_M + geometricM);
    }

    /**
     * Geometric height of a geopotential height, m.
     *
     * @param geopotentialM geopotential height, m, in [-5000, 11000]
     * @source ICAO-7488 section 2
     */
    public static double geometricM(double geopotentialM) {
        requireTroposphereM(geopotentialM, "geopotentialM (" + geopotentialM + ")");
        return GEOPOTENTIAL_RADIUS_M * geopotentialM / (GEOPOTENTIAL_RADIUS_M - geopotentialM);
    }

    /**
     * True airspeed from calibrated airspeed, m/s, compressibility included.
     *
     * @param calibratedMPerS calibrated airspeed, m/s, in [0, 170]
     * @param air air flown through
     * @throws IllegalArgumentException outside that range
     * @source USNTPS-106 chapter 2, subsonic pitot equation
     */
    public static double trueAirspeedMPerS(double calibratedMPerS, AirState air) {
        if (!(calibratedMPerS >= 0 && calibratedMPerS <= 170)) {
            throw new IllegalArgumentException(
                    "calibratedMPerS (" + calibratedMPerS + ") must lie in [0, 170].");
        }
        double seaLevelMach = calibratedMPerS / soundMPerS(SEA_LEVEL_TEMPERATURE_K);
        double impactPa =
                SEA_LEVEL_PRESSURE_PA * (Math.pow(1 + 0.2 * seaLevelMach * seaLevelMach, 3.5) - 1);
        double mach = Math.sqrt(5 * (Math.pow(impactPa / air.pressurePa() + 1, 2.0 / 7) - 1));
        return mach * soundMPerS(air.temperatureK());
    }

    private static double heightOfPressureM(double pressurePa) {
        return SEA_LEVEL_TEMPERATURE_K
                / LAPSE_K_PER_M
                * (1
                        - Math.pow(
                                pressurePa / SEA_LEVEL_PRESSURE_PA,
                                1 / PRESSURE_POWER_COEFFICIENT));
    }

    private static double requireTroposphereM(double heightM, String cause) {
        // A hundredth of a millimetre of room, so that the printed ends themselves come back.
        if (!(heightM >= LOWEST_M - 1e-5 && heightM <= HIGHEST_M + 1e-5)) {
            throw new IllegalArgumentException(
                    cause + " gives a height of " + heightM + " m; it must lie in [-5000, 11000].");
        }
        return Math.max(LOWEST_M, Math.min(HIGHEST_M, heightM));
    }
}
