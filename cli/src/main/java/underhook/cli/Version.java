package underhook.cli;

import java.nio.file.Path;
import java.util.Map;
import picocli.CommandLine.IVersionProvider;
import underhook.assembly.Settings;

/** Name and version. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {Settings.from(Map.of(), Path.of("")).program()};
    }
}
