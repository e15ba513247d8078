package underhook.adapter.geofile;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.adapter.geofile.aixm.AixmReader;
import underhook.app.port.FeatureReader;
import underhook.app.port.FeatureReader.Request;
import underhook.app.port.MapBox;

/** Whatever happens to a file, it is read or it has faults: never an exception, never a hang. */
@Tag("slow")
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class GeoFileMutationIT {
    private static final int ROUNDS = 2000;

    @TempDir Path folder;

    /** Whether a spoilt file had faults. */
    private interface Reading {
        boolean hasFaults(Path file);
    }

    private void spoil(byte[] whole, String name, Reading reading) throws Exception {
        SplittableRandom random = new SplittableRandom(20261126);
        Path file = folder.resolve(name);
        Files.write(file, whole);
        assertThat(reading.hasFaults(file)).isFalse();
        int refused = 0;
        for (int round = 0; round < ROUNDS; round++) {
            byte[] spoilt = whole.clone();
            for (int i = random.nextInt(4); i >= 0; i--) {
                spoilt = mutate(spoilt, random);
            }
            Files.write(file, spoilt);
            refused += reading.hasFaults(file) ? 1 : 0;
        }
        // If hardly any mutation spoilt something, this test would look at nothing.
        assertThat(refused).isBetween(ROUNDS / 10, ROUNDS);
    }

    private static byte[] mutate(byte[] bytes, SplittableRandom random) {
        int at = random.nextInt(bytes.length);
        int to = Math.min(bytes.length, at + 1 + random.nextInt(40));
        byte[] changed = bytes.clone();
        switch (random.nextInt(5)) {
            case 0 -> changed[at] = (byte) random.nextInt(256);
            case 1 -> changed[at] ^= (byte) (1 << random.nextInt(8));
            case 2 -> changed = Arrays.copyOf(bytes, Math.max(1, at));
            case 3 -> Arrays.fill(changed, at, to, (byte) random.nextInt(256));
            default -> {
                int from = random.nextInt(bytes.length - (to - at) + 1);
                System.arraycopy(bytes, from, changed, at, to - at);
            }
        }
        return changed;
    }

    private void spoil(byte[] whole, String name, FeatureReader reader) throws Exception {
        spoil(
                whole,
                name,
                file ->
                        !reader.read(
                                        new Request(file, name, Optional.empty(), ""),
                                        feature -> assertThat(feature.line()).isPositive())
                                .isEmpty());
    }

    @Test
    void geopackage() throws Exception {
        spoil(
                GeoFileSamples.geoPackage(folder.resolve("b.gpkg")),
                "a.gpkg",
                new GeoPackageReader(new Proj4jReferenceSystems()));
    }

    @Test
    void kml() throws Exception {
        spoil(KmlReaderTest.SAMPLE.getBytes(UTF_8), "a.kml", new KmlReader());
    }

    @Test
    void kmz() throws Exception {
        spoil(GeoFileSamples.kmz(), "a.kmz", new KmlReader());
    }

    @Test
    void gpx() throws Exception {
        spoil(GpxReaderTest.SAMPLE.getBytes(UTF_8), "a.gpx", new GpxReader());
    }

    @Test
    void aixm() throws Exception {
        spoil(
                underhook.adapter.geofile.aixm.SampleMessage.TEXT.getBytes(UTF_8),
                "a.xml",
                file -> !new AixmReader().read(file, "a.xml", MapBox.EARTH).faults().isEmpty());
    }
}
