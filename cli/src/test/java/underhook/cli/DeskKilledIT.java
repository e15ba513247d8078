package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real server, killed between and in the middle of changes, comes back to the same place. */
@Tag("slow")
class DeskKilledIT {
    private static final Pattern TOKEN = Pattern.compile("content=\"([0-9a-f]{48})\"");
    private static final Pattern HEAD = Pattern.compile("\"head\":([0-9]+)");

    @TempDir private Path home;
    private final HttpClient client = HttpClient.newHttpClient();

    /** A running server. */
    private record Running(Process process, URI address, String token) {}

    private Running start() throws IOException, InterruptedException {
        ProcessBuilder builder =
                new ProcessBuilder(
                                System.getProperty("java.home") + "/bin/java",
                                "-XX:TieredStopAtLevel=1",
                                "-XX:+UseSerialGC",
                                "-cp",
                                System.getProperty("java.class.path"),
                                Main.class.getName(),
                                "serve",
                                "--port",
                                "0")
                        .redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().put("UNDERHOOK_HOME", home.toString());
        Process process = builder.start();
        BufferedReader lines =
                new BufferedReader(
                        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String line = lines.readLine();
        assertThat(line).startsWith("Showing at ");
        URI address = URI.create(line.split(" ", 4)[2]);
        Matcher token = TOKEN.matcher(ask(address, "GET", "/", "", "").body());
        assertThat(token.find()).isTrue();
        return new Running(process, address, token.group(1));
    }

    private HttpResponse<String> ask(
            URI address, String method, String path, String body, String token)
            throws IOException, InterruptedException {
        return client.send(
                HttpRequest.newBuilder(address.resolve(path))
                        .method(method, HttpRequest.BodyPublishers.ofString(body))
                        .header("X-Underhook-Token", token)
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private String write(Running server, long head, String text)
            throws IOException, InterruptedException {
        String body = "{\"revision\":" + head + ",\"text\":\"" + text + "\"}";
        return ask(server.address, "PUT", "/api/jobs/day/text/rules.yaml", body, server.token)
                .body();
    }

    private static long headOf(String answer) {
        Matcher head = HEAD.matcher(answer);
        assertThat(head.find()).as(answer).isTrue();
        return Long.parseLong(head.group(1));
    }

    @Test
    void comes_back_to_the_last_change_that_it_accepted() throws Exception {
        Running server = start();
        String made = "{\"name\":\"Day\",\"from\":\"empty\"}";
        assertThat(ask(server.address, "POST", "/api/jobs", made, server.token).statusCode())
                .isEqualTo(201);
        long head = 1;
        for (int kill = 0; kill < 3; kill++) {
            for (int change = 0; change <= kill; change++) {
                head = headOf(write(server, head, "# state " + (head + 1)));
            }
            // One more is on its way while the process dies; it may be kept or not.
            String more = "{\"revision\":" + head + ",\"text\":\"# state " + (head + 1) + "\"}";
            CompletableFuture<HttpResponse<Void>> onItsWay =
                    client.sendAsync(
                            HttpRequest.newBuilder(
                                            server.address.resolve("/api/jobs/day/text/rules.yaml"))
                                    .method("PUT", HttpRequest.BodyPublishers.ofString(more))
                                    .header("X-Underhook-Token", server.token)
                                    .build(),
                            HttpResponse.BodyHandlers.discarding());
            server.process.destroyForcibly().waitFor();
            assertThat(onItsWay.handle((answer, cut) -> true).join()).isTrue();
            server = start();
            String text =
                    ask(server.address, "GET", "/api/jobs/day/text/rules.yaml", "", "").body();
            long now = headOf(ask(server.address, "GET", "/api/jobs/day", "", "").body());
            assertThat(now).isBetween(head, head + 1);
            assertThat(text).contains("# state " + now);
            head = now;
        }
        server.process.destroyForcibly().waitFor();
    }

    @Test
    void has_its_data_folder_for_itself() throws Exception {
        Running server = start();

        Said second = Said.of(home, "serve", "--port", "0");

        assertThat(second.exit()).isEqualTo(1);
        assertThat(second.err()).contains("in use");
        server.process.destroyForcibly().waitFor();
    }
}
