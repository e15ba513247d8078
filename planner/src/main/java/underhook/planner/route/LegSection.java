package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.WeatherHour;
import underhook.core.job.Wire;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.ReleaseLook;
import underhook.core.wire.Curtain;
import underhook.core.wire.Tube;

/** A planned leg seen from the side: what lies under it, and what hangs across it. */
public final class LegSection {
    private static final double STEP_M = 10;
    private static final int MOST_POINTS = 800;
    private static final HeightProfile.Need NO_TREES = new HeightProfile.Need(0, 0, 1, 1, 0);

    private final Job job;
    private final Ground ground;
    private final HeightProfile profile;
    private final HeightProfile bare;
    private final HeightProfile.Need trees;

    /**
     * A point of the leg.
     *
     * @param alongM distance from its start, m
     * @param groundAmslM ground right under it, m AMSL; empty where it is not known
     * @param treesAmslM highest tree tops near it, m AMSL; empty where there are none
     * @param floorAmslM what must be kept clear of: the highest of ground and trees near it, m AMSL; empty
     *     where the ground is not known
     * @param hookAmslM altitude of the hook under the belly, m AMSL
     * @param lowestAmslM altitude of the lowest end of line or load, m AMSL
     */
    public record Point(
            double alongM,
            OptionalDouble groundAmslM,
            OptionalDouble treesAmslM,
            OptionalDouble floorAmslM,
            double hookAmslM,
            double lowestAmslM) {}

    /**
     * A wire that hangs across.
     *
     * @param topAmslM highest it can be there, m AMSL; all below counts as wire
     * @param groundAmslM ground there, m AMSL; empty where it is not known
     */
    public record Across(
            String wire,
            double alongM,
            double topAmslM,
            OptionalDouble groundAmslM,
            boolean assumed) {}

    /**
     * What is seen.
     *
     * @param leastAtM where the least gap to ground or trees is, m from the start; empty when the leg is
     *     too short to have one
     */
    public record Seen(List<Point> points, List<Across> wires, OptionalDouble leastAtM) {
        public Seen {
            points = List.copyOf(points);
            wires = List.copyOf(wires);
        }
    }

    public LegSection(Job job, Ground ground) {
        this.job = job;
        this.ground = ground;
        double stripM = job.rules().distances().stripHalfWidthM();
        this.profile = new HeightProfile(ground, List.of(), stripM);
        this.trees = new HeightProfile.Need(0, 0, 1, 1, job.rules().distances().canopyLegM());
        this.bare =
                new HeightProfile(
                        new Ground(ground.frame(), ground.terrain(), Optional.empty(), 0),
                        List.of(),
                        stripM);
    }

    /**
     * Looks at a leg.
     *
     * @param underHookM from the hook to the lowest end of line or load, m
     */
    public Seen look(Leg leg, double underHookM) {
        List<Curtain.Flown> pieces = pieces(leg);
        double wholeM = pieces.stream().mapToDouble(LegSection::lengthM).sum();
        List<Point> points = points(pieces, wholeM, underHookM);
        return new Seen(points, across(pieces), leastAtM(points, wholeM));
    }

    private List<Curtain.Flown> pieces(Leg leg) {
        List<Curtain.Flown> pieces = new ArrayList<>();
        List<PathPoint> path = leg.path();
        for (int i = 0; i + 1 < path.size(); i++) {
            pieces.add(
                    new Curtain.Flown(
                            ground.frame().toPlane(path.get(i).position()),
                            ground.frame().toPlane(path.get(i + 1).position()),
                            path.get(i).hookAltitudeAmslM(),
                            path.get(i + 1).hookAltitudeAmslM()));
        }
        return pieces;
    }

    private static double lengthM(Curtain.Flown piece) {
        return piece.from().distanceToM(piece.to());
    }

    private List<Point> points(List<Curtain.Flown> pieces, double wholeM, double underHookM) {
        double stepM = Math.max(STEP_M, wholeM / MOST_POINTS);
        List<Point> points = new ArrayList<>();
        double doneM = 0;
        for (Curtain.Flown piece : pieces) {
            double lengthM = lengthM(piece);
            int parts = Math.max(1, (int) Math.ceil(lengthM / stepM));
            for (int k = points.isEmpty() ? 0 : 1; k <= parts; k++) {
                double share = (double) k / parts;
                double alongM = doneM + share * lengthM;
                Along along = new Along(alongM, Math.min(alongM, wholeM - alongM));
                points.add(point(piece.at(share), along, piece.hookAmslM(share), underHookM));
            }
            doneM += lengthM;
        }
        return points;
    }

    /** How far a point is from the start of a leg, and from its nearer end, m. */
    private record Along(double startM, double toEndM) {}

    private Point point(PlanePoint at, Along along, double hookAmslM, double underHookM) {
        double floorAmslM = profile.floorAmslM(at, trees, along.toEndM());
        boolean isKnown = Double.isFinite(floorAmslM);
        boolean hasTrees = isKnown && floorAmslM > bare.floorAmslM(at, NO_TREES, along.toEndM());
        return new Point(
                along.startM(),
                groundAmslM(at),
                hasTrees ? OptionalDouble.of(floorAmslM) : OptionalDouble.empty(),
                isKnown ? OptionalDouble.of(floorAmslM) : OptionalDouble.empty(),
                hookAmslM,
                hookAmslM - underHookM);
    }

    private OptionalDouble groundAmslM(PlanePoint at) {
        HeightField terrain = ground.terrain();
        return terrain.covers(at.eastM(), at.northM())
                ? OptionalDouble.of(terrain.heightM(at.eastM(), at.northM()))
                : OptionalDouble.empty();
    }

    /** Near its ends a leg comes down to its places; only between them the gap counts. */
    private OptionalDouble leastAtM(List<Point> points, double wholeM) {
        double leastM = Double.POSITIVE_INFINITY;
        double atM = -1;
        for (Point point : points) {
            boolean between =
                    point.alongM() > ReleaseLook.END_M
                            && point.alongM() < wholeM - ReleaseLook.END_M;
            double gapM = point.lowestAmslM() - point.floorAmslM().orElse(Double.NEGATIVE_INFINITY);
            if (between && gapM < leastM) {
                leastM = gapM;
                atM = point.alongM();
            }
        }
        return atM >= 0 ? OptionalDouble.of(atM) : OptionalDouble.empty();
    }

    private List<Across> across(List<Curtain.Flown> pieces) {
        List<Across> all = new ArrayList<>();
        for (Wire wire : job.wires()) {
            if (isNear(wire, pieces)) {
                Tube tube = Tube.of(wire, ground, strongestMPerS());
                all.addAll(across(wire, tube, pieces));
            }
        }
        return all;
    }

    private boolean isNear(Wire wire, List<Curtain.Flown> pieces) {
        List<PlanePoint> supports = wire.supports().stream().map(ground.frame()::toPlane).toList();
        for (Curtain.Flown piece : pieces) {
            for (int i = 0; i + 1 < supports.size(); i++) {
                if (Plane.crossingFraction(
                                piece.from(), piece.to(), supports.get(i), supports.get(i + 1))
                        >= 0) {
                    return true;
                }
            }
        }
        return false;
    }

    private List<Across> across(Wire wire, Tube tube, List<Curtain.Flown> pieces) {
        List<Across> all = new ArrayList<>();
        double doneM = 0;
        for (Curtain.Flown piece : pieces) {
            for (Curtain curtain : tube.spans().stream().flatMap(List::stream).toList()) {
                double t =
                        Plane.crossingFraction(piece.from(), piece.to(), curtain.a(), curtain.b());
                if (t >= 0) {
                    all.add(
                            new Across(
                                    wire.id(),
                                    doneM + t * lengthM(piece),
                                    curtain.topAmslM(),
                                    groundAmslM(piece.at(t)),
                                    tube.isAssumed()));
                }
            }
            doneM += lengthM(piece);
        }
        return all;
    }

    private double strongestMPerS() {
        double gustMPerS =
                job.weather().hours().stream().mapToDouble(WeatherHour::gustMPerS).max().orElse(0);
        double exposure = job.places().stream().mapToDouble(Place::exposureFactor).max().orElse(1);
        return gustMPerS * exposure;
    }
}
