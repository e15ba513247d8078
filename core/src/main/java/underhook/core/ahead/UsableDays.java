package underhook.core.ahead;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import underhook.core.ahead.Answer.Mark;
import underhook.core.ahead.Answer.Point;
import underhook.core.ahead.Answer.Topic;
import underhook.core.ahead.HourArchive.Hour;
import underhook.core.crew.Daylight;
import underhook.core.job.Job;
import underhook.core.job.Place;
import underhook.core.job.WindLimit;

/**
 * How often the weather of the job's month let a day be flown in past years.
 *
 * <p>An hour is usable when it lies wholly in the light and every row of it keeps the strictest wind limit of the
 * job's loads at its most exposed place, and the least cloud base and visibility where they count. A day is usable
 * with enough usable hours together. An hour without a row, or without a figure that counts, is a gap, and a gap is
 * not usable. Days of one season are alike, so the interval counts seasons, not days.
 *
 * @source WILSON-1927 interval of a share, here with the seasons as its number
 */
final class UsableDays {
    /** Two-sided 95 %. */
    private static final double NORMAL_95_RATIO = 1.959964;

    private enum State {
        USABLE,
        LOST,
        GAP
    }

    /** A season's sums. Mutable. */
    private static final class Season {
        private int days;
        private int usableDays;
        private int emptyDays;
        private int hours;
        private int usableHours;
        private int gaps;
        private int byWind;
        private int byCloud;
        private int byVisibility;
    }

    private final Job job;
    private final HourArchive archive;
    private final WindLimit limit;
    private final double exposureFactor;
    private final Map<Instant, List<Hour>> byHour = new HashMap<>();

    private UsableDays(Job job, HourArchive archive) {
        this.job = job;
        this.archive = archive;
        this.limit = strictest(job);
        this.exposureFactor =
                job.loads().stream()
                        .flatMap(
                                load ->
                                        List.of(job.getPlace(load.from()), job.getPlace(load.to()))
                                                .stream())
                        .mapToDouble(Place::exposureFactor)
                        .max()
                        .orElse(1);
        for (Hour hour : archive.hours()) {
            byHour.computeIfAbsent(clockHour(hour.at()), at -> new ArrayList<>()).add(hour);
        }
    }

    static Answer of(Job job, HourArchive archive) {
        return new Answer(Topic.STANDBY, new UsableDays(job, archive).points());
    }

    private static WindLimit strictest(Job job) {
        double meanMPerS = Double.POSITIVE_INFINITY;
        double gustMPerS = Double.POSITIVE_INFINITY;
        double spreadMPerS = Double.POSITIVE_INFINITY;
        for (var load : job.loads()) {
            WindLimit one = job.getKind(load.kind()).windLimit();
            meanMPerS = Math.min(meanMPerS, one.meanMPerS());
            gustMPerS = Math.min(gustMPerS, one.gustMPerS());
            spreadMPerS = Math.min(spreadMPerS, one.spreadMPerS());
        }
        return new WindLimit(meanMPerS, gustMPerS, spreadMPerS);
    }

    /** Where a zone is off by half an hour its own clock counts. */
    private Instant clockHour(Instant at) {
        return at.atZone(job.zone()).truncatedTo(ChronoUnit.HOURS).toInstant();
    }

    private List<Point> points() {
        Map<Integer, Season> seasons = new TreeMap<>();
        archive.hours().stream()
                .map(hour -> hour.at().atZone(job.zone()).getYear())
                .distinct()
                .forEach(year -> seasons.put(year, season(year)));
        Season all = new Season();
        seasons.values().forEach(one -> add(one, all));
        List<Point> points = new ArrayList<>();
        String month = FirstFeasibility.month(job);
        if (all.days == 0) {
            points.add(
                    new Point(
                            Mark.NO,
                            month,
                            List.of("No day of the archive has a row in daylight.")));
            return points;
        }
        // A season of which no day is known stands behind nothing.
        int known = (int) seasons.values().stream().filter(one -> one.days > 0).count();
        points.add(new Point(Mark.LOOK, month, sayShares(all, known)));
        points.add(new Point(Mark.NOTED, "archive", sayArchive(all)));
        seasons.forEach(
                (year, one) ->
                        points.add(
                                new Point(
                                        Mark.NOTED,
                                        String.valueOf(year),
                                        List.of(
                                                "Usable days: "
                                                        + one.usableDays
                                                        + " of "
                                                        + one.days
                                                        + "."))));
        return points;
    }

    private List<String> sayShares(Season all, int seasons) {
        double dayRatio = (double) all.usableDays / all.days;
        List<String> said = new ArrayList<>();
        said.add(
                "Usable days, with at least "
                        + archive.needs().hoursTogether()
                        + " usable hours together: "
                        + (long) Math.floor(100 * dayRatio)
                        + " %, "
                        + all.usableDays
                        + " of "
                        + all.days
                        + " days in "
                        + seasons
                        + (seasons == 1 ? " season." : " seasons."));
        said.add(
                "With so many seasons the true share may be anything between "
                        + (long) Math.floor(100 * wilsonRatio(dayRatio, seasons, -1))
                        + " and "
                        + (long) Math.ceil(100 * wilsonRatio(dayRatio, seasons, 1))
                        + " % (95 in 100).");
        said.add(
                "Usable hours: "
                        + (long) Math.floor(100.0 * all.usableHours / all.hours)
                        + " % of "
                        + all.hours
                        + " hours of daylight.");
        int lost = all.hours - all.gaps - all.usableHours;
        if (lost > 0) {
            said.add(
                    "Of the lost hours wind stops "
                            + (long) Math.rint(100.0 * all.byWind / lost)
                            + " %, cloud "
                            + (long) Math.rint(100.0 * all.byCloud / lost)
                            + " %, visibility "
                            + (long) Math.rint(100.0 * all.byVisibility / lost)
                            + " %.");
        }
        if (all.usableDays > 0) {
            said.add(
                    "For each day of work reckon with "
                            + String.format(
                                    Locale.ROOT, "%.1f", Math.ceil(10 / dayRatio - 1e-9) / 10)
                            + " days there on the mean.");
        }
        return said;
    }

    private List<String> sayArchive(Season all) {
        List<String> said = new ArrayList<>();
        said.add("The archive is: " + archive.source() + ".");
        said.add(
                "Gaps: "
                        + all.gaps
                        + " hours of daylight, counted as not usable, and "
                        + all.emptyDays
                        + " whole days, not counted.");
        if (archive.needs().leastCloudBaseM().isEmpty()) {
            said.add("No least cloud base is stated: cloud is not counted.");
        }
        if (archive.needs().leastVisibilityM().isEmpty()) {
            said.add("No least visibility is stated: visibility is not counted.");
        }
        return said;
    }

    /**
     * End of the interval of a share.
     *
     * @param side -1 for the lower end, 1 for the upper
     */
    static double wilsonRatio(double shareRatio, int number, int side) {
        double zz = NORMAL_95_RATIO * NORMAL_95_RATIO;
        double half =
                NORMAL_95_RATIO
                        * Math.sqrt(
                                shareRatio * (1 - shareRatio) / number
                                        + zz / (4.0 * number * number));
        double end = (shareRatio + zz / (2 * number) + side * half) / (1 + zz / number);
        return Math.max(0, Math.min(1, end));
    }

    private static void add(Season one, Season all) {
        all.days += one.days;
        all.usableDays += one.usableDays;
        all.emptyDays += one.emptyDays;
        all.hours += one.hours;
        all.usableHours += one.usableHours;
        all.gaps += one.gaps;
        all.byWind += one.byWind;
        all.byCloud += one.byCloud;
        all.byVisibility += one.byVisibility;
    }

    private Season season(int year) {
        Season season = new Season();
        YearMonth month = YearMonth.of(year, job.date().getMonth());
        for (int day = 1; day <= month.lengthOfMonth(); day++) {
            countDay(month.atDay(day), season);
        }
        return season;
    }

    private void countDay(LocalDate day, Season season) {
        ZonedDateTime midnight = day.atStartOfDay(job.zone());
        Optional<Daylight> light = Daylight.find(job.origin(), midnight.toInstant());
        if (light.isEmpty()) {
            return;
        }
        Instant last =
                light.get()
                        .until()
                        .minusSeconds((long) Math.ceil(job.rules().duty().dayEndBeforeSunsetS()));
        Season today = new Season();
        boolean hasRow = false;
        int together = 0;
        int longest = 0;
        Instant end = day.plusDays(1).atStartOfDay(job.zone()).toInstant();
        for (Instant at = midnight.toInstant();
                at.isBefore(end);
                at = at.plus(Duration.ofHours(1))) {
            if (at.isBefore(light.get().from()) || at.plus(Duration.ofHours(1)).isAfter(last)) {
                together = 0;
                continue;
            }
            List<Hour> rows = byHour.getOrDefault(at, List.of());
            hasRow |= !rows.isEmpty();
            State state = state(rows, today);
            today.hours++;
            today.gaps += state == State.GAP ? 1 : 0;
            today.usableHours += state == State.USABLE ? 1 : 0;
            together = state == State.USABLE ? together + 1 : 0;
            longest = Math.max(longest, together);
        }
        if (!hasRow) {
            season.emptyDays++;
            return;
        }
        today.days = 1;
        today.usableDays = longest >= archive.needs().hoursTogether() ? 1 : 0;
        add(today, season);
    }

    private State state(List<Hour> rows, Season today) {
        if (rows.isEmpty() || !rows.stream().allMatch(this::isKnown)) {
            return State.GAP;
        }
        boolean wind = rows.stream().anyMatch(row -> !isWindWithin(row));
        boolean cloud =
                rows.stream()
                        .anyMatch(
                                row ->
                                        isBelow(
                                                row.cloudBaseM(),
                                                archive.needs().leastCloudBaseM()));
        boolean visibility =
                rows.stream()
                        .anyMatch(
                                row ->
                                        isBelow(
                                                row.visibilityM(),
                                                archive.needs().leastVisibilityM()));
        today.byWind += wind ? 1 : 0;
        today.byCloud += cloud ? 1 : 0;
        today.byVisibility += visibility ? 1 : 0;
        return wind || cloud || visibility ? State.LOST : State.USABLE;
    }

    private boolean isKnown(Hour row) {
        return (archive.needs().leastCloudBaseM().isEmpty() || row.cloudBaseM().isPresent())
                && (archive.needs().leastVisibilityM().isEmpty() || row.visibilityM().isPresent());
    }

    private static boolean isBelow(OptionalDouble valueM, OptionalDouble leastM) {
        return leastM.isPresent() && valueM.orElse(0) < leastM.getAsDouble();
    }

    private boolean isWindWithin(Hour row) {
        double tiny = 1e-9;
        return row.windMPerS() * exposureFactor <= limit.meanMPerS() + tiny
                && row.gustMPerS() * exposureFactor <= limit.gustMPerS() + tiny
                && (row.gustMPerS() - row.windMPerS()) * exposureFactor
                        <= limit.spreadMPerS() + tiny;
    }
}
