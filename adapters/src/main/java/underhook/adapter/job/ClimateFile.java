package underhook.adapter.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.core.ahead.MonthClimate;
import underhook.core.finding.FindingCode;

/** Reads what the air of each month was like over many years; the job's month counts. */
final class ClimateFile {
    /** Fields that stand beside the table's name in job.yaml. */
    static final List<String> DETAILS =
            List.of(
                    "reference_elevation_m",
                    "reference_elevation_ft",
                    "lapse_c_per_100m",
                    "source");

    private static final Range MONTH = Range.of(1, 12, "a whole number from 1 to 12");

    private record Row(int month, double middleK, double warmK, double lowQnhPa) {}

    private final List<Row> rows = new ArrayList<>();
    private final Set<Integer> months = new HashSet<>();

    private ClimateFile() {}

    static Optional<MonthClimate> read(FileReference file, Source source, JobDay day) {
        int before = source.faults().count();
        ClimateFile reader = new ClimateFile();
        Table.read(file.toTable(source), reader::read);
        Optional<Fields> details = file.details();
        if (details.isEmpty()) {
            source.fault(
                    FindingCode.FIELD_MISSING,
                    new At(0, "climate"),
                    "says nothing of reference-elevation-m and lapse-c-per-100m",
                    new Found(file.name(), "a mapping with file and these fields"));
            return Optional.empty();
        }
        double referenceM =
                details.get()
                        .quantity(
                                "reference_elevation",
                                Quantity.LENGTH,
                                Range.of(-500, 9000, "between -500 and 9000 m"));
        double lapseKPer100M =
                details.get().number("lapse_c_per_100m", Range.of(0, 1.5, "between 0 and 1.5"));
        String origin = details.get().text("source", file.name());
        LocalDate date = day.date();
        Optional<Row> month =
                reader.rows.stream().filter(row -> row.month == date.getMonthValue()).findFirst();
        if (source.faults().count() == before && month.isEmpty()) {
            source.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    new At(0, "month"),
                    "says nothing about the job's month",
                    new Found(
                            reader.months.stream()
                                    .sorted()
                                    .map(String::valueOf)
                                    .collect(Collectors.joining(", ")),
                            "a row of month " + date.getMonthValue()));
        }
        if (source.faults().count() > before) {
            return Optional.empty();
        }
        return month.map(
                row ->
                        new MonthClimate(
                                row.middleK,
                                row.warmK,
                                row.lowQnhPa,
                                referenceM,
                                lapseKPer100M / 100,
                                origin));
    }

    private void read(Fields row) {
        int before = row.source().faults().count();
        int month = row.whole("month", MONTH);
        double middleK = row.quantity("oat_p50", Quantity.TEMPERATURE, WeatherFile.OAT);
        double warmK = row.quantity("oat_p90", Quantity.TEMPERATURE, WeatherFile.OAT);
        double lowQnhPa = row.quantity("qnh_low", Quantity.PRESSURE, WeatherFile.QNH);
        row.text("remarks", "");
        row.refuseUnknown();
        if (row.source().faults().count() > before) {
            return;
        }
        if (warmK < middleK) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "oat_p90_c",
                    "is below the middle one",
                    new Found(row.text("oat_p90_c", ""), "at least oat_p50_c"));
        } else if (!months.add(month)) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "month",
                    "stands twice",
                    new Found(row.text("month", ""), "each month once"));
        } else {
            rows.add(new Row(month, middleK, warmK, lowQnhPa));
        }
    }
}
