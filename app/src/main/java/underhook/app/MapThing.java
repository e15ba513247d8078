package underhook.app;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import underhook.app.port.EditionReader;
import underhook.app.port.MapBox;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.Wire;

/**
 * A feature or a wire of a map, to be compared with another.
 *
 * @param family {@code feature} or {@code wire}
 * @param outline corners in the plane; of an area the first one again at the end
 * @param values what counts besides the place, by name, as text
 */
record MapThing(
        String family,
        String kind,
        String id,
        GeoPoint at,
        List<PlanePoint> outline,
        boolean isArea,
        Map<String, String> values) {
    /** An outline that went less far did not move, m. */
    private static final double STILL_M = 1;

    /** Of two things of a kind that lie nearer, one is taken for the other, m. */
    private static final double SAME_M = 5;

    /** What of an edition lies within the boxes. */
    static List<MapThing> listOf(EditionReader.Contents contents, List<MapBox> boxes, Site site) {
        List<MapThing> things = new ArrayList<>();
        for (MapFeature feature : contents.features()) {
            if (boxes.stream().anyMatch(box -> box.touches(feature.outline()))) {
                site.outline(feature.outline(), feature.shape() == MapFeature.Shape.AREA)
                        .ifPresent(outline -> things.add(of(feature, outline)));
            }
        }
        for (Wire wire : contents.wires()) {
            if (boxes.stream().anyMatch(box -> box.touches(wire.supports()))) {
                site.outline(wire.supports(), false)
                        .ifPresent(outline -> things.add(of(wire, outline)));
            }
        }
        return things;
    }

    private static MapThing of(MapFeature feature, List<PlanePoint> outline) {
        Map<String, String> values = new TreeMap<>();
        values.put("kind", word(feature.kind()));
        values.put("crossing", word(feature.crossing()));
        feature.heightM().ifPresent(height -> values.put("height", text(height, "m")));
        return new MapThing(
                "feature",
                word(feature.kind()),
                feature.id(),
                feature.outline().get(0),
                outline,
                feature.shape() == MapFeature.Shape.AREA,
                values);
    }

    private static MapThing of(Wire wire, List<PlanePoint> outline) {
        Map<String, String> values = new TreeMap<>();
        values.put("kind", word(wire.hanging().kind()));
        values.put("height", text(wire.highestM(), "m"));
        values.put("voltage", text(wire.voltageV(), "V"));
        values.put("live", wire.live() ? "yes" : "no");
        values.put("crossing", word(wire.crossing()));
        return new MapThing(
                "wire", "wire", wire.id(), wire.supports().get(0), outline, false, values);
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String text(double value, String unit) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString() + " " + unit;
    }

    /** A feature and a wire may have one id. */
    String key() {
        return family + " " + id;
    }

    boolean isMovedIn(MapThing later) {
        return movedM(later) > STILL_M;
    }

    /** How far the corner that went farthest lies from the other's outline, m. */
    double movedM(MapThing later) {
        return outline.equals(later.outline)
                ? 0
                : Math.max(farthestM(later.outline), later.farthestM(outline));
    }

    private double farthestM(List<PlanePoint> corners) {
        double farthestM = 0;
        for (PlanePoint corner : corners) {
            farthestM = Math.max(farthestM, distanceM(new PlaneLine(corner, corner)));
        }
        return farthestM;
    }

    /** Least distance of the outline itself, m. */
    private double distanceM(PlaneLine line) {
        double leastM = Double.POSITIVE_INFINITY;
        for (int i = 0; i < outline.size(); i++) {
            PlaneLine side = new PlaneLine(outline.get(Math.max(0, i - 1)), outline.get(i));
            leastM = Math.min(leastM, side.distanceToM(line));
        }
        return leastM;
    }

    private boolean isLike(MapThing other) {
        return family.equals(other.family)
                && kind.equals(other.kind)
                && isArea == other.isArea
                && movedM(other) <= SAME_M;
    }

    /** Things by where their south-western corner lies. Mutable: what is taken is gone. */
    static final class Squares {
        private final Map<String, List<MapThing>> things = new HashMap<>();

        Squares(Collection<MapThing> all) {
            for (MapThing thing : all) {
                things.computeIfAbsent(key(thing, 0, 0), any -> new ArrayList<>()).add(thing);
            }
        }

        private static String key(MapThing thing, int right, int up) {
            double westM = Double.POSITIVE_INFINITY;
            double southM = Double.POSITIVE_INFINITY;
            for (PlanePoint corner : thing.outline) {
                westM = Math.min(westM, corner.eastM());
                southM = Math.min(southM, corner.northM());
            }
            long column = (long) Math.floor(westM / SAME_M) + right;
            long row = (long) Math.floor(southM / SAME_M) + up;
            return column + " " + row;
        }

        /** The one like it that lies nearest. */
        Optional<MapThing> take(MapThing thing) {
            Optional<MapThing> best = Optional.empty();
            for (int i = 0; i < 9; i++) {
                String key = key(thing, i % 3 - 1, i / 3 - 1);
                for (MapThing other : things.getOrDefault(key, List.of())) {
                    if (thing.isLike(other)
                            && (best.isEmpty() || thing.movedM(other) < thing.movedM(best.get()))) {
                        best = Optional.of(other);
                    }
                }
            }
            best.ifPresent(one -> things.getOrDefault(key(one, 0, 0), List.of()).remove(one));
            return best;
        }
    }

    /** The job's plane, places and straight ways. */
    record Site(LocalFrame frame, Map<String, PlanePoint> places, List<PlaneLine> ways) {
        private static final double REACH_DEG = 2;

        static Site of(Job job) {
            LocalFrame frame = LocalFrame.of(job.origin());
            Map<String, PlanePoint> places = new TreeMap<>();
            for (Place place : job.places()) {
                places.put(place.id().value(), frame.toPlane(place.position()));
            }
            List<PlaneLine> ways = new ArrayList<>();
            for (Load load : job.loads()) {
                ways.add(
                        new PlaneLine(
                                frame.toPlane(job.getPlace(load.from()).position()),
                                frame.toPlane(job.getPlace(load.to()).position())));
            }
            return new Site(frame, places, ways.stream().distinct().toList());
        }

        /** Empty when nothing of it is near enough to be laid into the plane. */
        Optional<List<PlanePoint>> outline(List<GeoPoint> corners, boolean isArea) {
            List<PlanePoint> outline = new ArrayList<>();
            for (GeoPoint corner : corners) {
                double offDeg = Math.IEEEremainder(corner.lonDeg() - frame.origin().lonDeg(), 360);
                if (Math.abs(offDeg) < REACH_DEG && Math.abs(corner.latDeg()) < 85) {
                    outline.add(frame.toPlane(corner));
                }
            }
            if (isArea && !outline.isEmpty()) {
                outline.add(outline.get(0));
            }
            return outline.isEmpty() ? Optional.empty() : Optional.of(outline);
        }

        /**
         * How near a thing is.
         *
         * @param place nearest place
         * @param anyM distance of the nearest place or straight way, m
         */
        record Nearest(String place, double placeM, double anyM) {}

        Nearest nearest(MapThing thing) {
            String place = "";
            double placeM = Double.POSITIVE_INFINITY;
            for (Map.Entry<String, PlanePoint> each : places.entrySet()) {
                double distanceM =
                        distanceM(thing, new PlaneLine(each.getValue(), each.getValue()));
                if (distanceM < placeM) {
                    placeM = distanceM;
                    place = each.getKey();
                }
            }
            double anyM = placeM;
            for (PlaneLine way : ways) {
                anyM = Math.min(anyM, distanceM(thing, way));
            }
            return new Nearest(place, placeM, anyM);
        }

        private static double distanceM(MapThing thing, PlaneLine line) {
            return thing.isArea && PlaneLine.isInside(line.from(), thing.outline)
                    ? 0
                    : thing.distanceM(line);
        }
    }
}
