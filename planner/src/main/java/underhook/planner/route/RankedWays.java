package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.planner.route.Directions.Judged;
import underhook.planner.route.Directions.Ranked;

/**
 * The ways in to a place and out of it that are allowed at an hour, best first, each by its index; and why
 * one is taken.
 */
public final class RankedWays {
    private final PlaceHour at;
    private final Ranked in;
    private final List<Judged> ins;
    private final List<Judged> outs;
    private final List<String> refusedInto;

    RankedWays(PlaceHour at, Ranked in, Ranked out, List<String> refusedInto) {
        this.at = at;
        this.in = in;
        this.ins = in.all().stream().filter(Judged::isAllowed).toList();
        this.outs = out.all().stream().filter(Judged::isAllowed).toList();
        this.refusedInto = List.copyOf(refusedInto);
    }

    /** How many ways in there are. */
    public int countIn() {
        return ins.size();
    }

    /** How many ways out there are. */
    public int countOut() {
        return outs.size();
    }

    /** Index of the way in that comes from a bearing; -1 when it is not among them. */
    public int findIn(double approachFromGridRad) {
        return find(ins, approachFromGridRad + Math.PI);
    }

    /** Index of the way out on a track; -1 when it is not among them. */
    public int findOut(double trackGridRad) {
        return find(outs, trackGridRad);
    }

    private static int find(List<Judged> all, double trackGridRad) {
        long wanted = LegFinder.millionths(trackGridRad);
        for (int i = 0; i < all.size(); i++) {
            if (Math.abs(LegFinder.millionths(all.get(i).trackGridRad()) - wanted) <= 1) {
                return i;
            }
        }
        return -1;
    }

    /** What speaks against a way in; one is worth ten degrees off the wind. */
    public double inPriceRatio(int index) {
        return ins.get(index).priceRatio();
    }

    /** The same of a way out. */
    public double outPriceRatio(int index) {
        return outs.get(index).priceRatio();
    }

    /** The best way in with the best way out. */
    public WayIn best() {
        return way(ins.get(0), outs.get(0), "");
    }

    /**
     * A way in that the place alone would not have chosen.
     *
     * @param instead what the leg would pass over on the best one, in words
     */
    public WayIn in(int index, String instead) {
        return way(ins.get(index), outs.get(0), index == 0 ? "" : instead);
    }

    /** A way out that the place alone would not have chosen. */
    public WayIn out(int index) {
        return way(ins.get(0), outs.get(index), "");
    }

    /** What is said of a way out that the place alone would not have chosen; bearings TRUE. */
    public String outWords(int index, String instead) {
        return "out on track "
                + shown(outs.get(index))
                + ", "
                + offWind(outs.get(index))
                + spoken(outs.get(index))
                + "; on "
                + shown(outs.get(0))
                + " "
                + instead;
    }

    private WayIn way(Judged wayIn, Judged wayOut, String instead) {
        LegFinder.PlaceWind wind = at.wind();
        double offRad = wind.fromGridRad() - wayIn.trackGridRad();
        double outRad = wayOut.trackGridRad();
        double mostTailMPerS = Double.NEGATIVE_INFINITY;
        for (LegFinder.PlaceWind one : at.winds()) {
            mostTailMPerS =
                    Math.max(
                            mostTailMPerS,
                            -one.speedMPerS() * Math.cos(one.fromGridRad() - outRad));
        }
        return new WayIn(
                Directions.normalRad(wayIn.trackGridRad() + Math.PI),
                outRad,
                wind.speedMPerS() * Math.cos(offRad),
                wind.speedMPerS() * Math.sin(offRad),
                mostTailMPerS,
                reasons(wayIn, instead),
                refusedInto);
    }

    /** Why this one, the second best, why not the others; bearings TRUE. */
    private List<String> reasons(Judged chosen, String instead) {
        List<String> all = new ArrayList<>();
        all.add(why(chosen, instead));
        ins.stream()
                .filter(one -> !one.equals(chosen))
                .findFirst()
                .ifPresent(
                        second ->
                                all.add(
                                        (instead.isEmpty() ? "second best: track " : "else: track ")
                                                + shown(second)
                                                + ", "
                                                + offWind(second)
                                                + spoken(second)));
        all.addAll(in.whyNot(at.convergenceRad()));
        return all;
    }

    private String why(Judged chosen, String instead) {
        String own = offWind(chosen) + spoken(chosen);
        if (!instead.isEmpty()) {
            return own + "; on track " + shown(ins.get(0)) + " " + instead;
        }
        Judged into = in.intoWind();
        List<String> against = into.isAllowed() ? into.words() : into.refusals();
        return own
                + (chosen.equals(into) || against.isEmpty()
                        ? ""
                        : "; straight into it: " + String.join(", ", against));
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
