package underhook.web;

import tools.jackson.databind.node.ObjectNode;
import underhook.app.flying.EmergencySheet;
import underhook.app.port.EmergencyPlan;
import underhook.app.port.RescuePoint;
import underhook.app.port.Written;

/** An emergency sheet; what nobody stated is null or empty, and the page says that it is missing. */
final class EmergencyJson {
    private EmergencyJson() {}

    static ObjectNode of(EmergencySheet sheet) {
        ObjectNode node = Json.object();
        node.put("place", sheet.point().place().id().value());
        node.put("name", sheet.point().place().name());
        ObjectNode positions = node.putObject("positions");
        positions.put("degrees", sheet.point().positions().degrees());
        positions.put("minutes", sheet.point().positions().minutes());
        positions.put("grid", sheet.point().positions().grid().orElse(null));
        positions.put("system", sheet.point().positions().system());
        EmergencyPlan plan = sheet.plan();
        node.set(
                "calls",
                Json.array(
                        plan.calls(),
                        call ->
                                Json.object()
                                        .put("who", call.who())
                                        .put("number", call.number())
                                        .put("say", call.say())));
        node.set(
                "isolations",
                Json.array(
                        plan.isolations(),
                        one ->
                                Json.object()
                                        .put("line", one.line())
                                        .put("who", one.who())
                                        .put("number", one.number())
                                        .put("how", one.how())));
        node.set("wires", Json.array(sheet.point().wires(), EmergencyJson::wire));
        node.set("landing", sheet.point().landing().map(EmergencyJson::landing).orElse(null));
        node.set(
                "people",
                Json.array(
                        sheet.people(),
                        one ->
                                Json.object()
                                        .put("crew", one.crew().id().value())
                                        .put("people", one.crew().people())
                                        .put("untilAt", one.untilAt().toString())));
        node.set(
                "coming",
                Json.array(
                        sheet.coming(),
                        one ->
                                Json.object()
                                        .put("crew", one.crew().id().value())
                                        .put("people", one.crew().people())
                                        .put("from", one.from().value())
                                        .put("expectedAt", one.expectedAt().toString())));
        node.set("counted", sheet.counted().map(TapJson::tap).orElse(null));
        node.put("quietS", sheet.quietS().orElse(null));
        node.put("overdue", sheet.overdue());
        if (plan.overdueS().isPresent()) {
            node.put("overdueS", Written.nearest(plan.overdueS().getAsDouble(), 0));
        } else {
            node.putNull("overdueS");
        }
        return node;
    }

    private static ObjectNode wire(RescuePoint.NearWire near) {
        ObjectNode node = Json.object();
        node.put("id", near.wire().id());
        node.put("live", near.wire().live());
        node.put("kv", Written.nearest(near.wire().voltageV() / 1000, 1));
        node.put("distanceM", Written.down(near.distanceM(), 0));
        return node;
    }

    private static ObjectNode landing(RescuePoint.Landing landing) {
        return Json.object()
                .put("place", landing.place().id().value())
                .put("name", landing.place().name())
                .put("distanceM", Written.up(landing.distanceM(), 0))
                .put("stated", landing.stated());
    }
}
