package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReplanCommandTest {
    @TempDir Path folder;

    @Test
    void tells_every_value_that_cannot_be_with_its_option_and_what_is_allowed() {
        Said said =
                replan(
                        "nowhere",
                        "--at=25:00",
                        "--fuel-lb=full",
                        "--crew-late=P",
                        "--crew-late=Q=soon",
                        "--crew-here=P=S1,7",
                        "--weighed=B1=heavy",
                        "--weighed=B2=180st",
                        "--weighed=B3=0lb",
                        "--weighed=B4=100",
                        "--weighed=B4=120",
                        "--wind-earlier-min=1441",
                        "--wind-seen=S1=270,20,10",
                        "--place-moved=S1=360,10,10",
                        "--place-moved=S2=90,0,10",
                        "--stands=S1=90,501,10",
                        "--place-closed= ",
                        "--load-dropped=");

        assertThat(said.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(said.err().lines().takeWhile(line -> !line.startsWith("Usage")))
                .anySatisfy(
                        line ->
                                told(
                                        line,
                                        "--at (25:00)",
                                        "such as 10:15 is allowed, or one such as 1970"))
                .anySatisfy(line -> told(line, "--fuel-lb (full)", "a number"))
                .anySatisfy(line -> told(line, "--crew-late (P)", "an id, = and a value"))
                .anySatisfy(line -> told(line, "--crew-late (Q=soon)", "such as 10:15"))
                .anySatisfy(line -> told(line, "--crew-here (P=S1,7)", "such as 10:15"))
                .anySatisfy(line -> told(line, "--weighed (B1=heavy)", "such as 180, 180kg"))
                .anySatisfy(line -> told(line, "--weighed (B2=180st)", "or 397lb"))
                .anySatisfy(line -> told(line, "--weighed (B3=0lb)", "above 0"))
                .anySatisfy(line -> told(line, "--weighed (B4=120)", "one for each id"))
                .anySatisfy(line -> told(line, "--wind-earlier-min (1441)", "-1440 to 1440"))
                .anySatisfy(line -> told(line, "--wind-seen (S1=270,20,10)", "not below its mean"))
                .anySatisfy(line -> told(line, "--place-moved (S1=360,10,10)", "below 360"))
                .anySatisfy(line -> told(line, "--place-moved (S2=90,0,10)", "at most 500"))
                .anySatisfy(line -> told(line, "--stands (S1=90,501,10)", "0 to 500"))
                .anySatisfy(line -> told(line, "--place-closed ( )", "not be blank"))
                .anySatisfy(line -> told(line, "--load-dropped ()", "not be blank"))
                .hasSize(16);
    }

    @Test
    void takes_the_fuel_in_one_unit_only() {
        Said said = replan("nowhere", "--at=10:15", "--fuel-kg=100", "--fuel-lb=220");

        assertThat(said.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(said.err()).contains("--fuel-lb (220)", "--fuel-kg says it already");
    }

    /** Clocks in Vienna went from 02:00 to 03:00 on 29 March 2026 and back on 25 October. @source IANA time zones, from memory */
    @Test
    void says_of_a_time_that_the_clock_skips_or_shows_twice_what_to_write() throws IOException {
        Path job = OwnJob.write(folder);
        Path file = job.resolve("job.yaml");
        String text = Files.readString(file).replaceAll("(?m)^zone: .*$", "zone: Europe/Vienna");

        Files.writeString(file, text.replaceAll("(?m)^date: .*$", "date: 2026-03-29"));
        Said skipped = replan(job.toString(), "--at=10:15", "--crew-late=A=02:30");
        Files.writeString(file, text.replaceAll("(?m)^date: .*$", "date: 2026-10-25"));
        Said twice = replan(job.toString(), "--at=2:30:00");

        assertThat(skipped.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(skipped.err())
                .contains("--crew-late (A=02:30): is skipped by the clock in Europe/Vienna")
                .contains("a time before 02:00 or not before 03:00");
        assertThat(twice.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(twice.err())
                .contains("--at (2:30:00): comes twice by the clock in Europe/Vienna")
                .contains("2026-10-25T02:30+02:00 or 2026-10-25T02:30+01:00");
    }

    /** A job that cannot be read tells its own faults, whatever the time is. */
    @Test
    void tells_the_faults_of_a_job_whose_day_is_not_known() throws IOException {
        Path job = OwnJob.write(folder);
        OwnJob.replace(job.resolve("job.yaml"), "date: 2026-09-08", "date: someday");

        Said said = replan(job.toString(), "--at=10:15");

        assertThat(said.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(said.out()).contains("job.yaml", "date: is no date");
    }

    private static void told(String line, String what, String allowed) {
        assertThat(line).contains(what).contains(allowed);
    }

    private Said replan(String job, String... options) {
        List<String> words = new ArrayList<>(List.of("replan", job, "plan.json"));
        words.addAll(List.of(options));
        words.add("--out=" + folder.resolve("anew"));
        return Said.of(folder.resolve("home"), words.toArray(String[]::new));
    }
}
