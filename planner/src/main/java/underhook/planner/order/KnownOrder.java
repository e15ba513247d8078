package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import underhook.core.job.CrewId;
import underhook.core.job.LoadId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.planner.search.DayTable;
import underhook.planner.search.RestOrder;

/** Reads the order of what is left from a plan. */
final class KnownOrder {
    private final DayModel model;
    private final List<Trip> trips;
    private final People people;
    private final Map<LoadId, Integer> tripOf = new HashMap<>();
    private final Map<CrewId, Integer> teamOf = new HashMap<>();

    KnownOrder(DayModel model, TripMaker maker, People people) {
        this.model = model;
        this.trips = maker.trips();
        this.people = people;
        for (int k = 0; k < trips.size(); k++) {
            for (LoadId load : trips.get(k).ids()) {
                tripOf.putIfAbsent(load, k);
            }
        }
        for (int i = 0; i < people.teams.size(); i++) {
            teamOf.putIfAbsent(people.teams.get(i).id(), i);
        }
    }

    /** The order of a plan's steps that are not frozen. */
    RestOrder.Kept of(Plan plan, int frozenSteps, Frozen frozen) {
        List<Integer> tokens = new ArrayList<>();
        List<Integer> levels = new ArrayList<>();
        List<Integer> lines = new ArrayList<>();
        List<RestOrder.Kept.Step> steps = new ArrayList<>();
        trips.forEach(trip -> lines.add(DayTable.NONE));
        for (int i = 0; i < plan.steps().size(); i++) {
            Step step = plan.steps().get(i);
            int at = i;
            Optional<Step> free =
                    step.rotation().isPresent()
                            ? left(step, frozen)
                            : Optional.of(step).filter(any -> at >= frozenSteps);
            free.ifPresent(
                    one -> {
                        add(one, tokens, levels, lines);
                        steps.add(known(one));
                    });
        }
        if (levels.isEmpty()) {
            levels.add((int) Math.floor(model.machine.fuelUsableKg()));
        }
        return new RestOrder.Kept(
                tokens,
                teams(plan),
                lines,
                levels,
                walksTo(plan),
                steps,
                model.seconds(plan.summary().finishAt()));
    }

    /** What of a lift is still to be flown; empty where nothing is. */
    private Optional<Step> left(Step step, Frozen frozen) {
        List<LoadId> loads =
                step.rotation().orElseThrow().loads().stream()
                        .filter(id -> !frozen.holds(id))
                        .toList();
        return loads.isEmpty() ? Optional.empty() : Optional.of(Hung.of(model.job, step, loads));
    }

    private RestOrder.Kept.Step known(Step step) {
        int what =
                switch (step.kind()) {
                    case ROTATION -> trip(step.rotation().orElseThrow().loads());
                    case CREW_MOVE -> step.crew().map(this::team).orElse(DayTable.NONE);
                    case POSITION, REFUEL, LINE_CHANGE, BREAK, WAIT -> DayTable.NONE;
                };
        return new RestOrder.Kept.Step(
                step.kind(),
                what,
                model.place(step.to()),
                line(model, step.lineLengthM()),
                step.fuelEndKg(),
                Duration.between(step.startAt(), step.endAt()).toSeconds());
    }

    /** The trip of just these loads. */
    private int trip(List<LoadId> loads) {
        int trip = trip(loads.get(0));
        boolean same =
                trip >= 0
                        && trips.get(trip).loads().size() == loads.size()
                        && loads.stream().allMatch(trips.get(trip)::carries);
        return same ? trip : DayTable.NONE;
    }

    private void add(Step step, List<Integer> tokens, List<Integer> levels, List<Integer> lines) {
        int teams = people.teams.size();
        switch (step.kind()) {
            case ROTATION ->
                    step.rotation().orElseThrow().loads().stream()
                            .map(this::trip)
                            .filter(trip -> trip >= 0 && !tokens.contains(trip))
                            .forEach(
                                    trip -> {
                                        tokens.add(trip);
                                        lines.set(trip, line(model, step.lineLengthM()));
                                    });
            case CREW_MOVE ->
                    step.crew()
                            .map(this::team)
                            .filter(team -> team >= 0)
                            .ifPresent(team -> tokens.add(trips.size() + team));
            case BREAK -> tokens.add(trips.size() + teams);
            case REFUEL -> {
                tokens.add(trips.size() + teams + 1);
                levels.add((int) Math.floor(step.fuelEndKg()));
            }
            case POSITION, LINE_CHANGE, WAIT -> {}
        }
    }

    private int trip(LoadId load) {
        return tripOf.getOrDefault(load, DayTable.NONE);
    }

    private int team(CrewId crew) {
        return teamOf.getOrDefault(crew, DayTable.NONE);
    }

    /** The fitted line of a length; {@link DayTable#NONE} with the line off. */
    static int line(DayModel model, double lengthM) {
        for (int i = 0; i < model.machine.lines().size(); i++) {
            if (Math.abs(model.machine.lines().get(i).lengthM() - lengthM) < 1e-3) {
                return i;
            }
        }
        return DayTable.NONE;
    }

    /** Places to which somebody walks without having been flown first. */
    private Set<Integer> walksTo(Plan plan) {
        Set<Integer> all = new HashSet<>();
        Set<CrewId> landed = new HashSet<>();
        for (CrewStay stay : plan.crews()) {
            if (stay.doing().startsWith("walks") && !landed.contains(stay.crew())) {
                all.add(model.place(stay.place()));
            }
            if (stay.doing().startsWith("flown")) {
                landed.add(stay.crew());
            } else {
                landed.remove(stay.crew());
            }
        }
        return all;
    }

    /** The team that is there when something is let go at a place in the plan, or else hooked up there. */
    private int worker(Plan plan, int place) {
        int hooker = DayTable.NONE;
        for (Step step : plan.steps()) {
            if (step.rotation().isEmpty()) {
                continue;
            }
            Rotation rotation = step.rotation().get();
            Drop drop = rotation.drops().get(0);
            if (model.place(drop.place()) == place) {
                int team = there(plan, place, drop.releasedAt());
                if (team >= 0) {
                    return team;
                }
            }
            int trip = trip(rotation.loads().get(0));
            if (hooker < 0 && trip >= 0 && trips.get(trip).from() == place) {
                hooker = there(plan, place, rotation.hookedAt());
            }
        }
        return hooker;
    }

    /** The team that is at a place then and may work there. */
    private int there(Plan plan, int place, Instant at) {
        for (CrewStay stay : plan.crews()) {
            int team = team(stay.crew());
            boolean there =
                    team >= 0
                            && model.place(stay.place()) == place
                            && stay.doing().startsWith("works")
                            && !stay.fromAt().isAfter(at)
                            && !stay.toAt().isBefore(at)
                            && people.serves(team, place);
            if (there) {
                return team;
            }
        }
        return DayTable.NONE;
    }

    /** Who works where in the plan. */
    private List<Integer> teams(Plan plan) {
        List<Integer> teams = new ArrayList<>();
        for (int place = 0; place < model.places.size(); place++) {
            int found = worker(plan, place);
            for (CrewStay stay : plan.crews()) {
                int team = team(stay.crew());
                boolean works = stay.doing().startsWith("works");
                if (works && found < 0 && team >= 0 && model.place(stay.place()) == place) {
                    found = people.serves(team, place) ? team : found;
                }
            }
            teams.add(found);
        }
        return teams;
    }
}
