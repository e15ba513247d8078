package underhook.app.port;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.Wire;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;

/** What of a job's map lies near its plan, so that a written file does not hold a whole region. */
public final class Surroundings {
    /** What is farther from every leg and place is not written, m. */
    public static final int STRIP_M = 1000;

    /** Farther from the middle, in degrees, the local plane is not asked. */
    private static final double REACH_DEG = 2;

    private final List<MapFeature> features;
    private final List<Wire> wires;
    private final int allCount;

    private Surroundings(List<MapFeature> features, List<Wire> wires, int allCount) {
        this.features = List.copyOf(features);
        this.wires = List.copyOf(wires);
        this.allCount = allCount;
    }

    /** Features and wires within the strip around legs and places, or around all of them. */
    public static Surroundings of(OutputWriter.Output output) {
        Job job = output.readJob().job();
        List<List<GeoPoint>> ways = ways(output);
        List<MapBox> boxes = MapBox.around(ways.stream().flatMap(List::stream).toList(), STRIP_M);
        LocalFrame frame = output.readJob().ground().frame();
        Strip strip = new Strip(STRIP_M);
        Reach reach = new Reach(boxes, frame, strip);
        for (List<GeoPoint> way : ways) {
            if (way.stream().allMatch(reach::isInReach)) {
                strip.add(way.stream().map(frame::toPlane).toList());
            }
        }
        return new Surroundings(
                job.features().stream()
                        .filter(
                                one ->
                                        reach.isNear(
                                                one.outline(),
                                                one.shape() == MapFeature.Shape.AREA))
                        .toList(),
                job.wires().stream().filter(one -> reach.isNear(one.supports(), false)).toList(),
                job.features().size() + job.wires().size());
    }

    private static List<List<GeoPoint>> ways(OutputWriter.Output output) {
        List<List<GeoPoint>> ways = new ArrayList<>();
        for (Place place : output.readJob().job().places()) {
            ways.add(List.of(place.position()));
        }
        output.plan().steps().stream()
                .flatMap(
                        step ->
                                Stream.concat(
                                        step.legs().stream(),
                                        step.rotation().map(Rotation::legs).stream()
                                                .flatMap(List::stream)))
                .map(Leg::path)
                .filter(path -> !path.isEmpty())
                .forEach(path -> ways.add(path.stream().map(PathPoint::position).toList()));
        return ways;
    }

    private record Reach(List<MapBox> boxes, LocalFrame frame, Strip strip) {
        boolean isNear(List<GeoPoint> outline, boolean isArea) {
            if (boxes.stream().noneMatch(box -> box.touches(outline))) {
                return false;
            }
            if (!outline.stream().allMatch(this::isInReach)) {
                return true; // it spans half a country: nobody misses it, and it may be near
            }
            List<PlanePoint> line = new ArrayList<>(outline.stream().map(frame::toPlane).toList());
            if (isArea) {
                line.add(line.get(0));
            }
            return strip.touches(line) || (isArea && strip.isAnyInside(line));
        }

        private boolean isInReach(GeoPoint point) {
            GeoPoint origin = frame.origin();
            return Math.abs(Math.IEEEremainder(point.lonDeg() - origin.lonDeg(), 360)) < REACH_DEG
                    && Math.abs(point.latDeg() - origin.latDeg()) < REACH_DEG;
        }
    }

    /** In the order of the job. */
    public List<MapFeature> features() {
        return features;
    }

    /** In the order of the job. */
    public List<Wire> wires() {
        return wires;
    }

    /** A sentence that counts what is not written; empty when everything is. */
    public Optional<String> note() {
        int written = features.size() + wires.size();
        return written == allCount
                ? Optional.empty()
                : Optional.of(
                        "Of the job's "
                                + allCount
                                + " map features and wires this file holds the "
                                + written
                                + " within "
                                + STRIP_M
                                + " m of a leg or place.");
    }
}
