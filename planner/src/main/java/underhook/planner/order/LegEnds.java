package underhook.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import underhook.planner.order.DayLegs.LegAt;
import underhook.planner.route.ClearLegs;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.RankedWays;
import underhook.planner.route.WayIn;

/**
 * Chooses the way out and the way in of one leg.
 *
 * <p>First those that suit the places best. Where a load let go on the leg could hit something at one end,
 * the way there is shut, its neighbours too, and the next best is tried; when none is left, the neighbours
 * after all. Then single ends are changed: for a neighbour that was left out, and where the leg passes over
 * something at a price that a way in plan need not pay. What is best in time, prices and directions together
 * is flown.
 */
final class LegEnds {
    /** Ways in, and ways out, that are tried where what falls could hit something. */
    private static final int WAYS_TRIED = 8;

    /** Single changes that are tried where what is passed over has a price. */
    private static final int CHANGES_TRIED = 40;

    /**
     * What ten degrees off the wind are worth in a leg's time, s.
     *
     * @source PRACTICE judgement: a guarded road counts three times ten degrees below a last part and 30 s
     *     on the leg
     */
    static final double STEP_WORTH_S = 10;

    /** No change is looked for when less could be saved, s. */
    private static final double WORTH_LOOKING_S = 2 * STEP_WORTH_S;

    private static final List<String> UNKNOWN_GROUND = List.of("ground that is not known");

    private static final String NO_BETTER = "no better leg was found";

    /** A leg of which only the ends are open. */
    interface Asked {
        Optional<RankedWays> out(Map<Long, List<String>> shut);

        Optional<RankedWays> in(Map<Long, List<String>> shut);

        ClearLegs.Found leg(WayIn out, WayIn in);

        Optional<LegAt> timed(FlownLeg leg, WayIn out, WayIn in);

        /** Whether no more may be looked for. */
        boolean isOver();

        /** Whether anything hangs there that could be let go. */
        boolean isSlung();

        void refused(ClearLegs.Found found);

        double priceS(LegAt leg);

        double priceAnyhowS(LegAt leg);

        double leastS(LegAt leg);
    }

    /** A leg with the indices of its ends. */
    private record Choice(int out, int in, LegAt leg, long costMs, double endsRatio) {}

    /** One end changed. */
    private record Change(int out, int in, double endsRatio) {}

    private final Asked asked;
    private final ShutWays shutOut = new ShutWays();
    private final ShutWays shutIn = new ShutWays();

    LegEnds(Asked asked) {
        this.asked = asked;
    }

    /** The leg; empty when there is none on any way out and in that was tried. */
    Optional<LegAt> find() {
        Optional<LegAt> found = first(true);
        if (found.isEmpty() && (shutOut.hasUnseen() || shutIn.hasUnseen()) && !asked.isOver()) {
            found = first(false);
        }
        return found.map(this::better);
    }

    /**
     * By the best ways that are not shut.
     *
     * @param coarse whether neighbours are shut too: what is in reach of one mostly is of them
     */
    private Optional<LegAt> first(boolean coarse) {
        Optional<RankedWays> outs = asked.out(coarse ? shutOut.all() : shutOut.tried());
        Optional<RankedWays> ins = asked.in(coarse ? shutIn.all() : shutIn.tried());
        int triedOut = 1;
        int triedIn = 1;
        while (outs.isPresent() && ins.isPresent()) {
            WayIn out = outs.get().best();
            WayIn in = ins.get().best();
            ClearLegs.Found found = asked.leg(out, in);
            if (found.leg().isPresent()) {
                return asked.timed(found.leg().get(), out, in);
            }
            if (!asked.isSlung() || asked.isOver()) {
                return Optional.empty();
            }
            asked.refused(found);
            List<String> why = why(found);
            boolean atStart = found.side().isAtStart() && triedOut < WAYS_TRIED;
            boolean atEnd = found.side().isAtEnd() && triedIn < WAYS_TRIED;
            if (!atStart && !atEnd) {
                return Optional.empty();
            }
            if (atEnd) {
                triedIn++;
                shutIn.add(in.approachFromGridRad(), why);
                ins = asked.in(coarse ? shutIn.all() : shutIn.tried());
            }
            if (atStart) {
                triedOut++;
                shutOut.add(out.departureTrackGridRad(), why);
                outs = asked.out(coarse ? shutOut.all() : shutOut.tried());
            }
        }
        return Optional.empty();
    }

    private static List<String> why(ClearLegs.Found found) {
        return found.unknownGround() ? UNKNOWN_GROUND : found.inReach();
    }

    private LegAt better(LegAt found) {
        boolean none = shutOut.tried().isEmpty() && shutIn.tried().isEmpty();
        if (!asked.isSlung() || (none && !isWorthLooking(found))) {
            return found;
        }
        RankedWays outs = asked.out(shutOut.tried()).orElseThrow();
        RankedWays ins = asked.in(shutIn.tried()).orElseThrow();
        int out = outs.findOut(found.wayOut().departureTrackGridRad());
        int in = ins.findIn(found.wayIn().approachFromGridRad());
        if (out < 0 || in < 0) {
            return found;
        }
        double endsRatio = outs.outPriceRatio(out) + ins.inPriceRatio(in);
        Choice first = new Choice(out, in, found, costMs(found, endsRatio), endsRatio);
        Choice second = changed(first, outs, ins);
        Choice third = second.costMs() < first.costMs() ? changed(second, outs, ins) : second;
        Choice best = third.costMs() < first.costMs() ? third : first;
        return none && best.equals(first) ? found : said(first, best, outs, ins);
    }

    private boolean isWorthLooking(LegAt leg) {
        double priceS = asked.priceS(leg);
        return priceS >= WORTH_LOOKING_S && priceS - asked.priceAnyhowS(leg) >= WORTH_LOOKING_S;
    }

    private long costMs(LegAt leg, double endsRatio) {
        return ms(leg.durationS() + asked.priceS(leg) + endsRatio * STEP_WORTH_S);
    }

    private static long ms(double timeS) {
        return Math.round(timeS * 1000);
    }

    /** The best with one end changed, the given one where none is better. */
    private Choice changed(Choice from, RankedWays outs, RankedWays ins) {
        Choice best = from;
        double leastS = asked.leastS(from.leg());
        int tried = 0;
        for (Change change : changes(from, outs, ins)) {
            boolean hopeless = ms(leastS + change.endsRatio() * STEP_WORTH_S) >= best.costMs();
            boolean nearer = change.endsRatio() < from.endsRatio();
            if (hopeless
                    || tried >= CHANGES_TRIED
                    || asked.isOver()
                    || (!nearer && !isWorthLooking(best.leg()))) {
                break;
            }
            tried++;
            WayIn out = outs.out(change.out(), "");
            WayIn in = ins.in(change.in(), "");
            ClearLegs.Found found = asked.leg(out, in);
            Optional<LegAt> other = found.leg().flatMap(leg -> asked.timed(leg, out, in));
            if (change.in() == from.in() && found.side().isAtStart()) {
                shutOut.look(out.departureTrackGridRad(), why(found));
            } else if (change.out() == from.out() && found.side().isAtEnd()) {
                shutIn.look(in.approachFromGridRad(), why(found));
            }
            if (other.isPresent()) {
                long costMs = costMs(other.get(), change.endsRatio());
                if (costMs < best.costMs()) {
                    best =
                            new Choice(
                                    change.out(),
                                    change.in(),
                                    other.get(),
                                    costMs,
                                    change.endsRatio());
                }
            }
        }
        return best;
    }

    /** Every change of one end, those that suit the places best first. */
    private static List<Change> changes(Choice from, RankedWays outs, RankedWays ins) {
        List<Change> all = new ArrayList<>();
        double outRatio = outs.outPriceRatio(from.out());
        double inRatio = ins.inPriceRatio(from.in());
        for (int out = 0; out < outs.countOut(); out++) {
            if (out != from.out()) {
                all.add(new Change(out, from.in(), outs.outPriceRatio(out) + inRatio));
            }
        }
        for (int in = 0; in < ins.countIn(); in++) {
            if (in != from.in()) {
                all.add(new Change(from.out(), in, outRatio + ins.inPriceRatio(in)));
            }
        }
        all.sort(Comparator.comparingLong(one -> Math.round(one.endsRatio() * 1000)));
        return all;
    }

    /** In words: what the places alone would not have chosen, and what was found on the way to it. */
    private LegAt said(Choice first, Choice chosen, RankedWays outs, RankedWays ins) {
        String instead = chosen.equals(first) ? NO_BETTER : instead(first, chosen);
        boolean inMoved = ins.inPriceRatio(chosen.in()) > ins.inPriceRatio(first.in());
        boolean outMoved = outs.outPriceRatio(chosen.out()) > outs.outPriceRatio(first.out());
        LegAt leg = chosen.leg();
        double outRad = leg.wayOut().departureTrackGridRad();
        double inRad = leg.wayIn().approachFromGridRad();
        RankedWays outsSeen = asked.out(shutOut.seenBeside(outRad)).orElseThrow();
        RankedWays insSeen = asked.in(shutIn.seenBeside(inRad)).orElseThrow();
        int out = outsSeen.findOut(outRad);
        int in = insSeen.findIn(inRad);
        return leg.with(
                outsSeen.out(out, outMoved ? instead : NO_BETTER),
                insSeen.in(in, inMoved ? instead : NO_BETTER));
    }

    private static String instead(Choice first, Choice chosen) {
        TreeSet<String> spared = new TreeSet<>();
        first.leg().leg().crossings().forEach(crossed -> spared.add(crossed.feature()));
        chosen.leg().leg().crossings().forEach(crossed -> spared.remove(crossed.feature()));
        return spared.isEmpty()
                ? "the leg would cost " + (first.costMs() - chosen.costMs()) / 1000 + " s more"
                : "the leg would pass over " + String.join(", ", spared);
    }
}
