package underhook.planner.order;

import java.util.Optional;
import java.util.function.DoubleFunction;
import underhook.core.site.Fit;
import underhook.core.site.HeadingRoom;
import underhook.core.site.Margin;
import underhook.core.site.Rig;
import underhook.core.site.Room;
import underhook.planner.route.Memo;
import underhook.planner.route.RoomView;

/** Room for one rig, kept by heading: many hours ask for the same. */
final class KnownRoom implements RoomView {
    private final Room room;
    private final Rig rig;
    private final boolean hooksUp;
    private final DoubleFunction<HeadingRoom> headings;
    private final Memo<Long, Margin> in = Memo.of();
    private final Memo<Long, Fit> out = Memo.of();

    /**
     * @param hooksUp whether a load is hooked up there: the machine hovers on the heading of the way out then
     */
    KnownRoom(Room room, Rig rig, boolean hooksUp) {
        this.room = room;
        this.rig = rig;
        this.hooksUp = hooksUp;
        this.headings = room.headings(rig);
    }

    @Override
    public Optional<Margin> in(double headingGridRad) {
        return Optional.of(
                in.get(key(headingGridRad), unused -> headings.apply(headingGridRad).tightest()));
    }

    @Override
    public Fit out(double trackGridRad) {
        return out.get(
                key(trackGridRad),
                unused ->
                        hooksUp && room.lineNeedM(trackGridRad) > rig.hookAglM()
                                ? Fit.REFUSED
                                : room.wayOut(trackGridRad, rig));
    }

    /** Headings nearer than a millionth of a radian are one. */
    private static long key(double bearingRad) {
        double turn = 2 * Math.PI;
        return Math.round(((bearingRad % turn) + turn) % turn * 1e6);
    }
}
