package underhook.adapter.fuzz;

import java.io.IOException;
import java.time.Duration;

/** What the fuzzer calls, in a process of its own; the property {@code target} names the reader. */
public final class Fuzzed {
    private static final Duration LONGEST = Duration.ofSeconds(1);

    private static final Target TARGET = Targets.of(System.getProperty("target", ""));

    private Fuzzed() {}

    public static void fuzzerTestOneInput(byte[] bytes) throws IOException {
        long start = System.nanoTime();
        TARGET.read(bytes);
        if (System.nanoTime() - start < LONGEST.toNanos()) {
            return;
        }
        // Once may be the machine; twice is the reader.
        long again = System.nanoTime();
        TARGET.read(bytes);
        if (System.nanoTime() - again >= LONGEST.toNanos()) {
            throw new IllegalStateException(
                    "reading " + bytes.length + " bytes takes longer than " + LONGEST);
        }
    }
}
