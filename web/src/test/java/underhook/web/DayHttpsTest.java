package underhook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.desk.Desk;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/** Entering the day from the network over https, with a certificate made by the JDK's keytool. */
class DayHttpsTest {
    private static final String PASSWORD = "fourteen signs";

    @TempDir private Path folder;

    @Test
    void lets_a_device_in_by_the_secret_and_keeps_it_in_when_the_server_is_started_anew()
            throws Exception {
        Path file = certificate();
        HttpClient client = HttpClient.newBuilder().sslContext(trusting(file)).build();
        String cookie = "";
        for (int start = 0; start < 2; start++) {
            Underhook underhook = new Underhook(new Settings(folder.resolve("home"), "test"));
            try (Desk desk = underhook.desk();
                    PlanRuns runs = underhook.planRuns();
                    DeskServer server =
                            DeskServer.start(
                                    new DeskServer.Desktop(desk, runs, "test"),
                                    new DeskServer.Where(
                                            0,
                                            Optional.of(PASSWORD),
                                            Optional.of(proving(file))))) {
                if (start == 0) {
                    desk.createEmpty("Day", new Desk.Beginning("2026-09-08", "UTC"));
                    HttpResponse<String> led = get(client, server, "/day/day", "");
                    assertThat(led.statusCode()).isEqualTo(303);
                    assertThat(led.headers().firstValue("Location")).hasValue("/enter?day=day");
                    cookie = enter(client, server);
                }
                HttpResponse<String> page = get(client, server, "/day/day", cookie);
                assertThat(page.statusCode()).isEqualTo(200);
                assertThat(page.body()).contains("/assets/day/day.js");
                assertThat(server.address().getScheme()).isEqualTo("https");
            }
        }
    }

    private static String enter(HttpClient client, DeskServer server) throws Exception {
        HttpResponse<String> entered =
                client.send(
                        HttpRequest.newBuilder(server.address().resolve("/enter?day=day"))
                                .header("Content-Type", "application/x-www-form-urlencoded")
                                .header("Origin", server.address().toString().replaceAll("/$", ""))
                                .POST(BodyPublishers.ofString("secret=fourteen+signs"))
                                .build(),
                        BodyHandlers.ofString());
        assertThat(entered.headers().firstValue("Location")).hasValue("/day/day");
        String cookie = entered.headers().firstValue("Set-Cookie").orElse("");
        assertThat(cookie).contains("HttpOnly", "SameSite=Strict", "Secure");
        return cookie.substring(0, cookie.indexOf(';'));
    }

    private static HttpResponse<String> get(
            HttpClient client, DeskServer server, String path, String cookie) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(server.address().resolve(path));
        if (!cookie.isEmpty()) {
            request.header("Cookie", cookie);
        }
        return client.send(request.build(), BodyHandlers.ofString(StandardCharsets.UTF_8));
    }

    private Path certificate() throws IOException, InterruptedException {
        Path file = folder.resolve("desk.p12");
        List<String> command =
                new ArrayList<>(
                        List.of(
                                Path.of(System.getProperty("java.home"), "bin", "keytool")
                                        .toString()));
        command.addAll(List.of("-genkeypair", "-alias", "desk", "-keyalg", "EC", "-validity", "2"));
        command.addAll(List.of("-groupname", "secp256r1", "-dname", "CN=desk"));
        command.addAll(List.of("-ext", "san=ip:127.0.0.1", "-storepass", PASSWORD));
        command.addAll(List.of("-storetype", "PKCS12", "-keystore", file.toString()));
        assertThat(
                        new ProcessBuilder(command)
                                .redirectErrorStream(true)
                                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                                .start()
                                .waitFor())
                .isZero();
        return file;
    }

    private static SSLContext proving(Path file) throws Exception {
        KeyManagerFactory keys =
                KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        keys.init(
                KeyStore.getInstance(file.toFile(), PASSWORD.toCharArray()),
                PASSWORD.toCharArray());
        SSLContext tls = SSLContext.getInstance("TLS");
        tls.init(keys.getKeyManagers(), null, null);
        return tls;
    }

    private static SSLContext trusting(Path file) throws Exception {
        KeyStore known = KeyStore.getInstance(file.toFile(), PASSWORD.toCharArray());
        KeyStore trusted = KeyStore.getInstance(KeyStore.getDefaultType());
        trusted.load(null, null);
        trusted.setCertificateEntry("desk", known.getCertificate("desk"));
        TrustManagerFactory trust =
                TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        trust.init(trusted);
        SSLContext tls = SSLContext.getInstance("TLS");
        tls.init(null, trust.getTrustManagers(), null);
        return tls;
    }
}
