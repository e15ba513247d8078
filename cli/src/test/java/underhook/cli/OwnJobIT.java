package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The job that docs/own-job.md tells a newcomer to type, as it stands there. */
@Tag("slow")
class OwnJobIT {
    private static final Pattern FILE =
            Pattern.compile("(?ms)^`([a-z]+\\.(?:yaml|csv))`[^\\n]*\\n\\n```(?:yaml)?\\n(.*?)^```");
    private static final int CELLS = 100;

    @TempDir Path folder;

    @Test
    void gives_a_pilots_card_and_refuses_changes_of_what_it_does_not_have() throws IOException {
        Path job = folder.resolve("mine");
        Files.createDirectories(job);
        Matcher file = FILE.matcher(Files.readString(Path.of("../docs/own-job.md")));
        while (file.find()) {
            Files.writeString(job.resolve(file.group(1)), file.group(2), StandardCharsets.UTF_8);
        }
        Files.writeString(job.resolve("terrain.asc"), flat(), StandardCharsets.UTF_8);

        Path out = folder.resolve("out");
        Said check = Said.of(folder.resolve("home"), "check", job.toString());
        Said plan =
                Said.of(folder.resolve("home"), "plan", job.toString(), "--out", out.toString());

        assertThat(check.exit()).as(check.out()).isZero();
        assertThat(plan.exit()).as(plan.out() + plan.err()).isZero();
        assertThat(plan.out()).contains("left out: nothing");
        assertThat(out.resolve("cards.pdf")).isNotEmptyFile();
        Said strange =
                Said.of(
                        folder.resolve("home"),
                        "replan",
                        job.toString(),
                        out.resolve("plan.json").toString(),
                        "--at=2026-09-08T07:12:00-01:00",
                        "--place-closed=P9",
                        "--load-dropped=99",
                        "--stands=P8=180,120,9",
                        "--out=" + folder.resolve("anew"));
        assertThat(strange.exit()).as(strange.err()).isEqualTo(2);
        assertThat(strange.out()).contains("P9 closed", "99 taken off", "from P8");
        assertThat(folder.resolve("anew")).doesNotExist();

        Said moved =
                Said.of(
                        folder.resolve("home"),
                        "replan",
                        job.toString(),
                        out.resolve("plan.json").toString(),
                        "--at=2026-09-08T07:05:00-01:00",
                        "--place-moved=P3=90,60,30",
                        "--out=" + folder.resolve("anew"));

        // 60 m farther east of a place 1400 m east and 800 m north: 52 m farther away, by
        // Pythagoras.
        assertThat(moved.exit()).as(moved.out() + moved.err()).isZero();
        Matcher way =
                Pattern.compile("The way of 3 to P3 is ([0-9.]+) km long, ([0-9.]+) before")
                        .matcher(moved.out());
        assertThat(way.find()).as(moved.out()).isTrue();
        assertThat(Double.parseDouble(way.group(1)) - Double.parseDouble(way.group(2)))
                .isCloseTo(0.052, within(0.011));

        Path lone = job.resolve("crews.yaml");
        Files.writeString(lone, Files.readString(lone).replace(", refuel]", "]"));
        Path rules = job.resolve("rules.yaml");
        Files.writeString(
                rules, Files.readString(rules).replace("hover-exit: no", "hover-exit: yes"));
        Said unfilled =
                Said.of(
                        folder.resolve("home"),
                        "plan",
                        job.toString(),
                        "--out",
                        folder.resolve("unfilled").toString());
        // Some 32 min of flying at 2.3 kg/min are within what the tank holds.
        assertThat(unfilled.exit()).as(unfilled.out() + unfilled.err()).isZero();
        assertThat(unfilled.out()).contains("left out: nothing").contains(" 0 fuel stops");
        assertThat(folder.resolve("unfilled/findings.csv"))
                .content()
                .contains("HOVER_EXIT_UNPLANNED", "landed on ground of at most 7°, or walk");
        assertThat(out.resolve("findings.csv")).content().doesNotContain("HOVER_EXIT_UNPLANNED");
    }

    /** What the line of awk in the document prints. */
    private static String flat() {
        String row = " 100".repeat(CELLS) + "\n";
        return "ncols 100\nnrows 100\nxllcorner 496000\nyllcorner 5096000\ncellsize 100\nnodata_value -9999\n"
                + row.repeat(CELLS);
    }
}
