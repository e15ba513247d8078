package underhook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import underhook.app.port.Fault;
import underhook.app.port.JobReading;
import underhook.app.port.OutputWriter;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;

class PlanDayTest {
    private static final Path OUT = Path.of("out");

    @Test
    void touches_nothing_when_the_job_has_faults() throws Exception {
        Fault fault = new Fault(FindingCode.JOB_EMPTY, "job.yaml", 0, "", "empty", "", "");
        PlanDay planDay =
                new PlanDay(
                        folder -> new JobReading(Optional.empty(), List.of(fault)),
                        (job, request, progress) -> {
                            throw new AssertionError("planned a job with faults");
                        },
                        (job, plan) -> {
                            throw new AssertionError("checked a job with faults");
                        },
                        new Forbidden());

        PlanDay.Result result = planDay.plan(request(), Progress.SILENT);

        assertThat(result).isEqualTo(new PlanDay.InputRefused(List.of(fault)));
    }

    @Test
    void wants_a_ceiling_above_zero() {
        assertThatThrownBy(() -> new PlanDay.Request(OUT, OUT, 1, Duration.ZERO))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ceiling");
    }

    private static PlanDay.Request request() {
        return new PlanDay.Request(Path.of("job"), OUT, 1, Duration.ofSeconds(1));
    }

    private static final class Forbidden implements PlanDay.Publishing {
        @Override
        public List<Path> publish(OutputWriter.Output output, Path out) {
            throw new AssertionError("wrote");
        }

        @Override
        public void refuse(List<Finding> findings, Path out) {
            throw new AssertionError("wrote");
        }

        @Override
        public void withdraw(Path out) {
            assertThat(out).isEqualTo(OUT);
        }
    }
}
