package underhook.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** A Chromium without a window and one page of it, spoken with over its own debugging protocol. */
final class Devtools implements AutoCloseable {
    private static final String LISTENING = "DevTools listening on ";
    private static final long PATIENCE_S = 60;

    private final Process chromium;
    private final WebSocket socket;
    private final Map<Integer, CompletableFuture<JsonNode>> waiting = new ConcurrentHashMap<>();
    private final AtomicInteger numbers = new AtomicInteger();
    private final String session;

    Devtools(Path profile) throws IOException, InterruptedException {
        chromium =
                new ProcessBuilder(
                                "chromium",
                                "--headless",
                                "--no-sandbox",
                                "--no-first-run",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-sync",
                                "--disable-dev-shm-usage",
                                "--use-angle=swiftshader",
                                "--enable-unsafe-swiftshader",
                                "--window-size=1366,768",
                                "--remote-debugging-port=0",
                                "--user-data-dir=" + profile,
                                "about:blank")
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start();
        socket =
                HttpClient.newHttpClient()
                        .newWebSocketBuilder()
                        .buildAsync(address(), new Answers())
                        .join();
        ObjectNode page = JsonMapper.shared().createObjectNode().put("url", "about:blank");
        String target = send("Target.createTarget", page, "").path("targetId").asString("");
        ObjectNode attach = JsonMapper.shared().createObjectNode().put("targetId", target);
        session =
                send("Target.attachToTarget", attach.put("flatten", true), "")
                        .path("sessionId")
                        .asString("");
        ask("Page.enable");
    }

    private URI address() throws IOException {
        BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(chromium.getErrorStream(), StandardCharsets.UTF_8));
        String line = Objects.requireNonNull(lines.readLine(), "chromium said nothing");
        while (!line.startsWith(LISTENING)) {
            line = Objects.requireNonNull(lines.readLine(), "chromium did not start");
        }
        return URI.create(line.substring(LISTENING.length()).strip());
    }

    private JsonNode ask(String method) throws IOException, InterruptedException {
        return send(method, JsonMapper.shared().createObjectNode(), session);
    }

    /** Shows that address; what the page was is gone. */
    void open(URI address) throws IOException, InterruptedException {
        send("Page.navigate", of("url", "about:blank"), session);
        send("Page.navigate", of("url", address.toString()), session);
    }

    private static ObjectNode of(String name, String value) {
        return JsonMapper.shared().createObjectNode().put(name, value);
    }

    /** What the script gives, a promise when it is kept. */
    JsonNode run(String script) throws IOException, InterruptedException {
        JsonNode answer =
                send(
                        "Runtime.evaluate",
                        of("expression", script)
                                .put("awaitPromise", true)
                                .put("returnByValue", true),
                        session);
        if (answer.has("exceptionDetails")) {
            throw new IOException(answer.path("exceptionDetails").toString());
        }
        return answer.path("result").path("value");
    }

    private JsonNode send(String method, ObjectNode parameters, String inSession)
            throws IOException, InterruptedException {
        int number = numbers.incrementAndGet();
        CompletableFuture<JsonNode> answer = new CompletableFuture<>();
        waiting.put(number, answer);
        ObjectNode message =
                JsonMapper.shared().createObjectNode().put("id", number).put("method", method);
        message.set("params", parameters);
        if (!inSession.isEmpty()) {
            message.put("sessionId", inSession);
        }
        socket.sendText(message.toString(), true).join();
        try {
            return answer.get(PATIENCE_S, TimeUnit.SECONDS);
        } catch (ExecutionException | TimeoutException failed) {
            throw new IOException(method + " was not answered", failed);
        }
    }

    /** Puts each answer to its question; events are passed over. */
    private final class Answers implements WebSocket.Listener {
        private final StringBuilder text = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence part, boolean last) {
            text.append(part);
            if (last) {
                JsonNode message = JsonMapper.shared().readTree(text.toString());
                text.setLength(0);
                CompletableFuture<JsonNode> asked = waiting.remove(message.path("id").asInt(-1));
                if (asked != null) {
                    asked.complete(message.path("result"));
                }
            }
            from.request(1);
            return CompletableFuture.completedStage(null);
        }
    }

    @Override
    public void close() {
        socket.abort();
        chromium.descendants().forEach(ProcessHandle::destroy);
        chromium.destroy();
    }
}
