package underhook.app.flying;

import java.time.Instant;
import java.util.Optional;

/**
 * Something that ends the flying.
 *
 * @param at when; empty when it does not as far as is known, or nothing is known
 * @param known whether there was anything to work it out from
 * @param words what, with its number and where that is from
 */
public record Stop(What what, Optional<Instant> at, boolean known, String words) {
    /** What stops. */
    public enum What {
        FUEL,
        WIND,
        GUST,
        SPREAD,
        /** The wind, for a lift that comes after the next. */
        WAITING,
        DUTY,
        ENGINE,
        SUN,
        CLOUD,
        DARK,
        CURFEW,
        FORECAST
    }

    static Stop at(What what, Instant at, String words) {
        return new Stop(what, Optional.of(at), true, words);
    }

    static Stop never(What what, String words) {
        return new Stop(what, Optional.empty(), true, words);
    }

    static Stop unknown(What what, String words) {
        return new Stop(what, Optional.empty(), false, words);
    }
}
