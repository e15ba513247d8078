package underhook.adapter.table;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import underhook.app.port.Attribution;
import underhook.app.port.Caution;
import underhook.app.port.OutputWriter.Output;
import underhook.core.job.Job;
import underhook.core.plan.Plan;

/** A CSV file whose every row ends with plan, caution and attribution. */
final class Table implements AutoCloseable {
    /** What spreadsheets take for the start of a formula, also in full width or behind blanks. */
    private static final Pattern FORMULA =
            Pattern.compile(
                    "^[\\s\\u00A0]*[=+\\-@\\uFF1D\\uFF0B\\uFF0D\\uFF20].*|^[\\t\\r\\n].*",
                    Pattern.DOTALL);

    private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(\\.[0-9]+)?");

    private final CsvWriter csv;
    private final List<String> tail;

    private Table(CsvWriter csv, List<String> tail) {
        this.csv = csv;
        this.tail = tail;
    }

    static Table open(Path file, Output output, List<String> columns) throws IOException {
        return open(file, output.readJob().job(), output.plan(), columns);
    }

    static Table open(Path file, Job job, Plan plan, List<String> columns) throws IOException {
        List<String> source = new ArrayList<>(Attribution.lines(job));
        Attribution.shareAlike(job).ifPresent(source::add);
        return open(file, columns, List.of(plan.id(), Caution.TEXT, String.join(" ", source)));
    }

    static Table openWithoutPlan(Path file, List<String> columns) throws IOException {
        return open(file, columns, List.of("", Caution.TEXT, ""));
    }

    private static Table open(Path file, List<String> columns, List<String> tail)
            throws IOException {
        CsvWriter csv =
                CsvWriter.builder()
                        .lineDelimiter(LineDelimiter.LF)
                        .build(file, StandardCharsets.UTF_8);
        List<String> header = new ArrayList<>(columns);
        header.addAll(List.of("plan_id", "caution", "attribution"));
        csv.writeRecord(header);
        return new Table(csv, tail);
    }

    void row(List<String> cells) {
        List<String> row = new ArrayList<>(cells);
        row.addAll(tail);
        csv.writeRecord(row.stream().map(Table::guarded).toList());
    }

    static String guarded(String text) {
        boolean formula = FORMULA.matcher(text).matches() && !NUMBER.matcher(text).matches();
        return formula ? "'" + text : text;
    }

    @Override
    public void close() throws IOException {
        csv.close();
    }
}
