package underhook.adapter.job;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import underhook.adapter.job.text.Source;
import underhook.adapter.job.text.Source.At;
import underhook.adapter.job.text.Source.Found;
import underhook.app.port.MapReader;
import underhook.app.port.NearestWord;
import underhook.core.finding.FindingCode;

/** Finds which of a job's map files a newer file stands for. */
record Replaced(Head head, List<MapReader> maps) {
    private static final At WHOLE = new At(0, "");

    /**
     * The file; empty, with a fault of the newer one, when there is none or it is not clear.
     *
     * @param named as job.yaml names it; empty to find it by name, then by format
     */
    Optional<FileReference> find(Source source, Path newer, String named) {
        List<FileReference> files =
                Stream.of("map", "wires").flatMap(role -> head.files(role).stream()).toList();
        List<String> names = files.stream().map(FileReference::name).toList();
        if (!Files.isRegularFile(newer)) {
            source.fault(
                    FindingCode.FILE_MISSING, WHOLE, "is no file", Found.allowing("a map file"));
            return Optional.empty();
        }
        if (!named.isEmpty() && !names.contains(named)) {
            source.fault(
                    FindingCode.ID_UNKNOWN,
                    WHOLE,
                    "stands for no map file of the job",
                    new Found(named, NearestWord.hint(named, names)));
            return Optional.empty();
        }
        String sought = named.isEmpty() ? String.valueOf(newer.getFileName()) : named;
        Optional<FileReference> same =
                files.stream().filter(file -> file.name().equals(sought)).findFirst();
        if (same.isPresent()) {
            return same;
        }
        List<FileReference> alike =
                files.stream().filter(file -> format(file).equals(format(file.at(newer)))).toList();
        if (alike.size() != 1) {
            source.fault(
                    FindingCode.FIELD_MISSING,
                    WHOLE,
                    alike.isEmpty()
                            ? "is of a format that no map file of the job has"
                            : "may stand for " + alike.size() + " files of the job",
                    Found.allowing("--for with one of " + String.join(", ", names)));
            return Optional.empty();
        }
        return Optional.of(alike.get(0));
    }

    /** Files that one reader reads are of one format, else those of one ending. */
    private String format(FileReference file) {
        for (int i = 0; i < maps.size(); i++) {
            if (file.role().equals("map") && maps.get(i).reads(file.name())) {
                return "map " + i;
            }
        }
        String name = file.name().toLowerCase(Locale.ROOT);
        int dot = name.lastIndexOf('.');
        return file.isGeoJson() ? ".geojson" : name.substring(Math.max(0, dot));
    }
}
