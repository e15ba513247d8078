package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.JobReading;
import underhook.core.job.Job;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.MassStatus;

class JobFolderReaderTest {
    @TempDir Path folder;

    private Job good(SampleJob sample) {
        JobReading reading = sample.readIn(folder);
        assertThat(reading.faults()).isEmpty();
        return reading.job().orElseThrow().job();
    }

    @Test
    void reads_a_folder_without_fault() {
        Job job = good(new SampleJob());

        assertThat(job.places()).hasSize(4);
        assertThat(job.loads()).hasSize(4);
        assertThat(job.wires()).hasSize(1);
        assertThat(job.zones()).hasSize(1);
        assertThat(job.features()).hasSize(1);
        assertThat(job.releaseAreas()).hasSize(1);
        assertThat(job.inputs()).hasSize(11);
        assertThat(job.readingFindings()).isEmpty();
        assertThat(job.rules().costs().peopleCents()).isEqualTo(1055);
        assertThat(job.weather().hours().get(0).from()).isEqualTo("2026-09-08T08:00:00Z");
    }

    @Test
    void keeps_a_mass_as_typed_and_converts_it_once() {
        Job job = good(new SampleJob());

        Load pounds = job.getLoad(new LoadId("L02"));
        assertThat(pounds.massTyped()).isEqualTo("440 lb");
        // 440 x 0.45359237 by hand; exact to the printed digits.
        assertThat(pounds.massKg().getAsDouble()).isCloseTo(199.5806428, within(1e-9));
        Load about = job.getLoad(new LoadId("L03"));
        assertThat(about.massStatus()).isEqualTo(MassStatus.ESTIMATED);
        assertThat(about.massTyped()).isEqualTo("ca. 200 kg");
        assertThat(job.getLoad(new LoadId("L04")).massStatus()).isEqualTo(MassStatus.MISSING);
    }
}
