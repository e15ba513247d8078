package underhook.planner.verify;

import underhook.core.plan.Plan;
import underhook.planner.order.DayPlanner;
import underhook.planner.order.PlanSettings;

/** The plan that is made of a small day. */
final class Planned {
    private Planned() {}

    /** @throws AssertionError if none is made */
    static Plan of(SmallDay day) {
        return DayPlanner.plan(
                        day.job(),
                        day.ground(),
                        new PlanSettings("p", SmallDay.SEVEN, 1, "test", () -> false),
                        (what, share) -> {})
                .fold(
                        (made, findings) -> made,
                        refused -> {
                            throw new AssertionError(refused);
                        });
    }
}
