package underhook.web;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Serves planned days on 127.0.0.1.
 *
 * <p>Reads only: GET and HEAD. A file is offered when a listing of the day's folder has a regular file
 * of exactly that name, so no path can lead out of it. Requests under another host name are refused, so
 * that a page from elsewhere cannot read the plan through the browser.
 */
public final class PlanServer implements AutoCloseable {
    private static final Pattern DAY = Pattern.compile("/day/([1-9][0-9]{0,3})/(?:files/([^/]+))?");
    private static final Map<String, String> TYPES =
            Map.of(
                    "json", "application/json",
                    "geojson", "application/geo+json",
                    "gpx", "application/gpx+xml",
                    "kml", "application/vnd.google-earth.kml+xml",
                    "gpkg", "application/geopackage+sqlite3",
                    "pdf", "application/pdf",
                    "csv", "text/csv; charset=utf-8");
    private static final byte[] LOOPBACK = {127, 0, 0, 1};
    private static final String HTML = "text/html; charset=utf-8";

    private final HttpServer server;
    private final ExecutorService threads = Executors.newFixedThreadPool(4);
    private final List<Day> days;
    private final byte[] style;

    private PlanServer(HttpServer server, List<Day> days, byte[] style) {
        this.server = server;
        this.days = days;
        this.style = style;
    }

    /**
     * Starts serving.
     *
     * @param port 0 for any free one
     * @throws IOException when the port cannot be had
     */
    public static PlanServer start(List<Day> days, int port) throws IOException {
        byte[] style;
        try (InputStream in =
                Objects.requireNonNull(PlanServer.class.getResourceAsStream("style.css"))) {
            style = in.readAllBytes();
        }
        HttpServer server =
                HttpServer.create(
                        new InetSocketAddress(InetAddress.getByAddress(LOOPBACK), port), 0);
        PlanServer planServer = new PlanServer(server, List.copyOf(days), style);
        server.createContext("/", planServer::answer);
        server.setExecutor(planServer.threads);
        server.start();
        return planServer;
    }

    /** Where the pages are. */
    public URI address() {
        return URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/");
    }

    @Override
    public void close() {
        server.stop(0);
        threads.shutdownNow();
    }

    private void answer(HttpExchange exchange) throws IOException {
        try (exchange) {
            String method = exchange.getRequestMethod();
            String path = exchange.getRequestURI().getPath();
            if (!isOurHost(exchange.getRequestHeaders().getFirst("Host"))) {
                send(exchange, 403, Pages.message("This server answers to 127.0.0.1 only."));
            } else if (!method.equals("GET") && !method.equals("HEAD")) {
                exchange.getResponseHeaders().set("Allow", "GET, HEAD");
                send(exchange, 405, Pages.message("Only reading is possible here."));
            } else if (path == null) {
                send(exchange, 404, Pages.message("There is no such page."));
            } else if (path.equals("/")) {
                send(exchange, 200, days.size() == 1 ? dayPage(1) : Pages.list(days));
            } else if (path.equals("/style.css")) {
                sendBytes(exchange, 200, "text/css; charset=utf-8", style);
            } else {
                answerDay(exchange, path);
            }
        }
    }

    private boolean isOurHost(String host) {
        int port = server.getAddress().getPort();
        return host != null
                && (host.equals("127.0.0.1:" + port) || host.equals("localhost:" + port));
    }

    private void answerDay(HttpExchange exchange, String path) throws IOException {
        Matcher matcher = DAY.matcher(path);
        int number = matcher.matches() ? Integer.parseInt(matcher.group(1)) : 0;
        if (number < 1 || number > days.size()) {
            send(exchange, 404, Pages.message("There is no such page."));
        } else if (matcher.group(2) == null) {
            send(exchange, 200, dayPage(number));
        } else {
            Optional<Path> file = findFile(days.get(number - 1), matcher.group(2));
            if (file.isPresent()) {
                sendFile(exchange, file.get());
            } else {
                send(exchange, 404, Pages.message("There is no such file."));
            }
        }
    }

    private String dayPage(int number) throws IOException {
        Day day = days.get(number - 1);
        List<String> names = listFiles(day).stream().map(PlanServer::nameOf).toList();
        return Pages.day(day, names, "/day/" + number + "/files/");
    }

    private static Optional<Path> findFile(Day day, String name) throws IOException {
        return listFiles(day).stream().filter(file -> nameOf(file).equals(name)).findFirst();
    }

    private static List<Path> listFiles(Day day) throws IOException {
        try (Stream<Path> files = Files.list(day.folder())) {
            return files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                    .filter(file -> TYPES.containsKey(endingOf(nameOf(file))))
                    .sorted()
                    .toList();
        }
    }

    private static String nameOf(Path file) {
        return Objects.requireNonNull(file.getFileName()).toString();
    }

    private static String endingOf(String name) {
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }

    private static void sendFile(HttpExchange exchange, Path file) throws IOException {
        String type = Objects.requireNonNull(TYPES.get(endingOf(nameOf(file))));
        setHeaders(exchange, type);
        if (exchange.getRequestMethod().equals("HEAD")) {
            exchange.getResponseHeaders().set("Content-Length", Long.toString(Files.size(file)));
            exchange.sendResponseHeaders(200, -1);
            return;
        }
        try (InputStream in = Files.newInputStream(file)) {
            exchange.sendResponseHeaders(200, 0);
            try (OutputStream out = exchange.getResponseBody()) {
                in.transferTo(out);
            }
        }
    }

    private static void send(HttpExchange exchange, int status, String page) throws IOException {
        sendBytes(exchange, status, HTML, page.getBytes(StandardCharsets.UTF_8));
    }

    private static void sendBytes(HttpExchange exchange, int status, String type, byte[] bytes)
            throws IOException {
        setHeaders(exchange, type);
        if (exchange.getRequestMethod().equals("HEAD")) {
            exchange.getResponseHeaders().set("Content-Length", Integer.toString(bytes.length));
            exchange.sendResponseHeaders(status, -1);
            return;
        }
        exchange.sendResponseHeaders(status, bytes.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(bytes);
        }
    }

    private static void setHeaders(HttpExchange exchange, String type) {
        var headers = exchange.getResponseHeaders();
        headers.set("Content-Type", type);
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cache-Control", "no-store");
        headers.set(
                "Content-Security-Policy",
                "default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none';"
                        + " frame-ancestors 'none'");
    }
}
