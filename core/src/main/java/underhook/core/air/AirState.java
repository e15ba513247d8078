package underhook.core.air;

/**
 * Air at one place and time.
 *
 * @param pressurePa static pressure, Pa, above 0
 * @param temperatureK static temperature, K, above 0
 * @param densityKgPerM3 density, kg/m³, above 0
 */
public record AirState(double pressurePa, double temperatureK, double densityKgPerM3) {
    public AirState {
        if (!(pressurePa > 0 && pressurePa < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("pressurePa (" + pressurePa + ") must be above 0.");
        }
        if (!(temperatureK > 0 && temperatureK < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "temperatureK (" + temperatureK + ") must be above 0.");
        }
        if (!(densityKgPerM3 > 0 && densityKgPerM3 < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "densityKgPerM3 (" + densityKgPerM3 + ") must be above 0.");
        }
    }
}
