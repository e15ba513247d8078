package underhook.web;

import com.sun.net.httpserver.Headers;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * Who may ask.
 *
 * <p>Requests under a foreign host name are refused, so that no page from elsewhere reaches the server
 * through a name of its own. Changes need the token of this run, which only a page of this server can
 * read, and must not come from another origin. With a secret, whoever wants anything must first have
 * given it.
 */
final class Gate {
    private static final Set<String> READING = Set.of("GET", "HEAD");

    /** A numeric address cannot be made to mean another machine by a name server. */
    private static final Pattern NUMERIC =
            Pattern.compile("(?:[0-9]{1,3}(?:\\.[0-9]{1,3}){3}|\\[[0-9a-fA-F:.]+\\])(?::[0-9]+)?");

    private static final int MOST_WRONG = 10;
    private static final long GUESSING_NANOS = 60_000_000_000L;
    private static final String COOKIE = "underhook-pass";
    private static final int PASS_ROUNDS = 200_000;
    private static final int PASS_BITS = 192;

    private final String token = random();
    private final String pass;
    private final Optional<String> secret;
    private final int port;
    private final String scheme;
    private int wrong;
    private long firstWrongNanos;

    /**
     * @param secret what people must give first; empty on the loopback address
     * @param scheme by which it is reached, http or https
     */
    Gate(Optional<String> secret, int port, String scheme) {
        this.scheme = scheme;
        this.secret = secret;
        this.pass = secret.map(Gate::passOf).orElse(random());
        this.port = port;
    }

    /**
     * The same for the same secret, so that nobody on the hill has to type it again because the server
     * was started anew.
     */
    private static String passOf(String secret) {
        try {
            PBEKeySpec spec =
                    new PBEKeySpec(
                            secret.toCharArray(),
                            COOKIE.getBytes(StandardCharsets.UTF_8),
                            PASS_ROUNDS,
                            PASS_BITS);
            byte[] key =
                    SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                            .generateSecret(spec)
                            .getEncoded();
            return HexFormat.of().formatHex(key);
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException("every platform has PBKDF2.", impossible);
        }
    }

    private static String random() {
        byte[] bytes = new byte[24];
        new SecureRandom().nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }

    /** Stands in our own page, and proves that a request comes from it. */
    String token() {
        return token;
    }

    /**
     * Lets a request pass.
     *
     * @throws Refused when it does not
     */
    void check(String method, String path, Headers headers) throws Refused {
        String host = first(headers, "Host");
        if (!isOurHost(host)) {
            throw new Refused(403, "This server does not answer under that name.");
        }
        if (isOtherSite(headers, host)) {
            throw new Refused(403, "Another site may ask nothing here.");
        }
        if (secret.isPresent() && !path.equals("/enter") && !hasPass(headers)) {
            throw new Refused(401, "The secret is needed first.");
        }
        boolean isEntering = secret.isPresent() && path.equals("/enter");
        if (!READING.contains(method)
                && !isEntering
                && !isSame(token, first(headers, "X-Underhook-Token"))) {
            throw new Refused(
                    403, "The page is older than this run of the server. Perhaps load it again.");
        }
    }

    private boolean isOurHost(String host) {
        boolean isLocal = host.equals("127.0.0.1:" + port) || host.equals("localhost:" + port);
        return isLocal || (secret.isPresent() && NUMERIC.matcher(host).matches());
    }

    private boolean isOtherSite(Headers headers, String host) {
        String origin = first(headers, "Origin");
        String site = first(headers, "Sec-Fetch-Site");
        boolean isOtherOrigin = !origin.isEmpty() && !origin.equals(scheme + "://" + host);
        boolean isForeign = site.equals("cross-site") || site.equals("same-site");
        // A person may follow a link to the desk; a foreign page may not load its parts.
        boolean isFollowed = first(headers, "Sec-Fetch-Mode").equals("navigate");
        return isOtherOrigin || (isForeign && !isFollowed);
    }

    /**
     * Whether the secret is right; then the cookie lets its owner pass.
     *
     * @throws Refused 429 when it was guessed wrong too often of late
     */
    synchronized Optional<String> enter(String said) throws Refused {
        long now = System.nanoTime();
        if (now - firstWrongNanos > GUESSING_NANOS) {
            wrong = 0;
        }
        if (wrong >= MOST_WRONG) {
            throw new Refused(429, "Too many wrong guesses. Perhaps try again in a minute.");
        }
        if (secret.isPresent() && isSame(secret.get(), said)) {
            String secure = scheme.equals("https") ? "; Secure" : "";
            return Optional.of(
                    COOKIE + "=" + pass + "; HttpOnly; SameSite=Strict; Path=/" + secure);
        }
        firstWrongNanos = wrong == 0 ? now : firstWrongNanos;
        wrong++;
        return Optional.empty();
    }

    private boolean hasPass(Headers headers) {
        for (String cookie : first(headers, "Cookie").split(";")) {
            String text = cookie.strip();
            if (text.startsWith(COOKIE + "=")
                    && isSame(pass, text.substring(COOKIE.length() + 1))) {
                return true;
            }
        }
        return false;
    }

    private static String first(Headers headers, String name) {
        String value = headers.getFirst(name);
        return value == null ? "" : value;
    }

    /** Takes as long whatever is wrong. */
    private static boolean isSame(String one, String other) {
        return MessageDigest.isEqual(
                one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }
}
