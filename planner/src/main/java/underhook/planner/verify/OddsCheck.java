package underhook.planner.verify;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import underhook.core.finding.FindingCode;
import underhook.core.job.LoadKind;
import underhook.core.job.Rules;
import underhook.core.job.WeatherHour;
import underhook.core.plan.Drop;
import underhook.core.plan.Odds;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/**
 * Whether what is said of the chances agrees with itself and with the plan. The replays themselves are drawn by
 * chance and are not drawn again.
 */
final class OddsCheck {
    /** Normal deviate that one draw in twenty lies beyond, on one side. @source WILSON-1927 */
    private static final double DEVIATE_FACTOR = 1.6448536;

    /** Chances are written to a thousandth of a percent. */
    private static final double WRITTEN_RATIO = 1e-5;

    private static final long MINUTE_S = 60;

    /** Two ways to compute a sunset, and what is kept back from it. */
    private static final long SUN_MINUTES = 3;

    private final Day day;
    private final Air air;

    OddsCheck(Day day) {
        this.day = day;
        this.air = new Air(day.job().weather());
    }

    void run() {
        day.plan().odds().ifPresent(this::check);
    }

    private void check(Odds odds) {
        List<Odds.Chance> parts =
                List.of(odds.beforeWind(), odds.beforeDark(), odds.withinDuty(), odds.withinFuel());
        demand(counts(odds.allInTime(), odds), "all in time", "is no count of the replays");
        parts.forEach(one -> demand(counts(one, odds), "odds", "are no counts of the replays"));
        double least = parts.stream().mapToDouble(Odds.Chance::countedFraction).min().orElse(0);
        double others = parts.stream().mapToDouble(one -> 1 - one.countedFraction()).sum();
        double all = odds.allInTime().countedFraction();
        demand(
                all <= least + WRITTEN_RATIO && all >= 1 - others - WRITTEN_RATIO,
                "all in time",
                "is not what its parts leave");
        demand(
                !odds.finishLateAt().isBefore(odds.finishMedianAt()),
                "odds",
                "put nine days of ten before the middle one");
        check(odds.placed(), odds);
        odds.lastStarts().forEach(one -> check(one, odds));
        Instant end = endAt();
        for (Rotation turn : day.plan().steps().stream().flatMap(this::ahead).toList()) {
            for (Drop drop : turn.drops()) {
                demand(
                        !surelyCloses(drop, end)
                                || odds.lastStarts().stream()
                                        .anyMatch(one -> one.load().equals(drop.load())),
                        drop.load().value(),
                        "stands up where the wind closes later, and no last start is told");
            }
        }
        for (Odds.Gain gain : odds.gains()) {
            demand(
                    gain.leastGainFraction() <= gain.gainFraction() + WRITTEN_RATIO
                            && isWhole(gain.gainFraction() * odds.replays(), odds)
                            && all + gain.gainFraction() <= 1 + WRITTEN_RATIO,
                    "gains",
                    "are no counts of the replays");
            demand(
                    Math.abs(gain.finishEarlierS()) <= day.job().rules().duty().longestS(),
                    "gains",
                    "are longer than a day");
        }
    }

    private void check(Odds.Placed placed, Odds odds) {
        demand(
                placed.planned() == day.drops().size(),
                "loads in time",
                "are not all that are set down");
        double all = odds.allInTime().countedFraction();
        double sum = 0;
        for (Odds.InTime one : placed.loads()) {
            String load = one.load().value();
            Drop drop = day.drops().get(one.load());
            demand(
                    drop != null
                            && drop.place().equals(one.place())
                            && Math.abs(Day.betweenS(drop.releasedAt(), one.plannedAt()))
                                    <= Tolerance.TIME_S,
                    load,
                    "is not set down where and when its chance says");
            demand(counts(one.chance(), odds), load, "lies in time by no count of the replays");
            // On a day on which all is in time each load is.
            demand(
                    one.chance().countedFraction() >= all - WRITTEN_RATIO,
                    load,
                    "lies in time less often than all do");
            sum += one.chance().countedFraction();
        }
        // Markov's inequality from below: so many days with so many loads leave at least this mean.
        demand(
                sum >= 0.9 * placed.mostDays() - WRITTEN_RATIO * Math.max(1, placed.planned())
                        && sum
                                >= 0.5 * placed.halfDays()
                                        - WRITTEN_RATIO * Math.max(1, placed.planned()),
                "loads in time",
                "are more than their chances allow");
    }

    private void check(Odds.LastStart stated, Odds odds) {
        String load = stated.load().value();
        demand(counts(stated.inTime(), odds), load, "is in time by no count of the replays");
        Drop drop = day.drops().get(stated.load());
        Rotation turn = day.rotations().get(stated.load());
        demand(
                drop != null && drop.place().equals(stated.place()),
                load,
                "is not set down where its last start is for");
        demand(
                turn != null
                        && Math.abs(Day.betweenS(turn.hookedAt(), stated.plannedAt()))
                                <= Tolerance.TIME_S,
                load,
                "is not hooked up when its last start says");
        demand(
                drop == null
                        || air.listRows(stated.lastAt()).stream()
                                .anyMatch(row -> isCalm(row, drop)),
                load,
                "has its last start when the wind is too strong, or nobody knows it");
    }

    private Stream<Rotation> ahead(Step step) {
        return day.isBegun(step) ? Stream.empty() : step.rotation().stream();
    }

    /** The end of duty or light, whichever is sooner, good to the minute. */
    private Instant endAt() {
        Rules.Duty duty = day.job().rules().duty();
        Instant dutyEnds = duty.from().plusSeconds((long) duty.longestS());
        return Daylight.from(duty.from(), day.job().origin())
                .map(light -> light.sunset().minusSeconds((long) duty.dayEndBeforeSunsetS()))
                .filter(dark -> dark.isBefore(dutyEnds))
                .orElse(dutyEnds);
    }

    /** A pole after which, and before the day's end, a row comes in which it could not be set. */
    private boolean surelyCloses(Drop drop, Instant end) {
        return day.kindOf(day.job().getLoad(drop.load())).standsUp()
                && day.job().weather().hours().stream()
                        .filter(row -> row.from().isAfter(drop.releasedAt().plusSeconds(MINUTE_S)))
                        .filter(
                                row ->
                                        row.from()
                                                .isBefore(end.minusSeconds(SUN_MINUTES * MINUTE_S)))
                        .anyMatch(row -> !isCalm(row, drop));
    }

    /** By the row itself or the one before it: the window closes with the one behind. */
    private boolean isCalm(WeatherHour row, Drop drop) {
        double exposure = day.job().getPlace(drop.place()).exposureFactor();
        LoadKind kind = day.kindOf(day.job().getLoad(drop.load()));
        return row.gustMPerS() * exposure
                        <= kind.windLimit().gustMPerS() + Tolerance.WIND_DUST_M_PER_S
                && row.windMPerS() * exposure
                        <= kind.windLimit().meanMPerS() + Tolerance.WIND_DUST_M_PER_S;
    }

    /** A whole number of the replays, and no more sure than so many replays can make it. */
    private static boolean counts(Odds.Chance chance, Odds odds) {
        double n = odds.replays();
        double p = chance.countedFraction();
        double z2 = DEVIATE_FACTOR * DEVIATE_FACTOR;
        double root = DEVIATE_FACTOR * Math.sqrt(p * (1 - p) / n + z2 / (4 * n * n));
        double lower = (p + z2 / (2 * n) - root) / (1 + z2 / n);
        return isWhole(p * n, odds)
                && Math.abs(chance.leastFraction() - Math.max(0, Math.min(p, lower)))
                        <= 2 * WRITTEN_RATIO;
    }

    private static boolean isWhole(double countRatio, Odds odds) {
        return Math.abs(countRatio - Math.rint(countRatio)) <= WRITTEN_RATIO * odds.replays();
    }

    private void demand(boolean holds, String subject, String what) {
        day.ledger()
                .demand(
                        holds,
                        FindingCode.STATED_WRONG,
                        subject,
                        () -> Told.of("plan", subject + " " + what + "."));
    }
}
