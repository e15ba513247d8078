package underhook.core.ahead;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.wire.Curtain;
import underhook.core.wire.Tube;
import underhook.core.wire.WireBuffers;

/** What lies under and beside a straight way that no plan looked at. */
final class StraightWays {
    /** What a height that nobody measured is multiplied with. @source PRACTICE as for wires */
    private static final double ESTIMATED_HEIGHT_FACTOR = 1.25;

    /** How far apart the way is looked at, m; the discs around overlap. */
    private static final double STEP_M = 10;

    private final Job job;
    private final Ground ground;
    private final Map<String, Tube> tubes = new LinkedHashMap<>();

    /**
     * @param gustMPerS strongest gust of the day where it is strongest, m/s
     */
    StraightWays(Job job, Ground ground, double gustMPerS) {
        this.job = job;
        this.ground = ground;
        for (Wire wire : job.wires()) {
            tubes.put(wire.id(), Tube.of(wire, ground, gustMPerS));
        }
    }

    /** Highest of ground with its trees, and of what stands on the strip, m AMSL; empty where any is not known. */
    OptionalDouble findHighestAmslM(PlaneLine way) {
        double stripM = job.rules().distances().stripHalfWidthM();
        double distanceM = way.from().distanceToM(way.to());
        double bearingGridRad = way.from().bearingToGridRad(way.to());
        int steps = (int) Math.max(1, Math.ceil(distanceM / STEP_M));
        double highestAmslM = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= steps; i++) {
            PlanePoint at = way.from().towards(bearingGridRad, distanceM * i / steps);
            OptionalDouble top = ground.terrain().findHighestWithinM(at, stripM);
            if (top.isEmpty()) {
                return OptionalDouble.empty();
            }
            highestAmslM = Math.max(highestAmslM, top.getAsDouble() + treesM(at, stripM));
        }
        for (MapFeature feature : job.features()) {
            if (feature.heightM().isPresent()
                    && touches(way, feature.outline(), feature.shape() == MapFeature.Shape.AREA)) {
                OptionalDouble footAmslM = findFootAmslM(feature.outline());
                if (footAmslM.isEmpty()) {
                    return OptionalDouble.empty();
                }
                highestAmslM =
                        Math.max(
                                highestAmslM,
                                footAmslM.getAsDouble()
                                        + feature.heightM().getAsDouble()
                                                * (feature.heightEstimated()
                                                        ? ESTIMATED_HEIGHT_FACTOR
                                                        : 1));
            }
        }
        return OptionalDouble.of(highestAmslM);
    }

    /** Of trees where a raster has them, and of those assumed where it ends. */
    private double treesM(PlanePoint at, double stripM) {
        double assumedM = job.rules().distances().canopyLegM();
        if (ground.canopy().isEmpty()) {
            return assumedM;
        }
        double seenM =
                ground.canopy().get().findHighestKnownWithinM(at, stripM).orElse(assumedM)
                        + ground.canopySpreadM();
        return ground.canopy().get().coversDisc(at, stripM) ? seenM : Math.max(seenM, assumedM);
    }

    private OptionalDouble findFootAmslM(List<GeoPoint> outline) {
        double footAmslM = Double.NEGATIVE_INFINITY;
        for (PlanePoint at : plane(outline)) {
            OptionalDouble here = ground.terrain().findHeightM(at.eastM(), at.northM());
            if (here.isEmpty()) {
                return OptionalDouble.empty();
            }
            footAmslM = Math.max(footAmslM, here.getAsDouble());
        }
        return OptionalDouble.of(footAmslM);
    }

    /** What the wires under or beside the way ask of the hook, m AMSL; tells which they are. */
    double overWiresAmslM(PlaneLine way, double underHookM, Set<String> passes) {
        double hookAmslM = Double.NEGATIVE_INFINITY;
        for (Wire wire : job.wires()) {
            for (List<Curtain> span : Objects.requireNonNull(tubes.get(wire.id())).spans()) {
                for (Curtain piece : span) {
                    double needM =
                            Math.max(
                                    WireBuffers.needM(
                                            wire,
                                            job.rules().margins().wireBuffers(),
                                            job.rules().distances().wireClearanceM(),
                                            Math.max(0, piece.topAmslM())),
                                    wire.crossingAboveM());
                    double offM = way.distanceToM(new PlaneLine(piece.a(), piece.b()));
                    if (offM < piece.halfWidthM() + needM + job.machine().tailReachM()) {
                        passes.add(wire.id());
                        hookAmslM = Math.max(hookAmslM, piece.topAmslM() + needM + underHookM);
                    }
                }
            }
        }
        return hookAmslM;
    }

    /** Zones that these kinds of load may not be flown through, or low through, on the day. */
    List<String> zones(PlaneLine way, Set<String> kinds) {
        return job.zones().stream()
                .filter(zone -> zone.isActiveOn(job.date()))
                .filter(
                        zone ->
                                zone.kinds().isEmpty()
                                        || zone.kinds().stream().anyMatch(kinds::contains))
                .filter(
                        zone ->
                                zone.rule() == Zone.Rule.NO_OVERFLIGHT
                                        || zone.rule() == Zone.Rule.MIN_HEIGHT)
                .filter(zone -> touches(way, zone.ring(), true))
                .map(Zone::id)
                .toList();
    }

    /** Whether a thing lies on the strip of the way. */
    private boolean touches(PlaneLine way, List<GeoPoint> outline, boolean isArea) {
        List<PlanePoint> corners = plane(outline);
        double stripM = job.rules().distances().stripHalfWidthM();
        if (isArea && PlaneLine.isInside(way.from(), corners)) {
            return true;
        }
        int sides = isArea ? corners.size() : Math.max(1, corners.size() - 1);
        return IntStream.range(0, sides)
                .mapToObj(i -> new PlaneLine(corners.get(i), corners.get((i + 1) % corners.size())))
                .anyMatch(side -> side.distanceToM(way) <= stripM);
    }

    private List<PlanePoint> plane(List<GeoPoint> points) {
        return points.stream().map(ground.frame()::toPlane).toList();
    }
}
