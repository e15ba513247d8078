package underhook.adapter.paper;

import java.util.stream.Collectors;
import underhook.core.plan.Odds;

/** How safe the finish is, in a few lines. Chances are rounded down. */
final class OddsWords {
    private final Odds odds;
    private final Words words;

    OddsWords(Odds odds, Words words) {
        this.odds = odds;
        this.words = words;
    }

    String text() {
        String starts =
                odds.lastStarts().stream()
                        .map(start -> start.load() + " " + words.clock(start.lastAt()))
                        .collect(Collectors.joining(", "));
        String most =
                odds.gains().stream()
                        .findFirst()
                        .map(gain -> " Most would help: " + gain.what() + ".")
                        .orElse("");
        return "Estimate from "
                + odds.replays()
                + " replayed days: in time on at least "
                + percent(odds.allInTime())
                + " of 100 (wind "
                + percent(odds.beforeWind())
                + ", dark "
                + percent(odds.beforeDark())
                + ", duty "
                + percent(odds.withinDuty())
                + ", fuel "
                + percent(odds.withinFuel())
                + "); of "
                + odds.placed().planned()
                + " loads, nine days of ten place "
                + odds.placed().mostDays()
                + " or more in time, half of them "
                + odds.placed().halfDays()
                + " or more; nine of ten end by "
                + words.clock(odds.finishLateAt())
                + "."
                + (starts.isEmpty() ? "" : " Last sensible hook-up: " + starts + ".")
                + most;
    }

    private static long percent(Odds.Chance chance) {
        return (long) Math.floor(100 * chance.leastFraction());
    }
}
