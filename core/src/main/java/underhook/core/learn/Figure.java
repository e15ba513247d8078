package underhook.core.learn;

import java.util.Objects;

/**
 * One line of what earlier days taught.
 *
 * @param group what it was learned of: kind of load, place and line, or the kind alone for masses, or the
 *     machine for fuel
 * @param samples how many it stands on
 * @param believedRatio flown over planned, held towards the plan, above 0
 * @param spreadRatio standard deviation of a single flight's ratio within such groups, not negative
 */
public record Figure(
        Measure quantity, String group, int samples, double believedRatio, double spreadRatio) {
    public Figure {
        Objects.requireNonNull(quantity, "quantity");
        if (group.isBlank() || samples < 1) {
            throw new IllegalArgumentException("a figure must have a group and samples.");
        }
        if (!(believedRatio > 0 && believedRatio < 100 && spreadRatio >= 0 && spreadRatio < 100)) {
            throw new IllegalArgumentException("the ratios of " + group + " are out of range.");
        }
    }

    /** Kind of load of the group; the whole group where it names nothing else. */
    public String kind() {
        int end = group.indexOf(" / ");
        return end < 0 ? group : group.substring(0, end);
    }
}
