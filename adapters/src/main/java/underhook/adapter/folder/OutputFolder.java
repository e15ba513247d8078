package underhook.adapter.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.app.port.OutputWriter;
import underhook.app.port.Refusal;
import underhook.app.port.RefusalWriter;

/** An output folder, held by this process until it is closed. */
public final class OutputFolder implements AutoCloseable {
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT)
                    .withZone(ZoneOffset.UTC);

    private final Path folder;
    private final FolderLock lock;
    private final Writers writers;

    /**
     * What fills a folder.
     *
     * @param outputs one for each file of a plan
     * @param refusal for a day without a plan; its file may be one of the plan's too
     * @param clock for the name of the folder that old files are moved to
     */
    public record Writers(List<OutputWriter> outputs, RefusalWriter refusal, InstantSource clock) {
        public Writers {
            outputs = List.copyOf(outputs);
        }

        List<String> names() {
            List<String> names = new ArrayList<>();
            outputs.forEach(writer -> names.add(writer.fileName()));
            names.add(refusal.fileName());
            return names.stream().distinct().toList();
        }
    }

    private OutputFolder(Path folder, FolderLock lock, Writers writers) {
        this.folder = folder;
        this.lock = lock;
        this.writers = writers;
    }

    /**
     * Makes the folder where it is not there, and keeps others out.
     *
     * @throws IOException when it cannot be made or another process has it
     */
    public static OutputFolder open(Path folder, Writers writers) throws IOException {
        Files.createDirectories(folder);
        return new OutputFolder(folder, FolderLock.take(folder), writers);
    }

    /**
     * Writes every file of a plan and moves them in.
     *
     * @throws IOException when one cannot be written; the folder then is as it was
     */
    public List<Path> publish(OutputWriter.Output output) throws IOException {
        Path fresh = beside();
        try {
            List<String> names = new ArrayList<>();
            for (OutputWriter writer : writers.outputs()) {
                writer.write(output, fresh.resolve(writer.fileName()));
                names.add(writer.fileName());
            }
            Path old = beside();
            try {
                return swap(names, fresh, old);
            } finally {
                delete(old);
            }
        } finally {
            delete(fresh);
        }
    }

    /**
     * Writes the reasons, and moves what an earlier run left to {@code superseded-TIME}.
     *
     * @throws IOException when it cannot be written; the folder then is as it was
     */
    public List<Path> refuse(Refusal refusal) throws IOException {
        Path fresh = beside();
        try {
            String name = writers.refusal().fileName();
            writers.refusal().write(refusal, fresh.resolve(name));
            return swap(List.of(name), fresh, superseded());
        } finally {
            delete(fresh);
        }
    }

    @Override
    public void close() throws IOException {
        lock.close();
    }

    /** Moves all known files out and the named ones in; moves them back when that fails. */
    private List<Path> swap(List<String> names, Path fresh, Path old) throws IOException {
        List<String> movedOut = new ArrayList<>();
        List<Path> movedIn = new ArrayList<>();
        try {
            for (String name : writers.names()) {
                if (Files.exists(folder.resolve(name))) {
                    Files.createDirectories(old);
                    Files.move(folder.resolve(name), old.resolve(name));
                    movedOut.add(name);
                }
            }
            for (String name : names) {
                movedIn.add(Files.move(fresh.resolve(name), folder.resolve(name)));
            }
            return List.copyOf(movedIn);
        } catch (IOException e) {
            moveBack(movedIn, movedOut, old);
            throw e;
        }
    }

    private void moveBack(List<Path> movedIn, List<String> movedOut, Path old) throws IOException {
        for (Path file : movedIn) {
            Files.deleteIfExists(file);
        }
        for (String name : movedOut) {
            Files.move(
                    old.resolve(name), folder.resolve(name), StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** A folder on the same disk, so that moving is no copying. */
    private Path beside() throws IOException {
        return Files.createTempDirectory(folder, ".writing-");
    }

    /** A name that is free: two refusals may fall into one second. */
    private Path superseded() {
        String name = "superseded-" + STAMP.format(writers.clock().instant());
        Path path = folder.resolve(name);
        for (int i = 2; Files.exists(path); i++) {
            path = folder.resolve(name + "-" + i);
        }
        return path;
    }

    private static void delete(Path folder) throws IOException {
        List<Path> files;
        try (var listed = Files.list(folder)) {
            files = listed.toList();
        }
        for (Path file : files) {
            Files.deleteIfExists(file);
        }
        Files.deleteIfExists(folder);
    }
}
