package underhook.planner.order;

import java.util.Locale;

/** Numbers as the sentences of a plan give them. */
final class Figures {
    private Figures() {}

    static String text(double value, int digits) {
        String text = String.format(Locale.ROOT, "%." + digits + "f", value);
        // Of what rounds to nothing from below; nobody reads "-0" as a number.
        return text.matches("-0(\\.0+)?") ? text.substring(1) : text;
    }
}
