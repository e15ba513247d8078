package underhook.adapter.job;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import underhook.adapter.fuzz.Target;
import underhook.app.port.JobReading;

/** loads.xlsx: the whole archive, or by the first byte one of its parts packed among right ones. */
public final class SheetTarget implements Target {
    private final Map<String, byte[]> parts;
    private final byte[] whole;
    private final List<String> names;
    private final Path folder;
    private final JobFolderReader reader = SampleJob.reader();

    public SheetTarget() {
        SampleJob sample = new SampleJob().with("job.yaml", "loads.csv", "loads.xlsx");
        try {
            whole = pack(sample.files.getOrDefault("loads.csv", ""));
            folder = Files.createTempDirectory("fuzz");
            parts = unpacked(Files.write(folder.resolve("loads.xlsx"), whole));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        names = List.copyOf(parts.keySet());
        sample.writeTo(folder);
    }

    private static byte[] pack(String csv) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook book = new Workbook(out, "seed", "1.0")) {
            Worksheet sheet = book.newWorksheet("loads");
            String[] lines = csv.split("\n");
            for (int row = 0; row < lines.length; row++) {
                String[] cells = lines[row].split(",");
                for (int column = 0; column < cells.length; column++) {
                    if (cells[column].matches("[0-9.]+")) {
                        sheet.value(row, column, Double.parseDouble(cells[column]));
                    } else if (!cells[column].isEmpty()) {
                        sheet.value(row, column, cells[column]);
                    }
                }
            }
        }
        return out.toByteArray();
    }

    private static Map<String, byte[]> unpacked(Path file) throws IOException {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (ZipEntry entry : Collections.list(zip.entries())) {
                try (InputStream in = zip.getInputStream(entry)) {
                    parts.put(entry.getName(), in.readAllBytes());
                }
            }
        }
        return parts;
    }

    @Override
    public List<byte[]> seeds() {
        List<byte[]> seeds = new ArrayList<>();
        seeds.add(marked(0, whole));
        for (int i = 0; i < names.size(); i++) {
            seeds.add(marked(i + 1, parts.getOrDefault(names.get(i), new byte[0])));
        }
        return seeds;
    }

    private static byte[] marked(int mark, byte[] content) {
        byte[] out = new byte[content.length + 1];
        out[0] = (byte) mark;
        System.arraycopy(content, 0, out, 1, content.length);
        return out;
    }

    @Override
    public boolean read(byte[] bytes) throws IOException {
        if (bytes.length == 0) {
            return false;
        }
        int mark = Byte.toUnsignedInt(bytes[0]) % (names.size() + 1);
        byte[] content = Arrays.copyOfRange(bytes, 1, bytes.length);
        Files.write(
                folder.resolve("loads.xlsx"),
                mark == 0 ? content : packed(names.get(mark - 1), content));
        JobReading reading = reader.read(folder);
        Target.tell(reading.faults());
        return reading.job().isPresent();
    }

    private byte[] packed(String name, byte[] content) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.setLevel(0);
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getKey().equals(name) ? content : part.getValue());
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }
}
