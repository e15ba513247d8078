package underhook.planner.odds;

import java.util.List;
import java.util.Optional;
import underhook.core.crew.Daylight;
import underhook.core.job.Job;
import underhook.core.job.Machine;
import underhook.core.job.Rules;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** Whether a drawn day ends before the wind, the dark and the duty limit, and on the planned fuel. */
final class Limits {
    /** Kept back from sunrise and sunset, which are good to about a minute, s. */
    private static final double SUN_S = 60;

    /** A planned time that is off by less is as planned, s. */
    private static final double DUST_S = 1e-3;

    private final DayNet net;
    private final Rules rules;
    private final Machine machine;
    private final List<Step> steps;
    private final boolean[] standing;
    private final boolean[] standsBehind;
    private final double[] plannedS;
    private final double lightFromS;
    private final double lightUntilS;
    private final double dutyUntilS;
    private final double forecastUntilS;

    Limits(Job job, Plan plan, DayNet net, double[] plannedS) {
        this.net = net;
        this.rules = job.rules();
        this.machine = job.machine();
        this.steps = plan.steps();
        this.plannedS = plannedS.clone();
        this.standing = new boolean[steps.size()];
        this.standsBehind = new boolean[steps.size()];
        for (int i = 0; i < standing.length; i++) {
            standing[i] = job.getPlace(steps.get(i).from()).standing();
            standsBehind[i] = job.getPlace(steps.get(i).to()).standing();
        }
        Optional<Daylight> light = Daylight.find(job.origin(), rules.duty().from());
        Clock clock = net.clock();
        this.lightFromS =
                light.map(day -> clock.timeS(day.from()) + SUN_S).orElse(Double.POSITIVE_INFINITY);
        this.lightUntilS =
                light.map(
                                day ->
                                        clock.timeS(day.until())
                                                - SUN_S
                                                - rules.duty().dayEndBeforeSunsetS())
                        .orElse(Double.NEGATIVE_INFINITY);
        this.dutyUntilS = rules.duty().longestS();
        this.forecastUntilS = clock.timeS(job.weather().until());
    }

    /** When the day ends at the latest, whatever the wind does, s. */
    double dayEndS() {
        return Math.min(lightUntilS, dutyUntilS);
    }

    double lightFromS() {
        return lightFromS;
    }

    boolean isInside(Lift lift, double[] timesS) {
        return lift.isInside(timesS, timesS[net.wind()]) && timesS[lift.done()] <= forecastUntilS;
    }

    boolean isBeforeWind(double[] timesS) {
        for (Lift lift : net.lifts()) {
            if (!isInside(lift, timesS)) {
                return false;
            }
        }
        return true;
    }

    boolean isBeforeDark(double[] timesS) {
        for (int i = steps.size() - 1; i >= 0; i--) {
            if (flies(steps.get(i))) {
                return timesS[net.ends().get(i)] <= lightUntilS;
            }
        }
        return true;
    }

    /** Number of the step, this one or a later one, behind which the machine may stand; the last one where none is. */
    int nextStand(int step) {
        int next = step;
        while (next + 1 < steps.size() && !standsBehind[next]) {
            next++;
        }
        return next;
    }

    static boolean flies(Step step) {
        return step.kind() == StepKind.ROTATION
                || step.kind() == StepKind.POSITION
                || step.kind() == StepKind.CREW_MOVE;
    }

    double finishS(double[] timesS) {
        return timesS[net.ends().get(steps.size() - 1)];
    }

    /** Duty, and engine time between breaks and in the day. */
    boolean isWithinDuty(double[] timesS) {
        Engine engine = new Engine();
        for (int i = 0; i < steps.size(); i++) {
            engine.step(i, timesS);
            if (engine.isOverTime()) {
                return false;
            }
        }
        return finishS(timesS) <= dutyUntilS + DUST_S;
    }

    /** Whether the reserve stays untouched with the refuelling that is planned. */
    boolean isWithinFuel(double[] timesS) {
        Engine engine = new Engine();
        for (int i = 0; i < steps.size(); i++) {
            engine.step(i, timesS);
            if (flies(steps.get(i)) && steps.get(i).fuelEndKg() - engine.extraKg < reserveKg()) {
                return false;
            }
        }
        return true;
    }

    /** Number of the first step at whose end the light, the duty or the fuel no longer holds; the steps' number when all do. */
    int firstBroken(double[] timesS) {
        Engine engine = new Engine();
        for (int i = 0; i < steps.size(); i++) {
            engine.step(i, timesS);
            double endS = timesS[net.ends().get(i)];
            boolean flies = flies(steps.get(i));
            if (engine.isOverTime()
                    || endS > dutyUntilS + DUST_S
                    || (flies && endS > lightUntilS)
                    || (flies && steps.get(i).fuelEndKg() - engine.extraKg < reserveKg())) {
                return i;
            }
        }
        return steps.size();
    }

    /**
     * By how much a drawn day keeps the limit that it keeps least, s; negative when it breaks one. Fuel counts for as
     * long as cruise burns it.
     */
    double slackS(double[] timesS) {
        double windS = timesS[net.wind()];
        double leastS = dutyUntilS - finishS(timesS);
        for (Lift lift : net.lifts()) {
            leastS = Math.min(leastS, lift.slackS(timesS, windS));
            leastS = Math.min(leastS, forecastUntilS - timesS[lift.done()]);
        }
        Engine engine = new Engine();
        for (int i = 0; i < steps.size(); i++) {
            engine.step(i, timesS);
            leastS = Math.min(leastS, rules.duty().engineOnDayS() - engine.onS);
            leastS = Math.min(leastS, rules.duty().engineOnS() - engine.stretchS);
            if (flies(steps.get(i))) {
                double spareKg = steps.get(i).fuelEndKg() - engine.extraKg - reserveKg();
                leastS = Math.min(leastS, lightUntilS - timesS[net.ends().get(i)]);
                leastS = Math.min(leastS, spareKg / machine.burnKgPerS());
            }
        }
        return leastS;
    }

    private double reserveKg() {
        return machine.reserveS() * machine.burnKgPerS() + machine.fuelGaugeSpreadKg();
    }

    /** The engine over a drawn day, with what it burns more than planned since the last refuelling. */
    private final class Engine {
        private double onS;
        private double stretchS;
        private double offS;
        private double extraKg;

        void step(int i, double[] timesS) {
            double startS = timesS[net.starts().get(i)];
            double lastsS = timesS[net.ends().get(i)] - startS;
            double gapS = i == 0 ? 0 : startS - timesS[net.ends().get(i - 1)];
            Step step = steps.get(i);
            if (step.kind() == StepKind.WAIT) {
                double planS = plannedS[net.ends().get(i)] - plannedS[net.starts().get(i)];
                wait(i, gapS + lastsS, planS);
                return;
            }
            wait(i, gapS, 0);
            if (step.kind() == StepKind.REFUEL) {
                extraKg = 0;
            }
            if (!step.engineRunning()) {
                offS += lastsS;
                return;
            }
            run(lastsS);
            double longerS = lastsS - (plannedS[net.ends().get(i)] - plannedS[net.starts().get(i)]);
            // More time counts at the hover's flow, less at the lower one.
            extraKg +=
                    longerS > 0
                            ? longerS * Math.max(machine.burnKgPerS(), machine.hoverBurnKgPerS())
                            : longerS * Math.min(machine.burnKgPerS(), machine.hoverBurnKgPerS());
        }

        private boolean isOverTime() {
            return onS > rules.duty().engineOnDayS() + DUST_S
                    || stretchS > rules.duty().engineOnS() + DUST_S;
        }

        private void run(double lastsS) {
            if (offS >= rules.duty().breakS() - DUST_S) {
                stretchS = 0;
            }
            offS = 0;
            onS += lastsS;
            stretchS += lastsS;
        }

        /** The engine is stopped where the machine may stand and that saves fuel. */
        private void wait(int i, double lastsS, double plannedLastsS) {
            if (lastsS <= DUST_S && plannedLastsS <= DUST_S) {
                return;
            }
            boolean asPlanned = Math.abs(lastsS - plannedLastsS) <= DUST_S;
            boolean off =
                    asPlanned
                            ? !steps.get(i).engineRunning()
                            : standing[i] && (offS > 0 || costsMore(lastsS));
            boolean plannedOff = plannedLastsS > DUST_S && !steps.get(i).engineRunning();
            extraKg += waitKg(lastsS, off) - waitKg(plannedLastsS, plannedOff);
            if (off) {
                offS += lastsS;
            } else {
                run(lastsS);
            }
        }

        private boolean costsMore(double lastsS) {
            return lastsS * machine.burnKgPerS() > machine.startFuelKg();
        }

        private double waitKg(double lastsS, boolean off) {
            return off ? machine.startFuelKg() : lastsS * machine.burnKgPerS();
        }
    }
}
