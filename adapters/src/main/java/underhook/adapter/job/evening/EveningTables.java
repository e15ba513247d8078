package underhook.adapter.job.evening;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.adapter.job.LearnedFile;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.app.port.EveningFiles;
import underhook.app.port.FlownSample;
import underhook.app.port.Reading;
import underhook.core.finding.FindingCode;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.learn.Figure;
import underhook.core.learn.Measure;

/** Reads taps and samples from tables, the books from YAML. */
public final class EveningTables implements EveningFiles {
    private static final Range TAPPED_MASS = Range.of(0, 99_999, "between 0 and 99999 kg");
    private static final Range TAPPED_LINE = Range.above(0, 499, "above 0, below 500 m");

    @Override
    public Reading<List<Tap>> readTaps(Path file, Job job) {
        Source source = new Source(String.valueOf(file.getFileName()), new Faults());
        JobDay day = new JobDay(job.date(), job.zone());
        List<Tap> taps = new ArrayList<>();
        Table.read(Table.Input.of(file, source), row -> readTap(row, day, taps));
        return Reading.of(List.copyOf(taps), source.faults().list());
    }

    private static void readTap(Fields row, JobDay day, List<Tap> taps) {
        int before = row.source().faults().count();
        String id = row.id("id");
        Instant at = row.time("at", day);
        String by = row.text("by");
        String device = row.text("device");
        TapKind kind = row.choice("kind", TapKind.class);
        List<String> loads = row.ids("loads");
        Optional<String> place = row.findText("place");
        Tap.Amount amount =
                new Tap.Amount(
                        row.findQuantity("mass", Quantity.MASS, TAPPED_MASS),
                        row.findQuantity("line", Quantity.LENGTH, TAPPED_LINE),
                        row.has("people")
                                ? row.whole("people", Range.of(0, 99, "a whole number to 99"))
                                : 0);
        Optional<String> undoes = row.findText("undoes");
        String note = row.text("note", "");
        boolean takesBack = kind == TapKind.UNDONE;
        if (row.source().faults().count() == before && undoes.isPresent() != takesBack) {
            row.fault(
                    FindingCode.FIELD_UNREADABLE,
                    "undoes",
                    takesBack ? "does not say what is taken back" : "stands beside another kind",
                    new Found(undoes.orElse(""), "the id of a tap, with the kind undone alone"));
        }
        if (row.source().faults().count() == before) {
            taps.add(
                    new Tap(
                            id,
                            at,
                            by,
                            device,
                            kind,
                            loads.stream().map(LoadId::new).toList(),
                            place.map(PlaceId::new),
                            amount,
                            undoes,
                            note));
        }
    }

    @Override
    public Reading<Books> readBooks(Path file) {
        return BooksFile.read(file);
    }

    @Override
    public Reading<List<Figure>> readFigures(Path file) {
        Source source = new Source(String.valueOf(file.getFileName()), new Faults());
        List<Figure> figures = LearnedFile.read(Table.Input.of(file, source));
        return Reading.of(figures, source.faults().list());
    }

    @Override
    public Reading<List<FlownSample>> readSamples(Path file) {
        Source source = new Source(String.valueOf(file.getFileName()), new Faults());
        List<FlownSample> samples = new ArrayList<>();
        Table.read(Table.Input.of(file, source), row -> readSample(row, samples));
        return Reading.of(List.copyOf(samples), source.faults().list());
    }

    private static void readSample(Fields row, List<FlownSample> samples) {
        int before = row.source().faults().count();
        Measure quantity = row.choice("quantity", Measure.class);
        String group = row.text("group");
        double planned = row.number("planned", Range.POSITIVE);
        double flown = row.number("flown", Range.POSITIVE);
        // What the program itself wrote beside them.
        List.of("unit", "plan_id", "caution", "attribution").forEach(name -> row.text(name, ""));
        if (row.source().faults().count() == before) {
            samples.add(new FlownSample(quantity, group, planned, flown));
        }
    }
}
