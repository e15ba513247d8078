package underhook.core.plan;

import java.util.List;
import java.util.Objects;

/**
 * What a day costs by the job's own rates, whole cents; each part rounded down.
 *
 * @param flyingCents of the minutes in the air
 * @param standingCents of the minutes the machine stands by
 * @param peopleCents of the minutes of all people, from the day's first to the last landing
 * @param comforts refused ones that have a rate, in the order of the day
 */
public record DayPrice(
        long flyingCents,
        long standingCents,
        long peopleCents,
        List<RefusedComfort> comforts,
        String currency) {
    public DayPrice {
        comforts = List.copyOf(comforts);
        Objects.requireNonNull(currency, "currency");
    }

    /** With no comfort refused that costs anything. */
    public DayPrice(long flyingCents, long standingCents, long peopleCents, String currency) {
        this(flyingCents, standingCents, peopleCents, List.of(), currency);
    }

    /** Of all refused comforts, cents. */
    public long comfortsCents() {
        return comforts.stream().mapToLong(RefusedComfort::cents).reduce(0, Math::addExact);
    }

    /** All of it, cents. */
    public long totalCents() {
        return Math.addExact(
                Math.addExact(flyingCents, comfortsCents()),
                Math.addExact(standingCents, peopleCents));
    }
}
