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
     * @param leastFraction |cos| of the angle between wire and way up to which it is near square
     * @param corridorM half the corridor in which nothing flies along the wire, m
     */
    record Span(int wire, PlanePoint a, PlanePoint b, double leastFraction, double corridorM) {
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
                spans.add(new Span(wire, a, b, leastFraction, corridorM));
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
     * wire's corridor, or across the wire at the allowed angle.
     */
    boolean passes(PlanePoint from, PlanePoint to) {
        if (spans.isEmpty()) {
            return true;
        }
        // Most pieces come near no wire.
        Set<Integer> crossed = Set.of();
        Set<Integer> grazed = Set.of();
        for (CellRows rows = new CellRows(grid, Spot.of(from), Spot.of(to), 0); rows.next(); ) {
            for (int cell = rows.firstCell(); cell <= rows.lastCell(); cell++) {
                for (int k = spansByCell.start(cell); k < spansByCell.end(cell); k++) {
                    Span span = spans.get(spansByCell.thing(k));
                    if (Plane.crossingFraction(from, to, span.a(), span.b()) >= 0) {
                        if (!span.isNearSquare(
                                to.eastM() - from.eastM(), to.northM() - from.northM())) {
                            return false;
                        }
                        crossed = with(crossed, span.wire());
                    } else if (apartM(from, to, span.a(), span.b()) < span.corridorM()) {
                        grazed = with(grazed, span.wire());
                    }
                }
            }
        }
        return crossed.containsAll(grazed);
    }

    private static Set<Integer> with(Set<Integer> wires, int another) {
        Set<Integer> more = wires.isEmpty() ? new HashSet<>() : wires;
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
