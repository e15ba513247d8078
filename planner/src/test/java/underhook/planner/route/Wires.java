package underhook.planner.route;

import java.util.List;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Wire;
import underhook.core.wire.Curtain;
import underhook.core.wire.Tube;

/** An invented wire, 40 m high, known to 5 m, crossed 25 m above it within 20° of square. */
final class Wires {
    private Wires() {}

    /** North and south through a point, a line of its own; its position on the globe plays no part. */
    static WirePlan northSouth(double eastM, CrossingRule rule, double topAmslM) {
        Wire wire =
                new Wire(
                        "W1",
                        List.of(new GeoPoint(46.8, -12.0), new GeoPoint(46.9, -12.0)),
                        40,
                        5,
                        true,
                        110_000,
                        rule,
                        25,
                        Math.toRadians(20),
                        true,
                        underhook.core.job.Hanging.of(underhook.core.job.WireKind.POWER, false),
                        "invented");
        PlanePoint south = new PlanePoint(eastM, -1000);
        PlanePoint north = new PlanePoint(eastM, 1000);
        Curtain curtain = new Curtain(south, north, topAmslM, 5);
        return new WirePlan(
                wire,
                Double.hashCode(eastM),
                List.of(south, north),
                Tube.of(List.of(List.of(curtain)), false),
                0,
                25,
                0);
    }
}
