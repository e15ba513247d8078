package underhook.adapter.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import underhook.app.port.ClosedDay;
import underhook.app.port.EveningWriter;

/** One table of a closed day: a name, its columns, and the rows that the day gives. */
record Sheet(String fileName, List<String> columns, Function<ClosedDay, List<List<String>>> rows)
        implements EveningWriter {
    Sheet {
        columns = List.copyOf(columns);
    }

    @Override
    public void write(ClosedDay day, Path file) throws IOException {
        try (Table table = Table.open(file, day.job(), day.plan(), columns)) {
            rows.apply(day).forEach(table::row);
        }
    }
}
