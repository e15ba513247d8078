package underhook.core.ahead;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.PlaneLine;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
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

    /** Farther from where a wire may be nothing is asked of it, whatever its voltage. @source PRACTICE */
    private static final double FAR_FROM_WIRES_M = 500;

    /** How far apart the way is looked at, m; the discs around overlap. */
    private static final double STEP_M = 10;

    /** Something on the map; all of it lies within a distance of its first corner. */
    private record Thing(
            String id, List<PlanePoint> corners, boolean isArea, double heightM, double withinM) {
        static Thing of(String id, List<PlanePoint> corners, boolean isArea, double heightM) {
            double withinM =
                    corners.stream().mapToDouble(corners.get(0)::distanceToM).max().orElse(0);
            return new Thing(id, corners, isArea, heightM, withinM);
        }

        boolean isNear(PlaneLine way, double offM) {
            if (way.distanceToM(corners.get(0)) > withinM + offM) {
                return false;
            }
            int sides = isArea ? corners.size() : Math.max(1, corners.size() - 1);
            return (isArea && PlaneLine.isInside(way.from(), corners))
                    || IntStream.range(0, sides)
                            .mapToObj(
                                    i ->
                                            new PlaneLine(
                                                    corners.get(i),
                                                    corners.get((i + 1) % corners.size())))
                            .anyMatch(side -> side.distanceToM(way) <= offM);
        }
    }

    /** A wire, with its supports and with all that it may sweep. */
    private record Hung(Wire wire, Thing supports, Tube tube) {}

    private final Job job;
    private final Ground ground;
    private final List<Hung> hung = new ArrayList<>();
    private final List<Thing> standing;

    /**
     * @param gustMPerS strongest gust of the day where it is strongest, m/s
     */
    StraightWays(Job job, Ground ground, double gustMPerS) {
        this.job = job;
        this.ground = ground;
        for (Wire wire : job.wires()) {
            Thing supports = Thing.of(wire.id(), plane(wire.supports()), false, 0);
            hung.add(new Hung(wire, supports, Tube.of(wire, ground, gustMPerS)));
        }
        this.standing =
                job.features().stream()
                        .filter(feature -> feature.heightM().isPresent())
                        .map(
                                feature ->
                                        Thing.of(
                                                feature.id(),
                                                plane(feature.outline()),
                                                feature.shape() == MapFeature.Shape.AREA,
                                                feature.heightM().getAsDouble()
                                                        * (feature.heightEstimated()
                                                                ? ESTIMATED_HEIGHT_FACTOR
                                                                : 1)))
                        .toList();
    }

    /** How far beyond the strip cells count, m: those no longer than it is wide are met by it. */
    private double leansM(double stripM) {
        return ground.terrain().cellSizeM() > stripM ? ground.terrain().leansM() : 0;
    }

    /** Highest of ground with its trees, and of what stands on the strip, m AMSL; empty where any is not known. */
    OptionalDouble findHighestAmslM(PlaneLine way) {
        double stripM = job.rules().distances().stripHalfWidthM();
        double distanceM = way.from().distanceToM(way.to());
        double bearingGridRad = way.from().bearingToGridRad(way.to());
        int steps = (int) Math.max(1, Math.ceil(distanceM / STEP_M));
        List<Thing> beside = standing.stream().filter(thing -> thing.isNear(way, stripM)).toList();
        double highestAmslM = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= steps; i++) {
            PlanePoint at = way.from().towards(bearingGridRad, distanceM * i / steps);
            OptionalDouble top = ground.terrain().findHighestWithinM(at, stripM + leansM(stripM));
            if (top.isEmpty()) {
                return OptionalDouble.empty();
            }
            double coverM = Math.max(treesM(at, stripM), standsM(beside, at, stripM));
            highestAmslM = Math.max(highestAmslM, top.getAsDouble() + coverM);
        }
        for (Thing thing : beside) {
            OptionalDouble footAmslM = findFootAmslM(thing.corners());
            if (footAmslM.isEmpty()) {
                return OptionalDouble.empty();
            }
            highestAmslM = Math.max(highestAmslM, footAmslM.getAsDouble() + thing.heightM());
        }
        return OptionalDouble.of(highestAmslM);
    }

    /** Of a wood or a row, which stands as high on a ridge between its corners as at them. */
    private static double standsM(List<Thing> beside, PlanePoint at, double stripM) {
        PlaneLine here = new PlaneLine(at, at);
        return beside.stream()
                .filter(thing -> thing.corners().size() > 1 && thing.isNear(here, stripM))
                .mapToDouble(Thing::heightM)
                .max()
                .orElse(0);
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

    private OptionalDouble findFootAmslM(List<PlanePoint> corners) {
        double footAmslM = Double.NEGATIVE_INFINITY;
        for (PlanePoint at : corners) {
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
        for (Hung one : hung) {
            if (!one.supports().isNear(way, one.tube().widestM() + FAR_FROM_WIRES_M)) {
                continue;
            }
            Wire wire = one.wire();
            for (List<Curtain> span : one.tube().spans()) {
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
                .filter(
                        zone ->
                                Thing.of(zone.id(), plane(zone.ring()), true, 0)
                                        .isNear(way, job.rules().distances().stripHalfWidthM()))
                .map(Zone::id)
                .toList();
    }

    /** Things on the map that loads may not be flown over, or only while they are guarded, as near as their buffer. */
    List<String> features(PlaneLine way) {
        return job.features().stream()
                .filter(feature -> feature.crossing() != CrossingRule.ALLOWED)
                .filter(
                        feature ->
                                Thing.of(
                                                feature.id(),
                                                plane(feature.outline()),
                                                feature.shape() == MapFeature.Shape.AREA,
                                                0)
                                        .isNear(way, feature.bufferM()))
                .map(MapFeature::id)
                .toList();
    }

    private List<PlanePoint> plane(List<GeoPoint> points) {
        return points.stream().map(ground.frame()::toPlane).toList();
    }
}
