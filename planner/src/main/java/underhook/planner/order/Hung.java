package underhook.planner.order;

import java.util.List;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.LoadId;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** What of a planned lift hung on the hook, where not all of its loads were tapped. */
public final class Hung {
    private Hung() {}

    /**
     * A lift of some of its loads: flown as planned, so with no more fuel than all of them allow.
     *
     * @param loads some of the lift's, in the order of release
     */
    public static Step of(Job job, Step planned, List<LoadId> loads) {
        Rotation turn = planned.rotation().orElseThrow();
        if (loads.equals(turn.loads())) {
            return planned;
        }
        double lineKg =
                job.machine().lines().stream()
                        .filter(line -> Math.abs(line.lengthM() - planned.lineLengthM()) < 1e-3)
                        .mapToDouble(LineItem::massKg)
                        .max()
                        .orElse(0);
        double liftKg =
                loads.stream()
                        .map(job::getLoad)
                        .mapToDouble(load -> DayModel.liftMassKg(job, load))
                        .sum();
        List<Leg> legs =
                turn.legs().stream()
                        .map(leg -> leg.carrying().isEmpty() ? leg : leg.withCarrying(loads))
                        .toList();
        return planned.withRotation(
                new Rotation(
                        loads,
                        turn.hookedAt(),
                        turn.fuelAtHookKg(),
                        Math.ceil(liftKg + turn.ballastKg() + lineKg),
                        turn.hogeMassKg(),
                        turn.fuelMaxKg(),
                        turn.ballastKg(),
                        turn.drops().stream().filter(drop -> loads.contains(drop.load())).toList(),
                        legs,
                        turn.limits()));
    }
}
