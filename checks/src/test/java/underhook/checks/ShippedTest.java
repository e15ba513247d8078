package underhook.checks;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What stands on the class path of the shipped program is listed with its licence. */
class ShippedTest {
    private static final Set<String> LICENCES =
            Set.of(
                    "Apache-2.0",
                    "MIT",
                    "BSD-2-Clause",
                    "BSD-3-Clause",
                    "ISC",
                    "EDL-1.0",
                    "EPL-2.0",
                    "public domain");

    @Test
    void every_library_shipped_is_listed_in_its_version_with_an_allowed_licence() {
        Set<String> listed = new TreeSet<>();
        for (String[] row : rows(Checkout.read(Checkout.root().resolve("docs/third-party.md")))) {
            listed.add(row[0] + " " + row[1]);
            assertThat(List.of(row[2].split(" and | or "))).as(row[0]).allMatch(LICENCES::contains);
        }

        assertThat(listed).isEqualTo(shipped()).isNotEmpty();
    }

    @Test
    void nothing_under_the_gpl_is_listed() {
        String list =
                Checkout.read(Checkout.root().resolve("docs/third-party.md"))
                        .toUpperCase(Locale.ROOT);

        assertThat(list).doesNotContain("| GPL").doesNotContain("| AGPL");
    }

    private static List<String[]> rows(String text) {
        List<String[]> rows = new ArrayList<>();
        for (String line : text.split("\n")) {
            String[] cells = line.split("\\|");
            if (line.startsWith("| ") && cells.length >= 4 && cells[1].contains(":")) {
                rows.add(new String[] {cells[1].strip(), cells[2].strip(), cells[3].strip()});
            }
        }
        return rows;
    }

    /** What Maven wrote down while it built the command line: group:artifact:jar:version:scope. */
    private static Set<String> shipped() {
        Set<String> shipped = new TreeSet<>();
        Matcher matcher =
                Pattern.compile("([\\w.-]+:[\\w.-]+):jar:([\\w.-]+):(?:compile|runtime)")
                        .matcher(Checkout.read(Checkout.root().resolve("cli/target/shipped.txt")));
        while (matcher.find()) {
            shipped.add(matcher.group(1) + " " + matcher.group(2));
        }
        return shipped;
    }
}
