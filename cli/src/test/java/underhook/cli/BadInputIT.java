package underhook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/** Spoilt copies of the demo job: each is refused with its fault named, and no file is written. */
@Tag("slow")
class BadInputIT {
    private static final String GOOD_ROW = "mass-kg: [2050, 2050, 1950, 1835, 1725, 1620]";

    @TempDir private static Path demo;
    @TempDir private Path temp;

    private Path job = Path.of("");
    private Path out = Path.of("");

    @BeforeAll
    static void write_the_demo_job() throws IOException {
        new Underhook(new Settings(demo, "underhook test")).writeDemo(demo);
    }

    @BeforeEach
    void copy_the_demo_job() throws IOException {
        job = Files.createDirectory(temp.resolve("job"));
        out = temp.resolve("out");
        try (Stream<Path> files = Files.list(demo)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, job.resolve(file.getFileName()));
            }
        }
    }

    @Test
    void refuses_an_empty_folder() throws IOException {
        job = Files.createDirectory(temp.resolve("nothing"));
        assertRefused("nothing: is empty, a folder with job.yaml");
    }

    @Test
    void refuses_a_folder_that_is_not_there() {
        job = temp.resolve("nowhere");
        assertRefused("nowhere: is no folder");
    }

    @Test
    void refuses_a_terrain_file_cut_in_half() throws IOException {
        Path terrain = job.resolve("terrain.tif");
        byte[] whole = Files.readAllBytes(terrain);
        Files.write(terrain, Arrays.copyOf(whole, whole.length / 2));
        assertRefused("terrain.tif: ");
    }

    @Test
    void refuses_a_terrain_header_that_claims_two_gigabytes() throws IOException {
        // TIFF 6.0, section 8: tags 256 and 257 are the columns and rows. 25,000 by 20,000 cells of
        // 4 bytes are 2,000,000,000 bytes, which the file does not have.
        Path terrain = job.resolve("terrain.tif");
        byte[] bytes = Files.readAllBytes(terrain);
        claim(bytes, 256, 25_000);
        claim(bytes, 257, 20_000);
        Files.write(terrain, bytes);
        assertRefused("terrain.tif: ");
    }

    @Test
    void refuses_a_coordinate_that_is_no_number() throws IOException {
        spoil("places.csv", "A,laydown,River Bar,260,", "A,laydown,River Bar,NaN,");
        assertRefused("places.csv:2: x_m: ");
    }

    @Test
    void refuses_places_without_a_reference_system() throws IOException {
        spoil("job.yaml", "crs: {file: local.wkt}\n", "");
        assertThat(assertRefused("places.csv").out()).contains("reference system");
    }

    @Test
    void refuses_a_hover_chart_with_a_hole() throws IOException {
        spoil("machine.yaml", GOOD_ROW, "mass-kg: [2050, 2050, ~, 1835, 1725, 1620]");
        assertRefused("machine.yaml:" + lineOf("machine.yaml", "~, 1835") + ": ");
    }

    @Test
    void refuses_a_day_without_sun() throws IOException {
        // At 78 degrees north the sun stays down all of December: 90 - 78 = 12 degrees is less than
        // its declination of 23.4 degrees south at the solstice, far beyond refraction.
        spoil("local.wkt", "\"latitude_of_origin\",46.8", "\"latitude_of_origin\",78");
        spoil("job.yaml", "date: 2026-09-08", "date: 2026-12-21");
        String text = Files.readString(job.resolve("job.yaml"), UTF_8);
        Files.writeString(
                job.resolve("job.yaml"),
                text.substring(0, text.indexOf("\nterrain:")) + "\nterrain: flat.asc\n",
                UTF_8);
        Files.writeString(job.resolve("flat.asc"), flat(), UTF_8);
        Said said = assertRefused("job.yaml:" + lineOf("job.yaml", "date: ") + ": date: ");
        assertThat(said.out().strip().lines()).hasSize(1);
        assertThat(said.out()).contains("sun");
    }

    @Test
    void lists_the_faults_of_several_files_at_once() throws IOException {
        spoil("places.csv", "A,laydown,River Bar,260,", "A,laydown,River Bar,NaN,");
        spoil("machine.yaml", GOOD_ROW, "mass-kg: [2050, 2050, ~, 1835, 1725, 1620]");
        assertThat(assertRefused("places.csv:2: x_m: ").out()).contains("machine.yaml:");
    }

    @Test
    void refuses_an_unknown_word_and_names_the_nearest() {
        Said said = Said.of(temp, "chekc", job.toString());
        assertThat(said.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(said.err()).contains("chekc").contains("Perhaps underhook check is meant.");
    }

    /** Both words that read a job refuse it, say so in one voice and write nothing. */
    private Said assertRefused(String fault) {
        Said checked = Said.of(temp, "check", job.toString());
        assertThat(checked.exit()).as(checked.out() + checked.err()).isEqualTo(Exit.INPUT_REFUSED);
        Said planned = Said.of(temp, "plan", job.toString(), "--out", out.toString());
        assertThat(planned.exit()).as(planned.out() + planned.err()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(planned.out()).isEqualTo(checked.out());
        assertThat(planned.out().lines()).anyMatch(line -> line.startsWith(fault));
        assertThat(out).doesNotExist();
        return planned;
    }

    private void spoil(String file, String piece, String other) throws IOException {
        Path path = job.resolve(file);
        String text = Files.readString(path, UTF_8);
        assertThat(text).contains(piece);
        Files.writeString(path, text.replace(piece, other), UTF_8);
    }

    private int lineOf(String file, String piece) throws IOException {
        String text = Files.readString(job.resolve(file), UTF_8);
        return (int) text.substring(0, text.indexOf(piece) + 1).lines().count();
    }

    /** Level ground under the whole valley, 200 m AMSL. */
    private static String flat() {
        String row = "200 ".repeat(150).strip() + "\n";
        return "ncols 150\nnrows 90\nxllcorner -4000\nyllcorner -4000\ncellsize 100\nnodata_value -9999\n"
                + row.repeat(90);
    }

    /** Puts another number into a little-endian TIFF's directory. */
    private static void claim(byte[] tiff, int tag, int value) {
        ByteBuffer buffer = ByteBuffer.wrap(tiff).order(ByteOrder.LITTLE_ENDIAN);
        int directory = buffer.getInt(4);
        int entries = Short.toUnsignedInt(buffer.getShort(directory));
        for (int entry = 0; entry < entries; entry++) {
            int at = directory + 2 + 12 * entry;
            if (Short.toUnsignedInt(buffer.getShort(at)) == tag) {
                buffer.putShort(at + 2, (short) 4);
                buffer.putInt(at + 8, value);
                return;
            }
        }
        throw new IllegalArgumentException("no tag " + tag);
    }
}
