package underhook.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/** The page's own files and its libraries, from the class path. Safe for threads. */
final class Assets {
    /** Where each library lies in its jar; the versions are those of the pom. */
    private static final Map<String, String> LIBRARIES =
            Map.of(
                    "ol", "META-INF/resources/webjars/ol/10.7.0/",
                    "three", "META-INF/resources/webjars/three/0.181.1/",
                    "lit", "META-INF/resources/_static/lit-html/3.3.3/");

    private static final Map<String, String> TYPES =
            Map.of(
                    "html", "text/html; charset=utf-8",
                    "js", "text/javascript; charset=utf-8",
                    "css", "text/css; charset=utf-8",
                    "json", "application/json",
                    "svg", "image/svg+xml",
                    "png", "image/png",
                    "ttf", "font/ttf",
                    "txt", "text/plain; charset=utf-8");

    /** No part begins with a dot, so nothing leads out of a folder. */
    private static final Pattern GOOD =
            Pattern.compile("(?:[A-Za-z0-9_-][A-Za-z0-9._-]*/)*[A-Za-z0-9_-][A-Za-z0-9._-]*");

    private final Map<String, Asset> known = new ConcurrentHashMap<>();

    /** A page with the token of this run. */
    byte[] page(String name, String token) throws IOException {
        return find("underhook/web/" + name)
                .orElseThrow(Refused::unknown)
                .toText()
                .replace("@token@", token)
                .getBytes(StandardCharsets.UTF_8);
    }

    /** One of our own. */
    Asset own(String path) throws IOException {
        return find("underhook/web/assets/" + good(path)).orElseThrow(Refused::unknown);
    }

    /** One of a library. */
    Asset library(String name, String path) throws IOException {
        String folder = LIBRARIES.get(name);
        if (folder == null) {
            throw Refused.unknown();
        }
        return find(folder + good(path)).orElseThrow(Refused::unknown);
    }

    private static String good(String path) throws Refused {
        if (!GOOD.matcher(path).matches()) {
            throw Refused.unknown();
        }
        return path;
    }

    /** By the ending of its name; 404 for what the page has no use for. */
    static String type(String path) throws Refused {
        String ending = path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        String type = TYPES.get(ending);
        if (type == null) {
            throw Refused.unknown();
        }
        return type;
    }

    private Optional<Asset> find(String resource) throws IOException {
        Asset asset = known.get(resource);
        if (asset == null) {
            try (InputStream in = Assets.class.getClassLoader().getResourceAsStream(resource)) {
                // What is not there is not remembered: anybody may ask for anything.
                if (in == null) {
                    return Optional.empty();
                }
                asset = new Asset(type(resource), in.readAllBytes());
            }
            known.put(resource, asset);
        }
        return Optional.of(asset);
    }
}
