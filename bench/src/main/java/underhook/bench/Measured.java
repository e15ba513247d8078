package underhook.bench;

import java.util.function.Consumer;

/** Something that is measured against a baseline in the same run. */
interface Measured {
    /** Word on the command line. */
    String name();

    /** Measures and tells, in one line or a few. */
    String measure();

    /** The same, each part told as soon as it is known. */
    default void measure(Consumer<String> told) {
        told.accept(measure());
    }
}
