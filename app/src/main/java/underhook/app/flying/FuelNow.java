package underhook.app.flying;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Machine;

/**
 * Fuel aboard, worked out from the last reading: two values, for the gauge and the flow are not exact.
 *
 * @param readKg what was read last, kg
 * @param readAt when
 * @param leastKg no less than this is left, for how long it lasts, kg
 * @param mostKg no more than this is aboard, for what can be lifted, kg
 */
public record FuelNow(double readKg, Instant readAt, double leastKg, double mostKg) {
    private static final Set<TapKind> READINGS =
            Set.of(TapKind.REFUELLED, TapKind.ENGINE_ON, TapKind.ENGINE_OFF, TapKind.LANDING);

    /** Empty when nobody has tapped a reading yet. */
    static Optional<FuelNow> find(FlownDay flown, Machine machine, Instant now) {
        return flown.taps().stream()
                .filter(tap -> READINGS.contains(tap.kind()))
                .filter(tap -> tap.amount().massKg().isPresent())
                .reduce((earlier, later) -> later)
                .map(tap -> of(tap, machine, new EngineTime(flown, now)));
    }

    private static FuelNow of(Tap reading, Machine machine, EngineTime engine) {
        double readKg = reading.amount().massKg().orElseThrow();
        long burningS = engine.sinceS(reading.at());
        double fastKgPerS = Math.max(machine.burnKgPerS(), machine.hoverBurnKgPerS());
        double slowKgPerS = Math.min(machine.burnKgPerS(), machine.hoverBurnKgPerS());
        double startsKg = engine.startsSince(reading.at()) * machine.startFuelKg();
        double leastKg = readKg - machine.fuelGaugeSpreadKg() - startsKg - burningS * fastKgPerS;
        double mostKg = readKg + machine.fuelGaugeSpreadKg() - burningS * slowKgPerS;
        return new FuelNow(readKg, reading.at(), Math.max(0, leastKg), Math.max(0, mostKg));
    }
}
