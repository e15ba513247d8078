package underhook.core.job;

import java.util.Objects;

/**
 * What the operator's rules say of a kind of load.
 *
 * @param name the word in the load list
 * @param speedMPerS true airspeed with this load, m/s
 * @param hookUpS time to hook up and lift, s
 * @param setDownS time in the hover to set down and release, s
 * @param standsUp the load is set upright and held by guys (a pole): it adds its length under the line
 * @param constructionMargin construction work: part of the sling capacity is not used
 * @param sharesHook may ride with others where the load list allows it
 * @param lastAtPlace leaves its place only after everything meant for that place has been set down
 * @param trailLimitRad largest steady trail angle, rad
 * @param dragCoefficient used with the largest side where the load list states no drag area
 * @param busyAfterS how long the crew is busy with it after release, s
 * @param readyAfterS how long after its release, with the crew there, the place is ready for what
 *     comes next, s
 * @param shape how it moves on the ground when it falls
 * @param heavierFactor what a stated mass is multiplied with for lift, because loads of this kind came
 *     heavier than their list, at least 1
 */
public record LoadKind(
        String name,
        double speedMPerS,
        double hookUpS,
        double setDownS,
        boolean standsUp,
        boolean constructionMargin,
        boolean sharesHook,
        boolean lastAtPlace,
        double trailLimitRad,
        double dragCoefficient,
        double busyAfterS,
        double readyAfterS,
        WindLimit windLimit,
        LoadShape shape,
        double heavierFactor) {
    public LoadKind {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(windLimit, "windLimit");
        if (!(speedMPerS > 0
                && hookUpS >= 0
                && setDownS >= 0
                && busyAfterS >= 0
                && readyAfterS >= 0)) {
            throw new IllegalArgumentException(
                    "speed and times of kind " + name + " are out of range.");
        }
        if (!(trailLimitRad > 0 && trailLimitRad < Math.PI / 2 && dragCoefficient > 0)) {
            throw new IllegalArgumentException(
                    "drag and trail of kind " + name + " are out of range.");
        }
        if (!(heavierFactor >= 1 && heavierFactor < 10)) {
            throw new IllegalArgumentException("heavierFactor of kind " + name + " is below 1.");
        }
    }

    /** The same with what was learned of it. */
    public LoadKind learned(double setDownLearnedS, double heavierLearnedFactor) {
        return new LoadKind(
                name,
                speedMPerS,
                hookUpS,
                setDownLearnedS,
                standsUp,
                constructionMargin,
                sharesHook,
                lastAtPlace,
                trailLimitRad,
                dragCoefficient,
                busyAfterS,
                readyAfterS,
                windLimit,
                shape,
                heavierLearnedFactor);
    }
}
