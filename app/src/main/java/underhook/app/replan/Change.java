package underhook.app.replan;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import underhook.core.job.CrewId;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/** One thing that is other than planned. */
public sealed interface Change {
    /** In words, as it stands in the log. */
    String words(ZoneId zone);

    /** Whether the ways and limits of the day must be worked out anew for it, which takes seconds. */
    default boolean isOfTheModel() {
        return false;
    }

    /** A crew is not there before. */
    record CrewLate(CrewId crew, Instant until) implements Change {
        private static final DateTimeFormatter CLOCK =
                DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

        @Override
        public String words(ZoneId zone) {
            return "crew " + crew + " late until " + CLOCK.format(until.atZone(zone));
        }
    }

    /** Nothing is hooked up or set down there any more. */
    record PlaceClosed(PlaceId place) implements Change {
        @Override
        public String words(ZoneId zone) {
            return place + " closed";
        }
    }

    /** A load is not flown today. */
    record LoadDropped(LoadId load) implements Change {
        @Override
        public String words(ZoneId zone) {
            return load + " taken off the day";
        }
    }

    /** A load was weighed, kg. */
    record Weighed(LoadId load, double massKg) implements Change {
        public Weighed {
            if (!(massKg > 0 && massKg < 1e5)) {
                throw new IllegalArgumentException("massKg (" + massKg + ") must be above 0.");
            }
        }

        @Override
        public String words(ZoneId zone) {
            return load + " weighed at " + Math.round(Math.ceil(massKg)) + " kg";
        }

        @Override
        public boolean isOfTheModel() {
            return true;
        }
    }

    /** All that the forecast says from now on comes so much earlier; negative is later. */
    record WindEarlier(Duration by) implements Change {
        @Override
        public String words(ZoneId zone) {
            return "wind " + by.toMinutes() + " min earlier";
        }

        @Override
        public boolean isOfTheModel() {
            return true;
        }
    }

    /** One more load; its places and kind are the job's. */
    record LoadAdded(Load load) implements Change {
        @Override
        public String words(ZoneId zone) {
            return load.id() + " added";
        }

        @Override
        public boolean isOfTheModel() {
            return true;
        }
    }
}
