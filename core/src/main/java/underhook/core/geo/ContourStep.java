package underhook.core.geo;

import java.util.List;
import java.util.stream.IntStream;
import underhook.core.unit.Units;

/**
 * From one contour to the next: a round number of metres or feet, so that what stands beside a line is round as well.
 *
 * @param number of metres or feet, above 0
 */
public record ContourStep(int number, Unit unit) {
    /** More lines than this on one map are not told apart. @source PRACTICE own choice */
    private static final int MOST_LINES = 25;

    private static final int MAIN = 5;

    private static final List<Integer> STEPS =
            List.of(1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000);

    /** What heights are counted in. */
    public enum Unit {
        M(1),
        FT(Units.ftToM(1));

        private final double lengthM;

        Unit(double lengthM) {
            this.lengthM = lengthM;
        }
    }

    /**
     * One contour.
     *
     * @param number of metres or feet AMSL
     * @param heightAmslM the same, m AMSL
     * @param main whether it is one of each five, drawn stronger
     */
    public record Level(int number, double heightAmslM, boolean main) {}

    public ContourStep {
        if (number < 1) {
            throw new IllegalArgumentException("number (" + number + ") must be at least 1.");
        }
    }

    /** The least step with which there are not too many lines; the largest one where there always are. */
    public static ContourStep between(double lowAmslM, double highAmslM, Unit unit) {
        int number =
                STEPS.stream()
                        .filter(
                                step ->
                                        (highAmslM - lowAmslM) / (step * unit.lengthM)
                                                <= MOST_LINES)
                        .findFirst()
                        .orElse(STEPS.get(STEPS.size() - 1));
        return new ContourStep(number, unit);
    }

    /** All from one height to the other, lowest first. */
    public List<Level> levels(double lowAmslM, double highAmslM) {
        double stepM = number * unit.lengthM;
        return IntStream.rangeClosed(
                        (int) Math.ceil(lowAmslM / stepM), (int) Math.floor(highAmslM / stepM))
                .mapToObj(n -> new Level(n * number, n * stepM, n % MAIN == 0))
                .toList();
    }

    /** The step between the stronger lines, in the unit. */
    public int main() {
        return MAIN * number;
    }
}
