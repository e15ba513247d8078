package underhook.cli;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Unmatched;
import tools.jackson.databind.json.JsonMapper;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Outcome;
import underhook.core.finding.Severity;

/** One formula by hand. Which flags a topic knows is the calculation's business, so all are let by. */
@Command(
        name = "calc",
        mixinStandardHelpOptions = true,
        customSynopsis = "underhook calc TOPIC --key=value ... [--json]",
        description = "Works one formula by hand.")
final class CalcCommand implements Callable<Integer> {
    private static final MathContext DIGITS = new MathContext(12);

    private final BiFunction<String, Map<String, String>, Outcome<Map<String, Object>>> calc;

    @Spec private CommandSpec spec;

    @Parameters(paramLabel = "TOPIC", description = "what to work out")
    private String topic;

    @Unmatched private List<String> rest = new ArrayList<>();

    CalcCommand(BiFunction<String, Map<String, String>, Outcome<Map<String, Object>>> calc) {
        this.calc = calc;
    }

    @Override
    public Integer call() {
        Map<String, String> flags = new LinkedHashMap<>();
        List<Finding> faults = readFlags(flags);
        boolean json = flags.remove("json") != null;
        PrintWriter out = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        Outcome<Map<String, Object>> outcome =
                faults.isEmpty() ? calc.apply(topic, flags) : Outcome.refused(faults);
        return outcome.fold(
                (answer, findings) -> {
                    print(json ? withFindings(answer, findings) : answer, json, out);
                    tell(findings, err);
                    return Exit.DONE;
                },
                findings -> {
                    if (json) {
                        print(withFindings(Map.of(), findings), true, out);
                    }
                    tell(findings, err);
                    return Exit.INPUT_REFUSED;
                });
    }

    /** What is remarked or refused stands in the object too, so that a program need not read text. */
    private static Map<String, Object> withFindings(
            Map<String, Object> answer, List<Finding> findings) {
        if (findings.isEmpty()) {
            return answer;
        }
        Map<String, Object> all = new LinkedHashMap<>(answer);
        all.put("findings", findings.stream().map(CalcCommand::fields).toList());
        return all;
    }

    private static Map<String, String> fields(Finding finding) {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("code", finding.code().name());
        fields.put("severity", finding.severity().name());
        fields.put("subject", finding.subject());
        fields.put("value", finding.value());
        fields.put("limit", finding.limit());
        fields.put("unit", finding.unit());
        fields.put("source", finding.source());
        fields.put("message", finding.message());
        return fields;
    }

    private static void print(Map<String, Object> answer, boolean json, PrintWriter out) {
        if (json) {
            out.println(JsonMapper.shared().writeValueAsString(answer));
        } else {
            answer.forEach((key, value) -> out.println(key + " = " + words(value)));
        }
    }

    /** A list one after the other, of what has names the values alone. */
    private static String words(Object value) {
        if (value instanceof List<?> list) {
            return list.stream().map(CalcCommand::words).collect(Collectors.joining(" | "));
        }
        if (value instanceof Map<?, ?> named) {
            return named.values().stream()
                    .map(CalcCommand::words)
                    .collect(Collectors.joining(", "));
        }
        return value instanceof Double number ? text(number) : String.valueOf(value);
    }

    /** Without the digits that binary fractions alone bring. */
    private static String text(double number) {
        return Double.isFinite(number)
                ? new BigDecimal(number).round(DIGITS).stripTrailingZeros().toPlainString()
                : String.valueOf(number);
    }

    private static void tell(List<Finding> findings, PrintWriter err) {
        findings.stream().map(Words::of).forEach(err::println);
    }

    /** Fills the flags and returns what cannot be one. */
    private List<Finding> readFlags(Map<String, String> flags) {
        List<Finding> faults = new ArrayList<>();
        for (int i = 0; i < rest.size(); i++) {
            String word = rest.get(i);
            if (!word.startsWith("--") || word.length() == 2) {
                faults.add(
                        fault(word, "\"" + word + "\" is no flag; flags look like --key=value."));
                continue;
            }
            int equals = word.indexOf('=');
            String key = equals < 0 ? word.substring(2) : word.substring(2, equals);
            String value = equals < 0 ? "true" : word.substring(equals + 1);
            boolean valueFollows =
                    equals < 0 && i + 1 < rest.size() && !rest.get(i + 1).startsWith("--");
            if (valueFollows) {
                i++;
                value = rest.get(i);
            }
            if (flags.put(key, value) != null) {
                faults.add(fault(key, "--" + key + " is given twice."));
            }
        }
        return faults;
    }

    private Finding fault(String subject, String why) {
        return Finding.of(
                FindingCode.FIELD_UNREADABLE, Severity.STOP, subject, "calc " + topic, why);
    }
}
