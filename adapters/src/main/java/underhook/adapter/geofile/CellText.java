package underhook.adapter.geofile;

import java.math.BigDecimal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What stands in a cell of a table, as a person would type it. */
final class CellText {
    /** Further out a number is shorter, and still exact, with an exponent. */
    private static final int LONGEST_PLAIN = 40;

    private CellText() {}

    /** The text; empty for NULL. */
    static String of(@Nullable Object cell, String declaredType) {
        if (cell == null) {
            return "";
        }
        boolean isYesNo = declaredType.toUpperCase(Locale.ROOT).startsWith("BOOLEAN");
        if (isYesNo && cell instanceof Number number) {
            return switch (number.toString()) {
                case "0" -> "no";
                case "1" -> "yes";
                default -> number.toString();
            };
        }
        if (cell instanceof Double number && Double.isFinite(number)) {
            BigDecimal exact = new BigDecimal(number.toString());
            String plain = exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
            return plain.length() <= LONGEST_PLAIN ? plain : number.toString();
        }
        return cell.toString();
    }
}
