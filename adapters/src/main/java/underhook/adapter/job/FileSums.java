package underhook.adapter.job;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;

/** A sum of each file of a job: with the same sum it is taken for the same file. */
final class FileSums {
    /** Of a larger file its length and its beginning stand for all of it: a raster of a country is not read whole. */
    private static final int MOST_BYTES = 64 << 20;

    private FileSums() {}

    /** By name; a file that cannot be read any more has none. */
    static Map<String, String> of(Map<String, Path> files) {
        Map<String, String> sums = new TreeMap<>();
        files.forEach(
                (name, path) -> {
                    try {
                        sums.put(name, of(path));
                    } catch (IOException gone) {
                        sums.remove(name);
                    }
                });
        return sums;
    }

    private static String of(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            long sizeBytes = Files.size(file);
            if (sizeBytes > MOST_BYTES) {
                digest.update(ByteBuffer.allocate(Long.BYTES).putLong(sizeBytes).flip());
            }
            byte[] part = new byte[1 << 16];
            int left = MOST_BYTES;
            int read = in.read(part);
            while (read > 0) {
                digest.update(part, 0, read);
                left -= read;
                read = in.read(part, 0, Math.min(part.length, left));
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java has SHA-256.", impossible);
        }
    }
}
