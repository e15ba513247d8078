package underhook.adapter.table;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import underhook.app.port.Caution;
import underhook.app.port.ClosedDay;
import underhook.app.port.EveningWriter;
import underhook.app.port.Written;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.PlaceId;

/**
 * Facts for a report of each jerk and each lift that was given up; a person decides whether it is sent.
 *
 * @source EU-376-2014 article 4: within 72 hours
 */
final class OccurrenceDrafts implements EveningWriter {
    private static final Duration REPORT_WITHIN = Duration.ofDays(3);

    @Override
    public String fileName() {
        return "occurrence-drafts.txt";
    }

    @Override
    public void write(ClosedDay day, Path file) throws IOException {
        List<Tap> told =
                day.flown().taps().stream()
                        .filter(
                                tap ->
                                        tap.kind() == TapKind.SNAGGED
                                                || tap.kind() == TapKind.ABORTED)
                        .toList();
        StringBuilder text = new StringBuilder(Caution.TEXT).append("\n\n");
        if (told.isEmpty()) {
            text.append("No jerk, snag or lift given up was tapped.\n");
        }
        told.forEach(tap -> text.append(draft(tap, day)).append('\n'));
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    private static String draft(Tap tap, ClosedDay day) {
        String what =
                tap.kind() == TapKind.SNAGGED
                        ? "The line caught in something, or there was a hard jerk."
                        : "A lift was given up.";
        return String.join(
                "\n",
                "DRAFT, to be completed by a person. Not sent.",
                "Job: " + day.job().name() + ", plan " + day.plan().id(),
                "When: " + Written.time(tap.at(), day.job().zone()),
                "What: " + what,
                "Where: " + tap.place().map(PlaceId::value).orElse("not tapped"),
                "Loads: "
                        + tap.loads().stream()
                                .map(Object::toString)
                                .collect(Collectors.joining(", ")),
                "Machine: " + day.job().machine().name(),
                "Told by: " + tap.by().toLowerCase(Locale.ROOT) + " on " + tap.device(),
                "Note: " + tap.note(),
                "Where European rules hold, a report that must be made is due by "
                        + Written.time(tap.at().plus(REPORT_WITHIN), day.job().zone())
                        + ".",
                "");
    }
}
