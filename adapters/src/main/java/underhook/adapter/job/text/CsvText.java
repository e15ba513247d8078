package underhook.adapter.job.text;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.core.finding.FindingCode;

/** Reads CSV whose separator is found from its header line. */
final class CsvText {
    /** Set behind the text: an open quote swallows it, a whole table ends with it. */
    private static final String END = "(end of table)";

    private static final Pattern QUOTED = Pattern.compile("\"[^\"]*\"");

    private CsvText() {}

    static Optional<Table.Grid> read(String text, Source source) {
        char separator = separator(text);
        List<Table.Row> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> reader =
                CsvReader.builder()
                        .fieldSeparator(separator)
                        .skipEmptyLines(true)
                        .allowExtraFields(true)
                        .allowMissingFields(true)
                        .ofCsvRecord(text + "\n" + END)) {
            for (CsvRecord record : reader) {
                rows.add(
                        new Table.Row(
                                Math.toIntExact(record.getStartingLineNumber()),
                                record.getFields()));
            }
        } catch (CsvParseException wrong) {
            Table.Row last = rows.isEmpty() ? null : rows.get(rows.size() - 1);
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(last == null ? 1 : last.line(), ""),
                    "is no table from here on",
                    Found.allowing("quotes closed before the next separator"));
            return Optional.empty();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        Table.Row last = rows.remove(rows.size() - 1);
        if (!last.cells().equals(List.of(END))) {
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(last.line(), ""),
                    "opens a quote that nothing closes, so that the rows below would be lost",
                    Found.allowing("quotes in pairs"));
            return Optional.empty();
        }
        return Optional.of(new Table.Grid(rows, separator != ','));
    }

    /** Of comma, semicolon and tab the one that stands most often in the header line outside quotes. */
    static char separator(String text) {
        String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        String bare = QUOTED.matcher(header).replaceAll("");
        char best = ',';
        for (char other : new char[] {';', '\t'}) {
            if (count(bare, other) > count(bare, best)) {
                best = other;
            }
        }
        return best;
    }

    private static long count(String text, char wanted) {
        return text.chars().filter(c -> c == wanted).count();
    }
}
