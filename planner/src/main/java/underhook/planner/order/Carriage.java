package underhook.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Handling.Flying;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.MassStatus;
import underhook.core.line.Approach;
import underhook.core.line.Arrival;
import underhook.core.line.HangingLine;
import underhook.core.line.SlowDownLimits;
import underhook.core.line.SlungLoad;
import underhook.core.line.Swing;
import underhook.core.line.SwingAir;
import underhook.core.load.EmptyLine;
import underhook.core.load.Remedy;
import underhook.core.load.SpeedLimit;
import underhook.core.load.SpeedLimit.Allowed;
import underhook.core.load.SpeedLimit.Hung;
import underhook.core.load.TailGeometry;
import underhook.core.load.Trail;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.unit.Units;
import underhook.planner.route.Memo;

/**
 * How fast a trip or an empty line is flown, and what it takes to come to rest over a place.
 *
 * <p>The densest air of the day counts everywhere, the lighter bound of a mass, and the period of swing
 * off by the rules' spread. What is once worked out is kept.
 */
final class Carriage {
    /** A box hung by its top swings like an even rod: two thirds of it count. @source DERIVED */
    private static final double ROD_RATIO = 2.0 / 3;

    /** Drag of a remote hook with its swivel, m². @source PRACTICE a body of 0.2 m by 0.3 m */
    private static final double HOOK_DRAG_AREA_M2 = 0.06;

    /** How many periods a load is watched after it arrived. */
    private static final int WATCHED_PERIODS = 3;

    /** A hand on the stick halves a swing in each period. @source PRACTICE */
    private static final double SWING_LEFT_RATIO = 0.5;

    /**
     * How something is flown on a line.
     *
     * @param speedMPerS true airspeed, m/s, whole knots, rounded down
     * @param limit what the line's shape allows, and what decides
     * @param allowed what it is held against
     * @param slowing how it comes to rest
     */
    record Carried(double speedMPerS, SpeedLimit limit, Allowed allowed, Leg.Slowing slowing) {
        /** What coming to rest adds to a leg, s. */
        long arrivalS() {
            return (long) Math.ceil(slowing.extraS(speedMPerS) - 1e-6);
        }
    }

    private final DayModel model;
    private final Flying flying;
    private final Memo<Trip, Memo<Integer, Held>> held = Memo.byIdentity();
    private final Memo<Trip, Memo<Integer, Carried>> known = Memo.byIdentity();
    private final Memo<Integer, Carried> knownEmpty = Memo.of();

    /** By what swings, as the same load is put on hooks many times. */
    private final Memo<Slung, Leg.Slowing> slowings = Memo.of();

    private final Memo<Mended, String> mended = Memo.of();
    private final double densestKgPerM3;

    /**
     * How fast something is flown, which is soon known; how it comes to rest takes longer to work out.
     *
     * @param slung what swings then
     */
    private record Held(double speedMPerS, SpeedLimit limit, Allowed allowed, SlungLoad slung) {}

    private record Slung(SlungLoad load, double speedMPerS) {}

    private record Mended(Load load, LoadKind kind) {}

    Carriage(DayModel model) {
        this.model = model;
        this.flying = model.rules.handling().flying();
        this.densestKgPerM3 = DayAir.densestKgPerM3(model, model.job.weather());
    }

    /** A trip on a line of the stock. */
    Carried of(Trip trip, int line) {
        return known.get(trip, unused -> Memo.of()).get(line, unused -> carried(held(trip, line)));
    }

    private Held held(Trip trip, int line) {
        return held.get(trip, unused -> Memo.of())
                .get(line, unused -> work(trip, model.machine.lines().get(line)));
    }

    /** A line of the stock without a load. */
    Carried ofEmpty(int line) {
        return knownEmpty.get(line, unused -> carried(workEmpty(model.machine.lines().get(line))));
    }

    /** Whether a trip is worth flying on a line. */
    boolean isWorthFlying(Trip trip, int line) {
        // What somebody decided to fly slower all the same is flown at its own speed.
        double leastMPerS = Math.min(model.rules.flying().leastSpeedMPerS(), trip.speedMPerS());
        return held(trip, line).speedMPerS() >= leastMPerS - 1e-9;
    }

    /** What a short sling lacks at its end to be flown back empty, kg; nothing hangs on it then. */
    double lackingBallastKg(int line) {
        LineItem item = model.machine.lines().get(line);
        return new EmptyLine(item.lengthM(), item.make().endMassKg(), false).lackingBallastKg();
    }

    /** The limits that flying sets, as they stand on the lift check. */
    List<Limit> limits(Trip trip, int line) {
        Carried carried = of(trip, line);
        List<Limit> all = new ArrayList<>();
        double trailRad =
                Math.max(ownTrailRad(trip, carried.speedMPerS()), carried.limit().trailRad());
        all.add(
                limit(
                        "TRAIL",
                        Math.ceil(Math.toDegrees(trailRad) * 10 - 1e-6) / 10,
                        Math.toDegrees(carried.allowed().trailRad()),
                        "deg"));
        double clearM = Math.floor(carried.limit().tailDistanceM() * 10) / 10;
        all.add(limit("TAIL_DISTANCE", flying.tailClearM(), clearM, "m"));
        return all;
    }

    /** Loads and lines that are flown slower than asked, and lines that are light at their end. */
    List<Finding> findings(Flights flights) {
        List<Finding> all = new ArrayList<>();
        TreeSet<Integer> lines = new TreeSet<>();
        for (DayState.Flown one : flights.flown()) {
            lines.add(one.line());
            Trip trip = flights.trip(one);
            double askedMPerS =
                    trip.kinds().stream().mapToDouble(LoadKind::speedMPerS).min().orElseThrow();
            Carried carried = of(trip, one.line());
            // With ballast the speed is told with it.
            if (trip.ballastKg() <= 0) {
                all.addAll(slower(trip.loads().get(0).id().value(), carried, askedMPerS));
            }
        }
        for (int line : lines) {
            LineItem item = model.machine.lines().get(line);
            String subject = "line " + item.name();
            all.addAll(slower(subject, ofEmpty(line), model.machine.emptyLineSpeedMPerS()));
            all.addAll(
                    new EmptyLine(item.lengthM(), item.make().endMassKg(), false)
                            .findings(subject));
        }
        return all;
    }

    private static List<Finding> slower(String subject, Carried carried, double askedMPerS) {
        double kt = Math.floor(Units.mPerSToKt(carried.speedMPerS()) + 1e-6);
        double askedKt = Math.floor(Units.mPerSToKt(askedMPerS) + 1e-6);
        if (kt >= askedKt) {
            return List.of();
        }
        String why =
                switch (carried.limit().governs()) {
                    case TAIL -> "beyond, line or load swings too near the tail";
                    case TRAIL -> "beyond, the line trails too far";
                    case AIRSPEED -> "beyond, the load trails too far or the line is not allowed";
                };
        return List.of(
                new Finding(
                        FindingCode.SPEED_LIMITED,
                        Severity.NOTE,
                        subject,
                        whole(kt),
                        whole(askedKt),
                        "kt",
                        "rules",
                        "Flown at "
                                + whole(kt)
                                + " kt instead of "
                                + whole(askedKt)
                                + ": "
                                + why
                                + "."));
    }

    private static Limit limit(String code, double valueRatio, double limitRatio, String unit) {
        double marginPercent =
                Math.floor((limitRatio - valueRatio) / limitRatio * 1000 + 1e-6) / 10;
        return new Limit(code, valueRatio, limitRatio, unit, marginPercent, "rules", false);
    }

    /** What would mend a load that trails too far, with its numbers, on the shortest line. */
    String mending(Load load, LoadKind kind) {
        return mended.get(new Mended(load, kind), unused -> mendingWords(load, kind));
    }

    private String mendingWords(Load load, LoadKind kind) {
        LineItem line = model.machine.lines().get(model.linesByLength().get(0));
        Allowed allowed = allowed(kind.trailLimitRad(), kind.speedMPerS());
        // The load's own trail under the remote hook decides, so the hook's mass is left out.
        Hung hung =
                new Hung(rope(line), lightKg(load), OnHook.dragAreaM2(load, kind), densestKgPerM3);
        List<String> words = new ArrayList<>();
        double asItIsKt = 0;
        for (Remedy remedy : Remedy.list(hung, allowed, kind.speedMPerS(), 0)) {
            double kt = Math.floor(Units.mPerSToKt(remedy.limit().speedMPerS()));
            switch (remedy.kind()) {
                case SLOWER -> {
                    asItIsKt = kt;
                    words.add("slower, at no more than " + whole(kt) + " kt");
                }
                case BALLAST -> words.add(whole(remedy.ballastKg()) + " kg of ballast under it");
                case BUNDLE -> words.add(remedy.pieces() + " of them in one bundle");
                case SHORTER_LINE -> {
                    // Light and large loads have come into the tail rotor from short slings.
                    if (kt > asItIsKt && remedy.lineLengthM() > EmptyLine.SHORT_SLING_M) {
                        words.add(
                                "a line of "
                                        + whole(remedy.lineLengthM())
                                        + " m: "
                                        + whole(kt)
                                        + " kt");
                    }
                }
                case DROGUE -> words.add("a drogue: " + whole(kt) + " kt");
            }
        }
        return String.join("; ", words) + ". A drogue stops it from turning, but trails farther";
    }

    private static String whole(double anyRatio) {
        return Figures.text(anyRatio, 0);
    }

    private Held work(Trip trip, LineItem line) {
        double loadKg = trip.ballastKg();
        double areaM2 = 0;
        double trailRad = Math.PI / 2 - 1e-3;
        for (int i = 0; i < trip.loads().size(); i++) {
            loadKg += lightKg(trip.loads().get(i));
            areaM2 += OnHook.dragAreaM2(trip.loads().get(i), trip.kinds().get(i));
            trailRad = Math.min(trailRad, trip.kinds().get(i).trailLimitRad());
        }
        Hung hung =
                new Hung(
                        rope(line),
                        loadKg + line.make().endMassKg(),
                        areaM2 + HOOK_DRAG_AREA_M2,
                        densestKgPerM3);
        double cap = line.make().airspeedMPerS().orElse(Double.POSITIVE_INFINITY);
        Allowed allowed = allowed(trailRad, Math.min(trip.speedMPerS(), cap));
        SlungLoad slung =
                new SlungLoad(
                        line.lengthM() + ROD_RATIO * trip.underM(),
                        loadKg,
                        areaM2,
                        line.ropeMassKg(),
                        hung.line().dragAreaM2());
        return held(hung, allowed, slung);
    }

    /** Each load hangs in its own sling: the one that trails farthest counts, not all as one body. */
    private double ownTrailRad(Trip trip, double speedMPerS) {
        double trailRad = 0;
        for (int i = 0; i < trip.loads().size(); i++) {
            Load load = trip.loads().get(i);
            double massKg = lightKg(load) + trip.ballastKg();
            double areaM2 = OnHook.dragAreaM2(load, trip.kinds().get(i));
            Trail trail = Trail.of(massKg, areaM2, speedMPerS, densestKgPerM3);
            trailRad = Math.max(trailRad, trail.trailAngleRad());
        }
        return trailRad;
    }

    private Held workEmpty(LineItem line) {
        Hung hung =
                new Hung(rope(line), line.make().endMassKg(), HOOK_DRAG_AREA_M2, densestKgPerM3);
        double cap = line.make().airspeedMPerS().orElse(Double.POSITIVE_INFINITY);
        Allowed allowed =
                allowed(flying.emptyTrailRad(), Math.min(model.machine.emptyLineSpeedMPerS(), cap));
        SlungLoad slung =
                new SlungLoad(
                        line.lengthM(),
                        line.make().endMassKg(),
                        HOOK_DRAG_AREA_M2,
                        line.ropeMassKg(),
                        hung.line().dragAreaM2());
        return held(hung, allowed, slung);
    }

    private static Held held(Hung hung, Allowed allowed, SlungLoad slung) {
        SpeedLimit limit = SpeedLimit.of(hung, allowed);
        double wholeKt = Math.floor(Units.mPerSToKt(limit.speedMPerS()) + 1e-6);
        double speedMPerS = Math.min(Units.ktToMPerS(wholeKt), allowed.airspeedMPerS());
        if (speedMPerS <= 0) {
            return new Held(0, limit, allowed, slung);
        }
        SpeedLimit flown =
                SpeedLimit.of(
                        hung,
                        new Allowed(
                                allowed.trailRad(),
                                speedMPerS,
                                allowed.swingRad(),
                                allowed.tail()));
        return new Held(
                speedMPerS,
                new SpeedLimit(
                        speedMPerS, limit.governs(), flown.trailRad(), flown.tailDistanceM()),
                allowed,
                slung);
    }

    private Carried carried(Held held) {
        double speedMPerS = held.speedMPerS();
        return new Carried(
                speedMPerS,
                held.limit(),
                held.allowed(),
                speedMPerS > 0
                        ? slowings.get(new Slung(held.slung(), speedMPerS), this::slowing)
                        : new Leg.Slowing(0, 0, 0, 0));
    }

    /** The way to slow down that is soonest still, with the period off either way. */
    private Leg.Slowing slowing(Slung what) {
        SlungLoad slung = what.load();
        SlowDownLimits limits =
                new SlowDownLimits(
                        flying.slowingMPerS2(), flying.noseUpRad(), flying.periodSpreadFraction());
        Swing.Watch watch = new Swing.Watch(WATCHED_PERIODS * slung.periodS(), flying.stillM());
        // Over the ground it may be faster by the tailwind that the rules allow on the way in.
        double groundMPerS = what.speedMPerS() + model.rules.flying().tailwindMPerS();
        return new Approach(slung, SwingAir.still(densestKgPerM3), limits, watch)
                .compare(groundMPerS).stream()
                        .map(arrival -> slowing(arrival, slung))
                        .min(Comparator.comparingDouble(one -> one.extraS(groundMPerS)))
                        .orElseThrow();
    }

    private Leg.Slowing slowing(Arrival arrival, SlungLoad slung) {
        double swingM = Math.min(arrival.worstResidualM(), slung.lengthM());
        double halvings =
                swingM <= flying.stillM()
                        ? 0
                        : Math.ceil(
                                Math.log(flying.stillM() / swingM) / Math.log(SWING_LEFT_RATIO));
        return new Leg.Slowing(
                Math.ceil(arrival.beginM() / 10) * 10,
                Math.ceil(arrival.lastsS()),
                Math.ceil(halvings * slung.periodS()),
                Math.ceil(swingM * 10) / 10);
    }

    private Allowed allowed(double trailRad, double airspeedMPerS) {
        return new Allowed(
                trailRad,
                airspeedMPerS,
                flying.swingRad(),
                new TailGeometry(
                        model.machine.tailReachM(),
                        model.machine.body().rotorAboveHookM(),
                        flying.tailClearM()));
    }

    private static HangingLine rope(LineItem line) {
        return new HangingLine(line.lengthM(), line.ropeMassKg(), line.make().diameterM());
    }

    /** For how it flies the lighter value of an uncertain mass counts. */
    private double lightKg(Load load) {
        double factor =
                load.massStatus() == MassStatus.ESTIMATED
                        ? model.rules.masses().estimatedMassFactor()
                        : 1;
        return load.massKg().orElseThrow() / factor;
    }
}
