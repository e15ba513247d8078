package underhook.planner.odds;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import underhook.core.job.Job;
import underhook.core.job.Spreads;
import underhook.core.plan.Odds;
import underhook.core.plan.Plan;

/** Replays a plan's day. */
public final class DayOdds {
    /** How many days are drawn: a chance of nine in ten is then good to about one in a hundred. */
    public static final int REPLAYS = 4000;

    /** Changes that bring less than this much time and no chance are not told, s. */
    private static final double WORTH_S = 30;

    /** The late end of the day: so many end by then. */
    private static final double LATE_FRACTION = 0.9;

    /** Sums of seconds are good to this, s. */
    private static final double DUST_S = 1e-3;

    private final Job job;
    private final DayNet net;
    private final Limits limits;
    private final Draws draws;
    private final List<Change> changes;

    private DayOdds(Job job, Plan plan, SplittableRandom random) {
        this.job = job;
        this.net = DayNet.of(job, plan);
        this.limits = new Limits(job, plan, net.clock());
        this.draws = new Draws(net.pieces(), spreads().sharedFraction(), random);
        this.changes = Change.list(job, plan, net, limits);
    }

    private Spreads spreads() {
        return job.rules().handling().spreads();
    }

    /**
     * How safe a plan's finish is.
     *
     * @param plan re-checked, with at least one step
     * @param random seeded: the same plan and seed give the same odds on every machine
     * @throws IllegalArgumentException when the plan has no step or does not belong to the job
     */
    public static Odds of(Job job, Plan plan, SplittableRandom random) {
        if (plan.steps().isEmpty()) {
            throw new IllegalArgumentException("a plan without a step has no odds.");
        }
        return new DayOdds(job, plan, random).replay();
    }

    /**
     * By how much so many days keep every limit at least: above 0 where so many are in time.
     *
     * @param replays how many days are drawn with the plan's seed, above 0
     * @param keptFraction of the days, in (0, 1)
     * @return s, on the low side of the sampling error; negative where fewer are in time
     * @throws IllegalArgumentException when the plan has no step or does not belong to the job
     */
    public static double slackS(Job job, Plan plan, int replays, double keptFraction) {
        DayOdds odds = opened(job, plan);
        double[] slackS = new double[replays];
        FlownDay flown = odds.flown(odds.net.network());
        for (int day = 0; day < replays; day++) {
            flown.fly(odds.draws.nextFactor());
            slackS[day] = flown.slackS();
        }
        Arrays.sort(slackS);
        return slackS[Chances.rank(1 - keptFraction, replays)];
    }

    /**
     * How often all is in time, and nothing else: the same as {@link #of} says with the plan's seed, in less time.
     *
     * @throws IllegalArgumentException when the plan has no step or does not belong to the job
     */
    public static Odds.Chance allInTime(Job job, Plan plan) {
        DayOdds odds = opened(job, plan);
        FlownDay flown = odds.flown(odds.net.network());
        Tally tally = new Tally(REPLAYS);
        for (int day = 0; day < REPLAYS; day++) {
            flown.fly(odds.draws.nextFactor());
            tally.add(flown);
        }
        return tally.allInTime();
    }

    private static DayOdds opened(Job job, Plan plan) {
        if (plan.steps().isEmpty()) {
            throw new IllegalArgumentException("a plan without a step has no odds.");
        }
        return new DayOdds(job, plan, new SplittableRandom(plan.seed()));
    }

    private Odds replay() {
        List<FlownDay> changed = new ArrayList<>();
        List<Tally> tallies = new ArrayList<>();
        for (Change change : changes) {
            changed.add(flown(net.network().with(change.edit())));
            tallies.add(new Tally(REPLAYS));
        }
        FlownDay flown = flown(net.network());
        Tally asPlanned = new Tally(REPLAYS);
        PlacedLoads placed = new PlacedLoads(net, REPLAYS);
        LastStarts lastStarts = new LastStarts(net, limits, REPLAYS);
        for (int day = 0; day < REPLAYS; day++) {
            double[] drawnFactor = draws.nextFactor();
            flown.fly(drawnFactor);
            asPlanned.add(flown);
            placed.add(flown);
            lastStarts.add(flown);
            for (int i = 0; i < changed.size(); i++) {
                changed.get(i).fly(drawnFactor);
                tallies.get(i).add(changed.get(i));
            }
        }
        return new Odds(
                REPLAYS,
                asPlanned.allInTime(),
                asPlanned.beforeWind(),
                asPlanned.beforeDark(),
                asPlanned.withinDuty(),
                asPlanned.withinFuel(),
                placed.told(LATE_FRACTION),
                laterMinute(asPlanned.finishS(0.5)),
                laterMinute(asPlanned.finishS(LATE_FRACTION)),
                lastStarts.list(spreads().insideFraction()),
                gains(asPlanned, tallies),
                spreads().learned().stream().mapToInt(Spreads.Learned::samples).sum());
    }

    private FlownDay flown(Network network) {
        return new FlownDay(net, network, limits);
    }

    /** Whole minutes, rounded up; the dust of sums is not. */
    private Instant laterMinute(double timeS) {
        Instant at = net.clock().at(timeS - DUST_S);
        Instant minute = at.truncatedTo(ChronoUnit.MINUTES);
        return minute.equals(at) ? at : minute.plus(1, ChronoUnit.MINUTES);
    }

    /** What is worth telling, most first; words break ties. */
    private List<Odds.Gain> gains(Tally asPlanned, List<Tally> tallies) {
        List<Odds.Gain> gains = new ArrayList<>();
        for (int i = 0; i < tallies.size(); i++) {
            Odds.Gain gain = asPlanned.gain(changes.get(i).what(), tallies.get(i));
            if (gain.leastGainFraction() > 0 || gain.finishEarlierS() >= WORTH_S) {
                gains.add(gain);
            }
        }
        gains.sort(
                Comparator.comparingDouble(Odds.Gain::gainFraction)
                        .thenComparingDouble(Odds.Gain::finishEarlierS)
                        .reversed()
                        .thenComparing(Odds.Gain::what));
        return gains;
    }
}
