package underhook.adapter.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.PlanePoint;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

/** Where on a leg its load may be let go. */
final class LetGo {
    private LetGo() {}

    /** "Let go: not over LL1 1.0–1.3 km; guarded only RV9 0.5–0.7 km; areas J1." */
    static Optional<String> line(Leg leg) {
        if (leg.release().isEmpty() || leg.release().get().stretches().isEmpty()) {
            return Optional.empty();
        }
        ReleaseLook look = leg.release().get();
        List<String> parts = new ArrayList<>();
        merged(look, Use.CLOSED).forEach((what, km) -> parts.add("NOT over " + what + " " + km));
        merged(look, Use.GUARDED).forEach((what, km) -> parts.add("guarded " + what + " " + km));
        TreeSet<String> areas = new TreeSet<>();
        look.stretches().stream()
                .filter(part -> part.use() == Use.NAMED)
                .forEach(part -> areas.addAll(part.what()));
        parts.add(areas.isEmpty() ? "no named area" : "areas " + String.join(", ", areas));
        return Optional.of("Let go: " + String.join("; ", parts) + ".");
    }

    /** Kilometres from the start for each thing, from the first to the last metre of every stretch. */
    private static Map<String, String> merged(ReleaseLook look, Use use) {
        Map<String, String> all = new LinkedHashMap<>();
        for (Stretch part : look.stretches()) {
            if (part.use() == use) {
                String km = tenths(part.fromM(), false) + "–" + tenths(part.toM(), true);
                all.merge(String.join(", ", part.what()), km, (a, b) -> a + ", " + b);
            }
        }
        all.replaceAll((what, km) -> km + " km");
        return all;
    }

    /** Outward, so that a closed stretch is never short. */
    private static String tenths(double distanceM, boolean up) {
        double tenths = up ? Math.ceil(distanceM / 100) : Math.floor(distanceM / 100);
        return String.format(Locale.ROOT, "%.1f", tenths / 10);
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
