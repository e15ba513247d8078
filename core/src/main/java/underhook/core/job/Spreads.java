package underhook.core.job;

import java.util.List;
import java.util.Objects;

/**
 * How far the day may turn out other than planned: what a replay of the day draws from.
 *
 * @param cycle flown over planned, of everything in the air but a pole held while it is guyed
 * @param guying the same of a pole held while it is guyed
 * @param ground the same of refuelling, changing the line and boarding
 * @param people the same of walks, of making a place ready and of work after a release
 * @param crewLate how much later than stated a crew is ready in the morning, s
 * @param windLater how much later than forecast the wind changes, s; negative is earlier
 * @param sharedFraction chance that a single time takes the day's own luck and not its own: on a slow day
 *     everything is slow
 * @param insideFraction share of the replays that must be inside a window for a start to count as sensible
 * @param learned what earlier days taught; empty where nothing was learned
 */
public record Spreads(
        Ratios cycle,
        Ratios guying,
        Ratios ground,
        Ratios people,
        Times crewLate,
        Times windLater,
        double sharedFraction,
        double insideFraction,
        List<Learned> learned) {
    /**
     * Flown over planned at three points: a triangle.
     *
     * @param leastRatio never less, above 0
     * @param usualRatio most often
     * @param mostRatio never more
     */
    public record Ratios(double leastRatio, double usualRatio, double mostRatio) {
        /** Everything as planned. */
        public static final Ratios NONE = new Ratios(1, 1, 1);

        public Ratios {
            if (!(leastRatio > 0
                    && leastRatio <= usualRatio
                    && usualRatio <= mostRatio
                    && mostRatio <= 50)) {
                throw new IllegalArgumentException(
                        "ratios must rise from above 0 to at most 50: "
                                + leastRatio
                                + ", "
                                + usualRatio
                                + ", "
                                + mostRatio
                                + ".");
            }
        }
    }

    /**
     * A time at three points: a triangle.
     *
     * @param leastS never less, s
     * @param usualS most often, s
     * @param mostS never more, s
     */
    public record Times(double leastS, double usualS, double mostS) {
        /** Nothing but what is planned. */
        public static final Times NONE = new Times(0, 0, 0);

        public Times {
            if (!(leastS >= -86_400 && leastS <= usualS && usualS <= mostS && mostS <= 86_400)) {
                throw new IllegalArgumentException(
                        "times must rise within a day: "
                                + leastS
                                + ", "
                                + usualS
                                + ", "
                                + mostS
                                + ".");
            }
        }
    }

    /**
     * What earlier days taught of the flights of a group.
     *
     * @param group kind of load, kind of place and line
     * @param samples how many flights it stands on
     * @param believedRatio flown over planned, to multiply a planned time with
     * @param spreadRatio how far single flights lie off their mean, as a standard deviation; 0 where that
     *     is not known
     */
    public record Learned(String group, int samples, double believedRatio, double spreadRatio) {
        /** A triangle's half width over its standard deviation. @source DERIVED */
        private static final double HALF_WIDTH_FACTOR = Math.sqrt(6);

        /** The quickest that is counted with. */
        private static final double LEAST_RATIO = 0.1;

        public Learned {
            Objects.requireNonNull(group, "group");
            if (!(samples >= 0
                    && believedRatio > LEAST_RATIO
                    && believedRatio <= 5
                    && spreadRatio >= 0
                    && spreadRatio <= 2)) {
                throw new IllegalArgumentException(
                        "what was learned of " + group + " is out of range.");
            }
        }

        /** Its own spread, or that of all flights about its mean. */
        Ratios ratios(Ratios all) {
            double half = HALF_WIDTH_FACTOR * spreadRatio;
            return spreadRatio > 0
                    ? new Ratios(
                            Math.max(LEAST_RATIO, believedRatio - half),
                            believedRatio,
                            believedRatio + half)
                    : new Ratios(
                            believedRatio * all.leastRatio(),
                            believedRatio * all.usualRatio(),
                            believedRatio * all.mostRatio());
        }
    }

    /**
     * What holds where the job says nothing.
     *
     * @source PRACTICE guesses of one who has no records: times run over more often and farther than under;
     *     an hour either way for the wind; half of it is the day's own luck
     */
    public static final Spreads USUAL =
            new Spreads(
                    new Ratios(0.9, 1, 1.2),
                    new Ratios(0.75, 1, 1.4),
                    new Ratios(0.9, 1, 1.4),
                    new Ratios(0.9, 1, 1.3),
                    new Times(0, 0, 900),
                    new Times(-3600, 0, 3600),
                    0.5,
                    0.9,
                    List.of());

    /** A day that turns out as planned. */
    public static final Spreads NONE =
            new Spreads(
                    Ratios.NONE,
                    Ratios.NONE,
                    Ratios.NONE,
                    Ratios.NONE,
                    Times.NONE,
                    Times.NONE,
                    0,
                    0.9,
                    List.of());

    public Spreads {
        learned = List.copyOf(learned);
        if (!(sharedFraction >= 0 && sharedFraction <= 1)) {
            throw new IllegalArgumentException(
                    "sharedFraction (" + sharedFraction + ") must lie in [0, 1].");
        }
        if (!(insideFraction >= 0.5 && insideFraction <= 0.99)) {
            throw new IllegalArgumentException(
                    "insideFraction (" + insideFraction + ") must lie between 0.5 and 0.99.");
        }
        if (crewLate.leastS() < 0) {
            throw new IllegalArgumentException("a crew is not ready before it is stated to be.");
        }
    }

    /** The same with what earlier days taught. */
    public Spreads withLearned(List<Learned> other) {
        return new Spreads(
                cycle,
                guying,
                ground,
                people,
                crewLate,
                windLater,
                sharedFraction,
                insideFraction,
                other);
    }

    /** Spread of the flights of a group: what was learned of it, else that of all flights. */
    public Ratios flight(String group) {
        return learned.stream()
                .filter(one -> one.group().equals(group))
                .map(one -> one.ratios(cycle))
                .findFirst()
                .orElse(cycle);
    }
}
