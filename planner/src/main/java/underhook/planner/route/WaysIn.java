package underhook.planner.route;

import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import underhook.core.job.Machine;
import underhook.core.site.Fit;
import underhook.planner.route.Directions.Ranked;

/** Ranks the ways in to a place and the ways out of it. */
final class WaysIn {
    private final Judges.Limits limits;
    private final boolean leansRight;

    WaysIn(Judges.Limits limits, Machine.PilotSide side) {
        this.limits = limits;
        this.leansRight = side == Machine.PilotSide.RIGHT;
    }

    /**
     * Every way in and every way out that is allowed, best first.
     *
     * @param below what lies under straight pieces beside the place
     * @return empty when every way in or every way out is refused
     */
    Optional<RankedWays> rank(PlaceHour at, Lies.Below below) {
        Ranked in = rankIn(at, below);
        Ranked out = rankOut(at, below);
        if (in.best().isEmpty() || out.best().isEmpty()) {
            return Optional.empty();
        }
        List<String> refusedInto =
                in.intoWind().equals(in.best().get())
                        ? List.of()
                        : below.lies(at.wind().fromGridRad() + Math.PI).blockers();
        return Optional.of(new RankedWays(at, in, out, refusedInto));
    }

    Ranked rankIn(PlaceHour at, Lies.Below below) {
        DoublePredicate clear =
                track -> below.lies(track).isOpen() && at.room().out(track) != Fit.REFUSED;
        return Directions.rank(
                at.wind().fromGridRad(),
                List.of(
                        Judges.underWayIn(below),
                        Judges.wind(at.windsIn(), limits),
                        Judges.room(at.room()),
                        Judges.sun(at, leansRight),
                        Judges.escape(clear)));
    }

    Ranked rankOut(PlaceHour at, Lies.Below below) {
        return Directions.rank(
                at.wind().fromGridRad(),
                List.of(
                        Judges.underWayOut(below),
                        Judges.tailwind(at.winds(), limits),
                        Judges.roomOut(at.room())));
    }
}
