package underhook.adapter.paper;

import static underhook.adapter.paper.RichRow.big;

import java.util.Optional;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;

/** How high the hook is where a load is set down. */
final class HookHeights {
    private HookHeights() {}

    /** Where the leg that brings the load ends, m AMSL. */
    static Optional<Double> find(Rotation rotation, Drop drop) {
        for (Leg leg : rotation.legs()) {
            if (leg.to().equals(drop.place())
                    && leg.carrying().contains(drop.load())
                    && !leg.path().isEmpty()) {
                PathPoint end = leg.path().get(leg.path().size() - 1);
                return Optional.of(end.hookAltitudeAmslM());
            }
        }
        return Optional.empty();
    }

    /** In feet, as the altimeter shows it. */
    static String words(Rotation rotation, Drop drop) {
        return find(rotation, drop)
                .map(altitude -> "hook " + big(Words.hookFt(altitude)) + " ft")
                .orElse("hook altitude not planned");
    }
}
