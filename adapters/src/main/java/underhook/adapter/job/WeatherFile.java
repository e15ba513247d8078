package underhook.adapter.job;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.core.finding.FindingCode;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;

/** Reads the weather from YAML or CSV. */
final class WeatherFile {
    /** Fields that stand beside a table's name in job.yaml. */
    static final List<String> DETAILS =
            List.of(
                    "reference_elevation_m",
                    "reference_elevation_ft",
                    "lapse_c_per_100m",
                    "between",
                    "until",
                    "source");

    private static final Duration HOUR = Duration.ofHours(1);

    static final Range QNH = Range.of(85_000, 109_000, "between 850 and 1090 hPa");
    static final Range OAT = Range.of(200, 335, "between -73 and 61 degrees");
    private static final Range WIND = Range.of(0, 100, "between 0 and 100 m/s");

    private final Source source;
    private final JobDay day;
    private final List<WeatherHour> hours = new ArrayList<>();

    /** What the person who reads a fault calls it. */
    private String lastHour = "the last row";

    private WeatherFile(Source source, JobDay day) {
        this.source = source;
        this.day = day;
    }

    /** Weather from a table; what it does not say is in the details of job.yaml. */
    static Optional<Weather> readTable(
            FileReference file, Source source, JobDay day, Optional<Fields> details) {
        int before = source.faults().count();
        WeatherFile reader = new WeatherFile(source, day);
        Table.read(Table.Input.of(file.path(), source), reader::readHour);
        return details.flatMap(fields -> reader.finish(fields, before));
    }

    /** Weather from hours that were made of reports; the rest is in the details of job.yaml. */
    static Optional<Weather> ofHours(
            List<WeatherHour> hours, Source source, JobDay day, Optional<Fields> details) {
        int before = source.faults().count();
        WeatherFile reader = new WeatherFile(source, day);
        reader.lastHour = "the last hour of the reports";
        reader.hours.addAll(hours);
        details.filter(fields -> !hours.isEmpty())
                .ifPresent(
                        fields ->
                                reader.refuseBeyond(
                                        fields, hours.get(hours.size() - 1).from().plus(HOUR)));
        return details.flatMap(fields -> reader.finish(fields, before));
    }

    /** A report says nothing of what comes after it, and nobody typed its last hour as one that holds on. */
    private void refuseBeyond(Fields fields, Instant end) {
        fields.findTime("until", day)
                .filter(until -> until.isAfter(end))
                .ifPresent(
                        until ->
                                fields.fault(
                                        FindingCode.FIELD_OUT_OF_RANGE,
                                        "until",
                                        "is after the end of the reports",
                                        new Found(
                                                fields.text("until", ""),
                                                "at most "
                                                        + end.atZone(day.zone()).toOffsetDateTime()
                                                        + ", or a forecast (TAF) that reaches so"
                                                        + " far")));
    }

    /** Weather from a YAML file. */
    static Optional<Weather> readYaml(Fields fields, JobDay day) {
        int before = fields.source().faults().count();
        Versions.check(fields);
        WeatherFile reader = new WeatherFile(fields.source(), day);
        List<Fields> rows = fields.mappings("hours");
        if (rows.isEmpty()) {
            fields.missing("hours");
        }
        rows.forEach(reader::readHour);
        Optional<Weather> weather = reader.finish(fields, before);
        fields.refuseUnknown();
        return weather.filter(good -> fields.source().faults().count() == before);
    }

    private void readHour(Fields row) {
        int before = source.faults().count();
        Instant from = row.time("time", day);
        double qnhPa = row.quantity("qnh", Quantity.PRESSURE, QNH);
        double oatK = row.quantity("oat", Quantity.TEMPERATURE, OAT);
        double fromRad =
                row.quantity(
                        "wind_from",
                        Quantity.ANGLE,
                        Range.of(0, 2 * Math.PI, "between 0 and 360 degrees"));
        double windMPerS = row.quantity("wind", Quantity.SPEED, WIND);
        OptionalDouble gust = row.findQuantity("gust", Quantity.SPEED, WIND);
        String remarks = row.text("remarks", "");
        row.refuseUnknown();
        if (source.faults().count() > before) {
            return;
        }
        double gustMPerS = gust.orElse(windMPerS);
        String gustName = row.presentName("gust", Quantity.SPEED);
        if (gustMPerS < windMPerS) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    gustName,
                    "is below the mean wind",
                    new Found(row.text(gustName, ""), "empty, or at least the mean wind"));
        } else if (!hours.isEmpty() && !from.isAfter(hours.get(hours.size() - 1).from())) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "time",
                    "is not after the row before",
                    new Found(row.text("time", ""), "rows in time order"));
        } else {
            hours.add(new WeatherHour(from, qnhPa, oatK, fromRad, windMPerS, gustMPerS, remarks));
        }
    }

    private Optional<Weather> finish(Fields fields, int faultsBefore) {
        double referenceM =
                fields.quantity(
                        "reference_elevation",
                        Quantity.LENGTH,
                        Range.of(-500, 9000, "between -500 and 9000 m"));
        double lapseKPer100M =
                fields.number("lapse_c_per_100m", Range.of(0, 1.5, "between 0 and 1.5"));
        Weather.Between between =
                fields.findChoice("between", Weather.Between.class)
                        .orElse(Weather.Between.STRICTER);
        Optional<Instant> stated = fields.findTime("until", day);
        String origin = fields.text("source", "");
        if (hours.isEmpty()) {
            return Optional.empty();
        }
        Instant last = hours.get(hours.size() - 1).from();
        Instant until = stated.orElse(last.plus(HOUR));
        if (!until.isAfter(last)) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "until",
                    "is not after " + lastHour,
                    new Found(
                            fields.text("until", ""),
                            "later than "
                                    + last.atZone(day.zone()).toOffsetDateTime()
                                    + ", or left out"));
        }
        checkDay(last);
        if (source.faults().count() > faultsBefore) {
            return Optional.empty();
        }
        return Optional.of(
                new Weather(hours, until, between, referenceM, lapseKPer100M / 100, origin));
    }

    /** Held by a late "until", the weather of another day would be flown in. */
    private void checkDay(Instant last) {
        boolean isDayKnown = !day.date().equals(LocalDate.EPOCH);
        Instant begin = day.date().atStartOfDay(day.zone()).toInstant();
        Instant end = day.date().plusDays(1).atStartOfDay(day.zone()).toInstant();
        if (isDayKnown && (last.isBefore(begin) || !hours.get(0).from().isBefore(end))) {
            source.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    new At(0, "time"),
                    "says nothing about the job's day",
                    new Found(
                            last.atZone(day.zone()).toOffsetDateTime().toString(),
                            "weather of " + day.date()));
        }
    }
}
