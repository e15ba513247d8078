package underhook.checks;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Driver;
import java.util.Objects;
import java.util.Properties;
import java.util.ServiceLoader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The libraries find their services, natives and tables inside the one jar. */
@Tag("slow")
class JarIT {
    private static final Path JAR = Checkout.root().resolve("cli/target/underhook.jar");

    @Test
    void opens_a_database_with_the_native_library_from_the_jar() throws Exception {
        try (URLClassLoader loader = loader()) {
            Driver driver =
                    ServiceLoader.load(Driver.class, loader).stream()
                            .map(ServiceLoader.Provider::get)
                            .filter(one -> one.getClass().getName().equals("org.sqlite.JDBC"))
                            .findFirst()
                            .orElseThrow();
            try (Connection connection =
                            Objects.requireNonNull(
                                    driver.connect("jdbc:sqlite::memory:", new Properties()));
                    var statement = connection.createStatement();
                    var answer = statement.executeQuery("select 40 + 2")) {
                assertThat(answer.getInt(1)).isEqualTo(42);
            }
        }
    }

    @Test
    void knows_the_reference_systems_by_code() throws Exception {
        try (URLClassLoader loader = loader()) {
            Class<?> factory = loader.loadClass("org.locationtech.proj4j.CRSFactory");
            Object system =
                    factory.getMethod("createFromName", String.class)
                            .invoke(factory.getConstructor().newInstance(), "EPSG:25832");

            assertThat(system).isNotNull();
            assertThat(String.valueOf(system)).contains("25832");
        }
    }

    @Test
    void says_its_version_and_carries_its_licence() throws Exception {
        Process process =
                new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                                "-jar",
                                JAR.toString(),
                                "--version")
                        .redirectErrorStream(true)
                        .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor()).isZero();
        assertThat(said).startsWith("underhook ");
        try (URLClassLoader loader = loader()) {
            assertThat(loader.getResource("META-INF/underhook/LICENSE")).isNotNull();
            assertThat(loader.getResource("META-INF/underhook/NOTICE")).isNotNull();
            assertThat(loader.getResource("META-INF/underhook/third-party.md")).isNotNull();
        }
    }

    /** Sees the jar and the JDK, and nothing of this test's class path. */
    private static URLClassLoader loader() throws Exception {
        return new URLClassLoader(
                new URL[] {JAR.toUri().toURL()}, ClassLoader.getPlatformClassLoader());
    }
}
