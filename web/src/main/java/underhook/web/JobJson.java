package underhook.web;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DeskJob;
import underhook.app.desk.DeskJob.FileInfo;
import underhook.app.desk.DeskJob.KnownPlan;
import underhook.app.desk.PlanRuns;
import underhook.app.port.Fault;
import underhook.app.port.JobReading;
import underhook.app.port.KeptJob.Revision;
import underhook.core.job.Job;
import underhook.core.unit.Units;

/** A job as the desk shows it. */
final class JobJson {
    private static final Set<String> TABLES = Set.of("csv", "xlsx");
    private static final Set<String> TEXTS =
            Set.of("yaml", "yml", "txt", "wkt", "geojson", "json", "kml", "gpx", "prj", "asc");

    private JobJson() {}

    static ObjectNode of(DeskJob job, Optional<PlanRuns.State> run) throws IOException {
        Revision head = job.head();
        JobReading reading = job.read(head.id());
        ObjectNode node = Json.object();
        node.put("id", job.id());
        node.put("name", reading.job().map(read -> read.job().name()).orElse(job.name()));
        node.put("head", head.id());
        node.put("savedAt", head.at().toString());
        node.put("what", head.what());
        putStep(node, "Undo", job.kept().findBack().isPresent() ? head.what() : "");
        putStep(node, "Redo", job.kept().findAhead().map(Revision::what).orElse(""));
        node.set("files", Json.array(job.listFiles(), JobJson::file));
        node.set("faults", Json.array(reading.faults(), JobJson::fault));
        if (reading.job().isPresent()) {
            putDay(node, reading.job().get().job());
        } else {
            List.of("zone", "offsets", "date", "magneticVariationDeg").forEach(node::putNull);
        }
        putPlan(node, job);
        run.ifPresent(state -> node.set("run", run(state)));
        return node;
    }

    private static void putStep(ObjectNode node, String step, String what) {
        node.put("can" + step, !what.isEmpty());
        node.put(step.toLowerCase(Locale.ROOT) + "What", what);
    }

    private static void putDay(ObjectNode node, Job job) {
        node.put("zone", job.zone().getId());
        node.set("offsets", Json.texts(offsets(job)));
        node.put("date", job.date().toString());
        node.put("magneticVariationDeg", Units.radToDeg(job.magneticVariationRad()));
    }

    /** One, or on the day of a clock change both. */
    static List<String> offsets(Job job) {
        return Stream.of(job.date(), job.date().plusDays(1))
                .map(day -> day.atStartOfDay(job.zone()).getOffset().getId())
                .distinct()
                .toList();
    }

    private static void putPlan(ObjectNode node, DeskJob job) throws IOException {
        Optional<KnownPlan> plan = job.findPlan();
        if (plan.isEmpty()) {
            node.putNull("plan");
            node.set("findings", Json.array());
            return;
        }
        node.putObject("plan")
                .put("id", plan.get().kept().id())
                .put("revision", plan.get().kept().revision())
                .put("at", plan.get().kept().at().toString())
                .put("stale", job.isStale(plan.get().kept()));
        node.set("findings", Json.array(plan.get().plan().findings(), Json::finding));
    }

    static ObjectNode run(PlanRuns.State state) {
        return Json.object()
                .put("running", state.isRunning())
                .put("doing", state.text())
                .put("fraction", state.doneFraction());
    }

    /** What it may be named as is told until it is named: whoever comes back another day still has to say it. */
    private static ObjectNode file(FileInfo file) {
        return Json.object()
                .put("path", file.path())
                .put("role", file.role())
                .put("bytes", file.bytes())
                .put("kind", kind(file.path()))
                .set("roles", Json.texts(file.role().isEmpty() ? roles(file.path()) : List.of()));
    }

    /** How a file can be edited, by its ending. */
    static String kind(String path) {
        String ending = path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        if (TABLES.contains(ending)) {
            return "table";
        }
        return TEXTS.contains(ending) ? "text" : "binary";
    }

    static ObjectNode fault(Fault fault) {
        return Json.object()
                .put("code", fault.code().name())
                .put("file", fault.file())
                .put("line", fault.line())
                .put("field", fault.field())
                .put("column", fault.field())
                .put("value", fault.value())
                .put("allowed", fault.allowed())
                .put("message", fault.toString());
    }

    /** Which files may be taken for what, by their ending; nothing is guessed. */
    static List<String> roles(String path) {
        String ending = path.substring(path.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        return ROLES.getOrDefault(ending, List.of());
    }

    private static final List<String> SHAPES =
            List.of("places", "zones", "wires", "map", "release-areas");
    private static final Map<String, List<String>> ROLES =
            Map.ofEntries(
                    Map.entry(
                            "csv",
                            List.of(
                                    "loads", "places", "weather", "hazards", "climate", "archive",
                                    "permits", "learned")),
                    Map.entry(
                            "xlsx",
                            List.of(
                                    "loads", "places", "weather", "hazards", "climate", "archive",
                                    "permits", "learned")),
                    Map.entry(
                            "yaml",
                            List.of(
                                    "job",
                                    "machine",
                                    "other-machines",
                                    "weather",
                                    "crews",
                                    "rules",
                                    "emergency",
                                    "rigging")),
                    Map.entry(
                            "yml",
                            List.of(
                                    "machine",
                                    "weather",
                                    "crews",
                                    "rules",
                                    "emergency",
                                    "rigging")),
                    Map.entry("txt", List.of("weather", "notices")),
                    Map.entry("geojson", SHAPES),
                    Map.entry("json", SHAPES),
                    Map.entry("gpkg", SHAPES),
                    Map.entry("kml", SHAPES),
                    Map.entry("gpx", SHAPES),
                    Map.entry("xml", List.of("map")),
                    Map.entry("osm", List.of("map")),
                    Map.entry("pbf", List.of("map")),
                    Map.entry("tif", List.of("terrain", "canopy")),
                    Map.entry("tiff", List.of("terrain", "canopy")),
                    Map.entry("hgt", List.of("terrain", "canopy")),
                    Map.entry("asc", List.of("terrain", "canopy")));
}
