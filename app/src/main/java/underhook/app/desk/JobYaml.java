package underhook.app.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Changes single entries of job.yaml and leaves all other text, comments too, as it was typed. */
final class JobYaml {
    static final String NAME = "job.yaml";

    private static final Pattern SIMPLE = Pattern.compile("[A-Za-z][A-Za-z0-9._/-]*|[0-9.]+");
    private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9-]*");

    private JobYaml() {}

    /** A new job without files. */
    static String empty(String name, String date, String zone) {
        return "version: 1\nname: "
                + quoted(name)
                + "\ndate: "
                + quoted(date)
                + "\nzone: "
                + quoted(zone)
                + "\n";
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
