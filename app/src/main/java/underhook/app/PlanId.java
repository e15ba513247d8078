package underhook.app;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Names plans by the second in which they are made, in universal time. */
public final class PlanId {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);

    private PlanId() {}

    public static String of(Instant made) {
        return "plan-" + STAMP.format(made);
    }
}
