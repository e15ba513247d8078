package underhook.adapter.terrain;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.app.port.RasterReader.Reading;
import underhook.app.port.RasterReader.Request;
import underhook.app.port.ReferenceSystem;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;
import underhook.core.geo.HeightField;
import underhook.core.geo.LocalFrame;
import underhook.core.geo.PlanePoint;

class RasterFilesTest {
    private final Proj4jReferenceSystems systems = new Proj4jReferenceSystems();
    private final ReferenceSystem utm = systems.find("EPSG:25832").getValue();
    private final GeoPoint middle = utm.toGeo(500050, 5200050);
    private final LocalFrame frame = LocalFrame.of(middle);

    @TempDir Path folder;

    private Reading read(String name, byte[] content, Optional<ReferenceSystem> system)
            throws IOException {
        Path file = folder.resolve(name);
        Files.write(file, content);
        return new RasterFiles(systems).read(new Request(file, name, system, "", frame, 40));
    }

    private static byte[] grid(String last) {
        StringBuilder text =
                new StringBuilder(
                        "ncols 10\nnrows 10\nxllcorner 500000\nyllcorner 5200000\ncellsize 10\nNODATA_value -9999\n");
        for (int row = 0; row < 10; row++) {
            for (int column = 0; column < 10; column++) {
                boolean end = row == 9 && column == 9;
                text.append(end ? last : Integer.toString(1000 + 10 * column - row)).append(' ');
            }
            text.append('\n');
        }
        return text.toString().getBytes(US_ASCII);
    }

    @Test
    void lays_an_ascii_grid_over_the_plane() throws IOException {
        HeightField field = read("a.asc", grid("7"), Optional.of(utm)).field().orElseThrow();

        // The middle is the corner of the cells in columns 4, 5 and rows 4, 5: 1045 - 4.5.
        // Tolerance: 5 mm of mapping on a slope of 1.
        assertThat(field.heightM(0, 0)).isCloseTo(1040.5, within(0.006));
        // Scale 0.9996 on the central meridian: 10 m of grid are 10.004 m of ground.
        assertThat(field.heightM(10.004, 0)).isCloseTo(1050.5, within(0.006));
        assertThat(field.cellSizeM()).isCloseTo(10.004, within(0.001));
        // Disc of 12 m: columns up to the one that begins at +10 m, rows down from the one at +10
        // m.
        assertThat(field.highestWithinM(new PlanePoint(0, 0), 12)).isEqualTo(1056);
        assertThat(field.covers(60, 0)).isFalse();
    }

    /** Editors of some systems save plain text with a mark before it; docs/formats.md allows it of all text. */
    @Test
    void reads_an_ascii_grid_behind_a_byte_order_mark() throws IOException {
        byte[] marked =
                ("\u00EF\u00BB\u00BF" + new String(grid("7"), US_ASCII)).getBytes(ISO_8859_1);

        HeightField field = read("m.asc", marked, Optional.of(utm)).field().orElseThrow();

        assertThat(field.heightM(0, 0)).isCloseTo(1040.5, within(0.006));
    }

    @Test
    void of_a_disc_over_its_edge_the_known_cells_count() throws IOException {
        Path file = folder.resolve("edge.asc");
        Files.write(file, grid("7"));
        HeightField field =
                new RasterFiles(systems)
                        .read(new Request(file, "edge.asc", Optional.of(utm), "", frame, 400))
                        .field()
                        .orElseThrow();

        // East of the middle the raster ends after 50.02 m; a disc over its edge has the cells of
        // the two last columns
        // that it touches, from row 3 (up to 20.01 m) on: 1090 - 3. That of 7 in the corner is
        // nowhere near.
        assertThat(field.findHighestWithinM(new PlanePoint(48, 0), 12)).isEmpty();
        assertThat(field.findHighestKnownWithinM(new PlanePoint(48, 0), 12)).hasValue(1087);
        assertThat(field.findHighestKnownWithinM(new PlanePoint(58, -49), 9)).hasValue(7);
        assertThat(field.findHighestKnownWithinM(new PlanePoint(70, 0), 12)).isEmpty();
        assertThat(field.findHighestKnownWithinM(new PlanePoint(-70, 0), 12)).isEmpty();
    }

    @Test
    void says_what_is_wrong_with_a_file() throws IOException {
        assertFault(
                read("b.asc", grid("7"), Optional.empty()), FindingCode.REFERENCE_SYSTEM_MISSING);
        assertFault(read("c.asc", grid(""), Optional.of(utm)), FindingCode.RASTER_UNREADABLE);
        assertFault(
                read("d.tif", new byte[] {'I', 'I', 42, 0}, Optional.of(utm)),
                FindingCode.RASTER_UNREADABLE);
        assertFault(read("e.tif", new byte[0], Optional.of(utm)), FindingCode.RASTER_UNREADABLE);
        assertFault(
                read("N46E008.hgt", new byte[99], Optional.empty()), FindingCode.RASTER_UNREADABLE);
        assertFault(read("f.zip", new byte[99], Optional.empty()), FindingCode.RASTER_UNREADABLE);
        assertFault(read("g.xyz", new byte[99], Optional.empty()), FindingCode.RASTER_UNREADABLE);
    }

    /** A column too many or too few in the header sets every row beside its place. */
    @Test
    void refuses_an_ascii_grid_of_another_size_than_its_header_says() throws IOException {
        for (String columns : new String[] {"9", "11", "10.5"}) {
            byte[] skewed =
                    new String(grid("7"), US_ASCII)
                            .replace("ncols 10", "ncols " + columns)
                            .getBytes(US_ASCII);

            assertFault(read("h.asc", skewed, Optional.of(utm)), FindingCode.RASTER_UNREADABLE);
        }
    }

    /** The job lies in the first rows; what is wrong below them counts too. */
    @Test
    void reads_an_ascii_grid_to_its_end() throws IOException {
        String tall =
                new String(grid("7"), US_ASCII)
                        .replace("nrows 10", "nrows 1000")
                        .replace("yllcorner 5200000", "yllcorner 5190100");
        String rest = "1000 ".repeat(9900);

        assertThat(
                        read("i.asc", (tall + rest).getBytes(US_ASCII), Optional.of(utm))
                                .field()
                                .orElseThrow()
                                .heightM(0, 0))
                .isCloseTo(1040.5, within(0.006));
        assertFault(
                read("j.asc", (tall + rest + "1").getBytes(US_ASCII), Optional.of(utm)),
                FindingCode.RASTER_UNREADABLE);
        assertFault(
                read("k.asc", tall.getBytes(US_ASCII), Optional.of(utm)),
                FindingCode.RASTER_UNREADABLE);
    }

    private static void assertFault(Reading reading, FindingCode code) {
        assertThat(reading.field()).isEmpty();
        assertThat(reading.faults()).hasSize(1);
        assertThat(reading.faults().get(0).code()).isEqualTo(code);
    }
}
