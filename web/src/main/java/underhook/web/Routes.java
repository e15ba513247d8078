package underhook.web;

import java.io.IOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Which request is answered by whom. */
final class Routes {
    /** Answers a request. */
    interface Handler {
        void handle(Call call) throws IOException;
    }

    /** Who answers, with the named parts of the path. */
    record Match(Handler handler, Map<String, String> parts) {}

    private record Route(String method, List<String> parts, Handler handler) {}

    private final List<Route> routes = new ArrayList<>();

    /**
     * Adds one.
     *
     * @param path parts divided by "/"; {@code {name}} stands for any one part, {@code {name*}} at the end
     *     for all that follow
     */
    Routes add(String method, String path, Handler handler) {
        routes.add(new Route(method, List.of(path.substring(1).split("/", -1)), handler));
        return this;
    }

    /**
     * Finds who answers.
     *
     * @param rawPath as it came, still encoded, so that an encoded slash divides nothing
     * @throws Refused 404 or 405
     */
    Match find(String method, String rawPath) throws Refused {
        List<String> parts = new ArrayList<>();
        for (String part : rawPath.substring(Math.min(1, rawPath.length())).split("/", -1)) {
            parts.add(decode(part));
        }
        Set<String> methods = new TreeSet<>();
        for (Route route : routes) {
            Optional<Map<String, String>> named = match(route.parts, parts);
            if (named.isPresent()) {
                if (route.method.equals(method)
                        || (method.equals("HEAD") && route.method.equals("GET"))) {
                    return new Match(route.handler, named.get());
                }
                methods.add(route.method);
            }
        }
        throw methods.isEmpty()
                ? Refused.unknown()
                : new Refused(405, "Possible here: " + String.join(", ", methods) + ".");
    }

    private static String decode(String part) throws Refused {
        try {
            return URLDecoder.decode(part.replace("+", "%2B"), StandardCharsets.UTF_8);
        } catch (IllegalArgumentException notEncoded) {
            throw Refused.unknown();
        }
    }

    private static Optional<Map<String, String>> match(List<String> pattern, List<String> parts) {
        Map<String, String> named = new HashMap<>();
        for (int i = 0; i < pattern.size(); i++) {
            String wanted = pattern.get(i);
            if (wanted.endsWith("*}")) {
                if (parts.size() <= i) {
                    return Optional.empty();
                }
                named.put(
                        wanted.substring(1, wanted.length() - 2),
                        String.join("/", parts.subList(i, parts.size())));
                return Optional.of(named);
            }
            if (i >= parts.size()) {
                return Optional.empty();
            }
            if (wanted.startsWith("{")) {
                named.put(wanted.substring(1, wanted.length() - 1), parts.get(i));
            } else if (!wanted.equals(parts.get(i))) {
                return Optional.empty();
            }
        }
        return parts.size() == pattern.size() ? Optional.of(named) : Optional.empty();
    }
}
