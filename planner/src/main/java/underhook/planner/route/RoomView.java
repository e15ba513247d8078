package underhook.planner.route;

import java.util.Optional;
import underhook.core.site.Fit;
import underhook.core.site.Margin;

/** Room at one place for one line and load, by heading. */
public interface RoomView {
    /** Without a line the machine lands: nothing is asked of the room over the trees. */
    RoomView NOT_ASKED =
            new RoomView() {
                @Override
                public Optional<Margin> in(double headingGridRad) {
                    return Optional.empty();
                }

                @Override
                public Fit out(double trackGridRad) {
                    return Fit.FREE;
                }
            };

    /** What decides in the hover and on the last part of the way in; empty when nothing is asked. */
    Optional<Margin> in(double headingGridRad);

    /** Whether the first part of a way out has room. */
    Fit out(double trackGridRad);
}
