package underhook.core.air.report;

import java.util.ArrayList;
import java.util.List;
import underhook.core.finding.Finding;

/**
 * A decoded report.
 *
 * @param kind what it is
 * @param raw the whole text as it came
 * @param head station, times and marks of the report itself, for printing
 * @param issued when it was observed or issued, UTC; empty when it does not say
 * @param valid from and until of a TAF, UTC; empty for a METAR
 * @param conditions what the report itself says
 * @param parts trends or change periods in the order of the report
 * @param unparsed groups that were not understood
 */
public record WeatherReport(
        Kind kind,
        String raw,
        List<ReportField> head,
        List<DayTime> issued,
        List<DayTime> valid,
        Conditions conditions,
        List<ReportPart> parts,
        List<String> unparsed) {
    /** What kind of report it is. */
    public enum Kind {
        METAR,
        TAF
    }

    public WeatherReport {
        head = List.copyOf(head);
        issued = List.copyOf(issued);
        valid = List.copyOf(valid);
        parts = List.copyOf(parts);
        unparsed = List.copyOf(unparsed);
    }

    /** What is written there and cannot be, in the order of the report. */
    List<Finding> doubts() {
        List<Finding> doubts = new ArrayList<>(conditions.doubts());
        parts.forEach(part -> doubts.addAll(part.conditions().doubts()));
        return doubts;
    }

    /** Everything decoded, flat and in order; names of later parts begin with "part1.", "part2." … */
    public List<ReportField> fields() {
        List<ReportField> fields = new ArrayList<>(head);
        fields.addAll(conditions.fields());
        for (int i = 0; i < parts.size(); i++) {
            String prefix = "part" + (i + 1) + ".";
            ReportPart part = parts.get(i);
            fields.add(new ReportField(prefix + "change", part.change()));
            part.times().forEach(f -> fields.add(new ReportField(prefix + f.name(), f.value())));
            part.conditions()
                    .fields()
                    .forEach(f -> fields.add(new ReportField(prefix + f.name(), f.value())));
        }
        if (!unparsed.isEmpty()) {
            fields.add(new ReportField("unparsed", String.join(" ", unparsed)));
        }
        fields.add(new ReportField("raw", raw));
        return fields;
    }
}
