package underhook.adapter.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.NearestWord;
import underhook.core.finding.FindingCode;
import underhook.core.job.Waiver;

/** Reads which findings somebody answers for, and why. */
final class OverridesFile {
    private OverridesFile() {}

    /** Every entry without a fault. */
    static List<Waiver> read(Fields fields) {
        Versions.check(fields);
        List<Waiver> waivers = new ArrayList<>();
        if (fields.findNode("overrides").isEmpty()) {
            fields.missing("overrides");
        }
        for (Fields row : fields.mappings("overrides")) {
            readRow(row, waivers);
        }
        fields.refuseUnknown();
        return waivers;
    }

    private static void readRow(Fields row, List<Waiver> waivers) {
        int before = row.source().faults().count();
        Optional<FindingCode> code = readCode(row);
        String subject = row.text("subject");
        String reason = row.text("reason");
        String by = row.text("by");
        boolean hasDay = row.has("on");
        Optional<LocalDate> on = row.findDate("on");
        if (!hasDay) {
            row.missing("on");
        }
        row.refuseUnknown();
        if (row.source().faults().count() == before && code.isPresent() && on.isPresent()) {
            waivers.add(new Waiver(code.get(), subject, reason, by, on.get()));
        }
    }

    private static Optional<FindingCode> readCode(Fields row) {
        String word = row.text("code");
        Optional<FindingCode> code =
                Arrays.stream(FindingCode.values())
                        .filter(one -> one.name().equals(word))
                        .findFirst();
        if (!word.isEmpty() && code.isEmpty()) {
            List<String> known =
                    Arrays.stream(FindingCode.values()).map(FindingCode::name).toList();
            row.fault(
                    FindingCode.FIELD_UNREADABLE,
                    "code",
                    "is no code of a finding",
                    new Found(word, NearestWord.hint(word, known)));
        } else if (code.isPresent() && Waiver.isFixed(code.get())) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "code",
                    "cannot be overridden",
                    new Found(
                            word, "a finding that is no limit of machine, hook, line or terrain"));
        }
        return code;
    }
}
