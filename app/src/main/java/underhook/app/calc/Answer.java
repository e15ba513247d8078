package underhook.app.calc;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import underhook.core.finding.Finding;
import underhook.core.finding.Outcome;

/** Collects the named results of one calculation; null says "there is none". */
final class Answer {
    private final Map<String, @Nullable Object> values = new LinkedHashMap<>();
    private final List<Map<String, String>> how = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();

    /** A zero has no sign here, and a number without end is no answer. */
    Answer with(String key, @Nullable Object value) {
        if (value instanceof Double number) {
            if (!Double.isFinite(number)) {
                throw new IllegalArgumentException(
                        key + " grows without end: the values do not go together.");
            }
            values.put(key, number + 0.0);
        } else {
            values.put(key, value);
        }
        return this;
    }

    /** Says which formula gave the results, and the key of its source. */
    Answer from(String formula, String source) {
        Map<String, String> entry = new LinkedHashMap<>();
        entry.put("formula", formula);
        entry.put("source", source);
        how.add(Collections.unmodifiableMap(entry));
        return this;
    }

    Answer saying(List<Finding> more) {
        findings.addAll(more);
        return this;
    }

    @SuppressWarnings(
            "NullAway") // A null value is an answer here, and the map is only written out.
    Outcome<Map<String, Object>> done() {
        values.put("how", List.copyOf(how));
        return Outcome.done(Collections.unmodifiableMap(values), findings);
    }
}
