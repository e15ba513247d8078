package underhook.bench;

/** Something that is measured against a baseline in the same run. */
interface Measured {
    /** Word on the command line. */
    String name();

    /** Measures and tells, in one line or a few. */
    String measure();
}
