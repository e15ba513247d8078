package underhook.planner.route;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.union.UnaryUnionOp;
import underhook.core.fall.Runout;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.Handling.Exposure.Poor;
import underhook.core.job.Job;
import underhook.core.job.LoadShape;
import underhook.core.job.MapFeature;
import underhook.core.job.Place;

/** Ground where a load may be let go but would do poorly, as one area for each reason. */
final class PoorGround {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final Job job;
    private final Ground ground;
    private final double keepOffM;

    /**
     * @param keepOffM how far a way that does not come over it keeps off it, m
     */
    PoorGround(Job job, Ground ground, double keepOffM) {
        this.job = job;
        this.ground = ground;
        this.keepOffM = keepOffM;
    }

    /** What has a price; nothing where the job states none. */
    List<Exposed> list(List<String> kinds) {
        Poor prices = job.rules().handling().exposure().poor();
        List<Exposed> all = new ArrayList<>();
        if (prices.alongS() > 0) {
            add(all, "ground along roads", along(), prices.alongS());
        }
        if (prices.steepS() > 0) {
            add(all, "steep ground", steep(kinds), prices.steepS());
        }
        return all;
    }

    private void add(List<Exposed> all, String name, Geometry area, double priceS) {
        if (!area.isEmpty()) {
            all.add(Exposed.area(name, area, priceS, keepOffM));
        }
    }

    private Geometry along() {
        List<Geometry> strips = new ArrayList<>();
        for (MapFeature feature : job.features()) {
            if (feature.shape() == MapFeature.Shape.LINE
                    && feature.crossing() != CrossingRule.NEVER) {
                Geometry line = Obstacles.shape(feature.shape(), feature.outline(), ground);
                strips.add(Obstacles.widen(line, Poor.ALONG_M));
            }
        }
        return union(strips);
    }

    /** Squares on which a load of one of these kinds would not come to rest by friction. */
    private Geometry steep(List<String> kinds) {
        List<LoadShape> shapes =
                kinds.stream().map(kind -> job.getKind(kind).shape()).distinct().toList();
        Envelope around = new Envelope();
        for (Place place : job.places()) {
            PlanePoint at = ground.frame().toPlane(place.position());
            around.expandToInclude(at.eastM(), at.northM());
        }
        around.expandBy(Poor.AROUND_M);
        long west = Math.round(Math.floor(around.getMinX() / Poor.CELL_M));
        long east = Math.round(Math.ceil(around.getMaxX() / Poor.CELL_M));
        long south = Math.round(Math.floor(around.getMinY() / Poor.CELL_M));
        long north = Math.round(Math.ceil(around.getMaxY() / Poor.CELL_M));
        List<Geometry> runs = new ArrayList<>();
        for (long row = south; row < north; row++) {
            long from = west;
            for (long column = west; column <= east; column++) {
                if (column < east && isSteep(column, row, shapes)) {
                    continue;
                }
                if (column > from) {
                    runs.add(cells(from, column, row));
                }
                from = column + 1;
            }
        }
        return union(runs);
    }

    private static Geometry cells(long fromColumn, long toColumn, long row) {
        return FACTORY.toGeometry(
                new Envelope(
                        fromColumn * Poor.CELL_M,
                        toColumn * Poor.CELL_M,
                        row * Poor.CELL_M,
                        (row + 1) * Poor.CELL_M));
    }

    private static Geometry union(List<Geometry> parts) {
        Geometry whole = UnaryUnionOp.union(parts);
        return whole == null ? FACTORY.createPolygon() : whole;
    }

    /** By the plane that fits the square's corners best. Where one is not known the ground has no price. */
    private boolean isSteep(long column, long row, List<LoadShape> shapes) {
        HeightField terrain = ground.terrain();
        double[] heightM = new double[4];
        for (int i = 0; i < 4; i++) {
            double eastM = (column + i % 2) * Poor.CELL_M;
            double northM = (row + i / 2) * Poor.CELL_M;
            if (!terrain.covers(eastM, northM)) {
                return false;
            }
            heightM[i] = terrain.heightM(eastM, northM);
        }
        double risesEast = heightM[1] + heightM[3] - heightM[0] - heightM[2];
        double risesNorth = heightM[2] + heightM[3] - heightM[0] - heightM[1];
        double slopeRad = Math.atan(Math.hypot(risesEast, risesNorth) / (2 * Poor.CELL_M));
        return shapes.stream().anyMatch(shape -> Runout.runsAway(shape, slopeRad));
    }
}
