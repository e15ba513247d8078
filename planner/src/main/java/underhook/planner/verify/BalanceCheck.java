package underhook.planner.verify;

import java.util.List;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Balance;
import underhook.core.job.Crew;
import underhook.core.job.Machine;
import underhook.core.plan.Limit;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * A flight on which the balance surely leaves its envelope is told: with its load, with the crew aboard, with the line
 * alone on the hook. Moments are summed anew for each kilogram of fuel that may be aboard on the way.
 */
final class BalanceCheck {
    /** A limit that is passed by less than this may be rounding, m. */
    private static final double SURE_M = 0.001;

    private static final double STEP_KG = 1;

    private final Day day;
    private final Said said;
    private final Machine machine;

    BalanceCheck(Day day) {
        this.day = day;
        this.said = new Said(day);
        this.machine = day.job().machine();
    }

    void run() {
        machine.balance()
                .ifPresent(
                        balance ->
                                day.plan().steps().stream()
                                        .filter(one -> one.engineRunning() && !day.isBegun(one))
                                        .forEach(one -> check(balance, one)));
    }

    private void check(Balance balance, Step step) {
        demand(balance, step, machine.name(), new Carried(0, lineKg(step)));
        step.rotation().ifPresent(turn -> check(balance, step, turn));
        for (Crew crew : day.job().crews()) {
            if (step.crew().filter(crew.id()::equals).isPresent()) {
                double cabinKg = crew.people() * crew.massEachKg();
                demand(balance, step, crew.id().value(), new Carried(cabinKg, 0));
            }
        }
    }

    /** The load hangs from hook-up on. */
    private void check(Balance balance, Step step, Rotation turn) {
        Carried carried = new Carried(0, turn.massOnHookKg());
        double mostKg = Math.max(turn.fuelAtHookKg(), step.fuelEndKg());
        demand(
                turn.loads().get(0).value(),
                leaves(balance, carried, new Fuel(mostKg, step.fuelEndKg())));
        for (Limit limit : turn.limits()) {
            if (limit.code().equals("BALANCE_FUEL")) {
                double reserveKg = machine.reserveS() * machine.burnKgPerS();
                double spreadKg = machine.fuelGaugeSpreadKg();
                double readKg = turn.fuelAtHookKg() + spreadKg;
                boolean keeps =
                        !leaves(balance, carried, new Fuel(limit.limit() - spreadKg, reserveKg));
                day.ledger()
                        .demand(
                                keeps && limit.value() >= readKg - Tolerance.MASS_KG,
                                FindingCode.MARGIN_WRONG,
                                turn.loads().get(0).value(),
                                () ->
                                        Told.of(
                                                        "machine",
                                                        "Fuel that keeps the balance is stated too high, or what is aboard too low.")
                                                .figures(readKg, limit.limit(), "kg"));
            }
        }
    }

    /** Besides the empty machine, the pilot and fuel. */
    private record Carried(double cabinKg, double hookKg) {}

    private double lineKg(Step step) {
        return machine.lines().stream()
                .filter(line -> Math.abs(line.lengthM() - step.lineLengthM()) < Tolerance.LENGTH_M)
                .mapToDouble(line -> line.massKg())
                .max()
                .orElse(0);
    }

    /** What the gauge may have read on the way, kg. */
    private record Fuel(double mostKg, double leastKg) {}

    private void demand(Balance balance, Step step, String subject, Carried carried) {
        // A step that was begun may end with more fuel than it began: it was taken where no step
        // tells of it.
        Fuel fuel =
                new Fuel(
                        Math.max(step.fuelStartKg(), step.fuelEndKg()),
                        Math.min(step.fuelStartKg(), step.fuelEndKg()));
        demand(subject, leaves(balance, carried, fuel));
    }

    private void demand(String subject, boolean leaves) {
        if (leaves) {
            said.demand(FindingCode.CENTRE_OF_GRAVITY, subject, Severity.STOP);
        }
    }

    private boolean leaves(Balance balance, Carried carried, Fuel fuel) {
        double mostKg = fuel.mostKg() + machine.fuelGaugeSpreadKg();
        double leastKg = Math.max(0, fuel.leastKg() - machine.fuelGaugeSpreadKg());
        boolean leaves = isOutside(balance, carried, leastKg);
        for (double fuelKg = mostKg; fuelKg > leastKg && !leaves; fuelKg -= STEP_KG) {
            leaves = isOutside(balance, carried, fuelKg);
        }
        return leaves;
    }

    private boolean isOutside(Balance balance, Carried carried, double fuelKg) {
        double massKg =
                machine.emptyMassKg()
                        + machine.crewMassKg()
                        + carried.cabinKg()
                        + carried.hookKg()
                        + fuelKg;
        double armM =
                (machine.emptyMassKg() * balance.emptyArmM()
                                + machine.crewMassKg() * balance.crewArmM()
                                + carried.cabinKg() * balance.cabinArmM()
                                + carried.hookKg() * balance.hookArmM()
                                + fuelKg * balance.fuelArmM())
                        / massKg;
        List<Balance.Limit> rows = balance.envelope();
        for (int i = 1; i < rows.size(); i++) {
            Balance.Limit low = rows.get(i - 1);
            Balance.Limit high = rows.get(i);
            if (massKg >= low.massKg() && massKg <= high.massKg()) {
                double ratio = (massKg - low.massKg()) / (high.massKg() - low.massKg());
                double forwardM =
                        low.forwardArmM() + ratio * (high.forwardArmM() - low.forwardArmM());
                double aftM = low.aftArmM() + ratio * (high.aftArmM() - low.aftArmM());
                return armM < forwardM - SURE_M || armM > aftM + SURE_M;
            }
        }
        // What the envelope does not cover is in no limits, but by a kilogram it may be rounding.
        return massKg < rows.get(0).massKg() - STEP_KG
                || massKg > rows.get(rows.size() - 1).massKg() + STEP_KG;
    }
}
