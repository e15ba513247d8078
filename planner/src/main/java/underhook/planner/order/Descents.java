package underhook.planner.order;

import java.util.List;
import underhook.core.air.Atmosphere;
import underhook.core.aircraft.MomentumHover;
import underhook.core.aircraft.VortexRing;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.unit.Units;
import underhook.planner.route.FlownLeg;

/** How fast to come down where there is little airspeed. */
final class Descents {
    private final Flights flights;
    private final DayModel model;

    Descents(Flights flights) {
        this.flights = flights;
        this.model = flights.model();
    }

    /** One for the whole plan: the training line is the same everywhere, and nearly always the lower. */
    List<Finding> list() {
        if (flights.flown().isEmpty()) {
            return List.of();
        }
        double inducedMPerS = leastInducedMPerS();
        double cautiousMPerS = VortexRing.cautiousDescentMPerS(inducedMPerS);
        double plannedMPerS = model.machine.descentMPerS();
        double onSpotM =
                flights.legs().stream().mapToDouble(at -> onSpotM(at.leg())).max().orElse(0);
        boolean faster = plannedMPerS > cautiousMPerS + 1e-9 && onSpotM > 0;
        String said =
                "Below "
                        + Figures.text(Units.mPerSToKt(VortexRing.TRAINING_AIRSPEED_M_PER_S), 0)
                        + " kt of airspeed come down no faster than "
                        + feet(Math.min(cautiousMPerS, plannedMPerS))
                        + " ft/min; a tailwind takes from the airspeed. The region of the model"
                        + " begins at "
                        + feet(VortexRing.firstDescentMPerS(inducedMPerS))
                        + " ft/min for the lightest machine of the day.";
        double longerS = onSpotM / cautiousMPerS - onSpotM / plannedMPerS;
        return List.of(
                new Finding(
                        FindingCode.VORTEX_RING,
                        faster ? Severity.CAUTION : Severity.NOTE,
                        model.job.name(),
                        feet(plannedMPerS),
                        feet(cautiousMPerS),
                        "ft/min",
                        "FAA-8083-21B",
                        faster
                                ? said
                                        + " Descents on the spot are timed at the machine's "
                                        + feet(plannedMPerS)
                                        + " ft/min: the highest, "
                                        + Figures.text(Math.ceil(onSpotM), 0)
                                        + " m, takes "
                                        + Figures.text(Math.ceil(longerS), 0)
                                        + " s longer so. Perhaps they are better flown with"
                                        + " airspeed."
                                : said));
    }

    /** Rounded down to tens: slower, never faster. */
    private static String feet(double descentMPerS) {
        return Figures.text(Math.floor(Units.mPerSToFtPerMinute(descentMPerS) / 10 + 1e-6) * 10, 0);
    }

    /** Height that a leg comes down without moving over the ground at its end, m. */
    private static double onSpotM(FlownLeg leg) {
        int last = leg.points().size() - 1;
        double sumM = 0;
        while (last > 0 && leg.points().get(last).distanceToM(leg.points().get(last - 1)) < 0.5) {
            sumM += Math.max(0, leg.hookAmslM().get(last - 1) - leg.hookAmslM().get(last));
            last--;
        }
        return sumM;
    }

    /** With the lightest machine in the densest air, where the region begins at the slowest descent. */
    private double leastInducedMPerS() {
        double leastMPerS = Double.POSITIVE_INFINITY;
        double lineKg =
                flights.flown().stream()
                        .mapToDouble(one -> model.machine.lines().get(one.line()).massKg())
                        .min()
                        .orElse(0);
        for (int place : flights.byPlace().keySet()) {
            for (int slot = 0; slot < model.air().slots.size(); slot++) {
                double pressurePa =
                        Atmosphere.stationPressurePa(
                                model.air().slots.get(slot).qnhPa(), model.elevationAmslM[place]);
                double density =
                        Atmosphere.dry(pressurePa, model.air().temperatureK(place, slot))
                                .densityKgPerM3();
                leastMPerS =
                        Math.min(
                                leastMPerS,
                                MomentumHover.of(
                                                model.operatingMassKg() + lineKg,
                                                model.machine.rotorRadiusM(),
                                                density)
                                        .inducedMPerS());
            }
        }
        return leastMPerS;
    }
}
