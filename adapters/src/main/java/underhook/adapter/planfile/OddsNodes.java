package underhook.adapter.planfile;

import java.math.BigDecimal;
import java.time.ZoneId;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;
import underhook.app.port.Written;
import underhook.core.plan.Odds;
import underhook.core.unit.Units;

/** How safe the finish is, as it stands in plan.json. What a chance is at least is rounded down. */
final class OddsNodes {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** What was written and read again is not rounded down a second time. */
    private static final double DUST_PERCENT = 1e-9;

    private OddsNodes() {}

    static ObjectNode of(Odds odds, ZoneId zone) {
        ObjectNode node = NODES.objectNode();
        node.put("replays", odds.replays());
        node.put("learnedSamples", odds.learnedSamples());
        node.set("allInTime", chance(odds.allInTime()));
        node.set("beforeWind", chance(odds.beforeWind()));
        node.set("beforeDark", chance(odds.beforeDark()));
        node.set("withinDuty", chance(odds.withinDuty()));
        node.set("withinFuel", chance(odds.withinFuel()));
        node.set("placed", placed(odds.placed(), zone));
        node.put("finishMedianAt", Written.time(odds.finishMedianAt(), zone));
        node.put("finishLateAt", Written.time(odds.finishLateAt(), zone));
        ArrayNode starts = node.putArray("lastStarts");
        for (Odds.LastStart start : odds.lastStarts()) {
            ObjectNode one = starts.addObject();
            one.put("load", start.load().value());
            one.put("place", start.place().value());
            one.put("plannedAt", Written.time(start.plannedAt(), zone));
            one.put("lastAt", Written.time(start.lastAt(), zone));
            one.set("inTime", chance(start.inTime()));
        }
        ArrayNode gains = node.putArray("gains");
        for (Odds.Gain gain : odds.gains()) {
            ObjectNode one = gains.addObject();
            one.put("what", gain.what());
            one.put("gainPercent", Written.nearest(100 * gain.gainFraction(), PlanWords.FINE));
            one.put("leastGainPercent", down(100 * gain.leastGainFraction()));
            one.put(
                    "finishEarlierMinutes",
                    Written.nearest(Units.sToMinutes(gain.finishEarlierS()), PlanWords.FINE));
        }
        return node;
    }

    private static ObjectNode placed(Odds.Placed placed, ZoneId zone) {
        ObjectNode node = NODES.objectNode();
        node.put("planned", placed.planned());
        node.put("halfOfDays", placed.halfDays());
        node.put("nineOfTenDays", placed.mostDays());
        ArrayNode loads = node.putArray("loads");
        for (Odds.InTime load : placed.loads()) {
            ObjectNode one = loads.addObject();
            one.put("load", load.load().value());
            one.put("place", load.place().value());
            one.put("plannedAt", Written.time(load.plannedAt(), zone));
            one.set("inTime", chance(load.chance()));
        }
        return node;
    }

    private static BigDecimal down(double value) {
        return Written.down(value + DUST_PERCENT, PlanWords.COARSE);
    }

    private static ObjectNode chance(Odds.Chance chance) {
        ObjectNode node = NODES.objectNode();
        node.put("countedPercent", Written.nearest(100 * chance.countedFraction(), PlanWords.FINE));
        node.put("leastPercent", down(100 * chance.leastFraction()));
        return node;
    }
}
