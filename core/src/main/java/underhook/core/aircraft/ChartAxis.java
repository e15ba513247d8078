package underhook.core.aircraft;

import java.util.Locale;

/**
 * One axis of a printed table beside the air that is looked up in it, as a person reads it: what lies beyond an end
 * is rounded away from it and the end towards the table, so that the two are told apart however little it is.
 *
 * @param name of the axis
 * @param found what is looked up, in the unit
 * @param from the table's first figure, in the unit
 * @param to the table's last figure, in the unit
 * @param unit of all three
 */
record ChartAxis(String name, double found, double from, double to, String unit) {
    /** What turning units leaves over, in tenths. */
    private static final double HAIR_FRACTION = 1e-6;

    /** Whether the table does not cover it; true for NaN. */
    boolean isBeyond() {
        return !(found >= from && found <= to);
    }

    /** How far beyond an end it lies, as a share of the axis; 0 within. */
    double beyondFraction() {
        return Math.max(0, Math.max(from - found, found - to)) / (to - from);
    }

    String value() {
        return found > to ? up(found) : down(found);
    }

    /** The end that it is beyond. */
    String limit() {
        return found > to ? down(to) : up(from);
    }

    /** A part of a sentence. */
    String say() {
        return "the "
                + name
                + " is "
                + value()
                + " "
                + unit
                + " and the table runs from "
                + up(from)
                + " to "
                + down(to)
                + " "
                + unit;
    }

    private String up(double value) {
        return tenths(Math.ceil(value * 10 - HAIR_FRACTION) / 10);
    }

    private String down(double value) {
        return tenths(Math.floor(value * 10 + HAIR_FRACTION) / 10);
    }

    private static String tenths(double value) {
        return String.format(Locale.ROOT, "%.1f", value)
                .replaceFirst("\\.0$", "")
                .replaceFirst("^-0$", "0");
    }
}
