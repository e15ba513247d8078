package underhook.planner.verify;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Load;
import underhook.core.job.Machine;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.plan.Drop;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * Distance in space of rotor, tail, fuselage, line and load to whatever stands at the place, in every
 * hover in which something is set down or hooked up, and on the straight ways to and from a set-down.
 */
final class RoomCheck {
    /** No heading is stated for a hook-up: any of these must do. */
    private static final int HEADINGS = 36;

    /** A straight way is looked at so far from its place, m. */
    private static final double WAY_M = 60;

    private static final double WAY_STEP_M = 1;

    /** Steeper than this much off straight down is straight down. */
    private static final double STRAIGHT_DOWN_RAD = 1e-6;

    private final Day day;
    private final Machine machine;
    private final List<HungWire> wires;
    private final Map<PlaceId, HoverSpace> spaces = new HashMap<>();

    /**
     * A hover: what is looked at, and how high the hook is over the place.
     *
     * @param subject whom it is said of
     * @param standsM of that the load that stands up, m
     * @param loadRadiusM half the diagonals of what hangs there side by side, m
     */
    private record Hover(
            String subject, Place place, double lineM, double standsM, double loadRadiusM) {}

    RoomCheck(Day day) {
        this.day = day;
        this.machine = day.job().machine();
        this.wires = day.wires();
    }

    void run() {
        for (Step step : day.plan().steps()) {
            step.rotation()
                    .ifPresent(
                            rotation -> {
                                checkDrops(step, rotation);
                                checkHookUp(step, rotation);
                            });
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
            double radius = radiusM(loads.subList(i, loads.size()));
            Hover hover = new Hover(load.id().value(), place, step.lineLengthM(), stands, radius);
            prove(
                    List.of("in", hover, heading),
                    () -> {
                        demand(hover, tightest(hover, heading));
                        checkStraight(hover, heading, heading + Math.PI);
                    });
            checkStated(step, drop, stands);
        }
        checkWayOut(step, rotation, loads);
    }

    /** Away from the last place with the empty line, as low as its line is long. */
    private void checkWayOut(Step step, Rotation rotation, List<Load> loads) {
        Load load = loads.get(loads.size() - 1);
        Drop drop = rotation.drops().get(loads.size() - 1);
        Place place = day.job().getPlace(drop.place());
        double track =
                drop.departureTrackTrueRad()
                        - Plane.convergenceRad(day.ground().frame(), place.position());
        Hover hover = new Hover(load.id().value(), place, step.lineLengthM(), 0, 0);
        prove(List.of("out", hover, track), () -> checkStraight(hover, track, track));
    }

    /** A hover holds load, place and line as they are; what else is looked at does not change in a day. */
    private void prove(List<Object> about, Runnable check) {
        day.prove(new Proofs.Asked(RoomCheck.class, about), check);
    }

    private void checkHookUp(Step step, Rotation rotation) {
        List<Load> loads = day.loadsOf(rotation.loads());
        Place from = day.job().getPlace(loads.get(0).from());
        Hover hover =
                new Hover(loads.get(0).id().value(), from, step.lineLengthM(), 0, radiusM(loads));
        prove(List.of("hook-up", hover), () -> checkHookUp(hover));
    }

    private void checkHookUp(Hover hover) {
        HoverSpace.Near best = tightest(hover, 0);
        for (int i = 1; i < HEADINGS && best.spareM() < 0; i++) {
            HoverSpace.Near near = tightest(hover, 2 * Math.PI * i / HEADINGS);
            best = near.spareM() > best.spareM() ? near : best;
        }
        demand(hover, best);
    }

    /** What hangs together hangs side by side; what stands up is as wide as it is thick. */
    private double radiusM(List<Load> loads) {
        double sum = 0;
        for (Load load : loads) {
            double along = day.kindOf(load).standsUp() ? load.heightM() : load.lengthM();
            sum += Math.sqrt(along * along + load.widthM() * load.widthM()) / 2;
        }
        return sum;
    }

    private HoverSpace.Near tightest(Hover hover, double headingGridRad) {
        return space(hover).tightest(parts(hover, headingGridRad));
    }

    /**
     * The last part of the way in, nose to the place, or the first of a way out, nose ahead: straight at the
     * rule's steepness. Straight down and up nothing comes nearer than in the hover.
     */
    private void checkStraight(Hover hover, double headingGridRad, double awayGridRad) {
        double angle = day.job().rules().margins().finalAngleRad();
        if (angle > Math.PI / 2 - STRAIGHT_DOWN_RAD) {
            return;
        }
        List<HoverPart> parts = parts(hover, headingGridRad);
        for (double along = WAY_STEP_M; along <= WAY_M; along += WAY_STEP_M) {
            double done = along;
            HoverSpace.Near near =
                    space(hover)
                            .tightest(
                                    parts.stream()
                                            .map(
                                                    part ->
                                                            part.moved(
                                                                    awayGridRad,
                                                                    done,
                                                                    done * Math.tan(angle)))
                                            .toList());
            if (near.spareM() < -Tolerance.CLEARANCE_M) {
                demand(hover, near);
                return;
            }
        }
    }

    /** What a hover leaves between machine, line and all round it over what is needed, a load no wider than the line, m. */
    double spareM(Place place, PlaceRoom.LineRoom line, double headingTrueRad) {
        double grid = headingTrueRad - Plane.convergenceRad(day.ground().frame(), place.position());
        Hover hover = new Hover("", place, line.lineLengthM(), line.standsM(), 0);
        return tightest(hover, grid).spareM();
    }

    /** The same of one part, by its name. */
    double spareM(Place place, PlaceRoom.LineRoom line, PlaceRoom.Tightest tightest) {
        double grid =
                tightest.headingTrueRad()
                        - Plane.convergenceRad(day.ground().frame(), place.position());
        Hover hover = new Hover("", place, line.lineLengthM(), line.standsM(), 0);
        return space(hover)
                .tightest(
                        parts(hover, grid).stream()
                                .filter(one -> one.name().equals(tightest.part()))
                                .toList())
                .spareM();
    }

    private HoverSpace space(Hover hover) {
        return spaces.computeIfAbsent(
                hover.place().id(), unused -> new HoverSpace(day, hover.place(), wires));
    }

    private List<HoverPart> parts(Hover hover, double headingGridRad) {
        PlanePoint at = space(hover).at();
        double placeM = day.groundAmslM(at);
        double hookM = placeM + hover.lineM() + hover.standsM();
        Machine.Body body = machine.body();
        double rotorsM = hookM + body.rotorAboveHookM();
        double noseM = Math.max(0, body.noseReachM() - body.halfWidthM());
        return List.of(
                new HoverPart("rotor", at, at, machine.rotorRadiusM(), rotorsM, false),
                new HoverPart("tail", at, at, body.tailHalfWidthM(), rotorsM, false)
                        .drawnOut(headingGridRad, machine.tailReachM(), 0),
                // As far back as ahead: behind that it is the tail.
                new HoverPart("fuselage", at, at, body.halfWidthM(), hookM, false)
                        .drawnOut(headingGridRad, Math.min(noseM, machine.tailReachM()), noseM),
                new HoverPart("line", at, at, 0, placeM + hover.standsM(), true),
                new HoverPart("load", at, at, hover.loadRadiusM(), placeM, true));
    }

    private void demand(Hover hover, HoverSpace.Near near) {
        day.ledger()
                .demand(
                        near.spareM() >= -Tolerance.CLEARANCE_M,
                        FindingCode.ROOM_REFUSED,
                        hover.subject(),
                        () ->
                                Told.of(
                                                "rules",
                                                "The "
                                                        + near.part()
                                                        + " comes too near to "
                                                        + near.what()
                                                        + " at "
                                                        + hover.place().id()
                                                        + ".")
                                        .figures(near.apartM(), near.needM(), "m"));
    }

    /**
     * A plan may not fly what its own table of room refuses. What was done when the day was ordered anew was flown by
     * an earlier table: the place may have moved since.
     */
    private void checkStated(Step step, Drop drop, double standsM) {
        if (day.isDone(drop.load())) {
            return;
        }
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
}
