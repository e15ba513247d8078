package underhook.core.flown;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How far a part's life has gone; it is due at the first of its limits.
 *
 * @param usedCycles counted before the day, not negative
 * @param usedS seconds in use before the day, not negative
 * @param limitCycles due at so many, when the manual states it
 * @param limitS due at so many seconds, when the manual states it
 * @param dueOn due on this date whatever was flown, when stated
 * @source MAKER-LETTER whichever comes first
 */
public record PartLife(
        String part,
        CycleRule rule,
        int usedCycles,
        double usedS,
        OptionalInt limitCycles,
        OptionalDouble limitS,
        Optional<LocalDate> dueOn) {
    public PartLife {
        Objects.requireNonNull(part, "part");
        if (usedCycles < 0 || !(usedS >= 0)) {
            throw new IllegalArgumentException("what was used of " + part + " is negative.");
        }
    }

    /**
     * A part after a day.
     *
     * @param dayCycles added by the day
     * @param cycles in all
     * @param usedS in all, s
     * @param leftCycles until the limit, negative past it; empty without one
     * @param leftS until the limit, s, negative past it; empty without one
     * @param due whether one of the limits is reached
     */
    public record After(
            int dayCycles,
            int cycles,
            double usedS,
            OptionalInt leftCycles,
            OptionalDouble leftS,
            boolean due) {}

    /** The part at the end of a day of so many engine runs. */
    public After after(MachineSums sums, int engineRuns, LocalDate day) {
        int dayCycles = rule.count(sums, engineRuns);
        int cycles = Math.addExact(usedCycles, dayCycles);
        double allS = usedS + sums.flyingS();
        OptionalInt leftCycles =
                limitCycles.isPresent()
                        ? OptionalInt.of(limitCycles.getAsInt() - cycles)
                        : OptionalInt.empty();
        OptionalDouble leftS =
                limitS.isPresent()
                        ? OptionalDouble.of(limitS.getAsDouble() - allS)
                        : OptionalDouble.empty();
        boolean due =
                (leftCycles.isPresent() && leftCycles.getAsInt() <= 0)
                        || (leftS.isPresent() && leftS.getAsDouble() <= 0)
                        || (dueOn.isPresent() && !day.isBefore(dueOn.get()));
        return new After(dayCycles, cycles, allS, leftCycles, leftS, due);
    }
}
