package underhook.web;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DayLooks.Look;
import underhook.app.flying.Bias;
import underhook.app.flying.CrewsThere;
import underhook.app.flying.FlyingDay;
import underhook.app.flying.LiftState;
import underhook.app.flying.NextLook;
import underhook.app.flying.Stop;
import underhook.app.port.Caution;
import underhook.app.port.EveningFiles;
import underhook.app.port.KeptTap;
import underhook.app.port.Written;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Standing;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.Step;
import underhook.core.plan.ToldPlace;
import underhook.core.unit.Units;

/** The day as every device sees it. */
final class DayJson {
    private static final int LAST_TAPS = 30;
    private static final int RATIO_DECIMALS = 3;

    /** Lines of one length are one. */
    private static final double SAME_LINE_M = 0.05;

    private DayJson() {}

    static ObjectNode of(FlyingDay day, Instant now) throws IOException {
        // One and the same log: devices let go what its number of rows tells them is in the rest.
        List<KeptTap> rows = day.rows();
        FlownDay flown = day.flown(rows);
        Optional<Look> look = day.findLook();
        ObjectNode node = Json.object();
        node.put("job", day.job().id());
        node.put("name", day.job().name());
        node.put("caution", Caution.TEXT);
        ObjectNode log = node.putObject("log");
        log.put("rows", rows.size());
        log.put("hash", rows.isEmpty() ? KeptTap.NO_HASH : rows.get(rows.size() - 1).hash());
        node.set("standing", standing(flown.now()));
        node.set("conflicts", Json.array(FlyingDay.disagreements(flown), DayJson::conflict));
        node.set("devices", Json.array(day.listDevices(), DayJson::device));
        node.set("taps", taps(rows, flown));
        node.set("bias", day.findBias(flown).map(DayJson::bias).orElse(null));
        Optional<Job> job = day.findJob();
        job.ifPresent(one -> putJob(node, one));
        node.putNull("plan");
        if (look.isPresent()) {
            putPlan(node, day, look.get(), flown);
            node.set("stops", stops(day.stops(flown, now), look.get().job().job().zone()));
            Job planned = look.get().job().job();
            Map<PlaceId, List<String>> told = told(day, flown, planned);
            node.path("lifts").forEach(lift -> putTold((ObjectNode) lift, told));
            Optional<NextLook> next = day.findNext(flown, now);
            node.set("nextLook", next.isEmpty() ? null : NextJson.of(next.get(), planned, told));
            Set<String> onHook =
                    flown.now().onHook().stream().map(LoadId::value).collect(Collectors.toSet());
            node.set(
                    "hanging",
                    Json.array(
                            day.listHanging(flown, now),
                            one -> NextJson.hanging(one, onHook, planned, told)));
        }
        return node;
    }

    /** With what hangs, what was told meanwhile of where it is flown to. */
    private static void putTold(ObjectNode lift, Map<PlaceId, List<String>> told) {
        if (lift.path("state").asString("").equals(word(LiftState.State.ON_HOOK))) {
            lift.set(
                    "told",
                    Json.texts(
                            lift.path("drops")
                                    .valueStream()
                                    .map(drop -> new PlaceId(drop.path("place").asString("")))
                                    .distinct()
                                    .flatMap(place -> told.getOrDefault(place, List.of()).stream())
                                    .toList()));
        }
    }

    /** For each place what was told of its ground and the plan does not know. */
    static Map<PlaceId, List<String>> told(FlyingDay day, FlownDay flown, Job job)
            throws IOException {
        Map<PlaceId, List<String>> told = new HashMap<>();
        for (Place place : job.places()) {
            told.put(place.id(), day.unplanned(place.id(), flown));
        }
        return told;
    }

    private static void putJob(ObjectNode node, Job job) {
        node.put("zone", job.zone().getId());
        node.set("offsets", Json.texts(JobJson.offsets(job)));
        node.put("date", job.date().toString());
        node.put("magneticVariationDeg", Units.radToDeg(job.magneticVariationRad()));
        node.set(
                "places",
                Json.array(
                        job.places(),
                        place ->
                                Json.object()
                                        .put("id", place.id().value())
                                        .put("name", place.name())
                                        .put("kind", PlanJson.word(place.kind()))));
        node.set("crews", Json.array(job.crews(), DayJson::crew));
        node.set(
                "lines",
                Json.array(
                        job.machine().lines(),
                        line ->
                                Json.object()
                                        .put("name", line.name())
                                        .put("lengthM", line.lengthM())));
        node.put("seats", job.machine().seats());
        node.put("tankKg", Written.down(job.machine().fuelUsableKg(), 0));
    }

    private static ObjectNode crew(Crew crew) {
        ObjectNode node = Json.object();
        node.put("id", crew.id().value());
        node.set("people", Json.texts(crew.names()));
        ArrayNode roles = node.putArray("roles");
        crew.roles().stream().sorted().forEach(role -> roles.add(PlanJson.word(role)));
        node.put("start", crew.start().value());
        node.put("language", crew.language().word());
        return node;
    }

    private static void putPlan(ObjectNode node, FlyingDay day, Look look, FlownDay flown)
            throws IOException {
        ZoneId zone = look.job().job().zone();
        ObjectNode plan = node.putObject("plan");
        plan.put("id", look.plan().kept().id());
        plan.put("plannedAt", Json.time(look.plan().kept().at(), zone));
        plan.put("stale", day.job().isStale(look.plan().kept()));
        List<LiftState> lifts = LiftState.of(look.job().job(), look.plan().plan(), flown);
        long lateS = lateS(look, flown);
        node.put("lateMin", Math.floorDiv(lateS, 60));
        Map<Integer, List<Step>> before =
                FlyingDay.before(look.job().job(), look.plan().plan(), flown);
        node.set(
                "lifts",
                Json.array(
                        lifts,
                        one -> {
                            ObjectNode lift = lift(one, look.job().job(), lateS);
                            List<Step> steps = before.getOrDefault(one.lift().number(), List.of());
                            lift.set("before", Json.array(steps, step -> step(step, zone, lateS)));
                            return lift;
                        }));
        List<CrewStay> late =
                look.plan().plan().crews().stream()
                        .map(stay -> shifted(stay, look.job().job().crews(), lateS))
                        .toList();
        Instant now = day.job().now();
        node.set("ways", Json.array(CrewsThere.lines(late, flown, now), stay -> way(stay, zone)));
        List<CrewStay> planned = look.plan().plan().crews();
        node.set(
                "said",
                Json.array(
                        CrewsThere.said(flown, now).values(),
                        one ->
                                Json.object()
                                        .put("crew", one.crew().value())
                                        .put("place", one.place().value())
                                        .put("at", Json.time(one.at(), zone))
                                        .put(
                                                "planned",
                                                isBeside(planned, one, ToldPlace.Beside.AS_PLANNED))
                                        .put(
                                                "ahead",
                                                isBeside(planned, one, ToldPlace.Beside.AHEAD))));
        node.put("next", LiftState.next(lifts).map(one -> one.lift().number()).orElse(null));
        node.put("current", LiftState.current(lifts).map(one -> one.lift().number()).orElse(null));
    }

    private static boolean isBeside(
            List<CrewStay> planned, ToldPlace said, ToldPlace.Beside beside) {
        return CrewsThere.beside(planned, said) == beside;
    }

    /** How late the last hooked lift of the plan was; what comes is expected to be as late. */
    static long lateS(Look look, FlownDay flown) {
        return LiftState.lateS(LiftState.of(look.job().job(), look.plan().plan(), flown));
    }

    /** Something between two lifts. */
    private static ObjectNode step(Step step, ZoneId zone, long lateS) {
        ObjectNode node = Json.object();
        node.put("kind", PlanJson.word(step.kind()));
        node.put("from", step.from().value());
        node.put("to", step.to().value());
        node.put("at", Json.time(step.startAt().plusSeconds(lateS), zone));
        node.put("until", Json.time(step.endAt().plusSeconds(lateS), zone));
        node.put("lineM", lineM(step.lineLengthM()));
        // No more than the lifts allow that come after it.
        node.put("fuelToKg", Written.down(step.fuelEndKg(), 0));
        node.put("crew", step.crew().map(CrewId::value).orElse(null));
        return node;
    }

    /** A line to the millimetre: in tenths of a metre one of 50 ft would be one of 49.9 ft. */
    static BigDecimal lineM(double lengthM) {
        return Written.nearest(lengthM, 3);
    }

    /** A stay as late or early as the day is; whoever comes to work comes when they were told to. */
    static CrewStay shifted(CrewStay stay, List<Crew> crews, long lateS) {
        Instant comes =
                crews.stream()
                        .filter(crew -> crew.id().equals(stay.crew()))
                        .map(Crew::availableFrom)
                        .findFirst()
                        .orElse(Instant.MIN);
        Instant from = stay.fromAt().plusSeconds(lateS);
        boolean isFirst = !stay.fromAt().isAfter(comes);
        return new CrewStay(
                stay.crew(),
                stay.place(),
                isFirst ? stay.fromAt() : from.isBefore(comes) ? comes : from,
                stay.toAt().plusSeconds(lateS),
                stay.doing());
    }

    /** Where a crew is to be, and what it does there. */
    private static ObjectNode way(CrewStay stay, ZoneId zone) {
        return Json.object()
                .put("crew", stay.crew().value())
                .put("place", stay.place().value())
                .put("fromAt", Json.time(stay.fromAt(), zone))
                .put("toAt", Json.time(stay.toAt(), zone))
                .put("doing", stay.doing());
    }

    static ObjectNode lift(LiftState lift, Job job, long lateS) {
        ZoneId zone = job.zone();
        ObjectNode node = Json.object();
        node.put("number", lift.lift().number());
        node.put("state", word(lift.state()));
        node.put("from", lift.step().hookedUpAt().value());
        node.put("lineM", lineM(lift.step().lineLengthM()));
        node.set(
                "loads",
                Json.array(
                        lift.lift().rotation().loads(),
                        id -> job.findLoad(id).map(DayJson::load).orElse(Json.object())));
        node.set("drops", Json.array(lift.lift().rotation().drops(), DayJson::drop));
        Instant planned = lift.lift().rotation().hookedAt();
        node.put("plannedAt", Json.time(planned, zone));
        node.put("expectedAt", Json.time(planned.plusSeconds(lateS), zone));
        node.put("hookedAt", lift.hookedAt().map(at -> Json.time(at, zone)).orElse(null));
        node.put("doneAt", lift.doneAt().map(at -> Json.time(at, zone)).orElse(null));
        Json.putTenths(node, "readKg", lift.readKg());
        node.put("plannedKg", Written.nearest(plannedKg(lift, job), 1));
        node.put("ballastKg", Written.up(lift.lift().rotation().ballastKg(), 0));
        return node;
    }

    /** What the load cell may read without the line, kg: what is planned on the hook, less the line. */
    private static double plannedKg(LiftState lift, Job job) {
        double lengthM = lift.step().lineLengthM();
        double lineKg =
                job.machine().lines().stream()
                        .filter(line -> Math.abs(line.lengthM() - lengthM) < SAME_LINE_M)
                        .mapToDouble(LineItem::massKg)
                        .max()
                        .orElse(0);
        return lift.lift().rotation().massOnHookKg() - lineKg;
    }

    static String word(LiftState.State state) {
        return switch (state) {
            case WAITS -> "waits";
            case ON_HOOK -> "onHook";
            case SET_DOWN -> "setDown";
            case DONE -> "done";
            case ABORTED -> "aborted";
        };
    }

    private static ObjectNode load(Load load) {
        ObjectNode node = Json.object();
        node.put("id", load.id().value());
        node.put("kind", load.kind());
        // As it was typed: a tenth more would be a pound more once it is rounded up.
        load.massKg()
                .ifPresentOrElse(kg -> node.put("listedKg", kg), () -> node.putNull("listedKg"));
        node.put("estimated", load.massStatus() == MassStatus.ESTIMATED);
        node.put("dangerousGoods", load.dangerousGoods());
        return node;
    }

    private static ObjectNode drop(Drop drop) {
        return Json.object().put("load", drop.load().value()).put("place", drop.place().value());
    }

    private static ObjectNode standing(Standing now) {
        ObjectNode node = Json.object();
        node.put("engineOn", now.engineOn());
        node.put("inTheAir", now.inTheAir());
        now.lineM()
                .ifPresentOrElse(
                        lengthM -> node.put("lineM", lineM(lengthM)), () -> node.putNull("lineM"));
        node.put("lineChecked", now.lineChecked());
        node.put("peopleAboard", now.peopleAboard());
        node.set("onHook", Json.texts(now.onHook()));
        node.set("notYetFree", Json.texts(now.notYetFree()));
        node.put("freeSeenBy", now.freeSeenBy().orElse(null));
        return node;
    }

    private static ArrayNode taps(List<KeptTap> rows, FlownDay flown) {
        Set<String> counted = new HashSet<>();
        flown.taps().forEach(tap -> counted.add(tap.id()));
        EveningFiles.Tapped tapped = FlyingDay.tapped(rows);
        ArrayNode all = Json.array();
        for (int i = rows.size() - 1; i >= 0; i--) {
            Tap tap = tapped.taps().get(i);
            // What was told can be read and taken back all day.
            if (i < rows.size() - LAST_TAPS && tap.kind() != TapKind.REPORTED) {
                continue;
            }
            ObjectNode node = TapJson.tap(tap);
            Instant deviceAt = tapped.deviceAt().get(tap.id());
            node.put("deviceAt", deviceAt == null ? null : deviceAt.toString());
            node.put("number", rows.get(i).number());
            node.put("anyway", rows.get(i).arrival().anyway());
            node.put("takenBack", !counted.contains(tap.id()) && tap.undoes().isEmpty());
            all.add(node);
        }
        return all;
    }

    private static ObjectNode conflict(FlyingDay.Disagreement one) {
        ObjectNode node = Json.object();
        node.set("tap", TapJson.tap(one.tap()));
        node.set("why", Json.finding(one.why()));
        node.set("other", one.other().map(TapJson::tap).orElse(null));
        return node;
    }

    private static ObjectNode device(FlyingDay.Device device) {
        return Json.object()
                .put("name", device.name())
                .put("by", device.by())
                .put("role", device.role())
                .put("lastAt", device.lastAt().toString())
                .put("clockAheadS", device.clockAhead().toSeconds());
    }

    private static ObjectNode bias(Bias bias) {
        return Json.object()
                .put("count", bias.count())
                .put("meanRatio", Written.nearest(bias.meanRatio(), RATIO_DECIMALS))
                .put("worstRatio", Written.up(bias.worstRatio(), RATIO_DECIMALS));
    }

    private static ArrayNode stops(List<Stop> stops, ZoneId zone) {
        return Json.array(
                stops,
                stop ->
                        Json.object()
                                .put("what", PlanJson.word(stop.what()))
                                .put("at", stop.at().map(at -> Json.time(at, zone)).orElse(null))
                                .put("known", stop.known())
                                .put("words", stop.words()));
    }

    static ObjectNode answer(FlyingDay.Answer answer) {
        ObjectNode node = Json.object();
        node.put("id", answer.id());
        node.put("state", answer.row().isPresent() ? "kept" : "refused");
        answer.row().ifPresent(row -> node.put("number", row.number()).put("hash", row.hash()));
        answer.refusal().ifPresent(why -> node.set("why", Json.finding(why)));
        node.put("differs", answer.differs());
        return node;
    }
}
