package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import underhook.planner.route.Directions.Gap;
import underhook.planner.route.Directions.Judged;
import underhook.planner.route.Directions.Ranked;

/**
 * The ways in to a place and out of it that are allowed at an hour, best first, each by its index; why one
 * is taken, and why not the others. Not safe for threads.
 */
public final class RankedWays {
    private final PlaceHour at;
    private final Side in;
    private final Side out;
    private final List<String> refusedInto;
    private @Nullable WayIn best;

    RankedWays(PlaceHour at, Ranked in, Ranked out, List<String> refusedInto) {
        this.at = at;
        this.in = new Side(in);
        this.out = new Side(out);
        this.refusedInto = List.copyOf(refusedInto);
    }

    /** The ways in, or the ways out. */
    private final class Side {
        final Ranked ranked;
        final List<Judged> allowed;
        private List<String> whyNot = List.of();

        Side(Ranked ranked) {
            this.ranked = ranked;
            this.allowed = ranked.all().stream().filter(Judged::isAllowed).toList();
        }

        int find(double trackGridRad) {
            long wanted = Approaches.millionths(trackGridRad);
            for (int i = 0; i < allowed.size(); i++) {
                long there = Approaches.millionths(allowed.get(i).trackGridRad());
                if (Math.abs(there - wanted) <= 1) {
                    return i;
                }
            }
            return -1;
        }

        /** Why this one, the second best, why not the others; bearings TRUE. */
        List<String> reasons(Judged chosen, String instead) {
            List<String> all = new ArrayList<>();
            all.add(why(chosen, instead));
            allowed.stream()
                    .filter(one -> !one.equals(chosen))
                    .findFirst()
                    .ifPresent(
                            second ->
                                    all.add(
                                            (instead.isEmpty() ? "second best" : "else")
                                                    + ": track "
                                                    + described(second)));
            // Asked for each way that is tried; it is the same for all.
            if (whyNot.isEmpty()) {
                whyNot = ranked.whyNot(at.convergenceRad());
            }
            all.addAll(whyNot);
            ranked.gaps(at.convergenceRad()).forEach(gap -> all.add(nextTo(gap, chosen)));
            return all;
        }

        private String why(Judged chosen, String instead) {
            String own = offWind(chosen) + spoken(chosen);
            if (!instead.isEmpty()) {
                return own + "; on track " + shown(allowed.get(0)) + " " + instead;
            }
            Judged into = ranked.intoWind();
            List<String> against = into.isAllowed() ? into.words() : into.refusals();
            return own
                    + (chosen.equals(into) || against.isEmpty()
                            ? ""
                            : "; straight into it: " + String.join(", ", against));
        }
    }

    /** Whether the same ways are judged the same, with the same words, in the same wind. */
    public boolean isLike(RankedWays other) {
        return at.winds().equals(other.at.winds())
                && in.ranked.equals(other.in.ranked)
                && out.ranked.equals(other.out.ranked)
                && refusedInto.equals(other.refusedInto);
    }

    /** How many ways in there are. */
    public int countIn() {
        return in.allowed.size();
    }

    /** How many ways out there are. */
    public int countOut() {
        return out.allowed.size();
    }

    /** Index of the way in that comes from a bearing; -1 when it is not among them. */
    public int findIn(double approachFromGridRad) {
        return in.find(approachFromGridRad + Math.PI);
    }

    /** Index of the way out on a track; -1 when it is not among them. */
    public int findOut(double trackGridRad) {
        return out.find(trackGridRad);
    }

    /** What speaks against a way in; one is worth ten degrees off the wind. */
    public double inPriceRatio(int index) {
        return in.allowed.get(index).priceRatio();
    }

    /** The same of a way out. */
    public double outPriceRatio(int index) {
        return out.allowed.get(index).priceRatio();
    }

    /** The best way in with the best way out. */
    public WayIn best() {
        WayIn known = best;
        if (known == null) {
            known = way(in.allowed.get(0), out.allowed.get(0), "", "");
            best = known;
        }
        return known;
    }

    /**
     * A way in that the place alone would not have chosen.
     *
     * @param instead what speaks against the leg on the best one, in words
     */
    public WayIn in(int index, String instead) {
        Judged wayIn = in.allowed.get(index);
        return way(wayIn, out.allowed.get(0), index == 0 ? "" : instead, "");
    }

    /** A way out that the place alone would not have chosen. */
    public WayIn out(int index, String instead) {
        Judged wayOut = out.allowed.get(index);
        return way(in.allowed.get(0), wayOut, "", index == 0 ? "" : instead);
    }

    private WayIn way(Judged wayIn, Judged wayOut, String insteadIn, String insteadOut) {
        double outRad = wayOut.trackGridRad();
        double leastHeadMPerS = Double.POSITIVE_INFINITY;
        double mostCrossMPerS = 0;
        double mostTailMPerS = Double.NEGATIVE_INFINITY;
        for (PlaceWind one : at.winds()) {
            double offRad = one.fromGridRad() - wayIn.trackGridRad();
            double crossMPerS = one.speedMPerS() * Math.sin(offRad);
            leastHeadMPerS = Math.min(leastHeadMPerS, one.speedMPerS() * Math.cos(offRad));
            mostCrossMPerS =
                    Math.abs(crossMPerS) > Math.abs(mostCrossMPerS) ? crossMPerS : mostCrossMPerS;
            mostTailMPerS =
                    Math.max(
                            mostTailMPerS,
                            -one.speedMPerS() * Math.cos(one.fromGridRad() - outRad));
        }
        List<String> outReasons = new ArrayList<>(out.reasons(wayOut, insteadOut));
        outReasons.set(0, "track " + shown(wayOut) + ", " + outReasons.get(0));
        return new WayIn(
                Directions.normalRad(wayIn.trackGridRad() + Math.PI),
                outRad,
                leastHeadMPerS,
                mostCrossMPerS,
                mostTailMPerS,
                in.reasons(wayIn, insteadIn),
                outReasons,
                refusedInto);
    }

    /** The nearest directions to refused ones that the place allows, and how much they are worse. */
    private String nextTo(Gap gap, Judged chosen) {
        String left = compared(gap.left(), chosen);
        String right = compared(gap.right(), chosen);
        return "next to tracks "
                + gap.tracks()
                + ": "
                + (gap.left().equals(gap.right()) ? left : left + "; " + right);
    }

    private String compared(Judged one, Judged chosen) {
        if (one.equals(chosen)) {
            return shown(one) + " is taken";
        }
        long worseDeg = Math.round((one.priceRatio() - chosen.priceRatio()) * Directions.STEP_DEG);
        String how =
                worseDeg == 0
                        ? "no worse"
                        : (worseDeg > 0 ? "worse" : "better")
                                + " like "
                                + Math.abs(worseDeg)
                                + "° off the wind";
        return described(one) + ", " + how;
    }

    private String described(Judged one) {
        return shown(one) + ", " + offWind(one) + spoken(one);
    }

    private static String offWind(Judged one) {
        long offDeg = Math.round(Math.abs(Math.toDegrees(one.offWindRad())));
        return offDeg == 0 ? "straight into the wind" : offDeg + "° off the wind";
    }

    private static String spoken(Judged one) {
        return one.words().isEmpty() ? "" : " (" + String.join(", ", one.words()) + ")";
    }

    private String shown(Judged one) {
        long degrees = Math.round(Math.toDegrees(one.trackGridRad() + at.convergenceRad()));
        return String.format(Locale.ROOT, "%03d°", Math.floorMod(degrees, 360L));
    }
}
