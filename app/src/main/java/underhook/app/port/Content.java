package underhook.app.port;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** What a file holds. */
public final class Content {
    private final byte[] bytes;
    private final String hash;

    private Content(byte[] bytes) {
        this.bytes = bytes;
        this.hash = hash(bytes);
    }

    public static Content of(byte[] bytes) {
        return new Content(bytes.clone());
    }

    public static Content of(String text) {
        return new Content(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String hash(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("Every Java has SHA-256.", impossible);
        }
    }

    public byte[] toBytes() {
        return bytes.clone();
    }

    /** As UTF-8. */
    public String toText() {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    public int size() {
        return bytes.length;
    }

    /** SHA-256 in hexadecimal: two files with the same one are taken for the same. */
    public String hash() {
        return hash;
    }
}
