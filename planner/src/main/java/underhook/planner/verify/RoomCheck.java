package underhook.planner.verify;

import java.util.List;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.Rules;
import underhook.core.plan.Drop;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * Distance in space of rotor and tail to ground and trees in every hover, point by point on a grid of
 * half a metre: no cell is left out for being far, and none is widened.
 */
final class RoomCheck {
    private static final double SAMPLE_M = 0.5;

    private final Day day;
    private final Machine machine;
    private final Rules rules;

    /** A hover: what is looked at, and how high the hook is over the place. */
    private record Hover(Load load, Place place, double headingGridRad, double hookAglM) {}

    RoomCheck(Day day) {
        this.day = day;
        this.machine = day.job().machine();
        this.rules = day.job().rules();
    }

    void run() {
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(rotation -> checkDrops(step, rotation));
        }
    }

    private void checkDrops(Step step, Rotation rotation) {
        List<Load> loads = day.loadsOf(rotation.loads());
        for (int i = 0; i < loads.size(); i++) {
            Load load = loads.get(i);
            Drop drop = rotation.drops().get(i);
            Place place = day.job().getPlace(drop.place());
            double convergence = Plane.convergenceRad(day.ground().frame(), place.position());
            double heading = drop.approachFromTrueRad() + Math.PI - convergence;
            double stands = day.kindOf(load).standsUp() ? load.lengthM() : 0;
            check(new Hover(load, place, heading, step.lineLengthM() + stands));
            checkStated(step, drop, stands);
        }
        Load first = loads.get(0);
        Place from = day.job().getPlace(first.from());
        // No heading is stated for a hook-up: the best must do.
        Hover best = new Hover(first, from, 0, step.lineLengthM());
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 36; i++) {
            Hover hover = new Hover(first, from, i * Math.PI / 18, step.lineLengthM());
            double apart = leastM(hover);
            best = apart > most ? hover : best;
            most = Math.max(most, apart);
            if (most >= rules.rotorClearanceM()) {
                break;
            }
        }
        check(best);
    }

    private void check(Hover hover) {
        double apart = leastM(hover);
        day.ledger()
                .demand(
                        apart >= rules.rotorClearanceM() - Tolerance.CLEARANCE_M,
                        FindingCode.ROOM_REFUSED,
                        hover.load().id().value(),
                        () ->
                                Told.of(
                                                "rules",
                                                "Rotor or tail come too near to ground or trees at "
                                                        + hover.place().id()
                                                        + ".")
                                        .figures(apart, rules.rotorClearanceM(), "m"));
    }

    /** A plan may not fly what its own table of room refuses. */
    private void checkStated(Step step, Drop drop, double standsM) {
        double heading = drop.approachFromTrueRad() + Math.PI;
        double wrapped = heading >= 2 * Math.PI ? heading - 2 * Math.PI : heading;
        for (PlaceRoom room : day.plan().rooms()) {
            for (PlaceRoom.LineRoom line : room.lines()) {
                boolean isThis =
                        room.place().equals(drop.place())
                                && Math.abs(line.lineLengthM() - step.lineLengthM())
                                        < Tolerance.LENGTH_M
                                && line.standsM() > 0 == standsM > 0;
                boolean isAllRefused =
                        line.sectors().stream().allMatch(one -> one.fit() == PlaceRoom.Fit.REFUSED);
                day.ledger()
                        .demand(
                                !isThis || !isAllRefused,
                                FindingCode.ROOM_REFUSED,
                                drop.load().value(),
                                () ->
                                        Told.of(
                                                "plan",
                                                "The plan's own table leaves no room for "
                                                        + line.line()
                                                        + " at "
                                                        + room.place()
                                                        + " on "
                                                        + Math.round(Math.toDegrees(wrapped))
                                                        + "° TRUE."));
            }
        }
    }

    /** Least distance of rotor disc and tail boom to any point of ground or trees, m. */
    private double leastM(Hover hover) {
        PlanePoint at = day.planeOf(hover.place().position());
        double rotors = day.groundAmslM(at) + hover.hookAglM() + machine.body().rotorAboveHookM();
        double wide = machine.body().tailHalfWidthM();
        double reach =
                Math.max(machine.rotorRadiusM(), machine.tailReachM() + wide)
                        + rules.rotorClearanceM()
                        + SAMPLE_M;
        PlanePoint tail = Plane.along(at, hover.headingGridRad() + Math.PI, machine.tailReachM());
        int half = (int) Math.ceil(reach / SAMPLE_M);
        double least = reach;
        for (int i = -half; i <= half; i++) {
            for (int j = -half; j <= half; j++) {
                PlanePoint p =
                        new PlanePoint(at.eastM() + i * SAMPLE_M, at.northM() + j * SAMPLE_M);
                double aside =
                        Math.min(
                                Plane.apartM(p, at) - machine.rotorRadiusM(),
                                Plane.toSegmentM(p, at, tail) - wide);
                if (aside < rules.rotorClearanceM()) {
                    double above = day.isKnown(p) ? rotors - topAmslM(hover.place(), p) : 0;
                    double apart =
                            aside <= 0 && above <= 0
                                    ? Math.max(aside, above)
                                    : Math.hypot(Math.max(0, aside), Math.max(0, above));
                    least = Math.min(least, apart);
                }
            }
        }
        return least;
    }

    /** Surveyed trees stand everywhere; else the raster counts where it is. */
    private double topAmslM(Place place, PlanePoint p) {
        double trees = place.canopyM().isPresent() ? place.canopyM().getAsDouble() : day.canopyM(p);
        return day.groundAmslM(p) + trees;
    }
}
