package underhook.cli;

/** Exit codes. */
final class Exit {
    static final int DONE = 0;
    static final int FAILED = 1;
    static final int INPUT_REFUSED = 2;
    static final int NO_PLAN = 3;
    static final int CHECK_REFUSED = 4;

    private Exit() {}
}
