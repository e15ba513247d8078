package underhook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.BiFunction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.json.JsonMapper;
import underhook.app.RoomAtPlaces;
import underhook.app.port.Caution;
import underhook.core.plan.PlaceRoom;

/** Says where there is room with which line. */
@Command(
        name = "room",
        mixinStandardHelpOptions = true,
        description = {
            "Says for each place and line in stock on which headings rotor, tail, line and load have"
                    + " room, what decides, and which line to take.",
            "Nothing is planned or written. Headings are TRUE."
        })
final class RoomCommand implements Callable<Integer> {
    private final BiFunction<Path, String, RoomAtPlaces.Result> find;

    @Spec private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "JOB", description = "job folder")
    private Path folder;

    @Parameters(
            index = "1",
            paramLabel = "PLACE",
            arity = "0..1",
            defaultValue = "",
            description = "only this place; all that loads use when left out")
    private String place;

    @Option(names = "--json", description = "as one JSON object")
    private boolean json;

    RoomCommand(BiFunction<Path, String, RoomAtPlaces.Result> find) {
        this.find = find;
    }

    @Override
    public Integer call() {
        RoomAtPlaces.Result result = find.apply(folder, place);
        PrintWriter out = spec.commandLine().getOut();
        result.faults().forEach(out::println);
        if (!result.faults().isEmpty()) {
            return Exit.INPUT_REFUSED;
        }
        if (json) {
            out.println(JsonMapper.shared().writeValueAsString(RoomWords.json(result.rooms())));
            return Exit.DONE;
        }
        List<PlaceRoom> rooms = result.rooms();
        rooms.stream().flatMap(room -> RoomWords.of(room).stream()).forEach(out::println);
        if (rooms.isEmpty()) {
            out.println("No load uses the place, or its ground is not known.");
        }
        out.println(Caution.TEXT);
        return Exit.DONE;
    }
}
