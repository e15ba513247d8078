package underhook.checks;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import underhook.core.finding.FindingCode;

class DocumentsTest {
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]+)(?:#[^)]*)?\\)");

    @Test
    void every_finding_is_explained() {
        Path file = Checkout.root().resolve("docs/findings.md");
        assertThat(file).exists();
        String text = Checkout.read(file);

        assertThat(FindingCode.values())
                .allSatisfy(
                        code ->
                                assertThat(text)
                                        .containsPattern(
                                                "(?<![A-Z_])" + code.name() + "(?![A-Z_])"));
    }

    @Test
    void every_link_leads_somewhere() {
        List<String> broken = new ArrayList<>();
        Checkout.files(path -> path.toString().endsWith(".md"))
                .forEach(file -> broken.addAll(brokenLinks(file, Checkout.read(file))));

        assertThat(broken).isEmpty();
        Path readme = Checkout.root().resolve("README.md");
        assertThat(brokenLinks(readme, "[x](docs/nowhere.md)")).hasSize(1);
    }

    @Test
    void no_file_names_a_folder_of_one_machine() {
        // Put together here, so that this file does not find itself.
        Pattern path = Pattern.compile("(?<![\\w.$}])/(?:ho" + "me|ro" + "ot|wo" + "rk)/\\.?\\w");

        assertThat(
                        Checkout.files(DocumentsTest::isText)
                                .filter(file -> path.matcher(Checkout.read(file)).find())
                                .map(Checkout::name))
                .isEmpty();
        assertThat(path.matcher("see /ho" + "me/somebody").find()).isTrue();
    }

    @Test
    void decisions_are_numbered_without_a_gap() throws Exception {
        try (var files = Files.list(Checkout.root().resolve("docs/decisions"))) {
            List<String> numbers =
                    files.map(file -> Objects.requireNonNull(file.getFileName()).toString())
                            .map(name -> name.substring(0, 4))
                            .sorted()
                            .toList();

            for (int i = 0; i < numbers.size(); i++) {
                assertThat(Integer.parseInt(numbers.get(i))).isEqualTo(i + 1);
            }
        }
    }

    private static List<String> brokenLinks(Path file, String text) {
        List<String> broken = new ArrayList<>();
        Path folder = Objects.requireNonNull(file.getParent());
        Matcher matcher = LINK.matcher(text);
        while (matcher.find()) {
            String target = matcher.group(1);
            if (!target.contains("://") && !Files.exists(folder.resolve(target))) {
                broken.add(Checkout.name(file) + ": " + target);
            }
        }
        return broken;
    }

    private static boolean isText(Path file) {
        return file.toString().matches(".*\\.(java|js|html|md|xml|yaml|yml|csv|txt|css|json)")
                || file.endsWith("underhook")
                || file.endsWith(".ci/run");
    }
}
