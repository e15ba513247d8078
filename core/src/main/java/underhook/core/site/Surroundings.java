package underhook.core.site;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.PlanePoint;
import underhook.core.geo.Slope;
import underhook.core.job.Place;

/**
 * What stands within 60 m of a place, in cells of 1 m with the place in the middle of one.
 *
 * <p>Trees at a place whose canopy was surveyed stand everywhere for rotor and tail: its clearing gives
 * no credit, because a machine drifts. For line and load they stand beyond the clearing. Where only a
 * raster is known, it counts cell by cell for all; where none is, the height assumed on legs.
 */
public final class Surroundings {
    /** Side of a cell, m. */
    public static final double CELL_M = 1;

    /** A cell's corners lie this far from its middle, m. */
    static final double CELL_PAD_M = CELL_M / Math.sqrt(2);

    /** A disc inside a cell that does not touch its neighbours, m. */
    private static final double CELL_INSIDE_M = 0.49 * CELL_M;

    /** Walls are taken in pieces of at most this, m. */
    private static final double WALL_PIECE_M = 0.5;

    /** Stands as the id of a cell of which the raster has no height: it counts as endlessly high. */
    public static final String UNKNOWN_GROUND = "ground of unknown height";

    /** Ground steeper than this is not what a load is set down on, as rise over run. */
    private static final double STEEPEST_FACTOR = 1;

    /** What the columns are asked for. */
    public enum Layer {
        /** Rotor, tail and fuselage. */
        MACHINE,
        /** Line and load. */
        HANGING
    }

    /**
     * How the place is seen.
     *
     * @param reachM within this the highest tree of a raster counts for the whole hover, m
     * @param canopyElsewhereM trees where neither survey nor raster says, m
     * @param unevenM ground that stands less than this over the slope a load is set down on is not
     *     measured against line and load, m
     */
    public record View(double reachM, double canopyElsewhereM, double unevenM) {}

    private final PlanePoint point;
    private final HeightField terrain;
    private final double elevationAmslM;
    private final double slopeFactor;
    private final double canopyM;
    private final double canopySpreadM;
    private final Map<Layer, Map<Cause, List<Column>>> columns = new EnumMap<>(Layer.class);
    private final Map<Layer, Map<Cause, Columns>> sorted = new EnumMap<>(Layer.class);

    private Surroundings(Ground ground, Place place, View view) {
        this.point = ground.frame().toPlane(place.position());
        this.terrain = ground.terrain();
        boolean known = terrain.covers(point.eastM(), point.northM());
        this.elevationAmslM =
                known ? terrain.heightM(point.eastM(), point.northM()) : Double.POSITIVE_INFINITY;
        this.canopyM = hoverCanopyM(ground, place, view);
        this.canopySpreadM =
                place.canopyM().isPresent() ? place.canopySpreadM() : ground.canopySpreadM();
        Slope slope =
                Slope.find(terrain, point, Math.max(CELL_M, terrain.cellSizeM()))
                        .orElse(new Slope(0, 0));
        this.slopeFactor = Math.tan(slope.slopeRad());
        for (Layer layer : Layer.values()) {
            Map<Cause, List<Column>> causes = new EnumMap<>(Cause.class);
            for (Cause cause : Cause.values()) {
                causes.put(cause, new ArrayList<>());
            }
            columns.put(layer, causes);
        }
        addCells(ground, place, view, slope);
    }

    /**
     * Gathers what stands around a place.
     *
     * @param walls things and wires of the whole job; those out of reach are left out
     */
    public static Surroundings of(Ground ground, Place place, View view, List<Wall> walls) {
        Surroundings around = new Surroundings(ground, place, view);
        for (Wall wall : walls) {
            around.addWall(wall);
        }
        for (Layer layer : Layer.values()) {
            Map<Cause, Columns> causes = new EnumMap<>(Cause.class);
            for (Cause cause : Cause.values()) {
                causes.put(cause, Columns.of(around.listColumns(layer, cause)));
            }
            around.sorted.put(layer, causes);
        }
        return around;
    }

    /** Whether the ground at the place itself is known; without it there is no room. */
    public boolean isKnown() {
        return elevationAmslM < Double.POSITIVE_INFINITY;
    }

    /** Ground at the place, m AMSL; infinite where it is not known. */
    public double elevationAmslM() {
        return elevationAmslM;
    }

    /** Trees that count for the whole hover of rotor and tail, m above ground. */
    public double canopyM() {
        return canopyM;
    }

    /** How far that height may be off either way, m. */
    public double canopySpreadM() {
        return canopySpreadM;
    }

    /** Slope of the ground at the place, as rise over run. */
    public double slopeFactor() {
        return slopeFactor;
    }

    /** The columns of one cause that a layer is measured against, in no order that counts. */
    public List<Column> listColumns(Layer layer, Cause cause) {
        return List.copyOf(Objects.requireNonNull(columnsOf(layer, cause)));
    }

    private List<Column> columnsOf(Layer layer, Cause cause) {
        return Objects.requireNonNull(Objects.requireNonNull(columns.get(layer)).get(cause));
    }

    Columns sorted(Layer layer, Cause cause) {
        return Objects.requireNonNull(Objects.requireNonNull(sorted.get(layer)).get(cause));
    }

    /**
     * How far the ground rises over the place on a line from it, m, not negative; infinite where it is
     * not known.
     *
     * @param bearingGridRad direction of the line, rad from grid north
     * @param farM its length, m
     * @param stepM how far apart it is looked at at the most, m; its far end always is
     */
    public double riseM(double bearingGridRad, double farM, double stepM) {
        double mostM = 0;
        int steps = (int) Math.ceil(farM / stepM - 1e-9);
        for (int i = 0; i <= steps; i++) {
            PlanePoint at = point.towards(bearingGridRad, steps == 0 ? 0 : farM * i / steps);
            if (!terrain.covers(at.eastM(), at.northM())) {
                return Double.POSITIVE_INFINITY;
            }
            mostM = Math.max(mostM, terrain.heightM(at.eastM(), at.northM()) - elevationAmslM);
        }
        return mostM;
    }

    private double hoverCanopyM(Ground ground, Place place, View view) {
        if (place.canopyM().isPresent()) {
            return place.canopyM().getAsDouble();
        }
        if (ground.canopy().isEmpty()) {
            return view.canopyElsewhereM();
        }
        HeightField raster = ground.canopy().get();
        OptionalDouble highest = raster.findHighestKnownWithinM(point, view.reachM());
        return raster.coversDisc(point, view.reachM())
                ? highest.orElseThrow()
                : Math.max(highest.orElse(0), view.canopyElsewhereM());
    }

    private void addCells(Ground ground, Place place, View view, Slope slope) {
        int half = (int) (Columns.WITHIN_M / CELL_M);
        for (int row = -half; row <= half; row++) {
            for (int column = -half; column <= half; column++) {
                double east = column * CELL_M;
                double north = row * CELL_M;
                double apartM = Math.sqrt(east * east + north * north);
                if (apartM > Columns.WITHIN_M) {
                    continue;
                }
                PlanePoint at = new PlanePoint(point.eastM() + east, point.northM() + north);
                double groundM = cellGroundM(at);
                double treesM = cellTreesM(ground, place, view, at);
                boolean cleared = apartM + CELL_PAD_M <= place.clearingRadiusM();
                boolean noRaster = place.canopyM().isPresent() || ground.canopy().isEmpty();
                double treesAsideM = cleared && noRaster ? 0 : treesM;
                addCell(Layer.MACHINE, treesM, cell(east, north, groundM + treesM));
                double overSlopeM = groundM - elevationAmslM - setDownRiseM(slope, east, north);
                if (treesAsideM > 0 || !(overSlopeM <= view.unevenM())) {
                    addCell(Layer.HANGING, treesAsideM, cell(east, north, groundM + treesAsideM));
                }
            }
        }
    }

    private void addCell(Layer layer, double treesM, Column column) {
        columnsOf(layer, treesM > 0 ? Cause.TREES : Cause.GROUND).add(column);
    }

    private static Column cell(double eastM, double northM, double topAmslM) {
        String id = topAmslM == Double.POSITIVE_INFINITY ? UNKNOWN_GROUND : "";
        return new Column(eastM, northM, topAmslM, CELL_PAD_M, id);
    }

    /** The slope at the place carried on, m over the place. */
    private static double setDownRiseM(Slope slope, double eastM, double northM) {
        double factor = Math.min(STEEPEST_FACTOR, Math.tan(slope.slopeRad()));
        double fallsM =
                eastM * Math.sin(slope.fallsTowardsGridRad())
                        + northM * Math.cos(slope.fallsTowardsGridRad());
        return -factor * fallsM;
    }

    /** Cells finer than ours count with their highest; coarser ones are bridged. */
    private double cellGroundM(PlanePoint at) {
        if (terrain.cellSizeM() < CELL_M * (1 - 1e-6)) {
            return terrain.coversDisc(at, CELL_PAD_M)
                    ? terrain.highestWithinM(at, CELL_PAD_M)
                    : Double.POSITIVE_INFINITY;
        }
        return terrain.covers(at.eastM(), at.northM())
                ? terrain.heightM(at.eastM(), at.northM())
                : Double.POSITIVE_INFINITY;
    }

    private static double cellTreesM(Ground ground, Place place, View view, PlanePoint at) {
        if (place.canopyM().isPresent()) {
            return place.canopyM().getAsDouble();
        }
        return ground.canopy()
                .filter(raster -> raster.coversDisc(at, CELL_INSIDE_M))
                .map(raster -> raster.highestWithinM(at, CELL_INSIDE_M))
                .orElse(view.canopyElsewhereM());
    }

    private void addWall(Wall wall) {
        double lengthM = wall.a().distanceToM(wall.b());
        int pieces = Math.max(1, (int) Math.ceil(lengthM / WALL_PIECE_M));
        double padM = wall.halfWidthM() + lengthM / pieces / 2;
        double topM = Math.max(wall.topAAmslM(), wall.topBAmslM());
        boolean endless = topM == Double.POSITIVE_INFINITY;
        double perPieceM = endless ? 0 : (wall.topBAmslM() - wall.topAAmslM()) / pieces;
        for (int i = 0; i < pieces; i++) {
            double t = (i + 0.5) / pieces;
            double eastM = wall.a().eastM() * (1 - t) + wall.b().eastM() * t - point.eastM();
            double northM = wall.a().northM() * (1 - t) + wall.b().northM() * t - point.northM();
            if (Math.hypot(eastM, northM) - padM > Columns.WITHIN_M) {
                continue;
            }
            double pieceTopM =
                    endless ? topM : wall.topAAmslM() + perPieceM * (perPieceM > 0 ? i + 1 : i);
            for (Layer layer : Layer.values()) {
                columnsOf(layer, wall.cause())
                        .add(new Column(eastM, northM, pieceTopM, padM, wall.id()));
            }
        }
    }
}
