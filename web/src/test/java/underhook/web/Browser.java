package underhook.web;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Asks a running server as the page does, and as a page should not. */
final class Browser {
    private static final Pattern TOKEN = Pattern.compile("name=\"token\" content=\"([0-9a-f]+)\"");

    private final HttpClient client = HttpClient.newHttpClient();
    private final URI address;
    private final String token;

    Browser(URI address, String token) {
        this.address = address;
        this.token = token;
    }

    /** An answer. */
    record Answer(int status, JsonNode json) {
        String text(String name) {
            return json.path(name).asString("");
        }
    }

    /** The token that stands in a page. */
    static String tokenOf(String page) {
        Matcher matcher = TOKEN.matcher(page);
        return matcher.find() ? matcher.group(1) : "";
    }

    Answer get(String path) throws IOException, InterruptedException {
        return ask("GET", path, "", token);
    }

    Answer send(String method, String path, String body) throws IOException, InterruptedException {
        return ask(method, path, body, token);
    }

    Answer ask(String method, String path, String body, String said)
            throws IOException, InterruptedException {
        return ask(method, path, body.getBytes(StandardCharsets.UTF_8), said);
    }

    Answer ask(String method, String path, byte[] body, String said)
            throws IOException, InterruptedException {
        HttpRequest request =
                HttpRequest.newBuilder(address.resolve(path))
                        .method(method, BodyPublishers.ofByteArray(body))
                        .header("X-Underhook-Token", said)
                        .build();
        HttpResponse<String> answer =
                client.send(request, BodyHandlers.ofString(StandardCharsets.UTF_8));
        String type = answer.headers().firstValue("Content-Type").orElse("");
        JsonNode json =
                JsonMapper.shared().readTree(type.contains("json") ? answer.body() : "null");
        return new Answer(answer.statusCode(), json);
    }

    HttpResponse<byte[]> bytes(String path) throws IOException, InterruptedException {
        return client.send(
                HttpRequest.newBuilder(address.resolve(path)).build(), BodyHandlers.ofByteArray());
    }

    /** Sends lines as they are, and gives the first line of the answer and all that follows. */
    String raw(String... lines) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), address.getPort())) {
            socket.setSoTimeout(10_000);
            String text = String.join("\r\n", lines) + "\r\n\r\n";
            socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
            socket.shutdownOutput();
            try (InputStream in = socket.getInputStream()) {
                return new String(in.readAllBytes(), StandardCharsets.UTF_8);
            }
        }
    }

    String host() {
        return "127.0.0.1:" + address.getPort();
    }

    String token() {
        return token;
    }
}
