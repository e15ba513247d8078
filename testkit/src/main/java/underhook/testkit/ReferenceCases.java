package underhook.testkit;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * One reference file: a quantity, where its values are from, and its cases.
 *
 * <p>The file starts with comment lines {@code # quantity:}, {@code # source:}, {@code # kind:} and
 * {@code # entered:}; a line that starts with {@code #} and blanks goes on with the one before. Then comes
 * a header row and one row for each case, separated by commas, blanks around a cell ignored: the case's name,
 * the inputs, {@code expected:NAME}, {@code tolerance} (absolute, in the unit of NAME), {@code basis},
 * {@code locator}. Cells hold no comma.
 *
 * @param quantity what the values are of
 * @param source where they are from, beginning with a key of docs/references.md
 * @param kind how much they prove
 * @param entered how they got into the file
 * @param cases at least one
 */
public record ReferenceCases(
        String quantity, String source, Kind kind, String entered, List<Case> cases) {
    /** How much a file proves. */
    public enum Kind {
        /** Typed from a cited source. */
        PUBLISHED,
        /** Made by other software or by hand. */
        INDEPENDENT,
        /** Our own earlier output: only to notice change. */
        PINNED
    }

    /**
     * One row.
     *
     * @param name first cell
     * @param inputs cells by column name
     * @param expectedName name of the expected column, unit included
     * @param basis why the tolerance is what it is
     */
    public record Case(
            String name,
            Map<String, String> inputs,
            String expectedName,
            double expected,
            double tolerance,
            String basis,
            String locator) {
        public Case {
            inputs = Map.copyOf(inputs);
        }

        /**
         * A number of the row.
         *
         * @throws IllegalArgumentException if the row has no such column or it is not a number
         */
        public double number(String column) {
            return parse(text(column), column);
        }

        /**
         * A text of the row.
         *
         * @throws IllegalArgumentException if the row has no such column
         */
        public String text(String column) {
            String cell = inputs.get(column);
            if (cell == null) {
                throw new IllegalArgumentException(
                        "case " + name + " has no column " + column + ", only " + inputs.keySet());
            }
            return cell;
        }

        @Override
        public String toString() {
            return name + " " + expectedName;
        }
    }

    public ReferenceCases {
        cases = List.copyOf(cases);
        if (cases.isEmpty()) {
            throw new IllegalArgumentException("a reference file must hold cases.");
        }
    }

    /**
     * Reads {@code reference/TOPIC.csv} from the class path.
     *
     * @throws IllegalArgumentException if the file is missing or not as described above
     */
    public static ReferenceCases read(String topic) {
        String path = "/reference/" + topic + ".csv";
        try (InputStream in = ReferenceCases.class.getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalArgumentException("no reference file " + path);
            }
            return parse(
                    topic,
                    new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
                            .lines()
                            .toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ReferenceCases parse(String topic, List<String> lines) {
        Map<String, String> head = new LinkedHashMap<>();
        List<String> columns = List.of();
        List<Case> cases = new ArrayList<>();
        String lastKey = "";
        for (String line : lines) {
            if (line.isBlank()) {
                continue;
            }
            if (line.startsWith("#")) {
                lastKey = readComment(line.substring(1), lastKey, head);
            } else if (columns.isEmpty()) {
                columns = cells(line);
                checkColumns(topic, columns);
            } else {
                cases.add(readCase(topic, columns, cells(line)));
            }
        }
        return new ReferenceCases(
                required(topic, head, "quantity"),
                required(topic, head, "source"),
                kind(topic, required(topic, head, "kind")),
                required(topic, head, "entered"),
                cases);
    }

    private static String readComment(String comment, String lastKey, Map<String, String> head) {
        int colon = comment.indexOf(':');
        boolean goesOn = comment.startsWith("   ") && !lastKey.isEmpty();
        if (!goesOn && colon > 0) {
            String key = comment.substring(0, colon).strip();
            head.put(key, comment.substring(colon + 1).strip());
            return key;
        }
        head.merge(lastKey, comment.strip(), (before, more) -> before + " " + more);
        return lastKey;
    }

    private static void checkColumns(String topic, List<String> columns) {
        int size = columns.size();
        boolean good =
                size >= 6
                        && columns.get(0).equals("case")
                        && columns.get(size - 4).startsWith("expected:")
                        && columns.subList(size - 3, size)
                                .equals(List.of("tolerance", "basis", "locator"));
        if (!good) {
            throw new IllegalArgumentException(topic + " has the wrong columns: " + columns);
        }
    }

    private static Case readCase(String topic, List<String> columns, List<String> cells) {
        if (cells.size() != columns.size()) {
            throw new IllegalArgumentException(
                    topic + ": row " + cells + " needs " + columns.size() + " cells.");
        }
        int size = columns.size();
        Map<String, String> inputs = new LinkedHashMap<>();
        for (int i = 1; i < size - 4; i++) {
            inputs.put(columns.get(i), cells.get(i));
        }
        double tolerance = parse(cells.get(size - 3), "tolerance");
        if (!(tolerance >= 0)) {
            throw new IllegalArgumentException(topic + ": tolerance of " + cells + " is missing.");
        }
        return new Case(
                cells.get(0),
                inputs,
                columns.get(size - 4).substring("expected:".length()),
                parse(cells.get(size - 4), columns.get(size - 4)),
                tolerance,
                cells.get(size - 2),
                cells.get(size - 1));
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        for (String cell : line.split(",", -1)) {
            cells.add(cell.strip());
        }
        return cells;
    }

    private static double parse(String text, String column) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(column + " (" + text + ") must be a number.", e);
        }
    }

    private static String required(String topic, Map<String, String> head, String key) {
        return Objects.requireNonNull(head.get(key), topic + " lacks the line # " + key + ":");
    }

    private static Kind kind(String topic, String text) {
        return switch (text) {
            case "published" -> Kind.PUBLISHED;
            case "independent" -> Kind.INDEPENDENT;
            case "pinned" -> Kind.PINNED;
            default -> throw new IllegalArgumentException(topic + " has an unknown kind: " + text);
        };
    }
}
