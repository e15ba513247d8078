package underhook.planner.verify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.job.ReleaseArea;
import underhook.core.job.Zone;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.ReleaseLook.Stretch;
import underhook.core.plan.ReleaseLook.Use;
import underhook.planner.verify.FallBoxes.Hung;
import underhook.planner.verify.FallBoxes.Spot;
import underhook.planner.verify.FallBoxes.Wind;

/** Every metre of every leg with a line: whom the load, or the empty line, would hit if let go there. */
final class FallCheck {
    /** A house or people drawn as a point, m. @source PRACTICE */
    private static final double POINT_RADIUS_M = 8;

    /** A road, trail or railway is so wide to each side of its line, m. @source PRACTICE */
    private static final double WAY_HALF_WIDTH_M = 4;

    /** How far something runs is looked at once in so many metres. */
    private static final int RUN_EVERY_M = 5;

    /** Stretches are written in millimetres and cut where ways bend, m. */
    private static final double STRETCH_M = 1;

    /** Times of stretches are stated to at least this part of ours. */
    private static final double TIME_FRACTION = 0.95;

    /** Spots that are looked round at together. */
    private static final int TOGETHER = 40;

    /** Nothing that lies further than this from a leg is hit, m. */
    private static final double NEAR_M = 1000;

    private final Day day;
    private final FallBoxes boxes;
    private final List<Below> onMap = new ArrayList<>();
    private final Set<String> things = new TreeSet<>();
    private final Set<String> areas = new TreeSet<>();
    private final List<Named> named;

    /** Ground on which a load may be let go, as agreed. */
    private record Named(String id, List<PlanePoint> ring) {}

    /** Something on the ground, so wide to each side; kept off means no load may be able to hit it. */
    private record Below(String id, Use use, boolean keptOff, Shape shape, double wideM, Box box) {}

    FallCheck(Day day) {
        this.day = day;
        this.boxes = new FallBoxes(day);
        addFeatures();
        addWires();
        addIds();
        this.named =
                day.job().releaseAreas().stream()
                        .filter(ReleaseArea::agreed)
                        .map(
                                area ->
                                        new Named(
                                                area.id(),
                                                area.outline().stream()
                                                        .map(at -> day.planeOf(at))
                                                        .toList()))
                        .toList();
    }

    private void addIds() {
        day.job().features().forEach(one -> things.add(one.id()));
        day.job().wires().forEach(one -> things.add(one.id()));
        day.job().zones().forEach(one -> things.add(one.id()));
        day.job().releaseAreas().forEach(one -> areas.add(one.id()));
    }

    void run() {
        for (Flight flight : day.listFlights()) {
            day.prove(boxes.asked(FallCheck.class, flight), () -> check(flight));
        }
    }

    private void check(Flight flight) {
        boolean known = flight.track().stream().allMatch(day::isKnown);
        boolean weighed = flight.loads().stream().allMatch(load -> load.massKg().isPresent());
        if (!known || !weighed) {
            return;
        }
        if (!flight.loads().isEmpty()) {
            checkLoaded(flight);
        } else if (flight.step().lineLengthM() > Tolerance.LENGTH_M) {
            TreeSet<String> hit = new TreeSet<>();
            look(flight, spots(flight), 0, (spot, one) -> addKeptOff(hit, one));
            demand(flight, hit.isEmpty(), "Let go on this leg, the empty line would hit ", hit);
        }
    }

    private void checkLoaded(Flight flight) {
        List<Spot> spots = spots(flight);
        Wind wind = boxes.wind(flight);
        ReleaseLook look = flight.leg().release().orElse(new ReleaseLook(List.of(), 0, 0, 0));
        TreeSet<String> hit = new TreeSet<>();
        TreeSet<String> unsaid = new TreeSet<>();
        look(
                flight,
                spots,
                0,
                (spot, one) -> {
                    addKeptOff(hit, one);
                    addUnsaid(unsaid, look, spot, one);
                });
        // What is said at its worst of a spot needs no look at how far it runs.
        look(
                flight,
                spots.stream()
                        .filter(spot -> Math.rint(spot.alongM()) % RUN_EVERY_M == 0)
                        .filter(spot -> statedUse(look, spot.alongM()) != Use.CLOSED)
                        .toList(),
                FallBoxes.mostRunM(boxes.hung(flight)),
                (spot, one) -> addUnsaid(unsaid, look, spot, one));
        for (Spot spot : spots) {
            if (statedUse(look, spot.alongM()) == Use.NAMED
                    && !boxesInNamed(flight, spot, wind, look)) {
                unsaid.add("no named area");
            }
        }
        demand(flight, hit.isEmpty(), "Let go on this leg, a load would hit ", hit);
        demand(flight, unsaid.isEmpty(), "The leg does not say what it passes: ", unsaid);
        checkCovered(flight, look, spots);
        checkNames(flight, look);
        checkTimes(flight, look);
        spots.stream()
                .max(
                        Comparator.comparingDouble(
                                spot -> spot.hookAmslM() - day.groundAmslM(spot.at())))
                .ifPresent(highest -> checkFarthest(flight, look, highest, wind));
    }

    /** From the highest spot what is let go flies far: at least so far as our own box reaches. */
    private void checkFarthest(Flight flight, ReleaseLook look, Spot highest, Wind wind) {
        double own = 0;
        for (Hung thing : boxes.hung(flight)) {
            for (PlanePoint corner : boxes.cornersRun(flight, thing, highest, wind)) {
                own = Math.max(own, Plane.apartM(highest.at(), corner));
            }
        }
        double farthest = own;
        day.ledger()
                .demand(
                        look.farthestM() >= farthest - Tolerance.DISTANCE_M,
                        FindingCode.LEG_RELEASE,
                        flight.subject(),
                        () ->
                                Told.of("plan", "A load let go flies farther than is stated.")
                                        .figures(look.farthestM(), farthest, "m"));
    }

    private static void addKeptOff(Set<String> hit, Below one) {
        if (one.keptOff()) {
            hit.add(one.id());
        }
    }

    /** Everything that is hit from any spot, and that it runs to where it may run so far. */
    private void look(
            Flight flight, List<Spot> spots, double mostRunM, BiConsumer<Spot, Below> found) {
        List<Below> below = below(flight);
        Wind wind = boxes.wind(flight);
        List<Hung> hung = boxes.hung(flight);
        double reach = spots.isEmpty() ? 0 : mostRunM + boxes.reachM(flight, spots, wind);
        for (int first = 0; first < spots.size(); first += TOGETHER) {
            List<Spot> some = spots.subList(first, Math.min(spots.size(), first + TOGETHER));
            Box round = Box.round(some.stream().map(Spot::at).toList()).widened(reach);
            List<Below> near = below.stream().filter(one -> !one.box().misses(round)).toList();
            for (Spot spot : near.isEmpty() ? List.<Spot>of() : some) {
                Box within = Box.round(List.of(spot.at())).widened(reach);
                List<Below> here = near.stream().filter(one -> !one.box().misses(within)).toList();
                for (Hung thing : here.isEmpty() ? List.<Hung>of() : hung) {
                    List<PlanePoint> corners = boxes.corners(flight, thing, spot, wind);
                    Box most = Box.round(corners).widened(mostRunM);
                    if (here.stream().anyMatch(one -> !one.box().misses(most))) {
                        look(
                                        mostRunM > 0
                                                ? boxes.cornersRun(flight, thing, spot, wind)
                                                : corners,
                                        here)
                                .forEach(one -> found.accept(spot, one));
                    }
                }
            }
        }
    }

    private static List<Below> look(List<PlanePoint> corners, List<Below> near) {
        Box round = Box.round(corners);
        return near.stream()
                .filter(one -> !one.box().misses(round) && touches(corners, one))
                .toList();
    }

    private void demand(Flight flight, boolean holds, String message, Set<String> ids) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.LEG_RELEASE,
                        flight.subject(),
                        () -> Told.of("rules", message + String.join(", ", ids) + "."));
    }

    /** Told freer than it is, or without what somebody must guard or keep off. */
    private static void addUnsaid(Set<String> unsaid, ReleaseLook look, Spot spot, Below one) {
        int freer = statedUse(look, spot.alongM()).compareTo(one.use());
        if (freer > 0 || (freer == 0 && !isSaid(look, spot.alongM(), one.id()))) {
            unsaid.add(one.id());
        }
    }

    private static boolean isSaid(ReleaseLook look, Number along, String id) {
        return look.stretches().stream()
                .anyMatch(part -> part.what().contains(id) && holds(part, along));
    }

    /** A stretch that is not open says for what, and the job has it. */
    private void checkNames(Flight flight, ReleaseLook look) {
        boolean named =
                look.stretches().stream()
                        .allMatch(part -> part.use() == Use.OPEN || !part.what().isEmpty());
        demand(
                flight,
                named,
                "A stretch of the leg is not open, and it is not said for what",
                none());
        TreeSet<String> unknown = new TreeSet<>();
        for (Stretch part : look.stretches()) {
            Set<String> ids = part.use() == Use.NAMED ? areas : things;
            part.what().stream().filter(id -> !ids.contains(id)).forEach(unknown::add);
        }
        demand(
                flight,
                unknown.isEmpty(),
                "The leg says that it passes what the job does not have: ",
                unknown);
    }

    /** The stretches say something of every metre. */
    private void checkCovered(Flight flight, ReleaseLook look, List<Spot> spots) {
        boolean covered =
                spots.stream()
                        .allMatch(
                                spot ->
                                        look.stretches().stream()
                                                .anyMatch(part -> holds(part, spot.alongM())));
        demand(flight, covered, "The leg does not say all the way what letting go means", none());
    }

    private static Set<String> none() {
        return Set.of();
    }

    private static boolean holds(Stretch part, Number along) {
        double at = along.doubleValue();
        return part.fromM() - STRETCH_M <= at && at <= part.toM() + STRETCH_M;
    }

    /** The worst that is said of a metre. */
    private static Use statedUse(ReleaseLook look, Number along) {
        Use worst = Use.NAMED;
        boolean said = false;
        for (Stretch part : look.stretches()) {
            if (holds(part, along)) {
                said = true;
                worst = part.use().compareTo(worst) < 0 ? part.use() : worst;
            }
        }
        return said ? worst : Use.OPEN;
    }

    /** Times are not shorter than flown with all the wind behind, and the longest add up. */
    private void checkTimes(Flight flight, ReleaseLook look) {
        double fastest = flight.leg().speedMPerS() + boxes.wind(flight).speedMPerS();
        boolean longEnough =
                look.stretches().stream()
                        .allMatch(
                                part ->
                                        part.durationS() + Tolerance.TIME_S
                                                >= TIME_FRACTION
                                                        * (part.toM() - part.fromM())
                                                        / fastest);
        double closed = longestS(look, Use.GUARDED);
        double unnamed = longestS(look, Use.OPEN);
        day.ledger()
                .demand(
                        longEnough
                                && look.longestClosedS() >= closed - Tolerance.TIME_S
                                && look.longestUnnamedS() >= unnamed - Tolerance.TIME_S,
                        FindingCode.LEG_RELEASE,
                        flight.subject(),
                        () ->
                                Told.of(
                                                "plan",
                                                "Times without a spot for letting go are too short.")
                                        .figures(look.longestClosedS(), closed, "s"));
    }

    private static double longestS(ReleaseLook look, Use best) {
        double longest = 0;
        double now = 0;
        for (Stretch part : look.stretches()) {
            now = part.use().compareTo(best) <= 0 ? now + part.durationS() : 0;
            longest = Math.max(longest, now);
        }
        return longest;
    }

    /** Every metre between the ends' surroundings. */
    static List<Spot> spots(Flight flight) {
        List<Spot> spots = new ArrayList<>();
        double whole = 0;
        for (int i = 1; i < flight.track().size(); i++) {
            whole += Plane.apartM(flight.track().get(i - 1), flight.track().get(i));
        }
        double done = 0;
        for (int i = 1; i < flight.track().size(); i++) {
            PlanePoint a = flight.track().get(i - 1);
            PlanePoint b = flight.track().get(i);
            double piece = Plane.apartM(a, b);
            double low = flight.leg().path().get(i - 1).hookAltitudeAmslM();
            double high = flight.leg().path().get(i).hookAltitudeAmslM();
            for (double at = Math.ceil(done); at < done + piece; at++) {
                if (at > ReleaseLook.END_M && at < whole - ReleaseLook.END_M) {
                    double share = (at - done) / piece;
                    spots.add(
                            new Spot(
                                    Plane.between(a, b, share),
                                    Plane.bearingGridRad(a, b),
                                    low + share * (high - low),
                                    at));
                }
            }
            done += piece;
        }
        return spots;
    }

    /** What lies near a flight. */
    private List<Below> below(Flight flight) {
        Box near = Box.round(flight.track()).widened(NEAR_M);
        List<Below> all = new ArrayList<>();
        for (Below one : onMap) {
            if (!one.box().misses(near)) {
                all.add(one);
            }
        }
        for (Zone zone : day.job().zones()) {
            if (zone.rule() == Zone.Rule.NO_OVERFLIGHT && Ways.applies(day, zone, flight)) {
                Below below = below(zone.id(), Use.CLOSED, true, day.shapeOf(zone));
                if (!below.box().misses(near)) {
                    all.add(below);
                }
            }
        }
        return all;
    }

    private void addFeatures() {
        for (MapFeature feature : day.job().features()) {
            boolean never = feature.crossing() == CrossingRule.NEVER;
            if (feature.kind() == MapFeature.Kind.MAST
                    || (!never && feature.crossing() != CrossingRule.GUARDED)) {
                continue;
            }
            for (Shape shape : pieces(day.shapeOf(feature))) {
                Use use = never ? Use.CLOSED : Use.GUARDED;
                onMap.add(
                        below(
                                below(feature.id(), use, never, shape),
                                never || shape.outline().size() == 1 ? 0 : WAY_HALF_WIDTH_M));
            }
        }
    }

    private void addWires() {
        for (HungWire hung : day.wires()) {
            if (hung.wire().live()) {
                for (Shape piece : pieces(new Shape(hung.supports(), 0, false))) {
                    Below line = below(hung.wire().id(), Use.CLOSED, false, piece);
                    onMap.add(below(line, hung.wire().lateralM()));
                }
            }
        }
    }

    /** Long lines piece by piece, so that only what is near is looked at. */
    private static List<Shape> pieces(Shape shape) {
        List<PlanePoint> outline = shape.outline();
        if (outline.size() == 1) {
            return List.of(new Shape(outline, POINT_RADIUS_M, false));
        }
        if (shape.area()) {
            return List.of(shape);
        }
        List<Shape> all = new ArrayList<>();
        for (int i = 1; i < outline.size(); i++) {
            all.add(new Shape(List.of(outline.get(i - 1), outline.get(i)), shape.radiusM(), false));
        }
        return all;
    }

    private static Below below(String id, Use use, boolean keptOff, Shape shape) {
        return below(new Below(id, use, keptOff, shape, 0, Box.round(shape.outline())), 0);
    }

    private static Below below(Below one, double wideM) {
        Box box = Box.round(one.shape().outline()).widened(one.shape().radiusM() + wideM);
        return new Below(one.id(), one.use(), one.keptOff(), one.shape(), wideM, box);
    }

    private boolean boxesInNamed(Flight flight, Spot spot, Wind wind, ReleaseLook look) {
        List<PlanePoint> corners = new ArrayList<>();
        boxes.hung(flight)
                .forEach(one -> corners.addAll(boxes.cornersRun(flight, one, spot, wind)));
        return named.stream()
                .filter(area -> isSaid(look, spot.alongM(), area.id()))
                .anyMatch(area -> corners.stream().allMatch(at -> Plane.inside(at, area.ring())));
    }

    private static boolean touches(List<PlanePoint> corners, Below below) {
        Shape shape = below.shape();
        if (shape.outline().stream().anyMatch(point -> Plane.inside(point, corners))) {
            return true;
        }
        for (int i = 0; i < corners.size(); i++) {
            PlanePoint next = corners.get((i + 1) % corners.size());
            if (shape.distanceM(new Plane.Stretch(corners.get(i), next)) <= below.wideM()) {
                return true;
            }
        }
        return false;
    }
}
