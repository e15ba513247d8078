package underhook.planner.order;

import java.util.List;
import underhook.core.job.LineItem;
import underhook.core.job.LoadId;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** What of a planned lift hung on the hook, where not all of its loads were tapped. */
final class Hung {
    private Hung() {}

    /**
     * A lift of some of its loads: flown as planned, so with no more fuel than all of them allow.
     *
     * @param loads some of the lift's, in the order of release
     */
    static Step of(DayModel model, Step planned, List<LoadId> loads) {
        Rotation turn = planned.rotation().orElseThrow();
        if (loads.equals(turn.loads())) {
            return planned;
        }
        LineItem line = model.machine.lines().get(KnownOrder.line(model, planned.lineLengthM()));
        double liftKg = loads.stream().map(model.job::getLoad).mapToDouble(model::liftMassKg).sum();
        List<Leg> legs =
                turn.legs().stream()
                        .map(leg -> leg.carrying().isEmpty() ? leg : leg.withCarrying(loads))
                        .toList();
        return planned.withRotation(
                new Rotation(
                        loads,
                        turn.hookedAt(),
                        turn.fuelAtHookKg(),
                        Math.ceil(liftKg + turn.ballastKg() + line.massKg()),
                        turn.hogeMassKg(),
                        turn.fuelMaxKg(),
                        turn.ballastKg(),
                        turn.drops().stream().filter(drop -> loads.contains(drop.load())).toList(),
                        legs,
                        turn.limits()));
    }
}
