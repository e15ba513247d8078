package underhook.adapter.job.text;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import underhook.app.port.Content;
import underhook.app.port.Sheets;

/** Tables cell for cell, for people who edit them. */
public final class PlainTables implements Sheets {
    private static final long MOST_BYTES = 64L << 20;
    private static final String MARK = "\uFEFF";

    @Override
    public Optional<Sheet> read(Path file) {
        Source nobody = new Source(String.valueOf(file.getFileName()), new Faults());
        if (file.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx")) {
            return Workbook.read(file, nobody, "")
                    .flatMap(grid -> sheet(grid.rows(), new Look(',', "\n", false)));
        }
        return TextFile.read(file, nobody, MOST_BYTES)
                .flatMap(
                        text ->
                                CsvText.read(text, nobody)
                                        .flatMap(grid -> sheet(grid.rows(), look(file, text))));
    }

    private record Look(char separator, String lineEnd, boolean hasMark) {}

    private static Look look(Path file, String text) {
        String lineEnd = text.contains("\r\n") ? "\r\n" : "\n";
        return new Look(CsvText.separator(text), lineEnd, hasMark(file));
    }

    /** Reading text takes the mark away. */
    private static boolean hasMark(Path file) {
        try (var in = Files.newInputStream(file)) {
            return new String(in.readNBytes(3), StandardCharsets.UTF_8).equals(MARK);
        } catch (IOException unreadable) {
            return false;
        }
    }

    private static Optional<Sheet> sheet(List<Table.Row> all, Look look) {
        List<Table.Row> rows = all.stream().filter(row -> !row.isBlank()).toList();
        if (rows.isEmpty()) {
            return Optional.empty();
        }
        List<String> columns = new ArrayList<>(rows.get(0).cells());
        int width = rows.stream().mapToInt(row -> row.cells().size()).max().orElse(0);
        while (columns.size() < width) {
            columns.add("");
        }
        List<Row> body =
                rows.stream()
                        .skip(1)
                        .map(row -> new Row(row.line(), padded(row.cells(), columns.size())))
                        .toList();
        return Optional.of(new Sheet(columns, body, look.separator, look.lineEnd, look.hasMark));
    }

    private static List<String> padded(List<String> cells, int width) {
        List<String> padded = new ArrayList<>(cells);
        while (padded.size() < width) {
            padded.add("");
        }
        return padded;
    }

    @Override
    public Content write(Sheet sheet) {
        StringWriter text = new StringWriter();
        text.write(sheet.hasMark() ? MARK : "");
        LineDelimiter end = sheet.lineEnd().equals("\r\n") ? LineDelimiter.CRLF : LineDelimiter.LF;
        try (CsvWriter writer =
                CsvWriter.builder()
                        .fieldSeparator(sheet.separator())
                        .lineDelimiter(end)
                        .build(text)) {
            writer.writeRecord(sheet.columns());
            sheet.rows().forEach(row -> writer.writeRecord(row.cells()));
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return Content.of(text.toString());
    }
}
