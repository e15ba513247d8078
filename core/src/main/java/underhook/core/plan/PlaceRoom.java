package underhook.core.plan;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import underhook.core.job.PlaceId;

/**
 * Room at a place for each line in stock.
 *
 * @param advisedLine name of the shortest line with a free heading that every hour's wind allows, or,
 *     where no line has one, with a near one; empty when no line leaves room
 * @param reason why this one, in words
 */
public record PlaceRoom(
        PlaceId place, List<LineRoom> lines, Optional<String> advisedLine, String reason) {
    /** Whether there is room. */
    public enum Fit {
        FREE,
        /** There is, by less than what is not known. */
        NEAR,
        REFUSED
    }

    /**
     * Headings next to each other with the same answer, clockwise.
     *
     * @param fromTrueRad first, rad from true north, in [0, 2π)
     * @param toTrueRad last, rad from true north, in [0, 2π]; 0 to 2π for all round
     */
    public record Sector(Fit fit, double fromTrueRad, double toTrueRad) {
        public Sector {
            Objects.requireNonNull(fit, "fit");
            if (!(fromTrueRad >= 0
                    && fromTrueRad < 2 * Math.PI
                    && toTrueRad >= 0
                    && toTrueRad <= 2 * Math.PI)) {
                throw new IllegalArgumentException("a sector is out of range.");
            }
        }

        /** Whether a heading lies in it. */
        public boolean holds(double headingTrueRad) {
            return fromTrueRad <= toTrueRad
                    ? headingTrueRad >= fromTrueRad && headingTrueRad <= toTrueRad
                    : headingTrueRad >= fromTrueRad || headingTrueRad <= toTrueRad;
        }
    }

    /**
     * What decides on the worst heading.
     *
     * @param part of the machine or under it: "tail"
     * @param cause what it comes too near to: "ground", "trees", or the id of a thing or wire
     * @param headingTrueRad the heading, rad from true north
     * @param marginM distance, m; negative inside; minus infinity where the ground is not known
     * @param neededM least distance allowed, m
     * @param unknownM how far the distance may be off, m
     */
    public record Tightest(
            String part,
            String cause,
            double headingTrueRad,
            double marginM,
            double neededM,
            double unknownM) {}

    /**
     * What a line costs, as estimates.
     *
     * @param settleS time for a swing to die down, s
     * @param downwashMPerS wind on the ground under the rotor by momentum theory, m/s
     * @param reachM from the belly hook to the load's lowest end, m
     */
    public record Cost(double settleS, double downwashMPerS, double reachM) {}

    /**
     * Room with one line.
     *
     * @param standsM length of the load that stands up under it, m; 0 for loads that hang
     * @param sectors all round, clockwise
     */
    public record LineRoom(
            String line,
            double lineLengthM,
            double standsM,
            List<Sector> sectors,
            Tightest tightest,
            Cost cost) {
        public LineRoom {
            Objects.requireNonNull(line, "line");
            sectors = List.copyOf(sectors);
        }

        /** The worst answer of the sectors that hold a heading; refused where none does. */
        public Fit fitAt(double headingTrueRad) {
            return sectors.stream()
                    .filter(sector -> sector.holds(headingTrueRad))
                    .map(Sector::fit)
                    .max(Fit::compareTo)
                    .orElse(Fit.REFUSED);
        }
    }

    public PlaceRoom {
        Objects.requireNonNull(place, "place");
        lines = List.copyOf(lines);
        Objects.requireNonNull(reason, "reason");
    }
}
