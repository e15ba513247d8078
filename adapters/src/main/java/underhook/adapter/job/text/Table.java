package underhook.adapter.job.text;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import underhook.adapter.job.text.NumberText.Decimal;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.NearestWord;
import underhook.core.finding.FindingCode;

/** A table from CSV or the first sheet of an XLSX workbook. */
public final class Table {
    private static final long MOST_BYTES = 64L << 20;
    private static final int MOST_ROWS = 200_000;
    private static final Pattern COMMA_NUMBER = Pattern.compile("[+-]?[0-9]+,[0-9]+.*");

    private Table() {}

    /** One row, its line in the file from 1. */
    record Row(int line, List<String> cells) {
        boolean isBlank() {
            return cells.stream().allMatch(String::isBlank);
        }
    }

    /** Rows as they stand in the file, and whether decimal commas may come. */
    record Grid(List<Row> rows, boolean decimalCommas) {}

    /**
     * A table to read.
     *
     * @param sheet name of the sheet; empty for the first
     * @param telling a column by which the header of a table without rows is known as one, so that no row is lost
     *     for being taken for it; empty where there must be rows
     */
    public record Input(Path file, Source source, String sheet, Renaming renaming, String telling) {
        public static Input of(Path file, Source source) {
            return new Input(file, source, "", Renaming.none(), "");
        }

        /** The same table, which may say with a header alone that there is nothing. */
        public Input orEmpty(String column) {
            return new Input(file, source, sheet, renaming, column);
        }
    }

    /** Hands every row to the reader, then reports columns that nobody asked for. */
    public static void read(Input input, Consumer<Fields> reader) {
        Source source = input.source;
        Optional<Grid> grid = Optional.empty();
        if (input.file.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx")) {
            grid = Workbook.read(input.file, source, input.sheet);
        } else if (input.sheet.isEmpty()) {
            grid =
                    TextFile.read(input.file, source, MOST_BYTES)
                            .flatMap(text -> CsvText.read(text, source));
        } else {
            source.fault(
                    FindingCode.FIELD_UNKNOWN,
                    new At(0, "layer"),
                    "is stated for a file that has one table",
                    new Found(input.sheet, "no layer"));
        }
        grid.ifPresent(rows -> readRows(rows, input, reader));
    }

    private static void readRows(Grid grid, Input input, Consumer<Fields> reader) {
        Source source = input.source;
        List<Row> rows = grid.rows().stream().filter(row -> !row.isBlank()).toList();
        if (rows.size() < 2) {
            refuseEmpty(rows, input);
            return;
        }
        if (rows.size() > MOST_ROWS) {
            source.fault(
                    FindingCode.TOO_LARGE,
                    new At(0, ""),
                    "has too many rows",
                    new Found(Integer.toString(rows.size()), "at most " + MOST_ROWS));
            return;
        }
        List<String> names = new ArrayList<>();
        Header header = readHeader(rows.get(0), input, names);
        Decimal decimal = decimal(grid);
        Fields.Context context =
                new Fields.Context(
                        source, Style.TABLE, decimal, Optional.of(header), input.renaming);
        for (Row row : rows.subList(1, rows.size())) {
            if (fits(row, names, source)) {
                reader.accept(new Fields(context, toMapping(row, names)));
            }
        }
        if (!header.asked().isEmpty() && !input.renaming.isStated()) {
            refuseUnknownColumns(header, source);
        }
        input.renaming.check();
    }

    private static void refuseEmpty(List<Row> rows, Input input) {
        boolean isHeader =
                !rows.isEmpty()
                        && readHeader(rows.get(0), input, new ArrayList<>()).has(input.telling);
        if (!isHeader) {
            input.source.fault(
                    FindingCode.FIELD_MISSING,
                    new At(0, ""),
                    "has no rows",
                    Found.allowing(
                            input.telling.isEmpty()
                                    ? "a header and at least one row"
                                    : "a header with "
                                            + input.telling
                                            + ", alone where there is nothing to state"));
        }
    }

    private static Header readHeader(Row row, Input input, List<String> names) {
        Header header = new Header(row.line());
        for (String cell : row.cells()) {
            String name = Style.TABLE.canonical(cell);
            boolean isNew = !names.contains(name);
            names.add(name);
            if (!name.isEmpty() && !isNew) {
                input.source.fault(
                        FindingCode.FIELD_UNREADABLE,
                        new At(row.line(), cell.strip()),
                        "column stands twice",
                        Found.allowing("once"));
            }
        }
        input.renaming
                .columns(row.cells().stream().map(String::strip).toList())
                .forEach(header::add);
        return header;
    }

    private static void refuseUnknownColumns(Header header, Source source) {
        for (Map.Entry<String, String> column : header.typedNames().entrySet()) {
            if (!header.asked().contains(column.getKey())) {
                source.fault(
                        FindingCode.FIELD_UNKNOWN,
                        new At(header.line(), column.getValue()),
                        "is no known column",
                        Found.allowing(NearestWord.hint(column.getKey(), header.asked())));
            }
        }
    }

    /** A row cut short, or one with a value too many, has its values under the wrong names. */
    private static boolean fits(Row row, List<String> names, Source source) {
        for (int i = 0; i < row.cells().size(); i++) {
            boolean hasName = i < names.size() && !names.get(i).isEmpty();
            if (!hasName && !row.cells().get(i).isBlank()) {
                source.fault(
                        FindingCode.FIELD_UNREADABLE,
                        new At(row.line(), ""),
                        "has a value without a column",
                        new Found(
                                row.cells().get(i),
                                "one value for each of the " + names.size() + " columns"));
                return false;
            }
        }
        if (row.cells().size() < names.size()) {
            source.fault(
                    FindingCode.FIELD_MISSING,
                    new At(row.line(), ""),
                    "has too few values",
                    new Found(
                            Integer.toString(row.cells().size()),
                            "one value for each of the " + names.size() + " columns"));
            return false;
        }
        return true;
    }

    private static Node.Mapping toMapping(Row row, List<String> names) {
        List<Node.Entry> entries = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            if (!names.get(i).isEmpty() && names.indexOf(names.get(i)) == i) {
                Node value = new Node.Scalar(row.line(), row.cells().get(i));
                entries.add(new Node.Entry(row.line(), names.get(i), value));
            }
        }
        return new Node.Mapping(row.line(), entries);
    }

    private static Decimal decimal(Grid grid) {
        if (!grid.decimalCommas()) {
            return Decimal.POINT;
        }
        boolean seen =
                grid.rows().stream()
                        .flatMap(row -> row.cells().stream())
                        .anyMatch(cell -> COMMA_NUMBER.matcher(cell.strip()).matches());
        return seen ? Decimal.COMMA : Decimal.EITHER;
    }
}
