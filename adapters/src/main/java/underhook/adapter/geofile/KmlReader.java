package underhook.adapter.geofile;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import underhook.adapter.geofile.source.Faults;
import underhook.adapter.geofile.source.Unreadable;
import underhook.adapter.geofile.source.XmlCursor;
import underhook.app.port.Fault;
import underhook.app.port.FeatureReader;
import underhook.core.finding.FindingCode;

/** Reads KML, also packed as KMZ. */
public final class KmlReader implements FeatureReader {
    private static final long MOST_BYTES = 64L << 20;

    @Override
    public boolean reads(String fileName) {
        return fileName.toLowerCase(Locale.ROOT).endsWith(".kml") || isPacked(fileName);
    }

    @Override
    public Set<String> usualNames() {
        return Set.of("name", "description");
    }

    private static boolean isPacked(String fileName) {
        return fileName.toLowerCase(Locale.ROOT).endsWith(".kmz");
    }

    @Override
    public List<Fault> read(Request request, Consumer<StatedFeature> sink) {
        Faults faults = new Faults(request.statedName());
        XmlCursor.Reading reading = cursor -> new KmlFile(cursor, faults, sink).read(request);
        if (isPacked(request.statedName())) {
            readPacked(request, faults, reading);
        } else {
            XmlCursor.read(request.file(), MOST_BYTES, faults, reading);
        }
        return faults.list();
    }

    private static void readPacked(Request request, Faults faults, XmlCursor.Reading reading) {
        try {
            if (Files.size(request.file()) > MOST_BYTES) {
                faults.add(0, Unreadable.of(FindingCode.TOO_LARGE, "is too large"));
                return;
            }
            try (ZipFile zip = new ZipFile(request.file().toFile())) {
                Optional<? extends ZipEntry> main =
                        zip.stream()
                                .filter(e -> e.getName().toLowerCase(Locale.ROOT).endsWith(".kml"))
                                .findFirst();
                if (main.isEmpty()) {
                    faults.add(0, Unreadable.file("holds no KML"));
                    return;
                }
                try (InputStream in = zip.getInputStream(main.get())) {
                    XmlCursor.read(in, MOST_BYTES, faults, reading);
                }
            }
        } catch (IOException e) {
            faults.add(0, Unreadable.file("cannot be unpacked").allowing("a whole KMZ file"));
        }
    }
}
