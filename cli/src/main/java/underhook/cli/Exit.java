package underhook.cli;

/** Exit codes. */
final class Exit {
    static final int DONE = 0;
    static final int FAILED = 1;
    static final int INPUT_REFUSED = 2;
    static final int NO_PLAN = 3;
    static final int CHECK_REFUSED = 4;

    /** Stopped by Ctrl-C before there was anything to write; 143 where it was asked to terminate. */
    static final int STOPPED = 130;

    private Exit() {}
}
