package underhook.planner.route;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Envelope;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;

/**
 * Heights of the hook along a way.
 *
 * <p>At samples every {@value #STEP_M} m the hook must clear the highest ground and the highest canopy
 * within half the strip that a track is checked over, or within {@value #SIDE_M} m where that is more or one of
 * the places is near: there the machine comes down between the trees of a clearing, and the room at the place is
 * looked at besides. The flown profile is the least one above these heights that keeps the climb
 * and descent and never dips: climbs first, then descends. Where a place lies lower than the profile's
 * end the difference is flown on the spot above it.
 */
final class HeightProfile {
    private static final double STEP_M = 10;

    /** Reach to the side and between samples that is cleared at the least. */
    private static final double SIDE_M = 12;

    /** Room at a place is looked at so far from it. */
    private static final double END_M = 60;

    /** Each holds three figures every ten metres. */
    private static final int BELOWS_KEPT = 4096;

    private final Ground ground;
    private final List<WirePlan> wires;
    private final Memo<Over, Below> belows = Memo.ofLast(BELOWS_KEPT);
    private final ByPlace<WirePlan> wiresByPlace;
    private final double stripM;

    HeightProfile(Ground ground, List<WirePlan> wires) {
        this(ground, wires, SIDE_M);
    }

    /**
     * @param stripM half the strip that a track is checked over, m
     */
    HeightProfile(Ground ground, List<WirePlan> wires, double stripM) {
        this.ground = ground;
        this.stripM = Math.max(SIDE_M, stripM);
        this.wires = List.copyOf(wires);
        this.wiresByPlace = new ByPlace<>(wires, wire -> ByPlace.extent(wire.supports()));
    }

    /**
     * What a profile must respect.
     *
     * @param underHookM from the hook to the lowest end of the load, m
     * @param clearanceM least distance below that end, m
     * @param climbRatio height gained for each metre along the ground
     * @param descentRatio height lost for each metre along the ground
     * @param canopyM canopy where no raster says otherwise, m
     */
    record Need(
            double underHookM,
            double clearanceM,
            double climbRatio,
            double descentRatio,
            double canopyM) {}

    /**
     * A profile.
     *
     * @param alongM distance of each kept point from the start, m
     * @param hookAmslM altitude of the hook there, m AMSL
     * @param leastClearanceM least distance between the load's lower end and ground or canopy, m
     */
    record Profile(List<Double> alongM, List<Double> hookAmslM, double leastClearanceM) {}

    /** A way, and all that what lies below it hangs on. */
    private record Over(List<PlanePoint> way, double clearanceM, double canopyM) {}

    /** What lies below a way, whatever hangs on the hook; where it is no longer known the heights end. */
    private static final class Below {
        /** Distance of each sample from the start, m. */
        final List<Double> alongM;

        /** Highest of ground and canopy, m AMSL. */
        final double[] floorAmslM;

        /** Least altitude of the load's lower end over wires, m AMSL. */
        final double[] overWireAmslM;

        Below(List<Double> alongM, double[] floorAmslM, double[] overWireAmslM) {
            this.alongM = alongM;
            this.floorAmslM = floorAmslM;
            this.overWireAmslM = overWireAmslM;
        }

        boolean isKnown() {
            return floorAmslM.length == alongM.size();
        }

        /** Where that ends, as a part of the length. */
        double unknownAtRatio() {
            double wholeM = alongM.get(alongM.size() - 1);
            return wholeM > 0 ? alongM.get(floorAmslM.length) / wholeM : 0;
        }
    }

    private Below below(List<PlanePoint> way, Need need) {
        return belows.get(
                new Over(way, need.clearanceM(), need.canopyM()), unused -> findBelow(way, need));
    }

    private Below findBelow(List<PlanePoint> way, Need need) {
        List<PlanePoint> samples = new ArrayList<>();
        List<Double> along = new ArrayList<>();
        sample(way, samples, along);
        List<WirePlan> near = wiresNear(way, need);
        double[] floorAmslM = new double[samples.size()];
        double[] overWireAmslM = new double[samples.size()];
        for (int i = 0; i < floorAmslM.length; i++) {
            floorAmslM[i] = floorAmslM(samples.get(i), need, toEndM(along, i));
            overWireAmslM[i] = overWireAmslM(near, samples.get(i), need);
            if (Math.max(floorAmslM[i], overWireAmslM[i]) == Double.POSITIVE_INFINITY) {
                return new Below(
                        along, Arrays.copyOf(floorAmslM, i), Arrays.copyOf(overWireAmslM, i));
            }
        }
        return new Below(along, floorAmslM, overWireAmslM);
    }

    /** The least profile along a way; empty where ground or a wire below it is not known. */
    Optional<Profile> find(List<PlanePoint> way, Need need) {
        Below below = below(way, need);
        if (!below.isKnown()) {
            return Optional.empty();
        }
        List<Double> along = below.alongM;
        double[] floor = below.floorAmslM;
        int n = floor.length;
        double[] hook = new double[n];
        for (int i = 0; i < n; i++) {
            hook[i] = floor[i] + need.clearanceM() + need.underHookM();
            hook[i] = Math.max(hook[i], below.overWireAmslM[i] + need.underHookM());
        }
        for (int i = n - 2; i >= 0; i--) {
            double runM = along.get(i + 1) - along.get(i);
            hook[i] = Math.max(hook[i], hook[i + 1] - need.climbRatio() * runM);
        }
        for (int i = 1; i < n; i++) {
            double runM = along.get(i) - along.get(i - 1);
            hook[i] = Math.max(hook[i], hook[i - 1] - need.descentRatio() * runM);
        }
        List<Double> keptAlong = new ArrayList<>();
        List<Double> keptHook = new ArrayList<>();
        upperHull(along, hook, keptAlong, keptHook);
        double least = Double.POSITIVE_INFINITY;
        int piece = 0;
        for (int i = 0; i < n; i++) {
            while (piece + 2 < keptAlong.size() && keptAlong.get(piece + 1) <= along.get(i)) {
                piece++;
            }
            double hookAmslM = hookAmslM(keptAlong, keptHook, along.get(i));
            least = Math.min(least, hookAmslM - need.underHookM() - floor[i]);
        }
        return Optional.of(new Profile(keptAlong, keptHook, least));
    }

    /** The first part of a way over which ground or a wire is not known, as a part of its length. */
    Optional<Double> findUnknown(List<PlanePoint> way, Need need) {
        return Optional.of(below(way, need))
                .filter(below -> !below.isKnown())
                .map(Below::unknownAtRatio);
    }

    /** Least altitude of the hook over a point, m AMSL; infinite where ground or wire are not known. */
    double leastAmslM(PlanePoint point, Need need) {
        return Math.max(
                floorAmslM(point, need) + need.clearanceM() + need.underHookM(),
                overWireAmslM(wiresNear(List.of(point), need), point, need) + need.underHookM());
    }

    /**
     * Least altitude over a point of whoever flies straight from it to another and climbs by no more than
     * a ratio on the way, m AMSL; what is not known on the way asks for nothing.
     */
    double leastAmslM(PlanePoint point, PlanePoint other, Need need, double riseRatio) {
        double leastAmslM = leastAmslM(point, need);
        double lengthM = point.distanceToM(other);
        int pieces = (int) Math.ceil(lengthM / STEP_M);
        for (int k = 1; k <= pieces; k++) {
            double share = (double) k / pieces;
            double askedAmslM = leastAmslM(Plane.between(point, other, share), need);
            if (askedAmslM < Double.POSITIVE_INFINITY) {
                leastAmslM = Math.max(leastAmslM, askedAmslM - riseRatio * lengthM * share);
            }
        }
        return leastAmslM;
    }

    private static double toEndM(List<Double> along, int index) {
        return Math.min(along.get(index), along.get(along.size() - 1) - along.get(index));
    }

    /** The highest of ground and canopy round a place, m AMSL; infinite where the ground is not known. */
    double floorAmslM(PlanePoint point, Need need) {
        return floorAmslM(point, need, 0);
    }

    /**
     * The highest of ground and canopy to both sides of a way, m AMSL; infinite where the ground is not known.
     *
     * @param toEndM to the nearer end of the way, m
     */
    double floorAmslM(PlanePoint point, Need need, double toEndM) {
        double sideM = toEndM < END_M ? SIDE_M : stripM;
        OptionalDouble highest =
                ground.terrain().findHighestWithinM(point, reachM(ground.terrain(), sideM));
        return highest.isPresent()
                ? highest.getAsDouble() + canopyM(point, need.canopyM(), sideM)
                : Double.POSITIVE_INFINITY;
    }

    /** How far cells count: on a coarse raster those beyond may be the higher ones. */
    private static double reachM(HeightField field, double sideM) {
        return sideM + field.leansM();
    }

    /** Where the raster ends within reach, its trees and those of the job's assumption count: the higher ones. */
    private double canopyM(PlanePoint point, double otherwiseM, double sideM) {
        if (ground.canopy().isEmpty()) {
            return otherwiseM;
        }
        HeightField canopy = ground.canopy().get();
        double reachM = reachM(canopy, sideM);
        OptionalDouble throughout = canopy.findHighestWithinM(point, reachM);
        if (throughout.isPresent()) {
            return treesM(throughout.getAsDouble());
        }
        double knownM = treesM(canopy.findHighestKnownWithinM(point, reachM).orElse(0));
        return Math.max(knownM, otherwiseM);
    }

    private double treesM(double rasterM) {
        return rasterM > 0 ? rasterM + ground.canopySpreadM() : 0;
    }

    /** Wires that may lie near the way. */
    private List<WirePlan> wiresNear(List<PlanePoint> way, Need need) {
        double widestM =
                wires.stream()
                        .mapToDouble(wire -> wire.corridorM(need.clearanceM()))
                        .max()
                        .orElse(0);
        Envelope extent = ByPlace.extent(way);
        // Twice what any wire asks for, so that its width counts too.
        extent.expandBy(2 * (widestM + SIDE_M));
        return wiresByPlace.near(extent);
    }

    /** Least altitude of what hangs there over wires near a point, m; infinite where a wire's top is not known. */
    private static double overWireAmslM(List<WirePlan> near, PlanePoint point, Need need) {
        double lowEndAmslM = Double.NEGATIVE_INFINITY;
        for (WirePlan wire : near) {
            double nearM = wire.corridorM(need.clearanceM()) + SIDE_M;
            double topAmslM = wire.highestWithinM(point, nearM);
            lowEndAmslM = Math.max(lowEndAmslM, topAmslM + wire.aboveM() + 2);
        }
        return lowEndAmslM;
    }

    private static void sample(List<PlanePoint> way, List<PlanePoint> samples, List<Double> along) {
        double doneM = 0;
        samples.add(way.get(0));
        along.add(0.0);
        for (int i = 0; i + 1 < way.size(); i++) {
            double lengthM = way.get(i).distanceToM(way.get(i + 1));
            int pieces = Math.max(1, (int) Math.ceil(lengthM / STEP_M));
            for (int k = 1; k <= pieces; k++) {
                samples.add(Plane.between(way.get(i), way.get(i + 1), (double) k / pieces));
                along.add(doneM + lengthM * k / pieces);
            }
            doneM += lengthM;
        }
    }

    /** Least concave line above the points: it climbs, then descends, and never dips. */
    private static void upperHull(
            List<Double> along, double[] hookAmslM, List<Double> keptAlong, List<Double> keptHook) {
        for (int i = 0; i < hookAmslM.length; i++) {
            while (keptAlong.size() >= 2) {
                int last = keptAlong.size() - 1;
                double x1 = keptAlong.get(last - 1);
                double y1 = keptHook.get(last - 1);
                double x2 = keptAlong.get(last);
                double y2 = keptHook.get(last);
                boolean below =
                        (y2 - y1) * (along.get(i) - x1) <= (hookAmslM[i] - y1) * (x2 - x1) + 1e-9;
                if (!below) {
                    break;
                }
                keptAlong.remove(last);
                keptHook.remove(last);
            }
            keptAlong.add(along.get(i));
            keptHook.add(hookAmslM[i]);
        }
    }

    /** Straight between kept points. */
    static double hookAmslM(List<Double> along, List<Double> hook, double alongM) {
        for (int i = 0; i + 1 < along.size(); i++) {
            if (alongM <= along.get(i + 1)) {
                double runM = along.get(i + 1) - along.get(i);
                double t = runM <= 0 ? 1 : (alongM - along.get(i)) / runM;
                return hook.get(i) + Math.max(0, t) * (hook.get(i + 1) - hook.get(i));
            }
        }
        return hook.get(hook.size() - 1);
    }
}
