package underhook.web;

import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DayLooks;
import underhook.app.desk.DayLooks.Look;
import underhook.app.desk.Desk;
import underhook.app.desk.DeskJob;
import underhook.app.desk.DeskJob.KnownPlan;
import underhook.app.desk.Lifts;
import underhook.app.desk.Lifts.Lift;
import underhook.app.desk.PlanRuns;
import underhook.app.desk.Relief;
import underhook.app.port.Caution;
import underhook.app.port.Content;
import underhook.app.port.KeptJob.KeptPlan;
import underhook.app.port.ReadJob;
import underhook.app.port.Written;
import underhook.core.ahead.Ahead;
import underhook.core.geo.ContourStep;
import underhook.core.geo.GeoPoint;
import underhook.core.plan.Leg;
import underhook.core.plan.Plan;

/** Answers everything that only reads. */
final class ReadingApi {
    private static final int MOST_PIXELS = 1600;
    private static final int MOST_HEIGHTS = 400;

    /** Further from the job no ground is laid over a plane. */
    private static final double MOST_AWAY_DEG = 5;

    private static final Map<String, String> TYPES =
            Map.of(
                    "json", "application/json",
                    "geojson", "application/geo+json",
                    "gpx", "application/gpx+xml",
                    "kml", "application/vnd.google-earth.kml+xml",
                    "gpkg", "application/geopackage+sqlite3",
                    "pdf", "application/pdf",
                    "csv", "text/csv; charset=utf-8");

    private final Desk desk;
    private final PlanRuns runs;
    private final DayLooks looks;
    private final String program;
    private final Answers answers = new Answers();

    ReadingApi(Desk desk, PlanRuns runs, DayLooks looks, String program) {
        this.desk = desk;
        this.runs = runs;
        this.looks = looks;
        this.program = program;
    }

    void addTo(Routes routes) {
        routes.add("GET", "/api/session", this::session)
                .add("GET", "/api/jobs/{id}", call -> call.answer(json(job(call))))
                .add("GET", "/api/jobs/{id}/tables/{path*}", this::table)
                .add("GET", "/api/jobs/{id}/text/{path*}", this::text)
                .add("GET", "/api/jobs/{id}/map", this::map)
                .add("GET", "/api/jobs/{id}/ahead", this::ahead)
                .add("GET", "/api/jobs/{id}/relief.png", this::relief)
                .add("GET", "/api/jobs/{id}/heights", this::heights)
                .add("GET", "/api/jobs/{id}/events", this::events)
                .add("GET", "/api/jobs/{id}/plan", this::plan)
                .add("GET", "/api/jobs/{id}/plan/lifts/{n}/section/{leg}", this::section)
                .add("GET", "/api/jobs/{id}/plan/lifts/{n}/rose", this::rose)
                .add("GET", "/api/jobs/{id}/plan/lifts/{n}/limits", this::limits)
                .add("GET", "/api/jobs/{id}/plan/files/{name}", this::planFile);
    }

    /** Works out once what the first page of the job that was changed last asks for. */
    void warmUp() throws IOException {
        Optional<DeskJob> last = Optional.empty();
        Instant changedAt = Instant.MIN;
        for (DeskJob job : desk.list()) {
            if (job.head().at().isAfter(changedAt)) {
                changedAt = job.head().at();
                last = Optional.of(job);
            }
        }
        if (last.isPresent()) {
            warmUp(last.get());
        }
    }

    private void warmUp(DeskJob job) throws IOException {
        json(job);
        Optional<Look> look = looks.find(job);
        if (look.isPresent()) {
            planOf(job, look.get());
        }
        mapOf(job, ContourStep.Unit.M);
    }

    DeskJob job(Call call) throws IOException {
        return desk.find(call.part("id")).orElseThrow(Refused::unknown);
    }

    ObjectNode json(DeskJob job) throws IOException {
        return JobJson.of(job, runs.find(job));
    }

    private void session(Call call) throws IOException {
        ObjectNode node = Json.object();
        node.put("version", program);
        node.put("caution", Caution.TEXT);
        node.put("now", desk.now().toString());
        ArrayNode jobs = node.putArray("jobs");
        for (DeskJob job : desk.list()) {
            // Of a job that nobody opens no plan is read.
            Optional<KeptPlan> plan = job.findKeptPlan();
            ObjectNode one = jobs.addObject();
            one.put("id", job.id());
            one.put("name", job.name());
            one.put("changedAt", job.head().at().toString());
            one.put("plannedAt", plan.map(kept -> kept.at().toString()).orElse(null));
            one.put("demo", job.id().startsWith("demo"));
        }
        call.answer(node);
    }

    private void table(Call call) throws IOException {
        call.answer(TableJson.of(job(call), call.part("path")));
    }

    private void text(Call call) throws IOException {
        DeskJob job = job(call);
        String path = call.part("path");
        Content content = job.findFile(path).orElseThrow(Refused::unknown);
        if (JobJson.kind(path).equals("binary")) {
            throw new Refused(400, path + " is no text.");
        }
        ObjectNode node = Json.object();
        node.put("path", path);
        node.put("revision", job.head().id());
        node.put("text", content.toText());
        node.set("faults", TableJson.faults(job, path));
        call.answer(node);
    }

    private static ReadJob readable(DeskJob job) throws IOException {
        return job.findReadable()
                .orElseThrow(() -> new Refused(409, "The job has never been without faults yet."));
    }

    private void map(Call call) throws IOException {
        call.answer(mapOf(job(call), heightUnit(call)));
    }

    private static ContourStep.Unit heightUnit(Call call) throws Refused {
        String said = call.query("heights");
        return switch (said) {
            case "", "m" -> ContourStep.Unit.M;
            case "ft" -> ContourStep.Unit.FT;
            default -> throw new Refused(400, "heights (" + said + ") must be m or ft.");
        };
    }

    private Asset mapOf(DeskJob job, ContourStep.Unit heights) throws IOException {
        long head = job.head().id();
        Optional<KnownPlan> known = planNow(job);
        return answers.get(
                "map "
                        + job.id()
                        + " "
                        + head
                        + " "
                        + heights
                        + " "
                        + known.map(plan -> plan.kept().id()).orElse(""),
                () -> {
                    ObjectNode node =
                            MapJson.of(readable(job), known.map(KnownPlan::plan), heights);
                    node.put("revision", head);
                    node.put("stale", job.read().job().isEmpty());
                    return Asset.of(node);
                });
    }

    /** With the plan's legs, unless the job has changed since. */
    private void ahead(Call call) throws IOException {
        DeskJob job = job(call);
        ReadJob read = readable(job);
        Optional<Plan> plan = planNow(job).map(KnownPlan::plan);
        call.answer(AheadJson.of(Ahead.of(read.job(), read.ground(), read.beside(), plan)));
    }

    /** The plan, unless the job has changed since. */
    private static Optional<KnownPlan> planNow(DeskJob job) throws IOException {
        Optional<KnownPlan> known = job.findPlan();
        return known.isPresent() && !job.isStale(known.get().kept()) ? known : Optional.empty();
    }

    private void relief(Call call) throws IOException {
        DeskJob job = job(call);
        ReadJob read = readable(job);
        Relief.Box box = reliefBox(call, job, read);
        int width = size(call, "w", 900, MOST_PIXELS);
        int height = size(call, "h", 900, MOST_PIXELS);
        String key =
                String.join(
                        " ",
                        "relief",
                        job.id(),
                        Long.toString(job.head().id()),
                        Integer.toString(width),
                        Integer.toString(height),
                        box.toString());
        Asset picture =
                answers.get(
                        key,
                        () ->
                                new Asset(
                                        "image/png",
                                        ReliefPng.paint(
                                                Relief.of(read.ground(), box, width, height))));
        if (!call.query("r").isEmpty()) {
            call.keepForEver();
        }
        call.answer(picture);
    }

    /** The bounds that a map was told, so that the picture lies where they do though a plan came since. */
    private static Relief.Box reliefBox(Call call, DeskJob job, ReadJob read) throws IOException {
        String said = call.query("bounds");
        if (said.isEmpty()) {
            return MapJson.box(read.job(), planNow(job).map(KnownPlan::plan)).squared();
        }
        double[] deg;
        try {
            deg = Stream.of(said.split(",", -1)).mapToDouble(Double::parseDouble).toArray();
        } catch (NumberFormatException noNumber) {
            throw noBounds(said);
        }
        GeoPoint origin = read.job().origin();
        boolean isBox =
                deg.length == 4
                        && deg[0] < deg[2]
                        && deg[2] - deg[0] <= 2 * MOST_AWAY_DEG
                        && deg[1] < deg[3];
        for (int i = 0; i < deg.length && isBox; i++) {
            double originDeg = i % 2 == 0 ? origin.lonDeg() : origin.latDeg();
            double offDeg = deg[i] - originDeg;
            isBox =
                    Math.abs(i % 2 == 0 ? Math.IEEEremainder(offDeg, 360) : offDeg)
                            <= MOST_AWAY_DEG;
        }
        if (!isBox) {
            throw noBounds(said);
        }
        return new Relief.Box(deg[0], deg[1], deg[2], deg[3]);
    }

    private static Refused noBounds(String said) {
        return new Refused(
                400,
                "bounds must be west,south,east,north in degrees, within 5 of the job, not "
                        + said
                        + ".");
    }

    private static int size(Call call, String name, int usual, int most) throws Refused {
        String said = call.query(name);
        if (said.isEmpty()) {
            return usual;
        }
        if (!said.matches("[0-9]{1,5}")
                || Integer.parseInt(said) < 2
                || Integer.parseInt(said) > most) {
            throw new Refused(400, name + " must lie between 2 and " + most + ".");
        }
        return Integer.parseInt(said);
    }

    /** Decimetres, row by row from the north; null where the terrain says nothing. */
    private void heights(Call call) throws IOException {
        DeskJob job = job(call);
        ReadJob read = readable(job);
        Relief.Box box = MapJson.box(read.job(), planNow(job).map(KnownPlan::plan));
        int width = size(call, "w", 160, MOST_HEIGHTS);
        int height = size(call, "h", 120, MOST_HEIGHTS);
        Relief relief = Relief.of(read.ground(), box, width, height);
        ObjectNode node = Json.object();
        node.put("columns", width).put("rows", height);
        node.putArray("bounds")
                .add(box.westDeg())
                .add(box.southDeg())
                .add(box.eastDeg())
                .add(box.northDeg());
        ArrayNode all = node.putArray("heightsM");
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                if (relief.isKnown(column, row)) {
                    all.add(Written.nearest(relief.heightAmslM(column, row), 1));
                } else {
                    all.addNull();
                }
            }
        }
        call.answer(node);
    }

    private void events(Call call) throws IOException {
        DeskJob job = job(call);
        ObjectNode hello = Json.object().put("head", job.head().id());
        runs.find(job).ifPresent(state -> hello.set("run", JobJson.run(state)));
        new EventStream(job.id()).run(desk.events(), hello, call.stream("text/event-stream"));
    }

    private Look look(DeskJob job) throws IOException {
        return looks.find(job)
                .orElseThrow(() -> new Refused(404, "The job has not been planned yet."));
    }

    private void plan(Call call) throws IOException {
        DeskJob job = job(call);
        call.answer(planOf(job, look(job)));
    }

    private Asset planOf(DeskJob job, Look look) throws IOException {
        String name = "plan " + job.id() + " " + job.head().id() + " " + look.plan().kept().id();
        return answers.get(
                name,
                () -> {
                    Content file = planFile(job, look.plan(), "plan.json");
                    boolean isStale = job.isStale(look.plan().kept());
                    return Asset.of(PlanJson.of(look, file, isStale, machines(job)));
                });
    }

    /** Files that may hold another machine. */
    private static List<String> machines(DeskJob job) throws IOException {
        return job.listFiles().stream()
                .filter(one -> one.role().isEmpty() || one.role().equals("other_machines"))
                .map(DeskJob.FileInfo::path)
                .filter(path -> JobJson.roles(path).contains("machine"))
                .filter(path -> !path.equals("job.yaml"))
                .toList();
    }

    private static Content planFile(DeskJob job, KnownPlan plan, String name) throws IOException {
        return job.kept().findPlanFile(plan.kept().id(), name).orElseThrow(Refused::unknown);
    }

    private Lift lift(Look look, Call call) throws Refused {
        return Lifts.find(look.plan().plan(), call.number("n")).orElseThrow(Refused::unknown);
    }

    private void section(Call call) throws IOException {
        Look look = look(job(call));
        Lift lift = lift(look, call);
        List<Leg> legs = lift.rotation().legs();
        int leg = call.number("leg");
        if (leg < 0 || leg >= legs.size()) {
            throw Refused.unknown();
        }
        call.answer(LookJson.section(look, lift, legs.get(leg)));
    }

    private void rose(Call call) throws IOException {
        Look look = look(job(call));
        call.answer(LookJson.rose(look, lift(look, call)));
    }

    private void limits(Call call) throws IOException {
        Look look = look(job(call));
        call.answer(LookJson.limits(look, lift(look, call)));
    }

    private void planFile(Call call) throws IOException {
        DeskJob job = job(call);
        String name = call.part("name");
        KnownPlan plan = job.findPlan().orElseThrow(Refused::unknown);
        Content content = planFile(job, plan, name);
        String ending = name.substring(name.lastIndexOf('.') + 1);
        if (!ending.equals("pdf") || !call.query("save").isEmpty()) {
            call.saveAs(job.id() + "-" + name);
        }
        call.answer(TYPES.getOrDefault(ending, "application/octet-stream"), content);
    }
}
