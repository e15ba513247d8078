package underhook.core.job;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * The operator's rules for this job.
 *
 * @param constructionFraction part of the sling capacity left unused for construction lifts
 * @param estimatedMassFactor what an estimated mass is multiplied with for lift
 * @param clearanceM least distance of load, line and machine to ground and canopy on a leg, m
 * @param rotorClearanceM least height of rotor and tail above canopy and ground at a place, m
 * @param wireClearanceM least distance to a wire that is not crossed by agreement, m
 * @param stripHalfWidthM half the strip that a track is checked over, m
 * @param canopyLegM canopy assumed on legs where no raster says otherwise, m
 * @param finalM straight last part of the way in and first of the way out, m
 * @param tailwindMPerS most tailwind on the last part, m/s
 * @param crosswindMPerS most crosswind on the last part, m/s
 * @param landingSlopeRad steepest ground to land people on, rad
 * @param hoverExit whether people may leave the machine in the hover
 * @param elevationToleranceM how far a listed elevation may be off the terrain, m
 * @param trailNearM a place this near a trail needs a guard, m
 * @param secondReleaseS extra time for each further release on one hook trip, s
 * @param returnExtraS added to each empty return for turning in and settling, s
 * @param boardingS to board or leave, s
 * @param lineChangeS to fit, take off or change the line, s
 * @param refuelS to refuel besides the flow, s
 * @param refuelKgPerS flow of fuel, kg/s
 * @param refuelHandlerBusyS how long whoever refuelled hooks nothing afterwards, s
 * @param contingencyS fuel kept above the reserve when planning, as time, s
 * @param ballastKg ballast that may be added under a light load, kg; 0 when none is carried
 * @param leastSpeedMPerS slowest airspeed worth flying a load at; below, it flies badly, m/s
 * @param combineMassKg most mass of loads that ride together, kg
 * @param dutyFrom when the pilot's duty begins
 * @param dutyS longest duty, s
 * @param engineOnS longest time with the engine on before a break, s
 * @param breakS shortest break with the engine off, s
 * @param engineOnDayS longest time with the engine on in the day, s
 * @param dayEndBeforeSunsetS the last landing this long before sunset, s
 * @param margins at a place and to wires
 * @param costs the job's own rates
 * @param handling how loads are flown, hung and set
 */
public record Rules(
        double constructionFraction,
        double estimatedMassFactor,
        double clearanceM,
        double rotorClearanceM,
        double wireClearanceM,
        double stripHalfWidthM,
        double canopyLegM,
        double finalM,
        double tailwindMPerS,
        double crosswindMPerS,
        double landingSlopeRad,
        boolean hoverExit,
        double elevationToleranceM,
        double trailNearM,
        double secondReleaseS,
        double returnExtraS,
        double boardingS,
        double lineChangeS,
        double refuelS,
        double refuelKgPerS,
        double refuelHandlerBusyS,
        double contingencyS,
        double ballastKg,
        double leastSpeedMPerS,
        double combineMassKg,
        Instant dutyFrom,
        double dutyS,
        double engineOnS,
        double breakS,
        double engineOnDayS,
        double dayEndBeforeSunsetS,
        Costs costs,
        Margins margins,
        List<LoadKind> kinds,
        Handling handling) {
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
        if (!(constructionFraction >= 0 && constructionFraction < 1 && estimatedMassFactor >= 1)) {
            throw new IllegalArgumentException("margins are out of range.");
        }
        if (!(refuelKgPerS > 0 && engineOnS > 0 && engineOnDayS > 0 && dutyS > 0)) {
            throw new IllegalArgumentException("times are out of range.");
        }
    }

    /** With what is usual where the job says nothing of flying, hanging and setting loads. */
    public Rules(
            double constructionFraction,
            double estimatedMassFactor,
            double clearanceM,
            double rotorClearanceM,
            double wireClearanceM,
            double stripHalfWidthM,
            double canopyLegM,
            double finalM,
            double tailwindMPerS,
            double crosswindMPerS,
            double landingSlopeRad,
            boolean hoverExit,
            double elevationToleranceM,
            double trailNearM,
            double secondReleaseS,
            double returnExtraS,
            double boardingS,
            double lineChangeS,
            double refuelS,
            double refuelKgPerS,
            double refuelHandlerBusyS,
            double contingencyS,
            double ballastKg,
            double leastSpeedMPerS,
            double combineMassKg,
            Instant dutyFrom,
            double dutyS,
            double engineOnS,
            double breakS,
            double engineOnDayS,
            double dayEndBeforeSunsetS,
            Costs costs,
            Margins margins,
            List<LoadKind> kinds) {
        this(
                constructionFraction,
                estimatedMassFactor,
                clearanceM,
                rotorClearanceM,
                wireClearanceM,
                stripHalfWidthM,
                canopyLegM,
                finalM,
                tailwindMPerS,
                crosswindMPerS,
                landingSlopeRad,
                hoverExit,
                elevationToleranceM,
                trailNearM,
                secondReleaseS,
                returnExtraS,
                boardingS,
                lineChangeS,
                refuelS,
                refuelKgPerS,
                refuelHandlerBusyS,
                contingencyS,
                ballastKg,
                leastSpeedMPerS,
                combineMassKg,
                dutyFrom,
                dutyS,
                engineOnS,
                breakS,
                engineOnDayS,
                dayEndBeforeSunsetS,
                costs,
                margins,
                kinds,
                Handling.USUAL);
    }

    /** The same with other handling. */
    public Rules withHandling(Handling other) {
        return new Rules(
                constructionFraction,
                estimatedMassFactor,
                clearanceM,
                rotorClearanceM,
                wireClearanceM,
                stripHalfWidthM,
                canopyLegM,
                finalM,
                tailwindMPerS,
                crosswindMPerS,
                landingSlopeRad,
                hoverExit,
                elevationToleranceM,
                trailNearM,
                secondReleaseS,
                returnExtraS,
                boardingS,
                lineChangeS,
                refuelS,
                refuelKgPerS,
                refuelHandlerBusyS,
                contingencyS,
                ballastKg,
                leastSpeedMPerS,
                combineMassKg,
                dutyFrom,
                dutyS,
                engineOnS,
                breakS,
                engineOnDayS,
                dayEndBeforeSunsetS,
                costs,
                margins,
                kinds,
                other);
    }

    /** The same with other kinds of load. */
    public Rules withKinds(List<LoadKind> other) {
        return new Rules(
                constructionFraction,
                estimatedMassFactor,
                clearanceM,
                rotorClearanceM,
                wireClearanceM,
                stripHalfWidthM,
                canopyLegM,
                finalM,
                tailwindMPerS,
                crosswindMPerS,
                landingSlopeRad,
                hoverExit,
                elevationToleranceM,
                trailNearM,
                secondReleaseS,
                returnExtraS,
                boardingS,
                lineChangeS,
                refuelS,
                refuelKgPerS,
                refuelHandlerBusyS,
                contingencyS,
                ballastKg,
                leastSpeedMPerS,
                combineMassKg,
                dutyFrom,
                dutyS,
                engineOnS,
                breakS,
                engineOnDayS,
                dayEndBeforeSunsetS,
                costs,
                margins,
                other,
                handling);
    }
}
