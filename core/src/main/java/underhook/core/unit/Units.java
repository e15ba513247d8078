package underhook.core.unit;

/**
 * Conversions between SI and the units that people write.
 *
 * <p>No other file holds a factor. Every factor is exact by definition unless it says otherwise.
 *
 * @source SI-BROCHURE 9th edition, section 4 (degree, litre, bar); DERIVED for the products of them
 */
public final class Units {
    /** Standard acceleration of gravity, m/s². @source SI-BROCHURE 3rd CGPM 1901 */
    public static final double STANDARD_GRAVITY_M_PER_S2 = 9.80665;

    private static final double M_PER_FT = 0.3048;
    private static final double M_PER_NMI = 1852.0;
    private static final double M_PER_STATUTE_MILE = 1609.344;
    private static final double M_PER_KM = 1000.0;
    private static final double CM_PER_M = 100.0;
    private static final double KG_PER_LB = 0.45359237;
    private static final double LB_PER_SHORT_TON = 2000.0;
    private static final double INCHES_PER_FT = 12.0;
    private static final double M3_PER_US_GAL = 3.785411784e-3;
    private static final double PA_PER_IN_HG = 3386.389;
    private static final double SECONDS_PER_HOUR = 3600.0;
    private static final double SECONDS_PER_MINUTE = 60.0;
    private static final double KELVIN_AT_ZERO_C = 273.15;

    private Units() {}

    public static double ftToM(double valueFt) {
        return valueFt * M_PER_FT;
    }

    public static double mToFt(double valueM) {
        return valueM / M_PER_FT;
    }

    public static double nmiToM(double valueNmi) {
        return valueNmi * M_PER_NMI;
    }

    public static double mToNmi(double valueM) {
        return valueM / M_PER_NMI;
    }

    /** Statute mile of 5280 international feet. */
    public static double statuteMileToM(double valueMile) {
        return valueMile * M_PER_STATUTE_MILE;
    }

    public static double kmToM(double valueKm) {
        return valueKm * M_PER_KM;
    }

    public static double cmToM(double valueCm) {
        return valueCm / CM_PER_M;
    }

    public static double ktToMPerS(double valueKt) {
        return valueKt * M_PER_NMI / SECONDS_PER_HOUR;
    }

    public static double mPerSToKt(double valueMPerS) {
        return valueMPerS * SECONDS_PER_HOUR / M_PER_NMI;
    }

    public static double kmPerHourToMPerS(double valueKmPerHour) {
        return valueKmPerHour / 3.6;
    }

    public static double ftPerMinuteToMPerS(double valueFtPerMinute) {
        return valueFtPerMinute * M_PER_FT / SECONDS_PER_MINUTE;
    }

    public static double mPerSToFtPerMinute(double valueMPerS) {
        return valueMPerS * SECONDS_PER_MINUTE / M_PER_FT;
    }

    public static double lbToKg(double valueLb) {
        return valueLb * KG_PER_LB;
    }

    public static double kgToLb(double valueKg) {
        return valueKg / KG_PER_LB;
    }

    /** US short ton of 2000 pounds. */
    public static double shortTonToKg(double valueShortTon) {
        return lbToKg(valueShortTon * LB_PER_SHORT_TON);
    }

    public static double mToInch(double valueM) {
        return mToFt(valueM) * INCHES_PER_FT;
    }

    public static double inchToM(double valueInch) {
        return ftToM(valueInch / INCHES_PER_FT);
    }

    public static double mmToM(double valueMm) {
        return valueMm / 1000.0;
    }

    public static double lbPerFt3ToKgPerM3(double valueLbPerFt3) {
        return lbToKg(valueLbPerFt3) / (M_PER_FT * M_PER_FT * M_PER_FT);
    }

    public static double usGalToM3(double valueUsGal) {
        return valueUsGal * M3_PER_US_GAL;
    }

    public static double litreToM3(double valueLitre) {
        return valueLitre / 1000.0;
    }

    public static double hpaToPa(double valueHpa) {
        return valueHpa * 100.0;
    }

    public static double paToHpa(double valuePa) {
        return valuePa / 100.0;
    }

    /** Conventional inch of mercury at 0 °C; the seventh digit is conventional, not exact. */
    public static double inHgToPa(double valueInHg) {
        return valueInHg * PA_PER_IN_HG;
    }

    public static double celsiusToKelvin(double valueC) {
        return valueC + KELVIN_AT_ZERO_C;
    }

    public static double kelvinToCelsius(double valueK) {
        return valueK - KELVIN_AT_ZERO_C;
    }

    public static double degToRad(double valueDeg) {
        return Math.toRadians(valueDeg);
    }

    public static double radToDeg(double valueRad) {
        return Math.toDegrees(valueRad);
    }

    public static double minutesToS(double valueMinutes) {
        return valueMinutes * SECONDS_PER_MINUTE;
    }

    public static double sToMinutes(double valueS) {
        return valueS / SECONDS_PER_MINUTE;
    }

    public static double kgPerMinuteToKgPerS(double valueKgPerMinute) {
        return valueKgPerMinute / SECONDS_PER_MINUTE;
    }

    public static double kgPerSToKgPerMinute(double valueKgPerS) {
        return valueKgPerS * SECONDS_PER_MINUTE;
    }

    public static double kvToV(double valueKv) {
        return valueKv * 1000.0;
    }

    /** Angle brought into [0, 2π). */
    public static double wrapTwoPiRad(double valueRad) {
        double turn = 2 * Math.PI;
        double rest = valueRad % turn;
        if (rest < 0) {
            rest += turn;
        }
        // A tiny negative angle rounds up to a whole turn.
        return rest >= turn ? 0.0 : rest;
    }

    /** Angle brought into (-π, π]. */
    public static double wrapPiRad(double valueRad) {
        double wrapped = wrapTwoPiRad(valueRad);
        return wrapped > Math.PI ? wrapped - 2 * Math.PI : wrapped;
    }
}
