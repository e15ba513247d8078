package underhook.adapter.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.PlanePoint;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Part;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

/** Where on a leg its load may be let go. */
final class LetGo {
    /** A longer stretch without a spot is told in seconds. @source PRACTICE as for RELEASE_CLOSED */
    private static final double TOLD_FROM_S = 10;

    private LetGo() {}

    /** The same without a word on areas where none is named, for the card. */
    static Optional<String> brief(Leg leg) {
        return line(leg)
                .map(
                        line ->
                                line.replaceFirst("^Let go: ", "")
                                        .replaceFirst("(; )?no named area\\.$", "")
                                        .replaceFirst("\\.$", ""))
                .filter(line -> !line.isBlank())
                .map(line -> Character.toUpperCase(line.charAt(0)) + line.substring(1));
    }

    /** "Let go: not over LL1 1.0–1.3 km; guarded only RV9 0.5–0.7 km; areas J1." */
    static Optional<String> line(Leg leg) {
        if (leg.release().isEmpty() || leg.release().get().stretches().isEmpty()) {
            return Optional.empty();
        }
        ReleaseLook look = leg.release().get();
        List<String> parts = new ArrayList<>();
        merged(look, Use.CLOSED).forEach((what, km) -> parts.add("NOT over " + what + " " + km));
        merged(look, Use.GUARDED).forEach((what, km) -> parts.add("guarded " + what + " " + km));
        if (look.longestClosedS() > TOLD_FROM_S) {
            parts.add(
                    String.format(
                            Locale.ROOT,
                            "%.0f s on end without a spot",
                            Math.ceil(look.longestClosedS())));
        }
        TreeSet<String> areas = new TreeSet<>();
        look.stretches().stream()
                .filter(part -> part.use() == Use.NAMED)
                .forEach(part -> areas.addAll(part.what()));
        parts.add(areas.isEmpty() ? "no named area" : "areas " + String.join(", ", areas));
        return Optional.of("Let go: " + String.join("; ", parts) + ".");
    }

    /** Tenths of a kilometre from the start, outward; things with the same ones together. */
    private static Map<String, String> merged(ReleaseLook look, Use use) {
        Map<String, String> alike = new LinkedHashMap<>();
        look.partsByThing(use)
                .forEach((thing, parts) -> alike.merge(words(parts), thing, LetGo::both));
        Map<String, String> words = new LinkedHashMap<>();
        alike.forEach((km, things) -> words.put(things, km));
        return words;
    }

    private static String both(String some, String more) {
        return some + ", " + more;
    }

    private static String words(List<Part> parts) {
        return parts.stream()
                .map(
                        part ->
                                String.format(
                                        Locale.ROOT,
                                        "%.1f–%.1f",
                                        Math.floor(part.fromM() / 100.0) / 10,
                                        Math.ceil(part.toM() / 100.0) / 10))
                .collect(Collectors.joining(", ", "", " km"));
    }

    /** The pieces of the path over which it may not be let go. */
    static List<List<PlanePoint>> closed(
            Leg leg, Function<List<GeoPoint>, List<PlanePoint>> toPlane) {
        List<PlanePoint> path =
                toPlane.apply(leg.path().stream().map(PathPoint::position).toList());
        List<List<PlanePoint>> all = new ArrayList<>();
        for (Stretch part : leg.release().map(ReleaseLook::stretches).orElse(List.of())) {
            if (part.use() == Use.CLOSED) {
                all.add(cut(path, part));
            }
        }
        return all;
    }

    private static List<PlanePoint> cut(List<PlanePoint> path, Stretch part) {
        List<PlanePoint> piece = new ArrayList<>();
        double done = 0;
        for (int i = 1; i < path.size(); i++) {
            PlanePoint a = path.get(i - 1);
            PlanePoint b = path.get(i);
            double length = a.distanceToM(b);
            double from = Math.max(part.fromM(), done);
            double to = Math.min(part.toM(), done + length);
            if (length > 0 && from < to) {
                if (piece.isEmpty()) {
                    piece.add(between(a, b, (from - done) / length));
                }
                piece.add(between(a, b, (to - done) / length));
            }
            done += length;
        }
        return piece;
    }

    private static PlanePoint between(PlanePoint a, PlanePoint b, double share) {
        return new PlanePoint(
                a.eastM() + share * (b.eastM() - a.eastM()),
                a.northM() + share * (b.northM() - a.northM()));
    }
}
