package underhook.adapter.job.text;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** Header of a table: which columns there are, and which of them are known. Mutable. */
final class Header {
    private final int line;
    private final Map<String, String> typedNames = new LinkedHashMap<>();
    private final Set<String> asked = new HashSet<>();
    private final Set<String> reported = new HashSet<>();

    Header(int line) {
        this.line = line;
    }

    int line() {
        return line;
    }

    /** Adds a column; one without a name is none. */
    void add(String name, String typed) {
        if (!name.isEmpty()) {
            typedNames.putIfAbsent(name, typed);
        }
    }

    Map<String, String> typedNames() {
        return typedNames;
    }

    Set<String> asked() {
        return asked;
    }

    boolean has(String name) {
        return typedNames.containsKey(name);
    }

    /** True the first time that this column is reported as missing. */
    boolean reportOnce(String name) {
        return reported.add(name);
    }
}
