package underhook.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.regex.Pattern;
import javax.net.ssl.SSLContext;
import underhook.app.desk.DayLooks;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.app.flying.FlyingDays;
import underhook.app.port.KeptJob;

/**
 * Serves the planning desk.
 *
 * <p>On 127.0.0.1, unless a secret is given; then on every address of the machine, to whoever gives it.
 */
public final class DeskServer implements AutoCloseable {
    private static final System.Logger LOG = System.getLogger("underhook");
    private static final byte[] LOOPBACK = {127, 0, 0, 1};
    private static final String PAGE_POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self'"
                    + " data: blob:; connect-src 'self'; font-src 'self'; worker-src 'self' blob:;"
                    + " base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    private static final String DAY = "/day/";
    private static final Pattern DAY_ID = Pattern.compile("[a-z0-9-]{1,60}");
    private static final String HTML = "text/html; charset=utf-8";
    private static final int MOST_FORM_BYTES = 4096;

    /** No library and no script: nothing is given out before the secret was. */
    private static final String ENTRANCE =
            """
            <!doctype html>
            <html lang="en"><head><meta charset="utf-8"><title>Underhook</title>
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <style>body { font: 22px/1.4 system-ui, sans-serif; color: #000; background: #fff; max-width: 640px; margin: 0 auto; padding: 16px; }
            label { display: block; font-weight: bold; } input, button { box-sizing: border-box; width: 100%; min-height: 98px; margin: 8px 0 16px; padding: 0 16px; font: inherit; border: 3px solid #000; border-radius: 0; }
            button { background: #000; color: #fff; font-weight: bold; } p { border: 3px dashed #000; padding: 8px 16px; font-weight: bold; }</style></head>
            <body><main><h1>Underhook</h1>SAID<form method="post">
            <label for="secret">Secret</label><input id="secret" type="password" name="secret" autocomplete="current-password"
            required><button>Enter</button></form></main></body></html>
            """;

    private final HttpServer server;
    private final ExecutorService threads =
            Executors.newCachedThreadPool(
                    work -> {
                        Thread made = new Thread(work, "answering");
                        made.setDaemon(true);
                        return made;
                    });
    private final Gate gate;
    private final String scheme;
    private final boolean isOpen;
    private final Routes routes = new Routes();
    private final Assets assets = new Assets();

    /**
     * What is served.
     *
     * @param program name and version
     */
    public record Desktop(Desk desk, PlanRuns runs, String program) {}

    /**
     * Where it is served.
     *
     * @param port 0 for any free one
     * @param secret opens it to the network for whoever knows it; empty keeps it on this machine
     * @param tls what to prove with that it is us, over https; empty for plain http
     */
    public record Where(int port, Optional<String> secret, Optional<SSLContext> tls) {
        /** Over plain http. */
        public Where(int port, Optional<String> secret) {
            this(port, secret, Optional.empty());
        }

        /** On this machine alone. */
        public static Where here(int port) {
            return new Where(port, Optional.empty());
        }
    }

    private DeskServer(HttpServer server, Desktop desktop, Where where) {
        this.server = server;
        this.scheme = where.tls().isPresent() ? "https" : "http";
        this.isOpen = where.secret().isPresent();
        this.gate = new Gate(where.secret(), server.getAddress().getPort(), scheme);
        DayLooks looks = new DayLooks();
        ReadingApi reading =
                new ReadingApi(desktop.desk(), desktop.runs(), looks, desktop.program());
        reading.addTo(routes);
        new ChangingApi(desktop.desk(), desktop.runs(), reading).addTo(routes);
        new AskingApi(desktop.desk().whatIf(), reading).addTo(routes);
        new WaysApi(desktop.desk().sideBySide(), reading).addTo(routes);
        new DayApi(desktop.desk(), new FlyingDays(desktop.desk(), looks)).addTo(routes);
        routes.add("GET", "/", call -> page(call, "index.html"))
                .add("GET", "/api/jobs/{id}/day/addresses", this::addresses)
                .add("GET", "/day/{id}", call -> page(call, "day.html"))
                .add("GET", "/day/worker/worker.js", this::worker)
                .add("GET", "/assets/{path*}", this::asset)
                .add("GET", "/lib/{name}/{path*}", this::library)
                .add("GET", "/enter", call -> entrance(call, 200, ""))
                .add("POST", "/enter", this::enter);
    }

    /**
     * Starts serving.
     *
     * @throws IOException when the port cannot be had
     */
    public static DeskServer start(Desktop desktop, Where where) throws IOException {
        // Small answers must not wait for the other side's acknowledgement.
        System.setProperty("sun.net.httpserver.nodelay", "true");
        InetSocketAddress address =
                where.secret().isPresent()
                        ? new InetSocketAddress(where.port())
                        : new InetSocketAddress(InetAddress.getByAddress(LOOPBACK), where.port());
        HttpServer server =
                where.tls().isPresent()
                        ? secure(address, where.tls().get())
                        : HttpServer.create(address, 0);
        DeskServer made = new DeskServer(server, desktop, where);
        server.createContext("/", made::answer);
        server.setExecutor(made.threads);
        server.start();
        return made;
    }

    private static HttpServer secure(InetSocketAddress address, SSLContext tls) throws IOException {
        HttpsServer made = HttpsServer.create(address, 0);
        made.setHttpsConfigurator(new HttpsConfigurator(tls));
        return made;
    }

    /** Where the desk is. */
    public URI address() {
        return at("127.0.0.1");
    }

    private URI at(String host) {
        return URI.create(scheme + "://" + host + ":" + server.getAddress().getPort() + "/");
    }

    /** Where other devices of the network find it; nowhere while it is kept on this machine. */
    public List<URI> networkAddresses() throws IOException {
        if (!isOpen) {
            return List.of();
        }
        return NetworkInterface.networkInterfaces()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(address -> address instanceof Inet4Address && !address.isLoopbackAddress())
                .map(address -> at(address.getHostAddress()))
                .sorted()
                .toList();
    }

    /** What proves that a request comes from the page of this run. */
    String token() {
        return gate.token();
    }

    @Override
    public void close() {
        server.stop(0);
        threads.shutdownNow();
    }

    private void answer(HttpExchange exchange) throws IOException {
        try (exchange) {
            setHeaders(exchange.getResponseHeaders());
            try {
                String path = exchange.getRequestURI().getRawPath();
                String method = exchange.getRequestMethod();
                gate.check(method, path, exchange.getRequestHeaders());
                Routes.Match match = routes.find(method, path);
                match.handler().handle(new Call(exchange, match.parts()));
            } catch (IOException | RuntimeException failed) {
                boolean hasBegun = exchange.getResponseCode() >= 0;
                // Whoever asked has gone away in the middle of the answer.
                if (!hasBegun) {
                    refuse(exchange, failed);
                }
            }
        }
    }

    private static void refuse(HttpExchange exchange, Exception failed) throws IOException {
        Call call = new Call(exchange, Map.of());
        String sentence = String.valueOf(failed.getMessage());
        if (failed instanceof Refused refused
                && refused.status() == 401
                && isPage(exchange.getRequestURI().getPath())) {
            String path = exchange.getRequestURI().getPath();
            call.leadTo(path.equals("/") ? "/enter" : "/enter?day=" + path.substring(DAY.length()));
        } else if (failed instanceof Refused refused) {
            call.answer(refused.status(), Json.error(sentence));
        } else if (failed instanceof KeptJob.MovedException) {
            call.answer(409, Json.error(sentence));
        } else if (failed instanceof IllegalArgumentException) {
            call.answer(400, Json.error(sentence));
        } else {
            LOG.log(System.Logger.Level.ERROR, exchange.getRequestURI().getPath(), failed);
            call.answer(500, Json.error("That failed; the log says why. " + sentence));
        }
    }

    private static boolean isPage(String path) {
        return path.equals("/")
                || (path.startsWith(DAY) && DAY_ID.matcher(path.substring(DAY.length())).matches());
    }

    private static void setHeaders(Headers headers) {
        headers.set("X-Content-Type-Options", "nosniff");
        // Told to nobody else; with none at all a browser hides from us that our own form is ours.
        headers.set("Referrer-Policy", "same-origin");
        headers.set("Cache-Control", "no-store");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("Content-Security-Policy", PAGE_POLICY);
    }

    /** Asks for the secret, under a sentence of ours. */
    private static void entrance(Call call, int status, String sentence) throws IOException {
        String said = sentence.isEmpty() ? "" : "<p role=\"alert\">" + sentence + "</p>";
        call.send(status, HTML, ENTRANCE.replace("SAID", said).getBytes(StandardCharsets.UTF_8));
    }

    private void enter(Call call) throws IOException {
        String said = Call.pairs(call.body(MOST_FORM_BYTES).toText()).getOrDefault("secret", "");
        Optional<String> cookie;
        try {
            cookie = gate.enter(said);
        } catch (Refused tooOften) {
            entrance(call, tooOften.status(), String.valueOf(tooOften.getMessage()));
            return;
        }
        if (cookie.isEmpty()) {
            entrance(call, 401, "That is not the secret.");
            return;
        }
        call.setCookie(cookie.get());
        String day = call.query("day");
        call.leadTo(DAY_ID.matcher(day).matches() ? DAY + day : "/");
    }

    private void page(Call call, String name) throws IOException {
        call.send(200, Assets.type(name), assets.page(name, gate.token()));
    }

    /** Where other devices find a day; none while the desk is kept on this machine. */
    private void addresses(Call call) throws IOException {
        String day = DAY.substring(1) + call.part("id");
        call.answer(
                Json.object()
                        .set(
                                "addresses",
                                Json.array(
                                        networkAddresses(),
                                        address -> JoinCode.of(address.resolve(day)))));
    }

    /** May answer for every page of a day, though it lies elsewhere. */
    private void worker(Call call) throws IOException {
        call.allowWorker("/day/");
        call.send(200, Assets.type("worker.js"), assets.own("day/worker.js"));
    }

    private void asset(Call call) throws IOException {
        String path = call.part("path");
        call.send(200, Assets.type(path), assets.own(path));
    }

    private void library(Call call) throws IOException {
        String path = call.part("path");
        call.send(200, Assets.type(path), assets.library(call.part("name"), path));
    }
}
