package underhook.planner.order;

import java.util.OptionalDouble;
import underhook.core.aircraft.CentreOfGravity;
import underhook.core.aircraft.CentreOfGravity.Burden;
import underhook.core.job.LineItem;
import underhook.core.job.Machine;
import underhook.planner.route.Memo;

/**
 * Most fuel with which a machine may fly something, as its centre of gravity keeps its limits from there down to the
 * reserve, though the gauge reads high then.
 *
 * <p>Where the machine states no balance, what the tank gives.
 */
final class BalancedFuel {
    private final Machine machine;
    private final Memo<Carried, Double> known = Memo.of();

    private record Carried(double cabinKg, double hookKg) {}

    BalancedFuel(Machine machine) {
        this.machine = machine;
    }

    /** Whether it may hang on the machine at all. */
    static boolean isNone(double mostKg) {
        return mostKg < 0;
    }

    /** With so much below the hook, kg in the tank, whole; below 0 where it leaves its limits with any. */
    double withLoadKg(double hookKg) {
        return mostKg(new Carried(0, hookKg));
    }

    /** With people in the cabin and no line, kg in the tank, whole; below 0 where it leaves its limits with any. */
    double withPeopleKg(double cabinKg) {
        return mostKg(new Carried(cabinKg, 0));
    }

    /** With each line of the stock alone, and with none; what leaves its limits with any fuel is none of them. */
    double emptyKg() {
        double leastKg = withLoadKg(0);
        for (LineItem line : machine.lines()) {
            double oneKg = withLoadKg(line.massKg());
            leastKg = isNone(leastKg) ? oneKg : isNone(oneKg) ? leastKg : Math.min(leastKg, oneKg);
        }
        return isNone(leastKg) ? machine.fuelUsableKg() : leastKg;
    }

    /** What the gauge may read at most for so much in the tank, kg: no less than all of it where that is a full one. */
    double readKg(double tankKg) {
        return tankKg < Math.floor(machine.fuelUsableKg())
                ? tankKg - machine.fuelGaugeSpreadKg()
                : machine.fuelUsableKg();
    }

    private double mostKg(Carried carried) {
        return machine.balance().isEmpty()
                ? machine.fuelUsableKg()
                : known.get(carried, this::findMostKg);
    }

    private double findMostKg(Carried carried) {
        double reserveKg = machine.reserveS() * machine.burnKgPerS();
        Burden burden =
                new Burden(
                        machine.emptyMassKg(),
                        machine.crewMassKg(),
                        carried.cabinKg(),
                        carried.hookKg());
        OptionalDouble mostKg =
                CentreOfGravity.of(machine.balance().orElseThrow(), 0)
                        .mostFuelKg(
                                burden,
                                machine.fuelUsableKg(),
                                Math.max(0, reserveKg - machine.fuelGaugeSpreadKg()))
                        .stream()
                        .asDoubleStream()
                        .findFirst();
        return mostKg.orElse(-1);
    }
}
