package underhook.planner.search;

/**
 * What a minute costs, whole cents. Comforts that a way in refuses are priced by {@link SetDownPrice}.
 *
 * @param flyingCents of flying
 * @param standingCents of the machine standing by
 * @param peopleCents of all people on the ground together
 * @param walkCents each full minute of a team on foot
 */
public record Rates(long flyingCents, long standingCents, long peopleCents, long walkCents) {
    static final long DROPPED_CENTS = 100_000_000L;

    /** Walks cost nothing. */
    public Rates(long flyingCents, long standingCents, long peopleCents) {
        this(flyingCents, standingCents, peopleCents, 0);
    }

    /** The same with a flying minute at so much of its rate. */
    Rates withFlying(int percent) {
        return new Rates(
                Math.multiplyExact(flyingCents, percent) / 100,
                standingCents,
                peopleCents,
                walkCents);
    }

    /** A minute of flying, standing and people together, cents. */
    long minuteCents() {
        return flyingCents + standingCents + peopleCents;
    }

    /** Price of a day, cents: flying, the machine standing, people; what is not flown costs most. */
    long cents(long flownS, long wholeS, int dropped) {
        long flying = flyingCents * flownS / 60;
        long standing = standingCents * Math.max(0, wholeS - flownS) / 60;
        long ground = peopleCents * wholeS / 60;
        return Math.addExact(
                Math.multiplyExact(dropped, DROPPED_CENTS),
                Math.addExact(flying, Math.addExact(standing, ground)));
    }
}
