package underhook.app.calc;

import java.util.Locale;

/**
 * A flag of a topic: its name, what it may hold, whether it must be given.
 *
 * @param from least value; not allowed itself when {@code openFrom}
 * @param to largest value; not allowed itself when {@code openTo}
 */
record Flag(
        String name,
        Kind kind,
        boolean required,
        double from,
        double to,
        boolean openFrom,
        boolean openTo) {
    /** What a flag holds. */
    enum Kind {
        NUMBER,
        WHOLE,
        NUMBERS,
        YES_NO,
        TIME,
        TEXT
    }

    /** A number in [from, to]. */
    static Flag number(String name, double from, double to) {
        return new Flag(name, Kind.NUMBER, true, from, to, false, false);
    }

    /** A number above 0, up to and with the limit. */
    static Flag positive(String name, double to) {
        return new Flag(name, Kind.NUMBER, true, 0, to, true, false);
    }

    static Flag of(String name, Kind kind) {
        return new Flag(
                name, kind, true, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, false, false);
    }

    Flag optional() {
        return new Flag(name, kind, false, from, to, openFrom, openTo);
    }

    Flag whole() {
        return new Flag(name, Kind.WHOLE, required, from, to, openFrom, openTo);
    }

    /** Without the upper end itself. */
    Flag below() {
        return new Flag(name, kind, required, from, to, openFrom, true);
    }

    boolean allows(double value) {
        return (openFrom ? value > from : value >= from) && (openTo ? value < to : value <= to);
    }

    /** "above 0 and at most 30". */
    String range() {
        return (openFrom ? "above " : "at least ")
                + plain(from)
                + (openTo ? " and below " : " and at most ")
                + plain(to);
    }

    /** "m" of "span-m", "n/m" of "weight-n-per-m"; empty when the name ends in no unit. */
    String unit() {
        String whole = name.replace("-per-", "/");
        int dash = whole.lastIndexOf('-');
        return dash > 0 && kind != Kind.TEXT ? whole.substring(dash + 1) : "";
    }

    private static String plain(double value) {
        return value % 1 > 0 || value % 1 < 0
                ? Double.toString(value)
                : String.format(Locale.ROOT, "%.0f", value);
    }
}
