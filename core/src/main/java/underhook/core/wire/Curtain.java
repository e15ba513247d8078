package underhook.core.wire;

import java.util.Objects;
import underhook.core.geo.PlanePoint;

/**
 * A short piece of wire as an obstacle: everything within its half-width of the straight line between two
 * points, from the ground up to the highest that the wire can be. Nothing is ever planned under a wire.
 *
 * @param topAmslM highest the wire can be on this piece, m AMSL; infinite where it is not known
 * @param halfWidthM how far to each side it can be, m
 */
public record Curtain(PlanePoint a, PlanePoint b, double topAmslM, double halfWidthM) {
    /** Halvings of the golden section: the rest is below a billionth of the flown piece. */
    private static final int SECTIONS = 48;

    private static final double GOLDEN_RATIO = (Math.sqrt(5) - 1) / 2;

    public Curtain {
        Objects.requireNonNull(a, "a");
        Objects.requireNonNull(b, "b");
        if (!(halfWidthM >= 0 && topAmslM > -20_000)) {
            throw new IllegalArgumentException(
                    "topAmslM (" + topAmslM + ") or halfWidthM (" + halfWidthM + ") is no size.");
        }
    }

    /**
     * A straight piece flown.
     *
     * @param fromHookAmslM altitude of the hook at its start, m AMSL
     * @param toHookAmslM altitude of the hook at its end, m AMSL
     */
    public record Flown(PlanePoint from, PlanePoint to, double fromHookAmslM, double toHookAmslM) {
        private double lengthM() {
            return Math.hypot(from.distanceToM(to), toHookAmslM - fromHookAmslM);
        }

        /** The point so far along in plan. */
        public PlanePoint at(double alongFraction) {
            return new PlanePoint(
                    from.eastM() + alongFraction * (to.eastM() - from.eastM()),
                    from.northM() + alongFraction * (to.northM() - from.northM()));
        }

        /** Altitude of the hook so far along, m AMSL. */
        public double hookAmslM(double alongFraction) {
            return fromHookAmslM + alongFraction * (toHookAmslM - fromHookAmslM);
        }
    }

    /**
     * The least distance and where.
     *
     * @param leastM never above the true one; below it by less than a millionth of the flown piece
     * @param alongFraction where on the flown piece, in [0, 1]
     */
    public record Nearest(double leastM, double alongFraction) {}

    /**
     * Least distance in space of machine, line and load to this piece of wire while a straight piece is
     * flown, m; 0 where they touch.
     *
     * <p>The distance to a convex body from a point that moves straight is a convex function of the way,
     * so that narrowing it down finds the one lowest point; and no point of what moves comes nearer by
     * more than it moves, so that what is left of the way bounds the error.
     */
    public Nearest nearest(Flyer flyer, Flown flown) {
        Nearest load = nearest(flown, flyer.underHookM(), flyer.loadRadiusM());
        Nearest machine = nearest(flown, 0, flyer.reachM());
        return machine.leastM() < load.leastM() ? machine : load;
    }

    private Nearest nearest(Flown flown, double belowHookM, double radiusM) {
        double low = 0;
        double high = 1;
        double left = high - GOLDEN_RATIO;
        double right = GOLDEN_RATIO;
        double atLeft = distanceM(flown, left, belowHookM, radiusM);
        double atRight = distanceM(flown, right, belowHookM, radiusM);
        for (int i = 0; i < SECTIONS; i++) {
            if (atLeft <= atRight) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN_RATIO * (high - low);
                atLeft = distanceM(flown, left, belowHookM, radiusM);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN_RATIO * (high - low);
                atRight = distanceM(flown, right, belowHookM, radiusM);
            }
        }
        double leastM = Math.min(atLeft, atRight) - (high - low) * flown.lengthM() - 1e-9;
        return new Nearest(Math.max(0, leastM), (low + high) / 2);
    }

    private double distanceM(Flown flown, double alongFraction, double belowHookM, double radiusM) {
        double besideM = axisDistanceM(flown, alongFraction) - halfWidthM - radiusM;
        double aboveM = flown.hookAmslM(alongFraction) - belowHookM - topAmslM;
        double asideM = Math.max(0, besideM);
        return aboveM <= 0 ? asideM : Math.sqrt(asideM * asideM + aboveM * aboveM);
    }

    private double axisDistanceM(Flown flown, double alongFraction) {
        PlanePoint from = flown.from();
        PlanePoint to = flown.to();
        return toAxisM(
                from.eastM() + alongFraction * (to.eastM() - from.eastM()),
                from.northM() + alongFraction * (to.northM() - from.northM()));
    }

    /** Distance of a point in plan to the line between the two ends, m. */
    public double toAxisM(PlanePoint point) {
        return toAxisM(point.eastM(), point.northM());
    }

    private double toAxisM(double eastM, double northM) {
        double dx = b.eastM() - a.eastM();
        double dy = b.northM() - a.northM();
        double x = eastM - a.eastM();
        double y = northM - a.northM();
        double square = dx * dx + dy * dy;
        double t = square > 0 ? Math.max(0, Math.min(1, (x * dx + y * dy) / square)) : 0;
        double east = x - t * dx;
        double north = y - t * dy;
        return Math.sqrt(east * east + north * north);
    }
}
