package underhook.planner.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Handling.Guying;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.Place;
import underhook.core.job.WindLimit;
import underhook.core.plan.PoleSetting;
import underhook.core.pole.Guys;
import underhook.core.pole.StandingPole;
import underhook.core.pole.StandingPole.Guy;
import underhook.core.pole.StandingPole.Lean;
import underhook.core.pole.StandingPole.Pulls;
import underhook.core.pole.StandingPole.Push;
import underhook.core.unit.Units;

/**
 * What each guy of each placed pole must hold while it is set, and what the machine gives meanwhile.
 *
 * <p>Anchors lie as far out as the guys are attached high, at the height of the ground there. The pulls are
 * for the strongest gust in which such a pole may be set, from any side, and the lean of the rules. They are
 * worked out once for each pole. Not safe for threads.
 */
final class Poles {
    /** Directions from which wind and lean are tried, whole degrees apart. */
    private static final int STEP_DEG = 5;

    /** Leans that hands are tried against, up to this, rad. */
    private static final double MOST_LEAN_RAD = Math.toRadians(30);

    private static final int HALVINGS = 20;

    private final DayModel model;
    private final Guying guying;
    private final IdentityHashMap<Load, Optional<Held>> held;

    /** A pole with what its guys hold; that hangs on no hour. */
    private record Held(StandingPole pole, List<PoleSetting.GuyPull> guys, double handLeanRad) {}

    Poles(DayModel model) {
        this(model, new IdentityHashMap<>());
    }

    private Poles(DayModel model, IdentityHashMap<Load, Optional<Held>> held) {
        this.model = model;
        this.guying = model.rules.handling().guying();
        this.held = held;
    }

    /** The same with other hours or masses. */
    Poles in(DayModel other) {
        return new Poles(other, held);
    }

    /** Where a pole balances, from the butt over its length. */
    static double centreFraction(Guying guying, Load load) {
        return PoleMasses.isWood(load) ? guying.woodCentreFraction() : guying.otherCentreFraction();
    }

    /** Every placed pole whose guys are planned, in the order of the day. */
    List<PoleSetting> list(Flights flights) {
        List<PoleSetting> all = new ArrayList<>();
        for (DayState.Flown one : flights.flown()) {
            Trip trip = flights.trip(one);
            for (int i = 0; i < trip.loads().size(); i++) {
                Place place = model.places.get(trip.to());
                if (trip.kinds().get(i).standsUp() && !place.guyAzimuthsTrueRad().isEmpty()) {
                    set(one, trip, i).ifPresent(all::add);
                }
            }
        }
        return all;
    }

    /** Why the guys at a place do not hold its pole; empty when they do or none are planned. */
    Optional<Finding> findStop(Load load, LoadKind kind) {
        Place place = model.job.getPlace(load.to());
        StandingPole pole = standing(load, kind, place);
        Optional<List<Double>> worst = worst(pole, guying.leanRad(), gustPressurePa(kind));
        if (worst.isEmpty()) {
            return Optional.of(
                    Finding.of(
                            FindingCode.GUY_PULL,
                            Severity.STOP,
                            load.id().value(),
                            "DERIVED",
                            "With its anchors on the slope the guys at "
                                    + place.id()
                                    + " do not hold the pole at the lean of the rules."));
        }
        double hardestN = Collections.max(worst.get());
        if (hardestN <= guying.anchorHoldN()) {
            return Optional.empty();
        }
        return Optional.of(
                new Finding(
                        FindingCode.GUY_PULL,
                        Severity.STOP,
                        load.id().value(),
                        newtons(hardestN),
                        newtons(Math.floor(guying.anchorHoldN())),
                        "N",
                        "rules",
                        "A guy at "
                                + place.id()
                                + " pulls "
                                + newtons(hardestN)
                                + " N; its anchor holds "
                                + newtons(Math.floor(guying.anchorHoldN()))
                                + " N."));
    }

    /** What people must know of the poles of a plan; the hardest guy is told for all. */
    List<Finding> findings(List<PoleSetting> poles) {
        List<Finding> all = new ArrayList<>();
        List<PoleSetting> hard =
                poles.stream().filter(pole -> hardestN(pole) > guying.handPullN()).toList();
        hard.stream()
                .max(Comparator.comparingDouble(Poles::hardestN))
                .ifPresent(pole -> all.add(belay(pole, hard.size())));
        for (PoleSetting pole : poles) {
            if (pole.spareKg() < pole.hoverFuelKg()) {
                all.add(
                        new Finding(
                                FindingCode.POLE_HOVER,
                                Severity.CAUTION,
                                pole.load().value(),
                                Figures.text(pole.spareKg(), 0),
                                Figures.text(pole.hoverFuelKg(), 0),
                                "kg",
                                "machine",
                                "The hover over "
                                        + pole.place()
                                        + " begins with "
                                        + Figures.text(pole.spareKg(), 0)
                                        + " kg to spare and burns "
                                        + Figures.text(pole.hoverFuelKg(), 0)
                                        + " kg."));
            }
        }
        return all;
    }

    private static double hardestN(PoleSetting pole) {
        return pole.guys().stream().mapToDouble(PoleSetting.GuyPull::worstN).max().orElseThrow();
    }

    private Finding belay(PoleSetting pole, int poles) {
        return new Finding(
                FindingCode.GUY_PULL,
                Severity.CAUTION,
                pole.load().value(),
                newtons(hardestN(pole)),
                newtons(guying.handPullN()),
                "N",
                "rules",
                "A guy at "
                        + pole.place()
                        + " may pull "
                        + newtons(hardestN(pole))
                        + " N in a gust of "
                        + Figures.text(Units.mPerSToKt(pole.gustMPerS()), 0)
                        + " kt with a lean of "
                        + Figures.text(Math.toDegrees(pole.leanRad()), 0)
                        + "°; one person holds "
                        + newtons(guying.handPullN())
                        + " N. Belay it on its anchor, or keep the machine loaded. So at "
                        + (poles == 1 ? "this pole" : poles + " poles; this is the hardest")
                        + ".");
    }

    private Optional<Held> held(Load load, LoadKind kind, Place place) {
        return held.computeIfAbsent(load, unused -> hold(load, kind, place));
    }

    private Optional<Held> hold(Load load, LoadKind kind, Place place) {
        StandingPole pole = standing(load, kind, place);
        double pressurePa = gustPressurePa(kind);
        Optional<List<Double>> wind = worst(pole, 0, pressurePa);
        Optional<List<Double>> lean = worst(pole, guying.leanRad(), 0);
        Optional<List<Double>> both = worst(pole, guying.leanRad(), pressurePa);
        if (wind.isEmpty() || lean.isEmpty() || both.isEmpty()) {
            return Optional.empty();
        }
        List<PoleSetting.GuyPull> guys = new ArrayList<>();
        for (int i = 0; i < pole.guys().size(); i++) {
            Guy guy = pole.guys().get(i);
            double worstN = Math.ceil(both.get().get(i) - 1e-6);
            guys.add(
                    new PoleSetting.GuyPull(
                            guy.azimuthTrueRad(),
                            guy.anchorDistanceM(),
                            guy.anchorAboveButtM(),
                            Math.ceil(wind.get().get(i) - 1e-6),
                            Math.ceil(lean.get().get(i) - 1e-6),
                            worstN,
                            Math.ceil(worstN / guying.anchorHoldN() * 1000) / 1000,
                            worstN <= guying.handPullN()));
        }
        return Optional.of(new Held(pole, guys, handLeanRad(pole)));
    }

    private Optional<PoleSetting> set(DayState.Flown one, Trip trip, int index) {
        Load load = trip.loads().get(index);
        LoadKind kind = trip.kinds().get(index);
        Place place = model.places.get(trip.to());
        return held(load, kind, place).map(known -> set(one, trip, load, known));
    }

    private PoleSetting set(DayState.Flown one, Trip trip, Load load, Held known) {
        LoadKind kind = model.job.getKind(load.kind());
        Place place = model.places.get(trip.to());
        StandingPole pole = known.pole();
        LineItem line = model.machine.lines().get(one.line());
        double burnKgPerS = Math.max(model.machine.burnKgPerS(), model.machine.hoverBurnKgPerS());
        double arrivesKg =
                one.fuelAtHookKg()
                        + model.machine.fuelGaugeSpreadKg()
                        - one.loaded().durationS() * model.machine.burnKgPerS();
        double spareKg =
                model.setDownMassKg(trip, one.slotFrom(), one.slotTo())
                        - model.operatingMassKg()
                        - line.massKg()
                        - trip.liftMassKg()
                        - arrivesKg;
        return new PoleSetting(
                load.id(),
                place.id(),
                pole.massKg(),
                pole.centreOfGravityM(),
                guying.attachFraction() * load.lengthM(),
                known.guys(),
                new Guys(place.guyAzimuthsTrueRad()).largestGapRad(),
                kind.windLimit().gustMPerS(),
                guying.leanRad(),
                known.handLeanRad(),
                trip.setDownS(),
                Math.ceil(trip.setDownS() * burnKgPerS - 1e-6),
                Math.floor(spareKg),
                Math.ceil(line.massKg() - 1e-6),
                Math.floor(
                        pole.massKg()
                                * Units.STANDARD_GRAVITY_M_PER_S2
                                * Math.tan(guying.sidePullRad())),
                topMPerS(load.lengthM()));
    }

    /**
     * Speed of the top of a falling rod hinged at its butt, at the ground, m/s, rounded up.
     *
     * @source DERIVED energy: m g L/2 = m L²/3 ω²/2
     */
    private static double topMPerS(double lengthM) {
        return Math.ceil(Math.sqrt(3 * Units.STANDARD_GRAVITY_M_PER_S2 * lengthM));
    }

    private StandingPole standing(Load load, LoadKind kind, Place place) {
        double attachM = guying.attachFraction() * load.lengthM();
        PlanePoint butt = model.points.get(model.place(place.id()));
        double convergenceRad = model.ground.frame().convergenceRad(butt);
        double buttAmslM = model.elevationAmslM[model.place(place.id())];
        List<Guy> guys = new ArrayList<>();
        for (double azimuthRad : place.guyAzimuthsTrueRad()) {
            double gridRad = azimuthRad - convergenceRad;
            double eastM = butt.eastM() + attachM * Math.sin(gridRad);
            double northM = butt.northM() + attachM * Math.cos(gridRad);
            double anchorAmslM =
                    model.ground.terrain().covers(eastM, northM)
                            ? model.ground.terrain().heightM(eastM, northM)
                            : buttAmslM;
            guys.add(new Guy(azimuthRad, attachM, attachM, anchorAmslM - buttAmslM));
        }
        return new StandingPole(
                model.liftMassKg(load),
                load.lengthM(),
                centreFraction(guying, load) * load.lengthM(),
                kind.dragCoefficient() * load.lengthM() * Math.max(load.widthM(), load.heightM()),
                guys);
    }

    private static double gustPressurePa(LoadKind kind) {
        WindLimit limit = kind.windLimit();
        return StandingPole.pressurePa(limit.gustMPerS());
    }

    /** Hardest pull of each guy, N, for a lean and a wind from any one side; empty when they do not hold. */
    private static Optional<List<Double>> worst(
            StandingPole pole, double leanRad, double pressurePa) {
        List<Double> worst = new ArrayList<>(Collections.nCopies(pole.guys().size(), 0.0));
        for (int degree = 0; degree < 360; degree += STEP_DEG) {
            double towardsRad = Math.toRadians(degree);
            Optional<Pulls> pulls =
                    pole.findPulls(new Lean(towardsRad, leanRad), new Push(towardsRad, pressurePa));
            if (pulls.isEmpty()) {
                return Optional.empty();
            }
            for (int i = 0; i < worst.size(); i++) {
                worst.set(i, Math.max(worst.get(i), pulls.get().tensionsN().get(i)));
            }
        }
        return Optional.of(worst);
    }

    private double handLeanRad(StandingPole pole) {
        double good = 0;
        double bad = MOST_LEAN_RAD;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (good + bad) / 2;
            boolean holds =
                    worst(pole, middle, 0)
                            .filter(pulls -> Collections.max(pulls) <= guying.handPullN())
                            .isPresent();
            if (holds) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        // Tenths of a degree, rounded down.
        return Math.toRadians(Math.floor(Math.toDegrees(good) * 10) / 10);
    }

    private static String newtons(double forceN) {
        return Figures.text(forceN, 0);
    }
}
