package underhook.app.port;

/** The sentence that stands in every file and on every screen that shows a plan. */
public final class Caution {
    public static final String TEXT =
            "Planning aid. The flight manual, the operator's manual, the line owner, local rules and"
                    + " the licensed people decide.";

    private Caution() {}
}
