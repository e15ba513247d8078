package underhook.adapter.geofile;

import static java.nio.ByteOrder.BIG_ENDIAN;
import static java.nio.ByteOrder.LITTLE_ENDIAN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteOrder;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import underhook.adapter.geofile.source.Unreadable;
import underhook.app.port.FeatureReader.Corner;
import underhook.app.port.FeatureReader.Shape;

/** Layouts from OGC 12-128r17 clause 2.1.3.1.1 and OGC 06-103r4 clause 8.2.3, written out by hand. */
class GeometryBlobTest {
    private static final byte BIG = 0;
    private static final byte LITTLE = 1;

    private static byte of(ByteOrder order) {
        return order == LITTLE_ENDIAN ? LITTLE : BIG;
    }

    private static GeometryBlob.Geometry read(byte[] blob) throws Unreadable {
        return GeometryBlob.read(blob, true);
    }

    @Test
    void both_byte_orders_and_all_dimensions() throws Exception {
        for (ByteOrder order : List.of(BIG_ENDIAN, LITTLE_ENDIAN)) {
            byte o = of(order);
            assertThat(read(SmallGeoPackage.blob(order, 0, 7, o, 1, 3.0, 4.0)).parts())
                    .containsExactly(point(3, 4, OptionalDouble.empty()));
            assertThat(read(SmallGeoPackage.blob(order, 0, 7, o, 1001, 3.0, 4.0, 5.0)).parts())
                    .containsExactly(point(3, 4, OptionalDouble.of(5)));
            assertThat(read(SmallGeoPackage.blob(order, 0, 7, o, 2001, 3.0, 4.0, 5.0)).parts())
                    .containsExactly(point(3, 4, OptionalDouble.empty()));
            assertThat(read(SmallGeoPackage.blob(order, 0, 7, o, 3001, 3.0, 4.0, 5.0, 6.0)).parts())
                    .containsExactly(point(3, 4, OptionalDouble.of(5)));
            assertThat(read(SmallGeoPackage.blob(order, 0, 7, o, 1, 3.0, 4.0)).systemId())
                    .isEqualTo(7);
        }
    }

    private static Part point(double x, double y, OptionalDouble z) {
        return new Part(Shape.POINT, List.of(new Corner(x, y, z)), false);
    }

    @Test
    void inner_geometries_have_byte_orders_of_their_own() throws Exception {
        // Header little endian, collection big endian, point in it little endian.
        byte[] outer = SmallGeoPackage.blob(BIG_ENDIAN, 0, 7, BIG, 7, 1);
        byte[] inner = SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 1, 3.0, 4.0);
        byte[] blob = new byte[outer.length + inner.length - 8];
        System.arraycopy(outer, 0, blob, 0, outer.length);
        System.arraycopy(inner, 8, blob, outer.length, inner.length - 8);

        assertThat(read(blob).parts()).containsExactly(point(3, 4, OptionalDouble.empty()));
    }

    @Test
    void every_envelope_is_stepped_over() throws Exception {
        int[] doubles = {0, 4, 6, 6, 8};
        for (int envelope = 0; envelope < doubles.length; envelope++) {
            Object[] numbers = new Object[doubles[envelope] + 4];
            java.util.Arrays.fill(numbers, 1e30);
            numbers[doubles[envelope]] = LITTLE;
            numbers[doubles[envelope] + 1] = 1;
            numbers[doubles[envelope] + 2] = 3.0;
            numbers[doubles[envelope] + 3] = 4.0;

            assertThat(read(SmallGeoPackage.blob(LITTLE_ENDIAN, envelope << 1, 7, numbers)).parts())
                    .containsExactly(point(3, 4, OptionalDouble.empty()));
        }
    }

    @Test
    void empty_geometries_have_no_parts() throws Exception {
        int empty = 1 << 4;
        assertThat(
                        read(SmallGeoPackage.blob(
                                        LITTLE_ENDIAN, empty, 7, LITTLE, 1, Double.NaN, Double.NaN))
                                .parts())
                .isEmpty();
        for (int type : List.of(2, 3, 4, 5, 6, 7, 1002, 3003)) {
            assertThat(read(SmallGeoPackage.blob(LITTLE_ENDIAN, empty, 7, LITTLE, type, 0)).parts())
                    .isEmpty();
        }
    }

    @Test
    void a_height_of_no_number_is_no_height() throws Exception {
        assertThat(
                        read(SmallGeoPackage.blob(
                                        LITTLE_ENDIAN, 0, 7, LITTLE, 1001, 3.0, 4.0, Double.NaN))
                                .parts())
                .containsExactly(point(3, 4, OptionalDouble.empty()));
    }

    @Test
    void what_cannot_be_meant_is_refused() {
        refused("ends too early", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 1, 3.0));
        refused("ends too early", new byte[0]);
        refused("ends too early", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 2, 1 << 30));
        refused("ends too early", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 4, -1));
        refused("no GeoPackage geometry", new byte[] {'X', 'P', 0, 1, 0, 0, 0, 0, 1});
        refused("unknown version", new byte[] {'G', 'P', 1, 1, 0, 0, 0, 0, 1});
        refused("unknown version", new byte[] {'G', 'P', 0, 5 << 1, 0, 0, 0, 0, 1});
        refused(
                "only an extension knows",
                SmallGeoPackage.blob(LITTLE_ENDIAN, 1 << 5, 7, LITTLE, 1, 3.0, 4.0));
        refused("curved pieces", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 8, 0));
        refused("unknown type", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 99, 0));
        refused("unknown type", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 4001, 0));
        refused("unknown byte order", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, (byte) 9, 1, 0));
        refused(
                "out of any range",
                SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 1, 3.0, Double.NaN));
        refused("is no line", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, LITTLE, 2, 1, 3.0, 4.0));
        Object[] open = {LITTLE, 3, 1, 4, 0.0, 0.0, 1.0, 0.0, 1.0, 1.0, 0.0, 1.0};
        refused("no closed ring", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, open));
        Object[] deep = new Object[3 * 40];
        for (int i = 0; i < 40; i++) {
            deep[3 * i] = LITTLE;
            deep[3 * i + 1] = 7;
            deep[3 * i + 2] = 1;
        }
        refused("deep", SmallGeoPackage.blob(LITTLE_ENDIAN, 0, 7, deep));
    }

    private static void refused(String why, byte[] blob) {
        assertThatThrownBy(() -> read(blob))
                .isInstanceOf(Unreadable.class)
                .hasMessageContaining(why);
    }
}
