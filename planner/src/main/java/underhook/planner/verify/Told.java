package underhook.planner.verify;

import java.util.Locale;

/** What a violation says: message, value, limit, unit and where the limit is from. */
record Told(String source, String message, String value, String limit, String unit) {
    static Told of(String source, String message) {
        return new Told(source, message, "", "", "");
    }

    /** The same with its figures, two digits behind the point. */
    Told figures(Number found, Number allowed, String inUnit) {
        return new Told(source, message, text(found), text(allowed), inUnit);
    }

    private static String text(Number number) {
        if (number instanceof Integer || number instanceof Long) {
            return number.toString();
        }
        String text = String.format(Locale.ROOT, "%.2f", number.doubleValue());
        return text.equals("-0.00") ? "0.00" : text;
    }
}
