package underhook.planner.route;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import underhook.core.fall.Fall;
import underhook.core.fall.Patch;
import underhook.core.fall.Release;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.geo.Slope;
import underhook.core.job.LoadShape;

/**
 * Where a load would land that is let go anywhere along a leg.
 *
 * <p>Every {@value #STEP_M} m the patch of ground that it may hit is laid over the map. Height and ground
 * speed follow the leg; near the places the machine is slower. Not safe for threads: patches once worked
 * out are kept.
 */
final class ReleaseStrip {
    private static final double STEP_M = 10;

    /** Heights are rounded up to this, and their spread widened by it, so that patches can be kept. */
    private static final double HEIGHT_STEP_M = 5;

    /** Slowest speed near a place that is counted, m/s. */
    private static final double LEAST_SPEED_M_PER_S = 3;

    /** Ground speed is known to this part of it. @source PRACTICE */
    private static final double SPEED_SPREAD_RATIO = 0.1;

    /** A load in flight swings this far to any side. @source PRACTICE */
    private static final double SWING_RAD = Math.toRadians(10);

    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** What it means to let a load go over some ground; worse ones first. */
    enum Use {
        /** Never: people, houses, closed ground, live wires. */
        CLOSED,
        /** Only while a guard keeps people away. */
        GUARDED,
        /** Nothing that the job knows of lies there. */
        OPEN,
        /** The whole patch lies in an area that the job names for it. */
        NAMED
    }

    /** Something on the ground. */
    record Under(String id, Use use, Geometry area) {}

    /**
     * What hangs there.
     *
     * @param light most drag for its mass
     * @param heavy least drag for its mass
     * @param lineM from hook to load, m
     * @param underHookM from hook to the load's lower end, m
     * @param speedMPerS ground speed away from the places, m/s
     * @param trailRad steady trail at that speed, rad
     */
    record Cargo(
            Fall.Body light,
            Fall.Body heavy,
            LoadShape shape,
            double lineM,
            double underHookM,
            double speedMPerS,
            double trailRad) {}

    /**
     * The wind on a leg.
     *
     * @param fromGridRad where it comes from, rad from grid north
     * @param speedMPerS mean, m/s
     * @param spreadMPerS gust less mean, m/s
     */
    record LegWind(double fromGridRad, double speedMPerS, double spreadMPerS) {}

    /**
     * A stretch of the leg with one use.
     *
     * @param fromM start along the leg, m
     * @param toM end along the leg, m
     * @param forS time to fly it, s
     * @param what ids of what decides it
     */
    record Stretch(Use use, double fromM, double toM, double forS, List<String> what) {
        Stretch {
            what = List.copyOf(what);
        }
    }

    /**
     * A whole leg.
     *
     * @param longestClosedS longest time on end during which nothing may be let go without a guard, s
     * @param longestUnnamedS longest time on end without a named area under the patch, s
     * @param farthestM farthest that a patch reaches from the track's point below the hook, m
     */
    record Strip(
            List<Stretch> stretches,
            double longestClosedS,
            double longestUnnamedS,
            double farthestM) {
        Strip {
            stretches = List.copyOf(stretches);
        }
    }

    private record Thing(Under under, PreparedGeometry shape) {}

    private final HeightField terrain;
    private final double finalM;
    private final STRtree things = new STRtree();
    private final Map<String, Patch> patches = new HashMap<>();

    /**
     * For one map.
     *
     * @param finalM last part of a way in and first of a way out, in which the machine is slower, m
     */
    ReleaseStrip(HeightField terrain, List<Under> unders, double finalM) {
        this.terrain = terrain;
        this.finalM = finalM;
        for (Under under : unders) {
            things.insert(
                    under.area().getEnvelopeInternal(),
                    new Thing(under, PreparedGeometryFactory.prepare(under.area())));
        }
        things.build();
    }

    /** The strip of a leg; empty where part of it lies over unknown ground. */
    Optional<Strip> along(FlownLeg leg, Cargo cargo, LegWind wind) {
        List<Station> stations = stations(leg, cargo);
        List<Stretch> stretches = new ArrayList<>();
        double farthestM = 0;
        for (Station station : stations) {
            Optional<Patch> patch = patch(station, cargo, wind);
            if (patch.isEmpty()) {
                return Optional.empty();
            }
            farthestM = Math.max(farthestM, patch.get().reachM());
            add(stretches, look(station, patch.get()));
        }
        return Optional.of(
                new Strip(
                        stretches,
                        longestS(stretches, List.of(Use.CLOSED, Use.GUARDED)),
                        longestS(stretches, List.of(Use.CLOSED, Use.GUARDED, Use.OPEN)),
                        farthestM));
    }

    private record Station(
            PlanePoint under,
            double trackGridRad,
            double hookAmslM,
            double speedMPerS,
            double fromM,
            double toM) {}

    private List<Station> stations(FlownLeg leg, Cargo cargo) {
        List<Station> stations = new ArrayList<>();
        double doneM = 0;
        for (int i = 0; i + 1 < leg.points().size(); i++) {
            PlanePoint a = leg.points().get(i);
            PlanePoint b = leg.points().get(i + 1);
            double lengthM = a.distanceToM(b);
            if (lengthM <= 0) {
                continue;
            }
            double track = a.bearingToGridRad(b);
            int count = (int) Math.ceil(lengthM / STEP_M);
            for (int k = 0; k < count; k++) {
                double t = (k + 0.5) / count;
                double fromM = doneM + lengthM * k / count;
                double toM = doneM + lengthM * (k + 1) / count;
                double hookAmslM =
                        leg.hookAmslM().get(i)
                                + t * (leg.hookAmslM().get(i + 1) - leg.hookAmslM().get(i));
                stations.add(
                        new Station(
                                Plane.between(a, b, t),
                                track,
                                hookAmslM,
                                speedMPerS(cargo, (fromM + toM) / 2, leg.distanceM()),
                                fromM,
                                toM));
            }
            doneM += lengthM;
        }
        return stations;
    }

    /** Even slowing over the last part, even gain over the first. */
    private double speedMPerS(Cargo cargo, double atM, double wholeM) {
        double endM = Math.max(0, Math.min(atM, wholeM - atM));
        double share = finalM <= 0 ? 1 : Math.min(1, Math.sqrt(endM / finalM));
        return Math.max(LEAST_SPEED_M_PER_S, cargo.speedMPerS() * share);
    }

    private Optional<Patch> patch(Station station, Cargo cargo, LegWind wind) {
        double lowEndAmslM = station.hookAmslM() - cargo.underHookM();
        double guessM =
                station.speedMPerS()
                        * Math.sqrt(2 * Math.max(1, heightM(station, lowEndAmslM)) / 9);
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= 4; i++) {
            PlanePoint at = station.under().towards(station.trackGridRad(), guessM * i / 3);
            if (!terrain.covers(at.eastM(), at.northM())) {
                return Optional.empty();
            }
            double groundM = terrain.heightM(at.eastM(), at.northM());
            lowest = Math.min(lowest, groundM);
            highest = Math.max(highest, groundM);
        }
        double most = Math.max(1, lowEndAmslM - lowest);
        double least = Math.max(0.5, Math.min(most, lowEndAmslM - highest));
        PlanePoint landing = station.under().towards(station.trackGridRad(), guessM);
        Optional<Slope> slope = Slope.find(terrain, landing, terrain.cellSizeM());
        if (slope.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(kept(station, cargo, wind, new Below(most, least, slope.get())));
    }

    private double heightM(Station station, double lowEndAmslM) {
        PlanePoint at = station.under();
        return terrain.covers(at.eastM(), at.northM())
                ? lowEndAmslM - terrain.heightM(at.eastM(), at.northM())
                : 1;
    }

    /** Ground under a station: most and least height above it, and how it falls away. */
    private record Below(double mostM, double leastM, Slope slope) {}

    private Patch kept(Station station, Cargo cargo, LegWind wind, Below below) {
        Slope slope = below.slope();
        double mostM = Math.ceil(below.mostM() / HEIGHT_STEP_M) * HEIGHT_STEP_M;
        double leastM = Math.max(0.5, Math.floor(below.leastM() / HEIGHT_STEP_M) * HEIGHT_STEP_M);
        double speedMPerS = Math.ceil(station.speedMPerS());
        double offRad = wind.fromGridRad() + Math.PI - station.trackGridRad();
        double falls = slope.fallsTowardsGridRad() - station.trackGridRad();
        double steep = Math.tan(slope.slopeRad());
        Patch.Ground ground =
                new Patch.Ground(
                        coarseRad(Math.atan(steep * Math.cos(falls))),
                        coarseRad(Math.atan(steep * Math.sin(falls))));
        String key =
                mostM
                        + "|"
                        + leastM
                        + "|"
                        + speedMPerS
                        + "|"
                        + Math.round(Math.toDegrees(Math.IEEEremainder(offRad, 2 * Math.PI)))
                        + "|"
                        + wind
                        + ground
                        + cargo;
        return patches.computeIfAbsent(
                key,
                unused ->
                        Patch.of(
                                new Release(
                                        (mostM + leastM) / 2,
                                        (mostM - leastM) / 2,
                                        speedMPerS,
                                        speedMPerS * SPEED_SPREAD_RATIO,
                                        drift(wind, offRad),
                                        hanging(cargo, speedMPerS)),
                                cargo.shape(),
                                ground));
    }

    /** Away from level, so that a run downhill is never shorter. */
    private static double coarseRad(double slopeRad) {
        double step = 0.05;
        return Math.signum(slopeRad) * Math.min(1.5, Math.ceil(Math.abs(slopeRad) / step) * step);
    }

    private static Release.Drift drift(LegWind wind, double offRad) {
        // Rounding the angle to a degree moves the wind across by less than 2 in 100 of it.
        return new Release.Drift(
                wind.speedMPerS() * Math.cos(offRad),
                wind.speedMPerS() * Math.sin(offRad),
                1,
                wind.spreadMPerS() + 0.02 * wind.speedMPerS());
    }

    private static Release.Hanging hanging(Cargo cargo, double speedMPerS) {
        double share = Math.min(1, speedMPerS / cargo.speedMPerS());
        double trail = Math.atan(Math.tan(cargo.trailRad()) * share * share);
        return new Release.Hanging(
                cargo.light(),
                cargo.heavy(),
                cargo.lineM(),
                trail,
                Math.min(SWING_RAD, Math.PI / 2 - trail - 1e-3));
    }

    private Stretch look(Station station, Patch patch) {
        double halfM = (station.toM() - station.fromM()) / 2;
        Patch wide =
                new Patch(
                        patch.backM() - halfM,
                        patch.forwardM() + halfM,
                        patch.leftM(),
                        patch.rightM());
        Geometry area = polygon(wide.outline(station.under(), station.trackGridRad()));
        Use use = Use.OPEN;
        TreeSet<String> what = new TreeSet<>();
        for (Object found : things.query(area.getEnvelopeInternal())) {
            Thing thing = (Thing) found;
            Use here = thing.under().use();
            boolean counts =
                    here == Use.NAMED
                            ? thing.shape().contains(area)
                            : thing.shape().intersects(area);
            if (!counts || (here == Use.NAMED && use.compareTo(Use.OPEN) < 0)) {
                continue;
            }
            boolean worse = here == Use.NAMED ? use == Use.OPEN : here.compareTo(use) < 0;
            if (worse) {
                what.clear();
                use = here;
            }
            if (here == use) {
                what.add(thing.under().id());
            }
        }
        double lengthM = station.toM() - station.fromM();
        return new Stretch(
                use,
                station.fromM(),
                station.toM(),
                lengthM / station.speedMPerS(),
                List.copyOf(what));
    }

    private static Geometry polygon(List<PlanePoint> corners) {
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            PlanePoint corner = corners.get(i % corners.size());
            ring[i] = new Coordinate(corner.eastM(), corner.northM());
        }
        return FACTORY.createPolygon(ring);
    }

    private static void add(List<Stretch> stretches, Stretch next) {
        if (!stretches.isEmpty()) {
            Stretch last = stretches.get(stretches.size() - 1);
            if (last.use() == next.use() && last.what().equals(next.what())) {
                stretches.set(
                        stretches.size() - 1,
                        new Stretch(
                                last.use(),
                                last.fromM(),
                                next.toM(),
                                last.forS() + next.forS(),
                                last.what()));
                return;
            }
        }
        stretches.add(next);
    }

    private static double longestS(List<Stretch> stretches, List<Use> uses) {
        double longest = 0;
        double now = 0;
        for (Stretch stretch : stretches) {
            now = uses.contains(stretch.use()) ? now + stretch.forS() : 0;
            longest = Math.max(longest, now);
        }
        return longest;
    }
}
