package underhook.adapter.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.adapter.crs.Proj4jReferenceSystems;
import underhook.adapter.job.JobFolderReader;
import underhook.adapter.terrain.RasterFiles;
import underhook.app.port.JobReading;
import underhook.app.port.ReadJob;
import underhook.core.geo.PlanePoint;
import underhook.core.job.LoadId;
import underhook.core.job.MassStatus;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;

/** The demo day through the reader of every job. Expected values: the day's own tables (invented). */
@Tag("slow")
class DemoJobIT {
    @TempDir Path folder;

    @Test
    void reads_without_a_fault_as_the_day_means_it() throws Exception {
        new DemoDay().write(folder);
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
        var job = read.job();
        assertThat(job.loads()).hasSize(45);
        assertThat(job.places()).hasSize(20);
        assertThat(job.wires()).hasSize(2);
        assertThat(job.zones()).hasSize(5);
        assertThat(job.features()).hasSize(14);
        assertThat(job.releaseAreas()).hasSize(5);
        assertThat(job.confirmations())
                .extracting(one -> one.subject() + " " + one.on())
                .contains("LL1 2026-09-08", "LV1 2026-09-07");
        assertThat(job.rules().kinds()).hasSize(9);
        assertThat(job.crews()).hasSize(8);
        assertThat(job.walks()).hasSize(18);
        assertThat(job.weather().hours()).hasSize(11);
        WeatherHour last = job.weather().hours().get(10);
        assertThat(last.from()).isEqualTo("2026-09-08T17:00:00Z");

        var guessed = job.getLoad(new LoadId("L36"));
        assertThat(guessed.massStatus()).isEqualTo(MassStatus.ESTIMATED);
        assertThat(guessed.massTyped()).isEqualTo("ca. 96 kg");
        assertThat(guessed.massKg()).hasValue(96);
        assertThat(job.getLoad(new LoadId("L33")).massStatus()).isEqualTo(MassStatus.MISSING);
        assertThat(job.getLoad(new LoadId("L20")).after())
                .extracting(after -> after.load() + "+" + after.waitS())
                .containsExactlyInAnyOrder("L06+0.0", "L32+1800.0");
        assertThat(job.getLoad(new LoadId("L43")).dragAreaM2()).hasValue(3.5);

        // The ground at S06 as listed to 0.1 m, plus what 5 m cells make of a slope of 30°.
        PlanePoint knoll =
                read.ground().frame().toPlane(job.getPlace(new PlaceId("S06")).position());
        assertThat(read.ground().terrain().heightM(knoll.eastM(), knoll.northM()))
                .isCloseTo(489.3, within(0.3));
        assertThat(read.ground().canopySpreadM()).isEqualTo(2);
        assertThat(read.ground().canopy().orElseThrow().heightM(knoll.eastM(), knoll.northM()))
                .isZero();
        assertThat(job.readingFindings()).isEmpty();
    }
}
