package underhook.planner.verify;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.core.finding.FindingCode;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Rigging;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * Strength and dates of what each lift hangs in, leg by leg and link by link. A bridle on which a
 * load would turn over holds nothing.
 *
 * @source LOAD-ANGLE pull of a leg; WAC-296-45 five times the load; OSHA-1918, LOAD-ANGLE-UNEQUAL chokers
 */
final class GearCheck {
    private static final double LEAST_STRENGTH_FACTOR = 5;
    private static final double CHOKED_FACTOR = 0.75;

    /** Legs no flatter, with a thousandth of a degree for rounding. */
    private static final double LEAST_LEG_RAD = Math.toRadians(29.999);

    private static final double CHOKED_FIBRE_FACTOR = 250.0 / 550;

    /** Two ways of counting what hangs. */
    private static final double STATED_FRACTION = 0.98;

    private final Day day;
    private final Rigging rigging;
    private double mostUsedRatio;

    GearCheck(Day day) {
        this.day = day;
        this.rigging = day.job().rules().handling().rigging();
    }

    void run() {
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(rotation -> check(step, rotation));
        }
    }

    private void check(Step step, Rotation rotation) {
        List<Load> loads = day.loadsOf(rotation.loads());
        if (loads.stream().anyMatch(load -> load.massKg().isEmpty())) {
            return;
        }
        mostUsedRatio = 0;
        double sum = rotation.ballastKg();
        for (Load load : loads) {
            double mass = day.liftMassKg(load);
            sum += mass;
            Optional<Rigging.SlingSet> set = rigging.findSet(load.kind());
            if (set.isPresent()) {
                Rigging.Gear leg = rigging.getGear(set.get().leg());
                demandHolds(load, leg, legMassKg(set.get(), load, mass));
                climb(load, mass + set.get().legs() * leg.massKg(), set.get().upward());
            }
        }
        Optional<LineItem> line =
                day.job().machine().lines().stream()
                        .filter(
                                item ->
                                        Math.abs(item.lengthM() - step.lineLengthM())
                                                < Tolerance.LENGTH_M)
                        .findFirst();
        if (line.isPresent()) {
            List<String> names = new ArrayList<>(line.get().make().gear());
            names.addAll(rigging.belly());
            climb(loads.get(0), sum, names);
        }
        checkStated(rotation);
    }

    /** The card names an item that is used no less than any other. */
    private void checkStated(Rotation rotation) {
        boolean told =
                rotation.limits().isEmpty()
                        || mostUsedRatio <= 0
                        || rotation.limits().stream()
                                .anyMatch(
                                        one ->
                                                one.code().equals("RIGGING_LIMIT")
                                                        && one.value()
                                                                >= mostUsedRatio
                                                                                * one.limit()
                                                                                * STATED_FRACTION
                                                                        - Tolerance.MASS_KG);
        day.ledger()
                .demand(
                        told,
                        FindingCode.MARGIN_WRONG,
                        rotation.loads().get(0).value(),
                        () ->
                                Told.of(
                                        "rigging",
                                        "What the gear is used to is not stated, or too little."));
    }

    /** What one leg pulls, as a mass hung straight on it, kg, over what its hitch leaves of it. */
    private double legMassKg(Rigging.SlingSet set, Load load, double massKg) {
        int counted = set.rigid() && set.legs() >= 3 ? 2 : set.legs();
        double alone = massKg / (counted * Math.sin(set.angleRad()));
        return switch (set.hitch()) {
            case VERTICAL -> alone;
            case CHOKER ->
                    rigging.getGear(set.leg()).material() == Rigging.Material.FIBRE_ROPE
                            ? alone / CHOKED_FIBRE_FACTOR
                            : alone / CHOKED_FACTOR;
            case BASKET -> alone / 2;
            case BRIDLE -> bridleKg(set.bridle().orElseThrow(), load, massKg);
        };
    }

    /** The harder leg of a bridle, its points along the load's top. */
    private double bridleKg(Rigging.Legs2 legs, Load load, double massKg) {
        double centre = GuyCheck.centreM(day, load);
        Optional<TwoLegs.Hung> hung =
                TwoLegs.find(
                        massKg,
                        new double[] {legs.length1M(), legs.length2M()},
                        new double[] {
                            legs.at1Fraction() * load.lengthM() - centre,
                            legs.at2Fraction() * load.lengthM() - centre
                        },
                        load.heightM() / 2);
        day.ledger()
                .demand(
                        hung.map(one -> one.flatterRad() >= LEAST_LEG_RAD).orElse(true),
                        FindingCode.BRIDLE_TILT,
                        load.id().value(),
                        () -> Told.of("rigging", "A leg of its bridle stands too flat."));
        return hung.map(TwoLegs.Hung::harderKg).orElse(Double.POSITIVE_INFINITY);
    }

    private void climb(Load load, double hangingKg, List<String> names) {
        double below = hangingKg;
        for (String name : names) {
            Rigging.Gear gear = rigging.getGear(name);
            demandHolds(load, gear, below);
            below += gear.massKg();
        }
    }

    private void demandHolds(Load load, Rigging.Gear gear, double carriedKg) {
        double limit = gear.limitKg().orElse(Double.POSITIVE_INFINITY);
        if (gear.breakingN().isPresent()) {
            double factor = Math.max(LEAST_STRENGTH_FACTOR, rigging.breakingFactor());
            limit =
                    Math.min(
                            limit,
                            gear.breakingN().getAsDouble()
                                    / (factor * Units.STANDARD_GRAVITY_M_PER_S2));
        }
        double allowed = limit;
        mostUsedRatio = Math.max(mostUsedRatio, carriedKg / allowed);
        day.ledger()
                .demand(
                        carriedKg <= allowed + Tolerance.DUST_KG,
                        FindingCode.RIGGING_LIMIT,
                        load.id().value(),
                        () ->
                                Told.of("rigging", gear.name() + " carries too much.")
                                        .figures(carriedKg, allowed, "kg"));
        LocalDate on = day.job().date();
        boolean inDate =
                gear.dates()
                        .map(dates -> !on.isAfter(dates.dueOn()) && !on.isAfter(dates.retireOn()))
                        .orElse(true);
        day.ledger()
                .demand(
                        inDate,
                        FindingCode.RIGGING_EXPIRED,
                        load.id().value(),
                        () -> Told.of("rigging", gear.name() + " is past its date."));
    }
}
