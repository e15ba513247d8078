package underhook.app.flying;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import underhook.app.desk.DayLooks.Look;
import underhook.app.flying.Stop.What;
import underhook.app.port.EmergencyPlan;
import underhook.core.crew.Daylight;
import underhook.core.flown.FlownDay;
import underhook.core.flown.Tap;
import underhook.core.flown.TapKind;
import underhook.core.job.Job;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.Machine;
import underhook.core.job.PlaceId;
import underhook.core.job.WeatherHour;
import underhook.core.job.WindLimit;
import underhook.core.plan.Drop;
import underhook.core.plan.Step;
import underhook.core.unit.Units;

/** What stops the flying, and when; the first is what stops it first. */
final class Stops {
    /** How far ahead the sun is looked for. @source PRACTICE a lift is long over by then */
    private static final Duration SUN_AHEAD = Duration.ofHours(2);

    private static final Duration SUN_STEP = Duration.ofMinutes(10);

    private static final List<Gauge> GAUGES =
            List.of(
                    new Gauge(What.WIND, "mean", WindLimit::meanMPerS, Blows::meanMPerS),
                    new Gauge(What.GUST, "gust", WindLimit::gustMPerS, Blows::gustMPerS),
                    new Gauge(
                            What.SPREAD,
                            "gust over mean",
                            WindLimit::spreadMPerS,
                            Blows::spreadMPerS));

    private final Look look;
    private final Job job;
    private final FlownDay flown;
    private final EmergencyPlan emergency;
    private final Instant now;

    private Stops(Look look, FlownDay flown, EmergencyPlan emergency, Instant now) {
        this.look = look;
        this.job = look.job().job();
        this.flown = flown;
        this.emergency = emergency;
        this.now = now;
    }

    /**
     * Everything that can stop a day: for the next lift, for those that wait after it, and for all.
     *
     * @return those with a time by their time, then those without, then those of which nothing is known
     */
    static List<Stop> of(Look look, FlownDay flown, Clock clock) {
        List<LiftState> lifts = LiftState.of(look.job().job(), look.plan().plan(), flown);
        Optional<LiftState> next = LiftState.next(lifts);
        Stops stops = new Stops(look, flown, clock.emergency(), clock.now());
        List<Stop> all = new ArrayList<>();
        all.add(stops.fuel());
        all.addAll(stops.wind(lifts, next));
        next.ifPresent(lift -> all.add(stops.waiting(lift, lifts)));
        all.addAll(stops.duty(lifts));
        next.ifPresent(lift -> all.add(stops.sun(lift)));
        all.add(stops.cloud());
        all.add(stops.dark());
        all.add(stops.curfew());
        all.add(stops.forecast());
        all.sort(
                Comparator.comparing((Stop stop) -> stop.at().orElse(Instant.MAX))
                        .thenComparing(stop -> !stop.known())
                        .thenComparing(Stop::what));
        return all;
    }

    /** Now, and what the job states for the worst case. */
    record Clock(Instant now, EmergencyPlan emergency) {}

    private Stop fuel() {
        Optional<FuelNow> found = FuelNow.find(flown, job.machine(), now);
        if (found.isEmpty()) {
            return Stop.unknown(What.FUEL, "nobody has tapped a fuel reading yet");
        }
        Machine machine = job.machine();
        FuelNow fuel = found.get();
        double reserveKg = machine.reserveS() * machine.burnKgPerS();
        double rate = Math.max(machine.burnKgPerS(), machine.hoverBurnKgPerS());
        long leftS = (long) Math.floor((fuel.leastKg() - reserveKg) / rate);
        String words =
                text(
                        "at least %.0f kg left of %.0f kg read at %s; the reserve is %.0f kg",
                        Math.floor(fuel.leastKg()),
                        fuel.readKg(),
                        clock(fuel.readAt()),
                        Math.ceil(reserveKg));
        return new EngineTime(flown, now).isRunning()
                ? Stop.at(What.FUEL, now.plusSeconds(Math.max(0, leftS)), words)
                : Stop.never(What.FUEL, words + "; the engine is off");
    }

    /** Of what hangs and the next lift, by each limit, whichever the wind closes first. */
    private List<Stop> wind(List<LiftState> lifts, Optional<LiftState> next) {
        List<Stop> first = new ArrayList<>();
        for (Gauge gauge : GAUGES) {
            Stream<Stop> hang =
                    lifts.stream()
                            .filter(lift -> lift.state() == LiftState.State.ON_HOOK)
                            .flatMap(lift -> hanging(lift, gauge).stream());
            Stream.concat(hang, next.map(lift -> wind(lift, gauge)).stream())
                    .min(Comparator.comparing(stop -> stop.at().orElse(Instant.MAX)))
                    .ifPresent(first::add);
        }
        return first;
    }

    /** Where what hangs is still to be set down, as long as that is expected to take. */
    private Optional<Stop> hanging(LiftState lift, Gauge gauge) {
        Set<LoadId> onHook = Set.copyOf(flown.now().onHook());
        var rotation = lift.lift().rotation();
        Instant hookedAt = lift.hookedAt().orElse(now);
        for (Drop drop : rotation.drops()) {
            if (!onHook.contains(drop.load())) {
                continue;
            }
            Instant down = hookedAt.plus(Duration.between(rotation.hookedAt(), drop.releasedAt()));
            Optional<Stop> closed =
                    closed(lift, gauge, List.of(drop.place()))
                            .filter(stop -> !stop.at().orElseThrow().isAfter(later(now, down)));
            if (closed.isPresent()) {
                return closed;
            }
        }
        return Optional.empty();
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    private record Gauge(
            What what,
            String words,
            ToDoubleFunction<WindLimit> limit,
            ToDoubleFunction<Blows> blows) {}

    private record Blows(double meanMPerS, double gustMPerS) {
        double spreadMPerS() {
            return gustMPerS - meanMPerS;
        }
    }

    private Stop wind(LiftState lift, Gauge gauge) {
        return closed(lift, gauge, ends(lift))
                .orElseGet(
                        () ->
                                Stop.never(
                                        gauge.what(),
                                        text(
                                                "stays under %.0f kt for lift %d as long as there is"
                                                        + " a forecast",
                                                Math.floor(kt(limit(lift, gauge)) + 1e-6),
                                                lift.lift().number())));
    }

    /** When the wind at one of these places is first too much for a lift, from now on. */
    private Optional<Stop> closed(LiftState lift, Gauge gauge, List<PlaceId> places) {
        double limit = limit(lift, gauge);
        for (Instant at : hoursFrom(now)) {
            for (PlaceId place : places) {
                Optional<Blows> blows = blows(place, at);
                if (blows.isPresent() && gauge.blows().applyAsDouble(blows.get()) > limit + 1e-9) {
                    return Optional.of(
                            Stop.at(
                                    gauge.what(),
                                    at,
                                    text(
                                            "%s at %s %.0f kt, most %.0f kt for lift %d",
                                            gauge.words(),
                                            place,
                                            Math.ceil(
                                                    kt(gauge.blows().applyAsDouble(blows.get()))
                                                            - 1e-6),
                                            Math.floor(kt(limit) + 1e-6),
                                            lift.lift().number())));
                }
            }
        }
        return Optional.empty();
    }

    private double limit(LiftState lift, Gauge gauge) {
        return lift.lift().rotation().loads().stream()
                .map(id -> job.getKind(job.getLoad(id).kind()))
                .map(LoadKind::windLimit)
                .mapToDouble(gauge.limit())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** Of the lifts after the next one that the wind closes first, as late as the day runs. */
    private Stop waiting(LiftState next, List<LiftState> lifts) {
        long lateS = Math.max(0, LiftState.lateS(lifts));
        return lifts.stream()
                .filter(lift -> lift.isAhead() && !lift.equals(next))
                .flatMap(lift -> findClosing(lift, lateS).stream())
                .min(Comparator.comparing(stop -> stop.at().orElse(Instant.MAX)))
                .orElse(
                        Stop.never(
                                What.WAITING,
                                "the wind of the forecast closes none of the lifts after this"));
    }

    /** When the wind closes a lift from the time on at which it is expected. */
    private Optional<Stop> findClosing(LiftState lift, long lateS) {
        var rotation = lift.lift().rotation();
        Instant due = rotation.hookedAt().plusSeconds(lateS);
        Instant expected = due.isAfter(now) ? due : now;
        List<Closed> all = new ArrayList<>();
        for (PlaceId place : ends(lift)) {
            // Away from there, or set down, before the wind is.
            Duration needs = Duration.between(rotation.hookedAt(), overAt(lift, place));
            Instant there = expected.plus(needs);
            for (Gauge gauge : GAUGES) {
                hoursFrom(there).stream()
                        .filter(at -> isClosed(lift, new Closed(gauge, place, at, at)))
                        .findFirst()
                        .ifPresent(at -> all.add(new Closed(gauge, place, at, at.minus(needs))));
            }
        }
        return all.stream()
                .min(Comparator.comparing(Closed::last))
                .map(closed -> closing(lift, expected, closed));
    }

    /**
     * Too much wind of one kind at a place.
     *
     * @param at from when on
     * @param last the latest hook-up with which that is no matter
     */
    private record Closed(Gauge gauge, PlaceId place, Instant at, Instant last) {}

    private boolean isClosed(LiftState lift, Closed one) {
        return forecast(one.place(), one.at())
                .filter(
                        wind ->
                                one.gauge().blows().applyAsDouble(wind)
                                        > limit(lift, one.gauge()) + 1e-9)
                .isPresent();
    }

    /** The hook-up at the place where it is hooked, the last release at another. */
    private static Instant overAt(LiftState lift, PlaceId place) {
        var rotation = lift.lift().rotation();
        return rotation.drops().stream()
                .filter(drop -> drop.place().equals(place))
                .map(Drop::releasedAt)
                .max(Instant::compareTo)
                .orElse(rotation.hookedAt());
    }

    private Stop closing(LiftState lift, Instant expected, Closed closed) {
        var rotation = lift.lift().rotation();
        String who =
                String.join(" + ", rotation.loads().stream().map(LoadId::value).toList())
                        + " to "
                        + String.join(
                                ", ",
                                rotation.drops().stream()
                                        .map(drop -> drop.place().value())
                                        .distinct()
                                        .toList());
        double blowsMPerS =
                closed.gauge().blows().applyAsDouble(forecast(closed.place(), closed.at()).get());
        String why =
                text(
                        "%s at %s %.0f kt from %s, most %.0f kt",
                        closed.gauge().words(),
                        closed.place(),
                        Math.ceil(kt(blowsMPerS) - 1e-6),
                        minute(closed.at()),
                        Math.floor(kt(limit(lift, closed.gauge())) + 1e-6));
        return !closed.last().isAfter(expected)
                ? Stop.at(
                        What.WAITING,
                        now,
                        text(
                                "%s is expected at %s, too late: %s; ask for a new order",
                                who, minute(expected), why))
                : Stop.at(
                        What.WAITING,
                        closed.last(),
                        text("%s, expected at %s: %s", who, minute(expected), why));
    }

    private Optional<Blows> forecast(PlaceId place, Instant at) {
        return look.day()
                .findAir(place, at)
                .map(one -> new Blows(one.windMPerS(), one.gustMPerS()));
    }

    /** A report counts for now alone; later hours are the forecast's. */
    private Optional<Blows> blows(PlaceId place, Instant at) {
        if (at.equals(now)) {
            return WindThere.find(look, flown, place, now)
                    .map(wind -> new Blows(wind.meanMPerS(), wind.gustMPerS()));
        }
        return forecast(place, at);
    }

    private static List<PlaceId> ends(LiftState lift) {
        return Stream.concat(
                        Stream.of(lift.step().hookedUpAt()),
                        lift.lift().rotation().drops().stream().map(Drop::place))
                .distinct()
                .toList();
    }

    private List<Instant> hoursFrom(Instant first) {
        return Stream.concat(
                        Stream.of(first),
                        job.weather().hours().stream()
                                .map(WeatherHour::from)
                                .filter(from -> from.isAfter(first)))
                .toList();
    }

    /** How long the engine was planned to have been on when a load is hooked or let go. */
    private Duration plannedBefore(Tap tap) {
        List<Step> steps = look.plan().plan().steps();
        Optional<Instant> first =
                steps.stream().filter(Step::engineRunning).map(Step::startAt).findFirst();
        Optional<Instant> then =
                steps.stream()
                        .flatMap(step -> step.rotation().stream())
                        .filter(turn -> tap.loads().stream().anyMatch(turn.loads()::contains))
                        .map(
                                turn ->
                                        tap.kind() == TapKind.HOOKED
                                                ? turn.hookedAt()
                                                : turn.drops().get(0).releasedAt())
                        .findFirst();
        return first.isPresent() && then.isPresent() && first.get().isBefore(then.get())
                ? Duration.between(first.get(), then.get())
                : Duration.ZERO;
    }

    private List<Stop> duty(List<LiftState> lifts) {
        EngineTime engine = new EngineTime(flown, now, this::plannedBefore);
        var rules = job.rules();
        Instant end = rules.duty().from().plusSeconds((long) rules.duty().longestS());
        long runS = (long) rules.duty().engineOnS() - engine.sinceBreakS(rules.duty().breakS());
        long dayS = (long) rules.duty().engineOnDayS() - engine.dayS();
        long leftS = Math.max(0, Math.min(runS, dayS));
        String words =
                runS <= dayS
                        ? text(
                                "%d min with the engine on since the last break, most %.0f",
                                engine.sinceBreakS(rules.duty().breakS()) / 60,
                                rules.duty().engineOnS() / 60)
                        : text(
                                "%d min with the engine on today, most %.0f",
                                engine.dayS() / 60, rules.duty().engineOnDayS() / 60);
        EngineUntold untold = EngineUntold.of(look.plan().plan().steps(), lifts, flown, now);
        if (untold.assumedS() > 0) {
            words +=
                    text(
                            "; %d min of the day were planned off and not tapped so, %d at once",
                            EngineUntold.minutes(untold.assumedS()),
                            EngineUntold.minutes(untold.longestS()));
        }
        return List.of(
                Stop.at(What.DUTY, end, "the pilot's duty began at " + clock(rules.duty().from())),
                engine.isRunning()
                        ? Stop.at(What.ENGINE, now.plusSeconds(leftS), words)
                        : Stop.never(What.ENGINE, words + "; it is off"));
    }

    private Stop sun(LiftState lift) {
        for (Drop drop : lift.lift().rotation().drops()) {
            double track = Units.wrapTwoPiRad(drop.approachFromTrueRad() + Math.PI);
            for (Instant at = now; !at.isAfter(now.plus(SUN_AHEAD)); at = at.plus(SUN_STEP)) {
                if (look.day().isSunAhead(drop.place(), at, track)) {
                    return Stop.at(
                            What.SUN,
                            at,
                            "the sun stands ahead on the way in to "
                                    + drop.place()
                                    + "; another way in, or cloud, may do");
                }
            }
        }
        return Stop.never(What.SUN, "not ahead on the way in within the next two hours");
    }

    private Stop cloud() {
        String said =
                job.weather().hours().stream()
                        .filter(hour -> hour.remarks().toLowerCase(Locale.ROOT).contains("cloud"))
                        .map(hour -> clock(hour.from()) + " " + hour.remarks())
                        .reduce((one, other) -> one + "; " + other)
                        .map(all -> "not a number in the forecast; it says: " + all)
                        .orElse("the forecast says nothing of it");
        return Stop.unknown(What.CLOUD, said);
    }

    private Stop dark() {
        var start = job.getPlace(job.machineStart()).position();
        double beforeS = job.rules().duty().dayEndBeforeSunsetS();
        return Daylight.find(start, job.rules().duty().from())
                .map(
                        light ->
                                Stop.at(
                                        What.DARK,
                                        light.until().minusSeconds((long) Math.ceil(beforeS)),
                                        text(
                                                "sunset at %s, the last landing %.0f min before",
                                                clock(light.until()), Math.ceil(beforeS / 60))))
                .orElse(Stop.at(What.DARK, now, "the sun does not come up"));
    }

    private Stop curfew() {
        return emergency
                .curfewAt()
                .map(at -> Stop.at(What.CURFEW, at, "as the job states"))
                .orElse(Stop.unknown(What.CURFEW, "the job states none"));
    }

    private Stop forecast() {
        String source = job.weather().source();
        return Stop.at(
                What.FORECAST,
                job.weather().until(),
                "no forecast beyond" + (source.isBlank() ? "" : ": " + source));
    }

    private String clock(Instant at) {
        return at.atZone(job.zone()).toLocalTime().withNano(0).toString();
    }

    private String minute(Instant at) {
        return clock(at.truncatedTo(ChronoUnit.MINUTES));
    }

    private static double kt(double speedMPerS) {
        return Units.mPerSToKt(speedMPerS);
    }

    private static String text(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
