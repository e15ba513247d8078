package underhook.adapter.geofile.source;

import java.util.regex.Pattern;

/** Decimal numbers in the text of a file. */
public final class Decimals {
    private static final Pattern SHAPE =
            Pattern.compile("[+-]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][+-]?[0-9]{1,3})?");
    private static final int LONGEST = 60;

    private Decimals() {}

    /** The number; refuses what is none, and what is beyond any. */
    public static double read(String field, String text) throws Unreadable {
        String typed = text.strip();
        if (typed.length() > LONGEST || !SHAPE.matcher(typed).matches()) {
            throw Unreadable.field(field, "is no number").found(typed);
        }
        double value = Double.parseDouble(typed);
        if (!Double.isFinite(value)) {
            throw Unreadable.range(field, "is out of any range").found(typed);
        }
        return value;
    }
}
