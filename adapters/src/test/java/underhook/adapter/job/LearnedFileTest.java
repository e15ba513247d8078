package underhook.adapter.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.port.JobReading;
import underhook.core.finding.FindingCode;
import underhook.core.job.Job;

/** Expected figures are worked by hand. */
class LearnedFileTest {
    private static final String HEAD =
            "quantity,group,samples,flown_over_planned,believed,factor,spread\n";

    @TempDir Path folder;

    private JobReading read(String rows) {
        return new SampleJob()
                .with("job.yaml", "map: map.geojson\n", "map: map.geojson\nlearned: learned.csv\n")
                .file("learned.csv", HEAD + rows)
                .readIn(folder);
    }

    private Job good(String rows) {
        JobReading reading = read(rows);
        assertThat(reading.faults()).isEmpty();
        return reading.job().orElseThrow().job();
    }

    @Test
    void plans_times_and_masses_with_what_was_learned() {
        Job plain = good("lift-time,bag / site / 25 m,9,1.5,0.5,1.5,0.1\n");
        assertThat(plain.readingFindings())
                .noneMatch(one -> one.code() == FindingCode.LEARNED_FIGURE);

        Job job =
                good(
                        """
                        hover-time,bag / site / 25 m,12,1.3,0.5,1.2,0.1
                        hover-time,bag / landing / 40 m,3,1.1,0.2,1.1,0.1
                        mass,bag,12,1.06,0.5,1.05,0.02
                        """);

        double before = plain.getKind("bag").setDownS();
        assertThat(job.getKind("bag").setDownS()).isEqualTo(Math.ceil(before * 1.2));
        assertThat(job.getKind("bag").heavierFactor()).isCloseTo(1.05, within(1e-12));
        assertThat(job.readingFindings())
                .filteredOn(one -> one.code() == FindingCode.LEARNED_FIGURE)
                .hasSize(2)
                .first()
                .satisfies(one -> assertThat(one.message()).contains("12 flights"));
    }

    @Test
    void never_plans_with_less_mass_or_fuel_than_stated() {
        Job plain = good("lift-time,bag / site / 25 m,9,1.5,0.5,1.5,0.1\n");
        Job job =
                good(
                        """
                        mass,bag,12,0.9,0.5,0.95,0.02
                        fuel,%1$s,12,0.9,0.5,0.95,0.02
                        """
                                .formatted(plain.machine().name()));
        Job thirsty = good("fuel,%s,12,1.2,0.5,1.1,0.02\n".formatted(plain.machine().name()));

        assertThat(job.getKind("bag").heavierFactor()).isEqualTo(1);
        assertThat(job.machine()).isEqualTo(plain.machine());
        assertThat(thirsty.machine().burnKgPerS())
                .isCloseTo(plain.machine().burnKgPerS() * 1.1, within(1e-12));
        assertThat(thirsty.machine().hoverBurnKgPerS())
                .isCloseTo(plain.machine().hoverBurnKgPerS() * 1.1, within(1e-12));
    }

    @Test
    void tells_every_fault() {
        assertThat(
                        read("hover-time,bag / site / 25 m,0,1.3,0.5,9,0.1\nhuver,bag,1,1,0,1,0\n")
                                .faults())
                .extracting(fault -> fault.line() + " " + fault.field())
                .containsExactly("2 samples", "2 factor", "3 quantity");
    }
}
