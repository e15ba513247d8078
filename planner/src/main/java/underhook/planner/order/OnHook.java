package underhook.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Load;
import underhook.core.job.LoadKind;
import underhook.core.job.MassStatus;
import underhook.core.load.Trail;
import underhook.core.unit.Units;

/**
 * Loads on one hook: how fast they may be flown, with what ballast, and what there is to say of it.
 *
 * @param trip empty where they fly only apart
 * @param said what people must do for it
 * @param stop why they are flown only if somebody answers for it
 */
record OnHook(Optional<Trip> trip, List<Finding> said, Optional<Finding> stop) {
    /** How loads are flown, and with what besides. */
    private record Manner(double speedMPerS, double ballastKg) {}

    static OnHook of(DayModel model, List<Load> loads) {
        double densestKgPerM3 = DayAir.densestKgPerM3(model, model.job.weather());
        double leastMPerS = model.rules.flying().leastSpeedMPerS();
        List<Finding> said = new ArrayList<>();
        Optional<Finding> stop = Optional.empty();
        double speedMPerS = Double.POSITIVE_INFINITY;
        double ballastKg = 0;
        for (Load load : loads) {
            LoadKind kind = model.job.getKind(load.kind());
            double areaM2 = dragAreaM2(load, kind);
            double lightKg = lightKg(model, load);
            double limitMPerS =
                    Trail.speedAtLimitMPerS(lightKg, areaM2, kind.trailLimitRad(), densestKgPerM3);
            boolean isLight = limitMPerS < kind.speedMPerS();
            if (isLight && loads.size() == 1 && model.rules.masses().ballastKg() > 0) {
                // People add whole kilograms, as the papers say.
                ballastKg = Math.ceil(model.rules.masses().ballastKg() - 1e-6);
                limitMPerS =
                        Trail.speedAtLimitMPerS(
                                lightKg + ballastKg, areaM2, kind.trailLimitRad(), densestKgPerM3);
            }
            if (limitMPerS < leastMPerS) {
                if (loads.size() > 1) {
                    // Alone, with ballast, it may fly.
                    return new OnHook(Optional.empty(), List.of(), Optional.empty());
                }
                stop = Optional.of(fliesBadly(model, load, limitMPerS));
            }
            double wholeKt =
                    Math.floor(Units.mPerSToKt(Math.min(limitMPerS, kind.speedMPerS())) + 1e-6);
            if (ballastKg > 0) {
                said.add(ballastAdded(load, ballastKg, Units.ktToMPerS(wholeKt)));
            }
            speedMPerS = Math.min(speedMPerS, Units.ktToMPerS(wholeKt));
        }
        Trip trip = trip(model, loads, new Manner(speedMPerS, ballastKg));
        return new OnHook(Optional.of(trip), said, stop);
    }

    /** Whether two loads may hang on one hook, whatever else does and however heavy both are. */
    static boolean mayShare(DayModel model, Load one, Load other) {
        LoadKind kind = model.job.getKind(one.kind());
        LoadKind otherKind = model.job.getKind(other.kind());
        boolean named =
                one.combineWith().contains(other.id()) || other.combineWith().contains(one.id());
        return named
                && !one.isDangerous()
                && !other.isDangerous()
                && kind.sharesHook()
                && otherKind.sharesHook()
                && !kind.standsUp()
                && !otherKind.standsUp()
                && one.from().equals(other.from())
                && one.to().equals(other.to());
    }

    /** The trip of loads that were flown, whatever is known of them now. */
    static Trip slowest(DayModel model, List<Load> loads) {
        return trip(model, loads, new Manner(model.rules.flying().leastSpeedMPerS(), 0));
    }

    /** The trip, if there is one that needs nobody to answer for it or has somebody who does. */
    Optional<Trip> unlessStopped(DayModel model) {
        return stop.filter(finding -> !Waivers.isLifted(model.job, finding)).isPresent()
                ? Optional.empty()
                : trip;
    }

    /** For how it flies the lighter value of an uncertain mass counts. */
    private static double lightKg(DayModel model, Load load) {
        return load.massKg().orElse(0)
                / (load.massStatus() == MassStatus.ESTIMATED
                        ? model.rules.masses().estimatedMassFactor()
                        : 1);
    }

    private static Finding fliesBadly(DayModel model, Load load, double limitMPerS) {
        LoadKind kind = model.job.getKind(load.kind());
        String limitKt = Figures.text(Units.mPerSToKt(limitMPerS), 0);
        return new Finding(
                FindingCode.FLIES_BADLY,
                Severity.STOP,
                load.id().value(),
                limitKt,
                Figures.text(Units.mPerSToKt(model.rules.flying().leastSpeedMPerS()), 0),
                "kt",
                "rules",
                "Light and large: it trails more than "
                        + Figures.text(Math.toDegrees(kind.trailLimitRad()), 0)
                        + "° above "
                        + limitKt
                        + " kt, ballast counted. Refused as rigged. Perhaps it flies so: "
                        + model.carriage().mending(load, kind)
                        + ".");
    }

    private static Finding ballastAdded(Load load, double ballastKg, double speedMPerS) {
        return new Finding(
                FindingCode.BALLAST_ADDED,
                Severity.CAUTION,
                load.id().value(),
                Figures.text(ballastKg, 0),
                "",
                "kg",
                "rules",
                "Light for its size: add "
                        + Figures.text(ballastKg, 0)
                        + " kg of ballast and fly it at no more than "
                        + Figures.text(Units.mPerSToKt(speedMPerS), 0)
                        + " kt.");
    }

    private static Trip trip(DayModel model, List<Load> loads, Manner manner) {
        List<LoadKind> kinds = loads.stream().map(load -> model.job.getKind(load.kind())).toList();
        double liftKg = loads.stream().mapToDouble(model::liftMassKg).sum() + manner.ballastKg();
        boolean construction = kinds.stream().anyMatch(LoadKind::constructionMargin);
        double needKg =
                construction
                        ? Math.ceil(liftKg / (1 - model.rules.masses().constructionFraction()))
                        : liftKg;
        double underM = 0;
        double hookUpS = 0;
        double setDownS = 0;
        for (int i = 0; i < loads.size(); i++) {
            underM =
                    Math.max(
                            underM,
                            kinds.get(i).standsUp()
                                    ? loads.get(i).lengthM()
                                    : loads.get(i).heightM());
            hookUpS = Math.max(hookUpS, kinds.get(i).hookUpS());
            setDownS = Math.max(setDownS, kinds.get(i).setDownS());
        }
        setDownS += (loads.size() - 1) * model.rules.times().secondReleaseS();
        return model.legs()
                .known(
                        new Trip(
                                loads,
                                kinds,
                                model.place(loads.get(0).from()),
                                model.place(loads.get(0).to()),
                                liftKg,
                                needKg,
                                manner.ballastKg(),
                                underM,
                                manner.speedMPerS(),
                                (long) Math.ceil(hookUpS),
                                (long) Math.ceil(setDownS)));
    }

    static double dragAreaM2(Load load, LoadKind kind) {
        if (load.dragAreaM2().isPresent()) {
            return load.dragAreaM2().getAsDouble();
        }
        return Trail.boxDragAreaM2(
                load.lengthM(), load.widthM(), load.heightM(), kind.dragCoefficient());
    }
}
