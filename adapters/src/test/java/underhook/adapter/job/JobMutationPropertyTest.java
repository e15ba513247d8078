package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.JobReading;

class JobMutationPropertyTest {
    private static final String NASTY =
            ";,\"'{}[]:-#&*!|>~%@`\n\r\t\0\ufeff.0129eE+NaN\u00df\u0130\ud83d";

    @TempDir Path folder;

    /** Whatever happens to a text, it is read or it has faults: never an exception, never a hang. */
    @Test
    void never_throws_for_what_a_file_holds() {
        SplittableRandom random = new SplittableRandom(20260908);
        int refused = 0;
        for (int round = 0; round < 3000; round++) {
            SampleJob sample = new SampleJob();
            List<String> names = new ArrayList<>(sample.files.keySet());
            names.remove("terrain.tif");
            String name = names.get(random.nextInt(names.size()));
            String text = sample.files.getOrDefault(name, "");
            for (int i = random.nextInt(4); i >= 0; i--) {
                text = mutate(text, random);
            }
            JobReading reading = sample.file(name, text).readIn(folder);
            refused += reading.faults().isEmpty() ? 0 : 1;
        }
        // Most mutations spoil something; if hardly any did, this test would look at nothing.
        assertThat(refused).isGreaterThan(1000);
    }

    private static String mutate(String text, SplittableRandom random) {
        if (text.isEmpty()) {
            return "x";
        }
        int at = random.nextInt(text.length());
        int to = Math.min(text.length(), at + 1 + random.nextInt(30));
        return switch (random.nextInt(5)) {
            case 0 -> text.substring(0, at) + text.substring(to);
            case 1 -> text.substring(0, to) + text.substring(at);
            case 2 -> text.substring(0, at);
            case 3 -> text.substring(0, at) + "[".repeat(random.nextInt(300)) + text.substring(at);
            default ->
                    text.substring(0, at)
                            + NASTY.charAt(random.nextInt(NASTY.length()))
                            + text.substring(at + 1);
        };
    }
}
