package underhook.adapter.job;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import underhook.adapter.job.text.Fields;
import underhook.adapter.job.text.Renaming;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Table;
import underhook.app.port.ReferenceSystem;
import underhook.core.job.InputFile;

/**
 * A file as job.yaml names it.
 *
 * @param role the field of job.yaml that names it
 * @param name as written
 * @param path where it is
 * @param system reference system stated for it
 * @param details the mapping that names it, when it is named by one
 */
record FileReference(
        String role, String name, Path path, StatedSystem system, Optional<Fields> details) {
    boolean endsIn(String ending) {
        return name.toLowerCase(Locale.ROOT).endsWith(ending);
    }

    /** The same file as it lies elsewhere. */
    FileReference at(Path other) {
        return new FileReference(role, other.toString(), other, system, details);
    }

    boolean isYaml() {
        return endsIn(".yaml") || endsIn(".yml");
    }

    boolean isGeoJson() {
        return endsIn(".geojson") || endsIn(".json");
    }

    boolean isTable() {
        return endsIn(".csv") || endsIn(".xlsx");
    }

    /** The same file as a table to read. */
    Table.Input toTable(Source source) {
        return new Table.Input(path, source, detail("layer"), renaming(), "");
    }

    /** How the names of this file stand for ours; made anew for each reading. */
    Renaming renaming() {
        return details.map(Renaming::read).orElseGet(Renaming::none);
    }

    InputFile toInputFile() {
        return new InputFile(name, role, detail("licence"), detail("attribution"));
    }

    String detail(String field) {
        return details.map(fields -> fields.text(field, "")).orElse("");
    }

    /**
     * What job.yaml says of a file's reference system.
     *
     * @param isOwn whether it is stated for this very file
     * @param isStated whether it says anything, even if that was a fault
     */
    record StatedSystem(boolean isStated, boolean isOwn, Optional<ReferenceSystem> system) {
        static final StatedSystem NONE = new StatedSystem(false, false, Optional.empty());
    }
}
