package underhook.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import underhook.app.PlanDay;
import underhook.app.Progress;
import underhook.app.desk.Desk;
import underhook.app.desk.DeskJob;
import underhook.app.desk.PlanRuns;
import underhook.assembly.Underhook;

/** Jobs for measuring the desk: the demo day, and larger ones made from it. */
final class DeskDays {
    private static final int IN_A_ROW = 30;

    private DeskDays() {}

    /**
     * Takes a planned demo day into the desk, under the folder's name.
     *
     * @param moreLoads bags besides its 45 loads
     * @param morePlaces sites besides its 20 places, over all of its ground
     */
    static void lay(Underhook program, Desk desk, Path folder, int moreLoads, int morePlaces)
            throws IOException {
        program.writeDemo(folder);
        addLoads(folder.resolve("loads.csv"), moreLoads);
        addPlaces(folder.resolve("places.csv"), morePlaces);
        String name = String.valueOf(folder.getFileName());
        DeskJob job = desk.importFolder(folder, name);
        PlanDay.Request request =
                new PlanDay.Request(
                        folder, folder.resolveSibling(name + "-out"), 1, Duration.ofMinutes(2));
        PlanDay.Result result = program.planDay().plan(request, Progress.SILENT);
        if (!(result instanceof PlanDay.Planned planned)) {
            throw new IllegalStateException(name + " was not planned: " + result);
        }
        PlanRuns.keep(job, job.head().id(), planned);
    }

    private static void addLoads(Path file, int more) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(file, StandardCharsets.UTF_8));
        List<String> bags = lines.stream().filter(line -> line.contains(";bag;A;")).toList();
        for (int i = 0; i < more; i++) {
            String bag = bags.get(i % bags.size());
            lines.add(String.format(Locale.ROOT, "X%02d", i) + bag.substring(bag.indexOf(';')));
        }
        Files.write(file, lines, StandardCharsets.UTF_8);
    }

    private static void addPlaces(Path file, int more) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(file, StandardCharsets.UTF_8));
        long columns = lines.get(0).chars().filter(one -> one == ',').count();
        for (int i = 0; i < more; i++) {
            int eastM = 300 + 190 * (i % IN_A_ROW);
            int northM = 100 + 260 * (i / IN_A_ROW);
            String place = String.format(Locale.ROOT, "T%03d,site,,%d,%d", i, eastM, northM);
            lines.add(place + ",".repeat((int) columns - 4));
        }
        Files.write(file, lines, StandardCharsets.UTF_8);
    }
}
