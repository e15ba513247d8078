package underhook.adapter.planfile;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import underhook.adapter.fixture.SmallDay;
import underhook.adapter.fuzz.Target;

/** plan.json. */
public final class PlanTarget implements Target {
    private final Path file;

    public PlanTarget() {
        try {
            file = Files.createTempDirectory("fuzz").resolve("plan.json");
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Override
    public List<byte[]> seeds() throws IOException {
        new PlanJsonWriter().write(SmallDay.output(), file);
        return List.of(Files.readAllBytes(file));
    }

    @Override
    public boolean read(byte[] bytes) throws IOException {
        Files.write(file, bytes);
        return new PlanJsonReader().read(file).isDone();
    }
}
