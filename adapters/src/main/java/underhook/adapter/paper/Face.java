package underhook.adapter.paper;

/**
 * How text looks.
 *
 * @param size height of the type, points
 */
record Face(boolean bold, double size) {
    /** For text that must be read. */
    static final Face TEXT = new Face(false, 11);

    static final Face STRONG = new Face(true, 11);

    /** For numbers that are flown. */
    static final Face FLOWN = new Face(true, 15);

    /** For what is only looked up: plan id, scale, attribution. */
    static final Face SMALL = new Face(false, 8);

    Face withSize(double otherSize) {
        return new Face(bold, otherSize);
    }
}
