package underhook.adapter.job;

import java.time.DateTimeException;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import underhook.adapter.job.Mentions.Family;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.core.ahead.PermitRule;
import underhook.core.ahead.PermitRule.Activity;
import underhook.core.ahead.PermitRule.Ruling;
import underhook.core.ahead.PermitRule.Season;
import underhook.core.finding.FindingCode;
import underhook.core.job.Hours;

/** Reads what letters say of zones, protected areas, places and the whole region. */
final class PermitsFile {
    private static final Set<Family> SUBJECTS =
            EnumSet.of(Family.ZONE, Family.FEATURE, Family.PLACE);

    private final Mentions mentions;
    private final List<PermitRule> rules = new ArrayList<>();

    private PermitsFile(Mentions mentions) {
        this.mentions = mentions;
    }

    /** Every row without a fault. */
    static List<PermitRule> read(FileReference file, Source source, Mentions mentions) {
        PermitsFile reader = new PermitsFile(mentions);
        Table.read(file.toTable(source).orEmpty("subject"), reader::read);
        return List.copyOf(reader.rules);
    }

    private void read(Fields row) {
        int before = row.source().faults().count();
        String subject = row.text("subject");
        if (!subject.equals(PermitRule.ANYWHERE)) {
            mentions.mention(SUBJECTS, row, "subject", subject);
        }
        Activity activity = row.choice("activity", Activity.class);
        Ruling ruling = row.choice("ruling", Ruling.class);
        Optional<MonthDay> seasonFrom = day(row, "season_from");
        Optional<MonthDay> seasonUntil = day(row, "season_until");
        Optional<Hours> hours = HoursFields.read(row);
        String letter = row.text("letter");
        String granted = row.text("granted", "");
        row.text("remarks", "");
        row.refuseUnknown();
        if (row.source().faults().count() > before) {
            return;
        }
        rules.add(
                new PermitRule(
                        subject,
                        activity,
                        ruling,
                        new Season(
                                seasonFrom.orElse(Season.ALL_YEAR.from()),
                                seasonUntil.orElse(Season.ALL_YEAR.until())),
                        hours.orElseThrow(),
                        letter,
                        granted));
    }

    private static Optional<MonthDay> day(Fields row, String field) {
        return read(row, field, text -> MonthDay.parse("--" + text), "month and day as 08-15");
    }

    private static <T> Optional<T> read(
            Fields row, String field, Function<String, T> reader, String allowed) {
        Optional<String> text = row.findText(field).filter(written -> !written.isBlank());
        try {
            return text.map(reader);
        } catch (DateTimeException unreadable) {
            row.fault(
                    FindingCode.FIELD_UNREADABLE,
                    field,
                    "cannot be read",
                    new Found(text.orElse(""), allowed));
            return Optional.empty();
        }
    }
}
