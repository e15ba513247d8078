package underhook.planner.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.MapFeature;
import underhook.core.job.Wire;
import underhook.core.job.Zone;
import underhook.core.plan.Leg;

/**
 * What a leg says of what it passes over: where somebody stands to guard it, and what must be so while it is passed.
 * Each thing is said where it is crossed, in the words of docs/formats.md, which are read on the papers.
 */
final class CrossingCheck {
    private static final String GUARDED = "guarded: nobody under the load while it passes";
    private static final String LINE_OFF = "passed over, line off";
    private static final String ALLOWED = "allowed";

    private static final Pattern OVER_WIRE =
            Pattern.compile(
                    "near square, at least (\\d{1,6}) m above the highest wire(; no release here)?");

    /** What crosses at so flat an angle, or so near to a corner, is told somewhere, but perhaps not just there. */
    private static final double SURE_SINE_RATIO = 0.02;

    /** Rounded to centimetres, a surely crossed thing is met so near to where it is said to be, m. */
    private static final double SAID_M = 5;

    /** Heights in words are whole metres. */
    private static final double WHOLE_M = 0.5;

    /** When a thing that is crossed must be listed. With the line off nothing falls, but a wire is met all the same. */
    private enum Asked {
        NEVER,
        WITH_LINE,
        ALWAYS
    }

    private final Day day;
    private final List<Thing> things = new ArrayList<>();

    /** Something that may be passed over, and whether words say enough of it, with a line on or without. */
    private record Thing(
            String id, Shape shape, Box box, Asked asked, BiPredicate<String, Boolean> says) {
        boolean isAt(PlanePoint at) {
            return shape.covers(at)
                    || shape.distanceM(new Plane.Stretch(at, at)) <= Tolerance.PATH_END_M;
        }
    }

    CrossingCheck(Day day) {
        this.day = day;
        for (MapFeature feature : day.job().features()) {
            Asked asked = feature.crossing() == CrossingRule.NEVER ? Asked.NEVER : Asked.WITH_LINE;
            boolean free = feature.crossing() == CrossingRule.ALLOWED;
            add(
                    feature.id(),
                    day.shapeOf(feature),
                    asked,
                    (words, slung) ->
                            words.equals(GUARDED)
                                    || (words.equals(LINE_OFF) && !slung)
                                    || (words.equals(ALLOWED) && free));
        }
        for (HungWire hung : day.wires()) {
            add(
                    hung.wire().id(),
                    new Shape(hung.supports(), 0, false),
                    Asked.ALWAYS,
                    (words, slung) -> isOver(hung.wire(), words, slung));
        }
        for (Zone zone : day.job().zones()) {
            add(zone.id(), day.shapeOf(zone), Asked.NEVER, (words, slung) -> !words.isBlank());
        }
    }

    private void add(String id, Shape shape, Asked asked, BiPredicate<String, Boolean> says) {
        things.add(new Thing(id, shape, Box.round(shape.outline()).widened(1), asked, says));
    }

    /** By agreement, and no lower than agreed; with something hanging there nothing is let go. */
    private static boolean isOver(Wire wire, String words, boolean slung) {
        Matcher said = OVER_WIRE.matcher(words);
        return said.matches()
                && Integer.parseInt(said.group(1)) >= wire.crossingAboveM() - WHOLE_M
                && (!slung || said.group(2) != null);
    }

    void check(Flight flight) {
        boolean slung = flight.step().lineLengthM() >= Tolerance.LENGTH_M;
        flight.leg().crossings().forEach(one -> checkSaid(flight, one, slung));
        Box flown = Box.round(flight.track());
        things.stream()
                .filter(
                        thing ->
                                thing.asked() == Asked.ALWAYS
                                        || (slung && thing.asked() == Asked.WITH_LINE))
                .filter(thing -> !thing.box().misses(flown))
                .forEach(thing -> checkListed(flight, thing));
    }

    /** Who guards a crossing stands where it is said to be. */
    private void checkSaid(Flight flight, Leg.Crossing crossing, boolean slung) {
        String id = crossing.feature();
        PlanePoint at = day.planeOf(crossing.at());
        List<Thing> named = things.stream().filter(thing -> thing.id().equals(id)).toList();
        demand(flight, !named.isEmpty(), "The job has no " + id + " to cross.");
        demand(
                flight,
                flight.apartM(at) <= Tolerance.PATH_END_M,
                "The leg does not pass where it is said to cross " + id + ".");
        List<Thing> here = named.stream().filter(thing -> thing.isAt(at)).toList();
        demand(
                flight,
                named.isEmpty() || !here.isEmpty(),
                id + " is not where the leg is said to cross it.");
        demand(
                flight,
                here.isEmpty()
                        || here.stream().anyMatch(one -> one.says().test(crossing.rule(), slung)),
                "What is said of crossing " + id + " is not its rule.");
    }

    private void checkListed(Flight flight, Thing thing) {
        List<PlanePoint> said =
                flight.leg().crossings().stream()
                        .filter(crossing -> crossing.feature().equals(thing.id()))
                        .map(crossing -> day.planeOf(crossing.at()))
                        .toList();
        boolean listed = true;
        for (int i = 1; i < flight.track().size(); i++) {
            Plane.Stretch piece =
                    new Plane.Stretch(flight.track().get(i - 1), flight.track().get(i));
            for (Plane.Stretch edge : thing.shape().listEdges()) {
                if (Plane.cross(piece, edge)) {
                    listed &= isListed(piece, edge, said);
                }
            }
        }
        demand(flight, listed, "The leg does not list that it crosses " + thing.id() + ".");
    }

    private static boolean isListed(
            Plane.Stretch piece, Plane.Stretch edge, List<PlanePoint> said) {
        PlanePoint at = Plane.crossingPoint(piece, edge);
        boolean sure =
                isSquare(piece, edge)
                        && List.of(piece.a(), piece.b(), edge.a(), edge.b()).stream()
                                .allMatch(end -> Plane.apartM(at, end) > Tolerance.PLAN_M);
        return sure
                ? said.stream().anyMatch(one -> Plane.apartM(at, one) <= SAID_M)
                : !said.isEmpty();
    }

    private static boolean isSquare(Plane.Stretch piece, Plane.Stretch edge) {
        double between =
                Plane.bearingGridRad(piece.a(), piece.b())
                        - Plane.bearingGridRad(edge.a(), edge.b());
        return Math.abs(Math.sin(between)) > SURE_SINE_RATIO;
    }

    private void demand(Flight flight, boolean holds, String what) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.LEG_CROSSINGS,
                        flight.subject(),
                        () -> Told.of("plan", what));
    }
}
