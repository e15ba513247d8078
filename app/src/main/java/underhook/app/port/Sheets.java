package underhook.app.port;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tables of a job as people typed them, cell for cell. */
public interface Sheets {
    /**
     * A table.
     *
     * @param separator between the cells of a line; a comma where the file was no text
     * @param lineEnd as the file has it
     * @param hasMark whether the file begins with a byte order mark
     */
    record Sheet(
            List<String> columns, List<Row> rows, char separator, String lineEnd, boolean hasMark) {
        public Sheet {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
        }

        /** The same with other rows. */
        public Sheet withRows(List<Row> other) {
            return new Sheet(columns, other, separator, lineEnd, hasMark);
        }

        /** The same with one more column, empty, behind the others. */
        public Sheet withColumn(String name) {
            List<String> more = new ArrayList<>(columns);
            more.add(name);
            List<Row> longer = new ArrayList<>();
            for (Row row : rows) {
                List<String> cells = new ArrayList<>(row.cells());
                cells.add("");
                longer.add(new Row(row.line(), cells));
            }
            return new Sheet(more, longer, separator, lineEnd, hasMark);
        }
    }

    /**
     * A row.
     *
     * @param line its line in the file, from 1; 0 for one that was not read from it
     * @param cells one for each column
     */
    record Row(int line, List<String> cells) {
        public Row {
            cells = List.copyOf(cells);
        }
    }

    /** Reads a CSV or XLSX file; empty when it is no table. */
    Optional<Sheet> read(Path file);

    /** The table as CSV. */
    Content write(Sheet sheet);
}
