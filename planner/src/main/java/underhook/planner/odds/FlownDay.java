package underhook.planner.odds;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import underhook.core.job.Machine;
import underhook.core.job.Rules;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * A drawn day as it is flown: in the plan's order, but with a break ahead of what would have the engine on for too long,
 * in the place of the next one that is planned. Mutable: one drawn day after the other.
 */
final class FlownDay {
    /** A time that is off by less is as planned, s. */
    private static final double DUST_S = 1e-3;

    private final DayNet net;
    private final Limits limits;
    private final Network network;
    private final Rules.Duty duty;
    private final Machine machine;
    private final List<Step> steps;
    private final int[] nextStand;
    private final double[] plannedLastsS;
    private final int[] starts;
    private final int[] ends;
    private final int[] chainEdge;
    private final int[][] restEdges;
    private final int[][] needs;
    private final double[] laterS;
    private final double[] timesS;
    private final boolean[] inTime;
    private boolean beforeWind;
    private boolean beforeDark;
    private boolean withinDuty;
    private boolean withinFuel;
    private double slackS;

    /**
     * @param network the day's own or a changed one
     */
    FlownDay(DayNet net, Network network, Limits limits) {
        this.net = net;
        this.network = network;
        this.limits = limits;
        this.duty = limits.duty();
        this.machine = limits.machine();
        this.steps = limits.steps();
        this.starts = net.starts().stream().mapToInt(Integer::intValue).toArray();
        this.ends = net.ends().stream().mapToInt(Integer::intValue).toArray();
        this.nextStand = new int[steps.size()];
        this.plannedLastsS = new double[steps.size()];
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            nextStand[i] = limits.nextStand(i);
            plannedLastsS[i] = net.clock().timeS(step.endAt()) - net.clock().timeS(step.startAt());
        }
        this.laterS = new double[network.edges().size()];
        this.timesS = new double[network.moments()];
        this.inTime = new boolean[net.lifts().size()];
        this.chainEdge = new int[steps.size()];
        this.restEdges = new int[steps.size()][];
        List<Edge> edges = network.edges();
        for (int i = 0; i < steps.size(); i++) {
            int end = ends[i];
            chainEdge[i] = i == 0 ? -1 : find(edges, ends[i - 1], starts[i]);
            List<Integer> rests = new ArrayList<>();
            for (int e = 0; e < edges.size(); e++) {
                if (edges.get(e).kind() == Edge.Kind.REST && edges.get(e).to() == end) {
                    rests.add(e);
                }
            }
            restEdges[i] = rests.stream().mapToInt(Integer::intValue).toArray();
        }
        Map<Lift, Integer> number = new HashMap<>();
        net.lifts().forEach(lift -> number.put(lift, number.size()));
        this.needs =
                net.lifts().stream()
                        .map(
                                lift ->
                                        net.needs().getOrDefault(lift, List.of()).stream()
                                                .mapToInt(number::get)
                                                .toArray())
                        .toArray(int[][]::new);
    }

    private static int find(List<Edge> edges, int from, int to) {
        for (int e = 0; e < edges.size(); e++) {
            if (edges.get(e).from() == from && edges.get(e).to() == to) {
                return e;
            }
        }
        throw new IllegalArgumentException("a step does not follow the one ahead of it.");
    }

    /** Flies a day. */
    void fly(double[] drawnFactor) {
        Arrays.fill(laterS, 0);
        network.run(drawnFactor, laterS, timesS);
        for (int step = judge(); step >= 0; step = judge()) {
            laterS[chainEdge[step]] = duty.breakS();
            skipBreakBehind(step);
            network.run(drawnFactor, laterS, timesS);
        }
    }

    /** The next break that is still taken as planned is none any more. */
    private void skipBreakBehind(int step) {
        for (int i = step; i < steps.size(); i++) {
            if (restEdges[i].length > 0 && laterS[restEdges[i][0]] == 0) {
                for (int edge : restEdges[i]) {
                    laterS[edge] = Double.NEGATIVE_INFINITY;
                }
                return;
            }
        }
    }

    /**
     * Judges the day as it is now.
     *
     * @return number of the first step before which a break keeps what follows from being too long: the day is then to be
     *     flown so and judged again; negative where none is needed or can be
     */
    private int judge() {
        beforeWind = true;
        beforeDark = true;
        withinDuty = true;
        withinFuel = true;
        slackS = limits.dutyUntilS() - finishS();
        List<Lift> lifts = net.lifts();
        Engine engine = new Engine();
        boolean over = false;
        int lift = 0;
        for (int from = 0; from < steps.size(); from = nextStand[from] + 1) {
            boolean fuel = true;
            boolean mayRest = mayRest(from) && !engine.isRested();
            double longestS = 0;
            for (int i = from; i <= nextStand[from]; i++) {
                engine.step(i);
                longestS = Math.max(longestS, engine.stretchS);
                double endS = timesS[ends[i]];
                double leftS =
                        Math.min(
                                duty.engineOnDayS() - engine.onS,
                                duty.engineOnS() - engine.stretchS);
                boolean flies = Limits.flies(steps.get(i));
                double lightS = flies ? limits.lightUntilS() - endS : Double.POSITIVE_INFINITY;
                double spareKg =
                        flies
                                ? steps.get(i).fuelEndKg() - engine.extraKg - limits.reserveKg()
                                : Double.POSITIVE_INFINITY;
                withinDuty &= leftS >= -DUST_S;
                beforeDark &= lightS >= 0;
                fuel &= spareKg >= 0;
                over |= leftS < -DUST_S || lightS < 0 || endS > limits.dutyUntilS() + DUST_S;
                slackS = Math.min(slackS, Math.min(leftS, lightS));
                slackS = Math.min(slackS, spareKg / machine.burnKgPerS());
            }
            if (mayRest && longestS > duty.engineOnS() + DUST_S) {
                return from;
            }
            withinFuel &= fuel;
            for (; lift < lifts.size() && lifts.get(lift).step() <= nextStand[from]; lift++) {
                double windowS = windowS(lifts.get(lift));
                beforeWind &= windowS >= 0;
                slackS = Math.min(slackS, windowS);
                inTime[lift] = !over && fuel && windowS >= 0 && allInTime(needs[lift]);
            }
        }
        withinDuty &= finishS() <= limits.dutyUntilS() + DUST_S;
        return -1;
    }

    /** Whether the machine may stand ahead of a step, and no break was put there. */
    private boolean mayRest(int step) {
        return step > 0 && limits.standsBefore(step) && laterS[chainEdge[step]] == 0;
    }

    private boolean allInTime(int[] lifts) {
        for (int lift : lifts) {
            if (!inTime[lift]) {
                return false;
            }
        }
        return true;
    }

    /** How long before its windows and the forecast end a lift is hooked up and let go, s; negative when it is too late. */
    private double windowS(Lift lift) {
        return Math.min(
                lift.slackS(timesS, timesS[net.wind()]),
                limits.forecastUntilS() - timesS[lift.done()]);
    }

    /** Times of the day's moments, s; the next day overwrites them. */
    double[] timesS() {
        return timesS;
    }

    double finishS() {
        return timesS[ends[ends.length - 1]];
    }

    /** Whether every lift is inside its windows. */
    boolean isBeforeWind() {
        return beforeWind;
    }

    boolean isBeforeDark() {
        return beforeDark;
    }

    /** Duty, and engine time between breaks and in the day. */
    boolean isWithinDuty() {
        return withinDuty;
    }

    /** Whether the reserve stays untouched with the refuelling that is planned. */
    boolean isWithinFuel() {
        return withinFuel;
    }

    boolean isInsideWindow(Lift lift) {
        return windowS(lift) >= 0;
    }

    /**
     * Whether a lift lies in time when the day is ended at its limits: it is inside its window, all that it needs lies
     * so, and the limits hold when the machine may next stand. Where fuel is short nothing is flown up to there.
     */
    boolean isInTime(int lift) {
        return inTime[lift];
    }

    /**
     * By how much the limit that is kept least is kept, s; negative when one is broken. Fuel counts for as long as cruise
     * burns it.
     */
    double slackS() {
        return slackS;
    }

    /** The engine over a drawn day, with what it burns more than planned since the last refuelling. */
    private final class Engine {
        private double onS;
        private double stretchS;
        private double offS;
        private double extraKg;

        void step(int i) {
            double startS = timesS[starts[i]];
            double lastsS = timesS[ends[i]] - startS;
            double gapS = i == 0 ? 0 : startS - timesS[ends[i - 1]];
            Step step = steps.get(i);
            if (step.kind() == StepKind.WAIT) {
                stand(i, gapS + lastsS, plannedLastsS[i]);
                return;
            }
            stand(i, gapS, 0);
            if (step.kind() == StepKind.REFUEL) {
                extraKg = 0;
            }
            if (!step.engineRunning()) {
                offS += lastsS;
                return;
            }
            run(lastsS);
            double longerS = lastsS - plannedLastsS[i];
            // More time counts at the hover's flow, less at the lower one.
            extraKg +=
                    longerS > 0
                            ? longerS * Math.max(machine.burnKgPerS(), machine.hoverBurnKgPerS())
                            : longerS * Math.min(machine.burnKgPerS(), machine.hoverBurnKgPerS());
        }

        boolean isRested() {
            return stretchS == 0 || offS >= duty.breakS() - DUST_S;
        }

        private void run(double lastsS) {
            if (isRested()) {
                stretchS = 0;
            }
            offS = 0;
            onS += lastsS;
            stretchS += lastsS;
        }

        /** The engine is stopped where the machine may stand and that saves fuel. */
        private void stand(int i, double lastsS, double plannedLastsS) {
            if (lastsS <= DUST_S && plannedLastsS <= DUST_S) {
                return;
            }
            boolean asPlanned = Math.abs(lastsS - plannedLastsS) <= DUST_S;
            boolean off =
                    asPlanned
                            ? !steps.get(i).engineRunning()
                            : limits.standsBefore(i) && (offS > 0 || costsMore(lastsS));
            boolean plannedOff = plannedLastsS > DUST_S && !steps.get(i).engineRunning();
            extraKg += standKg(lastsS, off) - standKg(plannedLastsS, plannedOff);
            if (off) {
                offS += lastsS;
            } else {
                run(lastsS);
            }
        }

        private boolean costsMore(double lastsS) {
            return lastsS * machine.burnKgPerS() > machine.startFuelKg();
        }

        private double standKg(double lastsS, boolean off) {
            return off ? machine.startFuelKg() : lastsS * machine.burnKgPerS();
        }
    }
}
