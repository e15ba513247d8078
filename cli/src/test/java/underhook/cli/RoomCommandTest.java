package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import underhook.app.RoomAtPlaces;
import underhook.app.port.Caution;
import underhook.app.port.Fault;
import underhook.core.finding.FindingCode;
import underhook.core.job.PlaceId;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.PlaceRoom.Cost;
import underhook.core.plan.PlaceRoom.Fit;
import underhook.core.plan.PlaceRoom.LineRoom;
import underhook.core.plan.PlaceRoom.Sector;
import underhook.core.plan.PlaceRoom.Tightest;

class RoomCommandTest {
    private static final PlaceRoom ROOM =
            new PlaceRoom(
                    new PlaceId("S04"),
                    List.of(
                            new LineRoom(
                                    "25 m",
                                    25,
                                    0,
                                    List.of(
                                            new Sector(Fit.NEAR, rad(210.4), rad(158.6)),
                                            new Sector(Fit.REFUSED, rad(158.6), rad(210.4))),
                                    new Tightest("tail", "trees", rad(185), 4.79, 5, 3.21),
                                    new Cost(30.2, 10, 26.1)),
                            new LineRoom(
                                    "40 m",
                                    40,
                                    11.5,
                                    List.of(new Sector(Fit.FREE, 0, 2 * Math.PI)),
                                    new Tightest("tail", "W1", 0, Double.NEGATIVE_INFINITY, 30, 1),
                                    new Cost(38, 10, 51.5))),
                    Optional.of("40 m"),
                    "shortest");

    private final StringWriter out = new StringWriter();

    private static double rad(double deg) {
        return Math.toRadians(deg);
    }

    private int run(BiFunction<Path, String, RoomAtPlaces.Result> find, String... arguments) {
        CommandLine line = new CommandLine(new Root());
        line.addSubcommand(new RoomCommand(find));
        Main.settle(line, Path.of(System.getProperty("java.io.tmpdir")));
        line.setOut(new PrintWriter(out)).setErr(new PrintWriter(new StringWriter()));
        return line.execute(arguments);
    }

    @Test
    void tells_sectors_rounded_inwards_what_decides_and_the_caution() {
        int exit =
                run(
                        (folder, place) -> {
                            assertThat(place).isEqualTo("S04");
                            return new RoomAtPlaces.Result(List.of(), List.of(ROOM));
                        },
                        "room",
                        "job",
                        "S04");

        assertThat(exit).isEqualTo(Exit.DONE);
        assertThat(out.toString())
                .contains("S04: headings TRUE")
                .contains("211-158")
                .contains("158-211")
                .contains("tail to trees 4.7 of 5.0 m, unknown 3.3 m, on 185")
                .contains("40 m + 11.5")
                .contains("tail to W1 not known of 30.0 m")
                .contains("settles in 31 s, wind on the ground 20 kt")
                .contains("take: 40 m (shortest)")
                .endsWith(Caution.TEXT + System.lineSeparator());
    }

    @Test
    void says_the_same_as_json() {
        run(
                (folder, place) -> new RoomAtPlaces.Result(List.of(), List.of(ROOM)),
                "room",
                "job",
                "--json");

        JsonNode root = JsonMapper.builder().build().readTree(out.toString());
        assertThat(root.get("caution").asString()).isEqualTo(Caution.TEXT);
        JsonNode line = root.get("places").get(0).get("lines").get(0);
        assertThat(line.get("refusedTrueDeg").get(0).get(1).asDouble())
                .isCloseTo(210.4, org.assertj.core.api.Assertions.within(1e-9));
        assertThat(line.get("tightest").get("marginM").asDouble()).isEqualTo(4.79);
        assertThat(root.get("places").get(0).get("lines").get(1).get("tightest").has("marginM"))
                .isFalse();
    }

    @Test
    void faults_of_the_job_exit_2() {
        Fault fault = new Fault(FindingCode.ID_UNKNOWN, "places", 0, "", "no such place", "S4", "");

        int exit =
                run(
                        (folder, place) -> new RoomAtPlaces.Result(List.of(fault), List.of()),
                        "room",
                        "job",
                        "S4");

        assertThat(exit).isEqualTo(Exit.INPUT_REFUSED);
        assertThat(out.toString().strip()).isEqualTo("places: no such place, found \"S4\"");
    }
}
