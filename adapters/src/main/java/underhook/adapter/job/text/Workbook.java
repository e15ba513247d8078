package underhook.adapter.job.text;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.NearestWord;
import underhook.core.finding.FindingCode;

/** Reads a sheet of an XLSX workbook. */
final class Workbook {
    /** Room for a quarter of a million cells; a packed file may claim to be anything. */
    private static final long MOST_UNPACKED_BYTES = 48L << 20;

    private static final int MOST_COLUMNS = 200;

    private Workbook() {}

    static Optional<Table.Grid> read(Path file, Source source, String sheet) {
        try {
            if (isTooLarge(file.toFile())) {
                source.fault(
                        FindingCode.TOO_LARGE,
                        new At(0, ""),
                        "is too large when unpacked",
                        Found.allowing("at most " + MOST_UNPACKED_BYTES + " bytes"));
                return Optional.empty();
            }
            try (ReadableWorkbook workbook =
                    new ReadableWorkbook(file.toFile(), new ReadingOptions(false, true))) {
                Optional<Sheet> chosen = choose(workbook, sheet, source);
                return chosen.isPresent() ? Optional.of(read(chosen.get())) : Optional.empty();
            }
        } catch (IOException
                | UncheckedIOException
                | ExcelReaderException
                | IllegalArgumentException
                | IndexOutOfBoundsException
                | NullPointerException
                | IllegalStateException
                | java.util.NoSuchElementException wrong) {
            // The library throws all of these for parts that are missing or cut.
            source.fault(
                    FindingCode.FILE_UNREADABLE,
                    new At(0, ""),
                    "is no readable workbook",
                    Found.allowing("an .xlsx file with its table on the first sheet"));
            return Optional.empty();
        }
    }

    private static Optional<Sheet> choose(ReadableWorkbook workbook, String name, Source source) {
        if (name.isEmpty()) {
            return Optional.of(workbook.getFirstSheet());
        }
        Optional<Sheet> named = workbook.findSheet(name);
        if (named.isEmpty()) {
            List<String> known = workbook.getSheets().map(Sheet::getName).toList();
            source.fault(
                    FindingCode.FIELD_UNKNOWN,
                    new At(0, "layer"),
                    "names no sheet of the workbook",
                    new Found(name, NearestWord.hint(name, known)));
        }
        return named;
    }

    private static Table.Grid read(Sheet sheet) throws IOException {
        List<Table.Row> table = new ArrayList<>();
        try (Stream<Row> rows = sheet.openStream()) {
            rows.forEach(row -> table.add(toRow(row)));
        }
        return new Table.Grid(padded(table), true);
    }

    /** Unpacks everything once and counts, because sizes in the directory may be false. */
    private static boolean isTooLarge(File file) throws IOException {
        long total = 0;
        byte[] buffer = new byte[1 << 16];
        try (ZipFile zip = new ZipFile(file)) {
            Enumeration<? extends ZipEntry> entries = zip.entries();
            while (entries.hasMoreElements()) {
                try (InputStream in = zip.getInputStream(entries.nextElement())) {
                    for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                        total += n;
                        if (total > MOST_UNPACKED_BYTES) {
                            return true;
                        }
                    }
                }
            }
        }
        return false;
    }

    private static Table.Row toRow(Row row) {
        List<String> cells = new ArrayList<>();
        for (Cell cell : row) {
            // A row holds nothing where the sheet skips cells.
            cells.add(cell == null ? "" : text(cell));
            if (cells.size() >= MOST_COLUMNS) {
                break;
            }
        }
        while (!cells.isEmpty() && cells.get(cells.size() - 1).isBlank()) {
            cells.remove(cells.size() - 1);
        }
        return new Table.Row(row.getRowNum(), cells);
    }

    /** A sheet does not store empty cells at a row's end. */
    private static List<Table.Row> padded(List<Table.Row> rows) {
        int width =
                rows.stream()
                        .filter(r -> !r.isBlank())
                        .findFirst()
                        .map(r -> r.cells().size())
                        .orElse(0);
        List<Table.Row> padded = new ArrayList<>();
        for (Table.Row row : rows) {
            List<String> cells = new ArrayList<>(row.cells());
            while (cells.size() < width) {
                cells.add("");
            }
            padded.add(new Table.Row(row.line(), cells));
        }
        return padded;
    }

    private static String text(Cell cell) {
        if (cell.getType() == CellType.NUMBER) {
            // As a spreadsheet shows it: 0.1 + 0.2 is 0.3.
            return cell.asNumber().round(new MathContext(15)).stripTrailingZeros().toPlainString();
        }
        String text = cell.getText();
        if (cell.getRawValue() == null && cell.getFormula() != null) {
            return "=" + cell.getFormula(); // never worked out: a fault where a value is wanted
        }
        return text == null ? "" : text;
    }
}
