package underhook.planner.order;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import underhook.core.plan.Leg;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;

/**
 * What letting go means on a leg that slows down toward its end: the last stretches take longer than at the
 * leg's speed.
 *
 * <p>At a steady deceleration the time left from a distance s before the end is the whole time times √(s over
 * the whole distance).
 *
 * @source DERIVED s = a t²/2 counted from the end
 */
final class SlowLook {
    private SlowLook() {}

    /** The look of a leg with its slowing down counted in. */
    static ReleaseLook of(ReleaseLook look, Leg leg) {
        if (leg.slowing().isEmpty() || look.stretches().isEmpty()) {
            return look;
        }
        List<Stretch> stretches =
                look.stretches().stream()
                        .map(one -> slowed(one, leg, leg.slowing().orElseThrow()))
                        .toList();
        return new ReleaseLook(
                stretches,
                Math.max(
                        look.longestClosedS(),
                        longestS(stretches, EnumSet.of(Use.CLOSED, Use.GUARDED))),
                Math.max(
                        look.longestUnnamedS(),
                        longestS(stretches, EnumSet.of(Use.CLOSED, Use.GUARDED, Use.OPEN))),
                look.farthestM());
    }

    private static Stretch slowed(Stretch stretch, Leg leg, Leg.Slowing slowing) {
        double beginM = leg.distanceM() - slowing.beginM();
        double lengthM = stretch.toM() - stretch.fromM();
        if (!(stretch.toM() > beginM && lengthM > 0 && slowing.beginM() > 0)) {
            return stretch;
        }
        double slowFromM = Math.max(beginM, stretch.fromM());
        double before = (slowFromM - stretch.fromM()) / lengthM * stretch.durationS();
        double slow =
                leftS(leg.distanceM() - slowFromM, slowing)
                        - leftS(Math.max(0, leg.distanceM() - stretch.toM()), slowing);
        return new Stretch(
                stretch.use(),
                stretch.fromM(),
                stretch.toM(),
                Math.max(stretch.durationS(), before + slow),
                stretch.what());
    }

    private static double leftS(double beforeEndM, Leg.Slowing slowing) {
        return slowing.lastsS() * Math.sqrt(Math.min(1, beforeEndM / slowing.beginM()));
    }

    /** Longest time on end in one of these uses, s, rounded up to tenths. */
    private static double longestS(List<Stretch> stretches, Set<Use> uses) {
        double longest = 0;
        double now = 0;
        for (Stretch stretch : stretches) {
            now = uses.contains(stretch.use()) ? now + stretch.durationS() : 0;
            longest = Math.max(longest, now);
        }
        return Math.max(0.0, Math.ceil(longest * 10 - 1e-6) / 10);
    }
}
