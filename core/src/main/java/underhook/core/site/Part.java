package underhook.core.site;

/** What needs room. */
public enum Part {
    ROTOR,
    TAIL,
    FUSELAGE,
    LINE,
    LOAD;

    /** Whether it hangs under the machine. */
    boolean hangs() {
        return this == LINE || this == LOAD;
    }

    /** As written in files and on paper. */
    public String word() {
        return switch (this) {
            case ROTOR -> "rotor";
            case TAIL -> "tail";
            case FUSELAGE -> "fuselage";
            case LINE -> "line";
            case LOAD -> "load";
        };
    }
}
