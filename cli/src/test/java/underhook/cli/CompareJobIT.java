package underhook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;

/** The demo's first two bags in every way that its job offers. */
@Tag("slow")
class CompareJobIT {
    @TempDir private Path temp;
    private Path job;

    @BeforeEach
    void writeTwoBags() throws Exception {
        job = temp.resolve("job");
        new Underhook(Settings.from(Map.of("UNDERHOOK_HOME", temp + "/data"), temp)).writeDemo(job);
        change(
                "loads.csv",
                text -> text.lines().limit(3).collect(Collectors.joining("\n", "", "\n")));
    }

    private void change(String name, UnaryOperator<String> change) throws IOException {
        Path file = job.resolve(name);
        Files.writeString(file, change.apply(Files.readString(file, UTF_8)), UTF_8);
    }

    private Said said(String... more) {
        String[] words = new String[more.length + 2];
        words[0] = "compare";
        words[1] = job.toString();
        System.arraycopy(more, 0, words, 2, more.length);
        return Said.of(temp.resolve("home"), words);
    }

    private static JsonNode day(Said said, String words) {
        JsonNode days = JsonMapper.shared().readTree(said.out()).get("days");
        return StreamSupport.stream(days.spliterator(), false)
                .filter(day -> day.get("words").asString().equals(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError(words + " in " + said.out()));
    }

    /**
     * What is expected stands in the invented day's own table: A lies south of the road and every rotation crosses
     * it, A2 north of it and nearer to S01 and S02 by the places' coordinates (about 280 and 687 m against 269 and
     * 193 m), B some 3 km away.
     */
    @Test
    void ranks_laydowns_by_minutes_and_by_ground_as_if_the_owner_had_agreed() {
        Said said = said("--laydowns", "--json");

        assertThat(said.exit()).as(said.out() + said.err()).isZero();
        JsonNode stated = day(said, "as the files state it");
        JsonNode meadow = day(said, "all that lies at A lies at A2");
        JsonNode quarry = day(said, "all that lies at A lies at B");
        assertThat(meadow.get("asIf").toString())
                .contains("the owner of A2 agrees to its use", "loader2 stands at A2");
        assertThat(stated.get("crossings").get("RV9").asInt()).isEqualTo(2);
        assertThat(meadow.get("crossings").has("RV9")).isFalse();
        assertThat(meadow.get("flightMinutes").asDouble())
                .isLessThan(quarry.get("flightMinutes").asDouble());
        assertThat(stated.get("flightMinutes").asDouble())
                .isLessThan(quarry.get("flightMinutes").asDouble());
        assertThat(quarry.get("rankByMinutes").asInt()).isEqualTo(3);
        assertThat(meadow.get("guardedSeconds").asDouble())
                .isLessThan(stated.get("guardedSeconds").asDouble());
        // Closed ground, which is never open, weighs before ground that a guard can open.
        double meadowS = meadow.get("closedSeconds").asDouble();
        double statedS = stated.get("closedSeconds").asDouble();
        assertThat(meadow.get("rankByGround").asInt() < stated.get("rankByGround").asInt())
                .isEqualTo(meadowS <= statedS);
    }

    /** The line of 15 m is shorter than the 24.2 and 25.8 m that the day's text works out for S04 and S03. */
    @Test
    void sets_one_line_alone_and_another_machine_beside_the_job_as_stated() throws IOException {
        change("loads.csv", text -> text.replace(";S01;", ";S03;").replace(";S02;", ";S04;"));
        Files.writeString(
                job.resolve("weak.yaml"),
                Files.readString(job.resolve("machine.yaml"))
                        .replace("name: Demo machine D-1 (invented)", "name: weak one")
                        .replace("hook-limit-kg: 750", "hook-limit-kg: 100"));
        // Unstated, the variation is a caution that stands before what stops the loads.
        change(
                "job.yaml",
                text ->
                        text.replaceAll("(?m)^magnetic-variation-deg:.*\\n", "")
                                + "other-machines: [weak.yaml]\n");

        Said said = said("--lines", "--machines", "--json");

        assertThat(said.exit()).as(said.out() + said.err()).isZero();
        assertThat(day(said, "as the files state it").get("leftOut")).isEmpty();
        assertThat(day(said, "line 40 m alone").get("leftOut")).isEmpty();
        assertThat(day(said, "line 15 m alone").get("why").asString()).contains("No plan");
        assertThat(day(said, "flown by weak one").get("why").asString())
                .startsWith("No plan is possible. L0");
    }

    @Test
    void refuses_another_machine_that_cannot_be_read() throws IOException {
        Files.writeString(job.resolve("weak.yaml"), "version: 1\nname: nothing else\n");
        change("job.yaml", text -> text + "other-machines: [weak.yaml]\n");

        Said said = said();

        assertThat(said.exit()).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(said.out()).contains("weak.yaml");
    }

    /** Nobody may receive at S01: both crews serve other sites only. */
    @Test
    void leaves_out_a_load_where_no_crew_can_come() throws IOException {
        change(
                "crews.yaml",
                text -> text.replace(", S01, S02]", "]").replace(", S02, S01]", ", S02]"));

        Said said =
                Said.of(
                        temp.resolve("home"),
                        "plan",
                        job.toString(),
                        "--out",
                        temp.resolve("out").toString());

        assertThat(said.exit()).as(said.out() + said.err()).isZero();
        assertThat(said.out()).contains("left out: L01 (NO_CREW)");
    }
}
