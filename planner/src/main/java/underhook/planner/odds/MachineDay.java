package underhook.planner.odds;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.core.job.Job;
import underhook.core.job.LoadKind;
import underhook.core.job.Place;
import underhook.core.job.Rules;
import underhook.core.job.Spreads;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** The machine's steps as moments, one after the other. Mutable while it is put together. */
final class MachineDay {
    private final Job job;
    private final Rules rules;
    private final Spreads spreads;
    private final Clock clock;
    private final NetMaker net;
    private final Windows windows;
    private final ZoneTimes zones;
    private final List<Step> steps;
    private final List<Integer> starts = new ArrayList<>();
    private final List<Integer> ends = new ArrayList<>();
    private final List<Lift> lifts = new ArrayList<>();

    MachineDay(Job job, List<Step> steps, Clock clock, NetMaker net) {
        this.job = job;
        this.rules = job.rules();
        this.spreads = rules.handling().spreads();
        this.clock = clock;
        this.net = net;
        this.windows = new Windows(job.weather());
        this.zones = new ZoneTimes(job, clock);
        this.steps = steps;
        for (int i = 0; i < steps.size(); i++) {
            add(i, steps.get(i));
        }
    }

    List<Integer> starts() {
        return List.copyOf(starts);
    }

    List<Integer> ends() {
        return List.copyOf(ends);
    }

    List<Lift> lifts() {
        return List.copyOf(lifts);
    }

    private void add(int index, Step step) {
        int start = net.moment(clock.timeS(step.startAt()));
        if (index == 0) {
            clockEdge(start);
        } else {
            net.add(ends.get(index - 1), start, 0);
        }
        starts.add(start);
        ends.add(net.moment(clock.timeS(step.endAt())));
        double lastsS = clock.timeS(step.endAt()) - clock.timeS(step.startAt());
        switch (step.kind()) {
            case ROTATION -> rotation(index, step, step.rotation().orElseThrow());
            case POSITION -> vary(index, lastsS, Edge.Kind.ORDER, spreads.cycle());
            case CREW_MOVE -> crewMove(index, step, lastsS);
            case REFUEL -> vary(index, lastsS, Edge.Kind.REFUEL, spreads.ground());
            case LINE_CHANGE -> vary(index, lastsS, Edge.Kind.LINE_CHANGE, spreads.ground());
            case BREAK -> rest(index);
            case WAIT -> net.add(start, ends.get(index), 0);
        }
    }

    /** Counted from when the engine was stopped; what is longer was a wait besides. */
    private void rest(int index) {
        int first = index;
        while (first > 0 && !steps.get(first - 1).engineRunning()) {
            first--;
        }
        double offS =
                clock.timeS(steps.get(index).endAt()) - clock.timeS(steps.get(first).startAt());
        net.add(starts.get(index), ends.get(index), 0);
        net.add(
                new Edge(
                        starts.get(first),
                        ends.get(index),
                        Math.min(offS, rules.duty().breakS()),
                        0,
                        NetMaker.STEADY,
                        Edge.Kind.REST,
                        ""));
    }

    private void clockEdge(int moment) {
        net.add(
                new Edge(
                        NetMaker.ZERO,
                        moment,
                        net.plannedS(moment),
                        0,
                        NetMaker.STEADY,
                        Edge.Kind.CLOCK,
                        ""));
    }

    private void vary(int index, double lastsS, Edge.Kind kind, Spreads.Ratios ratios) {
        Piece.Luck luck = kind == Edge.Kind.ORDER ? Piece.Luck.CYCLE : Piece.Luck.GROUND;
        net.add(
                new Edge(
                        starts.get(index),
                        ends.get(index),
                        0,
                        lastsS,
                        net.piece(ratios, luck),
                        kind,
                        ""));
    }

    private void crewMove(int index, Step step, double lastsS) {
        double legsS = step.legs().stream().mapToDouble(Leg::durationS).sum();
        double flownS = Math.min(legsS, lastsS);
        int landed = net.moment(net.plannedS(starts.get(index)) + flownS);
        vary(starts.get(index), landed, cycle());
        net.add(
                new Edge(
                        landed,
                        ends.get(index),
                        0,
                        lastsS - flownS,
                        net.piece(spreads.ground(), Piece.Luck.GROUND),
                        Edge.Kind.ORDER,
                        ""));
    }

    private int cycle() {
        return net.piece(spreads.cycle(), Piece.Luck.CYCLE);
    }

    /** As long as planned, times what is drawn. */
    private void vary(int from, int to, int piece) {
        double plannedS = net.plannedS(to) - net.plannedS(from);
        net.add(new Edge(from, to, 0, plannedS, piece, Edge.Kind.ORDER, ""));
    }

    private void rotation(int index, Step step, Rotation rotation) {
        List<LoadKind> kinds =
                rotation.loads().stream()
                        .map(id -> job.getKind(job.getLoad(id).kind()))
                        .distinct()
                        .toList();
        Place from = job.getPlace(job.getLoad(rotation.loads().get(0)).from());
        Place to = job.getPlace(rotation.drops().get(0).place());
        double hookedS = clock.timeS(rotation.hookedAt());
        double releasedS = clock.timeS(rotation.drops().get(0).releasedAt());
        double hoverS = kinds.stream().mapToDouble(LoadKind::setDownS).max().orElse(0);
        int hooked = net.moment(hookedS);
        int over = net.moment(Math.max(hookedS, releasedS - hoverS));
        int released = net.moment(releasedS);
        int last = rotation.drops().size() - 1;
        int done = net.moment(clock.timeS(rotation.drops().get(last).releasedAt()));
        boolean pole = kinds.stream().anyMatch(LoadKind::standsUp);
        vary(starts.get(index), hooked, cycle());
        vary(hooked, over, net.piece(flight(step, kinds, to)));
        net.add(
                new Edge(
                        over,
                        released,
                        0,
                        releasedS - net.plannedS(over),
                        pole ? net.piece(spreads.guying(), Piece.Luck.GUYING) : cycle(),
                        pole ? Edge.Kind.GUYING : Edge.Kind.ORDER,
                        ""));
        vary(released, done, cycle());
        vary(done, ends.get(index), cycle());
        lifts.add(
                new Lift(
                        index,
                        rotation,
                        kinds,
                        from,
                        to,
                        hooked,
                        released,
                        done,
                        windows.at(kinds, from, clock, rotation.hookedAt()),
                        windows.at(kinds, to, clock, rotation.drops().get(last).releasedAt()),
                        zones.of(step, rotation)));
    }

    /** How flights of this kind to such a place on this line vary. */
    private Piece flight(Step step, List<LoadKind> kinds, Place to) {
        String group =
                kinds.get(0).name()
                        + " / "
                        + to.kind().name().toLowerCase(Locale.ROOT)
                        + " / "
                        + Math.round(step.lineLengthM())
                        + " m";
        return Piece.of(spreads.flight(group), Piece.Luck.CYCLE);
    }

    /**
     * A step's moment waits, and so does the machine on the ground before it leaves for it.
     *
     * @param wait what for; its target is a moment of the step
     */
    void await(int step, Edge wait) {
        net.add(wait);
        ahead(wait, starts.get(step));
        for (int i = step - 1; i >= 0; i--) {
            StepKind kind = steps.get(i).kind();
            if (kind == StepKind.WAIT || kind == StepKind.BREAK) {
                ahead(wait, ends.get(i));
                return;
            }
            if (kind == StepKind.ROTATION || kind == StepKind.CREW_MOVE) {
                return;
            }
        }
    }

    /** The same wait, earlier by what is planned from there to its target. */
    private void ahead(Edge wait, int moment) {
        double earlierS = net.plannedS(wait.to()) - net.plannedS(moment);
        if (moment != wait.to()) {
            net.add(
                    new Edge(
                            wait.from(),
                            moment,
                            wait.fixedS() - earlierS,
                            wait.variesS(),
                            wait.piece(),
                            wait.kind(),
                            wait.about()));
        }
    }
}
