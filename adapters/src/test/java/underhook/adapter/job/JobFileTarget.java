package underhook.adapter.job;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import underhook.adapter.fuzz.Target;
import underhook.app.port.JobReading;

/** One file of a job folder, the others right; the first byte says which of those with the ending. */
public final class JobFileTarget implements Target {
    private final SampleJob sample;
    private final List<String> names = new ArrayList<>();
    private final Path folder;
    private final JobFolderReader reader = SampleJob.reader();

    JobFileTarget(SampleJob sample, String ending) {
        this.sample = sample;
        sample.files.keySet().stream().filter(name -> name.endsWith(ending)).forEach(names::add);
        try {
            folder = Files.createTempDirectory("fuzz");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        sample.writeTo(folder);
    }

    public static JobFileTarget of(String ending) {
        return new JobFileTarget(new SampleJob(), "." + ending);
    }

    @Override
    public List<byte[]> seeds() {
        List<byte[]> seeds = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            seeds.add(((char) i + text(names.get(i))).getBytes(StandardCharsets.UTF_8));
        }
        return seeds;
    }

    private String text(String name) {
        return sample.files.getOrDefault(name, "");
    }

    @Override
    public boolean read(byte[] bytes) throws IOException {
        if (bytes.length == 0) {
            return false;
        }
        String name = names.get(Byte.toUnsignedInt(bytes[0]) % names.size());
        Files.write(folder.resolve(name), Arrays.copyOfRange(bytes, 1, bytes.length));
        JobReading reading = reader.read(folder);
        Files.writeString(folder.resolve(name), text(name), StandardCharsets.UTF_8);
        Target.tell(reading.faults());
        return reading.job().isPresent();
    }
}
