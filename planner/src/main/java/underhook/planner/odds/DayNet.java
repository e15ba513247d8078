package underhook.planner.odds;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import underhook.core.job.Crew;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.job.Spreads;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/**
 * A plan's day as a network: its steps, its crews, and what each lift waits for.
 *
 * @param network all moments
 * @param pieces what is drawn for each day
 * @param wind moment that comes so much after the clock's zero as the wind comes late
 * @param starts moment at which each step begins
 * @param ends moment at which each step ends
 * @param needs lifts that each lift can only come after, in any order of the day
 */
record DayNet(
        Clock clock,
        Network network,
        List<Piece> pieces,
        int wind,
        List<Integer> starts,
        List<Integer> ends,
        List<Lift> lifts,
        Map<Lift, List<Lift>> needs) {
    /** Whoever receives a load is there this long before it is let go, s. @source PRACTICE */
    private static final double RECEIVE_BEFORE_S = 60;

    /** From what must be before a hook-up is over to the hook-up's end at least, and from that until who hooked goes on, s. */
    private static final double HOOK_S = 1;

    DayNet {
        pieces = List.copyOf(pieces);
        starts = List.copyOf(starts);
        ends = List.copyOf(ends);
        lifts = List.copyOf(lifts);
        needs = Map.copyOf(needs);
    }

    static DayNet of(Job job, Plan plan) {
        return new Maker(job, plan).make();
    }

    private static final class Maker {
        private final Job job;
        private final Plan plan;
        private final Rules rules;
        private final Spreads spreads;
        private final Clock clock;
        private final NetMaker net = new NetMaker();
        private final int wind;
        private final MachineDay machine;
        private final CrewDay crews;
        private final Map<CrewDay.Visit, List<Lift>> worked = new HashMap<>();
        private final Map<Lift, Integer> busyPiece = new HashMap<>();
        private final Map<Lift, List<Lift>> needs = new HashMap<>();

        Maker(Job job, Plan plan) {
            this.job = job;
            this.plan = plan;
            this.rules = job.rules();
            this.spreads = rules.handling().spreads();
            this.clock = new Clock(rules.duty().from());
            this.wind = net.moment(0);
            net.add(
                    new Edge(
                            NetMaker.ZERO,
                            wind,
                            0,
                            1,
                            net.piece(Piece.of(spreads.windLater(), Piece.Luck.WIND)),
                            Edge.Kind.ORDER,
                            ""));
            this.machine = new MachineDay(job, plan.steps(), clock, net);
            this.crews = new CrewDay(job, plan, clock, net, machine);
        }

        DayNet make() {
            for (int i = 0; i < machine.lifts().size(); i++) {
                Lift lift = machine.lifts().get(i);
                hookUp(lift);
                setDown(lift);
                order(lift, machine.lifts().subList(0, i));
                opening(lift);
            }
            refuelling();
            return new DayNet(
                    clock,
                    net.make(),
                    net.pieces(),
                    wind,
                    machine.starts(),
                    machine.ends(),
                    machine.lifts(),
                    needs);
        }

        private boolean isSite(PlaceId place) {
            return job.getPlace(place).isSite();
        }

        private void hookUp(Lift lift) {
            PlaceId place = lift.from().id();
            List<Crew> there = crews.staying(place, Crew.Role.HOOK);
            // Whoever hooks is there when the hook-up begins.
            double beforeS = Math.max(HOOK_S, lift.hookUpS());
            if (there.isEmpty() && isSite(place)) {
                double hookedS = net.plannedS(lift.hooked());
                crews.visit(place, Crew.Role.HOOK, hookedS - beforeS, hookedS)
                        .ifPresent(visit -> work(lift, visit, lift.hooked(), beforeS));
                return;
            }
            there.stream()
                    .findFirst()
                    .ifPresent(
                            crew ->
                                    await(
                                            lift,
                                            CrewDay.order(
                                                    crews.readyOf(crew), lift.hooked(), beforeS)));
            boolean alone = there.stream().allMatch(c -> c.roles().contains(Crew.Role.REFUEL));
            if (alone) {
                lastRefuel(lift.step(), place)
                        .ifPresent(
                                step ->
                                        await(
                                                lift,
                                                new Edge(
                                                        machine.ends().get(step),
                                                        lift.hooked(),
                                                        rules.refuelling().refuelHandlerBusyS()
                                                                + beforeS,
                                                        0,
                                                        NetMaker.STEADY,
                                                        Edge.Kind.HANDLER,
                                                        place.value())));
            }
        }

        private Optional<Integer> lastRefuel(int before, PlaceId place) {
            for (int i = before - 1; i >= 0; i--) {
                Step step = plan.steps().get(i);
                if (step.kind() == StepKind.REFUEL && step.from().equals(place)) {
                    return Optional.of(i);
                }
            }
            return Optional.empty();
        }

        private void setDown(Lift lift) {
            PlaceId place = lift.to().id();
            List<Crew> there = crews.staying(place, Crew.Role.RECEIVE);
            if (!isSite(place) || (!lift.standsUp() && !there.isEmpty())) {
                there.stream()
                        .findFirst()
                        .ifPresent(
                                crew ->
                                        await(
                                                lift,
                                                CrewDay.order(
                                                        crews.readyOf(crew),
                                                        lift.released(),
                                                        receiveBeforeS(lift))));
                return;
            }
            double fromS = net.plannedS(lift.released()) - receiveBeforeS(lift);
            double untilS = net.plannedS(lift.done());
            Optional<CrewDay.Visit> guyed =
                    lift.standsUp()
                            ? crews.visit(place, Crew.Role.GUY, fromS, untilS + lift.busyAfterS())
                            : Optional.empty();
            guyed.or(() -> crews.visit(place, Crew.Role.RECEIVE, fromS, untilS))
                    .ifPresent(visit -> receive(lift, visit));
        }

        private double receiveBeforeS(Lift lift) {
            return Math.max(RECEIVE_BEFORE_S, lift.standingUpS());
        }

        private void receive(Lift lift, CrewDay.Visit visit) {
            work(lift, visit, lift.released(), receiveBeforeS(lift));
            if (lift.standsUp()) {
                ready(lift, visit);
            }
        }

        /** A crew works on a lift: it has come, is done with what came before, and leaves afterwards. */
        private void work(Lift lift, CrewDay.Visit visit, int moment, double beforeS) {
            await(lift, CrewDay.order(visit.arrived(), moment, beforeS));
            List<Lift> earlier = worked.computeIfAbsent(visit, key -> new ArrayList<>());
            for (Lift other : earlier) {
                await(lift, busy(other, moment, beforeS));
            }
            if (moment == lift.released()) {
                net.add(busy(lift, visit.leaves(), 0));
                earlier.add(lift);
            } else {
                net.add(moment, visit.leaves(), HOOK_S);
            }
        }

        /** From a lift's last release on the crew is busy with it. */
        private Edge busy(Lift lift, int moment, double fixedS) {
            int piece =
                    busyPiece.computeIfAbsent(
                            lift, key -> net.piece(spreads.people(), Piece.Luck.PEOPLE));
            return new Edge(
                    lift.done(), moment, fixedS, lift.busyAfterS(), piece, Edge.Kind.ORDER, "");
        }

        /** What makes the place ready lies there, and people make use of it. */
        private void ready(Lift pole, CrewDay.Visit visit) {
            for (Lift bag : machine.lifts()) {
                boolean before =
                        bag.step() < pole.step()
                                && bag.readyAfterS() > 0
                                && bag.to().id().equals(pole.to().id());
                if (before) {
                    need(pole, bag);
                    int piece = net.piece(spreads.people(), Piece.Luck.PEOPLE);
                    for (int since : new int[] {bag.done(), visit.arrived()}) {
                        await(
                                pole,
                                new Edge(
                                        since,
                                        pole.released(),
                                        pole.standingUpS(),
                                        bag.readyAfterS(),
                                        piece,
                                        Edge.Kind.MAKING_READY,
                                        ""));
                    }
                }
            }
        }

        /** What the load list and the kinds say must come first. */
        private void order(Lift lift, List<Lift> before) {
            for (Lift other : before) {
                rotationWaitS(lift, other)
                        .ifPresent(
                                waitS -> {
                                    need(lift, other);
                                    await(
                                            lift,
                                            CrewDay.order(other.done(), lift.released(), waitS));
                                });
                waitedForS(lift, other)
                        .ifPresent(
                                waitS ->
                                        await(
                                                lift,
                                                CrewDay.order(
                                                        other.done(),
                                                        lift.hooked(),
                                                        waitS + lift.hookUpS())));
                if (lift.lastAtPlace() && other.to().id().equals(lift.from().id())) {
                    need(lift, other);
                    await(lift, CrewDay.order(other.done(), lift.hooked(), HOOK_S));
                }
            }
        }

        /** Longest that a lift must come after another, s; empty when it need not. */
        private Optional<Double> rotationWaitS(Lift lift, Lift other) {
            return afterWaitS(lift, other)
                    .map(waitS -> waitS > 0 ? waitS + lift.standingUpS() : waitS);
        }

        /** Longest that a lift must not be hooked where another was set down, s; empty when it may be. */
        private Optional<Double> waitedForS(Lift lift, Lift other) {
            return afterWaitS(lift, other)
                    .filter(waitS -> waitS > 0 && other.to().id().equals(lift.from().id()));
        }

        private Optional<Double> afterWaitS(Lift lift, Lift other) {
            return lift.rotation().loads().stream()
                    .flatMap(id -> job.getLoad(id).after().stream())
                    .filter(after -> other.rotation().loads().contains(after.load()))
                    .map(Load.After::waitS)
                    .max(Double::compare);
        }

        /** The wind must have let up first, where the plan waits for that. */
        private void opening(Lift lift) {
            if (lift.hookWindow().opensS() > Double.NEGATIVE_INFINITY) {
                await(lift, CrewDay.order(wind, lift.hooked(), lift.hookWindow().opensS()));
            }
            if (lift.zoneWindow().opensS() > Double.NEGATIVE_INFINITY) {
                await(lift, CrewDay.order(wind, lift.hooked(), lift.zoneWindow().opensS()));
            }
            if (lift.dropWindow().opensS() > Double.NEGATIVE_INFINITY) {
                await(lift, CrewDay.order(wind, lift.released(), lift.dropWindow().opensS()));
            }
        }

        private void refuelling() {
            for (int i = 0; i < plan.steps().size(); i++) {
                Step step = plan.steps().get(i);
                List<Crew> there = crews.staying(step.from(), Crew.Role.REFUEL);
                if (step.kind() == StepKind.REFUEL && !there.isEmpty()) {
                    machine.await(
                            i,
                            CrewDay.order(crews.readyOf(there.get(0)), machine.starts().get(i), 0));
                }
            }
        }

        private void need(Lift lift, Lift other) {
            needs.computeIfAbsent(lift, key -> new ArrayList<>()).add(other);
        }

        private void await(Lift lift, Edge edge) {
            machine.await(lift.step(), edge);
        }
    }
}
