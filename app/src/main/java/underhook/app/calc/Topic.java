package underhook.app.calc;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import underhook.core.finding.Outcome;

/** One thing that can be calculated: its name, its flags, and the work. */
record Topic(String name, List<Flag> flags, Function<Flags, Outcome<Map<String, Object>>> work) {
    Topic {
        flags = List.copyOf(flags);
    }
}
