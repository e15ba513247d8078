package underhook.planner.verify;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Load;
import underhook.core.job.Rules;
import underhook.core.job.Wire;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;

/**
 * How near each leg comes to each wire, and whether it says so. All from the ground up to the highest wire
 * counts as wire.
 */
final class WireCheck {
    /** Distance between samples along a path, in space, m. */
    private static final double SAMPLE_M = 1.0;

    /** A crossing more aslant than this is not followed further along the wire. */
    private static final double LEAST_SQUARE_RATIO = 0.2;

    /** Wires whose ends are drawn no further apart go on in one another, m. */
    private static final double JOINED_M = 1.0;

    private final Day day;
    private final Rules rules;
    private final List<HungWire> wires;

    private final int[] line;

    WireCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
        this.wires = day.wires();
        this.line = lines();
    }

    /** For each wire a number that all share which go on in one another: an end of one lies at a support of the next. */
    private int[] lines() {
        List<Support> supports = new ArrayList<>();
        for (int i = 0; i < wires.size(); i++) {
            for (PlanePoint at : wires.get(i).supports()) {
                supports.add(new Support(i, at));
            }
        }
        supports.sort(Comparator.comparingDouble(support -> support.at().eastM()));
        int[] line = IntStream.range(0, wires.size()).toArray();
        for (int i = 0; i < line.length; i++) {
            List<PlanePoint> points = wires.get(i).supports();
            for (PlanePoint end : List.of(points.get(0), points.get(points.size() - 1))) {
                for (int k = firstFrom(supports, end.eastM() - JOINED_M);
                        k < supports.size();
                        k++) {
                    Support other = supports.get(k);
                    if (other.at().eastM() > end.eastM() + JOINED_M) {
                        break;
                    }
                    if (Plane.apartM(end, other.at()) <= JOINED_M) {
                        name(line, line[i], line[other.wire()]);
                    }
                }
            }
        }
        return line;
    }

    private record Support(int wire, PlanePoint at) {}

    private static int firstFrom(List<Support> supports, double eastM) {
        int low = 0;
        int high = supports.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (supports.get(middle).at().eastM() < eastM) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static void name(int[] line, int name, int other) {
        for (int i = 0; i < line.length && name != other; i++) {
            line[i] = line[i] == other ? name : line[i];
        }
    }

    void run() {
        for (Flight flight : day.listFlights()) {
            day.prove(Proofs.Asked.of(WireCheck.class, day.haul(flight)), () -> check(flight));
        }
    }

    private void check(Flight flight) {
        List<Passing> passings = wires.stream().map(wire -> new Passing(flight, wire)).toList();
        passings.forEach(Passing::crossings);
        for (int i = 0; i < passings.size(); i++) {
            passings.get(i).check(listElsewhere(passings, i));
        }
        for (Leg.WirePass pass : flight.leg().wires()) {
            require(
                    wires.stream().anyMatch(wire -> wire.wire().id().equals(pass.wire())),
                    flight,
                    Told.of("plan", "The job has no wire " + pass.wire() + "."));
        }
    }

    /** Where the leg crosses by agreement other wires that one goes on in. */
    private List<PlanePoint> listElsewhere(List<Passing> passings, int wire) {
        List<PlanePoint> points = new ArrayList<>();
        for (int i = 0; i < line.length; i++) {
            Passing other = passings.get(i);
            if (i != wire && line[i] == line[wire] && other.isCrossedByAgreement()) {
                points.addAll(other.crossedAt);
            }
        }
        return points;
    }

    private void require(boolean holds, Flight flight, Told told) {
        day.ledger().demand(holds, FindingCode.LEG_WIRE, flight.subject(), () -> told);
    }

    /** One leg and one wire. */
    private final class Passing {
        private final Flight flight;
        private final HungWire hung;
        private final Wire wire;
        private final double endM;
        private final double loadM;
        private final double reachM;
        private final double needM;
        private final double aboveNeedM;
        private final double listedM;
        private final double widestM;
        private final List<HungWire.Span> spans;
        private final List<PlanePoint> crossedAt = new ArrayList<>();
        private double leastM = Double.POSITIVE_INFINITY;
        private double aboveM = Double.POSITIVE_INFINITY;

        /** Where the leg crosses by agreement what this wire goes on in. */
        private List<PlanePoint> elsewhereAt = List.of();

        private boolean tooNear;

        Passing(Flight flight, HungWire hung) {
            this.flight = flight;
            this.hung = hung;
            this.wire = hung.wire();
            this.endM = flight.step().lineLengthM() + flight.hangingM(day);
            this.loadM = loadRadiusM();
            var machine = day.job().machine();
            this.reachM =
                    Math.max(
                            machine.body().noseReachM(),
                            Math.max(machine.rotorRadiusM(), machine.tailReachM()));
            var table = rules.margins().wireBuffers();
            double top = hung.highestAmslM();
            this.needM = WireTable.needM(wire, table, rules.distances().wireClearanceM(), top);
            this.aboveNeedM = WireTable.needM(wire, table, wire.crossingAboveM(), top);
            this.listedM =
                    Math.max(
                            Leg.WirePass.LISTED_M,
                            Leg.WirePass.LISTED_NEEDS_RATIO * Math.max(needM, aboveNeedM));
            this.widestM = hung.widestM();
            // A metre more than what is walked along, so that what is left out surely lies further
            // off.
            Box flown = Box.round(flight.track()).widened(walkedM() + 1);
            this.spans =
                    hung.spans().stream()
                            .filter(span -> !Box.round(List.of(span.a(), span.b())).misses(flown))
                            .toList();
        }

        private double walkedM() {
            return listedM + widestM + Math.max(reachM, loadM);
        }

        private double loadRadiusM() {
            double most = 0;
            for (Load load : flight.loads()) {
                double along = day.kindOf(load).standsUp() ? load.heightM() : load.lengthM();
                double across = load.widthM();
                most = Math.max(most, Math.sqrt(along * along + across * across) / 2);
            }
            return most;
        }

        boolean isCrossedByAgreement() {
            return !crossedAt.isEmpty() && wire.crossing() != CrossingRule.NEVER;
        }

        /**
         * @param elsewhere where the leg crosses by agreement what this wire goes on in
         */
        void check(List<PlanePoint> elsewhere) {
            elsewhereAt = elsewhere;
            for (HungWire.Span span : spans) {
                for (int i = 1; i < flight.track().size(); i++) {
                    Plane.Stretch piece = piece(i);
                    double apart = Plane.stretchesApartM(piece, span.stretch());
                    if (apart <= walkedM()) {
                        walk(i, span);
                    }
                }
            }
            require(
                    !tooNear,
                    flight,
                    Told.of(wire.source(), "The leg comes too near to wire " + wire.id() + "."));
            stated();
        }

        private Plane.Stretch piece(int i) {
            return new Plane.Stretch(flight.track().get(i - 1), flight.track().get(i));
        }

        private void crossings() {
            for (HungWire.Span span : spans) {
                for (int i = 1; i < flight.track().size(); i++) {
                    if (Plane.cross(piece(i), span.stretch())) {
                        crossing(piece(i), span);
                    }
                }
            }
        }

        private void crossing(Plane.Stretch piece, HungWire.Span span) {
            crossedAt.add(Plane.crossingPoint(piece, span.stretch()));
            if (flight.loads().isEmpty()) {
                return;
            }
            double between =
                    Plane.bearingGridRad(piece.a(), piece.b())
                            - Plane.bearingGridRad(span.a(), span.b());
            double offSquare = Math.asin(Math.min(1, Math.abs(Math.cos(between))));
            require(
                    wire.crossing() != CrossingRule.NEVER,
                    flight,
                    Told.of(
                            wire.source(),
                            "Wire " + wire.id() + " may not be crossed with a load."));
            require(
                    offSquare <= wire.crossingOffSquareRad() + 1e-3,
                    flight,
                    Told.of(wire.source(), "Wire " + wire.id() + " is crossed aslant.")
                            .figures(
                                    Math.toDegrees(offSquare),
                                    Math.toDegrees(wire.crossingOffSquareRad()),
                                    "deg"));
        }

        /** Every metre of a piece of the path against every metre of a span near it. */
        private void walk(int i, HungWire.Span span) {
            List<PathPoint> path = flight.leg().path();
            Plane.Stretch piece = piece(i);
            double from = path.get(i - 1).hookAltitudeAmslM();
            double rise = path.get(i).hookAltitudeAmslM() - from;
            double apart = Plane.apartM(piece.a(), piece.b());
            int count = Math.max(1, (int) Math.ceil(Math.hypot(apart, rise) / SAMPLE_M));
            for (int j = 0; j <= count; j++) {
                double share = (double) j / count;
                look(Plane.between(piece.a(), piece.b(), share), from + share * rise, span);
            }
        }

        private void look(PlanePoint at, double hookAmslM, HungWire.Span span) {
            int last = span.spots().size() - 1;
            double step = Math.max(1e-3, Plane.apartM(span.a(), span.b()) / last);
            double beside = Plane.toSegmentM(at, span.a(), span.b());
            double within = Math.max(needM, Math.min(leastM, listedM));
            double reach = within + widestM + Math.max(reachM, loadM);
            double half = Math.sqrt(Math.max(0, reach * reach - beside * beside));
            int near = (int) Math.round(Plane.nearestFraction(at, span.a(), span.b()) * last);
            int further = (int) Math.ceil(half / step) + 1;
            boolean agreed = isAgreed(at);
            int to = Math.min(last, near + further);
            for (int k = Math.max(0, near - further); k <= to; k++) {
                look(at, hookAmslM, span.spots().get(k), agreed);
            }
        }

        private void look(PlanePoint at, double hookAmslM, HungWire.Spot spot, boolean agreed) {
            double apart = Plane.apartM(at, spot.at());
            double axis = apart - spot.asideM();
            double above = hookAmslM - spot.topAmslM();
            double end = above - endM;
            double load = spaceM(axis - loadM, end);
            double machine = spaceM(axis - reachM, above);
            double least = Math.min(load, machine);
            leastM = Math.min(leastM, least);
            if (apart < SAMPLE_M) {
                aboveM = Math.min(aboveM, end);
            }
            boolean over = agreed && end >= aboveNeedM - Tolerance.CLEARANCE_M;
            tooNear |= least < needM - Tolerance.CLEARANCE_M && !over;
        }

        private static double spaceM(double besideM, double overM) {
            double beside = Math.max(0, besideM);
            double over = Math.max(0, overM);
            return Math.sqrt(beside * beside + over * over);
        }

        /**
         * Whether the leg crosses the wire, or one that it goes on in, by agreement just here. Across a slant crossing
         * of the other it may be followed by so much more.
         */
        private boolean isAgreed(PlanePoint at) {
            double square = Math.max(LEAST_SQUARE_RATIO, Math.cos(wire.crossingOffSquareRad()));
            double near = (needM + widestM + Math.max(reachM, loadM)) / square + SAMPLE_M;
            double further = near * (1 + Math.sqrt(1 / (square * square) - 1));
            return wire.crossing() != CrossingRule.NEVER
                    && (isWithin(crossedAt, at, near) || isWithin(elsewhereAt, at, further));
        }

        private boolean isWithin(List<PlanePoint> points, PlanePoint at, double nearM) {
            return points.stream().anyMatch(point -> Plane.apartM(at, point) <= nearM);
        }

        private void stated() {
            Optional<Leg.WirePass> found =
                    flight.leg().wires().stream()
                            .filter(pass -> pass.wire().equals(wire.id()))
                            .findFirst();
            require(
                    found.isPresent() || leastM > listedM - Tolerance.CLEARANCE_M,
                    flight,
                    Told.of("plan", "The leg does not say that it passes wire " + wire.id() + ".")
                            .figures(leastM, listedM, "m"));
            if (found.isEmpty()) {
                return;
            }
            Leg.WirePass pass = found.get();
            require(
                    pass.leastM() <= leastM + Tolerance.CLEARANCE_M,
                    flight,
                    Told.of("plan", "The distance to wire " + wire.id() + " is stated too large.")
                            .figures(pass.leastM(), leastM, "m"));
            require(
                    flight.apartM(day.planeOf(pass.at())) <= Tolerance.PATH_END_M,
                    flight,
                    Told.of(
                            "plan",
                            "The leg is not where it is said to be nearest to wire "
                                    + wire.id()
                                    + "."));
            boolean over =
                    isCrossedByAgreement()
                            || (!elsewhereAt.isEmpty() && wire.crossing() != CrossingRule.NEVER);
            double need = over ? aboveNeedM : needM;
            require(
                    pass.needM() >= need - Tolerance.LENGTH_M,
                    flight,
                    Told.of("plan", "Less is said to be needed to wire " + wire.id() + " than is.")
                            .figures(pass.needM(), need, "m"));
            require(
                    pass.aboveM().isEmpty()
                            || pass.aboveM().getAsDouble() <= aboveM + Tolerance.CLEARANCE_M,
                    flight,
                    Told.of("plan", "The height above wire " + wire.id() + " is stated too large.")
                            .figures(pass.aboveM().orElse(0), aboveM, "m"));
            require(
                    pass.assumed() || !hung.isUnmeasured(),
                    flight,
                    Told.of(
                            "plan",
                            "Wire "
                                    + wire.id()
                                    + " was not measured, and the leg does not say so."));
        }
    }
}
