package underhook.web;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.port.ClosedDay;
import underhook.app.port.ClosedDay.LiftLine;
import underhook.core.flown.MachineSums;
import underhook.core.plan.Summary;
import underhook.core.unit.Units;

/** A day as it was flown, beside its plan. */
final class FlownJson {
    private FlownJson() {}

    static ObjectNode of(ClosedDay day) {
        ZoneId zone = day.job().zone();
        ObjectNode node = Json.object();
        node.put("plan", day.plan().id());
        node.put("taps", day.flown().taps().size());
        putTime(node, "lastAt", day.flown().lastAt(), zone);
        node.set("planned", planned(day.plan().summary(), zone));
        node.set("flown", flown(day.flown().sums()));
        node.set("loads", Json.array(day.lifts(), line -> line(line, zone)));
        node.set("findings", Json.array(day.findings(), Json::finding));
        return node;
    }

    private static ObjectNode planned(Summary summary, ZoneId zone) {
        return Json.object()
                .put("lifts", summary.rotations())
                .put("flightMinutes", Units.sToMinutes(summary.flightS()))
                .put("refuels", summary.refuels())
                .put("finishAt", Json.time(summary.finishAt(), zone));
    }

    private static ObjectNode flown(MachineSums sums) {
        return Json.object()
                .put("lifts", sums.lifts())
                .put("flightMinutes", Units.sToMinutes(sums.flyingS()))
                .put("engineMinutes", Units.sToMinutes(sums.engineOnS()))
                .put("takeOffs", sums.takeOffs())
                .put("landings", sums.landings())
                .put("snags", sums.snags());
    }

    private static ObjectNode line(LiftLine line, ZoneId zone) {
        ObjectNode node =
                Json.object()
                        .put("load", line.load().value())
                        .put("kind", line.kind())
                        .put("from", line.from().value())
                        .put("to", line.to().value())
                        .put("told", line.told().name().toLowerCase(Locale.ROOT))
                        .put("isDone", line.isDone())
                        .put("left", line.whatIsLeft())
                        .put("aborted", line.isGivenUp());
        ArrayNode givenUp = node.putArray("givenUp");
        for (LiftLine.GivenUp one : line.givenUp()) {
            Json.putTenths(givenUp.addObject(), "readKg", one.readKg());
        }
        node.put("takenOver", line.takenOver());
        putTime(node, "plannedHookedAt", line.plannedHookedAt(), zone);
        putTime(node, "plannedDoneAt", line.plannedDoneAt(), zone);
        putTime(node, "hookedAt", line.hookedAt(), zone);
        putTime(node, "doneAt", line.doneAt(), zone);
        Json.putTenths(node, "listedKg", line.listedKg());
        Json.putTenths(node, "readKg", line.readKg());
        return node;
    }

    private static void putTime(ObjectNode node, String name, Optional<Instant> at, ZoneId zone) {
        node.put(name, at.map(one -> Json.time(one, zone)).orElse(null));
    }
}
