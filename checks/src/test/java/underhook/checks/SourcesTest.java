package underhook.checks;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SourcesTest {
    /** Where a name without a unit is right, and why. */
    private static final Map<String, Set<String>> UNIT_EXCEPTIONS =
            Map.of(
                    // Symbols of the published series; all are pure numbers but rawForward, east
                    // and north.
                    "LocalFrame.java",
                    Set.of(
                            "alpha",
                            "beta",
                            "tau",
                            "tauPrime",
                            "x",
                            "rawForward",
                            "toConformal",
                            "fromConformal",
                            "asinh",
                            "atanh"),
                    // A report's own units, before they are turned into SI.
                    "Conditions.java",
                    Set.of("si", "find"),
                    "Groups.java",
                    Set.of("value", "celsius", "tenths"),
                    // A system of equations knows no units: the places of its state mix them.
                    "DormandPrince.java",
                    Set.of(
                            "before",
                            "trial",
                            "time",
                            "timeBefore",
                            "startTime",
                            "newTime",
                            "start",
                            "firstStep",
                            "nextStep",
                            "largestStep",
                            "largest",
                            "step",
                            "tryStep",
                            "until",
                            "when",
                            "at",
                            "atBefore",
                            "within",
                            "scale",
                            "error",
                            "rise",
                            "bend",
                            "counterBend",
                            "fine"),
                    "Motion.java",
                    Set.of("time"),
                    // Counted in cells.
                    "GridHeightField.java",
                    Set.of("toCentres"),
                    // The unit is a component of the same record.
                    "Limit.java",
                    Set.of("value", "limit", "marginPercent"),
                    "ChartAxis.java",
                    Set.of("found", "from", "to", "value"),
                    // Any limit's numbers, whose unit is handed in beside them or is on the way
                    // out.
                    "PlanBuilder.java",
                    Set.of("value", "limit"),
                    "Figures.java",
                    Set.of("value"));

    /** The state of a system of equations, and its rates: their places mix units. */
    private static final Set<String> MIXED =
            Set.of(
                    "state", "rates", "rates1", "rates2", "rates3", "rates4", "rates5", "rates6",
                    "rates7");

    @Test
    void doubles_in_core_and_planner_end_in_their_unit() {
        List<String> complaints =
                complaints(this::isCounted, SourceRules::unitEndings).stream()
                        .filter(complaint -> !isException(complaint))
                        .toList();

        assertThat(complaints).isEmpty();
    }

    private static boolean isException(String complaint) {
        String file = complaint.replaceAll(".*/|: .*", "");
        String name = complaint.replaceAll(".*: ", "");
        return MIXED.contains(name) || UNIT_EXCEPTIONS.getOrDefault(file, Set.of()).contains(name);
    }

    @Test
    void the_unit_rule_sees_fields_components_parameters_and_methods() {
        String bad =
                """
                record Wind(double speed, double fromTrueRad) {
                    static final double LIMIT_M = 1;
                    static final double LIMIT = 1;
                    double gust(double heightM, double shear) {
                        double local = heightM;
                        return local;
                    }
                }
                """;

        assertThat(SourceRules.unitEndings(bad))
                .containsExactlyInAnyOrder("speed", "LIMIT", "shear", "gust");
    }

    @Test
    void nobody_writes_nm() {
        assertThat(complaints(file -> true, SourceRules::ambiguousNm)).isEmpty();
        assertThat(SourceRules.ambiguousNm("double torqueNm;")).containsExactly("torqueNm");
    }

    @Test
    void functions_take_at_most_four_parameters() {
        assertThat(complaints(this::isCounted, SourceRules::tooManyParameters)).isEmpty();
        assertThat(
                        SourceRules.tooManyParameters(
                                "class A { void f(int a,int b,int c,int d,int e) {} }"))
                .containsExactly("f");
    }

    @Test
    void only_the_command_line_prints() {
        assertThat(
                        complaints(
                                file -> !Checkout.name(file).matches("(cli|bench)/.*"),
                                source -> flag(SourceRules.prints(source), "prints")))
                .isEmpty();
        assertThat(SourceRules.prints("System.out.println(1);")).isTrue();
    }

    @Test
    void text_is_made_with_a_named_locale() {
        assertThat(complaints(file -> true, SourceRules::formatsWithoutLocale)).isEmpty();
        assertThat(SourceRules.formatsWithoutLocale("String.format(\"%f\", 1.0)")).hasSize(1);
        assertThat(SourceRules.formatsWithoutLocale("String.format(Locale.ROOT, \"%f\", 1.0)"))
                .isEmpty();
    }

    @Test
    void nobody_catches_everything() {
        assertThat(
                        complaints(
                                file -> true,
                                source ->
                                        flag(SourceRules.catchesEverything(source), "catches all")))
                .isEmpty();
        assertThat(SourceRules.catchesEverything("catch (Exception e)")).isTrue();
    }

    @Test
    void every_source_named_stands_in_the_references() {
        Path references = Checkout.root().resolve("docs/references.md");
        String known = Files.exists(references) ? Checkout.read(references) : "";
        Set<String> ownWords = Set.of("PRACTICE", "DERIVED");

        assertThat(
                        complaints(
                                file -> true,
                                source ->
                                        SourceRules.sourceKeys(source).stream()
                                                .filter(key -> !ownWords.contains(key))
                                                .filter(key -> !hasWord(known, key))
                                                .toList()))
                .isEmpty();
        assertThat(SourceRules.sourceKeys(" * @source ICAO-7488 table 1"))
                .containsExactly("ICAO-7488");
    }

    @Test
    void every_package_says_what_it_is() {
        Stream<Path> folders =
                Checkout.javaSources("main").stream()
                        .map(file -> Objects.requireNonNull(file.getParent()))
                        .distinct();

        assertThat(folders)
                .allSatisfy(
                        folder -> {
                            Path info = folder.resolve("package-info.java");
                            assertThat(info).exists();
                            assertThat(Checkout.read(info)).contains("@NullMarked").contains("/**");
                        });
    }

    @Test
    void test_classes_end_so_that_the_runner_sees_them() {
        Pattern test =
                Pattern.compile(
                        "^\\s*@(Test|ParameterizedTest|RepeatedTest|TestFactory)\\b",
                        Pattern.MULTILINE);

        assertThat(Checkout.javaSources("test"))
                .filteredOn(file -> test.matcher(Checkout.read(file)).find())
                .isNotEmpty()
                .allSatisfy(file -> assertThat(Checkout.name(file)).matches(".*(Test|IT)\\.java"));
    }

    @Test
    void slow_tests_say_so() {
        assertThat(Checkout.javaSources("test"))
                .filteredOn(file -> file.toString().endsWith("IT.java"))
                .allSatisfy(file -> assertThat(Checkout.read(file)).contains("@Tag(\"slow\")"));
    }

    @Test
    void no_test_is_switched_off() {
        String off = "@" + "Disabled";

        assertThat(Checkout.javaSources("test"))
                .allSatisfy(file -> assertThat(Checkout.read(file)).doesNotContain(off));
    }

    @Test
    void nothing_is_left_to_do_without_a_decision() {
        Pattern open = Pattern.compile("\\b(TO" + "DO|FIX" + "ME)\\b(?!.*decisions/)");

        assertThat(Stream.of("main", "test").flatMap(kind -> Checkout.javaSources(kind).stream()))
                .allSatisfy(file -> assertThat(open.matcher(Checkout.read(file)).find()).isFalse());
    }

    private boolean isCounted(Path file) {
        String name = Checkout.name(file);
        return (name.startsWith("core/") || name.startsWith("planner/"))
                && !name.contains("underhook/core/unit/");
    }

    private static List<String> complaints(
            Predicate<Path> wanted, Function<String, List<String>> rule) {
        return Checkout.javaSources("main").stream()
                .filter(wanted)
                .flatMap(
                        file ->
                                rule.apply(Checkout.read(file)).stream()
                                        .map(wrong -> Checkout.name(file) + ": " + wrong))
                .toList();
    }

    private static List<String> flag(boolean raised, String word) {
        return raised ? List.of(word) : List.of();
    }

    private static boolean hasWord(String text, String word) {
        return Pattern.compile("(?<![\\w-])" + Pattern.quote(word) + "(?![\\w-])")
                .matcher(text)
                .find();
    }
}
