package underhook.adapter.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The rasters as GDAL (package gdal-bin) reads them, which shares no code with us. */
@Tag("slow")
class DemoRasterIT {
    @TempDir static Path folder;

    @BeforeAll
    static void write() throws IOException {
        new DemoDay().write(folder);
    }

    @Test
    void opens_north_up_with_the_local_grid_and_nodata() throws Exception {
        for (String name : List.of("terrain.tif", "canopy.tif")) {
            JsonNode info = new JsonMapper().readTree(run("gdalinfo", "-json", path(name)));

            assertThat(info.required("size").toString()).isEqualTo("[1640,760]");
            assertThat(info.required("geoTransform").toString().replace(".0", ""))
                    .isEqualTo("[-1000,5,0,2900,0,-5]");
            assertThat(info.at("/bands/0/type").asString()).isEqualTo("Float32");
            assertThat(info.at("/bands/0/noDataValue").asDouble()).isEqualTo(-9999);
            assertThat(info.at("/metadata//AREA_OR_POINT").asString()).isEqualTo("Area");
        }
    }

    @Test
    void states_the_same_system_in_the_rasters_and_in_the_text_file() throws Exception {
        String fromText = run("gdalsrsinfo", "-o", "proj4", path("local.wkt"));

        assertThat(fromText.trim())
                .isEqualTo(
                        "+proj=tmerc +lat_0=46.8 +lon_0=-12 +k=1 +x_0=0 +y_0=0 +datum=WGS84"
                                + " +units=m +no_defs");
        assertThat(run("gdalsrsinfo", "-o", "proj4", path("terrain.tif"))).isEqualTo(fromText);
        assertThat(run("gdalsrsinfo", "-o", "proj4", path("canopy.tif"))).isEqualTo(fromText);
    }

    @Test
    void holds_the_heights_where_the_day_has_them() throws Exception {
        // The cell's centre lies up to 2.5 m from the site each way, on slopes up to 30°.
        assertThat(value("terrain.tif", 1240, 420)).isCloseTo(216.2, within(0.9));
        assertThat(value("terrain.tif", 6080, 1930)).isCloseTo(789.6, within(0.1));
        assertThat(value("terrain.tif", 3740, 760)).isEqualTo(362);
        assertThat(value("canopy.tif", 3740, 760)).isZero();
        assertThat(value("canopy.tif", 2540, 1095)).as("the knoll's clearing").isZero();
        assertThat(value("canopy.tif", 2540, 1110)).isBetween(6.0, 14.0);
    }

    private static double value(String name, double x, double y) throws Exception {
        return Double.parseDouble(
                run(
                        "gdallocationinfo",
                        "-valonly",
                        "-geoloc",
                        path(name),
                        Double.toString(x),
                        Double.toString(y)));
    }

    private static String path(String name) {
        return folder.resolve(name).toString();
    }

    private static String run(String... command) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(new ArrayList<>(List.of(command)));
        builder.redirectError(ProcessBuilder.Redirect.DISCARD);
        Process process = builder.start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(String.join(" ", command)).isZero();
        return out;
    }
}
