package underhook.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import java.util.zip.GZIPOutputStream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** One file of the page as it is sent: packed once, and known again by its mark. */
final class Asset {
    private static final int WORTH_PACKING_BYTES = 2048;

    private final String type;
    private final byte[] bytes;
    private final byte[] packed;
    private final String mark;

    Asset(String type, byte[] bytes) throws IOException {
        this.type = type;
        this.bytes = bytes;
        this.packed = isWorthPacking(type, bytes.length) ? pack(bytes) : bytes;
        this.mark = "W/\"" + UUID.nameUUIDFromBytes(bytes) + "\"";
    }

    /** An answer of ours as JSON. */
    static Asset of(JsonNode node) throws IOException {
        return new Asset("application/json", JsonMapper.shared().writeValueAsBytes(node));
    }

    String type() {
        return type;
    }

    /** Another one whenever the file is another. */
    String mark() {
        return mark;
    }

    String toText() {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    boolean isPacked() {
        return packed.length < bytes.length;
    }

    byte[] bytes(boolean takesPacked) {
        return takesPacked ? packed : bytes;
    }

    static boolean isWorthPacking(String type, int length) {
        boolean isText = type.startsWith("text/") || type.contains("json") || type.contains("svg");
        return isText && length > WORTH_PACKING_BYTES;
    }

    static byte[] pack(byte[] bytes) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(bytes);
        }
        return packed.toByteArray();
    }
}
