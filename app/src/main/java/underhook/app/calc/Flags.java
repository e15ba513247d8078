package underhook.app.calc;

import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import underhook.app.port.NearestWord;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;

/** The flags of one call, read and within their ranges. */
final class Flags {
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?([0-9]+(\\.[0-9]*)?|\\.[0-9]+)([eE][+-]?[0-9]{1,3})?");

    private final Map<String, Object> values;

    private Flags(Map<String, Object> values) {
        this.values = values;
    }

    /** Reads what was typed against what the topic knows; refused with every fault at once. */
    static Outcome<Flags> read(String topic, List<Flag> known, Map<String, String> typed) {
        return new Reader(topic).read(known, typed);
    }

    boolean has(String name) {
        return values.containsKey(name);
    }

    double number(String name) {
        return (Double) getValue(name);
    }

    double numberOr(String name, double otherwise) {
        return has(name) ? number(name) : otherwise;
    }

    int whole(String name) {
        return (int) Math.round(number(name));
    }

    boolean isSet(String name) {
        return has(name) && (Boolean) getValue(name);
    }

    String text(String name) {
        return (String) getValue(name);
    }

    OffsetDateTime time(String name) {
        return (OffsetDateTime) getValue(name);
    }

    List<Double> numbers(String name) {
        return ((List<?>) getValue(name)).stream().map(Double.class::cast).toList();
    }

    private Object getValue(String name) {
        return Objects.requireNonNull(values.get(name), name);
    }

    /** The finding for a value that a formula does not take. */
    static Finding outOfRange(String topic, Flag flag, String value, String limit) {
        return new Finding(
                FindingCode.VALUE_OUT_OF_RANGE,
                Severity.STOP,
                flag.name(),
                value,
                limit,
                flag.unit(),
                "calc " + topic,
                "--" + flag.name() + " (" + value + ") must be " + limit + ".");
    }

    /** Reads one call; collects values and faults as it goes. */
    private static final class Reader {
        private final String topic;
        private final Map<String, Object> values = new LinkedHashMap<>();
        private final List<Finding> faults = new ArrayList<>();

        Reader(String topic) {
            this.topic = topic;
        }

        Outcome<Flags> read(List<Flag> known, Map<String, String> typed) {
            List<String> names = known.stream().map(Flag::name).toList();
            typed.keySet().stream()
                    .filter(name -> !names.contains(name))
                    .sorted()
                    .forEach(name -> unknown(name, names));
            for (Flag flag : known) {
                String text = typed.get(flag.name());
                if (text != null) {
                    readOne(flag, text.strip());
                } else if (flag.required()) {
                    fault(FindingCode.FIELD_MISSING, flag, "", "is missing.");
                }
            }
            return faults.isEmpty() ? Outcome.done(new Flags(values)) : Outcome.refused(faults);
        }

        private void readOne(Flag flag, String text) {
            switch (flag.kind()) {
                case TEXT -> {
                    if (text.isEmpty()) {
                        unreadable(flag, text, "must not be empty.");
                    }
                    values.put(flag.name(), text);
                }
                case YES_NO -> {
                    if (!List.of("", "true", "false").contains(text)) {
                        unreadable(flag, text, "must be true or false.");
                    }
                    values.put(flag.name(), !text.equals("false"));
                }
                case TIME -> readTime(flag, text);
                case NUMBER, WHOLE -> {
                    List<Double> one = readNumbers(flag, List.of(text));
                    if (!one.isEmpty()) {
                        values.put(flag.name(), one.get(0));
                    }
                }
                case NUMBERS ->
                        values.put(flag.name(), readNumbers(flag, List.of(text.split(",", -1))));
            }
        }

        private List<Double> readNumbers(Flag flag, List<String> texts) {
            List<Double> numbers = new ArrayList<>();
            for (String each : texts) {
                String text = each.strip();
                if (!NUMBER.matcher(text).matches()) {
                    String hint =
                            text.contains(",")
                                    ? " Perhaps the comma should be a decimal point."
                                    : "";
                    unreadable(flag, text, "must be a number." + hint);
                    continue;
                }
                double value = Double.parseDouble(text);
                if (!Double.isFinite(value) || !flag.allows(value)) {
                    faults.add(outOfRange(topic, flag, text, flag.range()));
                } else if (flag.kind() == Flag.Kind.WHOLE && (value % 1 < 0 || value % 1 > 0)) {
                    faults.add(outOfRange(topic, flag, text, "a whole number"));
                } else {
                    numbers.add(value);
                }
            }
            return numbers;
        }

        private void readTime(Flag flag, String text) {
            try {
                OffsetDateTime time = OffsetDateTime.parse(text);
                if (time.getYear() < 1951 || time.getYear() > 2098) {
                    faults.add(outOfRange(topic, flag, text, "from 1951 to 2098"));
                }
                values.put(flag.name(), time);
            } catch (DateTimeException e) {
                unreadable(
                        flag,
                        text,
                        "must be a time with its offset, as 2026-09-08T07:00:00-01:00.");
            }
        }

        private void unreadable(Flag flag, String value, String must) {
            fault(FindingCode.FIELD_UNREADABLE, flag, value, "(" + value + ") " + must);
        }

        private void unknown(String name, List<String> names) {
            String perhaps =
                    NearestWord.find(name, names)
                            .map(word -> " Perhaps --" + word + ".")
                            .orElse("");
            faults.add(
                    new Finding(
                            FindingCode.FIELD_UNKNOWN,
                            Severity.STOP,
                            name,
                            name,
                            String.join(" ", names),
                            "",
                            "calc " + topic,
                            "calc " + topic + " knows no --" + name + "." + perhaps));
        }

        private void fault(FindingCode code, Flag flag, String value, String what) {
            boolean bounded = flag.kind() == Flag.Kind.NUMBER && Double.isFinite(flag.to());
            faults.add(
                    new Finding(
                            code,
                            Severity.STOP,
                            flag.name(),
                            value,
                            bounded ? flag.range() : "",
                            flag.unit(),
                            "calc " + topic,
                            "--" + flag.name() + " " + what));
        }
    }
}
