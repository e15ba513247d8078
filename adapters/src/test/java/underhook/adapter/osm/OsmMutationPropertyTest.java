package underhook.adapter.osm;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.MapReader.Contents;

/** Whatever happens to a file's bytes, reading it ends in things or in one fault. */
class OsmMutationPropertyTest {
    private static final int TIMES = 400;

    @TempDir Path folder;

    @Test
    void no_change_of_bytes_makes_it_throw() throws Exception {
        Random random = new Random(20260926);
        for (Map.Entry<String, byte[]> sample : OsmSamples.all().entrySet()) {
            String name = sample.getKey();
            Contents whole = read(name, sample.getValue());
            assertThat(whole.faults()).as(name).isEmpty();
            assertThat(whole.features()).as(name).isNotEmpty();
            int faults = 0;
            for (int i = 0; i < TIMES; i++) {
                Contents contents = read(name, changed(sample.getValue(), random));
                assertThat(contents.faults()).hasSizeLessThanOrEqualTo(1);
                faults += contents.faults().size();
            }
            assertThat(faults).as(name).isGreaterThan(TIMES / 10);
        }
    }

    private Contents read(String name, byte[] bytes) throws IOException {
        Path file = Files.write(folder.resolve(name), bytes);
        return new OsmMapReader().read(file, name, OsmText.BOX);
    }

    private static byte[] changed(byte[] whole, Random random) {
        byte[] bytes = whole.clone();
        if (random.nextInt(4) == 0) {
            bytes = Arrays.copyOf(bytes, random.nextInt(bytes.length));
        }
        for (int i = random.nextInt(4); i >= 0 && bytes.length > 0; i--) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
    }
}
