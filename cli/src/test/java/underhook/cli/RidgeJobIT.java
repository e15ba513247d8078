package underhook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import underhook.testkit.RidgeJob;

/** A day on a real mountain's relief, from the command line to the written plan and its re-check. */
@Tag("slow")
class RidgeJobIT {
    @TempDir private Path temp;

    @Test
    void plans_a_day_on_real_relief_and_the_written_plan_holds() throws IOException {
        Path job = temp.resolve("job");
        try {
            RidgeJob.write(job);
        } catch (RidgeJob.PackageMissing missing) {
            Assumptions.abort(missing.toString());
        }
        Path out = temp.resolve("out");

        Said planned = Said.of(temp, "plan", job.toString(), "--out", out.toString());

        assertThat(planned.exit()).as(planned.out() + planned.err()).isEqualTo(Exit.DONE);
        Path written = out.resolve("plan.json");
        JsonNode plan = JsonMapper.builder().build().readTree(Files.readString(written, UTF_8));
        assertThat(plan.get("verifier").get("violations")).isEmpty();
        List<String> placed = new ArrayList<>();
        for (JsonNode step : plan.get("steps")) {
            if (step.has("drops")) {
                step.get("drops").forEach(drop -> placed.add(drop.get("load").asString()));
            }
        }
        // The job has 24 loads that are all meant to fly; four may find no room in the day.
        assertThat(placed).doesNotHaveDuplicates().hasSizeGreaterThanOrEqualTo(20);
        assertThat(placed.size() + plan.get("leftOut").size()).isEqualTo(24);

        Said verified = Said.of(temp, "verify", job.toString(), written.toString());
        assertThat(verified.exit()).as(verified.out()).isEqualTo(Exit.DONE);
    }
}
