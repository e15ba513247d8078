package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.fixture.SmallDay;
import underhook.adapter.geopackage.GeoPackageWriter;
import underhook.adapter.mapfile.GeoJsonWriter;
import underhook.adapter.mapfile.GpxWriter;
import underhook.adapter.mapfile.KmlWriter;
import underhook.adapter.paper.CardsPdf;
import underhook.adapter.planfile.PlanJsonWriter;
import underhook.adapter.table.FindingsCsvWriter;
import underhook.adapter.table.LoadsCsvWriter;
import underhook.app.port.JobReading;
import underhook.app.port.OutputWriter;
import underhook.app.port.OutputWriter.Output;
import underhook.core.geo.GeoPoint;
import underhook.core.job.CrossingRule;
import underhook.core.job.InputFile;
import underhook.core.job.MapFeature;

/** What became of map data in the files that a plan is written to. */
class WrittenMapDataTest {
    private static final List<OutputWriter> WRITERS =
            List.of(
                    new PlanJsonWriter(),
                    new GeoJsonWriter(),
                    new GpxWriter(),
                    new KmlWriter(),
                    new GeoPackageWriter(),
                    new CardsPdf(),
                    new LoadsCsvWriter(),
                    new FindingsCsvWriter());

    @TempDir Path folder;

    private String write(OutputWriter writer, Output output) throws IOException {
        Path file = folder.resolve(writer.fileName());
        writer.write(output, file);
        if (!writer.fileName().endsWith(".pdf")) {
            return Files.readString(file, StandardCharsets.ISO_8859_1);
        }
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    /** From memory: ODbL 1.0 section 4.2 wants the notice and the address of the licence. */
    @Test
    void says_in_every_file_that_it_is_under_the_licence_of_the_map() throws IOException {
        JobReading reading =
                new SampleJob()
                        .with("job.yaml", "map: map.geojson", "map: region.map")
                        .file("region.map", "")
                        .readIn(folder, List.of(), List.of(new FakeMap()));
        List<InputFile> inputs = reading.job().orElseThrow().job().inputs();
        Output output = SmallDay.outputWith(List.of(), inputs);

        for (OutputWriter writer : WRITERS) {
            assertThat(write(writer, output))
                    .as(writer.fileName())
                    .contains("Open Database License")
                    .contains("https://opendatacommons.org/licenses/odbl/1-0/")
                    .contains("Somebody's contributors");
        }
    }

    private static MapFeature road(String id, double southDeg, double westDeg) {
        return new MapFeature(
                id,
                MapFeature.Kind.ROAD,
                MapFeature.Shape.LINE,
                List.of(
                        new GeoPoint(southDeg, westDeg),
                        new GeoPoint(southDeg + 0.0002, westDeg + 0.0001),
                        new GeoPoint(southDeg + 0.0004, westDeg)),
                0,
                CrossingRule.GUARDED,
                OptionalDouble.empty(),
                false,
                "region.map");
    }

    /** 200 by 100 roads over some 13 km, of which the plan needs a strip of 2 km by 3.4 km. */
    private static List<MapFeature> region() {
        List<MapFeature> roads = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            for (int k = 0; k < 100; k++) {
                roads.add(road("w" + i + "-" + k, 46.145 + i * 0.0006, 11.01 + k * 0.0018));
            }
        }
        return roads;
    }

    @Test
    void writes_of_a_whole_region_what_lies_near_the_plan_and_counts_it() throws IOException {
        Output output = SmallDay.outputWith(region(), List.of());

        long startNanos = System.nanoTime();
        for (OutputWriter writer : WRITERS) {
            String text = write(writer, output);
            long bytes = Files.size(folder.resolve(writer.fileName()));
            assertThat(bytes).as(writer.fileName()).isLessThan(1_500_000);
            if (List.of("plan.geojson", "plan.kml", "plan.gpkg", "cards.pdf")
                    .contains(writer.fileName())) {
                assertThat(text)
                        .as(writer.fileName())
                        .contains("Of the job's 20001 map features and wires this file holds the ");
            }
            // On a crowded page only what a leg crosses is named.
            if (List.of("plan.geojson", "plan.kml", "plan.gpkg").contains(writer.fileName())) {
                assertThat(text).as(writer.fileName()).contains("w95-50");
            }
        }
        assertThat((System.nanoTime() - startNanos) / 1e9).isLessThan(60);
    }
}
