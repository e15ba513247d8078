package underhook.planner.order;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import underhook.core.aircraft.VortexRing;
import underhook.core.finding.Finding;
import underhook.core.geo.PlanePoint;
import underhook.core.job.Crew;
import underhook.core.job.LineItem;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.PlaceId;
import underhook.core.job.WindLimit;
import underhook.core.plan.CrewStay;
import underhook.core.plan.Drop;
import underhook.core.plan.LeftOut;
import underhook.core.plan.Leg;
import underhook.core.plan.Limit;
import underhook.core.plan.PathPoint;
import underhook.core.plan.PlaceRoom;
import underhook.core.plan.Plan;
import underhook.core.plan.PoleSetting;
import underhook.core.plan.RefusedComfort;
import underhook.core.plan.ReleaseLook;
import underhook.core.plan.Rotation;
import underhook.core.plan.Step;
import underhook.core.plan.StepKind;
import underhook.core.plan.Summary;
import underhook.core.unit.Units;
import underhook.core.wire.Flyer;
import underhook.planner.route.ClearLegs;
import underhook.planner.route.FlownLeg;
import underhook.planner.route.LegFinder;
import underhook.planner.route.NearWire;
import underhook.planner.route.WayIn;

/** Writes a built day down as a plan. */
final class PlanBuilder {
    /** What a limit is counted in, and where it is from. */
    private record Measure(String unit, String source) {}

    private static final Measure MACHINE_KG = new Measure("kg", "machine");
    private static final Measure PLACES_M = new Measure("m", "places");
    private static final Measure RULES_KT = new Measure("kt", "rules");

    private final DayModel model;
    private final List<Trip> trips;
    private final People people;
    private final DayState day;
    private final boolean cutShort;
    private final Optional<DayCosts> costs;
    private final List<RefusedComfort> comforts;
    private final List<Step> before;
    private final ReleaseFindings releases;

    /**
     * A day as built.
     *
     * @param cutShort whether the search for it was cut short
     * @param costs what it costs and is bounded by; none where that was not worked out
     * @param comforts what it refuses
     * @param before steps that were done before it; none in the morning
     */
    record Built(
            DayState day,
            boolean cutShort,
            Optional<DayCosts> costs,
            List<RefusedComfort> comforts,
            List<Step> before) {}

    PlanBuilder(DayModel model, TripMaker maker, People people, Built built) {
        this.model = model;
        this.trips = maker.trips();
        this.people = people;
        this.day = built.day();
        this.cutShort = built.cutShort();
        this.costs = built.costs();
        this.comforts = built.comforts();
        this.before = built.before();
        this.releases = new ReleaseFindings(model.job);
    }

    Plan build(PlanSettings with, List<LeftOut> leftOut, List<Finding> findings) {
        List<Step> steps = new ArrayList<>(before);
        for (DayState.Event event : day.events()) {
            boolean idle = event.kind() == StepKind.WAIT || event.kind() == StepKind.BREAK;
            // The day begins with its first work.
            if (!idle || !steps.isEmpty()) {
                steps.add(step(event));
            }
        }
        Instant finishAt = steps.isEmpty() ? model.instant(0) : steps.get(steps.size() - 1).endAt();
        Summary summary =
                new Summary(
                        day.flightS() + flownS(before),
                        finishAt,
                        Summary.Counts.of(steps),
                        costs.map(DayCosts::bounds).orElse(Summary.Bounds.NONE),
                        cutShort,
                        costs.map(DayCosts::price),
                        costs.map(DayCosts::front).orElse(List.of()),
                        Optional.empty());
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(new WireFindings(model, findings).list(steps));
        all.addAll(releases.list());
        all.addAll(new Watchpoints(model).list(steps));
        Flights flights = Flights.of(model, trips, day);
        Poles poles = model.poles();
        List<PoleSetting> set = poles.list(flights);
        all.addAll(poles.findings(set));
        all.addAll(model.gear().kitFindings(flights, before));
        all.addAll(model.carriage().findings(flights));
        all.addAll(BalanceFindings.list(model.job, steps));
        return new Plan(
                with.planId(),
                model.job.name(),
                new Plan.Made(
                        with.plannedAt(), with.seed(), with.effort().seconds(), with.program()),
                summary,
                steps,
                crews(),
                leftOut,
                all,
                rooms(),
                set,
                model.gear().kit(flights, before),
                Optional.empty());
    }

    /** Time in the air of steps, s. */
    static double flownS(List<Step> steps) {
        return steps.stream()
                .filter(
                        step ->
                                step.kind() == StepKind.ROTATION
                                        || step.kind() == StepKind.POSITION
                                        || step.kind() == StepKind.CREW_MOVE)
                .mapToDouble(
                        step -> Duration.between(step.startAt(), step.endAt()).toMillis() / 1000.0)
                .sum();
    }

    /** At every place where a placed load is hooked up or set down, or was when the day was ordered anew. */
    private List<PlaceRoom> rooms() {
        List<Load> placed = new ArrayList<>();
        before.stream()
                .flatMap(step -> step.rotation().stream())
                .flatMap(turn -> turn.loads().stream())
                .map(model.job::getLoad)
                .forEach(placed::add);
        for (int k = 0; k < trips.size(); k++) {
            if (day.releasedS().get(k) >= 0) {
                trips.get(k).loads().stream()
                        .filter(load -> !placed.contains(load))
                        .forEach(placed::add);
            }
        }
        PlaceRooms rooms = model.placeRooms();
        return model.places.stream()
                .flatMap(place -> rooms.find(place.id(), placed).stream())
                .toList();
    }

    private Step step(DayState.Event event) {
        DayState.Flown flown = event.flown();
        List<Leg> legs = new ArrayList<>();
        if (flown == null) {
            for (DayLegs.LegAt leg : event.legs()) {
                double speed =
                        event.line() < 0
                                ? model.machine.cabinSpeedMPerS()
                                : emptyMPerS(event.line());
                legs.add(leg(leg, empty(event.line(), speed), event.from(), event.to()));
            }
        }
        return new Step(
                event.kind(),
                id(event.from()),
                id(event.to()),
                model.instant(event.startS()),
                model.instant(event.endS()),
                event.fuelStartKg(),
                event.fuelEndKg(),
                event.line() < 0 ? 0 : model.machine.lines().get(event.line()).lengthM(),
                event.engineOn(),
                flown == null ? Optional.empty() : Optional.of(rotation(event, flown)),
                event.team() < 0
                        ? Optional.empty()
                        : Optional.of(people.teams.get(event.team()).id()),
                legs,
                event.because());
    }

    private PlaceId id(int place) {
        return model.places.get(place).id();
    }

    private Rotation rotation(DayState.Event event, DayState.Flown flown) {
        Trip trip = trips.get(flown.trip());
        LineItem line = model.machine.lines().get(flown.line());
        List<Leg> legs = new ArrayList<>();
        for (DayLegs.LegAt before : flown.before()) {
            legs.add(
                    leg(
                            before,
                            empty(flown.line(), emptyMPerS(flown.line())),
                            flown.from(),
                            trip.from()));
        }
        Leg loaded = leg(flown.loaded(), loaded(flown.line(), trip), trip.from(), trip.to());
        Optional<ClearLegs.Seen> looked = model.legs().look(trip, flown);
        legs.add(
                looked.map(
                                seen -> {
                                    ClearLegs.Seen slow =
                                            seen.withLook(SlowLook.of(seen.look(), loaded));
                                    releases.add(loaded, trip, slow);
                                    return loaded.withRelease(slow.look());
                                })
                        .orElse(loaded));
        for (DayLegs.LegAt back : event.legs()) {
            legs.add(
                    leg(
                            back,
                            empty(flown.line(), emptyMPerS(flown.line())),
                            trip.to(),
                            event.to()));
        }
        double hoverKg = model.hoverMassKg(trip, flown.slotFrom(), flown.slotTo());
        List<Drop> drops = new ArrayList<>();
        double convergence = model.ground.frame().convergenceRad(model.points.get(trip.to()));
        double convergenceOut = convergence;
        WayIn out = event.legs().isEmpty() ? flown.loaded().wayIn() : event.legs().get(0).wayOut();
        double departure = out.departureTrackGridRad();
        List<String> reasons = reasons(flown, out);
        looked.ifPresent(seen -> reasons.add(lettingGo(legs.get(flown.before().size()), seen)));
        for (int i = 0; i < trip.loads().size(); i++) {
            drops.add(
                    new Drop(
                            trip.loads().get(i).id(),
                            id(trip.to()),
                            model.instant(flown.releasedS().get(i)),
                            Units.wrapTwoPiRad(
                                    flown.loaded().wayIn().approachFromGridRad() + convergence),
                            Units.wrapTwoPiRad(departure + convergenceOut),
                            flown.loaded().wayIn().headMPerS(),
                            flown.loaded().wayIn().crossMPerS(),
                            reasons));
        }
        return new Rotation(
                trip.ids(),
                model.instant(flown.hookedS()),
                flown.fuelAtHookKg(),
                Math.ceil(trip.liftMassKg() + line.massKg()),
                hoverKg,
                model.fuelMaxKg(trip, flown.line(), flown.slotFrom(), flown.slotTo()),
                trip.ballastKg(),
                drops,
                legs,
                limits(trip, flown, line, hoverKg));
    }

    /** Why these ways: in to the place, out of it, and in one sentence out of where the load waited. */
    private List<String> reasons(DayState.Flown flown, WayIn out) {
        List<String> all = new ArrayList<>(flown.loaded().wayIn().reasons());
        List<String> first = flown.loaded().wayOut().outReasons();
        if (!first.isEmpty()) {
            all.add(id(trips.get(flown.trip()).from()) + ": out on " + first.get(0));
        }
        for (int i = 0; i < out.outReasons().size(); i++) {
            all.add((i == 0 ? "way out: " : "way out, ") + out.outReasons().get(i));
        }
        tailwindOut(out, flown).ifPresent(all::add);
        passedOver(flown).ifPresent(all::add);
        LoadId lifted = trips.get(flown.trip()).ids().get(0);
        all.addAll(Discomforts.words(comforts, lifted, model.rules.costs().currency()));
        return all;
    }

    /** The longest stretch without a spot to let go over, and the areas that are named for it. */
    private static String lettingGo(Leg loaded, ClearLegs.Seen seen) {
        double longestS = loaded.release().map(ReleaseLook::longestClosedS).orElse(0.0);
        TreeSet<String> below = new TreeSet<>();
        seen.look().stretches().stream()
                .filter(part -> part.use() == ReleaseLook.Use.NAMED)
                .forEach(part -> below.addAll(part.what()));
        TreeSet<String> near = new TreeSet<>(seen.near());
        near.removeAll(below);
        return "letting go on the way: "
                + (longestS > 0
                        ? "at most " + seconds(longestS) + " s on end without a spot for it"
                        : "a spot for it everywhere")
                + named("; agreed areas below: ", below)
                + named("; agreed areas near: ", near)
                + named("; would serve once agreed: ", new TreeSet<>(seen.candidates()));
    }

    private static String named(String how, Set<String> areas) {
        return areas.isEmpty() ? "" : how + String.join(", ", areas);
    }

    /** What the way with the load pays for what it passes over; empty where that is nothing. */
    private Optional<String> passedOver(DayState.Flown flown) {
        List<String> each =
                model.legs().pricesS(flown.loaded()).entrySet().stream()
                        .filter(one -> Math.ceil(one.getValue() - 1e-6) >= 1)
                        .map(one -> one.getKey() + " " + seconds(one.getValue()) + " s")
                        .toList();
        return each.isEmpty()
                ? Optional.empty()
                : Optional.of("on the way what is passed over counts: " + String.join(", ", each));
    }

    private static String seconds(double timeS) {
        return Figures.text(Math.ceil(timeS - 1e-6), 0);
    }

    /** What a way out with tailwind costs; empty when there is none worth a word. */
    private Optional<String> tailwindOut(WayIn out, DayState.Flown flown) {
        double tailKt = Math.ceil(Units.mPerSToKt(out.outTailMPerS()) - 1e-6);
        if (tailKt < 1) {
            return Optional.empty();
        }
        Trip trip = trips.get(flown.trip());
        // The load is gone; the fuel is what it was at the hook-up, which errs heavy.
        double massKg =
                model.operatingMassKg()
                        + model.machine.lines().get(flown.line()).massKg()
                        + trip.ballastKg()
                        + flown.fuelAtHookKg()
                        + model.machine.fuelGaugeSpreadKg();
        double spareKg = Math.floor(model.air().hoverMassKg(trip.to(), flown.slotTo()) - massKg);
        double liftKt = Units.mPerSToKt(VortexRing.TRAINING_AIRSPEED_M_PER_S);
        return Optional.of(
                "way out: tailwind "
                        + Figures.text(tailKt, 0)
                        + " kt, no credit for wind; hover power until about "
                        + Figures.text(Math.ceil(liftKt + tailKt - 1e-6), 0)
                        + " kt of ground speed, "
                        + Figures.text(spareKg, 0)
                        + " kg to spare");
    }

    private List<Limit> limits(Trip trip, DayState.Flown flown, LineItem line, double hoverKg) {
        List<Limit> all = new ArrayList<>();
        double readKg = flown.fuelAtHookKg() + model.machine.fuelGaugeSpreadKg();
        double grossKg = model.operatingMassKg() + line.massKg() + trip.needMassKg() + readKg;
        String table = model.machine.hover().source();
        all.add(limit("HOVER_MASS", Math.ceil(grossKg), hoverKg, new Measure("kg", table)));
        all.add(
                limit(
                        "EXTERNAL_MASS_LIMIT",
                        Math.ceil(
                                model.operatingMassKg()
                                        + line.massKg()
                                        + trip.liftMassKg()
                                        + readKg),
                        model.machine.maxExternalMassKg(),
                        MACHINE_KG));
        all.add(
                limit(
                        "HOOK_LIMIT",
                        trip.liftMassKg() + line.massKg(),
                        model.machine.hookLimitKg(),
                        MACHINE_KG));
        all.add(limit("LINE_LIMIT", trip.liftMassKg(), line.limitKg(), MACHINE_KG));
        // Of fuel, and where less than a full tank keeps the balance alone.
        double balancedKg = model.balancedFuel().withLoadKg(trip.liftMassKg() + line.massKg());
        if (balancedKg > 0 && balancedKg < Math.floor(model.machine.fuelUsableKg())) {
            all.add(limit("BALANCE_FUEL", Math.ceil(readKg), balancedKg, MACHINE_KG));
        }
        all.add(
                lineLength(
                        trip.from(),
                        flown.loaded().wayOut().departureTrackGridRad(),
                        line.lengthM()));
        all.add(
                lineLength(
                        trip.to(),
                        flown.loaded().wayIn().approachFromGridRad() + Math.PI,
                        model.lengthAtDropM(trip, flown.line())));
        addWind(all, trip, trip.from(), List.of(model.air().slots.get(flown.slotFrom())));
        int slotComes = model.air().slotComes(trip.setDownS(), flown.slotFrom(), flown.slotTo());
        addWind(all, trip, trip.to(), model.air().slots.subList(slotComes, flown.slotTo() + 1));
        all.addAll(model.carriage().limits(trip, flown.line()));
        model.gear().findLimit(trip, line).ifPresent(all::add);
        return withGoverning(all);
    }

    /** What a place asks of the line on a heading, and what hangs there. */
    private Limit lineLength(int place, double headingGridRad, double lengthM) {
        double needM = model.lineNeedM(place, headingGridRad);
        double upM = Math.ceil(needM * 10 - 1e-6) / 10;
        // A length in feet is no tenth of a metre: rounding alone must not say that it is too
        // short.
        double saidM = needM <= lengthM ? Math.min(upM, lengthM) : upM;
        return limit("LINE_LENGTH at " + id(place), saidM, lengthM, PLACES_M);
    }

    /** The strongest wind of these hours at a place, against the least that any load on the hook allows. */
    private void addWind(List<Limit> all, Trip trip, int place, List<DayAir.Slot> air) {
        double exposure = model.places.get(place).exposureFactor();
        all.add(
                wind(
                        "WIND_MEAN at " + id(place),
                        exposure * mostMPerS(air, DayAir.Slot::windMPerS),
                        leastMPerS(trip, WindLimit::meanMPerS)));
        all.add(
                wind(
                        "WIND_GUST at " + id(place),
                        exposure * mostMPerS(air, DayAir.Slot::gustMPerS),
                        leastMPerS(trip, WindLimit::gustMPerS)));
        all.add(
                wind(
                        "WIND_SPREAD at " + id(place),
                        exposure * mostMPerS(air, DayAir.Slot::spreadMPerS),
                        leastMPerS(trip, WindLimit::spreadMPerS)));
    }

    private static double mostMPerS(List<DayAir.Slot> air, ToDoubleFunction<DayAir.Slot> ofMPerS) {
        return air.stream().mapToDouble(ofMPerS).max().orElseThrow();
    }

    private static double leastMPerS(Trip trip, ToDoubleFunction<WindLimit> ofMPerS) {
        return trip.kinds().stream()
                .mapToDouble(kind -> ofMPerS.applyAsDouble(kind.windLimit()))
                .min()
                .orElseThrow();
    }

    private static Limit wind(String code, double windMPerS, double limitMPerS) {
        return limit(code, Units.mPerSToKt(windMPerS), Units.mPerSToKt(limitMPerS), RULES_KT);
    }

    private static Limit limit(String code, double value, double limit, Measure measure) {
        double marginPercent = Math.floor((limit - value) / limit * 1000 + 1e-6) / 10;
        return new Limit(
                code, value, limit, measure.unit(), marginPercent, measure.source(), false);
    }

    private static List<Limit> withGoverning(List<Limit> all) {
        int least = 0;
        for (int i = 1; i < all.size(); i++) {
            if (all.get(i).marginPercent() < all.get(least).marginPercent()) {
                least = i;
            }
        }
        List<Limit> marked = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Limit one = all.get(i);
            marked.add(
                    new Limit(
                            one.code(),
                            one.value(),
                            one.limit(),
                            one.unit(),
                            one.marginPercent(),
                            one.source(),
                            i == least));
        }
        return marked;
    }

    /** What is flown on a leg, how fast, and how it reaches about the hook. */
    private record Flies(
            List<LoadId> carrying, double speedMPerS, Flyer flyer, Optional<Leg.Slowing> slowing) {}

    private double emptyMPerS(int line) {
        return model.carriage().ofEmpty(line).speedMPerS();
    }

    private Flies empty(int line, double speedMPerS) {
        double lineM = line < 0 ? 0 : model.machine.lines().get(line).lengthM();
        return new Flies(
                List.of(),
                speedMPerS,
                new Flyer(lineM, 0, LegFinder.machineReachM(model.machine)),
                line < 0
                        ? Optional.empty()
                        : Optional.of(model.carriage().ofEmpty(line).slowing()));
    }

    private Flies loaded(int line, Trip trip) {
        double radiusM = 0;
        for (int i = 0; i < trip.loads().size(); i++) {
            Load load = trip.loads().get(i);
            double lengthM = trip.kinds().get(i).standsUp() ? load.heightM() : load.lengthM();
            radiusM = Math.max(radiusM, Math.hypot(lengthM, load.widthM()) / 2);
        }
        double underM = model.machine.lines().get(line).lengthM() + trip.underM();
        return new Flies(
                trip.ids(),
                model.carriage().of(trip, line).speedMPerS(),
                new Flyer(underM, radiusM, LegFinder.machineReachM(model.machine)),
                Optional.of(model.carriage().of(trip, line).slowing()));
    }

    /** Told once: what hangs on a leg, and where it leads, is the leg's own. */
    private Leg leg(DayLegs.LegAt at, Flies flies, int from, int to) {
        return model.legs().told(at, () -> write(at, flies, from, to));
    }

    private Leg write(DayLegs.LegAt at, Flies flies, int from, int to) {
        FlownLeg flown = at.leg();
        List<PathPoint> path = new ArrayList<>();
        for (int i = 0; i < flown.points().size(); i++) {
            PlanePoint point = flown.points().get(i);
            path.add(new PathPoint(model.ground.frame().toGeo(point), flown.hookAmslM().get(i)));
        }
        return new Leg(
                flies.carrying(),
                id(from),
                id(to),
                path,
                flown.distanceM(),
                at.durationS(),
                model.legs().boundS(at),
                Math.floor(flown.leastClearanceM()),
                flies.speedMPerS(),
                flown.crossings().stream()
                        .map(
                                one ->
                                        new Leg.Crossing(
                                                one.feature(),
                                                model.ground.frame().toGeo(one.at()),
                                                flies.slowing().isPresent()
                                                        ? one.rule()
                                                        : withoutLoad(one.rule())))
                        .toList(),
                model.finder().listNearWires(flown, flies.flyer()).stream()
                        .map(this::pass)
                        .toList(),
                new Leg.Looks(Optional.empty(), flies.slowing(), model.legs().exposure(at)));
    }

    /** With the line off nothing hangs there that people keep from, or that could be let go. */
    private static String withoutLoad(String rule) {
        return rule.replace("; no release here", "")
                .replace("guarded: nobody under the load while it passes", "passed over, line off");
    }

    /** Tenths of a metre: distances down, needs up. */
    private Leg.WirePass pass(NearWire near) {
        return new Leg.WirePass(
                near.wire(),
                Math.floor(near.leastM() * 10) / 10,
                Math.ceil(near.needM() * 10 - 1e-6) / 10,
                model.ground.frame().toGeo(near.at()),
                near.aboveM().isPresent()
                        ? OptionalDouble.of(Math.floor(near.aboveM().getAsDouble() * 10) / 10)
                        : OptionalDouble.empty(),
                near.assumed());
    }

    /** Until when a pole is guyed where a crew stays, s. */
    private long guyedUntilS(Crew crew) {
        long untilS = 0;
        for (int k = 0; k < trips.size(); k++) {
            Trip trip = trips.get(k);
            if (trip.standsUp()
                    && day.releasedS().get(k) >= 0
                    && id(trip.to()).equals(crew.start())) {
                untilS = Math.max(untilS, day.releasedS().get(k) + trip.busyAfterS());
            }
        }
        return untilS;
    }

    private List<CrewStay> crews() {
        List<CrewStay> all = new ArrayList<>();
        long endS = day.timeS();
        for (Crew crew : model.job.crews()) {
            int team = people.teams.indexOf(crew);
            if (team < 0) {
                all.addAll(people.lines(crew, model.instant(Math.max(endS, guyedUntilS(crew)))));
                continue;
            }
            for (DayState.Stay stay : day.stays()) {
                if (stay.team() == team) {
                    all.add(
                            new CrewStay(
                                    crew.id(),
                                    id(stay.place()),
                                    model.instant(stay.fromS()),
                                    model.instant(stay.toS()),
                                    stay.doing()));
                }
            }
            DayState.TeamEnd end = day.teams().get(team);
            long lastS = end.arrivedS();
            long untilS = Math.max(endS, end.freeS());
            if (untilS > lastS) {
                all.add(
                        new CrewStay(
                                crew.id(),
                                id(end.place()),
                                model.instant(lastS),
                                model.instant(untilS),
                                "works and waits"));
            }
        }
        return all;
    }
}
