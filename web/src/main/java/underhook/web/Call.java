package underhook.web;

import com.sun.net.httpserver.HttpExchange;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.port.Content;

/** One request and its answer. Not safe for threads. */
final class Call {
    private static final System.Logger LOG = System.getLogger("underhook");
    private static final int MOST_JSON_BYTES = 4 << 20;
    private static final long MOST_UNWANTED_BYTES = 32L << 20;
    private static final String JSON = "application/json";

    private final HttpExchange exchange;
    private final Map<String, String> path;

    Call(HttpExchange exchange, Map<String, String> path) {
        this.exchange = exchange;
        this.path = path;
    }

    /** A named part of the path. */
    String part(String name) {
        return path.getOrDefault(name, "");
    }

    /** A whole number of the path; 404 when it is none. */
    int number(String name) throws Refused {
        try {
            return Integer.parseInt(part(name));
        } catch (NumberFormatException none) {
            throw Refused.unknown();
        }
    }

    /** A value of the query; empty when it is not there. */
    String query(String name) {
        return pairs(exchange.getRequestURI().getRawQuery()).getOrDefault(name, "");
    }

    static Map<String, String> pairs(String raw) {
        Map<String, String> values = new HashMap<>();
        if (raw != null) {
            for (String pair : raw.split("&")) {
                int at = pair.indexOf('=');
                String name = at < 0 ? pair : pair.substring(0, at);
                String value = at < 0 ? "" : pair.substring(at + 1);
                values.put(decode(name), decode(value));
            }
        }
        return values;
    }

    private static String decode(String text) {
        try {
            return URLDecoder.decode(text, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException notEncoded) {
            return text;
        }
    }

    Optional<String> header(String name) {
        return Optional.ofNullable(exchange.getRequestHeaders().getFirst(name));
    }

    /** The body; 413 when it is larger. */
    Content body(long mostBytes) throws IOException {
        String said = header("Content-Length").orElse("0");
        if (!said.matches("[0-9]{1,18}") || Long.parseLong(said) > mostBytes) {
            drain();
            throw new Refused(413, "At most " + mostBytes + " bytes are taken.");
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        byte[] buffer = new byte[1 << 16];
        InputStream in = exchange.getRequestBody();
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
            bytes.write(buffer, 0, n);
            if (bytes.size() > mostBytes) {
                throw new Refused(413, "At most " + mostBytes + " bytes are taken.");
            }
        }
        return Content.of(bytes.toByteArray());
    }

    /** Browsers hear an answer only when what they send is taken; a flood is cut off. */
    private void drain() {
        byte[] buffer = new byte[1 << 16];
        InputStream in = exchange.getRequestBody();
        long takenBytes = 0;
        try {
            for (int n = in.read(buffer); n >= 0 && takenBytes < MOST_UNWANTED_BYTES; ) {
                takenBytes += n;
                n = in.read(buffer);
            }
        } catch (IOException cut) {
            // It was not wanted anyway; whoever sent it may still hear why.
            LOG.log(System.Logger.Level.DEBUG, "cut off", cut);
        }
    }

    /** The body as a JSON object. */
    ObjectNode json() throws IOException {
        Content body = body(MOST_JSON_BYTES);
        try {
            JsonNode node = JsonMapper.shared().readTree(body.toText());
            if (node instanceof ObjectNode object) {
                return object;
            }
        } catch (JacksonException | StackOverflowError wrong) {
            throw new Refused(400, "The request holds no JSON.");
        }
        throw new Refused(400, "The request holds no JSON object.");
    }

    void answer(JsonNode node) throws IOException {
        answer(200, node);
    }

    void answer(int status, JsonNode node) throws IOException {
        send(status, JSON, JsonMapper.shared().writeValueAsBytes(node));
    }

    void answer(String type, Content content) throws IOException {
        send(200, type, content.toBytes());
    }

    /** Lets the browser save the answer under a name. */
    void saveAs(String name) {
        String plain = name.replaceAll("[^A-Za-z0-9._-]", "_");
        exchange.getResponseHeaders()
                .set("Content-Disposition", "attachment; filename=\"" + plain + "\"");
    }

    /** Lets a worker answer for all addresses that begin so. */
    void allowWorker(String scope) {
        exchange.getResponseHeaders().set("Service-Worker-Allowed", scope);
    }

    /** What is the same for as long as its address is the same need not be asked for again. */
    void keepForEver() {
        exchange.getResponseHeaders().set("Cache-Control", "private, max-age=31536000, immutable");
    }

    void send(int status, String type, byte[] bytes) throws IOException {
        boolean isPacked = takesPacked() && Asset.isWorthPacking(type, bytes.length);
        write(status, type, isPacked ? Asset.pack(bytes) : bytes, isPacked);
    }

    /** What only another version of the program changes: a browser that has it hears that it still holds. */
    void send(Asset asset) throws IOException {
        var headers = exchange.getResponseHeaders();
        headers.set("Cache-Control", "private, no-cache");
        headers.set("ETag", asset.mark());
        if (header("If-None-Match").filter(asset.mark()::equals).isPresent()) {
            exchange.sendResponseHeaders(304, -1);
            return;
        }
        answer(asset);
    }

    /** An answer that was worked out and packed before; nobody keeps it. */
    void answer(Asset asset) throws IOException {
        boolean isPacked = takesPacked() && asset.isPacked();
        write(200, asset.type(), asset.bytes(isPacked), isPacked);
    }

    private boolean takesPacked() {
        return header("Accept-Encoding").orElse("").contains("gzip");
    }

    private void write(int status, String type, byte[] body, boolean isPacked) throws IOException {
        var headers = exchange.getResponseHeaders();
        headers.set("Content-Type", type);
        if (isPacked) {
            headers.set("Content-Encoding", "gzip");
        }
        if (exchange.getRequestMethod().equals("HEAD")) {
            headers.set("Content-Length", Integer.toString(body.length));
            exchange.sendResponseHeaders(status, -1);
            return;
        }
        exchange.sendResponseHeaders(status, body.length == 0 ? -1 : body.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(body);
        }
    }

    void setCookie(String cookie) {
        exchange.getResponseHeaders().set("Set-Cookie", cookie);
    }

    /** Sends the browser to another page of ours. */
    void leadTo(String path) throws IOException {
        exchange.getResponseHeaders().set("Location", path);
        exchange.sendResponseHeaders(303, -1);
    }

    /** Begins an answer that goes on. */
    OutputStream stream(String type) throws IOException {
        exchange.getResponseHeaders().set("Content-Type", type);
        exchange.sendResponseHeaders(200, 0);
        return exchange.getResponseBody();
    }
}
