package underhook.core.flown;

/**
 * What the machine did in a day.
 *
 * @param engineOnS seconds with the engine on, a run that has not ended counted up to the last tap
 * @param flyingS seconds from take-off to landing, counted in the same way
 * @param flights how often it left the ground: each take-off, and each lift that was let go or given up with
 *     no take-off tapped since the landing or the shutdown before it
 * @param takeOffs take-offs tapped
 * @param landings landings tapped
 * @param lifts loads lifted on the hook, given up or not: the torque was pulled all the same
 * @param snags hard jerks and snags, each of which asks for an inspection
 */
public record MachineSums(
        double engineOnS,
        double flyingS,
        int flights,
        int takeOffs,
        int landings,
        int lifts,
        int snags) {
    public MachineSums {
        if (!(engineOnS >= 0 && flyingS >= 0)
                || flights < 0
                || takeOffs < 0
                || landings < 0
                || lifts < 0) {
            throw new IllegalArgumentException("sums must not be negative.");
        }
    }

    /** Whether a flight is known of which the take-off or the landing was not tapped. */
    public boolean missesTimes() {
        return takeOffs < flights || landings < flights;
    }
}
