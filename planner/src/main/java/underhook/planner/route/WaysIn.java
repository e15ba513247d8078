package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoublePredicate;
import underhook.core.job.Machine;
import underhook.core.site.Fit;
import underhook.planner.route.Directions.Judged;
import underhook.planner.route.Directions.Ranked;

/** Chooses the way in to a place and the way out of it, and says why. */
final class WaysIn {
    private final Judges.Limits limits;
    private final boolean leansRight;

    WaysIn(Judges.Limits limits, Machine.PilotSide side) {
        this.limits = limits;
        this.leansRight = side == Machine.PilotSide.RIGHT;
    }

    /**
     * The best way in and the best way out.
     *
     * @param below what lies under straight pieces beside the place
     * @return empty when every way in or every way out is refused
     */
    Optional<WayIn> find(PlaceHour at, Lies.Below below) {
        Ranked in = rankIn(at, below);
        Ranked out = rankOut(at, below);
        if (in.best().isEmpty() || out.best().isEmpty()) {
            return Optional.empty();
        }
        Judged best = in.best().get();
        LegFinder.PlaceWind wind = at.wind();
        double offRad = wind.fromGridRad() - best.trackGridRad();
        List<String> refusedInto =
                in.intoWind().equals(best)
                        ? List.of()
                        : below.lies(wind.fromGridRad() + Math.PI).blockers();
        double outRad = out.best().get().trackGridRad();
        return Optional.of(
                new WayIn(
                        Directions.normalRad(best.trackGridRad() + Math.PI),
                        outRad,
                        wind.speedMPerS() * Math.cos(offRad),
                        wind.speedMPerS() * Math.sin(offRad),
                        at.winds().stream()
                                .mapToDouble(
                                        one ->
                                                -one.speedMPerS()
                                                        * Math.cos(one.fromGridRad() - outRad))
                                .max()
                                .orElseThrow(),
                        reasons(in, at.convergenceRad()),
                        refusedInto));
    }

    Ranked rankIn(PlaceHour at, Lies.Below below) {
        DoublePredicate clear =
                track -> below.lies(track).isOpen() && at.room().out(track) != Fit.REFUSED;
        return Directions.rank(
                at.wind().fromGridRad(),
                List.of(
                        Judges.underWayIn(below),
                        Judges.wind(at.winds(), limits),
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

    /** Why this one, the second best, why not the others; bearings TRUE. */
    private static List<String> reasons(Ranked in, double convergenceRad) {
        List<String> all = new ArrayList<>();
        Judged best = in.best().orElseThrow();
        all.add(why(best, in.intoWind()));
        in.second()
                .ifPresent(
                        second ->
                                all.add(
                                        "second best: track "
                                                + shown(second, convergenceRad)
                                                + ", "
                                                + offWind(second)
                                                + spoken(second)));
        all.addAll(in.whyNot(convergenceRad));
        return all;
    }

    private static String why(Judged best, Judged into) {
        if (best.equals(into)) {
            return offWind(best) + spoken(best);
        }
        List<String> against = into.isAllowed() ? into.words() : into.refusals();
        return offWind(best)
                + spoken(best)
                + (against.isEmpty() ? "" : "; straight into it: " + String.join(", ", against));
    }

    private static String offWind(Judged one) {
        long offDeg = Math.round(Math.abs(Math.toDegrees(one.offWindRad())));
        return offDeg == 0 ? "straight into the wind" : offDeg + "° off the wind";
    }

    private static String spoken(Judged one) {
        return one.words().isEmpty() ? "" : " (" + String.join(", ", one.words()) + ")";
    }

    private static String shown(Judged one, double convergenceRad) {
        long degrees = Math.round(Math.toDegrees(one.trackGridRad() + convergenceRad));
        return String.format(Locale.ROOT, "%03d°", Math.floorMod(degrees, 360L));
    }
}
