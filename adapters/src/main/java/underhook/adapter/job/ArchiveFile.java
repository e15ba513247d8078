package underhook.adapter.job;

import java.time.Instant;
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
import underhook.core.ahead.HourArchive;
import underhook.core.ahead.HourArchive.Hour;
import underhook.core.finding.FindingCode;

/** Reads hours of past years, of which those of the job's month are kept. */
final class ArchiveFile {
    /** Fields that stand beside the table's name in job.yaml. */
    static final List<String> DETAILS =
            List.of(
                    "hours_together",
                    "least_cloud_base_m",
                    "least_cloud_base_ft",
                    "least_visibility_m",
                    "least_visibility_ft",
                    "source");

    /** From here on the sun is known. */
    private static final int FIRST_YEAR = 1951;

    private static final Range WIND = Range.of(0, 100, "between 0 and 100 m/s");
    private static final Range HEIGHT = Range.of(0, 30_000, "between 0 and 30000 m");
    private static final Range SIGHT = Range.of(0, 200_000, "between 0 and 200000 m");
    private static final Range TOGETHER = Range.of(1, 24, "a whole number from 1 to 24");

    private final JobDay day;
    private final List<Hour> hours = new ArrayList<>();
    private Instant last = Instant.MIN;
    private boolean isCloudKnown;
    private boolean isSightKnown;

    private ArchiveFile(JobDay day) {
        this.day = day;
    }

    static Optional<HourArchive> read(FileReference file, Source source, JobDay day) {
        int before = source.faults().count();
        ArchiveFile reader = new ArchiveFile(day);
        Table.read(file.toTable(source), reader::read);
        Optional<Fields> details = file.details();
        if (details.isEmpty()) {
            source.fault(
                    FindingCode.FIELD_MISSING,
                    new At(0, "archive"),
                    "says nothing of hours-together",
                    new Found(file.name(), "a mapping with file and this field"));
            return Optional.empty();
        }
        int together = details.get().whole("hours_together", TOGETHER);
        OptionalDouble cloudM =
                details.get().findQuantity("least_cloud_base", Quantity.LENGTH, HEIGHT);
        OptionalDouble sightM =
                details.get().findQuantity("least_visibility", Quantity.LENGTH, SIGHT);
        String origin = details.get().text("source", file.name());
        if (source.faults().count() == before) {
            refuseUnseen(source, cloudM.isPresent() && !reader.isCloudKnown, "cloud_base");
            refuseUnseen(source, sightM.isPresent() && !reader.isSightKnown, "visibility");
            if (reader.hours.isEmpty()) {
                source.fault(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        new At(0, "time"),
                        "says nothing about the job's month",
                        Found.allowing("rows of month " + day.date().getMonthValue()));
            }
        }
        return source.faults().count() > before
                ? Optional.empty()
                : Optional.of(
                        new HourArchive(
                                reader.hours,
                                new HourArchive.Needs(together, cloudM, sightM),
                                origin));
    }

    private static void refuseUnseen(Source source, boolean isUnseen, String column) {
        if (isUnseen) {
            source.fault(
                    FindingCode.FIELD_MISSING,
                    new At(0, column),
                    "stands in no row, but a least one is stated",
                    Found.allowing("rows with it, or no such limit"));
        }
    }

    private void read(Fields row) {
        int before = row.source().faults().count();
        Instant at = row.time("time", day);
        double windMPerS = row.quantity("wind", Quantity.SPEED, WIND);
        OptionalDouble gust = row.findQuantity("gust", Quantity.SPEED, WIND);
        OptionalDouble cloudM = row.findQuantity("cloud_base", Quantity.LENGTH, HEIGHT);
        OptionalDouble sightM = row.findQuantity("visibility", Quantity.LENGTH, SIGHT);
        // What a table of the job's weather has besides; not looked at here.
        List.of("qnh_hpa", "qnh_inhg", "oat_c", "wind_from_deg", "remarks")
                .forEach(name -> row.text(name, ""));
        row.refuseUnknown();
        if (row.source().faults().count() > before) {
            return;
        }
        double gustMPerS = gust.orElse(windMPerS);
        int year = at.atZone(day.zone()).getYear();
        if (gustMPerS < windMPerS) {
            String name = row.presentName("gust", Quantity.SPEED);
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    name,
                    "is below the mean wind",
                    new Found(row.text(name, ""), "empty, or at least the mean wind"));
        } else if (year < FIRST_YEAR
                || !at.isBefore(day.date().atStartOfDay(day.zone()).toInstant())) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "time",
                    "is of no past year",
                    new Found(
                            row.text("time", ""),
                            "date and offset, from 1951 to the day before the job's"));
        } else if (!at.isAfter(last)) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "time",
                    "is not after the row before",
                    new Found(row.text("time", ""), "rows in time order, with date and offset"));
        } else {
            last = at;
            isCloudKnown |= cloudM.isPresent();
            isSightKnown |= sightM.isPresent();
            if (at.atZone(day.zone()).getMonth() == day.date().getMonth()) {
                hours.add(new Hour(at, windMPerS, gustMPerS, cloudM, sightM));
            }
        }
    }
}
