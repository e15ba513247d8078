package underhook.adapter.geofile;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.adapter.fuzz.Target;
import underhook.adapter.geofile.aixm.AixmReader;
import underhook.adapter.geofile.aixm.SampleMessage;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader;
import underhook.app.port.MapBox;

/** Files of shapes and obstacles by the ending of their name. */
public final class GeoFileTarget implements Target {
    private final Path folder;
    private final String name;

    private GeoFileTarget(Path folder, String name) {
        this.folder = folder;
        this.name = name;
    }

    public static GeoFileTarget of(String name) throws IOException {
        return new GeoFileTarget(Files.createTempDirectory("fuzz"), name);
    }

    @Override
    public List<byte[]> seeds() throws IOException {
        return switch (name) {
            case "a.gpkg" -> List.of(geoPackage());
            case "a.kml" -> List.of(KmlReaderTest.SAMPLE.getBytes(UTF_8));
            case "a.kmz" -> List.of(GeoFileSamples.kmz());
            case "a.gpx" -> List.of(GpxReaderTest.SAMPLE.getBytes(UTF_8));
            default -> List.of(SampleMessage.TEXT.getBytes(UTF_8));
        };
    }

    private byte[] geoPackage() throws IOException {
        try {
            return GeoFileSamples.geoPackage(folder.resolve("seed.gpkg"));
        } catch (SQLException e) {
            throw new IOException(e);
        }
    }

    @Override
    public boolean read(byte[] bytes) throws IOException {
        Path file = Files.write(folder.resolve(name), bytes);
        List<Fault> faults =
                switch (name) {
                    case "a.gpkg" ->
                            shapes(new GeoPackageReader(new Proj4jReferenceSystems()), file);
                    case "a.kml", "a.kmz" -> shapes(new KmlReader(), file);
                    case "a.gpx" -> shapes(new GpxReader(), file);
                    default -> new AixmReader().read(file, name, MapBox.EARTH).faults();
                };
        Target.tell(faults);
        return faults.isEmpty();
    }

    private List<Fault> shapes(FeatureReader reader, Path file) {
        return reader.read(
                new FeatureReader.Request(file, name, Optional.empty(), ""),
                feature -> {
                    if (feature.line() < 1) {
                        throw new AssertionError("a feature without its place: " + feature);
                    }
                });
    }
}
