package underhook.app.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import underhook.app.port.Sheets.Row;
import underhook.app.port.Sheets.Sheet;

/**
 * A change of a table. Rows are counted from 0 as they were seen before the change.
 *
 * @param cells new texts
 * @param inserted rows to come before the row of that number; beyond the last to append
 * @param deleted numbers of rows
 */
public record TableEdit(
        List<Cell> cells, Map<Integer, List<List<String>>> inserted, Set<Integer> deleted) {
    private static final int MOST_TEXT = 10_000;
    private static final int MOST_ROWS = 20_000;

    /** A new text. */
    public record Cell(int row, int column, String value) {}

    public TableEdit {
        cells = List.copyOf(cells);
        inserted = Map.copyOf(inserted);
        deleted = Set.copyOf(deleted);
    }

    /**
     * The changed table.
     *
     * @throws IllegalArgumentException when it names rows or columns that are not there
     */
    public Sheet on(Sheet sheet) {
        int count = sheet.rows().size();
        int width = sheet.columns().size();
        List<List<String>> texts = new ArrayList<>();
        sheet.rows().forEach(row -> texts.add(new ArrayList<>(row.cells())));
        for (Cell cell : cells) {
            check(cell.row() < count && cell.column() < width, cell.row(), cell.column());
            texts.get(cell.row()).set(cell.column(), text(cell.value()));
        }
        inserted.keySet().forEach(at -> check(at >= 0, at, 0));
        deleted.forEach(row -> check(row < count, row, 0));
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i <= count; i++) {
            for (List<String> values : inserted.getOrDefault(i, List.of())) {
                rows.add(new Row(0, filled(values, width)));
            }
            if (i < count && !deleted.contains(i)) {
                rows.add(new Row(sheet.rows().get(i).line(), texts.get(i)));
            }
        }
        new TreeMap<>(inserted)
                .tailMap(count, false)
                .values()
                .forEach(all -> all.forEach(one -> rows.add(new Row(0, filled(one, width)))));
        if (rows.size() > MOST_ROWS) {
            throw new IllegalArgumentException("A table can have at most " + MOST_ROWS + " rows.");
        }
        return sheet.withRows(rows);
    }

    private static void check(boolean isThere, int row, int column) {
        if (!isThere || row < 0 || column < 0) {
            throw new IllegalArgumentException(
                    "The table has no row " + row + " or no column " + column + ".");
        }
    }

    private static List<String> filled(List<String> values, int width) {
        List<String> filled = new ArrayList<>();
        for (int i = 0; i < width; i++) {
            filled.add(i < values.size() ? text(values.get(i)) : "");
        }
        return filled;
    }

    private static String text(String value) {
        if (value.length() > MOST_TEXT) {
            throw new IllegalArgumentException(
                    "A cell can hold at most " + MOST_TEXT + " characters.");
        }
        return value.replace("\u0000", "");
    }
}
