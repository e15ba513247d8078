package underhook.adapter.job;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.core.air.report.Conditions;
import underhook.core.air.report.DayTime;
import underhook.core.air.report.ReportPart;
import underhook.core.air.report.WeatherReport;
import underhook.core.air.report.WeatherReports;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.WeatherHour;
import underhook.core.unit.Units;

/**
 * Makes hours of METAR and TAF text, always the worse where the reports leave a choice: the strongest
 * wind of whatever may hold in the hour, the warmest temperature, the lowest pressure. Of directions
 * the prevailing one is taken, and it is said where another may come.
 */
final class ReportHours {
    private static final Duration HOUR = Duration.ofHours(1);

    /**
     * Half of the 60° from which a report tells a varying direction (ICAO Annex 3, from memory), and one
     * over: directions are told in tens.
     */
    private static final double VARIES_RAD = Units.degToRad(31);

    private final Source source;
    private final JobDay day;
    private final List<Finding> findings;
    private final List<WeatherReport> reports = new ArrayList<>();

    ReportHours(Source source, JobDay day, List<Finding> findings) {
        this.source = source;
        this.day = day;
        this.findings = findings;
    }

    List<WeatherHour> read(String text) {
        int line = 0;
        int start = 0;
        StringBuilder report = new StringBuilder();
        for (String each : text.lines().toList()) {
            line++;
            boolean begins = each.strip().matches("(METAR|SPECI|TAF)\\b.*");
            if (begins || each.isBlank()) {
                add(report.toString(), start);
                report.setLength(0);
                start = line;
            }
            report.append(' ').append(each);
        }
        add(report.toString(), start);
        Optional<WeatherReport> metar = latest(WeatherReport.Kind.METAR);
        Optional<WeatherReport> taf =
                latest(WeatherReport.Kind.TAF).filter(known -> known.valid().size() == 2);
        OptionalDouble qnhPa = all(Conditions::findQnhPa).min();
        OptionalDouble warmestK = all(Conditions::findTemperatureK).max();
        if (metar.isEmpty() && taf.isEmpty()) {
            fault("holds no report with a time", "a METAR, and a TAF for the hours to come");
        } else if (qnhPa.isEmpty() || warmestK.isEmpty()) {
            fault(
                    qnhPa.isPresent()
                            ? "has no temperature"
                            : "has no pressure" + (warmestK.isEmpty() ? " and no temperature" : ""),
                    "a METAR with temperature and QNH");
        } else if (!WeatherFile.QNH.holds(qnhPa.getAsDouble())) {
            outOfRange(
                    "pressure",
                    Units.paToHpa(qnhPa.getAsDouble()) + " hPa",
                    WeatherFile.QNH.words());
        } else if (!WeatherFile.OAT.holds(warmestK.getAsDouble())) {
            outOfRange(
                    "temperature",
                    Units.kelvinToCelsius(warmestK.getAsDouble()) + " °C",
                    WeatherFile.OAT.words());
        } else {
            held(warmestK.getAsDouble(), taf.isPresent());
            int before = source.faults().count();
            List<WeatherHour> hours =
                    hours(metar, taf, new Air(qnhPa.getAsDouble(), warmestK.getAsDouble()));
            if (hours.isEmpty() && source.faults().count() == before) {
                fault("ends before it begins", "a TAF with hours to come");
            }
            return hours;
        }
        return List.of();
    }

    private void outOfRange(String what, String found, String allowed) {
        source.fault(
                FindingCode.FIELD_OUT_OF_RANGE,
                new At(0, what),
                "is out of range",
                new Found(found, allowed));
    }

    private record Air(double qnhPa, double temperatureK) {}

    private void add(String text, int line) {
        if (text.isBlank()) {
            return;
        }
        WeatherReports.parse(text)
                .fold(
                        (report, doubts) -> {
                            doubts.forEach(doubt -> doubted(doubt, line));
                            checkTimes(report, line);
                            return reports.add(report);
                        },
                        refusals -> {
                            source.fault(
                                    FindingCode.FILE_UNREADABLE,
                                    new At(line, ""),
                                    "is no weather report",
                                    new Found(text, "METAR or TAF text"));
                            return false;
                        });
        if (!reports.isEmpty() && !reports.get(reports.size() - 1).unparsed().isEmpty()) {
            WeatherReport last = reports.get(reports.size() - 1);
            caution(
                    FindingCode.REPORT_UNREADABLE,
                    "Parts of a report were not understood: "
                            + String.join(" ", last.unparsed())
                            + ".");
        }
    }

    /** One without its times would be left out in silence, and what it warns of with it. */
    private void checkTimes(WeatherReport report, int line) {
        boolean isTaf = report.kind() == WeatherReport.Kind.TAF;
        if (report.issued().isEmpty() || (isTaf && report.valid().size() != 2)) {
            source.fault(
                    FindingCode.FIELD_MISSING,
                    new At(line, ""),
                    report.issued().isEmpty()
                            ? "is a report without its time of issue"
                            : "is a forecast without the time that it is for",
                    new Found(
                            report.raw(),
                            isTaf
                                    ? "such as TAF ZZZZ 080500Z 0806/0818"
                                    : "such as METAR ZZZZ 080650Z"));
        }
    }

    /** A day is not planned on a group of which nobody knows what was meant. */
    private void doubted(Finding doubt, int line) {
        source.fault(
                FindingCode.FIELD_OUT_OF_RANGE,
                new At(line, ""),
                "cannot be as it stands: " + doubt.message(),
                new Found(doubt.value() + " " + doubt.unit(), "as in the report that was issued"));
    }

    private void fault(String what, String allowed) {
        source.fault(FindingCode.FIELD_MISSING, new At(0, ""), what, Found.allowing(allowed));
    }

    /** A morning's temperature held until the evening would lift more than the noon does. */
    private void held(double warmestK, boolean isForecast) {
        if (isForecast && !hasMostToCome()) {
            source.fault(
                    FindingCode.FIELD_MISSING,
                    new At(0, ""),
                    "forecasts no highest temperature of the job's day",
                    Found.allowing(
                            String.format(
                                    Locale.ROOT,
                                    "a TAF with the warmest to come, such as TX24/%02d14Z, or the"
                                            + " hours as a table",
                                    day.date().getDayOfMonth())));
        }
        caution(
                FindingCode.WEATHER_HELD,
                String.format(
                        Locale.ROOT,
                        "Reports give temperature and pressure only for their own time; the"
                                + " warmest, %.1f °C, and the lowest pressure are held %s.",
                        Units.kelvinToCelsius(warmestK),
                        isForecast ? "all day" : "for their hour"));
    }

    private void caution(FindingCode code, String message) {
        findings.add(Finding.of(code, Severity.CAUTION, source.name(), source.name(), message));
    }

    /** The warmest of tomorrow says nothing of today. */
    private boolean hasMostToCome() {
        return conditions()
                .flatMap(each -> each.warmestAt().stream())
                .anyMatch(at -> isOfDay(toInstant(at)));
    }

    private Stream<Conditions> conditions() {
        return reports.stream()
                .flatMap(
                        report ->
                                Stream.concat(
                                        Stream.of(report.conditions()),
                                        report.parts().stream().map(ReportPart::conditions)));
    }

    private DoubleStream all(Function<Conditions, OptionalDouble> value) {
        return conditions().map(value).flatMapToDouble(OptionalDouble::stream);
    }

    private Optional<WeatherReport> latest(WeatherReport.Kind kind) {
        return reports.stream()
                .filter(report -> report.kind() == kind && !report.issued().isEmpty())
                .max(Comparator.comparing(report -> toInstant(report.issued().get(0))));
    }

    /** The day of that number nearest to the job's. */
    private Instant toInstant(DayTime time) {
        LocalDate best = day.date();
        for (int offset = 0; offset <= 31; offset++) {
            if (day.date().minusDays(offset).getDayOfMonth() == time.day()) {
                best = day.date().minusDays(offset);
                break;
            }
            if (day.date().plusDays(offset).getDayOfMonth() == time.day()) {
                best = day.date().plusDays(offset);
                break;
            }
        }
        return best.atStartOfDay(ZoneOffset.UTC)
                .toInstant()
                .plus(Duration.ofHours(time.hour()).plusMinutes(time.minute()));
    }

    private List<WeatherHour> hours(
            Optional<WeatherReport> metar, Optional<WeatherReport> taf, Air air) {
        List<WeatherHour> hours = new ArrayList<>();
        List<Instant> undirected = new ArrayList<>();
        List<String> elsewhere = new ArrayList<>();
        Instant from =
                taf.map(report -> toInstant(report.valid().get(0)))
                        .orElseGet(() -> toInstant(metar.orElseThrow().issued().get(0)));
        Instant until = taf.map(report -> toInstant(report.valid().get(1))).orElse(from.plus(HOUR));
        for (Instant start = from; start.isBefore(until); start = start.plus(HOUR)) {
            List<Conditions> holding =
                    taf.isPresent()
                            ? holding(taf.get(), start, until)
                            : List.of(metar.orElseThrow().conditions());
            if (taf.isPresent() && metar.isPresent()) {
                holding = withSeen(metar.get(), holding, start);
            }
            Optional<WeatherHour> hour = toHour(start, holding, air);
            hour.ifPresent(hours::add);
            if (isOfDay(start) && hour.isEmpty()) {
                undirected.add(start);
            } else if (isOfDay(start) && mayComeFromElsewhere(hour.orElseThrow(), holding)) {
                elsewhere.add(clock(start));
            }
        }
        if (!undirected.isEmpty()) {
            hours.removeIf(hour -> !isOfDay(hour.from()));
            leaveOut(undirected, hours);
        }
        if (!elsewhere.isEmpty()) {
            caution(
                    FindingCode.WEATHER_HELD,
                    "For a time the wind may come from elsewhere than planned (TEMPO, PROB, a change or"
                            + " a report; VRB: from anywhere), in the hours from "
                            + String.join(", ", elsewhere)
                            + ". Ways in are planned for the direction that prevails, with the"
                            + " strongest wind of all.");
        }
        return hours;
    }

    /**
     * Ways in stand on the wind's direction: without one nothing is flown. Where such hours only begin
     * or end the day no weather is known then; between others the hour before would be held.
     */
    private void leaveOut(List<Instant> undirected, List<WeatherHour> hours) {
        Optional<Instant> between =
                undirected.stream()
                        .filter(
                                start ->
                                        hours.isEmpty()
                                                || (start.isAfter(hours.get(0).from())
                                                        && start.isBefore(
                                                                hours.get(hours.size() - 1)
                                                                        .from())))
                        .findFirst();
        if (between.isPresent()) {
            fault(
                    "has no wind with a direction at " + clock(between.get()),
                    "a wind such as 24008KT; for VRB enter the hours as a table, with the wind that the"
                            + " site has then");
            return;
        }
        caution(
                FindingCode.REPORT_UNREADABLE,
                "Nothing is planned in the hours whose wind has no direction (VRB), from "
                        + String.join(", ", undirected.stream().map(this::clock).toList())
                        + ". Perhaps enter the hours as a table, with the wind that the site has"
                        + " then.");
    }

    private boolean isOfDay(Instant at) {
        return at.atZone(day.zone()).toLocalDate().equals(day.date());
    }

    /** By more than a wind that is said to blow from one direction varies. */
    private static boolean mayComeFromElsewhere(WeatherHour hour, List<Conditions> holding) {
        return holding.stream()
                .filter(other -> other.findWindMPerS().orElse(0) > 0)
                .map(Conditions::findWindFromTrueRad)
                .anyMatch(
                        from ->
                                from.isEmpty()
                                        || Math.cos(from.getAsDouble() - hour.windFromTrueRad())
                                                < Math.cos(VARIES_RAD));
    }

    private String clock(Instant at) {
        return at.atZone(day.zone()).toLocalTime().toString();
    }

    /** What was seen less than an hour before, or within the hour, may hold in it as well. */
    private List<Conditions> withSeen(
            WeatherReport metar, List<Conditions> holding, Instant start) {
        Instant seen = toInstant(metar.issued().get(0));
        boolean counts = seen.isBefore(start.plus(HOUR)) && seen.plus(HOUR).isAfter(start);
        if (!counts) {
            return holding;
        }
        List<Conditions> all = new ArrayList<>(holding);
        all.add(metar.conditions());
        return all;
    }

    /** What may hold in the hour that starts then; the prevailing conditions first. */
    private List<Conditions> holding(WeatherReport taf, Instant start, Instant end) {
        Conditions prevailing = taf.conditions();
        List<Conditions> others = new ArrayList<>();
        for (ReportPart part : taf.parts()) {
            if (part.during().isEmpty()) {
                continue;
            }
            Instant from = toInstant(part.during().get(0));
            Instant until = part.during().size() == 2 ? toInstant(part.during().get(1)) : end;
            boolean hasBegun = from.isBefore(start.plus(HOUR));
            boolean changes = part.change().equals("FM") || part.change().equals("BECMG");
            Instant settled = part.change().equals("FM") ? from : until;
            if (changes && !settled.isAfter(start)) {
                // What a change does not speak of stays as it was.
                prevailing =
                        part.conditions().findWindMPerS().isPresent()
                                ? part.conditions()
                                : prevailing;
            } else if (hasBegun && until.isAfter(start)) {
                others.add(part.conditions());
            }
        }
        others.add(0, prevailing);
        return others;
    }

    private Optional<WeatherHour> toHour(Instant start, List<Conditions> holding, Air air) {
        Conditions prevailing = holding.get(0);
        OptionalDouble meanMPerS = most(holding, Conditions::findWindMPerS);
        OptionalDouble fromRad = prevailing.findWindFromTrueRad();
        boolean isCalm = meanMPerS.isPresent() && meanMPerS.getAsDouble() == 0;
        if (meanMPerS.isEmpty() || (fromRad.isEmpty() && !isCalm)) {
            return Optional.empty();
        }
        double gustMPerS =
                Math.max(
                        meanMPerS.getAsDouble(),
                        most(holding, Conditions::findGustMPerS).orElse(0));
        return Optional.of(
                new WeatherHour(
                        start,
                        air.qnhPa,
                        air.temperatureK,
                        fromRad.orElse(0),
                        meanMPerS.getAsDouble(),
                        gustMPerS,
                        ""));
    }

    private static OptionalDouble most(
            List<Conditions> holding, Function<Conditions, OptionalDouble> value) {
        return holding.stream().map(value).flatMapToDouble(OptionalDouble::stream).max();
    }
}
