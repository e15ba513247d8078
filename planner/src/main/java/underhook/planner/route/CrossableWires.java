package underhook.planner.route;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.locationtech.jts.geom.Envelope;
import underhook.core.geo.PlanePoint;

/** Wires that may be crossed near a right angle, span by span under a grid. */
final class CrossableWires {
    private final CellGrid grid;
    private final List<Span> spans;
    private final CellLists spansByCell;

    /**
     * One straight piece of a wire.
     *
     * @param wire number of the wire it belongs to
     * @param chain number of the wires that go on in that one
     * @param leastFraction |cos| of the angle between wire and way up to which it is near square
     * @param corridorM half the corridor in which nothing flies along the wire, m
     */
    record Span(
            int wire,
            int chain,
            PlanePoint a,
            PlanePoint b,
            double leastFraction,
            double corridorM) {
        /** |cos| of the angle between the span and a direction. */
        double alongFraction(double eastM, double northM) {
            double spanEast = b.eastM() - a.eastM();
            double spanNorth = b.northM() - a.northM();
            double dot = Math.abs(spanEast * eastM + spanNorth * northM);
            return dot
                    / Math.sqrt(
                            (spanEast * spanEast + spanNorth * spanNorth)
                                    * (eastM * eastM + northM * northM));
        }

        /**
         * Whether a straight piece that crosses, so far along, a wire that this one goes on in lies in the
         * corridor of this span only near that crossing: no further than a slant crossing of both may reach.
         */
        boolean isNearCrossing(PlanePoint from, PlanePoint to, double crossedFraction) {
            double acrossFraction = Math.sqrt(1 - leastFraction * leastFraction);
            double reachM = corridorM / acrossFraction * (1 + leastFraction / acrossFraction);
            double reachFraction = reachM / from.distanceToM(to);
            double nearest = nearestFraction(from, to);
            return isOffBefore(from, to, crossedFraction - reachFraction, nearest)
                    && isOffBefore(to, from, 1 - crossedFraction - reachFraction, 1 - nearest);
        }

        /** Whether all of a piece before a part of it lies off the corridor; how far off is convex along it. */
        private boolean isOffBefore(
                PlanePoint from, PlanePoint to, double atFraction, double nearestFraction) {
            return atFraction <= 0
                    || (atFraction <= nearestFraction && apartM(from, to, atFraction) >= corridorM);
        }

        private double apartM(PlanePoint from, PlanePoint to, double atFraction) {
            return Plane.distanceToPieceM(a, b, Plane.between(from, to, atFraction));
        }

        /** Where a piece that does not cross the span is nearest to it: at an end of either. */
        private double nearestFraction(PlanePoint from, PlanePoint to) {
            double best = 0;
            for (double t :
                    new double[] {
                        1, Plane.nearestFraction(from, to, a), Plane.nearestFraction(from, to, b)
                    }) {
                best = apartM(from, to, t) < apartM(from, to, best) ? t : best;
            }
            return best;
        }

        /** Whether a way in this direction may cross the span. */
        boolean isNearSquare(double eastM, double northM) {
            return alongFraction(eastM, northM) <= leastFraction + 1e-9;
        }
    }

    /**
     * @param grid covers {@link #extent} of the spans
     */
    CrossableWires(List<Span> spans, CellGrid grid) {
        this.spans = List.copyOf(spans);
        this.grid = grid;
        this.spansByCell = CellLists.of(grid, spans.size(), this::cellsNear);
    }

    private CellRows cellsNear(int at) {
        Span span = spans.get(at);
        return new CellRows(grid, Spot.of(span.a()), Spot.of(span.b()), span.corridorM() + 0.01);
    }

    static List<Span> spans(List<WirePlan> wires, double clearanceM) {
        List<Span> spans = new ArrayList<>();
        for (int wire = 0; wire < wires.size(); wire++) {
            WirePlan plan = wires.get(wire);
            double corridorM = plan.corridorM(clearanceM);
            double leastFraction = Math.sin(plan.wire().crossingOffSquareRad());
            for (int i = 0; i + 1 < plan.supports().size(); i++) {
                PlanePoint a = plan.supports().get(i);
                PlanePoint b = plan.supports().get(i + 1);
                spans.add(new Span(wire, plan.chain(), a, b, leastFraction, corridorM));
            }
        }
        return spans;
    }

    static Envelope extent(List<Span> spans) {
        Envelope extent = new Envelope();
        for (Span span : spans) {
            Envelope one =
                    new Envelope(
                            span.a().eastM(),
                            span.b().eastM(),
                            span.a().northM(),
                            span.b().northM());
            one.expandBy(span.corridorM() + 1);
            extent.expandToInclude(one);
        }
        return extent;
    }

    int size() {
        return spans.size();
    }

    Span span(int at) {
        return spans.get(at);
    }

    CellLists byCell() {
        return spansByCell;
    }

    /** Whether a point lies in the corridor of a wire. */
    boolean isInCorridor(PlanePoint point) {
        int column = grid.column(point.eastM());
        int row = grid.row(point.northM());
        if (column < 0 || column >= grid.columns || row < 0 || row >= grid.rows) {
            return false;
        }
        int cell = row * grid.columns + column;
        for (int k = spansByCell.start(cell); k < spansByCell.end(cell); k++) {
            Span span = spans.get(spansByCell.thing(k));
            if (Plane.distanceToPieceM(span.a(), span.b(), point) < span.corridorM()) {
                return true;
            }
        }
        return false;
    }

    /**
     * Whether a piece whose ends lie outside all corridors keeps its rules with the wires: clear of a
     * wire's corridor, or across the wire at the allowed angle, or across one that it goes on in, when the
     * way leads across its own direction too and not along above it.
     */
    boolean passes(PlanePoint from, PlanePoint to) {
        if (spans.isEmpty()) {
            return true;
        }
        // Most pieces come near no wire.
        Set<Integer> crossed = Set.of();
        Set<Integer> grazed = Set.of();
        List<Span> over = List.of();
        List<Span> beside = List.of();
        double eastM = to.eastM() - from.eastM();
        double northM = to.northM() - from.northM();
        for (CellRows rows = new CellRows(grid, Spot.of(from), Spot.of(to), 0); rows.next(); ) {
            for (int cell = rows.firstCell(); cell <= rows.lastCell(); cell++) {
                for (int k = spansByCell.start(cell); k < spansByCell.end(cell); k++) {
                    Span span = spans.get(spansByCell.thing(k));
                    if (Plane.crossingFraction(from, to, span.a(), span.b()) >= 0) {
                        if (!span.isNearSquare(eastM, northM)) {
                            return false;
                        }
                        crossed = with(crossed, span.wire());
                        over = with(over, span);
                    } else if (apartM(from, to, span.a(), span.b()) < span.corridorM()) {
                        if (!span.isNearSquare(eastM, northM)) {
                            grazed = with(grazed, span.wire());
                        } else {
                            beside = with(beside, span);
                        }
                    }
                }
            }
        }
        return crossed.containsAll(grazed) && isAllByCrossing(from, to, over, beside);
    }

    /** Whether what a piece passes beside is, itself or by a wire that it goes on in, crossed there. */
    private static boolean isAllByCrossing(
            PlanePoint from, PlanePoint to, List<Span> over, List<Span> beside) {
        for (Span span : beside) {
            boolean crossed = false;
            for (Span other : over) {
                crossed |=
                        other.wire() == span.wire()
                                || (other.chain() == span.chain()
                                        && span.isNearCrossing(
                                                from,
                                                to,
                                                Plane.crossingFraction(
                                                        from, to, other.a(), other.b())));
            }
            if (!crossed) {
                return false;
            }
        }
        return true;
    }

    private static List<Span> with(List<Span> spans, Span another) {
        List<Span> more = spans.isEmpty() ? new ArrayList<>() : spans;
        more.add(another);
        return more;
    }

    private static Set<Integer> with(Set<Integer> numbers, int another) {
        Set<Integer> more = numbers.isEmpty() ? new HashSet<>() : numbers;
        more.add(another);
        return more;
    }

    /** Distance of two pieces that do not cross. */
    private static double apartM(PlanePoint a, PlanePoint b, PlanePoint c, PlanePoint d) {
        return Math.min(
                Math.min(Plane.distanceToPieceM(a, b, c), Plane.distanceToPieceM(a, b, d)),
                Math.min(Plane.distanceToPieceM(c, d, a), Plane.distanceToPieceM(c, d, b)));
    }
}
