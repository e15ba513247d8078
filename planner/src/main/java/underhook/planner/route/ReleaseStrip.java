package underhook.planner.route;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import underhook.core.fall.Patch;
import underhook.core.fall.Runout;
import underhook.core.geo.PlanePoint;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

/**
 * Where a load would land that is let go anywhere along a leg.
 *
 * <p>Every ten metres the patch of ground that it may hit is laid over the map. Height and ground speed
 * follow the leg; near the places the machine is slower, by how it slows down as planned or, at the most, later.
 */
final class ReleaseStrip {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** A way that is not good enough is looked for so much further off, m. */
    private static final double FURTHER_M = 20;

    /**
     * A whole leg.
     *
     * @param runsM length over which a load would not come to rest by friction, m
     * @param runsTo ids of houses, people or closed zones that lie in its run then
     */
    record Strip(ReleaseLook look, double runsM, List<String> runsTo) {
        Strip {
            runsTo = List.copyOf(runsTo);
        }
    }

    private record Thing(Under under, PreparedGeometry shape) {}

    private final Patches patches;
    private final double finalM;
    private final STRtree things = new STRtree();
    private final STRtree keptOff = new STRtree();

    /**
     * For one map.
     *
     * @param finalM last part of a way in and first of a way out, in which the machine is slower, m
     */
    ReleaseStrip(Patches patches, List<Under> unders, double finalM) {
        this.patches = patches;
        this.finalM = finalM;
        for (Under under : unders) {
            Thing thing = new Thing(under, PreparedGeometryFactory.prepare(under.area()));
            things.insert(under.area().getEnvelopeInternal(), thing);
            if (under.keptOff()) {
                keptOff.insert(under.area().getEnvelopeInternal(), thing);
            }
        }
        things.build();
        keptOff.build();
    }

    private List<Station> stations(FlownLeg leg, Cargo cargo, LegWind wind) {
        return Station.along(
                leg, new Station.Pace(cargo.speedMPerS(), wind, finalM, cargo.slowsOverM()));
    }

    /** The strip of a leg; empty where part of it lies over unknown ground. */
    Optional<Strip> along(FlownLeg leg, List<Cargo> cargos, LegWind wind) {
        List<Stretch> stretches = new ArrayList<>();
        double farthestM = 0;
        double runsM = 0;
        TreeSet<String> runsTo = new TreeSet<>();
        List<Releases> releases = cargos.stream().map(one -> patches.of(one, wind)).toList();
        for (Station station : stations(leg, cargos.get(0), wind)) {
            List<Geometry> areas = new ArrayList<>();
            boolean runs = false;
            for (int i = 0; i < cargos.size(); i++) {
                Cargo cargo = cargos.get(i);
                Optional<Patches.Below> below = patches.below(station, cargo);
                if (below.isEmpty()) {
                    return Optional.empty();
                }
                Patch patch = releases.get(i).patch(station, below.get());
                farthestM = Math.max(farthestM, patch.reachM());
                runs |= Runout.runsAway(cargo.shape(), below.get().slope().slopeRad());
                areas.add(area(station, patch));
            }
            areas.forEach(area -> hit(keptOff, area).forEach(one -> runsTo.add(one.under().id())));
            runsM += runs ? station.toM() - station.fromM() : 0;
            add(stretches, look(station, areas));
        }
        return Optional.of(
                new Strip(
                        new ReleaseLook(
                                stretches,
                                longestS(stretches, List.of(Use.CLOSED, Use.GUARDED)),
                                longestS(stretches, List.of(Use.CLOSED, Use.GUARDED, Use.OPEN)),
                                Math.ceil(farthestM)),
                        runsM,
                        List.copyOf(runsTo)));
    }

    /**
     * What no load may hit but this one may, let go somewhere on the leg.
     *
     * @param keepM for each how far the track should keep off it, m: more than the ground that may be hit
     *     reaches to the side, and further off than now
     * @param unknownGround whether it is not known everywhere how far it falls
     * @param side towards which end that is
     * @param atEnds whether some is hit from the first or last part, which no other way avoids
     */
    record Reached(
            Map<String, Double> keepM, boolean unknownGround, ClearLegs.Side side, boolean atEnds) {
        Reached {
            // By id, so that every run tells them in the same order.
            keepM = Collections.unmodifiableMap(new TreeMap<>(keepM));
        }
    }

    /** What no load may hit but one of these may. */
    Reached reached(FlownLeg leg, List<Cargo> cargos, LegWind wind) {
        Search search = new Search(leg, wind);
        cargos.forEach(search::look);
        return new Reached(
                search.keepM,
                search.unknown,
                ClearLegs.Side.of(search.start, search.end),
                search.atEnds);
    }

    /** Mutable while it looks along one leg. */
    private final class Search {
        private final FlownLeg leg;
        private final LegWind wind;
        private final Map<String, Double> keepM = new TreeMap<>();
        private boolean unknown;
        private boolean start;
        private boolean end;
        private boolean atEnds;

        Search(FlownLeg leg, LegWind wind) {
            this.leg = leg;
            this.wind = wind;
        }

        void look(Cargo cargo) {
            Releases releases = patches.of(cargo, wind);
            for (Station station : stations(leg, cargo, wind)) {
                Optional<Patches.Below> below = patches.below(station, cargo);
                if (below.isEmpty()) {
                    unknown = true;
                    mark(station);
                } else if (!keptOff.isEmpty()) {
                    look(releases, station, below.get());
                }
            }
        }

        private void look(Releases releases, Station station, Patches.Below below) {
            Patch outer = releases.outer(station, below);
            if (hit(keptOff, area(station, outer)).isEmpty()) {
                return;
            }
            Patch patch = releases.heldPatch(station, below);
            double sideM = Math.max(patch.leftM(), patch.rightM());
            for (Thing thing : hit(keptOff, area(station, patch))) {
                double apartM = thing.under().area().distance(line(leg));
                keepM.merge(thing.under().id(), Math.max(sideM, apartM + FURTHER_M), Math::max);
                mark(station);
                atEnds |= station.toM() <= finalM || station.fromM() >= leg.distanceM() - finalM;
            }
        }

        private void mark(Station station) {
            boolean first = station.fromM() + station.toM() < leg.distanceM();
            start |= first;
            end |= !first;
        }
    }

    private static LineString line(FlownLeg leg) {
        Coordinate[] way =
                leg.points().stream()
                        .map(point -> new Coordinate(point.eastM(), point.northM()))
                        .toArray(Coordinate[]::new);
        return FACTORY.createLineString(way);
    }

    private static List<Thing> hit(STRtree index, Geometry area) {
        List<Thing> hit = new ArrayList<>();
        for (Object found : index.query(area.getEnvelopeInternal())) {
            Thing thing = (Thing) found;
            if (thing.shape().intersects(area)) {
                hit.add(thing);
            }
        }
        return hit;
    }

    /** The patch of every point of the station's piece. */
    private static Geometry area(Station station, Patch patch) {
        double halfM = (station.toM() - station.fromM()) / 2;
        Patch wide =
                new Patch(
                        patch.backM() - halfM,
                        patch.forwardM() + halfM,
                        patch.leftM(),
                        patch.rightM());
        List<PlanePoint> corners = wide.outline(station.under(), station.trackGridRad());
        Coordinate[] ring = new Coordinate[corners.size() + 1];
        for (int i = 0; i < ring.length; i++) {
            PlanePoint corner = corners.get(i % corners.size());
            ring[i] = new Coordinate(corner.eastM(), corner.northM());
        }
        return FACTORY.createPolygon(ring);
    }

    private Stretch look(Station station, List<Geometry> areas) {
        Use use = Use.OPEN;
        TreeSet<String> what = new TreeSet<>();
        for (Geometry area : areas) {
            for (Thing thing : hit(things, area)) {
                Use here = thing.under().use();
                if (here == Use.NAMED || here.compareTo(use) > 0) {
                    continue;
                }
                if (here.compareTo(use) < 0) {
                    what.clear();
                    use = here;
                }
                what.add(thing.under().id());
            }
        }
        if (use == Use.OPEN) {
            for (Thing thing : hit(things, areas.get(0))) {
                if (thing.under().use() == Use.NAMED && holdsAll(thing, areas)) {
                    what.add(thing.under().id());
                    use = Use.NAMED;
                }
            }
        }
        return new Stretch(
                use, station.fromM(), station.toM(), station.durationS(), List.copyOf(what));
    }

    private static boolean holdsAll(Thing thing, List<Geometry> areas) {
        return areas.stream().allMatch(area -> thing.shape().contains(area));
    }

    private static void add(List<Stretch> stretches, Stretch next) {
        int at = stretches.size() - 1;
        if (at >= 0
                && stretches.get(at).use() == next.use()
                && stretches.get(at).what().equals(next.what())) {
            Stretch last = stretches.get(at);
            double durationS = last.durationS() + next.durationS();
            stretches.set(
                    at, new Stretch(next.use(), last.fromM(), next.toM(), durationS, last.what()));
        } else {
            stretches.add(next);
        }
    }

    /** Longest time on end in one of these uses, s, rounded up to tenths. */
    private static double longestS(List<Stretch> stretches, List<Use> uses) {
        double longest = 0;
        double now = 0;
        for (Stretch stretch : stretches) {
            now = uses.contains(stretch.use()) ? now + stretch.durationS() : 0;
            longest = Math.max(longest, now);
        }
        return Math.ceil(longest * 10 - 1e-6) / 10;
    }
}
