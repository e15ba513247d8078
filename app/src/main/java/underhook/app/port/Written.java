package underhook.app.port;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/**
 * Numbers and times as they are written: few digits, and to the safe side where somebody flies by them.
 *
 * <p>A number is rounded as its shortest decimal text, not as its binary value, so a number that was
 * written once is written the same again.
 */
public final class Written {
    private static final DateTimeFormatter WHOLE = format("uuuu-MM-dd'T'HH:mm:ssXXXXX");
    private static final DateTimeFormatter MILLIS = format("uuuu-MM-dd'T'HH:mm:ss.SSSXXXXX");
    private static final DateTimeFormatter MICROS = format("uuuu-MM-dd'T'HH:mm:ss.SSSSSSXXXXX");

    private Written() {}

    private static DateTimeFormatter format(String pattern) {
        return DateTimeFormatter.ofPattern(pattern, Locale.ROOT);
    }

    /** Rounded to the nearest. Throws when the value is not finite. */
    public static BigDecimal nearest(double value, int decimals) {
        return rounded(value, decimals, RoundingMode.HALF_EVEN);
    }

    /** Rounded towards minus infinity, for what may not be read as more than it is. */
    public static BigDecimal down(double value, int decimals) {
        return rounded(value, decimals, RoundingMode.FLOOR);
    }

    /** Rounded towards plus infinity, for what may not be read as less than it is. */
    public static BigDecimal up(double value, int decimals) {
        return rounded(value, decimals, RoundingMode.CEILING);
    }

    private static BigDecimal rounded(double value, int decimals, RoundingMode mode) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value (" + value + ") must be finite.");
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, mode);
        // Zero would keep its scale, and hundreds would become 1E+2.
        BigDecimal stripped =
                rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /**
     * ISO 8601 with the zone's offset at that instant; seconds always stand, with three or six decimals
     * where they are not whole. Parts under a microsecond are cut off.
     */
    public static String time(Instant instant, ZoneId zone) {
        ZonedDateTime kept = instant.truncatedTo(ChronoUnit.MICROS).atZone(zone);
        int micros = kept.getNano() / 1000;
        DateTimeFormatter format = micros == 0 ? WHOLE : micros % 1000 == 0 ? MILLIS : MICROS;
        return format.format(kept);
    }
}
