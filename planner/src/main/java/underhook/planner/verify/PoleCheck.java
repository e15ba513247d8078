package underhook.planner.verify;

import java.util.List;
import java.util.OptionalDouble;
import underhook.core.finding.FindingCode;
import underhook.core.job.Handling.Guying;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/**
 * The figures that people at a pole work by, besides the pulls of its guys: none may be stated better than it
 * is.
 */
final class PoleCheck {
    private static final double LENGTH_M = 0.05;
    private static final double ANGLE_RAD = Math.toRadians(0.6);

    /** Gusts are written in whole knots. */
    private static final double GUST_M_PER_S = 0.3;

    private static final double USED_RATIO = 0.002;

    private final Day day;
    private final GuyCheck guys;
    private final Guying guying;
    private final Machine machine;

    PoleCheck(Day day, GuyCheck guys) {
        this.day = day;
        this.guys = guys;
        this.guying = day.job().rules().handling().guying();
        this.machine = day.job().machine();
    }

    void run(Load load, Drop drop, PoleSetting stated) {
        Place place = day.job().getPlace(drop.place());
        demand(stated.place().equals(place.id()), load, "its place");
        double mass = day.liftMassKg(load);
        demand(stated.massKg() >= mass - Tolerance.DUST_KG, load, "its mass");
        demand(stated.massKg() <= mass + 2 * Tolerance.MASS_KG, load, "its mass");
        demand(isNear(stated.centreM(), GuyCheck.centreM(day, load)), load, "where it balances");
        double attach = guying.attachFraction() * load.lengthM();
        demand(isNear(stated.attachM(), attach), load, "where its guys are attached");
        demand(
                stated.guys().stream().allMatch(guy -> isNear(guy.anchorDistanceM(), attach)),
                load,
                "how far out its anchors are");
        demand(
                Math.abs(stated.largestGapRad() - GuyCheck.gapRad(place)) <= ANGLE_RAD,
                load,
                "the gap between its guys");
        demand(
                Math.abs(stated.gustMPerS() - guys.gustMPerS(load)) <= GUST_M_PER_S,
                load,
                "the gust it may be set in");
        demand(Math.abs(stated.leanRad() - guying.leanRad()) <= ANGLE_RAD, load, "its lean");
        pulls(load, place, stated);
        // Dry arithmetic of a rod that falls about its butt.
        double top = Math.sqrt(3 * Units.STANDARD_GRAVITY_M_PER_S2 * load.lengthM());
        demand(stated.topMPerS() >= top - LENGTH_M, load, "how fast its top falls");
        double side = mass * Units.STANDARD_GRAVITY_M_PER_S2 * Math.tan(guying.sidePullRad());
        demand(stated.sidePullN() <= side + GuyCheck.PULL_N, load, "the pull at its top");
        day.plan().steps().forEach(step -> lifted(load, drop, step, stated));
    }

    private void pulls(Load load, Place place, PoleSetting stated) {
        double[] wind = guys.worstN(load, place, 0, guys.gustMPerS(load));
        double[] lean = guys.worstN(load, place, guying.leanRad(), 0);
        demand(
                stated.handLeanRad() >= 0 && stated.handLeanRad() < Math.PI / 2,
                load,
                "the lean that hands hold");
        double[] hand = guys.worstN(load, place, stated.handLeanRad(), 0);
        for (int i = 0; i < Math.min(wind.length, stated.guys().size()); i++) {
            PoleSetting.GuyPull guy = stated.guys().get(i);
            demand(isEnough(guy.windN(), wind[i]), load, "a guy's pull by wind");
            demand(isEnough(guy.leanN(), lean[i]), load, "a guy's pull by lean");
            demand(isEnough(guying.handPullN(), hand[i]), load, "the lean that hands hold");
            demand(
                    guy.anchorUsedRatio() >= guy.worstN() / guying.anchorHoldN() - USED_RATIO,
                    load,
                    "how far an anchor is used");
        }
    }

    private static boolean isEnough(double statedN, double ownN) {
        return statedN >= GuyCheck.PULL_FACTOR * ownN - GuyCheck.PULL_N;
    }

    /** What is to spare in the hover over the pole, and what is read when nothing but the line hangs there. */
    private void lifted(Load load, Drop drop, Step step, PoleSetting stated) {
        if (step.rotation().filter(turn -> turn.loads().contains(load.id())).isEmpty()) {
            return;
        }
        Rotation turn = step.rotation().get();
        double lineKg =
                machine.lines().stream()
                        .filter(
                                line ->
                                        Math.abs(line.lengthM() - step.lineLengthM())
                                                < Tolerance.LENGTH_M)
                        .mapToDouble(LineItem::massKg)
                        .findFirst()
                        .orElse(0);
        demand(
                Math.abs(stated.readingKg() - lineKg) <= Tolerance.MASS_KG,
                load,
                "the reading of the line alone");
        double flownS =
                turn.legs().stream()
                        .filter(leg -> leg.carrying().contains(load.id()))
                        .mapToDouble(Leg::durationS)
                        .sum();
        double aboard =
                turn.fuelAtHookKg() + machine.fuelGaugeSpreadKg() - flownS * machine.burnKgPerS();
        double hangs = day.loadsOf(turn.loads()).stream().mapToDouble(day::liftMassKg).sum();
        hoverKg(drop)
                .ifPresent(
                        hover ->
                                demand(
                                        stated.spareKg()
                                                <= hover
                                                        - machine.emptyMassKg()
                                                        - machine.crewMassKg()
                                                        - lineKg
                                                        - hangs
                                                        - turn.ballastKg()
                                                        - aboard
                                                        + 2 * Tolerance.MASS_KG,
                                        load,
                                        "what is to spare over it"));
    }

    private OptionalDouble hoverKg(Drop drop) {
        Air air = new Air(day.job().weather());
        Chart chart = new Chart(machine.hover(), machine.maxExternalMassKg());
        double elevation = day.groundAmslM(drop.place());
        List<WeatherHour> rows = air.listRows(drop.releasedAt());
        return rows.stream()
                .flatMapToDouble(
                        row ->
                                chart
                                        .findMassKg(
                                                Math.ceil(
                                                        Air.pressureAltitudeM(row, elevation)
                                                                - 1e-6),
                                                air.temperatureK(row, elevation))
                                        .stream())
                .min();
    }

    private static boolean isNear(double statedM, double ownM) {
        return Math.abs(statedM - ownM) <= LENGTH_M;
    }

    private void demand(boolean holds, Load load, String what) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.STATED_WRONG,
                        load.id().value(),
                        () ->
                                Told.of(
                                        "plan",
                                        "Of the pole " + load.id() + " " + what + " is wrong."));
    }
}
