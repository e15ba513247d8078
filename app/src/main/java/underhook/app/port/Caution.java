package underhook.app.port;

/** The caution that stands on every page, screen and written file. */
public final class Caution {
    public static final String TEXT =
            "Planning aid. The flight manual, the operator's manual, the line owner, local rules and the"
                    + " licensed people decide.";

    private Caution() {}
}
