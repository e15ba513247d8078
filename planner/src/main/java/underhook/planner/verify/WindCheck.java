package underhook.planner.verify;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import underhook.core.finding.FindingCode;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Load;
import underhook.core.job.Place;
import underhook.core.job.PlaceId;
import underhook.core.job.Rules;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.plan.Drop;
import underhook.core.plan.Leg;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;

/** Wind at every hook-up and release, and along the last part of each way in. */
final class WindCheck {
    private final Day day;
    private final Rules rules;
    private final Air air;

    WindCheck(Day day) {
        this.day = day;
        this.rules = day.job().rules();
        this.air = new Air(day.job().weather());
    }

    void run() {
        for (Step step : day.plan().steps()) {
            step.rotation().ifPresent(this::check);
            // What is begun was stated by the forecast of then.
            if (!day.isBegun(step)) {
                step.rotation().ifPresent(turn -> turn.drops().forEach(this::checkStated));
            }
        }
        for (Flight flight : day.listFlights()) {
            checkForecast(flight);
        }
        List<Step> steps = day.plan().steps();
        for (int i = 0; i < steps.size(); i++) {
            boolean slung = steps.get(i).lineLengthM() > Tolerance.LENGTH_M;
            if (slung && !day.isBegun(steps.get(i))) {
                checkEmptyWays(steps.get(i), i + 1 < steps.size() ? steps.get(i + 1) : null);
            }
        }
    }

    /** The machine comes without a load in the wind of when it comes, and hovers so until the next one hangs. */
    private void checkEmptyWays(Step step, @Nullable Step next) {
        List<Leg> legs = Day.legsOf(step);
        Instant hooked =
                next == null || !next.startAt().equals(step.endAt())
                        ? step.endAt()
                        : next.rotation()
                                .filter(turn -> !turn.legs().isEmpty())
                                .filter(turn -> !turn.legs().get(0).carrying().isEmpty())
                                .map(Rotation::hookedAt)
                                .orElse(step.endAt());
        for (int i = 0; i < legs.size(); i++) {
            Leg leg = legs.get(i);
            boolean last = i + 1 == legs.size();
            if (!leg.carrying().isEmpty() || (!last && legs.get(i + 1).carrying().isEmpty())) {
                continue;
            }
            if (!last) {
                step.rotation()
                        .ifPresent(turn -> checkEmptyWay(leg, hookUpFrom(turn), turn.hookedAt()));
            } else {
                checkEmptyWay(leg, earliestIn(step, leg), hooked);
            }
        }
    }

    private Instant hookUpFrom(Rotation turn) {
        return turn.hookedAt().minusMillis(Math.round(day.hookUpS(turn) * 1000));
    }

    /** After the last release, or from the beginning, it flies the leg; what a step takes besides may come after. */
    private static Instant earliestIn(Step step, Leg leg) {
        Instant leaves =
                step.rotation()
                        .filter(turn -> !turn.drops().isEmpty())
                        .map(turn -> turn.drops().get(turn.drops().size() - 1).releasedAt())
                        .orElse(step.startAt());
        Instant comes = leaves.plusMillis((long) (leg.durationS() * 1000));
        return comes.isAfter(step.endAt()) ? step.endAt() : comes;
    }

    private void checkEmptyWay(Leg leg, Instant comes, Instant until) {
        List<PlanePoint> back =
                new ArrayList<>(leg.path().stream().map(p -> day.planeOf(p.position())).toList());
        Collections.reverse(back);
        PlanePoint far = Plane.walked(back, rules.flying().finalM());
        Place place = day.job().getPlace(leg.to());
        double track =
                Plane.bearingGridRad(far, back.get(0))
                        + Plane.convergenceRad(day.ground().frame(), place.position());
        Winds worst = worst(place, track, air.listRows(comes, until));
        String subject = leg.from() + "-" + leg.to();
        demandKept(worst.tailMPerS(), rules.flying().tailwindMPerS(), subject, "tailwind");
        demandKept(worst.crossMPerS(), rules.flying().crosswindMPerS(), subject, "crosswind");
    }

    private void demandKept(double windMPerS, double limitMPerS, String subject, String what) {
        day.ledger()
                .demand(
                        windMPerS <= limitMPerS + Tolerance.DRAWN_WIND_M_PER_S,
                        FindingCode.APPROACH_REFUSED,
                        subject,
                        () ->
                                Told.of(
                                                "rules",
                                                "The way in of the machine without a load has too much "
                                                        + what
                                                        + ".")
                                        .figures(windMPerS, limitMPerS, "m/s"));
    }

    /** Who is in the air comes down by known weather; what was begun when the day was ordered anew is flown. */
    private void checkForecast(Flight flight) {
        Weather weather = day.job().weather();
        Step step = flight.step();
        boolean covered =
                !step.startAt().isBefore(weather.hours().get(0).from())
                        && !step.endAt().isAfter(weather.until());
        day.ledger()
                .demand(
                        covered || day.isBegun(step),
                        FindingCode.WEATHER_MISSING,
                        flight.subject(),
                        () ->
                                Told.of(
                                        "weather",
                                        "It is flown when the forecast has not begun or is over."));
    }

    private void check(Rotation rotation) {
        List<Load> loads = day.loadsOf(rotation.loads());
        for (Load load : loads) {
            checkLimit(load, load.from(), air.listRows(rotation.hookedAt()));
        }
        for (int i = 0; i < rotation.drops().size(); i++) {
            Drop drop = rotation.drops().get(i);
            List<WeatherHour> over = day.rowsOver(rotation, i);
            for (Load load : loads.subList(i, loads.size())) {
                checkLimit(load, drop.place(), over);
            }
            checkWayIn(drop, over);
        }
    }

    private void checkLimit(Load load, PlaceId place, List<WeatherHour> rows) {
        double exposure = day.job().getPlace(place).exposureFactor();
        WindLimit limit = day.kindOf(load).windLimit();
        for (WeatherHour row : rows) {
            double mean = row.windMPerS() * exposure;
            double gust = row.gustMPerS() * exposure;
            double dust = Tolerance.WIND_DUST_M_PER_S;
            boolean calm =
                    mean <= limit.meanMPerS() + dust
                            && gust <= limit.gustMPerS() + dust
                            && gust - mean <= limit.spreadMPerS() + dust;
            day.ledger()
                    .demand(
                            calm,
                            FindingCode.WIND_LIMIT,
                            load.id().value(),
                            () ->
                                    Told.of(
                                                    "rules",
                                                    "The wind at "
                                                            + place
                                                            + " is too strong for "
                                                            + load.id()
                                                            + ".")
                                            .figures(gust, limit.gustMPerS(), "m/s"));
        }
    }

    /** Head and cross wind are stated as they are when it is let go. */
    private void checkStated(Drop drop) {
        double exposure = day.job().getPlace(drop.place()).exposureFactor();
        double track = drop.approachFromTrueRad() + Math.PI;
        double headMPerS = drop.headMPerS();
        double crossMPerS = drop.crossMPerS();
        boolean harmless = false;
        double leastHead = Double.POSITIVE_INFINITY;
        List<WeatherHour> rows = air.listRows(drop.releasedAt());
        for (WeatherHour row : rows) {
            double off = row.windFromTrueRad() - track;
            double head = row.windMPerS() * exposure * Math.cos(off);
            double cross = row.windMPerS() * exposure * Math.sin(off);
            harmless |=
                    headMPerS > head + Tolerance.WIND_M_PER_S
                            || Math.abs(crossMPerS) < Math.abs(cross) - Tolerance.WIND_M_PER_S;
            leastHead = Math.min(leastHead, head);
        }
        double least = leastHead;
        boolean stated = rows.isEmpty() || (!harmless && isOfSomeRow(drop, track, exposure));
        day.ledger()
                .demand(
                        stated,
                        FindingCode.WIND_ARITHMETIC,
                        drop.load().value(),
                        () ->
                                Told.of(
                                                "weather",
                                                "Head or cross wind of "
                                                        + drop.load()
                                                        + " is stated wrong.")
                                        .figures(headMPerS, least, "m/s"));
    }

    /** It comes in in the wind of when it comes, and hovers on that heading until it is let go. */
    private void checkWayIn(Drop drop, List<WeatherHour> rows) {
        Winds worst =
                worst(day.job().getPlace(drop.place()), drop.approachFromTrueRad() + Math.PI, rows);
        double tail = worst.tailMPerS();
        double side = worst.crossMPerS();
        String id = drop.load().value();
        day.ledger()
                .demand(
                        tail <= rules.flying().tailwindMPerS() + Tolerance.WIND_DUST_M_PER_S,
                        FindingCode.APPROACH_REFUSED,
                        id,
                        () ->
                                Told.of("rules", "The way in of " + id + " has too much tailwind.")
                                        .figures(tail, rules.flying().tailwindMPerS(), "m/s"));
        day.ledger()
                .demand(
                        side <= rules.flying().crosswindMPerS() + Tolerance.WIND_DUST_M_PER_S,
                        FindingCode.APPROACH_REFUSED,
                        id,
                        () ->
                                Told.of("rules", "The way in of " + id + " has too much crosswind.")
                                        .figures(side, rules.flying().crosswindMPerS(), "m/s"));
    }

    /** The most tail and cross wind of any row; 0 where there is none. */
    private record Winds(double tailMPerS, double crossMPerS) {}

    private static Winds worst(Place place, double trackTrueRad, List<WeatherHour> rows) {
        double tail = 0;
        double cross = 0;
        for (WeatherHour row : rows) {
            double speed = row.windMPerS() * place.exposureFactor();
            double off = row.windFromTrueRad() - trackTrueRad;
            tail = Math.max(tail, -speed * Math.cos(off));
            cross = Math.max(cross, speed * Math.abs(Math.sin(off)));
        }
        return new Winds(tail, cross);
    }

    /** Whether each figure is that of a row; where one row follows another, a moment belongs to the one or to both. */
    private boolean isOfSomeRow(Drop drop, double trackTrueRad, double exposureFactor) {
        List<WeatherHour> rows = new ArrayList<>(air.listRows(drop.releasedAt()));
        rows.addAll(air.listRows(drop.releasedAt().plusSeconds(1)));
        boolean head = false;
        boolean cross = false;
        for (WeatherHour row : rows) {
            double speed = row.windMPerS() * exposureFactor;
            double off = row.windFromTrueRad() - trackTrueRad;
            head |= Math.abs(speed * Math.cos(off) - drop.headMPerS()) <= Tolerance.WIND_M_PER_S;
            cross |= Math.abs(speed * Math.sin(off) - drop.crossMPerS()) <= Tolerance.WIND_M_PER_S;
        }
        return head && cross;
    }
}
