package underhook.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import underhook.app.MapChanges.Change;
import underhook.app.MapChanges.Result;
import underhook.app.MapChanges.What;
import underhook.app.port.Fault;
import underhook.core.finding.FindingCode;
import underhook.core.geo.GeoPoint;

class ChangesCommandTest {
    private static final Change MOVED =
            new Change(
                    What.MOVED,
                    "house",
                    "n2",
                    "moved by 11 m",
                    new GeoPoint(46.8031, -11.99),
                    "S02",
                    112.9);

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private final List<String> asked = new ArrayList<>();
    private Result result = new Result(List.of(), "old.map", 7, List.of(MOVED));

    private int run(String... arguments) {
        CommandLine line = new CommandLine(new Root());
        line.addSubcommand(
                new ChangesCommand(
                        (folder, newer, replaces) -> {
                            asked.add(folder + " " + newer + " " + replaces);
                            return result;
                        }));
        Main.settle(line, Path.of(System.getProperty("java.io.tmpdir")));
        line.setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
        return line.execute(arguments);
    }

    @Test
    void lists_each_change_with_the_nearest_place_and_the_sum() {
        assertThat(run("changes", "job", "--map", "new.map", "--for", "old.map")).isZero();

        assertThat(out.toString().lines())
                .containsExactly(
                        "moved house n2, 112 m from S02: moved by 11 m",
                        "1 change against old.map; 7 things compared.");
        assertThat(asked).containsExactly("job " + Path.of("new.map") + " old.map");
    }

    @Test
    void gives_an_object_when_asked() {
        assertThat(run("changes", "job", "--map=new.map", "--json")).isZero();

        assertThat(out.toString().strip())
                .isEqualTo(
                        "{\"replaced\":\"old.map\",\"compared\":7,\"changes\":[{\"what\":\"moved\","
                                + "\"kind\":\"house\",\"id\":\"n2\",\"detail\":\"moved by 11 m\","
                                + "\"latDeg\":46.8031,\"lonDeg\":-11.99,\"nearestPlace\":\"S02\","
                                + "\"distanceM\":112}]}");
    }

    @Test
    void exits_2_with_every_fault() {
        result =
                new Result(
                        List.of(
                                new Fault(
                                        FindingCode.FILE_MISSING,
                                        "x.map",
                                        0,
                                        "",
                                        "is no file",
                                        "",
                                        "")),
                        "",
                        0,
                        List.of());

        assertThat(run("changes", "job", "--map", "x.map")).isEqualTo(2);
        assertThat(out.toString().strip()).isEqualTo("x.map: is no file");
    }

    @Test
    void refuses_unknown_words_with_the_nearest_known_one() {
        assertThat(run("chagnes", "job")).isEqualTo(2);
        assertThat(err.toString()).contains("underhook changes");
        assertThat(run("changes", "job", "--mpa", "x")).isEqualTo(2);
        assertThat(err.toString()).contains("--map");
    }
}
