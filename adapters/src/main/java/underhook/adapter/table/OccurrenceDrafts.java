package underhook.adapter.table;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import underhook.app.port.Caution;
import underhook.app.port.ClosedDay;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.app.port.EveningWriter;
import underhook.app.port.RescuePoint;
import underhook.app.port.Written;
import underhook.core.flown.FlownLift;
import underhook.core.flown.Report;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.LoadId;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;
import underhook.core.unit.Units;

/**
 * Facts for a report of each jerk and each lift that was given up; a person decides whether it is sent.
 *
 * @source EU-376-2014 article 4: within 72 hours
 */
final class OccurrenceDrafts implements EveningWriter {
    private static final Duration REPORT_WITHIN = Duration.ofDays(3);

    /** Taps so long before and after are told with it. */
    private static final Duration AROUND = Duration.ofMinutes(10);

    private static final String MISSING = "____________";

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
        List<String> lines = new ArrayList<>(List.of(Caution.TEXT, ""));
        if (told.isEmpty()) {
            lines.add("No jerk, snag or lift given up was tapped.");
        }
        for (Tap tap : told) {
            lines.addAll(new Draft(day, tap).lines());
            lines.add("");
        }
        List<String> words =
                day.flown().taps().stream()
                        .filter(tap -> Report.of(tap).orElse(null) instanceof Report.Other)
                        .map(tap -> said(day, tap))
                        .toList();
        if (!words.isEmpty()) {
            lines.add("Told in words during the day. Is any of it to be reported?");
            lines.addAll(words);
        }
        Files.write(file, lines, StandardCharsets.UTF_8);
    }

    private static String said(ClosedDay day, Tap tap) {
        return Stream.of(
                        Written.time(tap.at(), day.job().zone()),
                        tap.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                        tap.loads().stream().map(LoadId::value).collect(Collectors.joining(", ")),
                        tap.place().map(place -> "at " + place.value()).orElse(""),
                        tap.amount().massKg().isPresent()
                                ? kg(tap.amount().massKg()).orElseThrow()
                                : "",
                        "by " + tap.by(),
                        tap.note())
                .filter(part -> !part.isBlank())
                .collect(Collectors.joining("  "));
    }

    private static Optional<String> kg(OptionalDouble massKg) {
        return massKg.isPresent()
                ? Optional.of(Written.up(massKg.getAsDouble(), 0).toPlainString() + " kg")
                : Optional.empty();
    }

    /** One event with what the log, the plan and the forecast say of it. */
    private record Draft(ClosedDay day, Tap tap) {
        List<String> lines() {
            Optional<FlownLift> lift = hanging();
            List<LoadId> loads =
                    tap.loads().isEmpty()
                            ? lift.map(FlownLift::loads).orElse(List.of())
                            : tap.loads();
            List<String> lines = new ArrayList<>();
            lines.add("DRAFT, to be completed by a person. Not sent.");
            lines.add("Job: " + day.job().name() + ", plan " + day.plan().id());
            lines.add("When: " + time(tap.at()));
            lines.add(
                    "What: "
                            + (tap.kind() == TapKind.SNAGGED
                                    ? "The line caught in something, or there was a hard jerk."
                                    : "A lift was given up. Brought back, or let go and where: "
                                            + MISSING));
            lines.add("Where: " + where(loads));
            lines.add("Hurt or damaged: " + MISSING);
            lines.add(
                    "Loads: "
                            + (loads.isEmpty()
                                    ? "none known to hang; " + MISSING
                                    : loads.stream()
                                            .map(this::load)
                                            .collect(Collectors.joining("; "))));
            lift.ifPresent(
                    one ->
                            lines.add(
                                    "Hooked up: "
                                            + time(one.hookedAt())
                                            + kg(one.massReadKg())
                                                    .map(read -> ", the load cell read " + read)
                                                    .orElse(", no reading of the load cell tapped")
                                            + (one.lineM().isPresent()
                                                    ? ", line "
                                                            + Written.nearest(
                                                                            one.lineM()
                                                                                    .getAsDouble(),
                                                                            1)
                                                                    .toPlainString()
                                                            + " m"
                                                    : ", line not tapped")));
            lines.add("Wind: " + wind());
            lines.add("Machine: " + day.job().machine().name());
            lines.add("Told by: " + tap.by().toLowerCase(Locale.ROOT) + " on " + tap.device());
            lines.add("Note: " + tap.note());
            lines.add(
                    "Taps within "
                            + AROUND.toMinutes()
                            + " minutes, by the clocks of the devices that were tapped:");
            day.flown().taps().stream()
                    .filter(
                            other ->
                                    Duration.between(other.at(), tap.at()).abs().compareTo(AROUND)
                                            <= 0)
                    .forEach(other -> lines.add("  " + said(day, other)));
            lines.add(
                    "Where European rules hold, a report that must be made is due by "
                            + time(tap.at().plus(REPORT_WITHIN))
                            + ".");
            return lines;
        }

        /** What hung or was thought to hang: the last lift hooked up before, unless all of it was down. */
        private Optional<FlownLift> hanging() {
            return day.flown().lifts().stream()
                    .filter(lift -> !lift.hookedAt().isAfter(tap.at()))
                    .reduce((earlier, later) -> later)
                    .filter(
                            lift ->
                                    lift.loads().stream().anyMatch(tap.loads()::contains)
                                            || lift.offAt().size() < lift.loads().size()
                                            || lift.offAt().stream()
                                                    .anyMatch(off -> !off.at().isBefore(tap.at())));
        }

        private String where(List<LoadId> loads) {
            if (tap.place().isPresent()) {
                return place(tap.place().get());
            }
            return "not tapped"
                    + day.lifts().stream()
                            .filter(line -> loads.contains(line.load()))
                            .findFirst()
                            .map(
                                    line ->
                                            "; it was to go from "
                                                    + place(line.from())
                                                    + " to "
                                                    + place(line.to()))
                            .orElse("")
                    + ": "
                    + MISSING;
        }

        private String place(PlaceId id) {
            return day.job().places().stream()
                    .filter(place -> place.id().equals(id))
                    .findFirst()
                    .map(Place::position)
                    .map(
                            point ->
                                    id.value()
                                            + " ("
                                            + RescuePoint.positions(point, Optional.empty())
                                                    .minutes()
                                            + ")")
                    .orElse(id.value());
        }

        private String load(LoadId id) {
            return day.lifts().stream()
                    .filter(line -> line.load().equals(id))
                    .findFirst()
                    .map(this::load)
                    .orElse(id.value());
        }

        private String load(LiftLine line) {
            return line.load().value()
                    + " "
                    + line.kind()
                    + " from "
                    + line.from().value()
                    + " to "
                    + line.to().value()
                    + kg(line.listedKg())
                            .map(listed -> ", " + listed + " as listed")
                            .orElse(", no mass listed");
        }

        private String wind() {
            Optional<Tap> told =
                    day.flown().taps().stream()
                            .filter(other -> !other.at().isAfter(tap.at()))
                            .filter(
                                    other ->
                                            Report.of(other).orElse(null)
                                                    instanceof Report.WindSeen)
                            .reduce((earlier, later) -> later);
            return forecast()
                    + told.map(
                                    other ->
                                            "; last told at "
                                                    + time(other.at())
                                                    + " by "
                                                    + other.by()
                                                    + ": "
                                                    + other.note())
                            .orElse("; none was told before");
        }

        private String forecast() {
            return day.job().weather().hours().stream()
                    .filter(hour -> !hour.from().isAfter(tap.at()))
                    .filter(unused -> tap.at().isBefore(day.job().weather().until()))
                    .reduce((earlier, later) -> later)
                    .map(Draft::hour)
                    .orElse("no forecast for this time");
        }

        private static String hour(WeatherHour hour) {
            return "forecast for open ground from "
                    + Written.nearest(Math.toDegrees(hour.windFromTrueRad()), 0).toPlainString()
                    + "° true with "
                    + Written.up(Units.mPerSToKt(hour.windMPerS()) - 1e-9, 0).toPlainString()
                    + " kt, gusts "
                    + Written.up(Units.mPerSToKt(hour.gustMPerS()) - 1e-9, 0).toPlainString()
                    + " kt";
        }

        private String time(Instant at) {
            return Written.time(at, day.job().zone());
        }
    }
}
