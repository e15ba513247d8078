package underhook.testkit;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;

/**
 * Random samples from a fixed seed, for laws that must hold over a whole range.
 *
 * <p>The same seed gives the same samples on any machine. A failing sample is reported with its seed and
 * number. Not safe for threads.
 */
public final class SeededSamples {
    private final long seed;
    private final SplittableRandom random;

    private SeededSamples(long seed) {
        this.seed = seed;
        this.random = new SplittableRandom(seed);
    }

    public static SeededSamples of(long seed) {
        return new SeededSamples(seed);
    }

    /** Runs a law on so many samples; the law draws what it needs. */
    public void forEach(int count, Consumer<SeededSamples> law) {
        for (int i = 0; i < count; i++) {
            try {
                law.accept(this);
            } catch (AssertionError | IllegalArgumentException e) {
                throw new AssertionError(
                        "seed " + seed + ", sample " + i + ": " + e.getMessage(), e);
            }
        }
    }

    /** Uniform in [from, to]; one draw in twenty is an end itself. */
    public double between(double from, double to) {
        int corner = random.nextInt(40);
        if (corner == 0) {
            return from;
        }
        return corner == 1 ? to : random.nextDouble(from, to);
    }

    /** Uniform whole number in [from, to]. */
    public int wholeBetween(int from, int to) {
        return random.nextInt(from, to + 1);
    }

    /** Uniform whole number in [from, to]. */
    public long longBetween(long from, long to) {
        return random.nextLong(from, to + 1);
    }

    public <T> T oneOf(List<T> values) {
        return values.get(random.nextInt(values.size()));
    }

    public boolean coin() {
        return random.nextBoolean();
    }
}
