package underhook.planner.search;

import java.util.List;
import underhook.core.plan.StepKind;

/**
 * Flies what is left of a known day as that has it: each stop where it was, between the same lifts. Waits come of
 * themselves, and so do people on foot.
 */
final class Follower {
    private final DayTable table;
    private final Run run;
    private final Grounding grounding;
    private final TeamMoves teamMoves;
    private final Lifts lifts;

    Follower(Run run, Grounding grounding, TeamMoves teamMoves, Lifts lifts) {
        this.table = run.table;
        this.run = run;
        this.grounding = grounding;
        this.teamMoves = teamMoves;
        this.lifts = lifts;
    }

    /** False when a step cannot be done any more: the run is then good for nothing. */
    boolean follow(List<RestOrder.Kept.Step> steps, Wish wish) {
        for (int i = 0; i < steps.size(); i++) {
            boolean flown = !isOfNoLift(steps, i) && leadsToALift(steps, i);
            if (flown && !(step(steps, i, wish) && lifts.isWithinDay())) {
                return false;
            }
        }
        return true;
    }

    /** What is behind the last lift is done for none. */
    private boolean leadsToALift(List<RestOrder.Kept.Step> steps, int at) {
        for (int i = at; i < steps.size(); i++) {
            if (steps.get(i).kind() == StepKind.ROTATION && !isOfNoLift(steps, i)) {
                return true;
            }
        }
        return false;
    }

    /** Whether it is a lift that is not flown any more. */
    private boolean isOfNoLift(List<RestOrder.Kept.Step> steps, int at) {
        RestOrder.Kept.Step step = steps.get(at);
        return step.kind() == StepKind.ROTATION && (step.what() < 0 || !run.isLeft(step.what()));
    }

    private boolean step(List<RestOrder.Kept.Step> steps, int at, Wish wish) {
        RestOrder.Kept.Step step = steps.get(at);
        return switch (step.kind()) {
            case ROTATION -> lift(step, wish);
            case CREW_MOVE ->
                    step.what() >= 0
                            && teamMoves.fly(step.what(), nextPlace(steps, at, wish), wish);
            case POSITION ->
                    comesOfItself(steps, at)
                            || (run.line == step.line()
                                    && grounding.flyTo(
                                            step.to(), cause(Cause.Kind.MOVE, steps, at)));
            case REFUEL ->
                    isDown(step)
                            && (step.fuelKg() <= run.fuelKg + 1
                                    || grounding.refuel(
                                            step.fuelKg(), cause(Cause.Kind.FUEL, steps, at)));
            case LINE_CHANGE -> isDown(step) && change(steps, at);
            case BREAK -> isDown(step) && rest(steps, at);
            case WAIT -> true;
        };
    }

    /** Flown on to where the known day ends the rotation. */
    private boolean lift(RestOrder.Kept.Step step, Wish wish) {
        int trip = step.what();
        return run.line == step.line()
                && lifts.readiness().isDue(trip)
                && lifts.flyAsFitted(trip, wish)
                && (run.place == step.to()
                        || grounding.flyTo(step.to(), Cause.of(Cause.Kind.MOVE, trip)));
    }

    private boolean isDown(RestOrder.Kept.Step step) {
        return run.place == step.to() && run.open < 0;
    }

    private boolean change(List<RestOrder.Kept.Step> steps, int at) {
        if (run.line != steps.get(at).line()) {
            grounding.changeLine(steps.get(at).line(), cause(Cause.Kind.LINE, steps, at));
        }
        return true;
    }

    /** One that is longer than it must be was a wait. */
    private boolean rest(List<RestOrder.Kept.Step> steps, int at) {
        if (steps.get(at).lastsS() <= run.breakLeftS()) {
            grounding.rest(cause(Cause.Kind.EARLY_BREAK, steps, at));
        }
        return true;
    }

    /** A way to the hook-up or to people who are flown from there, after what they are waited for. */
    private boolean comesOfItself(List<RestOrder.Kept.Step> steps, int at) {
        for (int i = at + 1; i < steps.size(); i++) {
            RestOrder.Kept.Step next = steps.get(i);
            if (next.kind() == StepKind.ROTATION) {
                return !isOfNoLift(steps, i)
                        && table.trips[next.what()].from() == steps.get(at).to();
            }
            if (next.kind() == StepKind.CREW_MOVE) {
                return run.line < 0;
            }
            if (next.kind() != StepKind.WAIT && next.kind() != StepKind.POSITION) {
                return false;
            }
        }
        return false;
    }

    /** For the lift or the flight of people that comes next. */
    private Cause cause(Cause.Kind kind, List<RestOrder.Kept.Step> steps, int at) {
        for (int i = at + 1; i < steps.size(); i++) {
            RestOrder.Kept.Step next = steps.get(i);
            if (next.kind() == StepKind.CREW_MOVE) {
                Cause.Kind move = kind == Cause.Kind.MOVE ? Cause.Kind.TEAM_MOVE : kind;
                return new Cause(move, DayTable.NONE, next.what());
            }
            if (next.kind() == StepKind.ROTATION && !isOfNoLift(steps, i)) {
                return Cause.of(kind, next.what());
            }
        }
        return new Cause(Cause.Kind.HOME, DayTable.NONE, run.place);
    }

    /** Where people who are flown work next; where they land when that is not said. */
    private int nextPlace(List<RestOrder.Kept.Step> steps, int at, Wish wish) {
        RestOrder.Kept.Step move = steps.get(at);
        for (int i = at + 1; i < steps.size(); i++) {
            RestOrder.Kept.Step next = steps.get(i);
            int place =
                    next.kind() == StepKind.ROTATION && next.what() >= 0
                            ? table.placeFor(move.what(), next.what(), wish.teamOf)
                            : DayTable.NONE;
            if (place >= 0) {
                boolean landed = table.teams[move.what()].landing().get(place) == move.to();
                return landed ? place : move.to();
            }
        }
        return move.to();
    }
}
