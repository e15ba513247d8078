package underhook.adapter.job.text;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as somebody typed it.
 *
 * @param value the number, before any conversion
 * @param unit what was written behind it, in small letters, empty when nothing was
 * @param estimated whether it was marked as about right
 */
record NumberText(double value, String unit, boolean estimated) {
    private static final Pattern SHAPE =
            Pattern.compile(
                    "(?<about>~|ca\\.?|circa|about|approx\\.?)?\\s*"
                            + "(?<number>[+-]?[0-9]+(?:[.,][0-9]+)?(?:[eE][+-]?[0-9]{1,3})?)"
                            + "\\s*(?<unit>[^0-9\\s.,+-][^0-9]{0,8}2?)?");
    private static final Pattern LEADING_ZERO = Pattern.compile("[+-]?0[0-9].*");
    private static final Pattern MAYBE_THOUSANDS =
            Pattern.compile("[+-]?[1-9][0-9]{0,2}[.,][0-9]{3}");

    /** Why a text is no number, or the number. */
    record Reading(Optional<NumberText> number, String what, String allowed) {
        static Reading refused(String what, String allowed) {
            return new Reading(Optional.empty(), what, allowed);
        }
    }

    /** Reads a number; {@code style} says what a comma means. */
    static Reading read(String text, Decimal style) {
        String small = text.strip().toLowerCase(Locale.ROOT);
        Matcher match = SHAPE.matcher(small);
        if (small.length() > 60 || !match.matches()) {
            return Reading.refused("is no number", "a number such as 12.5");
        }
        String digits = match.group("number");
        if (LEADING_ZERO.matcher(digits).matches()) {
            return Reading.refused("has a leading zero", "a number without leading zeros");
        }
        boolean comma = digits.indexOf(',') >= 0;
        if (comma && style == Decimal.POINT) {
            return Reading.refused("has a comma in a number", "a point before the decimals");
        }
        boolean ambiguous = comma || style == Decimal.COMMA;
        if (ambiguous && MAYBE_THOUSANDS.matcher(digits).matches()) {
            return Reading.refused(
                    "may be thousands or decimals",
                    "no thousands mark, or one decimal more or less");
        }
        double value = Double.parseDouble(digits.replace(',', '.'));
        if (!Double.isFinite(value)) {
            return Reading.refused("is out of any range", "a number such as 12.5");
        }
        String unit = match.group("unit") == null ? "" : match.group("unit").strip();
        return new Reading(
                Optional.of(new NumberText(value, unit, match.group("about") != null)), "", "");
    }

    /** What a comma means in the numbers of a file. */
    enum Decimal {
        /** No decimal comma. */
        POINT,
        /** Decimal commas may come, none seen. */
        EITHER,
        /** The file has decimal commas, so a point may be a thousands mark. */
        COMMA
    }
}
