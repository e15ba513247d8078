package underhook.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.Desk;
import underhook.app.desk.DeskChanges;
import underhook.app.desk.DeskJob;
import underhook.app.desk.PlanRuns;
import underhook.app.desk.TableEdit;
import underhook.app.port.Content;

/** Answers what changes a job or begins work. */
final class ChangingApi {
    private static final long MOST_JOB_BYTES = 512L << 20;
    private static final int MOST_NAME = 100;
    private static final long MOST_SECONDS = 3600;

    /** A search that is through before ends before; one that is cut short leaves loads behind. */
    private static final int USUAL_SECONDS = 120;

    private final Desk desk;
    private final PlanRuns runs;
    private final ReadingApi reading;

    ChangingApi(Desk desk, PlanRuns runs, ReadingApi reading) {
        this.desk = desk;
        this.runs = runs;
        this.reading = reading;
    }

    void addTo(Routes routes) {
        routes.add("POST", "/api/jobs", this::create)
                .add("POST", "/api/jobs/handover", this::take)
                .add("GET", "/api/jobs/{id}/handover", this::handOver)
                .add("POST", "/api/jobs/{id}/files/{path*}", this::dropFile)
                .add("PUT", "/api/jobs/{id}/files/{path}/role", this::setRole)
                .add("DELETE", "/api/jobs/{id}/files/{path*}", this::removeFile)
                .add("PATCH", "/api/jobs/{id}/tables/{path*}", this::editTable)
                .add("PUT", "/api/jobs/{id}/text/{path*}", this::writeText)
                .add("POST", "/api/jobs/{id}/undo", this::undo)
                .add("POST", "/api/jobs/{id}/redo", this::redo)
                .add("POST", "/api/jobs/{id}/plan", this::plan)
                .add("POST", "/api/jobs/{id}/plan/stop", this::stop);
    }

    private void create(Call call) throws IOException {
        ObjectNode asked = call.json();
        String from = Asked.text(asked, "from");
        String name = Asked.text(asked, "name", MOST_NAME);
        DeskJob job =
                switch (from) {
                    case "demo" -> desk.createDemo(name);
                    case "empty" ->
                            desk.createEmpty(
                                    name,
                                    new Desk.Beginning(
                                            Asked.text(asked, "date", MOST_NAME, ""),
                                            Asked.text(asked, "zone", MOST_NAME, ""),
                                            Asked.text(asked, "crs", MOST_NAME, ""),
                                            Asked.text(
                                                    asked, "magneticVariationDeg", MOST_NAME, ""),
                                            Asked.text(asked, "machineStart", MOST_NAME, "")));
                    default -> throw new Refused(400, "from must be demo or empty.");
                };
        call.answer(201, Json.object().put("id", job.id()));
    }

    private void take(Call call) throws IOException {
        Path file = Files.createTempFile("underhook", ".job");
        try {
            Files.write(file, call.body(MOST_JOB_BYTES).toBytes());
            call.answer(201, Json.object().put("id", desk.take(file).id()));
        } catch (IOException wrong) {
            throw new Refused(400, String.valueOf(wrong.getMessage()));
        } finally {
            Files.delete(file);
        }
    }

    private void handOver(Call call) throws IOException {
        DeskJob job = reading.job(call);
        Path folder = Files.createTempDirectory("underhook");
        Path file = folder.resolve("job");
        try {
            job.kept().writeTo(file);
            call.saveAs(job.id() + ".underhook");
            call.answer("application/octet-stream", Content.of(Files.readAllBytes(file)));
        } finally {
            Files.deleteIfExists(file);
            Files.delete(folder);
        }
    }

    private void dropFile(Call call) throws IOException {
        DeskJob job = reading.job(call);
        String path = call.part("path");
        String seen = call.query("revision");
        long on = seen.isEmpty() ? job.head().id() : Asked.number(seen);
        new DeskChanges(job, on).takeFile(path, call.body(Desk.MOST_FILE_BYTES));
        ObjectNode node = reading.json(job);
        node.put("path", path);
        node.set("roles", Json.texts(JobJson.roles(path)));
        call.answer(node);
    }

    private void setRole(Call call) throws IOException {
        DeskJob job = reading.job(call);
        ObjectNode asked = call.json();
        Map<String, String> details = new TreeMap<>();
        asked.path("details")
                .properties()
                .forEach(one -> details.put(one.getKey(), one.getValue().asString()));
        String path = call.part("path");
        String role = Asked.text(asked, "role", MOST_NAME).replace('_', '-');
        if (!JobJson.roles(path).contains(role)) {
            throw new Refused(
                    400, path + " can be " + String.join(", ", JobJson.roles(path)) + ".");
        }
        new DeskChanges(job, Asked.revision(asked)).setRole(path, role, details);
        call.answer(reading.json(job));
    }

    private void removeFile(Call call) throws IOException {
        DeskJob job = reading.job(call);
        new DeskChanges(job, Asked.number(call.query("revision"))).remove(call.part("path"));
        call.answer(reading.json(job));
    }

    private void editTable(Call call) throws IOException {
        DeskJob job = reading.job(call);
        ObjectNode asked = call.json();
        String path = call.part("path");
        String what = Asked.text(asked, "what", 200, path + " changed");
        String now = new DeskChanges(job, Asked.revision(asked)).editTable(path, edit(asked), what);
        ObjectNode node = reading.json(job);
        node.set("table", TableJson.of(job, now));
        call.answer(node);
    }

    private static TableEdit edit(ObjectNode asked) throws Refused {
        List<TableEdit.Cell> cells = new ArrayList<>();
        for (JsonNode cell : asked.path("cells")) {
            cells.add(
                    new TableEdit.Cell(
                            Asked.whole(cell, "row"),
                            Asked.whole(cell, "column"),
                            cell.path("value").asString("")));
        }
        Map<Integer, List<List<String>>> inserted = new HashMap<>();
        for (JsonNode row : asked.path("insertRows")) {
            List<String> values = new ArrayList<>();
            row.path("values").forEach(value -> values.add(value.asString("")));
            inserted.computeIfAbsent(Asked.whole(row, "at"), any -> new ArrayList<>()).add(values);
        }
        Set<Integer> deleted = new HashSet<>();
        for (JsonNode row : asked.path("deleteRows")) {
            deleted.add(row.asInt(-1));
        }
        return new TableEdit(cells, inserted, deleted);
    }

    private void writeText(Call call) throws IOException {
        DeskJob job = reading.job(call);
        ObjectNode asked = call.json();
        String path = call.part("path");
        if (JobJson.kind(path).equals("binary")) {
            throw new Refused(400, path + " is no text.");
        }
        String what = Asked.text(asked, "what", 200, path + " changed");
        new DeskChanges(job, Asked.revision(asked))
                .writeText(path, asked.path("text").asString(""), what);
        call.answer(reading.json(job));
    }

    private void undo(Call call) throws IOException {
        DeskJob job = reading.job(call);
        if (job.kept().findBack().isEmpty()) {
            throw new Refused(409, "There is nothing to undo.");
        }
        job.undo(Asked.revision(call.json()));
        call.answer(reading.json(job));
    }

    private void redo(Call call) throws IOException {
        DeskJob job = reading.job(call);
        if (job.kept().findAhead().isEmpty()) {
            throw new Refused(409, "There is nothing to do again.");
        }
        job.redo(Asked.revision(call.json()));
        call.answer(reading.json(job));
    }

    private void plan(Call call) throws IOException {
        DeskJob job = reading.job(call);
        ObjectNode asked = call.json();
        long seconds = asked.path("seconds").asLong(USUAL_SECONDS);
        if (seconds < 1 || seconds > MOST_SECONDS) {
            throw new Refused(400, "seconds must lie between 1 and " + MOST_SECONDS + ".");
        }
        PlanRuns.Wish wish =
                new PlanRuns.Wish(asked.path("seed").asLong(1), Duration.ofSeconds(seconds));
        if (!runs.start(job, wish)) {
            throw new Refused(409, "The job is being planned already.");
        }
        call.answer(202, reading.json(job));
    }

    private void stop(Call call) throws IOException {
        DeskJob job = reading.job(call);
        runs.stop(job);
        call.answer(reading.json(job));
    }
}
