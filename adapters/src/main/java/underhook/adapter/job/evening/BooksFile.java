package underhook.adapter.job.evening;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import underhook.adapter.job.text.Faults;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Quantity;
import underhook.adapter.job.text.Range;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.Found;
import underhook.adapter.job.text.TextFile;
import underhook.adapter.job.text.Yaml;
import underhook.app.port.EveningFiles;
import underhook.app.port.EveningFiles.Books;
import underhook.app.port.Reading;
import underhook.core.billing.Quote;
import underhook.core.billing.Tariff;
import underhook.core.finding.FindingCode;
import underhook.core.flown.CycleRule;
import underhook.core.flown.PartLife;
import underhook.core.flown.TrainedHands;

/** Reads the operator's books: who may hook, the tariff, and the lives that are counted. */
final class BooksFile {
    private static final long MOST_BYTES = 8L << 20;
    private static final Range COUNT = Range.of(0, 100_000_000, "a whole number, 0 or more");
    private static final Range EVENTS = Range.of(0, 1000, "a whole number from 0 to 1000");
    private static final Range CENTS = Range.of(0, 1e11, "whole cents, 0 or more");
    private static final Range LIFE = Range.of(0, 1e9, "0 or more");

    private BooksFile() {}

    static Reading<Books> read(Path file) {
        Source source = new Source(String.valueOf(file.getFileName()), new Faults());
        Optional<Books> books =
                TextFile.read(file, source, MOST_BYTES)
                        .flatMap(text -> Yaml.read(text, source))
                        .map(BooksFile::read);
        return Reading.of(books.orElse(Books.NONE), source.faults().list());
    }

    private static Books read(Fields fields) {
        String version = fields.text("version");
        if (!version.isEmpty() && !version.equals("1")) {
            fields.fault(
                    FindingCode.VERSION_UNKNOWN,
                    "version",
                    "is not known to this program",
                    new Found(version, "1; a newer program reads newer files"));
        }
        Set<String> hands = new HashSet<>(fields.list("trained_to_hook"));
        Optional<Tariff> tariff = readTariff(fields);
        List<PartLife> parts = new ArrayList<>();
        for (Fields row : fields.mappings("parts")) {
            readPart(row).ifPresent(parts::add);
        }
        Optional<EveningFiles.Offer> offer =
                fields.findMapping("offer").flatMap(BooksFile::readOffer);
        fields.refuseUnknown();
        return new Books(new TrainedHands(hands), tariff, parts, offer);
    }

    private static Optional<EveningFiles.Offer> readOffer(Fields fields) {
        int before = fields.source().faults().count();
        int days = fields.whole("days", Range.of(1, 1000, "a whole number from 1 to 1000"));
        double flyable =
                fields.quantity(
                        "flyable",
                        Quantity.FRACTION,
                        Range.of(0.01, 1, "between 1 and 100 percent"));
        double waitingCents = fields.number("waiting_day_cents", CENTS);
        String source = fields.text("flyable_source");
        fields.refuseUnknown();
        return fields.source().faults().count() > before
                ? Optional.empty()
                : Optional.of(
                        new EveningFiles.Offer(
                                new Quote.Terms(days, flyable, Math.round(waitingCents)), source));
    }

    private static Optional<Tariff> readTariff(Fields fields) {
        List<Fields> rows = fields.mappings("tariff_items");
        boolean isStated =
                !rows.isEmpty() || fields.has("tariff") || fields.has("day_minimum_cents");
        if (!isStated) {
            return Optional.empty();
        }
        int before = fields.source().faults().count();
        String name = fields.text("tariff");
        String currency = fields.currency("currency");
        long minimum = (long) fields.number("day_minimum_cents", CENTS, 0);
        List<Tariff.Item> items = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (Fields row : rows) {
            int good = row.source().faults().count();
            String item = row.text("name");
            Tariff.Basis basis = row.choice("basis", Tariff.Basis.class);
            Tariff.Rounding rounding =
                    row.has("rounding")
                            ? row.choice("rounding", Tariff.Rounding.class)
                            : Tariff.Rounding.STARTED_MINUTE;
            long cents = row.whole("cents_per_unit", Range.of(0, 1e9, "whole cents, 0 or more"));
            row.refuseUnknown();
            if (!names.add(item)) {
                row.fault(
                        FindingCode.ID_DUPLICATE,
                        "name",
                        "stands twice",
                        new Found(item, "a name of its own"));
            }
            if (row.source().faults().count() == good) {
                items.add(new Tariff.Item(item, basis, rounding, cents));
            }
        }
        return fields.source().faults().count() == before
                ? Optional.of(new Tariff(name, currency, minimum, items))
                : Optional.empty();
    }

    private static Optional<PartLife> readPart(Fields row) {
        int before = row.source().faults().count();
        String part = row.text("part");
        CycleRule rule =
                new CycleRule(
                        row.text("rule"),
                        row.whole("per_take_off_and_landing", EVENTS),
                        row.whole("per_lift", EVENTS),
                        row.has("per_engine_start") ? row.whole("per_engine_start", EVENTS) : 0,
                        row.text("source"));
        int cycles = row.has("used_cycles") ? row.whole("used_cycles", COUNT) : 0;
        double usedS = row.findQuantity("used", Quantity.TIME, LIFE).orElse(0);
        OptionalInt most =
                row.has("limit_cycles")
                        ? OptionalInt.of(row.whole("limit_cycles", COUNT))
                        : OptionalInt.empty();
        OptionalDouble mostS = row.findQuantity("limit", Quantity.TIME, LIFE);
        Optional<LocalDate> due = row.findDate("due_on");
        row.refuseUnknown();
        return row.source().faults().count() == before
                ? Optional.of(new PartLife(part, rule, cycles, usedS, most, mostS, due))
                : Optional.empty();
    }
}
