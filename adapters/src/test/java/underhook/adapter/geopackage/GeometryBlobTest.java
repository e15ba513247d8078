package underhook.adapter.geopackage;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import underhook.core.geo.GeoPoint;

class GeometryBlobTest {
    /** By hand from the tables of the standard; 1.0 is 3ff0…, 2.0 is 4000…, 4.0 is 4010…. */
    @Test
    void a_point_with_height_is_header_then_iso_type_1001() {
        byte[] blob = GeometryBlob.pointZ(new GeometryBlob.Vertex(new GeoPoint(2, 1), 4));

        assertThat(HexFormat.of().formatHex(blob))
                .isEqualTo(
                        "47500001" // GP, version 0, little endian without envelope
                                + "e6100000" // 4326
                                + "01"
                                + "e9030000" // little endian, 1001
                                + "000000000000f03f" // longitude 1
                                + "0000000000000040" // latitude 2
                                + "0000000000001040"); // height 4
    }

    @Test
    void a_line_carries_its_envelope_west_east_south_north() {
        byte[] blob = GeometryBlob.line(List.of(new GeoPoint(2, 4), new GeoPoint(1, 2)));

        assertThat(HexFormat.of().formatHex(blob))
                .isEqualTo(
                        "47500003e6100000"
                                + "0000000000000040" // west 2
                                + "0000000000001040" // east 4
                                + "000000000000f03f" // south 1
                                + "0000000000000040" // north 2
                                + "01"
                                + "02000000"
                                + "02000000"
                                + "0000000000001040"
                                + "0000000000000040"
                                + "0000000000000040"
                                + "000000000000f03f");
    }
}
