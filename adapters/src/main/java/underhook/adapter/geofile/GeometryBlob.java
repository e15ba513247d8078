package underhook.adapter.geofile;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import underhook.adapter.geofile.source.Unreadable;
import underhook.app.port.FeatureReader.Corner;

/**
 * A GeoPackage geometry that is being read: a header, then ISO well-known binary in either byte order.
 * Mutable.
 *
 * @source OGC-12-128R17 clause 2.1.3.1.1, tables 7 and 8; OGC-06-103R4 clause 8.2.3 (type codes)
 */
final class GeometryBlob {
    private static final int EXTENDED_FLAG = 1 << 5;
    private static final int[] ENVELOPE_DOUBLES = {0, 4, 6, 6, 8};
    private static final int MOST_DEPTH = 16;

    /** No system counts its coordinates further; beyond it stands noise. */
    private static final double FARTHEST = 1e9;

    private final ByteBuffer blob;
    private final boolean hasMetres;
    private final List<Part> parts = new ArrayList<>();

    private GeometryBlob(ByteBuffer blob, boolean hasMetres) {
        this.blob = blob;
        this.hasMetres = hasMetres;
    }

    /** System that the blob states, and its parts; no parts when the geometry is empty. */
    record Geometry(int systemId, List<Part> parts) {}

    /**
     * Reads a blob.
     *
     * @param hasMetres whether a third coordinate is metres; else it is passed over
     */
    static Geometry read(byte[] bytes, boolean hasMetres) throws Unreadable {
        GeometryBlob geometry = new GeometryBlob(ByteBuffer.wrap(bytes), hasMetres);
        try {
            int systemId = geometry.readHeader();
            geometry.readAny(0);
            return new Geometry(systemId, List.copyOf(geometry.parts));
        } catch (BufferUnderflowException e) {
            throw fault("ends too early");
        }
    }

    private static Unreadable fault(String what) {
        return Unreadable.field("geometry", what);
    }

    private int readHeader() throws Unreadable {
        if (blob.get() != 'G' || blob.get() != 'P') {
            throw fault("is no GeoPackage geometry");
        }
        int version = blob.get();
        int flags = blob.get();
        int envelope = flags >> 1 & 7;
        if (version != 0 || envelope >= ENVELOPE_DOUBLES.length) {
            throw fault("has a header of an unknown version");
        }
        if ((flags & EXTENDED_FLAG) != 0) {
            throw fault("is of a type that only an extension knows")
                    .allowing("points, lines and polygons");
        }
        blob.order(order(flags & 1));
        int systemId = blob.getInt();
        for (int i = 0; i < ENVELOPE_DOUBLES[envelope]; i++) {
            blob.getDouble();
        }
        return systemId;
    }

    private static ByteOrder order(int code) throws Unreadable {
        return switch (code) {
            case 0 -> ByteOrder.BIG_ENDIAN;
            case 1 -> ByteOrder.LITTLE_ENDIAN;
            default -> throw fault("has an unknown byte order");
        };
    }

    private void readAny(int depth) throws Unreadable {
        if (depth > MOST_DEPTH) {
            throw fault("is nested more than " + MOST_DEPTH + " deep");
        }
        blob.order(order(blob.get()));
        int code = blob.getInt();
        int dimensions = code / 1000;
        if (code < 0 || dimensions > 3) {
            throw fault("is of an unknown type").found(Integer.toString(code));
        }
        Layout layout = new Layout((dimensions & 1) != 0, (dimensions & 2) != 0);
        switch (code % 1000) {
            case 1 -> readPoint(layout);
            case 2 -> {
                List<Corner> corners = readString(layout);
                if (!corners.isEmpty()) {
                    parts.add(Part.line(corners));
                }
            }
            case 3, 17 -> readPolygon(layout);
            case 4, 5, 6, 7, 11, 12, 15, 16 -> {
                int count = readCount(5);
                for (int i = 0; i < count; i++) {
                    readAny(depth + 1);
                }
            }
            case 8, 9, 10, 13, 14 ->
                    throw fault("has curved pieces").allowing("straight pieces only");
            default -> throw fault("is of an unknown type").found(Integer.toString(code));
        }
    }

    /** Which numbers each position has besides x and y. */
    private record Layout(boolean hasZ, boolean hasM) {
        int bytes() {
            return 16 + (hasZ ? 8 : 0) + (hasM ? 8 : 0);
        }
    }

    private void readPoint(Layout layout) throws Unreadable {
        if (blob.remaining() < layout.bytes()) {
            throw fault("ends too early");
        }
        int start = blob.position();
        double x = blob.getDouble();
        double y = blob.getDouble();
        if (Double.isNaN(x) && Double.isNaN(y)) {
            blob.position(start + layout.bytes());
        } else {
            blob.position(start);
            parts.add(Part.point(readCorner(layout)));
        }
    }

    private void readPolygon(Layout layout) throws Unreadable {
        int rings = readCount(4);
        List<Corner> outer = List.of();
        for (int i = 0; i < rings; i++) {
            List<Corner> ring = readString(layout);
            outer = i == 0 ? ring : outer;
        }
        if (rings > 0) {
            parts.add(Part.area(outer, rings > 1));
        }
    }

    private List<Corner> readString(Layout layout) throws Unreadable {
        int count = readCount(layout.bytes());
        List<Corner> corners = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            corners.add(readCorner(layout));
        }
        return corners;
    }

    /** How many things follow; a count that the rest of the blob cannot hold is refused. */
    private int readCount(int leastBytes) throws Unreadable {
        int count = blob.getInt();
        if (count < 0 || (long) count * leastBytes > blob.remaining()) {
            throw fault("ends too early");
        }
        return count;
    }

    private Corner readCorner(Layout layout) throws Unreadable {
        double x = readCoordinate();
        double y = readCoordinate();
        OptionalDouble z = OptionalDouble.empty();
        if (layout.hasZ) {
            double value = blob.getDouble();
            boolean isKnown = hasMetres && Math.abs(value) <= FARTHEST;
            z = isKnown ? OptionalDouble.of(value) : z;
        }
        if (layout.hasM) {
            blob.getDouble();
        }
        return new Corner(x, y, z);
    }

    private double readCoordinate() throws Unreadable {
        double value = blob.getDouble();
        if (!(Math.abs(value) <= FARTHEST)) {
            throw Unreadable.range("geometry", "has a coordinate out of any range")
                    .found(Double.toString(value));
        }
        return value;
    }
}
