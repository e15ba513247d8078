package underhook.planner.order;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import underhook.core.air.Atmosphere;
import underhook.core.aircraft.CentreOfGravity;
import underhook.core.finding.Finding;
import underhook.core.finding.FindingCode;
import underhook.core.finding.Severity;
import underhook.core.job.Crew;
import underhook.core.job.Load;
import underhook.core.job.LoadId;
import underhook.core.job.LoadKind;
import underhook.core.job.MassStatus;
import underhook.core.job.Place;
import underhook.core.job.PlaceKind;
import underhook.core.job.Weather;
import underhook.core.job.WeatherHour;
import underhook.core.job.Zone;
import underhook.core.load.Trail;
import underhook.core.plan.LeftOut;
import underhook.core.pole.Guys;
import underhook.core.site.Rig;
import underhook.core.unit.Units;

/** Makes hook trips of a job's loads and says which loads cannot be flown, and why. */
final class TripMaker {
    private final DayModel model;
    private final Ceiling enough;
    private final int leastTrips;
    private final Settled settled;
    private final Waits waits;
    private final Map<LoadId, LeftOut> leftOut = new TreeMap<>();
    private final List<Finding> findings = new ArrayList<>();
    private final List<Trip> trips = new ArrayList<>();

    /**
     * @param enough when it is reached no further load is looked at
     * @param leastTrips made in any case, if there are as many
     */
    TripMaker(DayModel model, Ceiling enough, int leastTrips) {
        this(model, enough, leastTrips, Settled.NOTHING);
    }

    /**
     * @param settled what is flown hangs as it did, and what is off hangs nowhere
     */
    TripMaker(DayModel model, Settled settled) {
        this(model, new Ceiling(() -> false), 0, settled);
    }

    private TripMaker(DayModel model, Ceiling enough, int leastTrips, Settled settled) {
        this.model = model;
        this.enough = enough;
        this.leastTrips = leastTrips;
        this.settled = settled;
        this.waits = new Waits(model.job);
        make();
    }

    /** Says nothing to anybody. */
    private TripMaker(DayModel model) {
        this.model = model;
        this.enough = new Ceiling(() -> false);
        this.leastTrips = 0;
        this.settled = Settled.NOTHING;
        this.waits = new Waits(model.job);
    }

    /** One trip of these loads, whoever else flies them; nothing is said of it, and nothing asked of the day. */
    static Optional<Trip> unsaid(DayModel model, List<Load> loads) {
        return new TripMaker(model).trip(loads);
    }

    /** Whether some load was not looked at to the end. */
    boolean isCut() {
        return enough.cuts() > 0;
    }

    List<Trip> trips() {
        return List.copyOf(trips);
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    Map<LoadId, LeftOut> leftOut() {
        return leftOut;
    }

    private void make() {
        for (Load load : model.job.loads()) {
            checkAlone(load);
            if (settled.off().contains(load.id()) && !leftOut.containsKey(load.id())) {
                refuse(
                        load,
                        Finding.of(
                                FindingCode.NO_ROOM_IN_DAY,
                                Severity.STOP,
                                load.id().value(),
                                "rules",
                                "It was taken off the day."));
            }
        }
        Set<LoadId> taken = new HashSet<>();
        for (List<LoadId> hung : settled.flown()) {
            addFlown(hung.stream().map(model.job::getLoad).toList());
            taken.addAll(hung);
        }
        refuseAtLeftPlaces();
        for (Load load : model.job.loads()) {
            if (leftOut.containsKey(load.id()) || taken.contains(load.id())) {
                continue;
            }
            List<Load> together = partners(load, taken);
            together.forEach(one -> taken.add(one.id()));
            addTrip(together);
        }
        while (splitOne()) {
            // What was split off may be refused, and something wait for that.
        }
    }

    /** Where the last thing has left, nobody is there for another load with what it takes. */
    private void refuseAtLeftPlaces() {
        for (List<LoadId> hung : settled.flown()) {
            for (LoadId gone : hung) {
                Load last = model.job.getLoad(gone);
                for (Load load : model.job.loads()) {
                    boolean comes =
                            model.job.getKind(last.kind()).lastAtPlace()
                                    && load.to().equals(last.from())
                                    && !leftOut.containsKey(load.id())
                                    && !isFlown(load.id());
                    if (comes) {
                        refuse(
                                load,
                                Finding.of(
                                        FindingCode.ORDER_RULE,
                                        Severity.STOP,
                                        load.id().value(),
                                        "rules",
                                        gone
                                                + " has left "
                                                + last.from()
                                                + " as the last thing there; nothing is brought"
                                                + " there any more. If it is still worked there,"
                                                + " state its kind as not last at its place."));
                    }
                }
            }
        }
    }

    private boolean isFlown(LoadId load) {
        return settled.flown().stream().anyMatch(hung -> hung.contains(load));
    }

    /**
     * Takes a trip apart of which some loads wait in vain, or which waits for itself only because its loads hang
     * together; those that wait in vain stay behind. False when there is none.
     */
    private boolean splitOne() {
        for (Trip trip : trips) {
            List<Load> waiting = trip.loads().stream().filter(this::waitsForLeftOut).toList();
            boolean apart = trip.loads().size() > 1 && waitsForItself(trip);
            if (isFlown(trip.ids().get(0)) || (waiting.isEmpty() && !apart)) {
                continue;
            }
            trips.remove(trip);
            waiting.forEach(this::refuseWaiting);
            List<Load> rest =
                    trip.loads().stream().filter(load -> !waiting.contains(load)).toList();
            if (apart) {
                rest.forEach(load -> addTrip(List.of(load)));
            } else if (!rest.isEmpty()) {
                addTrip(rest);
            }
            return true;
        }
        return false;
    }

    private boolean waitsForLeftOut(Load load) {
        return load.after().stream().anyMatch(one -> leftOut.containsKey(one.load()));
    }

    private void refuseWaiting(Load load) {
        LeftOut out = waits.inVain(load.id(), before -> !leftOut.containsKey(before)).orElseThrow();
        refuse(
                load,
                Finding.of(out.code(), Severity.STOP, load.id().value(), "rules", out.message()));
    }

    private boolean waitsForItself(Trip trip) {
        Set<Trip> seen = new HashSet<>();
        Deque<Trip> open = new ArrayDeque<>(List.of(trip));
        while (!open.isEmpty()) {
            Trip one = open.remove();
            for (Trip before : trips) {
                if (isBefore(before, one) && seen.add(before)) {
                    open.add(before);
                }
            }
        }
        return seen.contains(trip);
    }

    private boolean isBefore(Trip first, Trip then) {
        return first.loads().stream()
                .anyMatch(one -> then.loads().stream().anyMatch(two -> waits.isBefore(one, two)));
    }

    private void addTrip(List<Load> loads) {
        Optional<Trip> trip = trip(loads);
        if (trip.isEmpty()) {
            addApart(loads);
            return;
        }
        Optional<Finding> stop =
                model.gear().findStop(trip.get()).or(() -> fitsSomewhen(trip.get()));
        if (stop.isEmpty()) {
            trips.add(trip.get());
        } else if (loads.size() > 1) {
            addApart(loads);
        } else {
            refuse(loads.get(0), stop.get());
        }
    }

    /** Whatever is known of it now, it was flown; a load that was is left out by nothing. */
    private void addFlown(List<Load> hung) {
        trips.add(
                trip(hung)
                        .orElseGet(
                                () ->
                                        trip(
                                                hung,
                                                new Flown(
                                                        model.rules.flying().leastSpeedMPerS(),
                                                        0))));
        hung.forEach(load -> leftOut.remove(load.id()));
    }

    private void addApart(List<Load> together) {
        if (together.size() > 1) {
            together.forEach(load -> addTrip(List.of(load)));
        }
    }

    /** Says why a load stays behind; false when somebody answers for flying it all the same. */
    private boolean refuse(Load load, Finding finding) {
        findings.add(finding);
        if (Waivers.isLifted(model.job, finding)) {
            return false;
        }
        leftOut.put(load.id(), new LeftOut(load.id(), finding.code(), finding.message()));
        return true;
    }

    /** What is wrong with a load by itself at any hour. */
    private void checkAlone(Load load) {
        String id = load.id().value();
        if (load.massStatus() == MassStatus.MISSING) {
            refuse(
                    load,
                    Finding.of(
                            FindingCode.MASS_MISSING,
                            Severity.STOP,
                            id,
                            "loads",
                            "No mass is stated. It stays behind until it is weighed."
                                    + (isPole(load) ? PoleMasses.band(load) : "")));
            return;
        }
        if (isPole(load)) {
            findings.addAll(PoleMasses.findings(load));
        }
        if (load.massStatus() == MassStatus.ESTIMATED) {
            findings.add(
                    new Finding(
                            FindingCode.MASS_ESTIMATED,
                            Severity.CAUTION,
                            id,
                            text(load.massKg().orElseThrow(), 1),
                            text(massKg(load), 0),
                            "kg",
                            "rules",
                            "The mass is estimated; planned with "
                                    + text(massKg(load), 0)
                                    + " kg for lift. Weigh it before it flies."));
        }
        for (Place end : List.of(model.job.getPlace(load.from()), model.job.getPlace(load.to()))) {
            if (!end.agreed()) {
                refuse(
                        load,
                        Finding.of(
                                FindingCode.PLACE_UNUSED,
                                Severity.STOP,
                                id,
                                "places",
                                end.id() + " is not agreed with its owner."));
                return;
            }
            if (!model.isKnown(model.place(end.id()))) {
                refuse(
                        load,
                        Finding.of(
                                FindingCode.OUTSIDE_TERRAIN,
                                Severity.STOP,
                                id,
                                "terrain",
                                end.id() + " lies outside the known terrain."));
                return;
            }
        }
        double lineKg =
                model.machine.lines().stream().mapToDouble(line -> line.massKg()).min().orElse(0);
        double onHookKg = Math.ceil(massKg(load)) + lineKg;
        if (onHookKg > model.machine.hookLimitKg()) {
            refuse(
                    load,
                    new Finding(
                            FindingCode.HOOK_LIMIT,
                            Severity.STOP,
                            id,
                            text(onHookKg, 0),
                            text(model.machine.hookLimitKg(), 0),
                            "kg",
                            "machine",
                            "With the lightest line "
                                    + text(onHookKg, 0)
                                    + " kg hang on the hook, which may carry "
                                    + text(model.machine.hookLimitKg(), 0)
                                    + (isPole(load)
                                            ? " kg. Perhaps a machine with a stronger hook."
                                            : " kg. Perhaps it can be split.")));
            return;
        }
        if (isPole(load) && hasNobodyToGuy(model.job.getPlace(load.to()))) {
            refuse(
                    load,
                    Finding.of(
                            FindingCode.NO_CREW,
                            Severity.STOP,
                            id,
                            "crews",
                            "It is stood up at "
                                    + load.to()
                                    + ", where no crew is sent and nobody stays to guy it. Perhaps"
                                    + " a crew that stays there, or a kind that lies."));
            return;
        }
        if (isPole(load)) {
            checkGuys(load);
        }
    }

    /** Teams are sent to sites alone. */
    private boolean hasNobodyToGuy(Place place) {
        return !isSite(place)
                && model.job.crews().stream()
                        .noneMatch(
                                crew ->
                                        crew.stays()
                                                && crew.start().equals(place.id())
                                                && crew.roles().contains(Crew.Role.GUY));
    }

    private boolean isPole(Load load) {
        return model.job.getKind(load.kind()).standsUp();
    }

    private void checkGuys(Load load) {
        Place place = model.job.getPlace(load.to());
        if (place.guyAzimuthsTrueRad().isEmpty()) {
            findings.add(
                    Finding.of(
                            FindingCode.GUY_GAP_WIDE,
                            Severity.CAUTION,
                            place.id().value(),
                            "places",
                            "No guys are planned for the pole " + load.id() + "."));
            return;
        }
        Guys guys = new Guys(place.guyAzimuthsTrueRad());
        findings.addAll(guys.findings(place.id().value()));
        if (!guys.holds()) {
            String proposal =
                    String.join(
                            ", ",
                            guys.proposeHolding().azimuthsTrueRad().stream()
                                    .map(azimuth -> text(Math.toDegrees(azimuth), 0) + "°")
                                    .toList());
            refuse(
                    load,
                    new Finding(
                            FindingCode.GUY_GAP,
                            Severity.STOP,
                            load.id().value(),
                            text(Math.toDegrees(guys.largestGapRad()), 0),
                            "180",
                            "°",
                            "places",
                            "The guys at "
                                    + place.id()
                                    + " leave a gap of "
                                    + text(Math.toDegrees(guys.largestGapRad()), 0)
                                    + "°; they do not hold the pole in every direction. Perhaps at "
                                    + proposal
                                    + " true."));
            return;
        }
        model.poles()
                .findStop(load, model.job.getKind(load.kind()))
                .ifPresent(stop -> refuse(load, stop));
    }

    /** Mass as planned for lift, kg. */
    double massKg(Load load) {
        return model.liftMassKg(load);
    }

    private List<Load> partners(Load load, Set<LoadId> taken) {
        List<Load> together = new ArrayList<>(List.of(load));
        LoadKind kind = model.job.getKind(load.kind());
        if (!kind.sharesHook() || kind.standsUp() || settled.alone().contains(load.id())) {
            return together;
        }
        double sumKg = massKg(load);
        for (Load other : model.job.loads()) {
            boolean listed = together.stream().allMatch(one -> isListed(one, other));
            LoadKind otherKind = model.job.getKind(other.kind());
            boolean fits =
                    listed
                            && !other.id().equals(load.id())
                            && !taken.contains(other.id())
                            && !settled.alone().contains(other.id())
                            && together.stream().noneMatch(one -> isOrdered(one, other))
                            && !leftOut.containsKey(other.id())
                            && otherKind.sharesHook()
                            && !otherKind.standsUp()
                            && other.from().equals(load.from())
                            && other.to().equals(load.to())
                            && sumKg + massKg(other) <= model.rules.masses().combineMassKg();
            if (fits) {
                together.add(other);
                sumKg += massKg(other);
            }
        }
        return together;
    }

    /** Whether one of two loads names the other as one that it may hang with. */
    static boolean isListed(Load one, Load other) {
        return one.combineWith().contains(other.id()) || other.combineWith().contains(one.id());
    }

    private static boolean isOrdered(Load one, Load other) {
        return Waits.isListed(one, other) || Waits.isListed(other, one);
    }

    private Optional<Trip> trip(List<Load> loads) {
        List<LoadKind> kinds = loads.stream().map(load -> model.job.getKind(load.kind())).toList();
        double densest = densestKgPerM3(model);
        double speedMPerS = Double.POSITIVE_INFINITY;
        double ballastKg = 0;
        for (int i = 0; i < loads.size(); i++) {
            Load load = loads.get(i);
            LoadKind kind = kinds.get(i);
            double area = dragAreaM2(load, kind);
            // For how it flies the lighter value of an uncertain mass counts.
            double lightKg =
                    load.massKg().orElse(0)
                            / (load.massStatus() == MassStatus.ESTIMATED
                                    ? model.rules.masses().estimatedMassFactor()
                                    : 1);
            double limitMPerS =
                    Trail.speedAtLimitMPerS(lightKg, area, kind.trailLimitRad(), densest);
            boolean light = limitMPerS < kind.speedMPerS();
            if (light && loads.size() == 1 && model.rules.masses().ballastKg() > 0) {
                ballastKg = model.rules.masses().ballastKg();
                limitMPerS =
                        Trail.speedAtLimitMPerS(
                                lightKg + ballastKg, area, kind.trailLimitRad(), densest);
            }
            boolean badly = limitMPerS < model.rules.flying().leastSpeedMPerS();
            if (badly && loads.size() > 1) {
                // Alone, with ballast, it may fly.
                return Optional.empty();
            }
            if (badly) {
                Finding finding =
                        new Finding(
                                FindingCode.FLIES_BADLY,
                                Severity.STOP,
                                load.id().value(),
                                text(Units.mPerSToKt(limitMPerS), 0),
                                text(Units.mPerSToKt(model.rules.flying().leastSpeedMPerS()), 0),
                                "kt",
                                "rules",
                                "Light and large: it trails more than "
                                        + text(Math.toDegrees(kind.trailLimitRad()), 0)
                                        + "° above "
                                        + text(Units.mPerSToKt(limitMPerS), 0)
                                        + " kt, ballast counted. Refused as rigged. Perhaps it flies so: "
                                        + model.carriage().mending(load, kind)
                                        + ".");
                if (refuse(load, finding)) {
                    return Optional.empty();
                }
            }
            double wholeKt =
                    Math.floor(Units.mPerSToKt(Math.min(limitMPerS, kind.speedMPerS())) + 1e-6);
            if (ballastKg > 0) {
                findings.add(
                        new Finding(
                                FindingCode.BALLAST_ADDED,
                                Severity.CAUTION,
                                load.id().value(),
                                text(ballastKg, 0),
                                "",
                                "kg",
                                "rules",
                                "Light for its size: add "
                                        + text(ballastKg, 0)
                                        + " kg of ballast and fly it at no more than "
                                        + text(wholeKt, 0)
                                        + " kt."));
            }
            speedMPerS = Math.min(speedMPerS, Units.ktToMPerS(wholeKt));
        }
        return Optional.of(trip(loads, new Flown(speedMPerS, ballastKg)));
    }

    /** How loads are flown, and with what besides. */
    private record Flown(double speedMPerS, double ballastKg) {}

    private Trip trip(List<Load> loads, Flown flown) {
        List<LoadKind> kinds = loads.stream().map(load -> model.job.getKind(load.kind())).toList();
        double liftKg = loads.stream().mapToDouble(this::massKg).sum() + flown.ballastKg();
        boolean construction = kinds.stream().anyMatch(LoadKind::constructionMargin);
        double needKg =
                construction
                        ? Math.ceil(liftKg / (1 - model.rules.masses().constructionFraction()))
                        : liftKg;
        double underM = 0;
        double hookUpS = 0;
        double setDownS = 0;
        for (int i = 0; i < loads.size(); i++) {
            underM =
                    Math.max(
                            underM,
                            kinds.get(i).standsUp()
                                    ? loads.get(i).lengthM()
                                    : loads.get(i).heightM());
            hookUpS = Math.max(hookUpS, kinds.get(i).hookUpS());
            setDownS = Math.max(setDownS, kinds.get(i).setDownS());
        }
        setDownS += (loads.size() - 1) * model.rules.times().secondReleaseS();
        return model.legs()
                .known(
                        new Trip(
                                loads,
                                kinds,
                                model.place(loads.get(0).from()),
                                model.place(loads.get(0).to()),
                                liftKg,
                                needKg,
                                flown.ballastKg(),
                                underM,
                                flown.speedMPerS(),
                                (long) Math.ceil(hookUpS),
                                (long) Math.ceil(setDownS)));
    }

    static double dragAreaM2(Load load, LoadKind kind) {
        if (load.dragAreaM2().isPresent()) {
            return load.dragAreaM2().getAsDouble();
        }
        return Trail.boxDragAreaM2(
                load.lengthM(), load.widthM(), load.heightM(), kind.dragCoefficient());
    }

    /** Densest air of the day at the lowest place: most drag. */
    static double densestKgPerM3(DayModel model) {
        return densestKgPerM3(model, model.job.weather());
    }

    /** The same in other weather. */
    static double densestKgPerM3(DayModel model, Weather weather) {
        double lowest = Double.POSITIVE_INFINITY;
        for (double elevation : model.elevationAmslM) {
            if (elevation > Double.NEGATIVE_INFINITY) {
                lowest = Math.min(lowest, elevation);
            }
        }
        double densest = 0;
        for (WeatherHour hour : weather.hours()) {
            double temperatureK =
                    hour.temperatureK()
                            - weather.lapseKPerM() * (lowest - weather.referenceElevationAmslM());
            double pressurePa = Atmosphere.stationPressurePa(hour.qnhPa(), lowest);
            densest = Math.max(densest, Atmosphere.dry(pressurePa, temperatureK).densityKgPerM3());
        }
        return densest;
    }

    /** Why a trip can be flown at no hour with no line; empty when it can. */
    private Optional<Finding> fitsSomewhen(Trip trip) {
        String id = trip.loads().get(0).id().value();
        boolean wind = false;
        boolean room = false;
        boolean hook = false;
        boolean way = false;
        boolean chart = false;
        boolean balanced = false;
        double mostFuelKg = Double.NEGATIVE_INFINITY;
        double fuelNeedKg = Double.POSITIVE_INFINITY;
        for (int slot = 0; slot < model.air().slots.size(); slot++) {
            for (int line : model.linesByLength()) {
                if ((trips.size() >= leastTrips && enough.isReached())
                        || model.legs().isCut(trip)) {
                    return notLookedAt(id);
                }
                if (!isWindWithin(trip, slot)) {
                    continue;
                }
                wind = true;
                var item = model.machine.lines().get(line);
                if (trip.liftMassKg() > item.limitKg()
                        || trip.liftMassKg() + item.massKg() > model.machine.hookLimitKg()) {
                    continue;
                }
                hook = true;
                Rig rig = trip.rig(item.lengthM());
                Rig hooking = rig.withoutCredit();
                if (model.ways().wayIn(trip.to(), slot, trip.kindNames(), rig).isEmpty()
                        || model.ways()
                                .wayIn(trip.from(), slot, trip.kindNames(), hooking)
                                .isEmpty()) {
                    continue;
                }
                room = true;
                Optional<DayLegs.LegAt> leg = model.legs().loadedLeg(trip, line, slot, slot);
                Optional<DayLegs.LegAt> back =
                        model.legs().emptyLeg(trip.to(), trip.from(), line, slot);
                if (leg.isEmpty() || back.isEmpty()) {
                    continue;
                }
                way = true;
                if (!model.air().isInChart(trip.from(), slot)
                        || !model.air().isInChart(trip.to(), slot)) {
                    continue;
                }
                chart = true;
                double need = fuelNeedKg(trip, leg.get(), back.get());
                double most = model.fuelMaxKg(trip, line, slot, slot);
                if (!isBalanced(trip, item.massKg(), most)) {
                    continue;
                }
                balanced = true;
                if (most - need > mostFuelKg - fuelNeedKg
                        || mostFuelKg == Double.NEGATIVE_INFINITY) {
                    mostFuelKg = most;
                    fuelNeedKg = need;
                }
                if (most >= need) {
                    return Optional.empty();
                }
            }
        }
        if (model.legs().isCut(trip)) {
            return notLookedAt(id);
        }
        String place = model.places.get(trip.to()).id().value();
        if (!wind) {
            return Optional.of(new NoAir(model).sayWind(trip, id));
        }
        if (!hook) {
            return stop(
                    FindingCode.LINE_LIMIT,
                    id,
                    "No line in stock may carry it with the hook's limit kept.");
        }
        if (!room) {
            Optional<Finding> tooLow = tooLow(trip);
            if (tooLow.isPresent()) {
                return tooLow;
            }
            Optional<String> closed = new NoWay(model).sayNoWayIn(trip);
            if (closed.isPresent()) {
                return stop(FindingCode.NO_WAY, id, closed.get());
            }
            return stop(
                    FindingCode.NO_LINE_LONG_ENOUGH,
                    id,
                    "No line in stock leaves a way in to "
                            + place
                            + " with room for rotor and tail. Perhaps a longer line.");
        }
        if (!way) {
            return stop(FindingCode.NO_WAY, id, new NoWay(model).say(trip));
        }
        if (!chart) {
            return Optional.of(
                    new NoAir(model).sayChart(trip, id, slot -> isWindWithin(trip, slot)));
        }
        if (!balanced) {
            return stop(
                    FindingCode.CENTRE_OF_GRAVITY,
                    id,
                    "With it on the hook the centre of gravity leaves its limits at some fuel between"
                            + " the reserve and the most it lifts with.");
        }
        double wholeKg = Math.floor(mostFuelKg);
        return Optional.of(
                new Finding(
                        FindingCode.FUEL_TOO_LOW_FOR_LOAD,
                        Severity.STOP,
                        id,
                        text(Math.max(0, wholeKg), 0),
                        text(Math.ceil(fuelNeedKg), 0),
                        "kg",
                        "machine",
                        (wholeKg > 0
                                        ? "At the best hour it lifts with at most "
                                                + text(wholeKg, 0)
                                                + " kg of fuel"
                                        : "It cannot be lifted with any fuel, at no hour"
                                                + (wholeKg < 0
                                                        ? ": with none aboard it is still "
                                                                + text(-wholeKg, 0)
                                                                + " kg too heavy"
                                                        : ""))
                                + "; the trip with reserve and contingency needs "
                                + text(Math.ceil(fuelNeedKg), 0)
                                + (isPole(trip.loads().get(0))
                                        ? " kg. Perhaps on a cooler day, from nearer by or with a"
                                                + " stronger machine."
                                        : " kg. Perhaps it can be split.")));
    }

    /** Zones over an end in which not even the longest line hovers high enough. */
    private Optional<Finding> tooLow(Trip trip) {
        List<Integer> lines = model.linesByLength();
        double longestM = model.machine.lines().get(lines.get(lines.size() - 1)).lengthM();
        Rig rig = trip.rig(longestM);
        return tooLow(trip, trip.to(), rig)
                .or(() -> tooLow(trip, trip.from(), rig.withoutCredit()));
    }

    private Optional<Finding> tooLow(Trip trip, int place, Rig rig) {
        return model.ways()
                .findTooLow(place, trip.kindNames(), rig)
                .map(
                        zone ->
                                new Finding(
                                        FindingCode.HOVER_IN_ZONE,
                                        Severity.STOP,
                                        trip.loads().get(0).id().value(),
                                        text(Math.floor(rig.hookAglM()), 0),
                                        text(zone.minAglM(), 0),
                                        "m",
                                        zone.source(),
                                        model.places.get(place).id()
                                                + " lies in zone "
                                                + zone.id()
                                                + ", where nobody "
                                                + (zone.rule() == Zone.Rule.MIN_HEIGHT
                                                        ? "flies"
                                                        : "hovers")
                                                + " lower than "
                                                + text(zone.minAglM(), 0)
                                                + " m above ground. Perhaps another place, or a"
                                                + " permission."));
    }

    /** No refusal: nobody knows whether it could be flown. */
    private static Optional<Finding> notLookedAt(String id) {
        return stop(
                FindingCode.SEARCH_CUT,
                id,
                "The search was stopped before all ways for it were looked at. Perhaps more time.");
    }

    /** Whether the centre of gravity stays within its limits from the most fuel to the reserve. */
    private boolean isBalanced(Trip trip, double lineMassKg, double mostKg) {
        double leastKg = model.machine.reserveS() * model.machine.burnKgPerS();
        if (model.machine.balance().isEmpty() || mostKg < leastKg) {
            return true;
        }
        CentreOfGravity.Burden burden =
                new CentreOfGravity.Burden(
                        model.machine.emptyMassKg(),
                        model.machine.crewMassKg(),
                        0,
                        trip.liftMassKg() + lineMassKg);
        return CentreOfGravity.of(model.machine.balance().get(), 0)
                .worst(burden, mostKg, leastKg)
                .fold(
                        (worst, findings) -> worst.standing() != CentreOfGravity.Standing.OUTSIDE,
                        findings -> false);
    }

    /**
     * Least fuel to read at hook-up: the trip and the way back, reserve and contingency, and the gauge
     * off both ways.
     */
    double fuelNeedKg(Trip trip, DayLegs.LegAt out, DayLegs.LegAt back) {
        double burn = model.machine.burnKgPerS();
        double flownKg =
                burn * (out.durationS() + back.durationS() + model.rules.times().returnExtraS())
                        + Math.max(burn, model.machine.hoverBurnKgPerS()) * trip.setDownS();
        return flownKg
                + burn * (model.machine.reserveS() + model.rules.refuelling().contingencyS())
                + 2 * model.machine.fuelGaugeSpreadKg();
    }

    /** Whether wind at both ends keeps the limits of every load of a trip. */
    boolean isWindWithin(Trip trip, int slot) {
        return trip.kinds().stream()
                .allMatch(
                        kind ->
                                model.air().isWindWithin(kind.windLimit(), trip.from(), slot)
                                        && model.air()
                                                .isWindWithin(kind.windLimit(), trip.to(), slot));
    }

    private static Optional<Finding> stop(FindingCode code, String id, String message) {
        return Optional.of(Finding.of(code, Severity.STOP, id, "rules", message));
    }

    static String text(double value, int digits) {
        String text = String.format(Locale.ROOT, "%." + digits + "f", value);
        // Of what rounds to nothing from below; nobody reads "-0" as a number.
        return text.matches("-0(\\.0+)?") ? text.substring(1) : text;
    }

    /** Whether people receive what is set down there: at sites always. */
    static boolean isSite(Place place) {
        return place.kind() == PlaceKind.SITE;
    }
}
