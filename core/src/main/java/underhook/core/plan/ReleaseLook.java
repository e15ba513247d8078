package underhook.core.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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

    /** Parts that share a tenth of a kilometre, the finest that papers tell, are one, m. */
    private static final double ONE_M = 100;

    /**
     * A part of the leg, metres from its start, rounded outward to whole ones so that none is short.
     */
    public record Part(long fromM, long toM) {
        private boolean reaches(Part next) {
            return Math.floor(next.fromM / ONE_M) <= Math.ceil(toM / ONE_M);
        }
    }

    /**
     * Where things decide for this use: each thing that does, in the order flown, over all stretches that it has a
     * part in. What no thing decides stands under an empty id.
     *
     * @return for each id its parts, in the order flown, none reaching the next
     */
    public Map<String, List<Part>> partsByThing(Use use) {
        Map<String, List<Part>> all = new LinkedHashMap<>();
        for (Stretch stretch : stretches) {
            if (stretch.use() == use) {
                Part part =
                        new Part(
                                (long) Math.floor(stretch.fromM()),
                                (long) Math.ceil(stretch.toM()));
                List<String> things = stretch.what().isEmpty() ? List.of("") : stretch.what();
                for (String thing : things) {
                    join(all.computeIfAbsent(thing, unused -> new ArrayList<>()), part);
                }
            }
        }
        return all;
    }

    private static void join(List<Part> parts, Part next) {
        int last = parts.size() - 1;
        if (last >= 0 && parts.get(last).reaches(next)) {
            Part before = parts.get(last);
            parts.set(last, new Part(before.fromM, Math.max(before.toM, next.toM)));
        } else {
            parts.add(next);
        }
    }
}
