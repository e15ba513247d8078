package underhook.adapter.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.adapter.job.JobFolderReader;
import underhook.adapter.terrain.RasterFiles;
import underhook.app.port.JobReading;
import underhook.app.port.ReadJob;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Place;
import underhook.testkit.RidgeJob;

/** A job on real relief through the reader of every job. */
@Tag("slow")
class RidgeJobIT {
    @TempDir Path folder;

    @Test
    void reads_without_a_fault_on_relief_that_gdal_wrote() throws Exception {
        try {
            RidgeJob.write(folder);
        } catch (RidgeJob.PackageMissing missing) {
            Assumptions.abort(missing.toString());
        }
        Proj4jReferenceSystems systems = new Proj4jReferenceSystems();

        JobReading reading =
                new JobFolderReader(
                                systems,
                                new JobFolderReader.Readers(
                                        new RasterFiles(systems), List.of(), List.of()),
                                (where, date, zone) -> true)
                        .read(folder);

        assertThat(reading.faults()).isEmpty();
        ReadJob read = reading.job().orElseThrow();
        assertThat(read.job().loads()).hasSize(24);
        // Whole metres of the archive's cells, read with NumPy: laydown, landings, T1 to T8.
        assertThat(read.job().places().stream().map(place -> groundM(read, place)))
                .isEqualTo(
                        List.of(311L, 435L, 981L, 460L, 559L, 693L, 733L, 813L, 837L, 914L, 956L));
        // Cells of 92 m; nothing but heights was published with them.
        assertThat(read.job().readingFindings())
                .extracting(one -> one.code() + " " + one.subject())
                .containsExactly(
                        "TERRAIN_COARSE terrain", "FILE_ABSENT canopy", "FILE_ABSENT wires");
    }

    private static long groundM(ReadJob read, Place place) {
        PlanePoint point = read.ground().frame().toPlane(place.position());
        return Math.round(read.ground().terrain().heightM(point.eastM(), point.northM()));
    }
}
