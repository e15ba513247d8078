package underhook.core.plan;

import java.time.Instant;
import java.util.Objects;
import underhook.core.job.PlaceId;

/**
 * A comfort that the day refuses somebody, and its price.
 *
 * @param subject the first load of the lift, or the crew that walks
 * @param place where the load is set down, or where the crew walks to
 * @param at when the lift's last load is let go, or when the crew leaves
 * @param count how many of what the comfort is counted in, whole
 * @param cents the job's rate times the count
 */
public record RefusedComfort(
        Comfort comfort, String subject, PlaceId place, Instant at, long count, long cents) {
    /** What may be refused. */
    public enum Comfort {
        SUN_AHEAD("sun-ahead", "set-down"),
        SUN_BESIDE("sun-beside", "set-down"),
        TAILWIND("tailwind", "kt"),
        CROSSWIND("crosswind", "kt"),
        WALK("walk", "min");

        private final String word;
        private final String unit;

        Comfort(String word, String unit) {
            this.word = word;
            this.unit = unit;
        }

        /** As files have it. */
        public String word() {
            return word;
        }

        /** What it is counted in. */
        public String unit() {
            return unit;
        }
    }

    public RefusedComfort {
        Objects.requireNonNull(comfort, "comfort");
        Objects.requireNonNull(subject, "subject");
        Objects.requireNonNull(place, "place");
        Objects.requireNonNull(at, "at");
    }
}
