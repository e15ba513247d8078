package underhook.adapter.job.evening;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.adapter.job.LearnedFile;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.JobDay;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.Table;
import underhook.app.port.Content;
import underhook.app.port.EveningFiles;
import underhook.app.port.FlownSample;
import underhook.app.port.Reading;
import underhook.app.port.Written;
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
    private static final int NUMBER_DECIMALS = 3;
    private static final String[] COLUMNS = {
        "id",
        "at",
        "by",
        "device",
        "kind",
        "loads",
        "place",
        "mass_kg",
        "line_m",
        "people",
        "undoes",
        "note",
        "device_at"
    };
    private static final Range TAPPED_MASS = Range.of(0, 99_999, "between 0 and 99999 kg");
    private static final Range TAPPED_LINE = Range.above(0, 499, "above 0, below 500 m");

    @Override
    public Reading<Tapped> readTaps(Path file, Job job, Optional<Instant> now) {
        Source source = new Source(String.valueOf(file.getFileName()), new Faults());
        JobDay day = new JobDay(job.date(), job.zone());
        Rows rows = new Rows();
        Table.read(
                Table.Input.of(file, source),
                row -> {
                    Optional<Tap> tap = readTap(row, new Day(day, now));
                    Optional<Instant> deviceAt =
                            row.has("device_at")
                                    ? Optional.of(row.time("device_at", day))
                                    : Optional.empty();
                    tap.ifPresent(
                            one -> {
                                rows.add(one, row);
                                deviceAt.ifPresent(at -> rows.deviceAt.put(one.id(), at));
                            });
                });
        return Reading.of(new Tapped(rows.taps, rows.deviceAt), source.faults().list());
    }

    /** What was read. One row that came twice counts once; another under its id would be lost with that. */
    private static final class Rows {
        private final List<Tap> taps = new ArrayList<>();
        private final Map<String, Instant> deviceAt = new HashMap<>();
        private final Map<String, Tap> known = new HashMap<>();
        private final Map<String, Integer> lines = new HashMap<>();

        void add(Tap tap, Fields row) {
            Tap first = known.putIfAbsent(tap.id(), tap);
            Integer line = lines.putIfAbsent(tap.id(), row.line());
            if (first != null && !first.equals(tap)) {
                row.fault(
                        FindingCode.FIELD_OUT_OF_RANGE,
                        "id",
                        "stands in line " + line + " with something else beside it",
                        new Found(tap.id(), "another id for each tap"));
            }
            taps.add(tap);
        }
    }

    /** The day of the taps, and when it is now. */
    private record Day(JobDay day, Optional<Instant> now) {}

    /** Empty when something of it is at fault. */
    private static Optional<Tap> readTap(Fields row, Day day) {
        int before = row.source().faults().count();
        String id = row.id("id");
        Instant at = row.time("at", day.day());
        if (day.now().filter(at::isAfter).isPresent()) {
            row.fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    "at",
                    "tap " + id + " is later than the order is made for",
                    new Found(
                            Written.time(at, day.day().zone()),
                            "not after "
                                    + Written.time(day.now().get(), day.day().zone())
                                    + ", as --at has it"));
        }
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
        if (row.source().faults().count() > before) {
            return Optional.empty();
        }
        return Optional.of(
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

    @Override
    public Content tapsTable(Tapped tapped, Job job) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeRecord(COLUMNS);
            for (Tap tap : tapped.taps()) {
                csv.writeRecord(
                        tap.id(),
                        Written.time(tap.at(), job.zone()),
                        tap.by(),
                        tap.device(),
                        tap.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                        String.join("|", tap.loads().stream().map(LoadId::value).toList()),
                        tap.place().map(PlaceId::value).orElse(""),
                        number(tap.amount().massKg()),
                        number(tap.amount().lengthM()),
                        tap.amount().people() == 0 ? "" : String.valueOf(tap.amount().people()),
                        tap.undoes().orElse(""),
                        tap.note(),
                        Optional.ofNullable(tapped.deviceAt().get(tap.id()))
                                .map(at -> Written.time(at, job.zone()))
                                .orElse(""));
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return Content.of(text.toString());
    }

    private static String number(OptionalDouble value) {
        return value.isPresent()
                ? Written.nearest(value.getAsDouble(), NUMBER_DECIMALS).toPlainString()
                : "";
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
        Table.read(
                Table.Input.of(file, source).orEmpty("quantity"), row -> readSample(row, samples));
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
