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

    /**
     * Kilometres from the start, from the first to the last metre of every stretch: each thing over all
     * stretches that it has a part in, and those with the same kilometres together.
     */
    private static Map<String, String> merged(ReleaseLook look, Use use) {
        Map<String, List<Tenths>> all = new LinkedHashMap<>();
        for (Stretch part : look.stretches()) {
            if (part.use() == use) {
                List<String> things = part.what().isEmpty() ? List.of("") : part.what();
                for (String thing : things) {
                    Tenths.join(
                            all.computeIfAbsent(thing, unused -> new ArrayList<>()),
                            Tenths.around(part));
                }
            }
        }
        Map<List<Tenths>, String> alike = new LinkedHashMap<>();
        all.forEach((thing, parts) -> alike.merge(parts, thing, (a, b) -> a + ", " + b));
        Map<String, String> words = new LinkedHashMap<>();
        alike.forEach(
                (parts, things) ->
                        words.put(
                                things,
                                parts.stream()
                                        .map(Tenths::words)
                                        .collect(Collectors.joining(", ", "", " km"))));
        return words;
    }

    /** A stretch in tenths of a kilometre, outward, so that a closed one is never short. */
    private record Tenths(long from, long to) {
        static Tenths around(Stretch part) {
            return new Tenths(
                    (long) Math.floor(part.fromM() / 100), (long) Math.ceil(part.toM() / 100));
        }

        /** Adds the next stretch; one that touches the last makes it longer. */
        static void join(List<Tenths> parts, Tenths next) {
            int last = parts.size() - 1;
            if (last >= 0 && next.from <= parts.get(last).to) {
                Tenths before = parts.get(last);
                parts.set(last, new Tenths(before.from, Math.max(before.to, next.to)));
            } else {
                parts.add(next);
            }
        }

        String words() {
            return String.format(Locale.ROOT, "%.1f–%.1f", from / 10.0, to / 10.0);
        }
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
