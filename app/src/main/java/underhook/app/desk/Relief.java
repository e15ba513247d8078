package underhook.app.desk;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import underhook.core.geo.Contours;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.Ground;
import underhook.core.geo.HeightField;
import underhook.core.geo.Hillshade;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

/**
 * A job's terrain on the pixels of a web map.
 *
 * <p>Columns and rows are even steps of spherical Mercator, the projection that web maps are drawn in,
 * from the north-west corner. Positions between every {@value #LATTICE}th pixel are taken straight; over a
 * valley the error is far below a pixel.
 */
public final class Relief {
    private static final int LATTICE = 16;

    /** Light from the north-west, as on most maps. @source PRACTICE */
    private static final Hillshade LIGHT = new Hillshade(Math.toRadians(315), Math.toRadians(45));

    private final Box box;
    private final Pixels pixels;

    /** Part of the Earth, in degrees; one that lies across the 180th meridian runs on beyond 180 or -180. */
    public record Box(double westDeg, double southDeg, double eastDeg, double northDeg) {
        /** Around some points, wider by a share of its size. */
        public static Box around(List<GeoPoint> points, double marginFraction) {
            double firstDeg = points.isEmpty() ? 0 : points.get(0).lonDeg();
            double west = offDeg(points, firstDeg).min().orElse(0) + firstDeg;
            double east = offDeg(points, firstDeg).max().orElse(0) + firstDeg;
            double south = points.stream().mapToDouble(GeoPoint::latDeg).min().orElse(0);
            double north = points.stream().mapToDouble(GeoPoint::latDeg).max().orElse(0);
            double stretch = 1 / Math.cos(Math.toRadians((south + north) / 2));
            double marginDeg =
                    marginFraction
                            * Math.max(0.005, Math.max((east - west) / stretch, north - south));
            return new Box(
                    west - marginDeg * stretch,
                    south - marginDeg,
                    east + marginDeg * stretch,
                    north + marginDeg);
        }

        private static DoubleStream offDeg(List<GeoPoint> points, double fromDeg) {
            return points.stream()
                    .mapToDouble(point -> Math.IEEEremainder(point.lonDeg() - fromDeg, 360));
        }

        /** The least box round this one that is a square on a web map, so that a view of any shape is filled. */
        public Box squared() {
            double halfWide = Math.toRadians(eastDeg - westDeg) / 2;
            double halfHigh = (mercator(northDeg) - mercator(southDeg)) / 2;
            double half = Math.max(halfWide, halfHigh);
            double lon = (westDeg + eastDeg) / 2;
            double lat = (mercator(northDeg) + mercator(southDeg)) / 2;
            return new Box(
                    lon - Math.toDegrees(half),
                    latDeg(lat - half),
                    lon + Math.toDegrees(half),
                    latDeg(lat + half));
        }
    }

    private Relief(Box box, Pixels pixels) {
        this.box = box;
        this.pixels = pixels;
    }

    /** Heights pixel by pixel as a field whose plane is the picture; rows from the north. */
    private static final class Pixels implements HeightField {
        final int columns;
        final int rows;
        final double cellM;
        private final double[] heightM;

        Pixels(int columns, int rows, double[] heightM, double cellM) {
            this.columns = columns;
            this.rows = rows;
            this.heightM = heightM;
            this.cellM = cellM;
        }

        PlanePoint centre(int column, int row) {
            return new PlanePoint((column + 0.5) * cellM, (rows - row - 0.5) * cellM);
        }

        private int index(double eastM, double northM) {
            int column = (int) Math.floor(eastM / cellM);
            int row = rows - 1 - (int) Math.floor(northM / cellM);
            boolean isInside = column >= 0 && column < columns && row >= 0 && row < rows;
            return isInside ? row * columns + column : -1;
        }

        @Override
        public boolean covers(double eastM, double northM) {
            int at = index(eastM, northM);
            return at >= 0 && !Double.isNaN(heightM[at]);
        }

        @Override
        public double heightM(double eastM, double northM) {
            if (!covers(eastM, northM)) {
                throw new IllegalArgumentException("a point of the picture is not known.");
            }
            return heightM[index(eastM, northM)];
        }

        @Override
        public double highestWithinM(PlanePoint centre, double radiusM) {
            if (!coversDisc(centre, radiusM)) {
                throw new IllegalArgumentException("a disc of the picture is not known.");
            }
            return around(centre, radiusM).mapToDouble(at -> heightM[at]).max().orElseThrow();
        }

        @Override
        public boolean coversDisc(PlanePoint centre, double radiusM) {
            return around(centre, radiusM).allMatch(at -> at >= 0 && !Double.isNaN(heightM[at]));
        }

        /** Every pixel of the square around a disc; -1 beyond the picture. */
        private IntStream around(PlanePoint centre, double radiusM) {
            int west = (int) Math.floor((centre.eastM() - radiusM) / cellM);
            int east = (int) Math.floor((centre.eastM() + radiusM) / cellM);
            int south = (int) Math.floor((centre.northM() - radiusM) / cellM);
            int north = (int) Math.floor((centre.northM() + radiusM) / cellM);
            return IntStream.rangeClosed(south, north)
                    .flatMap(
                            up ->
                                    IntStream.rangeClosed(west, east)
                                            .map(
                                                    right ->
                                                            index(
                                                                    (right + 0.5) * cellM,
                                                                    (up + 0.5) * cellM)));
        }

        @Override
        public double cellSizeM() {
            return cellM;
        }
    }

    /** Samples the terrain; pixels that it does not cover stay unknown. */
    public static Relief of(Ground ground, Box box, int columns, int rows) {
        LocalFrame frame = ground.frame();
        HeightField terrain = ground.terrain();
        PlanePoint[][] lattice = lattice(frame, box, columns, rows);
        double[] sampled = new double[columns * rows];
        IntStream.range(0, rows)
                .parallel()
                .forEach(
                        row -> {
                            for (int column = 0; column < columns; column++) {
                                PlanePoint at = between(lattice, column, row);
                                sampled[row * columns + column] =
                                        terrain.covers(at.eastM(), at.northM())
                                                ? terrain.heightM(at.eastM(), at.northM())
                                                : Double.NaN;
                            }
                        });
        double cellM = lattice[0][0].distanceToM(lattice[0][1]) / LATTICE;
        return new Relief(box, new Pixels(columns, rows, sampled, cellM));
    }

    private static PlanePoint[][] lattice(LocalFrame frame, Box box, int columns, int rows) {
        int across = columns / LATTICE + 2;
        int down = rows / LATTICE + 2;
        PlanePoint[][] lattice = new PlanePoint[down][across];
        for (int j = 0; j < down; j++) {
            for (int i = 0; i < across; i++) {
                lattice[j][i] =
                        frame.toPlane(
                                position(
                                        box,
                                        (i * LATTICE + 0.5) / columns,
                                        (j * LATTICE + 0.5) / rows));
            }
        }
        return lattice;
    }

    /** A point so far across from the west and down from the north. */
    private static GeoPoint position(Box box, double acrossFraction, double downFraction) {
        double north = mercator(box.northDeg());
        double south = mercator(box.southDeg());
        double y = north + downFraction * (south - north);
        double lonDeg = box.westDeg() + acrossFraction * (box.eastDeg() - box.westDeg());
        return new GeoPoint(latDeg(y), Math.IEEEremainder(lonDeg, 360));
    }

    private static double mercator(double latDeg) {
        double sin = Math.sin(Math.toRadians(latDeg));
        return Math.log((1 + sin) / (1 - sin)) / 2;
    }

    private static double latDeg(double mercator) {
        return Math.toDegrees(Math.atan(Math.sinh(mercator)));
    }

    private static PlanePoint between(PlanePoint[][] lattice, int column, int row) {
        int i = column / LATTICE;
        int j = row / LATTICE;
        double x = (double) (column % LATTICE) / LATTICE;
        double y = (double) (row % LATTICE) / LATTICE;
        PlanePoint a = lattice[j][i];
        PlanePoint b = lattice[j][i + 1];
        PlanePoint c = lattice[j + 1][i];
        PlanePoint d = lattice[j + 1][i + 1];
        return new PlanePoint(
                mix(mix(a.eastM(), b.eastM(), x), mix(c.eastM(), d.eastM(), x), y),
                mix(mix(a.northM(), b.northM(), x), mix(c.northM(), d.northM(), x), y));
    }

    private static double mix(double one, double other, double share) {
        return one + share * (other - one);
    }

    public Box box() {
        return box;
    }

    public int columns() {
        return pixels.columns;
    }

    public int rows() {
        return pixels.rows;
    }

    /** Where a point of the picture lies, in pixels from the middle of the north-western one. */
    public GeoPoint at(double columnRatio, double rowRatio) {
        return position(box, (columnRatio + 0.5) / columns(), (rowRatio + 0.5) / rows());
    }

    /** Lines of equal height, in positions. */
    public List<List<GeoPoint>> contour(double levelM) {
        List<Double> heightM = Arrays.stream(pixels.heightM).boxed().toList();
        return Contours.trace(new Contours.Grid(columns(), rows(), heightM), levelM).stream()
                .map(
                        line ->
                                line.stream()
                                        .map(node -> at(node.columnRatio(), node.rowRatio()))
                                        .toList())
                .toList();
    }

    /** Whether the height of a pixel is known; rows from the north. */
    public boolean isKnown(int column, int row) {
        return !Double.isNaN(pixels.heightM[row * pixels.columns + column]);
    }

    /** Height of a known pixel, m AMSL; rows from the north. */
    public double heightAmslM(int column, int row) {
        return pixels.heightM[row * pixels.columns + column];
    }

    /** How brightly a pixel is lit, in [0, 1]; level ground where a neighbour is not known. */
    public double brightnessFraction(int column, int row) {
        double cellM = pixels.cellM;
        return LIGHT.findBrightnessFraction(pixels, pixels.centre(column, row), cellM, cellM)
                .orElse(Math.sqrt(0.5));
    }
}
