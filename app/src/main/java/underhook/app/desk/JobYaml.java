package underhook.app.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Changes single entries of job.yaml and leaves all other text, comments too, as it was typed. */
final class JobYaml {
    static final String NAME = "job.yaml";

    private static final Pattern SIMPLE = Pattern.compile("[A-Za-z][A-Za-z0-9._/-]*|[0-9.]+");
    private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9-]*");

    private JobYaml() {}

    /** A new job without files, with what is stated of it in that order. */
    static String empty(Map<String, String> stated) {
        StringBuilder yaml = new StringBuilder("version: 1\n");
        stated.forEach(
                (field, value) -> {
                    if (!value.isEmpty()) {
                        yaml.append(field).append(": ").append(quoted(value)).append('\n');
                    }
                });
        return yaml.toString();
    }

    /** What the job is called, as far as a glance can tell. */
    static Optional<String> name(String yaml) {
        Matcher stated = Pattern.compile("(?m)^name\\s*:\\s*(.+?)\\s*$").matcher(yaml);
        return stated.find()
                ? Optional.of(stated.group(1).replaceAll("^[\"']|[\"']$", ""))
                : Optional.empty();
    }

    /** With another name for a file wherever it is named. */
    static String renamed(String yaml, String from, String to) {
        Pattern named = Pattern.compile("(?m)(?<![\\w./-])" + Pattern.quote(from) + "(?![\\w./-])");
        return named.matcher(yaml).replaceAll(Matcher.quoteReplacement(to));
    }

    /**
     * With a file in a role.
     *
     * @param details further fields of the entry, as crs or licence
     */
    static String with(String yaml, String role, String file, Map<String, String> details) {
        StringBuilder entry = new StringBuilder(key(role)).append(": ");
        if (details.isEmpty()) {
            entry.append(quoted(file));
        } else {
            entry.append("{file: ").append(quoted(file));
            details.forEach(
                    (name, value) ->
                            entry.append(", ")
                                    .append(key(name))
                                    .append(": ")
                                    .append(quoted(value)));
            entry.append('}');
        }
        return withEntry(yaml, role, entry.toString());
    }

    /** An entry of the outermost level reaches to the next line that begins another one. */
    private static String withEntry(String yaml, String role, String entry) {
        List<String> kept = new ArrayList<>();
        boolean isInside = false;
        boolean isPlaced = false;
        for (String line : yaml.lines().toList()) {
            boolean begins = line.matches(Pattern.quote(role) + "\\s*:.*");
            boolean continues =
                    line.startsWith(" ") || line.startsWith("-") || line.startsWith("\t");
            isInside = begins || (isInside && continues);
            if (begins) {
                kept.add(entry);
                isPlaced = true;
            } else if (!isInside) {
                kept.add(line);
            }
        }
        if (!isPlaced) {
            kept.add(entry);
        }
        return String.join("\n", kept) + "\n";
    }

    /**
     * With another value for a field of the outermost level.
     *
     * @param value as YAML
     */
    static String withValue(String yaml, String field, String value) {
        Pattern entry = Pattern.compile("(?m)^" + Pattern.quote(field) + "\\s*:.*$");
        Matcher matcher = entry.matcher(yaml);
        if (!matcher.find()) {
            throw new IllegalArgumentException("The file has no field " + field + ".");
        }
        return matcher.replaceFirst(Matcher.quoteReplacement(field + ": " + value));
    }

    /**
     * With a number for a field, which stands beside another one where it is new.
     *
     * @param beside a field with a number as its value, in braces or on a line of its own
     */
    static String withBeside(String yaml, String beside, String field, int value) {
        Matcher there = number(field).matcher(yaml);
        if (there.find()) {
            return there.replaceFirst("$1$2$3" + value);
        }
        Matcher other = number(beside).matcher(yaml);
        if (!other.find()) {
            throw new IllegalArgumentException("The file has no field " + beside + ".");
        }
        boolean isOnALine = other.group(1).isBlank();
        String between = isOnALine ? "\n" + other.group(1) : ", ";
        return other.replaceFirst("$0" + between + field + ": " + value);
    }

    /** What stands before it on its line, its name, its colon, its value. */
    private static Pattern number(String field) {
        return Pattern.compile(
                "(?m)^(|[^#\\n]*?[^\\w#-])("
                        + Pattern.quote(field)
                        + ")(\\s*:\\s*)[0-9]+(?:\\.[0-9]+)?");
    }

    /** With only those items of a list that have this name. */
    static String withItem(String yaml, String list, String name) {
        Pattern named =
                Pattern.compile(
                        "name\\s*:\\s*[\"']?" + Pattern.quote(name) + "[\"']?\\s*(?:[,}].*)?$");
        List<String> kept = new ArrayList<>();
        List<String> item = new ArrayList<>();
        boolean isInside = false;
        boolean isFound = false;
        for (String line : (yaml + "\nend:").lines().toList()) {
            boolean isItem = line.matches("\\s*- .*");
            boolean isPart = line.startsWith(" ") || line.startsWith("-") || line.isBlank();
            if (isInside && (isItem || !isPart)) {
                boolean isKept = item.stream().anyMatch(one -> named.matcher(one).find());
                isFound |= isKept;
                kept.addAll(isKept ? item : List.of());
                item.clear();
            }
            isInside = line.matches(Pattern.quote(list) + "\\s*:.*") || (isInside && isPart);
            boolean isOfItem = isInside && (isItem || !item.isEmpty());
            (isOfItem ? item : kept).add(line);
        }
        if (!isFound) {
            throw new IllegalArgumentException("There is no " + name + " among the " + list + ".");
        }
        return String.join("\n", kept.subList(0, kept.size() - 1)) + "\n";
    }

    private static String key(String name) {
        if (!KEY.matcher(name).matches()) {
            throw new IllegalArgumentException("job.yaml has no field \"" + name + "\".");
        }
        return name;
    }

    /** As YAML reads it back, whatever it holds. */
    static String quoted(String text) {
        if (SIMPLE.matcher(text).matches()) {
            return text;
        }
        StringBuilder quoted = new StringBuilder("\"");
        text.codePoints()
                .forEach(
                        c -> {
                            if (c == '"' || c == '\\') {
                                quoted.append('\\').appendCodePoint(c);
                            } else if (c < 0x20
                                    || c == 0x7f
                                    || c == 0x85
                                    || c == 0x2028
                                    || c == 0x2029) {
                                quoted.append(' ');
                            } else {
                                quoted.appendCodePoint(c);
                            }
                        });
        return quoted.append('"').toString();
    }
}
