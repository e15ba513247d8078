package underhook.adapter.job.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.NearestWord;
import underhook.core.finding.FindingCode;

/**
 * How the names of a file that was not made for us stand for ours, and which values hold where it has
 * none, as job.yaml states it.
 *
 * <p>Once it says anything, names that nobody asks for are passed over. So that a slip of the pen passes
 * nothing over, {@link #check} reports each stated name that the file does not have or that nobody asked
 * for. Mutable: it keeps what it met.
 */
public final class Renaming {
    private final Optional<Fields> columns;
    private final Optional<Fields> defaults;
    private final Set<String> met = new LinkedHashSet<>();
    private final Set<String> asked = new LinkedHashSet<>();

    private Renaming(Optional<Fields> columns, Optional<Fields> defaults) {
        this.columns = columns;
        this.defaults = defaults;
    }

    /** Every name stands for itself. */
    public static Renaming none() {
        return new Renaming(Optional.empty(), Optional.empty());
    }

    /** What {@code columns} and {@code defaults} of a mapping in job.yaml say. */
    public static Renaming read(Fields details) {
        return new Renaming(details.findMapping("columns"), details.findMapping("defaults"));
    }

    boolean isStated() {
        return columns.isPresent() || defaults.isPresent();
    }

    void ask(String name) {
        asked.add(name);
    }

    /** A name of ours as a fault shows it: with the file's own, where that is another. */
    String shown(String name, String spelt) {
        String own = columns.flatMap(fields -> fields.findText(name)).orElse("");
        return own.isEmpty() ? spelt : spelt + " (" + own + ")";
    }

    /** The same columns under our names; a column that stands for several comes several times. */
    Map<String, String> columns(List<String> typed) {
        Map<String, String> ours = new LinkedHashMap<>();
        List<Node.Entry> entries = new ArrayList<>();
        for (String name : typed) {
            entries.add(new Node.Entry(0, name, new Node.Scalar(0, name)));
        }
        for (Node.Entry entry : renamed(new Node.Mapping(0, entries))) {
            ours.put(Style.TABLE.canonical(entry.name()), text(entry));
        }
        return ours;
    }

    /** The same values under our names, with the defaults where there is none. */
    Node.Mapping apply(Node.Mapping values) {
        if (!isStated()) {
            return values;
        }
        List<Node.Entry> entries = renamed(values);
        defaults.ifPresent(stated -> fill(entries, stated, values.line()));
        return new Node.Mapping(values.line(), entries);
    }

    private List<Node.Entry> renamed(Node.Mapping values) {
        Map<String, Node.Entry> byName = new HashMap<>();
        for (Node.Entry entry : values.entries()) {
            byName.putIfAbsent(Style.TABLE.canonical(entry.name()), entry);
        }
        met.addAll(byName.keySet());
        List<Node.Entry> entries = new ArrayList<>();
        Map<String, Node.Entry> stated = columns.map(Fields::entries).orElse(Map.of());
        for (Node.Entry entry : values.entries()) {
            if (!stated.containsKey(Style.TABLE.canonical(entry.name()))) {
                entries.add(entry);
            }
        }
        stated.forEach(
                (ours, names) -> {
                    Node.Entry found = byName.get(Style.TABLE.canonical(text(names)));
                    if (found != null) {
                        entries.add(new Node.Entry(found.line(), ours, found.value()));
                    }
                });
        return entries;
    }

    private static void fill(List<Node.Entry> entries, Fields stated, int line) {
        stated.entries()
                .forEach(
                        (ours, value) -> {
                            boolean hasValue =
                                    entries.stream()
                                            .filter(one -> isNamed(one, ours))
                                            .anyMatch(one -> !isBlank(one));
                            if (!hasValue) {
                                entries.removeIf(one -> isNamed(one, ours));
                                entries.add(new Node.Entry(line, ours, value.value()));
                            }
                        });
    }

    private static boolean isNamed(Node.Entry entry, String ours) {
        return Style.TABLE.canonical(entry.name()).equals(ours);
    }

    private static boolean isBlank(Node.Entry entry) {
        return entry.value() instanceof Node.Scalar scalar && scalar.text().isBlank();
    }

    private static String text(Node.Entry entry) {
        return entry.value() instanceof Node.Scalar scalar ? scalar.text() : "";
    }

    /** Reports what was stated in vain; to be called when the file was read. */
    public void check() {
        if (asked.isEmpty()) {
            return; // nothing was read, so nothing is known about it
        }
        columns.ifPresent(this::checkNames);
        defaults.ifPresent(this::checkNames);
        columns.ifPresent(this::checkColumns);
    }

    private void checkNames(Fields stated) {
        for (String name : stated.entries().keySet()) {
            if (!asked.contains(name)) {
                List<String> known = asked.stream().map(stated::shown).toList();
                stated.fault(
                        FindingCode.FIELD_UNKNOWN,
                        name,
                        "is no known field of such a file",
                        Found.allowing(NearestWord.hint(stated.shown(name), known)));
            }
        }
    }

    private void checkColumns(Fields stated) {
        for (String name : stated.entries().keySet()) {
            String own = stated.text(name, "");
            if (!own.isEmpty() && !met.contains(Style.TABLE.canonical(own))) {
                stated.fault(
                        FindingCode.FIELD_UNKNOWN,
                        name,
                        "names nothing that the file has",
                        new Found(own, NearestWord.hint(own, met)));
            }
        }
    }
}
