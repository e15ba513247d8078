package underhook.core.job;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * The operator's rules for this job.
 *
 * @param masses how loads are counted and hung together
 * @param distances how far machine, line and load keep from what is below and beside them
 * @param flying the ends of a way, and how slowly a load may be flown
 * @param landing where people are landed
 * @param times what things on the ground and at a set-down take
 * @param refuelling what filling takes, and what is kept in the tank
 * @param duty when the pilot may fly, and for how long
 * @param costs the job's own rates
 * @param margins at a place and to wires
 * @param kinds of loads
 * @param handling how loads are flown, hung and set
 */
public record Rules(
        Masses masses,
        Distances distances,
        Flying flying,
        Landing landing,
        Times times,
        Refuelling refuelling,
        Duty duty,
        Costs costs,
        Margins margins,
        List<LoadKind> kinds,
        Handling handling) {
    /**
     * How loads are counted and hung together.
     *
     * @param constructionFraction part of the sling capacity left unused for construction lifts
     * @param estimatedMassFactor what an estimated mass is multiplied with for lift
     * @param ballastKg ballast that may be added under a light load, kg; 0 when none is carried
     * @param combineMassKg most mass of loads that ride together, kg
     */
    public record Masses(
            double constructionFraction,
            double estimatedMassFactor,
            double ballastKg,
            double combineMassKg) {
        public Masses {
            if (!(constructionFraction >= 0
                    && constructionFraction < 1
                    && estimatedMassFactor >= 1)) {
                throw new IllegalArgumentException("margins are out of range.");
            }
        }
    }

    /**
     * How far machine, line and load keep from what is below and beside them, m.
     *
     * @param clearanceM least distance of load, line and machine to ground and canopy on a leg
     * @param rotorClearanceM least height of rotor and tail above canopy and ground at a place
     * @param wireClearanceM least distance to a wire that is not crossed by agreement
     * @param stripHalfWidthM half the strip that a track is checked over
     * @param canopyLegM canopy assumed on legs where no raster says otherwise
     * @param elevationToleranceM how far a listed elevation may be off the terrain
     * @param trailNearM a place this near a trail needs a guard
     */
    public record Distances(
            double clearanceM,
            double rotorClearanceM,
            double wireClearanceM,
            double stripHalfWidthM,
            double canopyLegM,
            double elevationToleranceM,
            double trailNearM) {}

    /**
     * The ends of a way, and how slowly a load may be flown.
     *
     * @param finalM straight last part of the way in and first of the way out, m
     * @param tailwindMPerS most tailwind on the last part, m/s
     * @param crosswindMPerS most crosswind on the last part, m/s
     * @param leastSpeedMPerS slowest airspeed worth flying a load at; below, it flies badly, m/s
     */
    public record Flying(
            double finalM, double tailwindMPerS, double crosswindMPerS, double leastSpeedMPerS) {}

    /**
     * Where people are landed.
     *
     * @param landingSlopeRad steepest ground to land people on, rad
     * @param hoverExit whether people may leave the machine in the hover; no plan makes use of it
     */
    public record Landing(double landingSlopeRad, boolean hoverExit) {}

    /**
     * What things on the ground and at a set-down take, s.
     *
     * @param secondReleaseS extra time for each further release on one hook trip
     * @param returnExtraS added to each empty return for turning in and settling
     * @param boardingS to board or leave
     * @param lineChangeS to fit, take off or change the line
     */
    public record Times(
            double secondReleaseS, double returnExtraS, double boardingS, double lineChangeS) {}

    /**
     * What filling takes, and what is kept in the tank.
     *
     * @param refuelS to refuel besides the flow, s
     * @param refuelKgPerS flow of fuel, kg/s
     * @param refuelHandlerBusyS how long whoever refuelled hooks nothing afterwards, s
     * @param contingencyS fuel kept above the reserve when planning, as time, s
     */
    public record Refuelling(
            double refuelS, double refuelKgPerS, double refuelHandlerBusyS, double contingencyS) {
        public Refuelling {
            if (!(refuelKgPerS > 0)) {
                throw new IllegalArgumentException("refuelKgPerS must be above 0.");
            }
        }
    }

    /**
     * When the pilot may fly, and for how long.
     *
     * @param from when the duty begins
     * @param longestS longest duty, s
     * @param engineOnS longest time with the engine on before a break, s
     * @param breakS shortest break with the engine off, s
     * @param engineOnDayS longest time with the engine on in the day, s
     * @param dayEndBeforeSunsetS the last landing this long before sunset, s
     * @param shutDown what is kept free of each time with the engine on
     */
    public record Duty(
            Instant from,
            double longestS,
            double engineOnS,
            double breakS,
            double engineOnDayS,
            double dayEndBeforeSunsetS,
            ShutDown shutDown) {
        /** With what is usual kept free. */
        public Duty(
                Instant from,
                double longestS,
                double engineOnS,
                double breakS,
                double engineOnDayS,
                double dayEndBeforeSunsetS) {
            this(
                    from,
                    longestS,
                    engineOnS,
                    breakS,
                    engineOnDayS,
                    dayEndBeforeSunsetS,
                    ShutDown.USUAL);
        }

        public Duty {
            if (!(engineOnS > 0 && engineOnDayS > 0 && longestS > 0)) {
                throw new IllegalArgumentException("times are out of range.");
            }
            if (shutDown.isStated() && !(shutDown.keptS() < engineOnS)) {
                throw new IllegalArgumentException(
                        "keptS (" + shutDown.keptS() + ") must be below engineOnS.");
            }
        }

        /** The longest that is planned with the engine on before a break, s; 0 where nothing is left of it. */
        public double stretchS() {
            return Math.max(0, engineOnS - shutDown.keptS());
        }
    }

    /**
     * What is kept free before the engine's limit, so that the engine is off by then.
     *
     * @param keptS no break is planned later than so long before the limit, s
     * @param isStated whether the job says so; what it does not say refuses no plan that was made otherwise
     */
    public record ShutDown(double keptS, boolean isStated) {
        /** Where the job says nothing. @source PRACTICE two minutes to shut down */
        public static final ShutDown USUAL = new ShutDown(120, false);

        public ShutDown {
            if (!(keptS >= 0)) {
                throw new IllegalArgumentException("keptS (" + keptS + ") must not be negative.");
            }
        }
    }

    /**
     * Margins at a place and to wires.
     *
     * @param placeSpreadM how far a place may be from where the list says, m
     * @param underClearanceM least distance of load and line to trees and things at a place, m
     * @param finalAngleRad steepness of the last part of the way in and the first of the way out at
     *     which the room is looked at, rad from the horizontal; a right angle is straight down and up
     * @param wireBuffers table of least distances to live wires, by voltage
     * @param bankRad most bank with which turns between the places are planned, rad
     */
    public record Margins(
            double placeSpreadM,
            double underClearanceM,
            double finalAngleRad,
            WireBufferRule wireBuffers,
            double bankRad) {
        /** Bank with a load on a line where the job says nothing. @source PRACTICE gentle turns */
        public static final double USUAL_BANK_RAD = Math.toRadians(20);

        /** What holds where the job says nothing. */
        public static final Margins USUAL = new Margins(2, 2, Math.PI / 2, WireBufferRule.CRANE);

        public Margins(
                double placeSpreadM,
                double underClearanceM,
                double finalAngleRad,
                WireBufferRule wireBuffers) {
            this(placeSpreadM, underClearanceM, finalAngleRad, wireBuffers, USUAL_BANK_RAD);
        }

        public Margins {
            if (!(placeSpreadM >= 0 && underClearanceM >= 0)) {
                throw new IllegalArgumentException("margins must not be negative.");
            }
            if (!(finalAngleRad > 0 && finalAngleRad <= Math.PI / 2)) {
                throw new IllegalArgumentException("finalAngleRad is out of range.");
            }
            if (!(bankRad > 0 && bankRad <= Math.PI / 3)) {
                throw new IllegalArgumentException("bankRad (" + bankRad + ") is out of range.");
            }
        }
    }

    /**
     * What a minute costs, in the job's own money, whole cents.
     *
     * @param flyingCents a minute of flying
     * @param standingCents a minute of the machine standing by
     * @param peopleCents a minute of all ground people together
     * @param flyingCountsPercent a flying minute counts as so much of its rate when days are compared; prices and
     *     invoices keep the rate
     * @param comforts what it costs to refuse one
     */
    public record Costs(
            long flyingCents,
            long standingCents,
            long peopleCents,
            String currency,
            int flyingCountsPercent,
            ComfortRates comforts) {
        /** The most that a flying minute may count, percent of its rate. */
        public static final int MOST_COUNTED_PERCENT = 99_999;

        /** Days are compared by what they cost. */
        public Costs(long flyingCents, long standingCents, long peopleCents, String currency) {
            this(flyingCents, standingCents, peopleCents, currency, 100, ComfortRates.NONE);
        }

        /** The same with other rates of comforts. */
        public Costs with(ComfortRates other) {
            return new Costs(
                    flyingCents, standingCents, peopleCents, currency, flyingCountsPercent, other);
        }

        public Costs {
            if (flyingCountsPercent < 1 || flyingCountsPercent > MOST_COUNTED_PERCENT) {
                throw new IllegalArgumentException(
                        "flyingCountsPercent (" + flyingCountsPercent + ") is out of range.");
            }
            Objects.requireNonNull(comforts, "comforts");
            if (flyingCents < 0 || standingCents < 0 || peopleCents < 0) {
                throw new IllegalArgumentException("costs must not be negative.");
            }
        }
    }

    public Rules {
        kinds = List.copyOf(kinds);
        Objects.requireNonNull(handling, "handling");
    }

    /** The same with other handling. */
    public Rules withHandling(Handling other) {
        return with(kinds, other);
    }

    /** The same with other kinds of load. */
    public Rules withKinds(List<LoadKind> other) {
        return with(other, handling);
    }

    private Rules with(List<LoadKind> ofLoads, Handling ofFlying) {
        return new Rules(
                masses,
                distances,
                flying,
                landing,
                times,
                refuelling,
                duty,
                costs,
                margins,
                ofLoads,
                ofFlying);
    }
}
