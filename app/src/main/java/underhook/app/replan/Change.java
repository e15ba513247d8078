package underhook.app.replan;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.unit.Units;

/** One thing that is other than planned. */
public sealed interface Change {
    /** What is told from a place is no farther off, m. */
    double FARTHEST_M = 500;

    DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    /** In words, as it stands in the log. */
    String words(ZoneId zone);

    /** Whether the job has what it is about. */
    default boolean isOf(Job job) {
        return true;
    }

    /** Whether the ways and limits of the day must be worked out anew for it, which takes seconds. */
    default boolean isOfTheModel() {
        return false;
    }

    /** A crew is not there before. */
    record CrewLate(CrewId crew, Instant until) implements Change {
        @Override
        public boolean isOf(Job job) {
            return job.crews().stream().anyMatch(one -> one.id().equals(crew));
        }

        @Override
        public String words(ZoneId zone) {
            return "crew " + crew + " late until " + CLOCK.format(until.atZone(zone));
        }
    }

    /**
     * A crew is at a place, whatever was planned.
     *
     * @param at since when, in whole seconds, the next one
     */
    record CrewHere(CrewId crew, PlaceId place, Instant at) implements Change {
        public CrewHere {
            Instant second = at.truncatedTo(ChronoUnit.SECONDS);
            at = second.isBefore(at) ? second.plusSeconds(1) : second;
        }

        @Override
        public boolean isOf(Job job) {
            return job.crews().stream().anyMatch(one -> one.id().equals(crew))
                    && job.findPlace(place).isPresent();
        }

        @Override
        public String words(ZoneId zone) {
            return "crew " + crew + " is at " + place + " since " + CLOCK.format(at.atZone(zone));
        }
    }

    /** Nothing is hooked up or set down there any more. */
    record PlaceClosed(PlaceId place) implements Change {
        @Override
        public boolean isOf(Job job) {
            return job.findPlace(place).isPresent();
        }

        @Override
        public String words(ZoneId zone) {
            return place + " closed";
        }
    }

    /** A load is not flown today. */
    record LoadDropped(LoadId load) implements Change {
        @Override
        public boolean isOf(Job job) {
            return job.findLoad(load).isPresent();
        }

        @Override
        public String words(ZoneId zone) {
            return load + " taken off the day";
        }
    }

    /** A load was weighed, kg. */
    record Weighed(LoadId load, double massKg) implements Change {
        private static final double MOST_KG = 100_000;

        public Weighed {
            if (!(massKg > 0 && massKg < MOST_KG)) {
                throw new IllegalArgumentException(
                        "massKg ("
                                + Figure.beside(massKg, massKg > 0 ? MOST_KG : 0)
                                + ") must be above 0 and below 100000.");
            }
        }

        @Override
        public boolean isOf(Job job) {
            return job.findLoad(load).isPresent();
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
        private static final long MOST_MIN = 24 * 60;

        public WindEarlier {
            if (Math.abs(by.toMinutes()) > MOST_MIN) {
                throw new IllegalArgumentException(
                        "wind earlier by "
                                + by.toMinutes()
                                + " min must be "
                                + -MOST_MIN
                                + " to "
                                + MOST_MIN
                                + ".");
            }
        }

        @Override
        public String words(ZoneId zone) {
            return "wind " + by.toMinutes() + " min earlier";
        }

        @Override
        public boolean isOfTheModel() {
            return true;
        }
    }

    /**
     * The wind as somebody saw it at a place: for an hour it is no weaker anywhere, by the exposure of each place.
     *
     * @param gustMPerS not below the mean
     */
    record WindSeen(
            PlaceId place, double fromTrueRad, double meanMPerS, double gustMPerS, Instant at)
            implements Change {
        /** An older report says nothing of the wind now. @source PRACTICE an hour, as forecasts step */
        public static final Duration GOOD_FOR = Duration.ofHours(1);

        public WindSeen {
            if (!(meanMPerS >= 0 && gustMPerS >= meanMPerS)) {
                throw new IllegalArgumentException(
                        "wind at " + place + " must have a gust that is not below its mean.");
            }
        }

        /** Whether it still says something of the wind. */
        public boolean isNew(Instant now) {
            return !at.plus(GOOD_FOR).isBefore(now);
        }

        @Override
        public boolean isOf(Job job) {
            return job.findPlace(place).isPresent();
        }

        @Override
        public String words(ZoneId zone) {
            return String.format(
                    Locale.ROOT,
                    "wind at %s from %s true, %d kt gusting %d kt, seen at %s",
                    place,
                    degrees(fromTrueRad),
                    Math.round(Units.mPerSToKt(meanMPerS)),
                    Math.round(Units.mPerSToKt(gustMPerS)),
                    CLOCK.format(at.atZone(zone)));
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

    /**
     * A place is not where it was planned; nothing but the clearing told is known of the trees there.
     *
     * @param towardsTrueRad from where the job has it, rad from true north
     * @param byM above 0
     * @param clearM no trees within this distance, m
     */
    record PlaceMoved(PlaceId place, double towardsTrueRad, double byM, double clearM)
            implements Change {
        public PlaceMoved {
            if (!(byM > 0 && byM <= FARTHEST_M && clearM >= 0)) {
                throw new IllegalArgumentException(
                        "byM ("
                                + byM
                                + ") must be above 0 and at most "
                                + FARTHEST_M
                                + ", clearM ("
                                + clearM
                                + ") not negative.");
            }
        }

        @Override
        public boolean isOf(Job job) {
            return job.findPlace(place).isPresent();
        }

        @Override
        public String words(ZoneId zone) {
            return place
                    + " moved "
                    + Math.round(byM)
                    + " m towards "
                    + degrees(towardsTrueRad)
                    + " true, no trees within "
                    + Math.round(clearM)
                    + " m";
        }

        @Override
        public boolean isOfTheModel() {
            return true;
        }
    }

    /**
     * Something stands where it was free.
     *
     * @param towardsTrueRad from where the job has the place, rad from true north
     * @param atM from there, m
     * @param heightM above ground as judged by eye, m
     */
    record StandsThere(PlaceId place, double towardsTrueRad, double atM, double heightM)
            implements Change {
        public StandsThere {
            if (!(atM >= 0 && atM <= FARTHEST_M && heightM > 0 && heightM < 1000)) {
                throw new IllegalArgumentException(
                        "atM ("
                                + atM
                                + ") must be 0 to "
                                + FARTHEST_M
                                + ", heightM ("
                                + heightM
                                + ") above 0 and below 1000.");
            }
        }

        @Override
        public boolean isOf(Job job) {
            return job.findPlace(place).isPresent();
        }

        @Override
        public String words(ZoneId zone) {
            return "something "
                    + Math.round(heightM)
                    + " m high stands "
                    + Math.round(atM)
                    + " m from "
                    + place
                    + " towards "
                    + degrees(towardsTrueRad)
                    + " true";
        }

        @Override
        public boolean isOfTheModel() {
            return true;
        }
    }

    private static String degrees(double valueRad) {
        long degrees = Math.floorMod(Math.round(Units.radToDeg(valueRad)), 360L);
        return String.format(Locale.ROOT, "%03d°", degrees);
    }
}
