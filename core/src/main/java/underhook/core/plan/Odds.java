package underhook.core.plan;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;

/**
 * How safe the finish is: the day replayed many times, in the plan's order, with times that vary.
 *
 * <p>An estimate of how a day goes, never a clearance for a lift. It stands on the spreads that the job states
 * or, where it states none, on guesses.
 *
 * @param replays how many days were drawn
 * @param allInTime before the wind, the dark and the duty limit, and without another refuelling
 * @param beforeWind every lift inside its wind window
 * @param beforeDark the last landing before the day's light ends
 * @param withinDuty duty and engine time kept
 * @param withinFuel no stop for fuel but those planned
 * @param placed how many loads lie in time when a day is ended at its limits
 * @param finishMedianAt half of the days end by then, whole minutes, rounded up
 * @param finishLateAt nine days of ten end by then, whole minutes, rounded up
 * @param lastStarts one for each placed pole whose window closes before the day ends, in the order flown
 * @param gains what changing one thing would bring, most first
 * @param learnedSamples how many flights of earlier days the times stand on; 0 when none
 */
public record Odds(
        int replays,
        Chance allInTime,
        Chance beforeWind,
        Chance beforeDark,
        Chance withinDuty,
        Chance withinFuel,
        Placed placed,
        Instant finishMedianAt,
        Instant finishLateAt,
        List<LastStart> lastStarts,
        List<Gain> gains,
        int learnedSamples) {
    /**
     * A chance as counted.
     *
     * @param countedFraction share of the replays
     * @param leastFraction what the true share is not below, at one error in twenty of this statement
     */
    public record Chance(double countedFraction, double leastFraction) {
        public Chance {
            if (!(leastFraction >= 0 && leastFraction <= countedFraction && countedFraction <= 1)) {
                throw new IllegalArgumentException(
                        "a chance is out of range: "
                                + leastFraction
                                + " of "
                                + countedFraction
                                + ".");
            }
        }
    }

    /**
     * How many loads a day places when no lift is begun behind which a limit would be broken before the machine
     * stands again. What is skipped gives no time back.
     *
     * @param planned how many the plan places
     * @param halfDays half of the days place so many or more
     * @param mostDays nine days of ten place so many or more
     * @param loads one for each placed load, in the order let go
     */
    public record Placed(int planned, int halfDays, int mostDays, List<InTime> loads) {
        public Placed {
            loads = List.copyOf(loads);
            if (!(mostDays >= 0
                    && mostDays <= halfDays
                    && halfDays <= planned
                    && loads.size() == planned)) {
                throw new IllegalArgumentException(
                        "loads in time are out of range: "
                                + mostDays
                                + ", "
                                + halfDays
                                + " of "
                                + planned
                                + ".");
            }
        }
    }

    /**
     * One load's chance to lie in time, with all that it needs.
     *
     * @param plannedAt let go as planned
     */
    public record InTime(LoadId load, PlaceId place, Instant plannedAt, Chance chance) {}

    /**
     * The last sensible hook-up of a pole whose window closes.
     *
     * @param plannedAt hook-up as planned
     * @param lastAt latest hook-up with which enough of the replays are inside the window, whole minutes,
     *     rounded down
     * @param inTime chance that it is inside when the day is flown as planned
     */
    public record LastStart(
            LoadId load, PlaceId place, Instant plannedAt, Instant lastAt, Chance inTime) {}

    /**
     * What one change would bring.
     *
     * @param what the change, in words
     * @param gainFraction by how much the chance of all in time rises
     * @param leastGainFraction what that is not below, at one error in twenty
     * @param finishEarlierS by how much earlier the day ends on average, s
     */
    public record Gain(
            String what, double gainFraction, double leastGainFraction, double finishEarlierS) {}

    public Odds {
        if (replays < 1 || learnedSamples < 0) {
            throw new IllegalArgumentException("replays (" + replays + ") must be above 0.");
        }
        Objects.requireNonNull(placed, "placed");
        Objects.requireNonNull(finishMedianAt, "finishMedianAt");
        Objects.requireNonNull(finishLateAt, "finishLateAt");
        lastStarts = List.copyOf(lastStarts);
        gains = List.copyOf(gains);
    }
}
