package underhook.web;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DeskJob;
import underhook.app.port.Fault;
import underhook.app.port.Sheets.Row;
import underhook.app.port.Sheets.Sheet;

/** A table as the desk shows it, each fault at its cell. */
final class TableJson {
    private TableJson() {}

    static ObjectNode of(DeskJob job, String path) throws IOException {
        Sheet sheet =
                job.findSheet(path)
                        .orElseThrow(() -> new Refused(404, path + " is no table of the job."));
        ObjectNode node = Json.object();
        node.put("path", path);
        node.put("revision", job.head().id());
        node.set("columns", Json.array(sheet.columns(), name -> Json.object().put("name", name)));
        node.set("rows", Json.array(sheet.rows(), row -> Json.texts(row.cells())));
        ArrayNode faults = node.putArray("faults");
        for (Fault fault : job.read().faults()) {
            if (fault.file().equals(path)) {
                faults.add(fault(sheet, fault));
            }
        }
        return node;
    }

    /** With its place in the table: row and column from 0, -1 where it is about more than one. */
    private static ObjectNode fault(Sheet sheet, Fault fault) {
        List<Row> rows = sheet.rows();
        int row =
                IntStream.range(0, rows.size())
                        .filter(i -> rows.get(i).line() == fault.line())
                        .findFirst()
                        .orElse(-1);
        String wanted = plain(fault.field());
        int column =
                IntStream.range(0, sheet.columns().size())
                        .filter(i -> plain(sheet.columns().get(i)).equals(wanted))
                        .findFirst()
                        .orElse(-1);
        return JobJson.fault(fault).put("row", row).put("column", column);
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    }

    /** The faults of one file. */
    static ArrayNode faults(DeskJob job, String path) throws IOException {
        return Json.array(
                job.read().faults().stream().filter(one -> one.file().equals(path)).toList(),
                JobJson::fault);
    }
}
