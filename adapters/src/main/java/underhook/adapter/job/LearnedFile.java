package underhook.adapter.job;

import java.util.ArrayList;
import java.util.List;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.core.finding.FindingCode;
import underhook.core.learn.Figure;
import underhook.core.learn.Measure;

/** Reads what earlier days taught, as the evening writes it. */
public final class LearnedFile {
    /** Wider than any mean of flights that were flown as planned; beyond it a unit was mixed up. */
    private static final Range RATIO = Range.of(0.2, 5, "between 0.2 and 5");

    private static final Range SPREAD = Range.of(0, 5, "between 0 and 5");
    private static final Range SAMPLES = Range.of(1, 1e6, "a whole number above 0");

    private LearnedFile() {}

    static List<Figure> read(FileReference file, Source source) {
        if (file.isTable()) {
            return read(file.toTable(source));
        }
        source.fault(
                FindingCode.FILE_UNREADABLE,
                new At(0, ""),
                "has an unknown ending",
                new Found(file.name(), ".csv or .xlsx"));
        return List.of();
    }

    /** Every row without a fault. */
    public static List<Figure> read(Table.Input table) {
        List<Figure> figures = new ArrayList<>();
        Table.read(table.orEmpty("quantity"), row -> read(row, figures));
        return List.copyOf(figures);
    }

    private static void read(Fields row, List<Figure> figures) {
        int before = row.source().faults().count();
        Measure quantity = row.choice("quantity", Measure.class);
        String group = row.text("group");
        int samples = row.whole("samples", SAMPLES);
        row.number("flown_over_planned", RATIO);
        row.number("believed", Range.of(0, 1, "between 0 and 1"));
        double ratio = row.number("factor", RATIO);
        double spread = row.has("spread") ? row.number("spread", SPREAD) : 0;
        // What the program itself wrote beside them.
        List.of("plan_id", "caution", "attribution").forEach(name -> row.text(name, ""));
        if (row.source().faults().count() == before) {
            figures.add(new Figure(quantity, group, samples, ratio, spread));
        }
    }
}
