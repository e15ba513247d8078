package underhook.app.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import underhook.app.port.JobPath;
import underhook.app.port.KeptJob;

/**
 * Revisions of one job as folders, for readers that want files. They can be thrown away at any time.
 *
 * <p>Files are kept once by their hash and linked into each folder, so that a large raster is written
 * once. Not safe for threads.
 */
final class WorkFolders {
    private static final int KEPT = 6;

    private final KeptJob job;
    private final Path root;

    WorkFolders(KeptJob job, Path root) {
        this.job = job;
        this.root = root;
    }

    /** The folder of a revision, made when it is not there. */
    Path folder(long revision) throws IOException {
        Path folder = root.resolve("r" + revision);
        if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            Path half = root.resolve("half");
            delete(half);
            Files.createDirectories(half);
            for (Map.Entry<String, String> file : job.listFiles(revision).entrySet()) {
                Path target = half.resolve(JobPath.check(file.getKey()));
                Files.createDirectories(Objects.requireNonNull(target.getParent()));
                lay(content(file.getValue()), target);
            }
            Files.move(half, folder);
            forgetOld(folder);
        }
        return folder;
    }

    private Path content(String hash) throws IOException {
        Path file = root.resolve("content").resolve(hash);
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            Files.createDirectories(root.resolve("content"));
            Path half = root.resolve("content").resolve("half");
            Files.write(half, job.getContent(hash).toBytes());
            Files.move(half, file);
        }
        return file;
    }

    private static void lay(Path content, Path target) throws IOException {
        try {
            Files.createLink(target, content);
        } catch (IOException | UnsupportedOperationException noLinksHere) {
            Files.copy(content, target);
        }
    }

    private void forgetOld(Path newest) throws IOException {
        List<Path> all;
        try (Stream<Path> folders = Files.list(root)) {
            all =
                    folders.filter(one -> String.valueOf(one.getFileName()).matches("r[0-9]+"))
                            .filter(one -> !one.equals(newest))
                            .sorted(Comparator.comparingLong(WorkFolders::number).reversed())
                            .toList();
        }
        for (Path old : all.subList(Math.min(KEPT, all.size()), all.size())) {
            delete(old);
        }
    }

    private static long number(Path folder) {
        return Long.parseLong(String.valueOf(folder.getFileName()).substring(1));
    }

    /** Throws all of it away. */
    void clear() throws IOException {
        delete(root);
    }

    static void delete(Path folder) throws IOException {
        if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        List<Path> all;
        try (Stream<Path> files = Files.walk(folder)) {
            all = files.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path one : all) {
            Files.delete(one);
        }
    }
}
