package underhook.planner.route;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import underhook.core.geo.Ground;
import underhook.core.job.Job;
import underhook.core.job.ReleaseArea;
import underhook.core.plan.ReleaseLook;

/**
 * Finds legs on which what hangs there may be let go at any second without hurting anyone.
 *
 * <p>A way from which it could hit a house, people or a closed zone is found anew with these widened by
 * what is missing, a few times; then there is none. Nor is there one from which a load could fall on ground
 * that is not known.
 */
public final class ClearLegs {
    /** An area serves a leg from which it is reached within this time, s. @source PRACTICE */
    public static final double REACHED_IN_S = 10;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private static final int ROUNDS = 5;

    /** Widths are rounded up to this, so that few maps are made, m. */
    private static final double WIDTH_STEP_M = 25;

    private final Job job;
    private final Ground ground;
    private final LegFinder finder;
    private final BooleanSupplier stop;
    private final Patches patches;
    private final Memo<List<String>, ReleaseStrip> strips = Memo.of();

    /** What hangs there, each load by itself, and the wind on the way. */
    public record Carried(List<Cargo> cargos, LegWind wind) {
        public Carried {
            cargos = List.copyOf(cargos);
        }
    }

    /** Towards which end of a leg what speaks against it lies. */
    public enum Side {
        /** Nowhere in particular. */
        NEITHER,
        /** At the start: another way out may do. */
        START,
        /** At the end: another way in may do. */
        END,
        /** At both. */
        BOTH;

        static Side of(boolean start, boolean end) {
            return start ? end ? BOTH : START : end ? END : NEITHER;
        }

        /** Whether another way out may do. */
        public boolean isAtStart() {
            return this == START || this == BOTH;
        }

        /** Whether another way in may do. */
        public boolean isAtEnd() {
            return this == END || this == BOTH;
        }
    }

    /**
     * What was found.
     *
     * @param leg empty when there is none
     * @param inReach ids of what could be hit on the last way that was tried; empty when there is a leg
     *     or no way at all
     * @param unknownGround whether part of that way lies over ground that is not known, or a load could
     *     fall on such
     * @param side where that is
     */
    public record Found(
            Optional<FlownLeg> leg, List<String> inReach, boolean unknownGround, Side side) {
        public Found {
            inReach = List.copyOf(inReach);
        }

        static Found done(FlownLeg leg) {
            return new Found(Optional.of(leg), List.of(), false, Side.NEITHER);
        }

        static Found none(List<String> inReach, boolean unknownGround, Side side) {
            return new Found(Optional.empty(), inReach, unknownGround, side);
        }
    }

    /**
     * What letting go means on a leg.
     *
     * @param runsM length over which a load would not come to rest by friction, m
     * @param runsTo ids of houses, people or closed zones that lie in its run then
     * @param near agreed areas that are reached from somewhere on the leg within {@link #REACHED_IN_S}
     * @param candidates areas that would be, but are not agreed
     */
    public record Seen(
            ReleaseLook look,
            double runsM,
            List<String> runsTo,
            List<String> near,
            List<String> candidates) {
        public Seen {
            runsTo = List.copyOf(runsTo);
            near = List.copyOf(near);
            candidates = List.copyOf(candidates);
        }

        /** The same with another look. */
        public Seen withLook(ReleaseLook other) {
            return new Seen(other, runsM, runsTo, near, candidates);
        }
    }

    public ClearLegs(Job job, Ground ground, LegFinder finder) {
        this(job, ground, finder, () -> false);
    }

    /**
     * @param stop says true when no more may be looked for; what was asked then is not found
     */
    public ClearLegs(Job job, Ground ground, LegFinder finder, BooleanSupplier stop) {
        this.job = job;
        this.ground = ground;
        this.finder = finder;
        this.stop = stop;
        this.patches = new Patches(ground.terrain());
    }

    /** The leg, and why there is none. */
    public Found find(LegFinder.Request request, Carried carried) {
        Map<String, Double> keepM = new TreeMap<>();
        List<String> inReach = List.of();
        Side side = Side.NEITHER;
        for (int round = 0; round < ROUNDS && !stop.getAsBoolean(); round++) {
            Optional<FlownLeg> leg = finder.findLeg(request, keepM);
            if (leg.isEmpty()) {
                Optional<Side> unknown = finder.findUnknown(request, keepM);
                return Found.none(inReach, unknown.isPresent(), unknown.orElse(side));
            }
            ReleaseStrip.Reached reached =
                    strip(request.kinds()).reached(leg.get(), carried.cargos(), carried.wind());
            if (reached.unknownGround() && !request.kinds().isEmpty()) {
                return Found.none(inReach, true, reached.side());
            }
            if (reached.keepM().isEmpty()) {
                return Found.done(leg.get());
            }
            inReach = List.copyOf(reached.keepM().keySet());
            side = reached.side();
            if (reached.atEnds()) {
                // The first and last parts stay where they are, however wide anything is drawn.
                break;
            }
            reached.keepM().forEach((id, keep) -> keepM.merge(id, stepM(keep), Math::max));
        }
        return Found.none(inReach, false, side);
    }

    private static double stepM(double widthM) {
        return Math.ceil(widthM / WIDTH_STEP_M) * WIDTH_STEP_M;
    }

    private ReleaseStrip strip(List<String> kinds) {
        return strips.get(
                kinds,
                unused -> {
                    List<Under> unders = Under.of(job, ground, kinds);
                    return new ReleaseStrip(patches, unders, job.rules().flying().finalM());
                });
    }

    /** What letting go means on a leg; empty where part of it lies over unknown ground. */
    public Optional<Seen> look(FlownLeg leg, List<String> kinds, Carried carried) {
        return strip(kinds)
                .along(leg, carried.cargos(), carried.wind())
                .map(
                        found ->
                                new Seen(
                                        found.look(),
                                        found.runsM(),
                                        found.runsTo(),
                                        near(leg, carried, true),
                                        near(leg, carried, false)));
    }

    /** Areas that the machine reaches from somewhere on the leg within {@link #REACHED_IN_S}. */
    private List<String> near(FlownLeg leg, Carried carried, boolean agreed) {
        Coordinate[] way =
                leg.points().stream()
                        .map(point -> new Coordinate(point.eastM(), point.northM()))
                        .toArray(Coordinate[]::new);
        LineString line = FACTORY.createLineString(way);
        double withinM = carried.cargos().get(0).speedMPerS() * REACHED_IN_S;
        return job.releaseAreas().stream()
                .filter(area -> area.agreed() == agreed)
                .filter(area -> Under.area(area, ground).isWithinDistance(line, withinM))
                .map(ReleaseArea::id)
                .toList();
    }
}
