package underhook.web;

import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DayLooks.Look;
import underhook.app.desk.Lifts;
import underhook.app.desk.Lifts.Lift;
import underhook.app.port.Content;
import underhook.core.finding.Finding;
import underhook.core.finding.Severity;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.WeatherHour;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Plan;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/** A plan as the desk shows it: plan.json, and a view of it. */
final class PlanJson {
    private PlanJson() {}

    /**
     * The plan.
     *
     * @param file plan.json as it was written
     * @param machines files that may hold another machine
     */
    static ObjectNode of(Look look, Content file, boolean isStale, List<String> machines)
            throws IOException {
        ObjectNode node = (ObjectNode) JsonMapper.shared().readTree(file.toText());
        Plan plan = look.plan().plan();
        Job job = look.job().job();
        ObjectNode view = node.putObject("view");
        view.put("revision", look.plan().kept().revision());
        view.put("stale", isStale);
        view.put("zone", job.zone().getId());
        view.put("tankKg", job.machine().fuelUsableKg());
        view.put("magneticVariationDeg", Units.radToDeg(job.magneticVariationRad()));
        view.set("loads", Json.array(job.loads(), PlanJson::load));
        view.set("lines", Json.array(job.machine().lines(), PlanJson::line));
        view.set("laydowns", laydowns(job));
        ObjectNode choices = view.putObject("choices");
        choices.set("laydowns", laydowns(job));
        choices.set(
                "lines", Json.texts(job.machine().lines().stream().map(LineItem::name).toList()));
        choices.set("machines", Json.texts(machines));
        view.set("lifts", Json.array(Lifts.of(plan), one -> lift(one, job)));
        view.set("lanes", lanes(job, plan, look));
        view.set("openFindings", Json.array(open(plan), Json::finding));
        return node;
    }

    private static ObjectNode load(Load load) {
        ObjectNode node = Json.object();
        node.put("id", load.id().value());
        node.put("kind", load.kind());
        node.put("from", load.from().value());
        node.put("to", load.to().value());
        if (load.massKg().isPresent()) {
            node.put("massKg", load.massKg().getAsDouble());
        } else {
            node.putNull("massKg");
        }
        node.put("massTyped", load.massTyped());
        node.put("massStatus", load.massStatus().name().toLowerCase(Locale.ROOT));
        node.put("remarks", load.remarks());
        return node;
    }

    private static ObjectNode line(LineItem line) {
        return Json.object().put("name", line.name()).put("lengthM", line.lengthM());
    }

    private static ArrayNode laydowns(Job job) {
        ArrayNode ids = Json.array();
        job.places().stream()
                .filter(place -> place.kind() == underhook.core.job.PlaceKind.LAYDOWN)
                .forEach(place -> ids.add(place.id().value()));
        return ids;
    }

    /** Its most fuel as read, for the gauge may be off: what the pilot's card and page tell. */
    private static ObjectNode lift(Lift lift, Job job) {
        return Json.object()
                .put("number", lift.number())
                .put("step", lift.step())
                .put("status", word(lift.status()))
                .put("words", lift.words())
                .put("mostReadKg", job.machine().mostReadKg(lift.rotation().fuelMaxKg()))
                .set("loads", Json.texts(lift.rotation().loads()));
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    /** What can hurt comes first. */
    private static List<Finding> open(Plan plan) {
        return plan.findings().stream()
                .filter(finding -> finding.severity() != Severity.NOTE)
                .sorted(Comparator.comparing(Finding::severity).reversed())
                .toList();
    }

    private static ArrayNode lanes(Job job, Plan plan, Look look) {
        ArrayNode lanes = Json.array();
        lanes.add(lane("pilot", "pilot", Json.array(plan.steps(), step -> step(job, step))));
        lanes.add(lane("fuel", "fuel", Json.array(plan.steps(), step -> fuel(job, step))));
        lanes.add(lane("line", "line", Json.array(plan.steps(), step -> fitted(job, step))));
        plan.crews().stream()
                .map(CrewStay::crew)
                .distinct()
                .forEach(
                        crew ->
                                lanes.add(
                                        lane(
                                                "crew",
                                                crew.value(),
                                                Json.array(
                                                        plan.crews().stream()
                                                                .filter(
                                                                        stay ->
                                                                                stay.crew()
                                                                                        .equals(
                                                                                                crew))
                                                                .toList(),
                                                        stay -> stay(job, stay)))));
        lanes.add(lane("weather", "weather", weather(job)));
        lanes.add(lane("sun", "sun", sun(job, plan, look)));
        return lanes;
    }

    private static ObjectNode lane(String kind, String name, ArrayNode items) {
        return Json.object().put("kind", kind).put("name", name).set("items", items);
    }

    private static ObjectNode step(Job job, Step step) {
        return Json.object()
                .put("from", Json.time(step.startAt(), job.zone()))
                .put("to", Json.time(step.endAt(), job.zone()))
                .put("what", word(step.kind()))
                .put("engineRunning", step.engineRunning())
                .put("words", step.because());
    }

    private static ObjectNode fuel(Job job, Step step) {
        return Json.object()
                .put("from", Json.time(step.startAt(), job.zone()))
                .put("to", Json.time(step.endAt(), job.zone()))
                .put("startKg", Math.floor(step.fuelStartKg()))
                .put("endKg", Math.floor(step.fuelEndKg()));
    }

    private static ObjectNode fitted(Job job, Step step) {
        return Json.object()
                .put("from", Json.time(step.startAt(), job.zone()))
                .put("to", Json.time(step.endAt(), job.zone()))
                .put("lengthM", step.lineLengthM());
    }

    private static ObjectNode stay(Job job, CrewStay stay) {
        return Json.object()
                .put("from", Json.time(stay.fromAt(), job.zone()))
                .put("to", Json.time(stay.toAt(), job.zone()))
                .put("place", stay.place().value())
                .put("words", stay.doing());
    }

    private static ArrayNode weather(Job job) {
        ArrayNode items = Json.array();
        List<WeatherHour> hours = job.weather().hours();
        for (int i = 0; i < hours.size(); i++) {
            WeatherHour hour = hours.get(i);
            boolean isLast = i + 1 == hours.size();
            items.add(
                    Json.object()
                            .put("from", Json.time(hour.from(), job.zone()))
                            .put(
                                    "to",
                                    Json.time(
                                            isLast
                                                    ? job.weather().until()
                                                    : hours.get(i + 1).from(),
                                            job.zone()))
                            .put(
                                    "windFromTrueDeg",
                                    Math.round(Units.radToDeg(hour.windFromTrueRad())))
                            .put("windKt", Math.ceil(Units.mPerSToKt(hour.windMPerS()) - 1e-6))
                            .put("gustKt", Math.ceil(Units.mPerSToKt(hour.gustMPerS()) - 1e-6))
                            .put("words", hour.remarks()));
        }
        return items;
    }

    /** Ways in that are flown towards a low sun. */
    private static ArrayNode sun(Job job, Plan plan, Look look) {
        ArrayNode items = Json.array();
        for (Step step : plan.steps()) {
            step.rotation().stream()
                    .flatMap(rotation -> rotation.drops().stream())
                    .forEach(drop -> addGlare(items, job, look, drop));
        }
        return items;
    }

    private static void addGlare(ArrayNode items, Job job, Look look, Drop drop) {
        double trackTrueRad = drop.approachFromTrueRad() + Math.PI;
        if (look.day().isSunAhead(drop.place(), drop.releasedAt(), trackTrueRad)) {
            items.add(
                    Json.object()
                            .put("at", Json.time(drop.releasedAt(), job.zone()))
                            .put("load", drop.load().value())
                            .put("place", drop.place().value()));
        }
    }
}
