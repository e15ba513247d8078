package underhook.core.ahead;

/**
 * The air of the job's month over many years.
 *
 * @param middleK temperature that half of the flyable hours stay below, K
 * @param warmK temperature that nine of ten of them stay below, K, not below the middle one
 * @param lowQnhPa a low altimeter setting of the month, Pa
 * @param referenceElevationAmslM where the temperatures hold, m AMSL
 * @param lapseKPerM how much colder it gets with height, K/m, not negative
 * @param source where the figures are from
 */
public record MonthClimate(
        double middleK,
        double warmK,
        double lowQnhPa,
        double referenceElevationAmslM,
        double lapseKPerM,
        String source) {
    public MonthClimate {
        if (!(middleK > 180 && warmK >= middleK && warmK < 340)) {
            throw new IllegalArgumentException(
                    "middleK (" + middleK + ") and warmK (" + warmK + ") are out of range.");
        }
        if (!(lowQnhPa > 80_000 && lowQnhPa < 110_000 && lapseKPerM >= 0)) {
            throw new IllegalArgumentException(
                    "lowQnhPa (" + lowQnhPa + ") or lapseKPerM (" + lapseKPerM + ") is wrong.");
        }
    }
}
