package underhook.planner.route;

import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import underhook.core.geo.Ground;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Job;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.WeatherHour;
import underhook.core.job.Wire;
import underhook.core.job.WireBufferRule;
import underhook.core.wire.Curtain;
import underhook.core.wire.Tube;
import underhook.core.wire.WireBuffers;

/**
 * A wire in the local plane with everywhere that it can be.
 *
 * @param chain number that all wires share which go on in one another
 * @param supports bends in the plane
 * @param tube everywhere it can be, as curtains by span
 * @param needM least distance that is kept to it where it is not crossed, m
 * @param aboveM height that line and load keep above it where it is crossed by agreement, m
 * @param reachM how far what flies reaches to the side of its track, m
 */
record WirePlan(
        Wire wire,
        int chain,
        List<PlanePoint> supports,
        Tube tube,
        double needM,
        double aboveM,
        double reachM) {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    WirePlan {
        supports = List.copyOf(supports);
    }

    static List<WirePlan> all(Job job, Ground ground) {
        List<List<PlanePoint>> lines =
                job.wires().stream().map(wire -> planeOf(wire, ground)).toList();
        int[] chains = JoinedWires.chains(lines);
        return IntStream.range(0, chains.length)
                .mapToObj(i -> of(job, job.wires().get(i), chains[i], ground))
                .toList();
    }

    private static List<PlanePoint> planeOf(Wire wire, Ground ground) {
        return wire.supports().stream().map(point -> ground.frame().toPlane(point)).toList();
    }

    private static WirePlan of(Job job, Wire wire, int chain, Ground ground) {
        Tube tube = Tube.of(wire, ground, strongestMPerS(job));
        WireBufferRule rule = job.rules().margins().wireBuffers();
        double ownM = job.rules().distances().wireClearanceM();
        return new WirePlan(
                wire,
                chain,
                planeOf(wire, ground),
                tube,
                WireBuffers.needM(wire, rule, ownM, tube.highestAmslM()),
                WireBuffers.needM(wire, rule, wire.crossingAboveM(), tube.highestAmslM()),
                sideReachM(job));
    }

    /** The day's strongest gust where it blows strongest: a wire swings at any hour that is flown. */
    private static double strongestMPerS(Job job) {
        double gustMPerS =
                job.weather().hours().stream().mapToDouble(WeatherHour::gustMPerS).max().orElse(0);
        double exposure = job.places().stream().mapToDouble(Place::exposureFactor).max().orElse(1);
        return gustMPerS * exposure;
    }

    /** Reach of the machine about its mast, m. */
    static double machineReachM(Machine machine) {
        return Math.max(
                Math.max(machine.rotorRadiusM(), machine.tailReachM()),
                machine.body().noseReachM());
    }

    private static double sideReachM(Job job) {
        double reachM = machineReachM(job.machine());
        for (var load : job.loads()) {
            reachM = Math.max(reachM, Math.hypot(load.lengthM(), load.widthM()) / 2);
        }
        return reachM;
    }

    boolean isCrossable() {
        return wire.crossing() != CrossingRule.NEVER;
    }

    /** Half the corridor in which nothing flies along the wire, m. */
    double corridorM(double clearanceM) {
        return Math.max(clearanceM, needM) + tube.widestM() + reachM;
    }

    /** Ground under that corridor. */
    Geometry corridor(double clearanceM) {
        Coordinate[] points =
                supports.stream()
                        .map(point -> new Coordinate(point.eastM(), point.northM()))
                        .toArray(Coordinate[]::new);
        return Obstacles.widen(FACTORY.createLineString(points), corridorM(clearanceM));
    }

    /**
     * The highest the wire can be within a distance of a point, m AMSL; minus infinity when no part of it
     * is so near.
     */
    double highestWithinM(PlanePoint point, double withinM) {
        double highestAmslM = Double.NEGATIVE_INFINITY;
        for (int i = 0; i + 1 < supports.size(); i++) {
            if (Plane.distanceToPieceM(supports.get(i), supports.get(i + 1), point) > withinM) {
                continue;
            }
            for (Curtain curtain : tube.spans().get(i)) {
                if (curtain.topAmslM() > highestAmslM && curtain.toAxisM(point) <= withinM) {
                    highestAmslM = curtain.topAmslM();
                }
            }
        }
        return highestAmslM;
    }
}
