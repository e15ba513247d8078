package underhook.app;

import java.io.IOException;
import java.nio.file.Path;

/** Another process, or another part of this one, is writing to the folder. */
public final class FolderBusyException extends IOException {
    private static final long serialVersionUID = 1L;

    FolderBusyException(Path folder) {
        super(
                folder
                        + " is in use by another run. Perhaps wait until it has ended, or name"
                        + " another folder.");
    }
}
