package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import underhook.app.desk.DayLooks.Look;
import underhook.app.desk.Lifts.Status;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.flown.FlownDay;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.Rules;
import underhook.core.job.Wire;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;
import underhook.core.unit.Units;

/**
 * What the pilot must see of a lift before it, for the air and the fuel now.
 *
 * @param mostFuelKg most fuel on the gauge for it now, kg; empty when it may not be lifted now at all
 * @param airKnown whether the forecast reaches from now until its last set-down; else nothing may be lifted,
 *     whatever its mass
 * @param mostFuelHeavierKg the same if its loads are as much heavier than listed as those weighed so far
 * @param leastFuelKg least fuel on the gauge for it: to where fuel is kept, the reserve, and what the gauge may read
 *     too much, kg
 * @param fuel what is aboard; empty when nobody tapped a reading
 * @param fuelStatus how the fuel aboard stands to the most and the least; outside when it cannot be lifted
 *     now
 */
public record NextLook(
        LiftState lift,
        OptionalDouble mostFuelKg,
        boolean airKnown,
        OptionalDouble mostFuelHeavierKg,
        double leastFuelKg,
        Optional<FuelNow> fuel,
        Status fuelStatus,
        List<DropLook> drops,
        List<RoundEnd> roundEnds) {
    /**
     * A wire round whose end a leg of the lift leads; where the wire goes on the leg crosses it.
     *
     * @param leg of the rotation, from 0
     * @param beyondM how far beyond the end, m
     */
    public record RoundEnd(int leg, String wire, double beyondM) {}

    /**
     * A set-down of it.
     *
     * @param bearingTrueRad from where it is hooked, rad from true north
     * @param distanceM straight, m
     * @param hookAltitudeAmslM of the belly hook over the place, m AMSL
     */
    public record DropLook(
            Drop drop,
            Place place,
            double bearingTrueRad,
            double distanceM,
            OptionalDouble hookAltitudeAmslM,
            Optional<WayNow> way) {}

    /**
     * The ways in and out as planned, in the wind now: of two winds that may hold, for each figure the worse.
     *
     * @param headMPerS least on the way in; a tailwind is negative
     * @param crossMPerS most on the way in, from the right positive
     * @param tailOutMPerS most on the way out; a headwind is negative
     * @param status inside while mean and gust keep the limits, near while the mean alone does
     */
    public record WayNow(
            WindThere wind,
            double headMPerS,
            double crossMPerS,
            double tailOutMPerS,
            Status status) {}

    public NextLook {
        drops = List.copyOf(drops);
        roundEnds = List.copyOf(roundEnds);
    }

    /** A lift as it would be flown now. */
    static NextLook of(Look look, LiftState lift, FlownDay flown, Instant now) {
        Job job = look.job().job();
        List<Rotation> planned = Bias.rotations(look.plan().plan());
        double factor = Bias.of(job, planned, flown).map(Bias::factor).orElse(1.0);
        OptionalDouble most = most(look, lift, now, 1);
        double leastKg = Between.leastFuelKg(look.plan().plan().steps(), lift, job);
        Optional<FuelNow> fuel = FuelNow.find(flown, job.machine(), now);
        List<DropLook> drops = new ArrayList<>();
        for (Drop drop : lift.lift().rotation().drops()) {
            Optional<WayNow> way =
                    WindThere.find(look, flown, drop.place(), now)
                            .map(wind -> way(drop, wind, job.rules()));
            drops.add(drop(job, lift, drop, way));
        }
        return new NextLook(
                lift,
                most,
                airKnown(look, lift, now),
                most(look, lift, now, factor),
                leastKg + job.machine().fuelGaugeSpreadKg(),
                fuel,
                status(most, leastKg, fuel),
                drops,
                roundEnds(look, lift.lift().rotation().legs()));
    }

    /** Of the wires that the plan names for it. */
    private static List<RoundEnd> roundEnds(Look look, List<Leg> legs) {
        Set<String> named =
                look.plan().plan().findings().stream()
                        .filter(finding -> finding.code() == FindingCode.WIRE_END)
                        .map(Finding::subject)
                        .collect(Collectors.toSet());
        List<RoundEnd> all = new ArrayList<>();
        for (Wire wire : look.job().job().wires()) {
            for (int i = 0; i < legs.size() && named.contains(wire.id()); i++) {
                int leg = i;
                look.day()
                        .findBeyondEndM(wire, legs.get(i))
                        .ifPresent(beyondM -> all.add(new RoundEnd(leg, wire.id(), beyondM)));
            }
        }
        return all;
    }

    private static OptionalDouble most(Look look, LiftState lift, Instant now, double factor) {
        return look.day().findMostFuelKg(lift.step(), lift.lift().rotation(), now, factor);
    }

    private static boolean airKnown(Look look, LiftState lift, Instant now) {
        Rotation rotation = lift.lift().rotation();
        return look.day().findAir(lift.step().hookedUpAt(), now).isPresent()
                && rotation.drops().stream()
                        .allMatch(
                                drop ->
                                        look.day()
                                                .findAir(
                                                        drop.place(),
                                                        now.plus(
                                                                Duration.between(
                                                                        rotation.hookedAt(),
                                                                        drop.releasedAt())))
                                                .isPresent());
    }

    private static Status status(OptionalDouble mostKg, double leastKg, Optional<FuelNow> fuel) {
        if (mostKg.isEmpty()) {
            return Status.OUTSIDE;
        }
        if (fuel.isEmpty()) {
            return Status.NEAR;
        }
        if (fuel.get().leastKg() > mostKg.getAsDouble() || fuel.get().leastKg() < leastKg) {
            return Status.OUTSIDE;
        }
        return fuel.get().mostKg() > mostKg.getAsDouble() ? Status.NEAR : Status.INSIDE;
    }

    private static DropLook drop(Job job, LiftState lift, Drop drop, Optional<WayNow> way) {
        Place from = job.getPlace(lift.step().hookedUpAt());
        Place to = job.getPlace(drop.place());
        PlanePoint there = LocalFrame.of(from.position()).toPlane(to.position());
        OptionalDouble altitude =
                lift.lift().rotation().legs().stream()
                        .filter(leg -> leg.to().equals(drop.place()))
                        .filter(leg -> leg.carrying().contains(drop.load()))
                        .filter(leg -> !leg.path().isEmpty())
                        .mapToDouble(NextLook::endAltitudeAmslM)
                        .findFirst();
        return new DropLook(
                drop,
                to,
                Units.wrapTwoPiRad(Math.atan2(there.eastM(), there.northM())),
                Math.hypot(there.eastM(), there.northM()),
                altitude,
                way);
    }

    private static double endAltitudeAmslM(Leg leg) {
        return leg.path().get(leg.path().size() - 1).hookAltitudeAmslM();
    }

    private static WayNow way(Drop drop, WindThere wind, Rules rules) {
        double trackIn = drop.approachFromTrueRad() + Math.PI;
        double head = wind.headMPerS(trackIn);
        double cross = wind.crossMPerS(trackIn);
        double gustFactor = wind.meanMPerS() > 0 ? wind.gustMPerS() / wind.meanMPerS() : 1;
        Status status = Status.INSIDE;
        if (!keeps(rules, head, cross)) {
            status = Status.OUTSIDE;
        } else if (!keeps(rules, head * gustFactor, cross * gustFactor)) {
            status = Status.NEAR;
        }
        double tailOut = -wind.headMPerS(drop.departureTrackTrueRad());
        return new WayNow(wind, head, cross, tailOut, status);
    }

    private static boolean keeps(Rules rules, double headMPerS, double crossMPerS) {
        return -headMPerS <= rules.flying().tailwindMPerS() + 1e-9
                && Math.abs(crossMPerS) <= rules.flying().crosswindMPerS() + 1e-9;
    }
}
