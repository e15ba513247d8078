package underhook.planner.route;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import underhook.core.geo.PlanePoint;
import underhook.core.plan.Leg;
import underhook.core.wire.Curtain;
import underhook.core.wire.Flyer;

/**
 * How near a leg comes to a wire.
 *
 * @param wire its id
 * @param leastM least distance in space, never above the true one, m
 * @param needM least distance that is needed, m; where it, or one that it goes on in, is crossed by agreement,
 *     what that asks for
 * @param at where the hook is then, in plan
 * @param aboveM height of the lowest end above the highest wire where the leg passes over it, m; empty
 *     where it passes beside
 * @param assumed whether height or sag of the wire were never measured
 */
public record NearWire(
        String wire,
        double leastM,
        double needM,
        PlanePoint at,
        OptionalDouble aboveM,
        boolean assumed) {

    /** Every wire of a list that the leg comes near. */
    static List<NearWire> list(List<WirePlan> wires, FlownLeg leg, Flyer flyer) {
        List<Curtain.Flown> pieces = new ArrayList<>();
        for (int i = 0; i + 1 < leg.points().size(); i++) {
            pieces.add(
                    new Curtain.Flown(
                            leg.points().get(i),
                            leg.points().get(i + 1),
                            leg.hookAmslM().get(i),
                            leg.hookAmslM().get(i + 1)));
        }
        Set<Integer> crossed = new HashSet<>();
        if (!leg.crossings().isEmpty()) {
            Set<String> over =
                    leg.crossings().stream()
                            .map(FlownLeg.Crossed::feature)
                            .collect(Collectors.toSet());
            wires.stream()
                    .filter(wire -> wire.isCrossable() && over.contains(wire.wire().id()))
                    .forEach(wire -> crossed.add(wire.chain()));
        }
        List<NearWire> near = new ArrayList<>();
        for (WirePlan wire : wires) {
            boolean agreed = wire.isCrossable() && crossed.contains(wire.chain());
            new Search(wire, flyer).of(pieces, agreed).ifPresent(near::add);
        }
        return near;
    }

    /** The nearest of one wire to one leg. Mutable while it looks. */
    private static final class Search {
        /** Where a wire is crossed, its curtains meet the crossing but for rounding. */
        private static final double MEETS_M = 1e-3;

        private final WirePlan wire;
        private final Flyer flyer;
        private double leastM;
        private double aboveM = Double.POSITIVE_INFINITY;
        private Optional<PlanePoint> at = Optional.empty();

        Search(WirePlan wire, Flyer flyer) {
            this.wire = wire;
            this.flyer = flyer;
            double mostNeedM = Math.max(wire.needM(), wire.aboveM());
            this.leastM =
                    Math.max(Leg.WirePass.LISTED_M, Leg.WirePass.LISTED_NEEDS_RATIO * mostNeedM);
        }

        /**
         * @param agreed it, or a wire that it goes on in, is crossed by agreement
         */
        Optional<NearWire> of(List<Curtain.Flown> pieces, boolean agreed) {
            for (Curtain.Flown piece : pieces) {
                for (int i = 0; i + 1 < wire.supports().size(); i++) {
                    if (isWorthLooking(piece, i)) {
                        wire.tube().spans().get(i).forEach(curtain -> look(piece, curtain));
                        crossing(piece, i);
                    }
                }
            }
            boolean over = aboveM < Double.POSITIVE_INFINITY;
            double needM = agreed || (over && wire.isCrossable()) ? wire.aboveM() : wire.needM();
            return at.map(
                    point ->
                            new NearWire(
                                    wire.wire().id(),
                                    leastM,
                                    needM,
                                    point,
                                    over ? OptionalDouble.of(aboveM) : OptionalDouble.empty(),
                                    wire.tube().isAssumed()));
        }

        /** A span that even in plan lies further off than what was found cannot come nearer. */
        private boolean isWorthLooking(Curtain.Flown piece, int span) {
            double apartM =
                    Plane.pieceDistanceM(
                            piece.from(),
                            piece.to(),
                            wire.supports().get(span),
                            wire.supports().get(span + 1));
            return apartM <= leastM + wire.tube().widestM() + reachM();
        }

        private double reachM() {
            return Math.max(flyer.reachM(), flyer.loadRadiusM());
        }

        private void look(Curtain.Flown piece, Curtain curtain) {
            double apartM =
                    Plane.pieceDistanceM(piece.from(), piece.to(), curtain.a(), curtain.b());
            if (apartM - curtain.halfWidthM() - reachM() <= leastM) {
                Curtain.Nearest nearest = curtain.nearest(flyer, piece);
                if (nearest.leastM() < leastM || (at.isEmpty() && nearest.leastM() <= leastM)) {
                    leastM = nearest.leastM();
                    at = Optional.of(piece.at(nearest.alongFraction()));
                }
            }
        }

        /**
         * Asked of the span, as everywhere: on a support, where wires join, the rounded ends of curtains may
         * miss what the span meets.
         */
        private void crossing(Curtain.Flown piece, int span) {
            double t =
                    Plane.crossingFraction(
                            piece.from(),
                            piece.to(),
                            wire.supports().get(span),
                            wire.supports().get(span + 1));
            if (t < 0) {
                return;
            }
            PlanePoint point = piece.at(t);
            double endAmslM = piece.hookAmslM(t) - flyer.underHookM();
            for (Curtain curtain : wire.tube().spans().get(span)) {
                if (curtain.toAxisM(point) <= MEETS_M) {
                    aboveM = Math.min(aboveM, endAmslM - curtain.topAmslM());
                }
            }
        }
    }
}
