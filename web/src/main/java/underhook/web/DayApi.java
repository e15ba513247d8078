package underhook.web;

import java.io.IOException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.desk.DayLooks.Look;
import underhook.app.desk.Desk;
import underhook.app.flying.FlyingDay;
import underhook.app.flying.FlyingDays;
import underhook.app.flying.PlaceLook;
import underhook.app.port.Content;
import underhook.app.port.KeptTap;
import underhook.app.replan.RestOfDay.Patience;
import underhook.core.flown.FlownDay;
import underhook.core.job.Job;
import underhook.core.job.Place;

/** Answers the devices of a day that is being flown. */
final class DayApi {
    /** So long an answer is good for everybody who asks. */
    private static final long GOOD_FOR_S = 5;

    private static final int MOST_TAPS = 500;
    private static final List<String> ROLES = List.of("pilot", "loader", "crew", "desk");

    private final Desk desk;
    private final FlyingDays days;
    private final Map<String, Known> known = new HashMap<>();

    private record Known(String key, ObjectNode node) {}

    DayApi(Desk desk, FlyingDays days) {
        this.desk = desk;
        this.days = days;
    }

    void addTo(Routes routes) {
        routes.add("GET", "/api/jobs/{id}/day", this::state)
                .add("POST", "/api/jobs/{id}/day/taps", this::take)
                .add("GET", "/api/jobs/{id}/day/taps.csv", this::table)
                .add("GET", "/api/jobs/{id}/day/log", this::log)
                .add("GET", "/api/jobs/{id}/day/flown", this::flown)
                .add("GET", "/api/jobs/{id}/day/evening.pdf", this::evening)
                .add("GET", "/api/jobs/{id}/day/places", this::places)
                .add("GET", "/api/jobs/{id}/day/emergency", this::emergency)
                .add("POST", "/api/jobs/{id}/day/order", this::order)
                .add("POST", "/api/jobs/{id}/day/order/accept", this::accept)
                .add("GET", "/api/jobs/{id}/day/events", this::events);
    }

    private FlyingDay day(Call call) throws IOException {
        return days.find(call.part("id")).orElseThrow(Refused::unknown);
    }

    /** A hundred devices ask at once when somebody has tapped; it is worked out once. */
    private void state(Call call) throws IOException {
        FlyingDay day = day(call);
        ObjectNode node;
        synchronized (known) {
            Instant now = day.job().now();
            String key =
                    day.rows().size()
                            + " "
                            + day.job().head().id()
                            + " "
                            + day.job().kept().listPlans().size()
                            + " "
                            + now.getEpochSecond() / GOOD_FOR_S;
            Known last = known.get(day.job().id());
            if (last == null || !last.key().equals(key)) {
                last = new Known(key, DayJson.of(day, now));
                known.put(day.job().id(), last);
            }
            node = last.node().deepCopy();
            node.put("now", now.toString());
        }
        call.answer(node);
    }

    private void take(Call call) throws IOException {
        FlyingDay day = day(call);
        JsonNode taps = call.json().path("taps");
        if (!taps.isArray() || taps.isEmpty() || taps.size() > MOST_TAPS) {
            throw new Refused(400, "taps must hold between 1 and " + MOST_TAPS + " taps.");
        }
        Map<String, String> unreadable = new HashMap<>();
        List<FlyingDay.Offer> offers = new ArrayList<>();
        for (JsonNode tap : taps) {
            try {
                offers.add(offer(tap));
            } catch (Refused | IllegalArgumentException | DateTimeParseException wrong) {
                unreadable.put(tap.path("id").asString(""), String.valueOf(wrong.getMessage()));
            }
        }
        List<FlyingDay.Answer> taken = offers.isEmpty() ? List.of() : day.take(offers);
        ObjectNode node = Json.object();
        ArrayNode answers = node.putArray("answers");
        taken.forEach(one -> answers.add(DayJson.answer(one)));
        unreadable.forEach(
                (id, why) ->
                        answers.addObject()
                                .put("id", id)
                                .put("state", "unreadable")
                                .put("why", why));
        node.put("rows", day.rows().size());
        call.answer(node);
    }

    private static FlyingDay.Offer offer(JsonNode asked) throws Refused {
        if (!(asked instanceof ObjectNode tap)) {
            throw new Refused(400, "a tap must be an object.");
        }
        String role = Asked.text(tap, "role", 20);
        if (!ROLES.contains(role)) {
            throw new Refused(400, "role must be one of " + String.join(", ", ROLES) + ".");
        }
        return new FlyingDay.Offer(
                TapJson.tap(tap),
                role,
                Instant.parse(Asked.text(tap, "sentAt", 40)),
                tap.path("anyway").asBoolean(false));
    }

    private void table(Call call) throws IOException {
        FlyingDay day = day(call);
        call.saveAs(day.job().id() + "-taps.csv");
        call.answer("text/csv; charset=utf-8", day.tapsTable());
    }

    /** Read anew from the disk, so that what is checked is what is kept. */
    private void log(Call call) throws IOException {
        List<KeptTap> rows = day(call).job().kept().listTaps();
        Optional<KeptTap> broken = KeptTap.findBroken(rows);
        ObjectNode node = Json.object();
        node.put("rows", rows.size());
        node.put("hash", rows.isEmpty() ? KeptTap.NO_HASH : rows.get(rows.size() - 1).hash());
        node.put("whole", broken.isEmpty());
        node.put("brokenAt", broken.map(KeptTap::number).orElse(null));
        node.set("taps", Json.array(rows, TapJson::row));
        call.answer(node);
    }

    private void flown(Call call) throws IOException {
        call.answer(
                day(call)
                        .findBesidePlan()
                        .map(FlownJson::of)
                        .orElseThrow(() -> new Refused(404, "The job has not been planned yet.")));
    }

    private void evening(Call call) throws IOException {
        FlyingDay day = day(call);
        Content paper =
                day.findEveningPaper()
                        .orElseThrow(() -> new Refused(404, "The job has not been planned yet."));
        call.saveAs(day.job().id() + "-evening.pdf");
        call.answer("application/pdf", paper);
    }

    private void places(Call call) throws IOException {
        FlyingDay day = day(call);
        Look look =
                day.findLook()
                        .orElseThrow(() -> new Refused(404, "The job has not been planned yet."));
        FlownDay flown = day.flown();
        Job job = look.job().job();
        long lateS = DayJson.lateS(look, flown);
        ObjectNode node = Json.object();
        ArrayNode places = node.putArray("places");
        for (Place place : job.places()) {
            PlaceLook seen = PlaceLook.of(job, look.plan().plan(), place.id(), flown);
            ObjectNode sheet = PlaceJson.of(seen, look, lateS);
            sheet.set("told", Json.texts(day.unplanned(place.id(), flown)));
            places.add(sheet);
        }
        call.answer(node);
    }

    private void emergency(Call call) throws IOException {
        FlyingDay day = day(call);
        Instant now = day.job().now();
        ObjectNode node = Json.object().put("now", now.toString());
        node.set("sheets", Json.array(day.emergencySheets(day.flown(), now), EmergencyJson::of));
        call.answer(node);
    }

    private void order(Call call) throws IOException {
        FlyingDay day = day(call);
        JsonNode asked = call.json();
        boolean heavier = asked.path("heavier").asBoolean(false);
        boolean first = asked.path("first").asBoolean(false);
        Patience patience = first ? Patience.FIRST : Patience.BETTER;
        call.answer(OrderJson.of(day.newOrder().propose(day.job().now(), heavier, patience)));
    }

    private void accept(Call call) throws IOException {
        FlyingDay day = day(call);
        day.newOrder().accept(Asked.text(call.json(), "plan"));
        call.answer(Json.object().put("plan", day.job().kept().listPlans().size()));
    }

    private void events(Call call) throws IOException {
        FlyingDay day = day(call);
        ObjectNode hello =
                Json.object().put("rows", day.rows().size()).put("now", day.job().now().toString());
        new EventStream(day.job().id()).run(desk.events(), hello, call.stream("text/event-stream"));
    }
}
