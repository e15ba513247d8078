package underhook.adapter.geopackage;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import underhook.core.geo.GeoPoint;

/**
 * GeoPackage geometries: a header with the envelope, then ISO well-known binary, little endian.
 *
 * @source OGC-12-128R17 clause 2.1.3.1.1, table 7; OGC-06-103R4 clause 8.2.3 (type codes)
 */
final class GeometryBlob {
    private static final int POINT = 1;
    private static final int LINE_STRING = 2;
    private static final int POLYGON = 3;

    /** What ISO adds to a type that has heights. */
    private static final int WITH_Z = 1000;

    private static final int WGS84 = 4326;
    private static final byte LITTLE_ENDIAN = 1;
    private static final byte ENVELOPE_XY = 1 << 1;

    private GeometryBlob() {}

    /** A position, and its height where the geometry has heights. */
    record Vertex(GeoPoint position, double altitudeAmslM) {}

    static byte[] point(GeoPoint point) {
        ByteBuffer blob = blob(List.of(new Vertex(point, 0)), 5 + 16, false);
        type(blob, POINT);
        xy(blob, point);
        return bytes(blob);
    }

    static byte[] pointZ(Vertex vertex) {
        ByteBuffer blob = blob(List.of(vertex), 5 + 24, false);
        type(blob, POINT + WITH_Z);
        xy(blob, vertex.position());
        blob.putDouble(vertex.altitudeAmslM());
        return bytes(blob);
    }

    static byte[] line(List<GeoPoint> points) {
        ByteBuffer blob = blob(flat(points), 5 + 4 + 16 * points.size(), true);
        type(blob, LINE_STRING);
        blob.putInt(points.size());
        points.forEach(point -> xy(blob, point));
        return bytes(blob);
    }

    static byte[] lineZ(List<Vertex> vertices) {
        ByteBuffer blob = blob(vertices, 5 + 4 + 24 * vertices.size(), true);
        type(blob, LINE_STRING + WITH_Z);
        blob.putInt(vertices.size());
        for (Vertex vertex : vertices) {
            xy(blob, vertex.position());
            blob.putDouble(vertex.altitudeAmslM());
        }
        return bytes(blob);
    }

    /** A ring without its repeated last point. */
    static byte[] polygon(List<GeoPoint> ring) {
        ByteBuffer blob = blob(flat(ring), 5 + 4 + 4 + 16 * (ring.size() + 1), true);
        type(blob, POLYGON);
        blob.putInt(1);
        blob.putInt(ring.size() + 1);
        ring.forEach(point -> xy(blob, point));
        xy(blob, ring.get(0));
        return bytes(blob);
    }

    private static ByteBuffer blob(List<Vertex> vertices, int bodyBytes, boolean envelope) {
        ByteBuffer blob =
                ByteBuffer.allocate(8 + (envelope ? 32 : 0) + bodyBytes)
                        .order(ByteOrder.LITTLE_ENDIAN);
        blob.put("GP".getBytes(StandardCharsets.US_ASCII));
        blob.put((byte) 0);
        blob.put((byte) (LITTLE_ENDIAN | (envelope ? ENVELOPE_XY : 0)));
        blob.putInt(WGS84);
        if (envelope) {
            Envelope box = Envelope.of(vertices.stream().map(Vertex::position).toList());
            blob.putDouble(box.westLonDeg()).putDouble(box.eastLonDeg());
            blob.putDouble(box.southLatDeg()).putDouble(box.northLatDeg());
        }
        return blob;
    }

    private static byte[] bytes(ByteBuffer blob) {
        byte[] bytes = new byte[blob.position()];
        blob.flip().get(bytes);
        return bytes;
    }

    private static void type(ByteBuffer blob, int code) {
        blob.put(LITTLE_ENDIAN).putInt(code);
    }

    private static void xy(ByteBuffer blob, GeoPoint point) {
        blob.putDouble(point.lonDeg()).putDouble(point.latDeg());
    }

    private static List<Vertex> flat(List<GeoPoint> points) {
        return points.stream().map(point -> new Vertex(point, 0)).toList();
    }

    /** Smallest box around points, degrees. */
    record Envelope(double westLonDeg, double southLatDeg, double eastLonDeg, double northLatDeg) {
        static Envelope of(List<GeoPoint> points) {
            return new Envelope(
                    points.stream().mapToDouble(GeoPoint::lonDeg).min().orElseThrow(),
                    points.stream().mapToDouble(GeoPoint::latDeg).min().orElseThrow(),
                    points.stream().mapToDouble(GeoPoint::lonDeg).max().orElseThrow(),
                    points.stream().mapToDouble(GeoPoint::latDeg).max().orElseThrow());
        }
    }
}
