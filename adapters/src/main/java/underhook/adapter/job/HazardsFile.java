package underhook.adapter.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.core.finding.FindingCode;
import underhook.core.job.Confirmation;

/** Reads the register of hazards: who looked at what, when, and what they saw. */
final class HazardsFile {
    private final Source source;
    private final LocalDate day;
    private final Mentions mentions;
    private final List<Confirmation> rows = new ArrayList<>();

    private HazardsFile(Source source, LocalDate day, Mentions mentions) {
        this.source = source;
        this.day = day;
        this.mentions = mentions;
    }

    /**
     * Every row without a fault.
     *
     * @param day the job's; nobody has looked at anything after it
     */
    static List<Confirmation> read(
            FileReference file, Source source, LocalDate day, Mentions mentions) {
        HazardsFile reader = new HazardsFile(source, day, mentions);
        if (file.isTable()) {
            Table.read(file.toTable(source).orEmpty("subject"), reader::readRow);
        } else {
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(0, ""),
                    "has an unknown ending",
                    new Found(file.name(), ".csv or .xlsx"));
        }
        return reader.rows;
    }

    private void readRow(Fields fields) {
        int before = source.faults().count();
        String subject = fields.text("subject");
        mentions.mention(Mentions.HAZARDS, fields, "subject", subject);
        String what = fields.text("what");
        String by = fields.text("confirmed_by");
        boolean hasDay = fields.has("confirmed_on");
        Optional<LocalDate> on = fields.findDate("confirmed_on");
        String remarks = fields.text("remarks", "");
        if (!hasDay) {
            fields.missing("confirmed_on");
        }
        if (on.isPresent() && on.get().isAfter(day)) {
            fields.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "confirmed_on",
                    "is after the day of the job",
                    new Found(on.get().toString(), "at most " + day));
        }
        if (on.isPresent() && source.faults().count() == before) {
            String seen = remarks.isEmpty() ? what : what + "; " + remarks;
            rows.add(new Confirmation(subject, seen, by, on.get(), source.name()));
        }
    }
}
