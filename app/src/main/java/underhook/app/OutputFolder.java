package underhook.app;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.stream.Stream;
import underhook.app.port.FindingsWriter;
import underhook.app.port.OutputWriter;
import underhook.core.finding.Finding;

/**
 * The folder that a plan is written to, held against every other process until it is closed.
 *
 * <p>All files are first written and flushed in a hidden folder inside it (so that they lie on the same
 * disk). That folder is then renamed: from this moment the run counts as written. Then each file is
 * renamed over its predecessor. A run that dies before the renaming leaves the old files as they were;
 * one that dies after it is completed by whoever opens the folder next. Not safe for threads.
 */
public final class OutputFolder implements AutoCloseable {
    private static final String LOCK = ".underhook.lock";
    private static final String WRITING = ".underhook-writing";
    private static final String READY = ".underhook-ready";
    private static final String REFUSED = ".underhook-refused";
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT)
                    .withZone(ZoneOffset.UTC);

    /** Held while files are swapped in; a program that ends takes it for good, so that it ends before or after. */
    private static final ReentrantLock SWAPPING = new ReentrantLock();

    static {
        Runtime.getRuntime().addShutdownHook(new Thread(SWAPPING::lock, "swapping"));
    }

    private final Path folder;
    private final Writers writers;
    private final InstantSource clock;
    private final FolderLock lock;

    /** Every file that a run may write, and the one that a refusal leaves. */
    private record Writers(List<OutputWriter> all, Optional<FindingsWriter> findings) {}

    private OutputFolder(Path folder, Writers writers, InstantSource clock, FolderLock lock) {
        this.folder = folder;
        this.writers = writers;
        this.clock = clock;
        this.lock = lock;
    }

    /**
     * Makes the folder if need be, locks it, and completes or clears away what an earlier run left.
     *
     * @param writers of every file that a run may write but the findings
     * @throws FolderBusyException if somebody else holds it
     * @throws IOException if it cannot be made, read or written
     */
    public static OutputFolder open(
            Path folder,
            List<? extends OutputWriter> writers,
            FindingsWriter findingsWriter,
            InstantSource clock)
            throws IOException {
        List<OutputWriter> all = new ArrayList<>(writers);
        all.add(findingsWriter);
        if (all.stream().map(OutputWriter::fileName).distinct().count() != all.size()) {
            throw new IllegalArgumentException("two writers write a file of the same name.");
        }
        return open(folder, new Writers(List.copyOf(all), Optional.of(findingsWriter)), clock);
    }

    /**
     * Tries whether something can be written into a folder, or whether it could be made; nothing of it stays.
     *
     * @throws IOException if it cannot
     */
    public static void probe(Path folder) throws IOException {
        Path whole = folder.toAbsolutePath().normalize();
        Path above = whole;
        while (above.getParent() != null && !Files.exists(above, LinkOption.NOFOLLOW_LINKS)) {
            above = above.getParent();
        }
        if (!Files.isDirectory(above)) {
            throw new NotDirectoryException(above.toString());
        }
        Path probe = Files.createTempDirectory(above, ".underhook-probe-");
        try {
            // Each name by itself, which may be too long or none.
            for (Path name : above.equals(whole) ? List.<Path>of() : above.relativize(whole)) {
                Files.delete(Files.createDirectory(probe.resolve(name)));
            }
        } finally {
            Files.delete(probe);
        }
    }

    private static OutputFolder open(Path folder, Writers writers, InstantSource clock)
            throws IOException {
        FolderLock lock = FolderLock.hold(folder, LOCK);
        boolean opened = false;
        try {
            OutputFolder output = new OutputFolder(folder.toRealPath(), writers, clock, lock);
            output.recover();
            opened = true;
            return output;
        } finally {
            if (!opened) {
                lock.close();
            }
        }
    }

    /**
     * Writes every file of a plan and swaps them in; all of them or none.
     *
     * @return the files, as they now lie in the folder
     * @throws IOException if a file cannot be written; the files of an earlier run are then untouched,
     *     unless only the renaming failed, which the next opening completes
     */
    public List<Path> write(OutputWriter.Output output) throws IOException {
        prepare(
                READY,
                writing -> {
                    for (OutputWriter writer : writers.all()) {
                        writer.write(output, writing.resolve(writer.fileName()));
                    }
                });
        install(folder.resolve(READY), false);
        return writers.all().stream().map(writer -> folder.resolve(writer.fileName())).toList();
    }

    /**
     * Writes the findings of a refusal alone; what an earlier run left is moved to a folder
     * superseded-TIME beside them, so that no old card lies beside a new refusal.
     */
    public void writeRefusal(List<Finding> findings) throws IOException {
        FindingsWriter writer = writers.findings().orElseThrow();
        prepare(
                REFUSED,
                writing -> writer.writeRefusal(findings, writing.resolve(writer.fileName())));
        install(folder.resolve(REFUSED), true);
    }

    /** Fills a folder with files. */
    private interface Filling {
        void fill(Path writing) throws IOException;
    }

    /** One file by its name, and what writes it. */
    public record Part(String fileName, Writing writing) {
        /** Writes a whole file. */
        public interface Writing {
            void write(Path file) throws IOException;
        }
    }

    /**
     * Writes files of any kind into a folder and swaps them in; all of them or none.
     *
     * @param parts of different names
     * @return the files, as they now lie in the folder
     * @throws FolderBusyException if somebody else holds the folder
     * @throws IOException if a file cannot be written; what lay there is then untouched
     */
    public static List<Path> write(Path folder, List<Part> parts, InstantSource clock)
            throws IOException {
        try (OutputFolder output = open(folder, new Writers(List.of(), Optional.empty()), clock)) {
            output.prepare(
                    READY,
                    writing -> {
                        for (Part part : parts) {
                            part.writing().write(writing.resolve(part.fileName()));
                        }
                    });
            output.install(output.folder.resolve(READY), false);
            return parts.stream().map(part -> output.folder.resolve(part.fileName())).toList();
        }
    }

    /** Moves the files of an earlier run away, also where nothing can be written in their place. */
    public void supersede() throws IOException {
        List<Path> old =
                writers.all().stream()
                        .map(writer -> folder.resolve(writer.fileName()))
                        .filter(file -> Files.exists(file, LinkOption.NOFOLLOW_LINKS))
                        .toList();
        if (old.isEmpty()) {
            return;
        }
        Path away = makeSuperseded();
        for (Path file : old) {
            Files.move(file, away.resolve(file.getFileName()), StandardCopyOption.ATOMIC_MOVE);
        }
        flushFolder(away);
        flushFolder(folder);
    }

    private void prepare(String doneName, Filling filling) throws IOException {
        Path writing = folder.resolve(WRITING);
        boolean done = false;
        try {
            Files.createDirectory(writing);
            filling.fill(writing);
            for (Path file : list(writing)) {
                try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
                    channel.force(true);
                }
            }
            flushFolder(writing);
            Files.move(writing, folder.resolve(doneName), StandardCopyOption.ATOMIC_MOVE);
            done = true;
            flushFolder(folder);
        } catch (IOException failed) {
            // A full disk names no file.
            throw done || failed instanceof FileSystemException
                    ? failed
                    : new IOException(
                            folder
                                    + ": nothing was written, what lay there is as it was: "
                                    + failed.getMessage(),
                            failed);
        } finally {
            if (!done) {
                deleteFlat(writing);
            }
        }
    }

    private static List<Path> list(Path directory) throws IOException {
        try (Stream<Path> files = Files.list(directory)) {
            return files.sorted().toList();
        }
    }

    private void install(Path ready, boolean allOldAway) throws IOException {
        SWAPPING.lock();
        try {
            swapIn(ready, allOldAway);
        } finally {
            SWAPPING.unlock();
        }
    }

    private void swapIn(Path ready, boolean allOldAway) throws IOException {
        List<Path> fresh = list(ready);
        // Nothing left to bring in: an earlier try got this far, and what lies there is the new
        // run's.
        if (allOldAway && !fresh.isEmpty()) {
            supersede();
        }
        for (Path file : fresh) {
            Files.move(
                    file,
                    folder.resolve(file.getFileName()),
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
        }
        Files.delete(ready);
        flushFolder(folder);
    }

    private Path makeSuperseded() throws IOException {
        String name = "superseded-" + TIME.format(clock.instant());
        Path made = folder.resolve(name);
        for (int i = 2; Files.exists(made, LinkOption.NOFOLLOW_LINKS); i++) {
            made = folder.resolve(name + "-" + i);
        }
        return Files.createDirectory(made);
    }

    private void recover() throws IOException {
        deleteFlat(folder.resolve(WRITING));
        if (Files.isDirectory(folder.resolve(READY))) {
            install(folder.resolve(READY), false);
        }
        if (Files.isDirectory(folder.resolve(REFUSED))) {
            install(folder.resolve(REFUSED), true);
        }
    }

    private static void deleteFlat(Path directory) throws IOException {
        if (!Files.isDirectory(directory, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        for (Path file : list(directory)) {
            Files.delete(file);
        }
        Files.delete(directory);
    }

    /** Makes names durable where the system can do that; Windows cannot open a folder and needs not. */
    private static void flushFolder(Path directory) throws IOException {
        if (directory.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            try (FileChannel channel = FileChannel.open(directory, StandardOpenOption.READ)) {
                channel.force(true);
            }
        }
    }

    /** Gives the folder free. */
    @Override
    public void close() throws IOException {
        lock.close();
    }
}
