package underhook.adapter.paper;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Crew;
import underhook.core.job.CrewId;
import underhook.core.job.Job;
import underhook.core.job.MapFeature;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.Wire;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.PathPoint;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** What a step passes over, and in which minute. Minutes are cut, so a guard is never late. */
final class Crossings {
    private static final String NO_RELEASE = ", NO RELEASE HERE";
    private static final String NO_RELEASE_BRIEF = ", NO RELEASE";
    private static final String ASSUMED = "HEIGHT ASSUMED, look at it first";

    private Crossings() {}

    /** Each in full, and in the few words of the card. */
    record Told(String full, String brief) {}

    /** Crossings of a step; with the line off only wires and zones matter, and nothing can be let go. */
    static List<Told> list(Job job, Words words, Step step) {
        Map<String, List<String>> times = new LinkedHashMap<>();
        boolean off = step.lineLengthM() <= 0;
        for (Passing passing : passings(job, step)) {
            Leg leg = passing.leg();
            Passing told = new Passing(off ? withoutLine(job, leg) : leg, passing.start());
            collect(job, told, words, times);
        }
        return toLines(job, times).stream().map(told -> off ? withoutLoad(told) : told).toList();
    }

    /** What a step passes over, in which minutes and by which rule. */
    record Over(String feature, List<String> clocks, String rule) {
        Over {
            clocks = List.copyOf(clocks);
        }
    }

    /** Each thing and each of its rules apart, with the line on. */
    static List<Over> over(Job job, Words words, Step step) {
        Map<String, List<String>> times = new LinkedHashMap<>();
        passings(job, step).forEach(passing -> collect(job, passing, words, times));
        return times.entrySet().stream()
                .map(
                        one ->
                                new Over(
                                        one.getKey().substring(0, one.getKey().indexOf('\u0000')),
                                        one.getValue(),
                                        one.getKey().substring(one.getKey().indexOf('\u0000') + 1)))
                .toList();
    }

    /**
     * When each leg begins: one to where a load waits with the step, one with a load when it is hooked up, timed back
     * from its first release, all else behind the one before.
     */
    private static List<Passing> passings(Job job, Step step) {
        List<Passing> all = new ArrayList<>();
        Instant start = step.startAt();
        for (Leg leg : step.legs()) {
            all.add(new Passing(leg, start));
            start = start.plusMillis(millis(leg.durationS()));
        }
        step.rotation().ifPresent(rotation -> addPassings(job, step, rotation, all));
        return all;
    }

    private static void addPassings(Job job, Step step, Rotation rotation, List<Passing> all) {
        Instant start = step.startAt();
        boolean isHooked = false;
        for (Leg leg : rotation.legs()) {
            List<Drop> ends =
                    rotation.drops().stream()
                            .filter(drop -> drop.place().equals(leg.to()))
                            .filter(drop -> leg.carrying().contains(drop.load()))
                            .toList();
            if (!isHooked && !leg.carrying().isEmpty()) {
                isHooked = true;
                start = rotation.hookedAt();
            }
            if (!ends.isEmpty()) {
                Drop first = ends.get(0);
                double setDownS = job.getKind(job.getLoad(first.load()).kind()).setDownS();
                Instant timedBack =
                        first.releasedAt().minusMillis(millis(setDownS + leg.durationS()));
                start = timedBack.isAfter(start) ? timedBack : start;
            }
            all.add(new Passing(leg, start));
            start =
                    ends.isEmpty()
                            ? start.plusMillis(millis(leg.durationS()))
                            : ends.get(ends.size() - 1).releasedAt();
        }
    }

    private static Told withoutLoad(Told told) {
        return new Told(
                told.full().replace(NO_RELEASE, ""), told.brief().replace(NO_RELEASE_BRIEF, ""));
    }

    private static Leg withoutLine(Job job, Leg leg) {
        List<Leg.Crossing> kept =
                leg.crossings().stream()
                        .filter(
                                crossing ->
                                        job.features().stream()
                                                .noneMatch(
                                                        one -> one.id().equals(crossing.feature())))
                        .map(crossing -> new Leg.Crossing(crossing.feature(), crossing.at(), ""))
                        .toList();
        return leg.withoutLoad(kept);
    }

    private record Passing(Leg leg, Instant start) {}

    private static long millis(double durationS) {
        return (long) (durationS * 1000);
    }

    private static void collect(
            Job job, Passing passing, Words words, Map<String, List<String>> times) {
        for (Leg.Crossing crossing : passing.leg().crossings()) {
            double soonestS = soonestS(job, passing, words.plane(crossing.at()), words);
            String clock = words.clock(passing.start().plusMillis(millis(soonestS)));
            String assumed = assumed(passing.leg(), crossing.feature());
            boolean isBoth = !crossing.rule().isBlank() && !assumed.isEmpty();
            String rule = crossing.rule() + (isBoth ? "; " : "") + assumed;
            String key = crossing.feature() + '\u0000' + rule;
            List<String> clocks = times.computeIfAbsent(key, unused -> new ArrayList<>());
            if (!clocks.contains(clock)) {
                clocks.add(clock);
            }
        }
    }

    /** Of a wire whose height or sag nobody measured. */
    private static String assumed(Leg leg, String feature) {
        boolean assumed =
                leg.wires().stream()
                        .anyMatch(pass -> pass.wire().equals(feature) && pass.assumed());
        return assumed ? ASSUMED : "";
    }

    /**
     * Time from a leg's start to where its path passes nearest to a point, s, at its speed with all the tailwind that
     * the forecast has then: climbing at the start, descending and coming to rest at the end are left out, so that it
     * is there no sooner.
     */
    private static double soonestS(Job job, Passing passing, PlanePoint point, Words words) {
        Leg leg = passing.leg();
        List<PlanePoint> path =
                leg.path().stream().map(PathPoint::position).map(words::plane).toList();
        List<WeatherHour> rows = rows(job, passing);
        double exposure =
                Math.max(
                        job.getPlace(leg.from()).exposureFactor(),
                        job.getPlace(leg.to()).exposureFactor());
        double flownS = 0;
        double nearest = Double.POSITIVE_INFINITY;
        double atNearestS = 0;
        for (int i = 1; i < path.size(); i++) {
            PlanePoint a = path.get(i - 1);
            PlanePoint b = path.get(i);
            double length = a.distanceToM(b);
            double along = length > 0 ? project(a, b, point) : 0;
            PlanePoint foot =
                    new PlanePoint(
                            a.eastM() + along * (b.eastM() - a.eastM()),
                            a.northM() + along * (b.northM() - a.northM()));
            double trackTrueRad =
                    Math.atan2(b.eastM() - a.eastM(), b.northM() - a.northM())
                            + words.convergenceRad(a);
            double tailMPerS = exposure * mostTailMPerS(rows, trackTrueRad);
            double pieceS = length / (leg.speedMPerS() + tailMPerS);
            if (foot.distanceToM(point) < nearest) {
                nearest = foot.distanceToM(point);
                atNearestS = flownS + along * pieceS;
            }
            flownS += pieceS;
        }
        double share = flownS > 0 ? atNearestS / flownS : 0;
        return Math.min(atNearestS, leg.durationS() * share);
    }

    /** Rows of the weather that may hold while a leg is flown. */
    private static List<WeatherHour> rows(Job job, Passing passing) {
        Instant end = passing.start().plusMillis(millis(passing.leg().durationS()));
        List<WeatherHour> hours = job.weather().hours();
        int first = 0;
        int last = 0;
        for (int i = 1; i < hours.size(); i++) {
            first = hours.get(i).from().isAfter(passing.start()) ? first : i;
            last = hours.get(i).from().isAfter(end) ? last : i;
        }
        boolean next =
                job.weather().between() == Weather.Between.STRICTER && last + 1 < hours.size();
        return hours.subList(first, last + (next ? 2 : 1));
    }

    /** 0 where the wind is from ahead in all. */
    private static double mostTailMPerS(List<WeatherHour> rows, double trackTrueRad) {
        return rows.stream()
                .mapToDouble(
                        row -> -row.windMPerS() * Math.cos(row.windFromTrueRad() - trackTrueRad))
                .reduce(0, Math::max);
    }

    private static double project(PlanePoint a, PlanePoint b, PlanePoint point) {
        double east = b.eastM() - a.eastM();
        double north = b.northM() - a.northM();
        double along =
                ((point.eastM() - a.eastM()) * east + (point.northM() - a.northM()) * north)
                        / (east * east + north * north);
        return Math.max(0, Math.min(1, along));
    }

    /** What has the same kind, the same rule and the same minutes shares a line. */
    private static List<Told> toLines(Job job, Map<String, List<String>> times) {
        Map<Line, List<String>> lines = new LinkedHashMap<>();
        times.forEach(
                (key, clocks) -> {
                    String feature = key.substring(0, key.indexOf('\u0000'));
                    String rule = key.substring(key.indexOf('\u0000') + 1);
                    Line line = line(job, feature, String.join(", ", clocks), rule);
                    lines.computeIfAbsent(line, unused -> new ArrayList<>()).add(feature);
                });
        return lines.entrySet().stream()
                .map(
                        line -> {
                            String features = String.join(", ", line.getValue());
                            return new Told(
                                    line.getKey().text(features), line.getKey().brief(features));
                        })
                .toList();
    }

    private record Line(String clocks, String before, String behind, String rule) {
        /** Of a rule only its first words, and whether a height is assumed. */
        String brief(String features) {
            String first = rule.replace(ASSUMED, "").split("[:;,]", 2)[0].strip();
            return clocks
                    + " "
                    + features
                    + (before.startsWith("LIVE") ? " LIVE" : "")
                    + behind.replace(NO_RELEASE, NO_RELEASE_BRIEF)
                    + (first.isEmpty() ? "" : ", " + first)
                    + (rule.contains(ASSUMED) ? ", " + ASSUMED : "");
        }

        String text(String features) {
            return clocks
                    + " "
                    + before
                    + features
                    + behind
                    + (rule.isBlank() ? "." : ": " + sentence(rule));
        }
    }

    private static String sentence(String rule) {
        return rule.endsWith(".") ? rule : rule + ".";
    }

    private static Line line(Job job, String feature, String clocks, String rule) {
        for (Wire wire : job.wires()) {
            if (wire.id().equals(feature)) {
                String before = wire.live() ? "LIVE wire " : "wire ";
                return new Line(clocks, before, NO_RELEASE, rule);
            }
        }
        for (MapFeature one : job.features()) {
            if (one.id().equals(feature)) {
                String before = one.kind().name().toLowerCase(Locale.ROOT) + " ";
                return new Line(clocks, before, "", rule);
            }
        }
        boolean isZone = job.zones().stream().anyMatch(zone -> zone.id().equals(feature));
        return new Line(clocks, isZone ? "zone " : "", "", rule);
    }

    /** "C1: 3 people, 285 kg." */
    static String people(Job job, CrewId id) {
        for (Crew crew : job.crews()) {
            if (crew.id().equals(id)) {
                return crew.id()
                        + ": "
                        + crew.people()
                        + (crew.people() == 1 ? " person, " : " people, ")
                        + Words.up(crew.people() * crew.massEachKg())
                        + " kg.";
            }
        }
        return id + ".";
    }
}
