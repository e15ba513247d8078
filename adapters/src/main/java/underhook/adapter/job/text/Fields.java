package underhook.adapter.job.text;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import underhook.adapter.job.text.NumberText.Decimal;
import underhook.adapter.job.text.Quantity.Unit;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.ClockTime;
import underhook.app.port.NearestWord;
import underhook.core.finding.FindingCode;

/**
 * Named values of a mapping, a table row or a feature, handed out by type.
 *
 * <p>Names are asked for with underscores, whatever the file's own spelling. Every name that is asked
 * for becomes a known one; {@link #refuseUnknown} reports the others. A value that cannot be read as
 * meant notes a fault and comes back as a harmless filler.
 */
public final class Fields {
    private static final Pattern ID = Pattern.compile("[^\\s;|+,\"\\p{Cntrl}]{1,40}");
    private static final Pattern CURRENCY = Pattern.compile("[A-Z]{3}");
    private static final Pattern DATE = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}");
    private static final Pattern CLOCK = Pattern.compile("[0-9]{1,2}:[0-9]{2}(:[0-9]{2})?");

    private final Context context;
    private final int line;
    private final Map<String, Node.Entry> entries = new LinkedHashMap<>();
    private final Set<String> asked = new LinkedHashSet<>();

    /** What all the fields of one file share. */
    record Context(
            Source source,
            Style style,
            Decimal decimal,
            Optional<Header> header,
            Renaming renaming) {
        Context(Source source, Style style, Decimal decimal) {
            this(source, style, decimal, Optional.empty(), Renaming.none());
        }
    }

    /** Takes the entries; a name that comes twice is a fault. */
    Fields(Context context, Node.Mapping mapping) {
        this.context = context;
        this.line = mapping.line();
        for (Node.Entry entry : context.renaming.apply(mapping).entries()) {
            Node.Entry first = entries.putIfAbsent(context.style.canonical(entry.name()), entry);
            if (first != null) {
                context.source.fault(
                        FindingCode.FIELD_UNREADABLE,
                        new At(entry.line(), entry.name()),
                        "stands twice, first in line " + first.line(),
                        Found.allowing("once"));
            }
        }
    }

    public int line() {
        return line;
    }

    public Source source() {
        return context.source;
    }

    /** Notes a fault about one of these fields. */
    public void fault(FindingCode code, String name, String what, Found found) {
        Node.Entry entry = entries.get(name);
        int at = entry == null ? line : entry.line();
        context.source.fault(code, new At(at, shown(name)), what, found);
    }

    /** Whether a field is there and says something. */
    public boolean has(String name) {
        return entry(name).isPresent();
    }

    /** Whether a field holds just this word, in whatever case. */
    public boolean isWord(String name, String word) {
        return find(name).filter(text -> text.toLowerCase(Locale.ROOT).equals(word)).isPresent();
    }

    /** A name as this file spells it. */
    public String shown(String name) {
        return context.renaming.shown(name, context.style.shown(name));
    }

    /** Reports a required field as missing; in a table without such a column once for all rows. */
    public void missing(String name) {
        Optional<Header> header = context.header.filter(columns -> !columns.has(name));
        if (header.isEmpty()) {
            fault(FindingCode.FIELD_MISSING, name, "is missing", Found.NOTHING);
        } else if (header.get().reportOnce(name)) {
            context.source.fault(
                    FindingCode.FIELD_MISSING,
                    new At(header.get().line(), shown(name)),
                    "column is missing",
                    Found.NOTHING);
        } else {
            context.source.faults().addAgain();
        }
    }

    /** Reports every field that nobody asked for. */
    public void refuseUnknown() {
        refuseUnknown(new LinkedHashSet<>());
    }

    /** The same, passing over names that were said before, which then grow. */
    public void refuseUnknown(Set<String> said) {
        if (context.header.isPresent() || context.renaming.isStated()) {
            return; // reported once for the file, not for every row
        }
        for (Map.Entry<String, Node.Entry> each : entries.entrySet()) {
            if (!asked.contains(each.getKey()) && said.add(each.getKey())) {
                String typed = each.getValue().name();
                context.source.fault(
                        FindingCode.FIELD_UNKNOWN,
                        new At(each.getValue().line(), typed),
                        "is no known field",
                        Found.allowing(
                                NearestWord.hint(typed, asked.stream().map(this::shown).toList())));
            }
        }
    }

    private Optional<Node.Entry> entry(String name) {
        asked.add(name);
        context.header.ifPresent(header -> header.asked().add(name));
        context.renaming.ask(name);
        return Optional.ofNullable(entries.get(name))
                .filter(
                        entry ->
                                !(entry.value() instanceof Node.Scalar scalar
                                        && scalar.text().isBlank()));
    }

    /** The text, when there is one; a list or mapping in its place is a fault. */
    private Optional<String> find(String name) {
        Optional<Node.Entry> entry = entry(name);
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        if (entry.get().value() instanceof Node.Scalar scalar) {
            return Optional.of(scalar.text().strip());
        }
        fault(
                FindingCode.FIELD_UNREADABLE,
                name,
                "is " + entry.get().value().kind(),
                Found.allowing("a single value"));
        return Optional.empty();
    }

    private boolean isThere(String name) {
        return entry(name).isPresent();
    }

    /** Required text. */
    public String text(String name) {
        Optional<String> text = find(name);
        if (text.isEmpty() && !isThere(name)) {
            missing(name);
        }
        return text.orElse("");
    }

    public String text(String name, String otherwise) {
        return find(name).orElse(otherwise);
    }

    public Optional<String> findText(String name) {
        return find(name);
    }

    /** Required currency, as ISO 4217 writes it: what stands behind a price must be read as one. */
    public String currency(String name) {
        String text = text(name);
        if (!text.isEmpty() && !CURRENCY.matcher(text).matches()) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    "is no currency",
                    new Found(text, "three capital letters, such as EUR"));
        }
        return text;
    }

    /** Required id: a short word. */
    public String id(String name) {
        String text = text(name);
        if (!text.isEmpty()) {
            checkId(name, text);
        }
        return text;
    }

    private void checkId(String name, String text) {
        if (!ID.matcher(text).matches()) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    "is no id",
                    new Found(
                            text,
                            "a word of at most 40 letters without blanks , ; | + and quotes"));
        }
    }

    /** A list of ids, empty when the field is. */
    public List<String> ids(String name) {
        List<String> ids = list(name);
        ids.forEach(id -> checkId(name, id));
        return ids;
    }

    /** A list of words, empty when the field is. */
    public List<String> list(String name) {
        Optional<Node.Entry> entry = entry(name);
        if (entry.isEmpty()) {
            return List.of();
        }
        List<String> words = new ArrayList<>();
        if (entry.get().value() instanceof Node.Items items) {
            for (Node node : items.nodes()) {
                if (node instanceof Node.Scalar scalar && !scalar.text().isBlank()) {
                    words.add(scalar.text().strip());
                } else {
                    context.source.fault(
                            FindingCode.FIELD_UNREADABLE,
                            new At(node.line(), shown(name)),
                            "holds " + (node instanceof Node.Scalar ? "nothing" : node.kind()),
                            Found.allowing("single values in the list"));
                }
            }
            return words;
        }
        for (String word : find(name).orElse("").split("[;|]")) {
            if (!word.isBlank()) {
                words.add(word.strip());
            }
        }
        return words;
    }

    /** Required number without a unit, or with the one its name ends in. */
    public double number(String name, Range range) {
        OptionalDouble number = findNumber(name, range);
        if (number.isEmpty() && !isThere(name)) {
            missing(name);
        }
        return number.orElse(0);
    }

    public double number(String name, Range range, double otherwise) {
        return findNumber(name, range).orElse(otherwise);
    }

    public OptionalDouble findNumber(String name, Range range) {
        return find(name).map(text -> toNumber(name, text, range)).orElse(OptionalDouble.empty());
    }

    private OptionalDouble toNumber(String name, String text, Range range) {
        Optional<NumberText> number = readNumber(name, text, false);
        if (number.isPresent() && !number.get().unit().isEmpty()) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    "has something behind the number",
                    new Found(text, "a number alone"));
            return OptionalDouble.empty();
        }
        if (number.isEmpty() || !isWithin(name, number.get().value(), new Limits(text, range))) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(number.get().value());
    }

    /** A list of numbers; a fault for each that is none. */
    public List<Double> numbers(String name, Range range) {
        List<Double> values = new ArrayList<>();
        for (String word : list(name)) {
            toNumber(name, word, range).ifPresent(values::add);
        }
        return List.copyOf(values);
    }

    /** Required whole number. */
    public int whole(String name, Range range) {
        double value = number(name, range);
        if (value != Math.rint(value)) {
            fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    name,
                    "is not whole",
                    new Found(find(name).orElse(""), "a whole number"));
        }
        return (int) value;
    }

    private record Limits(String text, Range range) {}

    private boolean isWithin(String name, double value, Limits limits) {
        if (limits.range.holds(value)) {
            return true;
        }
        fault(
                FindingCode.FIELD_OUT_OF_RANGE,
                name,
                "is out of range",
                new Found(limits.text, limits.range.words()));
        return false;
    }

    private Optional<NumberText> readNumber(String name, String text, boolean mayBeEstimated) {
        NumberText.Reading reading = NumberText.read(text, context.decimal);
        if (reading.number().isEmpty()) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    reading.what(),
                    new Found(text, reading.allowed()));
            return Optional.empty();
        }
        if (reading.number().get().estimated() && !mayBeEstimated) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    "is an estimate",
                    new Found(text, "a plain number: only a mass may be estimated"));
            return Optional.empty();
        }
        return reading.number();
    }

    /** Required number with a unit; the name is given without it. In SI. */
    public double quantity(String base, Quantity quantity, Range range) {
        Optional<Measured> measured = findMeasured(base, quantity, new Asking(range, false));
        if (measured.isEmpty() && !isAnyThere(base, quantity)) {
            missingOf(base, quantity);
        }
        return measured.map(Measured::value).orElse(0.0);
    }

    /** Number with a unit, in SI, when there is one. */
    public OptionalDouble findQuantity(String base, Quantity quantity, Range range) {
        return findMeasured(base, quantity, new Asking(range, false))
                .map(measured -> OptionalDouble.of(measured.value()))
                .orElse(OptionalDouble.empty());
    }

    /** The name under which a quantity stands here, or would. */
    public String presentName(String base, Quantity quantity) {
        return quantity.units().stream()
                .map(unit -> base + "_" + unit.suffix())
                .filter(name -> entries.containsKey(name))
                .findFirst()
                .orElse(base + "_" + preferredUnit(base, quantity).suffix());
    }

    /**
     * A required list of numbers with a unit, in SI; an empty element is a hole. An element that is no
     * number in range is a fault and comes as a filler.
     */
    public List<OptionalDouble> quantities(String base, Quantity quantity, Range range) {
        String name = presentName(base, quantity);
        if (!isAnyThere(base, quantity)) {
            missing(name);
            return List.of();
        }
        Unit unit = quantity.ending(name.substring(base.length() + 1));
        if (!(entry(name).map(Node.Entry::value).orElseThrow() instanceof Node.Items items)) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    "is no list",
                    Found.allowing("a list such as [0, 500, 1000]"));
            return List.of();
        }
        List<OptionalDouble> values = new ArrayList<>();
        for (Node node : items.nodes()) {
            String text = node instanceof Node.Scalar scalar ? scalar.text() : node.kind();
            if (text.isBlank()) {
                values.add(OptionalDouble.empty());
            } else {
                values.add(
                        OptionalDouble.of(
                                measure(
                                                new Column(name, unit, quantity),
                                                text,
                                                new Asking(range, false))
                                        .map(Measured::value)
                                        .orElse(range.most())));
            }
        }
        return values;
    }

    /** Number with a unit that may be marked as an estimate, when there is one. */
    public Optional<Measured> findEstimable(String base, Quantity quantity, Range range) {
        return findMeasured(base, quantity, new Asking(range, true));
    }

    /**
     * A number with its unit.
     *
     * @param value in SI
     * @param typed as it was typed, with its unit
     */
    public record Measured(double value, String typed, boolean estimated) {}

    private record Asking(Range range, boolean mayBeEstimated) {}

    private boolean isAnyThere(String base, Quantity quantity) {
        return quantity.units().stream().anyMatch(unit -> isThere(base + "_" + unit.suffix()));
    }

    /** A field that may be written in several units is named with each of them. */
    private void missingOf(String base, Quantity quantity) {
        String name = base + "_" + preferredUnit(base, quantity).suffix();
        if (context.header.isPresent() || quantity.units().size() == 1) {
            missing(name);
            return;
        }
        String names =
                quantity.units().stream()
                        .map(unit -> shown(base + "_" + unit.suffix()))
                        .collect(Collectors.joining(", "));
        fault(FindingCode.FIELD_MISSING, name, "is missing", Found.allowing(names));
    }

    private Unit preferredUnit(String base, Quantity quantity) {
        return quantity.units().stream()
                .filter(
                        unit ->
                                context.header
                                        .map(h -> h.has(base + "_" + unit.suffix()))
                                        .orElse(false))
                .findFirst()
                .orElse(quantity.units().get(0));
    }

    private Optional<Measured> findMeasured(String base, Quantity quantity, Asking asking) {
        Optional<Measured> found = Optional.empty();
        String first = "";
        for (Unit unit : quantity.units()) {
            String name = base + "_" + unit.suffix();
            Optional<String> text = find(name);
            if (text.isPresent() && !first.isEmpty()) {
                fault(
                        FindingCode.FIELD_UNREADABLE,
                        name,
                        "is given besides " + shown(first),
                        new Found(text.get(), "one of them"));
            } else if (text.isPresent()) {
                first = name;
                found = measure(new Column(name, unit, quantity), text.get(), asking);
            }
        }
        return found;
    }

    private record Column(String name, Unit unit, Quantity quantity) {}

    private Optional<Measured> measure(Column column, String text, Asking asking) {
        Optional<NumberText> number = readNumber(column.name, text, asking.mayBeEstimated);
        if (number.isEmpty()) {
            return Optional.empty();
        }
        String written = number.get().unit();
        Optional<Unit> unit =
                written.isEmpty() ? Optional.of(column.unit) : column.quantity.written(written);
        if (unit.isEmpty()) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    column.name,
                    "has an unknown unit",
                    new Found(
                            text,
                            String.join(
                                    " or ",
                                    column.quantity.units().stream().map(Unit::word).toList())));
            return Optional.empty();
        }
        double value = unit.get().toSi().applyAsDouble(number.get().value());
        Range said = asking.range.saidIn(unit.get());
        if (!isWithin(column.name, value, new Limits(text, said))) {
            return Optional.empty();
        }
        String typed = written.isEmpty() ? text + " " + column.unit.word() : text;
        return Optional.of(new Measured(value, typed, number.get().estimated()));
    }

    /** Yes or no. */
    public boolean yesNo(String name, boolean otherwise) {
        Optional<String> text = find(name);
        if (text.isEmpty()) {
            return otherwise;
        }
        switch (text.get().toLowerCase(Locale.ROOT)) {
            case "yes", "true", "x":
                return true;
            case "no", "false":
                return false;
            default:
                fault(
                        FindingCode.FIELD_UNREADABLE,
                        name,
                        "is neither yes nor no",
                        new Found(text.get(), "yes or no"));
                return otherwise;
        }
    }

    /** Required word out of a family. */
    public <E extends Enum<E>> E choice(String name, Class<E> family) {
        if (!isThere(name)) {
            missing(name);
        }
        return findChoice(name, family).orElse(family.getEnumConstants()[0]);
    }

    public <E extends Enum<E>> Optional<E> findChoice(String name, Class<E> family) {
        return find(name).flatMap(text -> toChoice(name, text, family));
    }

    /** A list of words out of a family. */
    public <E extends Enum<E>> List<E> choices(String name, Class<E> family) {
        List<E> chosen = new ArrayList<>();
        list(name).forEach(word -> toChoice(name, word, family).ifPresent(chosen::add));
        return chosen;
    }

    private <E extends Enum<E>> Optional<E> toChoice(String name, String text, Class<E> family) {
        List<E> all = Arrays.asList(family.getEnumConstants());
        String wanted = text.toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
        Optional<E> found = all.stream().filter(one -> word(one).equals(wanted)).findFirst();
        if (found.isEmpty()) {
            List<String> words = all.stream().map(Fields::word).toList();
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    "is no known word",
                    new Found(
                            text,
                            "one of "
                                    + String.join(", ", words)
                                    + NearestWord.find(wanted, words)
                                            .map(near -> "; perhaps \"" + near + "\" is meant")
                                            .orElse("")));
        }
        return found;
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** An ISO date, when there is one. */
    public Optional<LocalDate> findDate(String name) {
        Optional<String> text = find(name);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            if (DATE.matcher(text.get()).matches()) {
                return Optional.of(LocalDate.parse(text.get()));
            }
        } catch (DateTimeException refused) {
            // falls through to the fault: a day that no month has
        }
        fault(
                FindingCode.FIELD_UNREADABLE,
                name,
                "is no date",
                new Found(text.get(), "a date such as 2026-09-08"));
        return Optional.empty();
    }

    /** Required time of the job's day, or of another with date and offset. */
    public Instant time(String name, JobDay day) {
        if (!isThere(name)) {
            missing(name);
        }
        return findTime(name, day).orElse(Instant.EPOCH);
    }

    public Optional<Instant> findTime(String name, JobDay day) {
        Optional<String> text = find(name);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            if (CLOCK.matcher(text.get()).matches()) {
                String clock = text.get().indexOf(':') == 1 ? "0" + text.get() : text.get();
                return onClock(
                        name, new ClockTime(day.date().atTime(LocalTime.parse(clock)), day.zone()));
            }
            return Optional.of(OffsetDateTime.parse(text.get()).toInstant());
        } catch (DateTimeException refused) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    "is no time",
                    new Found(text.get(), "a time such as 06:30, or 2026-09-08T06:30-01:00"));
            return Optional.empty();
        }
    }

    private Optional<Instant> onClock(String name, ClockTime time) {
        Optional<Instant> once = time.find();
        if (once.isEmpty()) {
            fault(
                    FindingCode.FIELD_OUT_OF_RANGE,
                    name,
                    time.wrong(),
                    new Found(String.valueOf(find(name).orElse("")), time.allowed()));
        }
        return once;
    }

    /** A mapping inside this one, when there is one. */
    public Optional<Fields> findMapping(String name) {
        Optional<Node.Entry> entry = entry(name);
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        if (entry.get().value() instanceof Node.Mapping mapping) {
            return Optional.of(within(mapping));
        }
        fault(
                FindingCode.FIELD_UNREADABLE,
                name,
                "is " + entry.get().value().kind(),
                Found.allowing("a mapping with fields of its own"));
        return Optional.empty();
    }

    /** A list of mappings, empty when there is none. */
    public List<Fields> mappings(String name) {
        Optional<Node.Entry> entry = entry(name);
        List<Fields> mappings = new ArrayList<>();
        if (entry.isEmpty()) {
            return mappings;
        }
        if (!(entry.get().value() instanceof Node.Items items)) {
            fault(
                    FindingCode.FIELD_UNREADABLE,
                    name,
                    "is " + entry.get().value().kind(),
                    Found.allowing("a list of mappings"));
            return mappings;
        }
        for (Node node : items.nodes()) {
            if (node instanceof Node.Mapping mapping) {
                mappings.add(within(mapping));
            } else {
                context.source.fault(
                        FindingCode.FIELD_UNREADABLE,
                        new At(node.line(), shown(name)),
                        "holds " + node.kind(),
                        Found.allowing("mappings in the list"));
            }
        }
        return mappings;
    }

    /** Values out of a file that has neither rows nor nested values. */
    public static Fields of(
            Source source, Renaming renaming, int line, Map<String, String> values) {
        List<Node.Entry> entries = new ArrayList<>();
        values.forEach(
                (name, value) ->
                        entries.add(new Node.Entry(line, name, new Node.Scalar(line, value))));
        return new Fields(
                new Context(source, Style.TABLE, Decimal.POINT, Optional.empty(), renaming),
                new Node.Mapping(line, entries));
    }

    /** Everything that stands here, by name. */
    Map<String, Node.Entry> entries() {
        return entries;
    }

    /** The value as it stands in the file, when there is one. */
    public Optional<Node> findNode(String name) {
        return entry(name).map(Node.Entry::value);
    }

    /** Fields of a mapping that stands somewhere in this one. */
    public Fields within(Node.Mapping mapping) {
        return new Fields(
                new Context(
                        context.source,
                        context.style,
                        context.decimal,
                        context.header,
                        Renaming.none()),
                mapping);
    }
}
