package underhook.core.plan;

import java.util.Objects;

/**
 * What a day costs by the job's own rates, whole cents; each part rounded down.
 *
 * @param flyingCents of the minutes in the air
 * @param standingCents of the minutes the machine stands by
 * @param peopleCents of the minutes of all people, from the day's first to the last landing
 */
public record DayPrice(long flyingCents, long standingCents, long peopleCents, String currency) {
    public DayPrice {
        Objects.requireNonNull(currency, "currency");
    }

    /** All of it, cents. */
    public long totalCents() {
        return Math.addExact(flyingCents, Math.addExact(standingCents, peopleCents));
    }
}
