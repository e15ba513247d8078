package underhook.planner.odds;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.PlaceId;
import underhook.core.job.Spreads;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;

/** Where the crews are, as moments: ready, arrived, free to leave. */
final class CrewDay {
    /** Lines that follow each other this closely are one, s. */
    private static final double TOUCH_S = 1;

    private final Job job;
    private final Plan plan;
    private final Spreads spreads;
    private final Clock clock;
    private final NetMaker net;
    private final MachineDay machine;
    private final Map<CrewId, Integer> ready = new HashMap<>();
    private final List<Visit> visits = new ArrayList<>();

    /**
     * A crew's time at a place.
     *
     * @param arrived moment from which it is there
     * @param leaves moment at which it goes on
     */
    record Visit(Crew crew, PlaceId place, double fromS, double toS, int arrived, int leaves) {}

    /** A stay, a walk, or a flight with its step; -1 for none. */
    private record Item(PlaceId place, double fromS, double toS, boolean walk, int step) {}

    CrewDay(Job job, Plan plan, Clock clock, NetMaker net, MachineDay machine) {
        this.job = job;
        this.plan = plan;
        this.spreads = job.rules().handling().spreads();
        this.clock = clock;
        this.net = net;
        this.machine = machine;
        for (Crew crew : job.crews()) {
            addReady(crew);
            if (!crew.stays() || job.isGuyingWhereItStays(crew)) {
                follow(crew);
            }
        }
    }

    private void addReady(Crew crew) {
        int moment = net.moment(clock.timeS(crew.availableFrom()));
        ready.put(crew.id(), moment);
        net.add(
                new Edge(
                        NetMaker.ZERO,
                        moment,
                        net.plannedS(moment),
                        1,
                        net.piece(Piece.of(spreads.crewLate(), Piece.Luck.CREW_LATE)),
                        Edge.Kind.CREW_READY,
                        crew.id().value()));
    }

    private void follow(Crew crew) {
        int at = readyOf(crew);
        for (Item item : items(crew)) {
            if (item.step() >= 0) {
                machine.await(item.step(), order(at, machine.starts().get(item.step()), 0));
                at = machine.ends().get(item.step());
            } else if (item.walk()) {
                int there = net.moment(item.toS());
                net.add(
                        new Edge(
                                at,
                                there,
                                0,
                                item.toS() - item.fromS(),
                                net.piece(spreads.people(), Piece.Luck.PEOPLE),
                                Edge.Kind.ORDER,
                                ""));
                at = there;
            } else {
                int arrived = net.moment(item.fromS());
                int leaves = net.moment(item.toS());
                net.add(at, arrived, 0);
                net.add(arrived, leaves, 0);
                visits.add(
                        new Visit(crew, item.place(), item.fromS(), item.toS(), arrived, leaves));
                at = leaves;
            }
        }
    }

    static Edge order(int from, int to, double fixedS) {
        return new Edge(from, to, fixedS, 0, NetMaker.STEADY, Edge.Kind.ORDER, "");
    }

    private List<Item> items(Crew crew) {
        List<Item> items = new ArrayList<>();
        for (CrewStay stay : plan.crews()) {
            String doing = stay.doing().toLowerCase(Locale.ROOT);
            if (stay.crew().equals(crew.id()) && !doing.startsWith("flown")) {
                items.add(
                        new Item(
                                stay.place(),
                                clock.timeS(stay.fromAt()),
                                clock.timeS(stay.toAt()),
                                doing.startsWith("walk"),
                                -1));
            }
        }
        for (int i = 0; i < plan.steps().size(); i++) {
            Step step = plan.steps().get(i);
            if (step.kind() == StepKind.CREW_MOVE
                    && step.crew().filter(crew.id()::equals).isPresent()) {
                items.add(
                        new Item(
                                step.to(),
                                clock.timeS(step.startAt()),
                                clock.timeS(step.endAt()),
                                false,
                                i));
            }
        }
        items.sort(Comparator.comparingDouble(Item::fromS).thenComparingDouble(Item::toS));
        return joined(items);
    }

    /** Stays at one place that touch are one stay. */
    private static List<Item> joined(List<Item> items) {
        List<Item> all = new ArrayList<>();
        for (Item item : items) {
            Item before = all.isEmpty() ? item : all.get(all.size() - 1);
            boolean touches =
                    !all.isEmpty()
                            && !item.walk()
                            && !before.walk()
                            && item.step() < 0
                            && before.step() < 0
                            && item.place().equals(before.place())
                            && item.fromS() - before.toS() <= TOUCH_S;
            if (touches) {
                all.remove(all.size() - 1);
                all.add(
                        new Item(
                                item.place(),
                                before.fromS(),
                                Math.max(before.toS(), item.toS()),
                                false,
                                -1));
            } else {
                all.add(item);
            }
        }
        return all;
    }

    int readyOf(Crew crew) {
        Integer moment = ready.get(crew.id());
        if (moment == null) {
            throw new IllegalArgumentException("no crew " + crew.id() + " in the job.");
        }
        return moment;
    }

    /** Who stays at a place and does this, soonest there first. */
    List<Crew> staying(PlaceId place, Crew.Role role) {
        return job.crews().stream()
                .filter(crew -> crew.stays() && !job.isGuyingWhereItStays(crew))
                .filter(crew -> crew.start().equals(place))
                .filter(crew -> crew.roles().contains(role))
                .sorted(Comparator.comparing(Crew::availableFrom))
                .toList();
    }

    /** The visit of a crew that does this at a place for the whole of a time. */
    Optional<Visit> visit(PlaceId place, Crew.Role role, double fromS, double toS) {
        boolean site = job.getPlace(place).isSite();
        return visits.stream()
                .filter(visit -> visit.place().equals(place))
                .filter(visit -> visit.crew().roles().contains(role))
                .filter(
                        visit ->
                                !site
                                        || visit.crew().serves().isEmpty()
                                        || visit.crew().serves().contains(place))
                .filter(visit -> visit.fromS() <= fromS + TOUCH_S && visit.toS() >= toS - TOUCH_S)
                .findFirst();
    }
}
