package underhook.checks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** The files of this checkout. */
final class Checkout {
    private Checkout() {}

    /** The folder that holds the launcher. */
    static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("underhook"))) {
            folder = folder.getParent();
            if (folder == null) {
                throw new IllegalStateException("the tests must run inside the checkout.");
            }
        }
        return folder;
    }

    static String read(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** Java sources of a module: "main" or "test". */
    static List<Path> javaSources(String kind) {
        return files(path -> path.toString().replace('\\', '/').contains("/src/" + kind + "/java/"))
                .filter(path -> path.toString().endsWith(".java"))
                .toList();
    }

    /** Every file that is not built and not hidden away by git. */
    static Stream<Path> files(Predicate<Path> wanted) {
        try (Stream<Path> walk = Files.walk(root())) {
            return walk
                    .filter(Files::isRegularFile)
                    .filter(path -> !isBuilt(root().relativize(path)))
                    .filter(wanted)
                    .sorted()
                    .toList()
                    .stream();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static boolean isBuilt(Path relative) {
        for (Path part : relative) {
            String name = part.toString();
            if (name.equals("target") || name.equals(".git") || name.equals(".idea")) {
                return true;
            }
        }
        return false;
    }

    static String name(Path file) {
        return root().relativize(file).toString().replace('\\', '/');
    }
}
