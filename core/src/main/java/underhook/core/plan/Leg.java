package underhook.core.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.geo.GeoPoint;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * One way through the air, straight between its points.
 *
 * @param carrying loads on the hook; empty for the empty line or no line
 * @param distanceM along the ground, m
 * @param durationS time in the air on this leg, s, without hooking up and setting down
 * @param boundS no legal way between the two places takes less, s; 0 where nothing is proven
 * @param leastClearanceM least distance of load, line or machine to ground, canopy and wires away from
 *     its two ends, m, rounded down
 * @param speedMPerS true airspeed, m/s
 * @param wires every wire that machine, line or load come near, one entry for each
 * @param looks what it means for the load and for those below
 */
public record Leg(
        List<LoadId> carrying,
        PlaceId from,
        PlaceId to,
        List<PathPoint> path,
        double distanceM,
        double durationS,
        double boundS,
        double leastClearanceM,
        double speedMPerS,
        List<Crossing> crossings,
        List<WirePass> wires,
        Looks looks) {
    /**
     * What a leg means for the load and for those below.
     *
     * @param release what it means to let the load go on the way; empty without a load
     * @param slowing how the load or the empty line comes to rest; empty with the line off
     * @param exposure what it passes over at a price; none without a load
     */
    public record Looks(
            Optional<ReleaseLook> release, Optional<Slowing> slowing, Exposure exposure) {
        /** Nothing hangs there that could be let go, and nothing is said of coming to rest. */
        public static final Looks NONE =
                new Looks(Optional.empty(), Optional.empty(), Exposure.NONE);
    }

    /**
     * What a leg passes over that had better not be passed over, by the prices of the job's rules.
     *
     * @param priceS sum of the prices, s
     * @param boundS no legal way on the same ways in and out takes less than this in time and prices
     *     together, s; 0 where nothing is proven
     * @param overM length over ground that has a price, m
     */
    public record Exposure(double priceS, double boundS, double overM) {
        public static final Exposure NONE = new Exposure(0, 0, 0);

        public Exposure {
            if (!(priceS >= 0
                    && priceS < Double.POSITIVE_INFINITY
                    && overM >= 0
                    && overM < Double.POSITIVE_INFINITY
                    && boundS >= 0
                    && boundS < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("exposure has a value out of range.");
            }
        }
    }

    /**
     * How what hangs there comes to rest over the leg's end.
     *
     * @param beginM how far before the place to begin slowing down, m, rounded up
     * @param lastsS how long that takes, s, rounded up
     * @param settleS time for the swing that is left to die down, s, rounded up
     * @param swingM farthest from rest over the place with the period off as the rules state, m, rounded up
     */
    public record Slowing(double beginM, double lastsS, double settleS, double swingM) {
        public Slowing {
            if (!(beginM >= 0 && lastsS >= 0 && settleS >= 0 && swingM >= 0)) {
                throw new IllegalArgumentException("slowing down has a value out of range.");
            }
        }

        /** What it adds to the time of flying on at one speed, s. */
        public double extraS(double speedMPerS) {
            return Math.max(0, lastsS - beginM / speedMPerS) + settleS;
        }
    }

    /**
     * A place where the leg passes over something that has a rule.
     *
     * @param feature id of the road, trail, wire or zone
     * @param at where
     * @param rule what must be so while it is crossed, in words
     */
    public record Crossing(String feature, GeoPoint at, String rule) {}

    /**
     * A wire that the leg comes near: within 150 m or three times what is needed, whichever is more.
     *
     * @param wire its id
     * @param leastM least distance in space of machine, line and load to anywhere it can be, m, rounded
     *     down; all below the wire counts as wire
     * @param needM least distance that is needed, m, rounded up
     * @param at where the machine is then
     * @param aboveM height of the lowest end above the highest the wire can be where the leg passes over
     *     it, m, rounded down; empty where it passes beside
     * @param assumed whether the wire's height or sag are defaults that nobody measured
     */
    public record WirePass(
            String wire,
            double leastM,
            double needM,
            GeoPoint at,
            OptionalDouble aboveM,
            boolean assumed) {
        /** Wires within this distance are listed, m. @source PRACTICE */
        public static final double LISTED_M = 150;

        /** Wires within so many times the needed distance are listed. @source PRACTICE */
        public static final double LISTED_NEEDS_RATIO = 3;

        public WirePass {
            if (!(leastM >= 0 && needM >= 0)) {
                throw new IllegalArgumentException(
                        "distances to wire " + wire + " are out of range.");
            }
        }
    }

    public Leg {
        if (!(boundS >= 0 && boundS < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "boundS (" + boundS + ") must be finite and not negative.");
        }
        carrying = List.copyOf(carrying);
        path = List.copyOf(path);
        crossings = List.copyOf(crossings);
        wires = List.copyOf(wires);
    }

    public Optional<ReleaseLook> release() {
        return looks.release();
    }

    public Optional<Slowing> slowing() {
        return looks.slowing();
    }

    public Exposure exposure() {
        return looks.exposure();
    }

    /** Time and prices together, s. */
    public double costS() {
        return durationS + exposure().priceS();
    }

    /** The same with what it means to let its load go. */
    public Leg withRelease(ReleaseLook look) {
        return with(crossings, new Looks(Optional.of(look), slowing(), exposure()));
    }

    /** The same way with nothing hanging there, over what has a rule even then. */
    public Leg withoutLoad(List<Crossing> ruled) {
        return with(ruled, Looks.NONE);
    }

    private Leg with(List<Crossing> over, Looks other) {
        return new Leg(
                carrying,
                from,
                to,
                path,
                distanceM,
                durationS,
                boundS,
                leastClearanceM,
                speedMPerS,
                over,
                wires,
                other);
    }

    /** The same way with other loads on the hook. */
    public Leg withCarrying(List<LoadId> loads) {
        return new Leg(
                loads,
                from,
                to,
                path,
                distanceM,
                durationS,
                boundS,
                leastClearanceM,
                speedMPerS,
                crossings,
                wires,
                looks);
    }
}
