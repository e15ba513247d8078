package underhook.core.plan;

import java.util.List;

/**
 * What it means to let the load go along a leg, away from its two ends.
 *
 * @param stretches in the order flown, without gaps; none on a leg too short to have anything between
 *     its ends
 * @param longestClosedS longest time on end during which it may not be let go, or only over guarded
 *     ground, s, rounded up
 * @param longestUnnamedS longest time on end without a named area that holds all the ground it may hit, s,
 *     rounded up
 * @param farthestM farthest that this ground reaches from the point under the hook, m, rounded up
 */
public record ReleaseLook(
        List<Stretch> stretches, double longestClosedS, double longestUnnamedS, double farthestM) {
    /** Within this distance of its ends a load hovers over its place and nothing is judged, m. */
    public static final double END_M = 30;

    /** What lies on the ground that the load may hit; worse ones first. */
    public enum Use {
        /** Never: people, houses, closed ground, live wires. */
        CLOSED,
        /** Only while a guard keeps people away. */
        GUARDED,
        /** Nothing that the job knows of lies there. */
        OPEN,
        /** All of it lies in an area that is agreed for it. */
        NAMED
    }

    /**
     * A stretch of the leg with one use.
     *
     * @param fromM start along the leg, m
     * @param toM end along the leg, m
     * @param durationS time to fly it, s
     * @param what ids of what decides it
     */
    public record Stretch(Use use, double fromM, double toM, double durationS, List<String> what) {
        public Stretch {
            what = List.copyOf(what);
            if (!(fromM >= 0 && fromM <= toM && durationS >= 0)) {
                throw new IllegalArgumentException("a stretch is out of range.");
            }
        }
    }

    public ReleaseLook {
        stretches = List.copyOf(stretches);
        if (!(longestClosedS >= 0 && longestUnnamedS >= 0 && farthestM >= 0)) {
            throw new IllegalArgumentException("times and distances must not be negative.");
        }
    }
}
