package underhook.adapter.osm;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import underhook.adapter.fuzz.Target;
import underhook.app.port.MapReader.Contents;

/** OpenStreetMap files by the ending of their name. */
public final class OsmTarget implements Target {
    private final OsmMapReader reader = new OsmMapReader();
    private final Path file;
    private final String ending;

    private OsmTarget(Path file, String ending) {
        this.file = file;
        this.ending = ending;
    }

    public static OsmTarget of(String ending) throws IOException {
        return new OsmTarget(Files.createTempDirectory("fuzz").resolve("a" + ending), ending);
    }

    @Override
    public List<byte[]> seeds() throws IOException {
        return OsmSamples.all().entrySet().stream()
                .filter(sample -> sample.getKey().endsWith(ending))
                .map(Map.Entry::getValue)
                .toList();
    }

    @Override
    public boolean read(byte[] bytes) throws IOException {
        Files.write(file, bytes);
        Contents contents = reader.read(file, "a" + ending, OsmText.BOX);
        Target.tell(contents.faults());
        return contents.faults().isEmpty();
    }
}
