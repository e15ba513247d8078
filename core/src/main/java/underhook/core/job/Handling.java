package underhook.core.job;

import java.util.Objects;

/**
 * How the operator lets loads be flown and poles be set, the gear they hang in, how times vary, and what it is
 * worth to keep loads off what they may pass over.
 */
public record Handling(
        Flying flying, Guying guying, Rigging rigging, Spreads spreads, Exposure exposure) {
    /** What holds where the job says nothing; no gear is listed. */
    public static final Handling USUAL = new Handling(Flying.USUAL, Guying.USUAL, Rigging.NONE);

    /** With usual spreads of times and the usual prices of what is passed over. */
    public Handling(Flying flying, Guying guying, Rigging rigging) {
        this(flying, guying, rigging, Spreads.USUAL, Exposure.USUAL);
    }

    public Handling {
        Objects.requireNonNull(flying, "flying");
        Objects.requireNonNull(guying, "guying");
        Objects.requireNonNull(rigging, "rigging");
        Objects.requireNonNull(spreads, "spreads");
        Objects.requireNonNull(exposure, "exposure");
    }

    /** The same with the gear of a list. */
    public Handling withRigging(Rigging other) {
        return new Handling(flying, guying, other, spreads, exposure);
    }

    /** The same with other spreads of times. */
    public Handling withSpreads(Spreads other) {
        return new Handling(flying, guying, rigging, other, exposure);
    }

    /** The same with other prices of what is passed over. */
    public Handling withExposure(Exposure other) {
        return new Handling(flying, guying, rigging, spreads, other);
    }

    /**
     * What a way with a load may take longer to keep off what is allowed to be passed over but had better
     * not be.
     *
     * @param guardedS for each crossing of a road, trail or railway under guard, s
     * @param openS for each crossing of one that is allowed without a guard, s
     * @param wireS for each crossing of a wire by agreement, s
     * @param waterS for each 100 m over water, s
     * @param quietS for each 100 m over protected ground, animals and other places that want quiet, s
     * @param poor of ground where a load let go would do poorly
     */
    public record Exposure(
            double guardedS, double openS, double wireS, double waterS, double quietS, Poor poor) {
        /** Length that the prices of areas are for, m. */
        public static final double PER_M = 100;

        /**
         * @source PRACTICE a guard halts a road for half a minute or more; where nobody guards, the load is over it
         *     for seconds; a load lost in water or among animals is a nuisance, not a danger
         */
        public static final Exposure USUAL = new Exposure(30, 15, 45, 2, 4);

        /** Minutes alone count. */
        public static final Exposure NONE = new Exposure(0, 0, 0, 0, 0);

        /** Ground where a load let go would do poorly has no price. */
        public Exposure(double guardedS, double openS, double wireS, double waterS, double quietS) {
            this(guardedS, openS, wireS, waterS, quietS, Poor.NONE);
        }

        public Exposure {
            Objects.requireNonNull(poor, "poor");
            if (!(isPrice(guardedS)
                    && isPrice(openS)
                    && isPrice(wireS)
                    && isPrice(waterS)
                    && isPrice(quietS))) {
                throw new IllegalArgumentException("a price of exposure is out of range.");
            }
        }

        /**
         * Prices of ground where a load may be let go but would do poorly.
         *
         * @param forestS for each 100 m over forest that may be passed over, s
         * @param alongS for each 100 m nearer than {@link #ALONG_M} to a road, track, trail or railway that may
         *     be crossed, s
         * @param steepS for each 100 m over ground so steep that the load would not come to rest, s
         */
        public record Poor(double forestS, double alongS, double steepS) {
            /** What a load hits that is let go beside a road, on the level, m. @source PRACTICE */
            public static final double ALONG_M = 50;

            /** Steepness is that of squares of the plane, their sides so long, m. @source PRACTICE */
            public static final double CELL_M = 50;

            /** Squares farther than this from every place, east or north, are not looked at, m. */
            public static final double AROUND_M = 2000;

            /** None of it has a price. */
            public static final Poor NONE = new Poor(0, 0, 0);

            public Poor {
                if (!(isPrice(forestS) && isPrice(alongS) && isPrice(steepS))) {
                    throw new IllegalArgumentException("a price of poor ground is out of range.");
                }
            }

            // Its own, so that neither record waits for the other to be set up.
            private static boolean isPrice(double priceS) {
                return priceS >= 0 && priceS <= 3600;
            }
        }

        private static boolean isPrice(double priceS) {
            return priceS >= 0 && priceS <= 3600;
        }
    }

    /**
     * How lines and loads are flown.
     *
     * @param slowingMPerS2 hardest deceleration, m/s²
     * @param noseUpRad farthest the nose may rise above its hover attitude while slowing, rad
     * @param periodSpreadFraction how far the real period of swing may be off the computed one
     * @param stillM a load this near to rest counts as still, m
     * @param swingRad how far beyond its steady shape a line may swing up and aft, rad
     * @param emptyTrailRad largest steady trail of an empty line, rad
     * @param tailClearM least distance of line and load from the tail's end, the tail rotor's disc
     *     counted in, m
     */
    public record Flying(
            double slowingMPerS2,
            double noseUpRad,
            double periodSpreadFraction,
            double stillM,
            double swingRad,
            double emptyTrailRad,
            double tailClearM) {
        /** @source PRACTICE gentle; a tail rotor's disc of 2 m and a metre to spare */
        public static final Flying USUAL =
                new Flying(
                        1.2, Math.toRadians(10), 0.1, 1, Math.toRadians(20), Math.toRadians(45), 3);

        public Flying {
            if (!(slowingMPerS2 > 0
                    && slowingMPerS2 <= 10
                    && periodSpreadFraction >= 0
                    && periodSpreadFraction < 0.5
                    && stillM > 0
                    && tailClearM >= 0)) {
                throw new IllegalArgumentException("how lines are flown has a value out of range.");
            }
            if (!(noseUpRad > 0
                    && noseUpRad <= Math.PI / 4
                    && swingRad >= 0
                    && swingRad < Math.PI / 2
                    && emptyTrailRad > 0
                    && emptyTrailRad < Math.PI / 2)) {
                throw new IllegalArgumentException("an angle of flying lines is out of range.");
            }
        }
    }

    /**
     * How poles are set.
     *
     * @param attachFraction where the guys are attached, from the butt over the length
     * @param woodCentreFraction centre of gravity of a wooden pole, from the butt over the length
     * @param otherCentreFraction the same of any other pole
     * @param handPullN what one person holds by hand at a guy, N
     * @param anchorHoldN what an anchor holds, N
     * @param leanRad lean from plumb that the guys must hold meanwhile, rad
     * @param sidePullRad farthest from plumb that the line may pull at a pole, rad
     */
    public record Guying(
            double attachFraction,
            double woodCentreFraction,
            double otherCentreFraction,
            double handPullN,
            double anchorHoldN,
            double leanRad,
            double sidePullRad) {
        /**
         * What holds where the job says nothing.
         *
         * @source NAVEDTRA-14251 a single picket in loam holds 700 lb; PRACTICE the rest: two hands hold
         *     300 N
         */
        public static final Guying USUAL =
                new Guying(0.75, 0.45, 0.5, 300, 3114, Math.toRadians(3), Math.toRadians(5));

        public Guying {
            if (!(attachFraction > 0
                    && attachFraction <= 1
                    && woodCentreFraction > 0
                    && woodCentreFraction < 1
                    && otherCentreFraction > 0
                    && otherCentreFraction < 1)) {
                throw new IllegalArgumentException("a part of a pole's length is out of range.");
            }
            if (!(handPullN > 0
                    && anchorHoldN > 0
                    && leanRad > 0
                    && leanRad < Math.PI / 6
                    && sidePullRad >= 0
                    && sidePullRad < Math.PI / 6)) {
                throw new IllegalArgumentException("how poles are set has a value out of range.");
            }
        }
    }
}
