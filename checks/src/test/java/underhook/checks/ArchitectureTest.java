package underhook.checks;

import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class ArchitectureTest {
    private static final List<String> LOW = List.of("core.unit", "core.finding");
    private static final List<String> MIDDLE =
            List.of("core.unit", "core.finding", "core.geo", "core.air", "core.job");
    private static final List<String> CALCULATIONS =
            List.of(
                    "core.unit",
                    "core.finding",
                    "core.geo",
                    "core.air",
                    "core.job",
                    "core.load",
                    "core.line",
                    "core.aircraft",
                    "core.wire",
                    "core.fall",
                    "core.pole");

    /** What of ours each package may use besides itself. A prefix counts for all below it. */
    private static final Map<String, List<String>> ALLOWED =
            Map.ofEntries(
                    Map.entry("core.unit", List.of()),
                    Map.entry("core.finding", List.of()),
                    Map.entry("core.geo", LOW),
                    Map.entry(
                            "core.air",
                            List.of("core.unit", "core.finding", "core.geo", "core.job")),
                    Map.entry("core.job", List.of("core.unit", "core.finding", "core.geo")),
                    Map.entry("core.plan", List.of("core.finding", "core.geo", "core.job")),
                    Map.entry("core.ode", List.of()),
                    Map.entry("core.load", List.of("core.unit", "core.finding", "core.line")),
                    Map.entry("core.line", List.of("core.unit", "core.finding", "core.ode")),
                    Map.entry("core.aircraft", MIDDLE),
                    Map.entry("core.wire", MIDDLE),
                    Map.entry(
                            "core.fall",
                            List.of(
                                    "core.unit",
                                    "core.finding",
                                    "core.geo",
                                    "core.job",
                                    "core.ode")),
                    Map.entry("core.pole", List.of("core.unit", "core.finding", "core.load")),
                    Map.entry("core.site", CALCULATIONS),
                    Map.entry(
                            "core.crew",
                            List.of("core.unit", "core.finding", "core.geo", "core.job")),
                    Map.entry("core.billing", LOW),
                    Map.entry("core.flown", List.of("core.finding", "core.job", "core.unit")),
                    Map.entry("core.track", List.of("core.geo", "core.job")),
                    Map.entry("core.learn", List.of("core.finding", "core.job")),
                    // What is said beside the plan; nothing that a plan is made of may use it.
                    Map.entry(
                            "core.ahead",
                            List.of(
                                    "core.unit",
                                    "core.finding",
                                    "core.geo",
                                    "core.air",
                                    "core.aircraft",
                                    "core.crew",
                                    "core.job",
                                    "core.plan",
                                    "core.wire")),
                    Map.entry(
                            "core.lift",
                            List.of(
                                    "core.unit",
                                    "core.finding",
                                    "core.geo",
                                    "core.air",
                                    "core.job",
                                    "core.load",
                                    "core.line",
                                    "core.aircraft",
                                    "core.wire",
                                    "core.fall",
                                    "core.pole",
                                    "core.site")),
                    // One wrong formula must not pass both the planner and its check.
                    Map.entry(
                            "planner.verify",
                            List.of(
                                    "core.unit",
                                    "core.finding",
                                    "core.geo",
                                    "core.job",
                                    "core.plan")),
                    // Replays what is written; how it was found is none of its business.
                    Map.entry(
                            "planner.odds",
                            List.of("core.unit", "core.crew", "core.job", "core.plan")),
                    Map.entry("planner.route", List.of("core")),
                    Map.entry("planner.search", List.of("core")),
                    Map.entry("planner.order", List.of("core", "planner.route", "planner.search")),
                    Map.entry("app", List.of("core", "planner", "app")),
                    Map.entry("adapter", List.of("core", "app.port")),
                    // Files of geodata say nothing of lifts, plans and routes.
                    Map.entry(
                            "adapter.geofile",
                            List.of(
                                    "core.unit",
                                    "core.finding",
                                    "core.geo",
                                    "core.job",
                                    "app.port")),
                    Map.entry("assembly", List.of("core", "planner", "app", "adapter")),
                    Map.entry("web", List.of("core", "planner", "app", "assembly")),
                    Map.entry("cli", List.of("core", "planner", "app", "assembly", "web")),
                    Map.entry("testkit", List.of("core", "app")),
                    Map.entry(
                            "bench",
                            List.of(
                                    "core",
                                    "planner",
                                    "app",
                                    "adapter",
                                    "assembly",
                                    "web",
                                    "cli")));

    private static final JavaClasses OURS =
            new ClassFileImporter()
                    .withImportOption(new ImportOption.DoNotIncludeTests())
                    .importPackages("underhook");

    @Test
    void every_package_uses_only_what_it_may() {
        TreeSet<String> complaints = new TreeSet<>();
        for (JavaClass from : OURS) {
            for (Dependency dependency : from.getDirectDependenciesFromSelf()) {
                String to = dependency.getTargetClass().getBaseComponentType().getPackageName();
                if (!mayUse(from.getPackageName(), to)) {
                    complaints.add(from.getName() + " uses " + to);
                }
            }
        }
        assertThat(complaints).isEmpty();
    }

    @Test
    void the_rule_itself_can_say_no() {
        assertThat(mayUse("underhook.core.geo", "underhook.core.plan")).isFalse();
        assertThat(mayUse("underhook.planner.verify", "underhook.core.aircraft")).isFalse();
        assertThat(mayUse("underhook.planner.verify", "underhook.planner.route")).isFalse();
        assertThat(mayUse("underhook.adapter.paper", "underhook.adapter.table")).isFalse();
        assertThat(mayUse("underhook.adapter.paper", "underhook.app")).isFalse();
        assertThat(mayUse("underhook.web", "underhook.adapter.crs")).isFalse();
        assertThat(mayUse("underhook.surprise", "underhook.core.unit")).isFalse();
        assertThat(mayUse("underhook.adapter.paper", "underhook.app.port")).isTrue();
    }

    @Test
    void no_packages_run_in_a_circle() {
        slices().matching("underhook.(**)").should().beFreeOfCycles().check(OURS);
    }

    @Test
    void packages_are_named_after_the_work() {
        Set<String> banned = Set.of("util", "helper", "common", "manager", "impl");
        assertThat(OURS)
                .isNotEmpty()
                .noneMatch(
                        type ->
                                List.of(type.getPackageName().split("\\.")).stream()
                                        .anyMatch(banned::contains));
    }

    private static boolean mayUse(String fromPackage, String toPackage) {
        if (!toPackage.startsWith("underhook.") || fromPackage.equals(toPackage)) {
            return true;
        }
        String from = fromPackage.substring("underhook.".length());
        String to = toPackage.substring("underhook.".length());
        if (sameAdapter(from, to)) {
            return true;
        }
        return allowedFor(from).stream().anyMatch(prefix -> isIn(to, prefix));
    }

    private static boolean sameAdapter(String from, String to) {
        String[] a = from.split("\\.");
        String[] b = to.split("\\.");
        return a.length > 1
                && b.length > 1
                && a[0].equals("adapter")
                && b[0].equals("adapter")
                && a[1].equals(b[1]);
    }

    /** The list of the longest name that fits; a package on no list may use nothing of ours. */
    private static List<String> allowedFor(String from) {
        String key = from;
        while (!ALLOWED.containsKey(key) && key.contains(".")) {
            key = key.substring(0, key.lastIndexOf('.'));
        }
        return ALLOWED.getOrDefault(key, List.of());
    }

    private static boolean isIn(String name, String prefix) {
        return name.equals(prefix) || name.startsWith(prefix + ".");
    }
}
