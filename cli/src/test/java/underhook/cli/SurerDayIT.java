package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import underhook.app.PlanDay;
import underhook.app.Progress;
import underhook.app.SurerDay;
import underhook.app.port.OutputWriter;
import underhook.app.port.ReadJob;
import underhook.assembly.Settings;
import underhook.assembly.Underhook;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadId;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.planner.odds.DayOdds;

/** The newcomer's job with its crates last in a wind that closes them right behind. */
@Tag("slow")
class SurerDayIT {
    private static final double WISHED_FRACTION = 0.7;

    @TempDir Path folder;

    private Underhook underhook() {
        return new Underhook(new Settings(folder.resolve("home"), "underhook test"));
    }

    private ReadJob read(Path job) {
        return underhook().jobReader().read(job).job().orElseThrow();
    }

    /** As the program plans it. */
    private Plan planned(Path job, String... options) throws IOException {
        Path out = folder.resolve("out");
        List<String> words = new ArrayList<>(List.of("plan", job.toString(), "--effort=1"));
        words.add("--out=" + out);
        words.addAll(List.of(options));
        Said said = Said.of(folder.resolve("home"), words.toArray(String[]::new));
        assertThat(said.exit()).as(said.out() + said.err()).isZero();
        return underhook().planReader().read(out.resolve("plan.json")).getValue();
    }

    private static Instant released(Plan plan, String load) {
        return plan.steps().stream()
                .flatMap(step -> step.rotation().stream())
                .flatMap(rotation -> rotation.drops().stream())
                .filter(drop -> drop.load().equals(new LoadId(load)))
                .findFirst()
                .orElseThrow()
                .releasedAt();
    }

    private static List<LoadId> flown(Plan plan) {
        return plan.steps().stream()
                .map(Step::rotation)
                .flatMap(Optional::stream)
                .flatMap(rotation -> rotation.loads().stream())
                .sorted()
                .toList();
    }

    /** Crates wait for all bags; then the wind is over their limit a minute behind the last of them at most. */
    private Path cratesLast() throws IOException {
        Path job = OwnJob.write(folder);
        Path loads = job.resolve("loads.csv");
        OwnJob.replace(loads, "height_m\n", "height_m;after\n");
        for (String bag : List.of("1", "2", "3", "6")) {
            String row =
                    Files.readString(loads)
                            .lines()
                            .filter(one -> one.startsWith(bag + ";"))
                            .findFirst()
                            .orElseThrow();
            OwnJob.replace(loads, row + "\n", row + ";\n");
        }
        OwnJob.replace(loads, "0,8;0,8\n", "0,8;0,8;\"1;2;3;6\"\n");
        Plan free = planned(job);
        Instant last =
                released(free, "4").isAfter(released(free, "5"))
                        ? released(free, "4")
                        : released(free, "5");
        OwnJob.replace(
                job.resolve("rules.yaml"),
                "ready-after-min: 0, wind-mean-kt: 25, wind-gust-kt: 32",
                "ready-after-min: 0, wind-mean-kt: 25, wind-gust-kt: 10");
        // A row counts with the worse of its two ends.
        OwnJob.replace(
                job.resolve("weather.csv"),
                "08:00;",
                clock(last, 1)
                        + ";1018;12;240;6;9\n"
                        + clock(last, 2)
                        + ";1018;12;240;8;12\n08:00;");
        return job;
    }

    private static String clock(Instant at, int minutesLater) {
        return at.plus(minutesLater, ChronoUnit.MINUTES)
                .atOffset(ZoneOffset.ofHours(-1))
                .toString()
                .substring(11, 16);
    }

    /** With the crates first twenty minutes are left for a wind that comes early, and nothing need be left. */
    @Test
    void plans_the_surer_order_with_all_loads_before_any_is_left() throws IOException {
        Path job = cratesLast();
        Plan late = planned(job);
        Path loads = job.resolve("loads.csv");
        OwnJob.replace(loads, ";\"1;2;3;6\"\n", ";\n");
        ReadJob read = read(job);
        Plan known = late.withOdds(DayOdds.of(read.job(), late, new SplittableRandom(late.seed())));

        SurerDay.Found found =
                SurerDay.find(
                                new SurerDay.Wish(
                                        read,
                                        known,
                                        "surer",
                                        known.plannedAt(),
                                        WISHED_FRACTION,
                                        () -> false),
                                (less, progress) -> {
                                    throw new AssertionError("planned a day with loads left");
                                },
                                Progress.SILENT)
                        .orElseThrow();

        assertThat(DayOdds.allInTime(read.job(), known).leastFraction()).isLessThan(0.6);
        assertThat(found.left()).isEmpty();
        assertThat(flown(found.plan())).isEqualTo(flown(known)).hasSize(6);
        assertThat(DayOdds.allInTime(read.job(), found.plan()).leastFraction())
                .isGreaterThanOrEqualTo(WISHED_FRACTION);
        assertThat(found.plan().findings())
                .filteredOn(finding -> finding.code() == FindingCode.SURER_DAY)
                .singleElement()
                .satisfies(
                        finding ->
                                assertThat(finding.message())
                                        .contains(
                                                "The order of these loads searched by price alone is in time on"));
        assertThat(underhook().planDay().check(read, found.plan()).violations()).isEmpty();
    }

    /** 24 min of engine time for 31 min of flying: a load each five minutes, so two are left at least. */
    @Test
    void says_what_putting_a_load_back_would_come_to() throws IOException {
        Path job = OwnJob.write(folder);
        OwnJob.replace(
                job.resolve("rules.yaml"), "engine-on-day-hours: 6", "engine-on-day-hours: 0.44");
        Plan plan = planned(job, "--in-time=90");

        List<LoadId> left =
                plan.leftOut().stream()
                        .filter(out -> out.code() == FindingCode.ANOTHER_DAY)
                        .map(LeftOut::load)
                        .toList();
        assertThat(left).hasSizeGreaterThanOrEqualTo(1);
        assertThat(plan.odds().orElseThrow().allInTime().leastFraction())
                .isGreaterThanOrEqualTo(0.9);
        assertThat(plan.findings())
                .filteredOn(finding -> finding.code() == FindingCode.SURER_DAY)
                .allSatisfy(
                        finding -> {
                            assertThat(finding.message()).startsWith("Put back, ");
                            assertThat(Integer.parseInt(finding.value())).isLessThan(90);
                        });
    }

    @Test
    void names_what_waits_for_a_load_that_is_left() throws IOException {
        Path job = OwnJob.write(folder);
        Path loads = job.resolve("loads.csv");
        OwnJob.replace(loads, "height_m\n", "height_m;after\n");
        OwnJob.replace(loads, "0,9;0,9;1,1\n", "0,9;0,9;1,1;\n");
        OwnJob.replace(loads, "1,0;1,0;1,0\n", "1,0;1,0;1,0;4\n");
        OwnJob.replace(loads, "1,2;0,8;0,8\n", "1,2;0,8;0,8;1\n");
        ReadJob read = read(job);
        ReadJob less = read.leaving(Set.of(new LoadId("1")));
        PlanDay.Result made =
                underhook()
                        .planDay()
                        .tryOut(
                                less,
                                new PlanDay.Request(job, folder, 1, Duration.ofMinutes(2)),
                                Progress.SILENT);
        assertThat(made).isInstanceOf(PlanDay.Planned.class);
        OutputWriter.Output left = ((PlanDay.Planned) made).output();

        String told = Words.inTime(new OutputWriter.Output(read, left.plan(), left.report()), 80);

        assertThat(told).contains("1 left for another day, and what waits for that: 4, 5, 6");
    }
}
