package underhook.app;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A folder held against every other process until it is closed. */
public final class FolderLock implements AutoCloseable {
    private final FileChannel file;

    private FolderLock(FileChannel file) {
        this.file = file;
    }

    /**
     * Makes the folder if need be and holds it.
     *
     * @param name of the lock's file in it
     * @throws FolderBusyException if somebody else holds it
     */
    public static FolderLock hold(Path folder, String name) throws IOException {
        Files.createDirectories(folder);
        FileChannel file =
                FileChannel.open(
                        folder.toRealPath().resolve(name),
                        StandardOpenOption.CREATE,
                        StandardOpenOption.WRITE);
        boolean held = false;
        try {
            held = isLocked(file);
            if (!held) {
                throw new FolderBusyException(folder);
            }
            return new FolderLock(file);
        } finally {
            if (!held) {
                file.close();
            }
        }
    }

    private static boolean isLocked(FileChannel file) throws IOException {
        try {
            // Held until the channel is closed.
            FileLock lock = file.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException heldByThisProcess) {
            return false;
        }
    }

    /** Gives the folder free. The file stays: removing it could hand out the lock twice. */
    @Override
    public void close() throws IOException {
        file.close();
    }
}
