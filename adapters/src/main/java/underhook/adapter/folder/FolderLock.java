package underhook.adapter.folder;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/** Keeps a folder for one process. The system lets go of it even when the process dies. */
final class FolderLock implements AutoCloseable {
    private final Path file;
    private final FileChannel channel;

    private FolderLock(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    static FolderLock take(Path folder) throws IOException {
        Path file = folder.resolve(".underhook.lock");
        FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        // The file may have gone between opening and locking; then the lock keeps nobody out.
        if (lock(channel) == null || !Files.exists(file)) {
            channel.close();
            throw new IOException("another run of the program is using " + folder);
        }
        return new FolderLock(file, channel);
    }

    private static @Nullable FileLock lock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    @Override
    public void close() throws IOException {
        try {
            Files.deleteIfExists(file);
        } finally {
            channel.close();
        }
    }
}
