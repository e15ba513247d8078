package underhook.planner.verify;

import java.util.ArrayList;
import java.util.List;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.job.Zone;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;

/** What a leg passes: ground, trees, zones, houses, masts, roads. */
final class WayCheck {
    /** Distance between samples along a path, in space, m. */
    private static final double SAMPLE_M = 1.0;

    /** Distance between samples to both sides of a path and along it, m. */
    private static final double BESIDE_M = 5.0;

    /** A path may be drawn through heights so far apart: between two of them both need not know the strip's very edge, m. */
    private static final double DRAWN_M = 10.0;

    /** Near a place so much to both sides is cleared at the least, m, for there the room at the place counts. */
    private static final double NARROW_M = 12.0;

    /** So near a place that is, and as much more as heights may be apart, m. */
    private static final double NARROW_ROUND_M = 60.0 + DRAWN_M;

    /** Round its ends a leg goes to the ground at least this far out, m. @source PRACTICE */
    private static final double END_ZONE_M = 30.0;

    /** A mast higher than this may be guyed, m, with anchors so far out over its height. @source PRACTICE */
    private static final double GUYED_M = 30;

    private static final double GUYS_OUT_FRACTION = 0.8;

    private final Day day;
    private final Rules rules;
    private final CrossingCheck crossings;
    private final List<Charted> features = new ArrayList<>();

    /** A feature in the plane, in a box round all that must keep off it. */
    private record Charted(MapFeature feature, Shape shape, Box box) {}

    /** A point of a path between its stated points. */
    private record Sample(PlanePoint at, double hookAmslM) {}

    WayCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
        this.crossings = new CrossingCheck(day);
        for (MapFeature feature : day.job().features()) {
            Shape shape = day.shapeOf(feature);
            // A metre more than needed, so that what is left out is surely clear.
            double nearM = keepM(feature) + 1;
            features.add(new Charted(feature, shape, Box.round(shape.outline()).widened(nearM)));
        }
    }

    void run() {
        for (Flight flight : day.listFlights()) {
            day.prove(Proofs.Asked.of(WayCheck.class, day.haul(flight)), () -> check(flight));
        }
    }

    private void check(Flight flight) {
        List<Sample> samples = sample(flight);
        boolean known =
                day.ledger()
                        .demand(
                                samples.stream().allMatch(s -> day.isKnown(s.at())),
                                FindingCode.OUTSIDE_TERRAIN,
                                flight.subject(),
                                () -> Told.of("terrain", "The leg leaves the known ground."));
        crossings.check(flight);
        if (known) {
            checkGround(flight, samples);
            checkZones(flight, samples);
            checkFeatures(flight);
        }
    }

    private static List<Sample> sample(Flight flight) {
        List<Sample> samples = new ArrayList<>();
        List<PathPoint> path = flight.leg().path();
        for (int i = 1; i < path.size(); i++) {
            PlanePoint a = flight.track().get(i - 1);
            PlanePoint b = flight.track().get(i);
            double from = path.get(i - 1).hookAltitudeAmslM();
            double rise = path.get(i).hookAltitudeAmslM() - from;
            double apart = Math.hypot(Plane.apartM(a, b), rise);
            int pieces = Math.max(1, (int) Math.ceil(apart / SAMPLE_M));
            for (int j = i == 1 ? 0 : 1; j <= pieces; j++) {
                double share = (double) j / pieces;
                samples.add(new Sample(Plane.between(a, b, share), from + share * rise));
            }
        }
        return samples;
    }

    /** An end of a leg: within so far of it the leg is near its end, and so far there are no trees. */
    private record End(PlanePoint place, double nearM, double clearingM, double bareM) {
        boolean isNarrow(PlanePoint at) {
            return Plane.apartM(at, place) <= NARROW_ROUND_M;
        }

        boolean isNear(PlanePoint at) {
            return Plane.apartM(at, place) <= nearM;
        }

        /** Where the job's assumption for legs says nothing: the place is stated to be clear of trees. */
        boolean isCleared(PlanePoint at) {
            return isNear(at) && Plane.apartM(at, place) <= clearingM;
        }

        /** Where somebody looked at the trees round the place, who is believed rather than a raster. */
        boolean isBare(PlanePoint at) {
            return isNear(at) && Plane.apartM(at, place) <= bareM;
        }
    }

    private End end(PlaceId id) {
        Place place = day.job().getPlace(id);
        double clearing = place.clearingRadiusM();
        // Open ground has no edge; the load goes down on the final all the same.
        double near =
                Math.min(
                        Math.max(clearing, END_ZONE_M),
                        Math.max(END_ZONE_M, rules.flying().finalM()));
        double seen = place.canopyM().isPresent() ? clearing : -1;
        double bare = day.isSeenBare(place) ? Math.max(seen, day.standingReachM()) : seen;
        return new End(day.planeOf(id), near, clearing, bare);
    }

    private double treesM(PlanePoint at, End from, End to) {
        boolean cleared = from.isCleared(at) || to.isCleared(at);
        return cleared ? day.rasterCanopyM(at) : day.canopyM(at);
    }

    private void checkGround(Flight flight, List<Sample> samples) {
        Leg leg = flight.leg();
        double below = flight.step().lineLengthM() + flight.hangingM(day);
        double least = Double.POSITIVE_INFINITY;
        double rotor = Double.POSITIVE_INFINITY;
        End from = end(leg.from());
        End to = end(leg.to());
        // With the line off the machine comes down to the ground.
        boolean lands = flight.step().lineLengthM() <= Tolerance.LENGTH_M;
        for (Sample sample : samples) {
            boolean bare = lands && (from.isBare(sample.at()) || to.isBare(sample.at()));
            double top = day.groundAmslM(sample.at()) + (bare ? 0 : treesM(sample.at(), from, to));
            if (from.isNear(sample.at()) || to.isNear(sample.at())) {
                rotor = Math.min(rotor, sample.hookAmslM() - top);
            } else {
                least = Math.min(least, sample.hookAmslM() - below - top);
            }
        }
        double clear = Math.min(least, leastBesideM(flight, from, to));
        double rotorClear = rotor;
        day.ledger()
                .demand(
                        clear >= rules.distances().clearanceM() - Tolerance.LENGTH_M,
                        FindingCode.LEG_CLEARANCE,
                        flight.subject(),
                        () ->
                                Told.of("rules", "Load or line come too near to ground or trees.")
                                        .figures(clear, rules.distances().clearanceM(), "m"));
        double needs = lands ? 0 : rules.distances().rotorClearanceM();
        day.ledger()
                .demand(
                        rotorClear >= needs - Tolerance.CLEARANCE_M,
                        FindingCode.LEG_CLEARANCE,
                        flight.subject(),
                        () ->
                                Told.of(
                                                "rules",
                                                "The rotor comes too near to ground or trees at an end.")
                                        .figures(rotorClear, needs, "m"));
        day.ledger()
                .demand(
                        leg.leastClearanceM() <= clear + Tolerance.CLEARANCE_M,
                        FindingCode.LEG_CLEARANCE,
                        flight.subject(),
                        () ->
                                Told.of("plan", "The least clearance is stated too large.")
                                        .figures(leg.leastClearanceM(), clear, "m"));
    }

    /** The least height of what hangs lowest above ground and trees beside the path, m. */
    private double leastBesideM(Flight flight, End from, End to) {
        double below = flight.step().lineLengthM() + flight.hangingM(day);
        double least = Double.POSITIVE_INFINITY;
        List<PathPoint> path = flight.leg().path();
        for (int i = 1; i < path.size(); i++) {
            PlanePoint a = flight.track().get(i - 1);
            PlanePoint b = flight.track().get(i);
            double lowest = path.get(i - 1).hookAltitudeAmslM() - below;
            double rise = path.get(i).hookAltitudeAmslM() - path.get(i - 1).hookAltitudeAmslM();
            double rightRad = Plane.bearingGridRad(a, b) + Math.PI / 2;
            int pieces = (int) Math.ceil(Plane.apartM(a, b) / BESIDE_M);
            for (int j = 0; j <= pieces && pieces > 0; j++) {
                double share = (double) j / pieces;
                PlanePoint at = Plane.between(a, b, share);
                if (!from.isNear(at) && !to.isNear(at)) {
                    boolean narrow = from.isNarrow(at) || to.isNarrow(at);
                    double top = highestBesideAmslM(at, rightRad, narrow, new End[] {from, to});
                    least = Math.min(least, lowest + share * rise - top);
                }
            }
        }
        return least;
    }

    /** The highest of ground and trees across a path, as far as both are known, m AMSL. */
    private double highestBesideAmslM(PlanePoint at, double rightRad, boolean narrow, End[] ends) {
        double half = Math.max(NARROW_M, narrow ? 0 : rules.distances().stripHalfWidthM());
        double out = Math.sqrt(half * half - DRAWN_M * DRAWN_M);
        int steps = (int) Math.ceil(out / BESIDE_M);
        double highest = Double.NEGATIVE_INFINITY;
        for (int k = -steps; k <= steps; k++) {
            PlanePoint p = Plane.along(at, rightRad, out * k / steps);
            if (k != 0 && day.isKnown(p)) {
                highest = Math.max(highest, day.groundAmslM(p) + treesM(p, ends[0], ends[1]));
            }
        }
        return highest;
    }

    private void checkZones(Flight flight, List<Sample> samples) {
        for (Zone zone : day.job().zones()) {
            if (!Ways.applies(day, zone, flight)) {
                continue;
            }
            Shape shape = day.shapeOf(zone);
            if (zone.rule() == Zone.Rule.NO_OVERFLIGHT) {
                keepOff(flight, shape, rules.distances().stripHalfWidthM(), zone.id());
            }
            if (zone.rule() == Zone.Rule.MIN_HEIGHT) {
                double least = Double.POSITIVE_INFINITY;
                for (Sample sample : samples) {
                    if (shape.covers(sample.at())) {
                        double end = sample.hookAmslM() - flight.step().lineLengthM();
                        least = Math.min(least, end - day.groundAmslM(sample.at()));
                    }
                }
                double height = least;
                day.ledger()
                        .demand(
                                height >= zone.minAglM() - Tolerance.LENGTH_M,
                                FindingCode.LEG_IN_ZONE,
                                flight.subject(),
                                () ->
                                        Told.of(
                                                        zone.source(),
                                                        "The leg is too low over zone "
                                                                + zone.id()
                                                                + ".")
                                                .figures(height, zone.minAglM(), "m"));
            }
        }
    }

    private void keepOff(Flight flight, Shape shape, double bufferM, String id) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < flight.track().size(); i++) {
            Plane.Stretch piece =
                    new Plane.Stretch(flight.track().get(i - 1), flight.track().get(i));
            least = Math.min(least, shape.distanceM(piece));
        }
        double apart = least;
        day.ledger()
                .demand(
                        apart >= bufferM - Tolerance.PLAN_M && (bufferM > 0 || apart > 0),
                        FindingCode.LEG_IN_ZONE,
                        flight.subject(),
                        () ->
                                Told.of("rules", "The leg comes too near to " + id + ".")
                                        .figures(apart, bufferM, "m"));
    }

    private void checkFeatures(Flight flight) {
        Box flown = Box.round(flight.track());
        for (Charted charted : features) {
            MapFeature feature = charted.feature();
            Shape shape = charted.shape();
            boolean mast = feature.kind() == MapFeature.Kind.MAST;
            if (charted.box().misses(flown)) {
                boolean asked = mast || !flight.loads().isEmpty();
                if (feature.crossing() == CrossingRule.NEVER && asked) {
                    day.ledger().pass();
                }
            } else if (feature.crossing() == CrossingRule.NEVER && mast) {
                // A machine without a load hits it too.
                keepOff(flight, shape, keepM(feature), feature.id());
            } else if (feature.crossing() == CrossingRule.NEVER) {
                // The rule is about what may fall: it holds while a load hangs there.
                if (!flight.loads().isEmpty()) {
                    keepOff(flight, shape, feature.bufferM(), feature.id());
                }
            }
        }
    }

    /** How far a track keeps off what may not be crossed. */
    double keepM(MapFeature feature) {
        return feature.kind() == MapFeature.Kind.MAST
                ? Math.max(feature.bufferM(), mastM(feature))
                : feature.bufferM();
    }

    /** Strip and clearance add up beside something that stands up; a tall mast may have guys. */
    private double mastM(MapFeature mast) {
        double height = mast.heightM().orElse(0);
        double guys = height > GUYED_M ? GUYS_OUT_FRACTION * height : 0;
        return rules.distances().stripHalfWidthM() + rules.distances().clearanceM() + guys;
    }
}
