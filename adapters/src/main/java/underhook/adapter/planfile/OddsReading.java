package underhook.adapter.planfile;

import java.util.List;
import java.util.function.Function;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.plan.Odds;
import underhook.core.unit.Units;

/** Reads how safe the finish is from plan.json. */
final class OddsReading {
    private OddsReading() {}

    static Odds of(ObjectFields fields) {
        int replays = fields.count("replays");
        if (replays < 1) {
            fields.refuse("replays", "1 or more");
        }
        return new Odds(
                Math.max(1, replays),
                fields.object("allInTime", OddsReading::chance),
                fields.object("beforeWind", OddsReading::chance),
                fields.object("beforeDark", OddsReading::chance),
                fields.object("withinDuty", OddsReading::chance),
                fields.object("withinFuel", OddsReading::chance),
                fields.object("placed", OddsReading::placed),
                fields.time("finishMedianAt"),
                fields.time("finishLateAt"),
                fields.objects("lastStarts", OddsReading::lastStart),
                fields.objects("gains", OddsReading::gain),
                fields.count("learnedSamples"));
    }

    private static Odds.Chance chance(ObjectFields fields) {
        double counted = fields.number("countedPercent") / 100;
        double least = fields.number("leastPercent") / 100;
        Function<String, Odds.Chance> refused =
                name -> {
                    fields.refuse(name, "least at most counted, both between 0 and 100");
                    return new Odds.Chance(0, 0);
                };
        if (!(counted >= 0 && counted <= 1)) {
            return refused.apply("countedPercent");
        }
        return least >= 0 && least <= counted
                ? new Odds.Chance(counted, least)
                : refused.apply("leastPercent");
    }

    private static Odds.Placed placed(ObjectFields fields) {
        int planned = fields.count("planned");
        int half = fields.count("halfOfDays");
        int most = fields.count("nineOfTenDays");
        List<Odds.InTime> loads = fields.objects("loads", OddsReading::inTime);
        if (most > half || half > planned || loads.size() != planned) {
            fields.refuse(
                    "planned",
                    "as many as loads, halfOfDays at most that, nineOfTenDays at most halfOfDays");
            return new Odds.Placed(0, 0, 0, List.of());
        }
        return new Odds.Placed(planned, half, most, loads);
    }

    private static Odds.InTime inTime(ObjectFields fields) {
        return new Odds.InTime(
                fields.id("load", LoadId::new),
                fields.id("place", PlaceId::new),
                fields.time("plannedAt"),
                fields.object("inTime", OddsReading::chance));
    }

    private static Odds.LastStart lastStart(ObjectFields fields) {
        return new Odds.LastStart(
                fields.id("load", LoadId::new),
                fields.id("place", PlaceId::new),
                fields.time("plannedAt"),
                fields.time("lastAt"),
                fields.object("inTime", OddsReading::chance));
    }

    private static Odds.Gain gain(ObjectFields fields) {
        return new Odds.Gain(
                fields.text("what"),
                fields.number("gainPercent") / 100,
                fields.number("leastGainPercent") / 100,
                Units.minutesToS(fields.number("finishEarlierMinutes")));
    }
}
